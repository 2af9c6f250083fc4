//! The answer to a sum.

use super::{Figs, heard};
use crate::figure::{Fig, Value};
use crate::grammar::{Act, canon};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::sums::{Expr, Into, Sum, SumError, answer};

/// Works a sum out and words it.
pub fn sum(sum: &Sum) -> (Reply, Figs) {
    let (fig, left) = match answer(sum) {
        Ok(found) => found,
        Err(e) => return (error(e), Vec::new()),
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, worded(sum, &fig, left.as_ref())));
    let phrase = canon::write(&Act::Sum(sum.clone()));
    reply.lines.push(heard(&phrase));
    reply.readback = Some(phrase);
    let mut figs = vec![("the answer", fig.clone())];
    figs.extend(left.clone().map(|l| ("what is left", l)));
    // Of a comparison the answer in figures is how much; of a conversion, the length.
    match sum {
        Sum::Bigger(..) => {
            reply.values.more.push(("bigger", fig.clone()));
            reply.values.result = left.or(Some(fig));
        }
        Sum::Convert(..) => {
            reply.values.more.extend(left.map(|n| ("in_unit", n)));
            reply.values.result = Some(fig);
        }
        _ => (reply.values.result, reply.values.left) = (Some(fig), left),
    }
    if lengths(sum).into_iter().any(super::row::is_metric) {
        super::row::in_metric(&mut reply);
    }
    (reply, figs)
}

/// The lengths an expression is made of; none of what is no expression.
fn lengths(sum: &Sum) -> Vec<Length> {
    let (mut all, mut open) = (Vec::new(), if let Sum::Value(expr) = sum { vec![expr] } else { Vec::new() });
    while let Some(next) = open.pop() {
        match next {
            Expr::Length(l) => all.push(*l),
            Expr::Number(_) => {}
            Expr::Plus(a, b) | Expr::Less(a, b) | Expr::Times(a, b) | Expr::Over(a, b) => open.extend([&**a, &**b]),
        }
    }
    all
}

fn worded(sum: &Sum, fig: &Fig, left: Option<&Fig>) -> Vec<Span> {
    let full = |f: &Fig| Span::Fig(f.clone(), Style::Full);
    let inches = |f: &Fig| Span::Fig(f.clone(), Style::InchesExact);
    match sum {
        Sum::Pieces { .. } => {
            let mut spans = vec![full(fig), Span::Say(" pieces")];
            spans.extend(left.map(|l| [Span::Say(", "), inches(l), Span::Say(" left")]).into_iter().flatten());
            spans.push(Span::Say("; the saw's kerf is not counted."));
            spans
        }
        Sum::Sticks { .. } => vec![full(fig), Span::Say(" sticks.")],
        Sum::Bigger(a, b) => {
            let Some(by) = left.filter(|_| a != b) else {
                return vec![Span::Say("They are the same: "), inches(fig), Span::Say(".")];
            };
            vec![inches(fig), Span::Say(" is bigger, by "), inches(by), Span::Say(".")]
        }
        Sum::Convert(_, Into::Millimetres) => vec![Span::Fig(fig.clone(), Style::Millimetres), Span::Say(".")],
        Sum::Convert(_, into) => {
            let shown = left.unwrap_or(fig);
            vec![full(shown), Span::Say(unit(*into, shown)), Span::Say(".")]
        }
        Sum::Diagonal(..) => vec![full(fig), Span::Say(" corner to corner, both ways, when it is square.")],
        Sum::Value(_) => vec![full(fig), Span::Say(".")],
    }
}

fn unit(into: Into, fig: &Fig) -> &'static str {
    match (into, fig.value()) {
        (_, Value::Length(_)) | (Into::Millimetres, _) => "",
        (Into::Inches, _) => " inches",
        (Into::Feet | Into::FeetInches, _) => " feet",
        (Into::Centimetres, _) => " cm",
        (Into::Metres, _) => " m",
    }
}

fn error(e: SumError) -> Reply {
    let says = match e {
        SumError::ByZero => "Nothing can be divided by zero.",
        SumError::Area => "A length times a length is an area: I only do lengths.",
        SumError::Mixed => "A length and a plain number don't add up: say the unit.",
        SumError::TooBig => "That is past any number I can carry exactly.",
    };
    Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }
}
