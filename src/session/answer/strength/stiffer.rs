//! One rail beside another: how much stiffer.

use super::bay::{Rail, span};
use super::rows::row;
use super::taken::{Taken, words_of};
use super::{Answered, Figs, detail, fig, say};
use crate::figure::{Fig, Unit, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Job, Lie};
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::strength::rail::{Piece, Way, second_moments};
use crate::strength::{Refused, beam};

/// The two rails compared: the plain one, and the one asked about.
fn pair(job: &Job, ask: &StrengthAsk, taken: &Taken) -> (Vec<Piece>, Vec<Piece>) {
    let asked = taken.inputs.pieces.clone();
    let rail = asked.first().copied();
    let plain: Vec<Piece> = match (ask.cap, ask.rail, ask.lie) {
        (Some(_), ..) => rail.into_iter().collect(),
        (None, Some(_), None) => Taken::of(job, &StrengthAsk::of(ask.about)).inputs.pieces,
        _ => rail.map(|p| Piece { lie: Lie::Flat, ..p }).into_iter().collect(),
    };
    if plain != asked {
        return (plain, asked);
    }
    // Nothing told apart: flat beside on edge.
    let edge = asked.iter().take(1).map(|p| Piece { lie: Lie::Edge, ..*p }).chain(asked.iter().skip(1).copied());
    (plain, edge.collect())
}

/// How much stiffer one rail is than the other, and what both sag.
pub fn stiffer(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let (plain, other) = pair(job, ask, taken);
    let (down, out) = (times(&plain, &other, Way::Down)?, times(&plain, &other, Way::Out)?);
    let span = span(job, ask);
    let mut reply = Reply::of(Status::Answered);
    let first = [
        say("By arithmetic a "),
        Span::Phrase(words_of(&other)),
        say(" is "),
        fig(&down),
        say(" times as stiff under a weight as a "),
        Span::Phrase(words_of(&plain)),
        say(", "),
        fig(&out),
        say(" times as stiff outward."),
    ];
    reply.lines.push(Line::new(Role::Answer, first));
    for (what, pieces) in [("rail sag, the plain rail", &plain), ("rail sag, the other rail", &other)] {
        let rail = Rail::over(pieces, taken, &taken.inputs.wood, &span)?;
        let mut spans = vec![say("Over "), fig(&span), say(" clear a "), Span::Phrase(words_of(pieces))];
        spans.extend(rail.sag_spans());
        spans.push(say("."));
        reply.lines.push(detail(spans));
        reply.values.strength.push(row(what, &rail.down.sag));
    }
    let says = "Pieces are taken to share the load by stiffness, with no credit for glue or screws between them.";
    reply.lines.push(detail([say(says)]));
    reply.lines.push(taken.line());
    reply.values.result = Some(down.clone());
    reply.values.more.extend([("stiffer_outward", out.clone()), ("span", span)]);
    let figs: Figs = vec![("stiffer under a weight", down), ("stiffer outward", out)];
    Ok((reply, figs))
}

fn times(plain: &[Piece], other: &[Piece], way: Way) -> Result<Fig, Refused> {
    let (a, b) = (second_moments(plain, way)?, second_moments(other, way)?);
    let over = beam::ratio(&b, &a)?;
    let from = vec![("second moments, the other", b), ("second moments, the plain one", a)];
    Ok(Fig::quantity(over.as_q(), Unit::Times, Why::Formula("second moments, one over the other", from)))
}
