//! Checks on the guard itself: whether one is required, its height, its gaps, its posts.

use super::say::{fig, held, inches};
use crate::figure::{Fig, Why};
use crate::job::{Job, PostSize};
use crate::layout::Layout;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::quantity::RowId;
use crate::reply::{Span, Style};
use crate::solve::{known, limit_length};

fn one(trips: bool, spans: impl FnOnce() -> Vec<Span>) -> Vec<Vec<Span>> {
    if trips { vec![spans()] } else { Vec::new() }
}

/// True where a drop was told and it does not ask for a guard.
fn none_required(job: &Job) -> bool {
    job.settings.law.holds(&limits::GUARD_TRIGGER)
        && drop(job).is_some_and(|d| d <= limit_length(job, &limits::GUARD_TRIGGER))
}

/// A length as told for the job; nothing taken.
fn told(job: &Job, row: RowId) -> Option<Length> {
    job.told(row).and_then(|f| f.as_length())
}

/// The drop a guard counts, where the deck's height was told.
fn drop(job: &Job) -> Option<Length> {
    known(job, RowId::Drop).and_then(|d| d.as_length())
}

fn low(job: &Job) -> Option<Length> {
    told(job, RowId::HeightTop).filter(|h| *h < limit_length(job, &limits::GUARD_HEIGHT))
}

fn low_spans(job: &Job, height: Length, tail: &'static str) -> Vec<Span> {
    let top = inches(height, "the height to the top");
    vec![Span::Say("a guard "), top, Span::Say(" high is under "), held(job, &limits::GUARD_HEIGHT), Span::Say(tail)]
}

/// A guard under the least height, where a guard is or may be required.
pub(super) fn too_low(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let height = low(job).filter(|_| !none_required(job));
    height.map(|h| low_spans(job, h, ", the least for a required guard.")).into_iter().collect()
}

/// A guard under the least height where the drop told asks for none.
pub(super) fn low_but_not_required(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let height = low(job).filter(|_| none_required(job));
    let tail = "; at the drop told none is required, but the ground within 36 in. of the edge counts too.";
    height.map(|h| low_spans(job, h, tail)).into_iter().collect()
}

/// The drop asks for a guard.
pub(super) fn required(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let held_here = job.settings.law.holds(&limits::GUARD_TRIGGER);
    let over = |d: &Fig| d.as_length().is_some_and(|l| l > limit_length(job, &limits::GUARD_TRIGGER));
    let falls = known(job, RowId::FallWithin).and_then(|f| f.as_length()).is_some_and(Length::is_positive);
    let spans = |d: Fig| {
        let tail = ": a guard is required, at least ";
        let (lead, link) = match falls {
            true => ("the drop to the ground within 36 in. of the edge is ", ", more than "),
            false => ("the deck stands ", " up, more than "),
        };
        vec![
            Span::Say(lead),
            Span::Fig(d, Style::Inches),
            Span::Say(link),
            held(job, &limits::GUARD_TRIGGER),
            Span::Say(tail),
            held(job, &limits::GUARD_HEIGHT),
            Span::Say(" high."),
        ]
    };
    known(job, RowId::Drop).filter(|d| held_here && over(d)).map(spans).into_iter().collect()
}

/// The drop is exactly the trigger.
pub(super) fn at_the_trigger(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let at =
        job.settings.law.holds(&limits::GUARD_TRIGGER) && drop(job) == Some(limit_length(job, &limits::GUARD_TRIGGER));
    one(at, || {
        let tail = " is not more than that, so by the model code no guard is required; measure the lowest ground within 36 in.";
        vec![Span::Say("a drop of exactly "), held(job, &limits::GUARD_TRIGGER), Span::Say(tail)]
    })
}

/// A gap limit that lets the ball through.
pub(super) fn gap_too_wide(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let wide = told(job, RowId::GapMax).filter(|g| *g > limit_length(job, &limits::LEVEL_GAP));
    let spans = |g| {
        let told = inches(g, "the gap limit");
        vec![
            Span::Say("gaps up to "),
            told,
            Span::Say(" let a "),
            held(job, &limits::LEVEL_GAP),
            Span::Say(" ball through."),
        ]
    };
    wide.map(spans).into_iter().collect()
}

