//! Bolts: where they go, how long they are, what they may hit, what each sees.

use super::say::{answer, detail, fig, say};
use super::{Answered, asks, taken};
use crate::figure::{Fig, Why};
use crate::job::{End, Job};
use crate::layout::Kind;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::notch::{Bolts, Feet, Post, Shape, Stack};
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::strength::tie::{Tie, hold_down};

/// Where the bolts of these posts go.
pub(super) fn bolts(job: &Job, feet: &Feet, posts: &[&Post]) -> Answered {
    let stack = Stack::of(&job.settings);
    let Some(rim) = &stack.rim else {
        return asks("How tall is the rim? Say its size, for the bolts' places in it: the rim is a 2x10.");
    };
    let Some(bolts) = &stack.bolts else {
        let mut reply = Reply::of(Status::Refused);
        reply.lines.push(answer(vec![
            Span::Say("A rim of "),
            fig(rim),
            Span::Say(" has no room for two bolts at their edge distances: that I can't judge. Ask the building department or an engineer."),
        ]));
        return (reply, Vec::new());
    };
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(answer(vec![
        Span::Say("Two bolts: holes "),
        fig(&bolts.upper),
        Span::Say(" and "),
        fig(&bolts.lower),
        Span::Say(" down from the shoulder, "),
        fig(&bolts.apart),
        Span::Say(" apart, centred on the leg."),
    ]));
    reply.lines.push(detail(vec![
        Span::Say("That is "),
        fig(&bolts.edge),
        Span::Say(" below the rim's top ("),
        Span::Say(limits::BOLT_MARGIN.source),
        Span::Say(")."),
    ]));
    reply.lines.extend(through(job, posts));
    reply.lines.extend(pull(&stack, bolts));
    reply.lines.extend(in_the_way(job, feet, posts));
    reply.values.more = vec![
        ("bolt_upper", bolts.upper.clone()),
        ("bolt_lower", bolts.lower.clone()),
        ("bolts_apart", bolts.apart.clone()),
    ];
    (reply, vec![("upper bolt", bolts.upper.clone()), ("lower bolt", bolts.lower.clone())])
}

fn two_by() -> Fig {
    let thick = Lumber::by(2, 2).dressed().map_or(Length::ZERO, |(thick, _)| thick);
    Fig::length(thick, Why::Table("dressed dry thickness of 2-by lumber", "PS 20 size table"))
}

/// How long the bolts are, by what they go through.
fn through(job: &Job, posts: &[&Post]) -> Vec<Line> {
    let s = &job.settings;
    let size = s.foot.bolt.map_or_else(
        || Fig::length(limits::BOLT_SIZE.length(), Why::Default(&limits::BOLT_SIZE)),
        |l| Fig::told(l, "the bolts"),
    );
    let mut lengths: Vec<Fig> = Vec::new();
    for post in posts {
        let Ok(foot) = &post.foot else { continue };
        let leg = match foot.lower.shape {
            Shape::Straight { deep } => foot.lower.size.across - deep,
            Shape::AllButCorner { across, .. } => across,
            Shape::Corner { deep, .. } => foot.lower.size.across - deep,
            _ => foot.lower.size.across,
        };
        let leg = Fig::length(
            leg,
            Why::Formula("what is left of the post where the bolt passes", vec![("post", post.width.clone())]),
        );
        let mut parts = vec![("leg", leg)];
        parts.extend(s.skirt.filter(|l| l.is_positive()).map(|l| ("skirt", Fig::told(l, "the skirt"))));
        parts.push(("rim", s.rim.map_or_else(two_by, |l| Fig::told(l, "the rim"))));
        parts.push(("blocking behind", two_by()));
        let long = Bolts::length(parts);
        if !lengths.iter().any(|l| l.value() == long.value()) {
            lengths.push(long);
        }
    }
    let mut spans = vec![Span::Say("Bolts "), fig(&size), Span::Say(" thick, washers on both sides, at least ")];
    for (k, long) in lengths.iter().enumerate() {
        spans.extend((k > 0).then_some(Span::Say(" or ")));
        spans.push(fig(long));
    }
    spans.push(Span::Say(" long, with a 2-by block behind the rim. Holes a hair over the bolt, no more."));
    let mut lines = vec![detail(spans)];
    if s.skirt.is_some_and(Length::is_positive) {
        lines.push(say(Role::Detail, "Never clamp a bolt through a plastic skirt: cut the skirt at the post or pack behind it solid (common practice, no source)."));
    }
    lines.extend(taken(&[&size]));
    lines
}

/// The tension at the upper bolt.
fn pull(stack: &Stack, bolts: &Bolts) -> Vec<Line> {
    let tie = Tie {
        height: stack.height.clone(),
        decking: stack.decking.clone(),
        edge: bolts.edge.clone(),
        apart: bolts.apart.clone(),
    };
    let (Ok(pull), Ok(push)) = (tie.pull(), tie.push()) else { return Vec::new() };
    let quantity = |f: &Fig| Span::Fig(f.clone(), Style::Tape);
    let rated = hold_down();
    let over = pull.as_q() > rated.as_q();
    let mut lines = vec![detail(vec![
        Span::Say("Pushed outward at the top, the upper bolt pulls "),
        quantity(&pull),
        Span::Say(", the lower one is pressed "),
        quantity(&push),
        Span::Say(": hold the upper one back with listed hardware rated for at least "),
        quantity(if over { &pull } else { &rated }),
        Span::Say("."),
    ])];
    if over {
        let line = [
            Span::Say("Check: that is over the published "),
            quantity(&rated),
            Span::Say(" hold-down, given for guards up to 36 in. with bolts about 5 in. apart."),
        ];
        lines.push(Line::new(Role::Detail, line));
    }
    lines
}

/// What the bolts may hit.
fn in_the_way(job: &Job, _: &Feet, posts: &[&Post]) -> Vec<Line> {
    let mut lines = Vec::new();
    let at_stairs = posts.iter().any(|p| p.kind == Kind::Fixed(End::StairHead) || p.turn < 0);
    if at_stairs {
        lines.push(say(
            Role::Detail,
            "At the stairs look behind the rim first: a doubled trimmer and its hangers foul the bolts.",
        ));
    }
    if posts.iter().any(|p| p.turn != 0) {
        lines.push(say(Role::Detail, "At a corner two sides' bolts cross: set one pair a bolt's width higher, and keep out of the rims' end grain."));
    }
    let quarter = |p: &&Post| p.foot.as_ref().is_ok_and(|f| matches!(f.lower.shape, Shape::AllButCorner { .. }));
    if posts.iter().any(quarter) {
        lines.push(say(Role::Detail, "Stop: a leg of one quarter has no room for a bolt and its edge distances. Use a whole post inside the rim there."));
    }
    let says = match job.settings.joists {
        Some(_) => {
            "Where a joist stands right behind the leg, the bolts run into its end: move the line post beside it, or block on both sides."
        }
        None => {
            "What stands behind the rim I was not told: a joist in line with the leg is hit end on. Block both sides of every post, joist to joist, before the decking covers it."
        }
    };
    lines.push(say(Role::Detail, says));
    lines
}
