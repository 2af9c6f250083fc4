//! What a stair's plain width was taken as, and what other ways to take it would leave.

use crate::figure::Fig;
use crate::grammar::{Act, Query};
use crate::job::{Fact, Job, StairOpening, Stairs};
use crate::layout::{beside, other_ways};
use crate::reply::{Line, Role, Span, Status, Style};

/// Which way a stair's plain width was taken, and what the others would leave: one short line
/// changes it.
pub(super) fn width_taken(job: &Job, facts: &[Fact]) -> Option<Line> {
    let told = facts.iter().filter_map(|f| if let Fact::Run(_, p) = f { p.stairs.as_ref() } else { None });
    let plain = |s: &&StairOpening| s.measure.is_none() && s.recess.is_none();
    let stairs = told.flat_map(Stairs::iter).find(plain)?;
    let [treads, hole] = other_ways(job, stairs);
    let fig = |f: Fig| Span::Fig(f, Style::Tape);
    let mut spans = vec![
        fig(Fig::told(stairs.width, "the stairs' width")),
        Span::Say(" is taken as the clear between the posts, or treads with newels beside them."),
    ];
    spans.extend(
        treads
            .map(|f| [Span::Say(" Newels on treads that wide leave "), fig(f), Span::Say(" clear.")])
            .into_iter()
            .flatten(),
    );
    spans.extend(
        hole.map(|f| [Span::Say(" A hole that wide leaves "), fig(f), Span::Say(" between its posts.")])
            .into_iter()
            .flatten(),
    );
    spans.push(Span::Say(" Say \"newels on the treads\" or \"that's decking to decking\" if so."));
    Some(Line::new(Role::Detail, spans))
}

/// What follows a choice: the guard it leaves beside the stairs it tells of; the answer to what it asks of rows.
pub(in crate::session) fn beside_choice(job: &Job, act: &Act) -> Vec<Span> {
    if let Act::Query(Query::Row(ask)) = act {
        let (reply, _) = super::row::row(job, ask);
        let first =
            reply.lines.into_iter().find(|l| l.role == Role::Answer).filter(|_| reply.status == Status::Answered);
        return first.map(|l| std::iter::once(Span::Say(" ")).chain(l.spans).collect()).unwrap_or_default();
    }
    let (Act::Tell(facts) | Act::Suppose(facts)) = act else { return Vec::new() };
    let of_stairs = |f: &Fact| match f {
        Fact::Run(id, p) if p.stairs.as_ref().is_some_and(|s| !s.is_empty()) => Some(*id),
        _ => None,
    };
    let Some(run) = facts.iter().find_map(of_stairs) else { return Vec::new() };
    let Some(left) = job.with_all(facts).ok().and_then(|job| beside(&job, run)) else { return Vec::new() };
    let fig = |f: &Fig| Span::Fig(f.clone(), Style::Tape);
    let mut spans = Vec::new();
    if let Some([l, r]) = &left.flanks {
        spans.extend([Span::Say(": guard "), fig(l), Span::Say(" left, "), fig(r), Span::Say(" right")]);
    }
    for head in &left.heads {
        spans.extend([
            Span::Say(if spans.is_empty() { ": " } else { ", " }),
            fig(head),
            Span::Say(" between the posts at the head"),
        ]);
    }
    spans
}