/// A gap under the bottom rail that lets the ball through; exactly the limit does.
pub(super) fn gap_under_too_wide(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let wide = told(job, RowId::GapUnder).filter(|g| *g >= limit_length(job, &limits::LEVEL_GAP));
    let spans = |g| {
        let told = inches(g, "the gap under");
        let ball = held(job, &limits::LEVEL_GAP);
        vec![
            Span::Say("a gap of "),
            told,
            Span::Say(" under the bottom rail lets a "),
            ball,
            Span::Say(" ball through: keep it under."),
        ]
    };
    wide.map(spans).into_iter().collect()
}

/// The thinner side of a post as told.
fn thin_side(size: PostSize) -> Option<Length> {
    match size {
        PostSize::Lumber(l) => l.dressed().map(|(a, b)| a.min(b)),
        PostSize::Width(w) => Some(w),
    }
}

/// Posts told thinner than the least size.
pub(super) fn post_too_small(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let nominal = u16::try_from(limits::POST_SIZE.value).unwrap_or(4);
    let Some((least, _)) = Lumber::by(nominal, nominal).dressed() else { return Vec::new() };
    let thin =
        crate::solve::told_sizes(job).iter().filter_map(|(_, size)| thin_side(*size)).filter(|t| *t < least).min();
    let spans = |t| {
        let why = Why::Table("dressed dry side of a 4x4", "PS 20 size table");
        let four = Fig::length(least, why);
        vec![
            Span::Say("a post "),
            inches(t, "the post's size"),
            Span::Say(" thick is under a 4x4 ("),
            fig(&four),
            Span::Say("): for a metal or made-up post, go by its maker's sheet."),
        ]
    };
    thin.map(spans).into_iter().collect()
}

/// A gate at the head of stairs told to swing out, over them.
pub(super) fn gate_over_stairs(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    use crate::job::{End, GateAt, Swing};
    let out = job.runs.iter().filter(|r| {
        let end = |g: crate::job::Gate| match g.at.place() {
            GateAt::From => r.from == Some(End::StairHead),
            GateAt::To => r.to == Some(End::StairHead),
            _ => !r.stairs.is_empty(),
        };
        r.gate.is_some_and(|g| matches!(g.hung.swing, Some(Swing::Out | Swing::Both)) && end(g))
    });
    let says = "the gate swings out over the stairs: hang it to swing in, over the deck.";
    out.map(|r| super::say::about(r, [Span::Say(says)])).collect()
}

/// A gate leaf too wide for one.
pub(super) fn gate_too_wide(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    use crate::job::{GateAt, Run, StairAt};
    let across = |r: &Run, at| {
        let here = r.stairs.iter().filter(|s| at == GateAt::Stairs || at == GateAt::Middle && s.at == StairAt::Middle);
        here.map(|s| s.width).max()
    };
    // At recessed stairs the gate hangs between the posts at their head, which the line moves.
    let head = |r: &Run| {
        layout
            .runs
            .iter()
            .find(|l| l.id == r.id && matches!(l.part, crate::layout::Part::InLeft(_)))?
            .result
            .as_ref()
            .ok()?
            .beyond
            .as_ref()?
            .as_length()
    };
    let told = |r: &Run| r.gate.and_then(|g| g.width.or_else(|| across(r, g.at)));
    let opening = |r: &Run| head(r).or_else(|| told(r));
    let wide = job
        .runs
        .iter()
        .filter_map(|r| opening(r).map(|w| (r, w)))
        .filter(|(_, w)| *w > limit_length(job, &limits::GATE_LEAF));
    let spans = |(r, w): (&Run, Length)| {
        let gate = Span::Fig(Fig::told(w, "the gate's width"), Style::Tape);
        let tail = " is wide for one leaf: heavy, and it sags; two leaves do better.";
        super::say::about(r, [Span::Say("a gate of "), gate, Span::Say(tail)])
    };
    wide.map(spans).collect()
}
