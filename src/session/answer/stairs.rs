//! Answers about stair openings and gates.

use super::Figs;
use crate::figure::{Fig, Why};
use crate::gate::{LeafTold, leaf};
use crate::grammar::ask::{LeafAsked, StairAsk};
use crate::grammar::{Act, canon};
use crate::job::{Fact, Job, StairOpening, Stairs};
use crate::layout::{beside, other_ways};
use crate::limits::{self, Limit};
use crate::measure::{Length, Q};
use crate::reply::{Line, Reply, Role, Span, Status, Style};

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

/// What follows a choice: the guard it leaves beside the stairs it tells of.
pub(in crate::session) fn beside_choice(job: &Job, act: &Act) -> Vec<Span> {
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

/// The answer to one question.
pub(super) fn answer(job: &Job, ask: StairAsk) -> (Reply, Figs) {
    match ask {
        StairAsk::Height => height(job),
        StairAsk::Told => told(job),
        StairAsk::Leaf(asked) => leaf_for(asked),
        StairAsk::Swing => swing(),
        StairAsk::OneLeaf(l) => one_leaf(l),
    }
}

fn said(lines: Vec<Line>, result: Option<(&'static str, Fig)>) -> (Reply, Figs) {
    let mut reply = Reply { lines, ..Reply::of(Status::Answered) };
    reply.values.result = result.as_ref().map(|(_, f)| f.clone());
    (reply, result.into_iter().collect())
}

fn only(status: Status, line: Line) -> (Reply, Figs) {
    (Reply { lines: vec![line], ..Reply::of(status) }, Vec::new())
}

fn full(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Full)
}

/// A rule with what to mind about it, and where it is printed.
fn rule(limit: &'static Limit) -> Line {
    let mut spans = vec![Span::Say(limit.says)];
    if !limit.note.is_empty() {
        spans.extend([Span::Say(": "), Span::Say(limit.note)]);
    }
    spans.extend([Span::Say(" ("), Span::Say(limit.source), Span::Say(").")]);
    Line::new(Role::Detail, spans)
}

/// Risers times rise: how far the flight climbs from what it lands on.
fn height(job: &Job) -> (Reply, Figs) {
    let first = job.runs.iter().flat_map(|r| r.stairs.iter()).next();
    let flight = first.map_or(job.flight, |s| job.flight(s));
    let (Some(n), Some(rise)) = (flight.risers, flight.rise) else { return height_told(job) };
    let (count, each) = (Fig::count(u64::from(n), Why::Told("the risers")), Fig::told(rise, "the rise"));
    let inputs = vec![("risers", count.clone()), ("rise", each.clone())];
    let total = rise.times(Q::from_integer(i128::from(n))).unwrap_or(Length::ZERO);
    let total = Fig::length(total, Why::Formula("risers x rise", inputs));
    let spans = vec![
        full(&total),
        Span::Say(" from what the stairs land on up to the decking: "),
        Span::Fig(count, Style::Tape),
        Span::Say(" risers of "),
        Span::Fig(each, Style::Inches),
        Span::Say("."),
    ];
    let mind = "That is at the stairs' foot: where the ground falls away the deck stands higher. Measure that too.";
    let lines = vec![Line::new(Role::Answer, spans), Line::say(Role::Detail, mind)];
    said(lines, Some(("the deck's height by its stairs", total)))
}

/// The deck's height where the stairs do not give it.
fn height_told(job: &Job) -> (Reply, Figs) {
    let Some(grade) = job.settings.grade else {
        let lacks = "How many risers are there, and how high is each? The deck's height is the one times the other.";
        return only(Status::Asks, Line::say(Role::Question, lacks));
    };
    let fig = Fig::told(grade, "the deck's height above the ground");
    let spans = vec![full(&fig), Span::Say(" above the ground, as you told me.")];
    said(vec![Line::new(Role::Answer, spans)], Some(("the deck's height", fig)))
}

/// The stairs as told, each in its plain phrase.
fn told(job: &Job) -> (Reply, Figs) {
    let of_stairs = |f: &Fact| match f {
        Fact::Run(_, patch) => patch.stairs.is_some(),
        Fact::StairWidth(_) | Fact::StairMeasure(_) | Fact::StairPlace(_) | Fact::Flight(_) => true,
        _ => false,
    };
    let facts = crate::job::retold(job).into_iter().filter(of_stairs);
    let mut lines: Vec<Line> = facts.map(|f| Line::new(Role::Answer, [Span::Phrase(canon::write_fact(&f))])).collect();
    if lines.is_empty() {
        return only(Status::Answered, Line::say(Role::Answer, "No stairs have been told yet."));
    }
    lines.push(Line::say(Role::Detail, "Left and right as seen standing at the house, looking out."));
    said(lines, None)
}

/// The leaf an opening takes.
fn leaf_for(asked: LeafAsked) -> (Reply, Figs) {
    let told = LeafTold {
        openings: vec![asked.opening],
        hinge_gap: asked.hinge,
        latch_gap: asked.latch,
        ..LeafTold::default()
    };
    let Ok(worked) = leaf(&told) else {
        return only(Status::Refused, Line::say(Role::Answer, "Those gaps leave nothing of that opening for a leaf."));
    };
    let inches = |f: &Fig| Span::Fig(f.clone(), Style::Inches);
    let from = [
        Span::Say("The opening of "),
        Span::Fig(worked.opening.clone(), Style::Tape),
        Span::Say(" less "),
        inches(&worked.hinge_gap),
        Span::Say(" at the hinges and "),
        inches(&worked.latch_gap),
        Span::Say(" at the latch."),
    ];
    let smallest =
        "Measure the opening at its top, middle and bottom and go by the smallest (common practice, no source).";
    let mut lines = vec![
        Line::new(Role::Answer, [Span::Say("Build the leaf "), full(&worked.width), Span::Say(" wide.")]),
        Line::new(Role::Detail, from),
        Line::say(Role::Detail, smallest),
    ];
    // What a stile is taken as bears on the balusters in the leaf, not on its width.
    lines.extend(worked.taken.iter().filter(|l| l.id != limits::GATE_STILE.id).map(|limit| rule(limit)));
    lines.extend(worked.too_wide().then(|| rule(&limits::GATE_LEAF)));
    said(lines, Some(("the leaf", worked.width)))
}

fn swing() -> (Reply, Figs) {
    let says = "Hang it to swing in over the deck, never out over the stairs.";
    said(vec![Line::say(Role::Answer, says), rule(&limits::GATE_SWING), rule(&limits::LANDING)], None)
}

fn one_leaf(l: Length) -> (Reply, Figs) {
    let fig = Fig::told(l, "the gate");
    let tail = match l > limits::GATE_LEAF.length() {
        true => " is too wide for one leaf: it gets heavy and sags. Hang two, each on a stout post of its own.",
        false => " will do as one leaf, braced against sagging, on a stout hinge post.",
    };
    let first = Line::new(Role::Answer, [full(&fig), Span::Say(tail)]);
    said(vec![first, rule(&limits::GATE_LEAF), rule(&limits::GATE_POSTS)], Some(("the gate", fig)))
}
