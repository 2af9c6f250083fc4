//! Checks on the deck as a whole: its outline, its corners, where its posts are mounted.

use super::say::{about, fig, of_run};
use crate::figure::{Fig, Why};
use crate::job::outline::stands_free;
use crate::job::{Basis, Job, Mount, RunId};
use crate::layout::{Layout, Meet, Part, RunLayout};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::Span;
use crate::solve::{choice, limit_length};

/// A walk around the deck that does not come home.
pub(super) fn outline_open(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let Some(miss) = &layout.open else { return Vec::new() };
    let free = stands_free(job);
    let says = if free {
        "the sides don't come round to where they began: "
    } else {
        "the sides don't come back to the house: "
    };
    let mut spans = vec![Span::Say(says)];
    let (out, along) = (miss.by.out, miss.by.along);
    let home = match (free, out.is_positive()) {
        (true, true) => " beyond it",
        (true, false) => " short of it",
        (false, true) => " out from the house",
        (false, false) => " inside the house",
    };
    let length = match (free, along.is_positive()) {
        (true, true) => " to the right of it",
        (true, false) => " to the left of it",
        (false, true) => " more than the deck's length",
        (false, false) => " less than the deck's length",
    };
    let parts = [
        part(job, &miss.out, out, ["out and home", " they end ", home]),
        part(job, &miss.along, along, ["along it", " they reach ", length]),
    ];
    for (i, part) in parts.into_iter().flatten().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend(part);
    }
    spans.push(Span::Say(". Is a side still to come, or is one off?"));
    vec![spans]
}

/// "out and home, by run 1 and run 3, they end 1'-0" out from the house".
fn part(job: &Job, sides: &[RunId], by: Length, [lead, they, tail]: [&'static str; 3]) -> Option<Vec<Span>> {
    if by.is_zero() {
        return None;
    }
    let mut spans = vec![Span::Say(lead)];
    // Sides that all follow from the deck's sizes have nothing told to name.
    spans.extend((!sides.is_empty()).then_some(Span::Say(", by ")));
    for (i, id) in sides.iter().enumerate() {
        let link = if i + 1 == sides.len() { " and " } else { ", " };
        spans.extend((i > 0).then_some(Span::Say(link)));
        let name = job.run(*id).and_then(|r| r.name.as_deref());
        // The name alone, without the colon that leads into what is said of a run.
        spans.extend(of_run(*id, name, []).into_iter().filter(|s| *s != Span::Say(": ")));
    }
    spans.extend((!sides.is_empty()).then_some(Span::Say(",")));
    let size = if by.is_positive() { by } else { -by };
    let why = Why::Formula("the sides summed, those home taken from those out", Vec::new());
    spans.extend([Span::Say(they), fig(&Fig::length(size, why)), Span::Say(tail)]);
    Some(spans)
}

/// A side of the outline told on another basis than the decking's edge.
pub(super) fn side_off_edge(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let told = job.runs.iter().filter(|r| r.turn.is_some() && r.basis.is_some_and(|b| b != Basis::Edge));
    let says = "it is a side of the deck, but was not told along the decking's edge: the corner posts it gives do not meet its neighbours'; say how long it is on the edge.";
    told.map(|r| about(r, [Span::Say(says)])).collect()
}

/// Corners of two posts, each once: at the start of the run after it, or at the mouth of stairs.
fn pairs(layout: &Layout) -> impl Iterator<Item = (&RunLayout, &Meet)> {
    layout.runs.iter().flat_map(|r| r.meets.iter().flatten().filter(|m| m.later).map(move |m| (r, m)))
}

/// Two posts at a corner with too wide a gap between them.
pub(super) fn corner_gap(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let ball = limit_length(job, &limits::LEVEL_GAP);
    let found = pairs(layout).filter_map(|(r, m)| {
        let gap = m.gap.as_ref().filter(|g| g.as_length().is_some_and(|l| l >= ball))?;
        let spans = [
            Span::Say("the gap across its corner, between the two posts, is "),
            fig(gap),
            Span::Say(": a "),
            super::say::held(job, &limits::LEVEL_GAP),
            Span::Say(" ball passes; hold the posts back less."),
        ];
        Some(of_run(r.id, r.name.as_deref(), spans))
    });
    found.collect()
}

/// A gate at the head of recessed stairs, its jambs cut to a quarter of their foot.
pub(super) fn recessed_jambs(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if !matches!(choice::mount(job), None | Some(Mount::OverEdge)) {
        return Vec::new();
    }
    let gated =
        |r: &&RunLayout| matches!(r.part, Part::InLeft(_)) && r.result.as_ref().is_ok_and(|p| p.beyond.is_some());
    let says = "the gate hangs on posts at inside corners, notched over the edge: one quarter of each foot is left, the weakest of all.";
    let found = layout.runs.iter().filter(gated).map(|r| of_run(r.id, r.name.as_deref(), [Span::Say(says)]));
    found.collect()
}

/// Stairs too narrow between the guard's posts.
pub(super) fn stairs_narrow(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let least = limit_length(job, &limits::STAIR_WIDTH);
    let recessed = layout.runs.iter().filter(|r| matches!(r.part, Part::InLeft(_))).filter_map(|r| {
        let head = r.result.as_ref().ok()?.head.as_ref()?;
        let narrow = head.as_length().is_some_and(|l| l < least);
        let spans = [
            Span::Say("the posts leave "),
            fig(head),
            Span::Say(" between them at the stairs, under the "),
            super::say::held(job, &limits::STAIR_WIDTH),
            Span::Say(" a stair must have."),
        ];
        narrow.then(|| of_run(r.id, r.name.as_deref(), spans))
    });
    recessed.chain(told_narrow(job, least)).collect()
}

/// Stairs not let into the deck, told too narrow whatever they were measured between: posts only take of it.
fn told_narrow(job: &Job, least: Length) -> Vec<Vec<Span>> {
    let says = |width| {
        let told = super::say::inches(width, "the stairs' width");
        vec![Span::Say("stairs "), told, Span::Say(" wide are under the "), super::say::held(job, &limits::STAIR_WIDTH)]
            .into_iter()
            .chain([Span::Say(" a stair must have.")])
    };
    let narrow = |r: &crate::job::Run| {
        let widths = r.stairs.iter().filter(|s| s.recess.is_none()).map(|s| s.width);
        widths.filter(|w| *w < least).min()
    };
    let openings = job.runs.iter().filter_map(|r| Some((r, narrow(r)?)));
    let mut found: Vec<Vec<Span>> = openings.map(|(r, w)| about(r, says(w))).collect();
    if job.runs.iter().all(|r| r.stairs.is_empty()) {
        found.extend(job.stair_width.filter(|w| *w < least).map(|w| says(w).collect()));
    }
    found
}

/// Stairs at the deck's very corner, the next side's corner post in their way.
pub(super) fn corner_post_in_stairs(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let found = layout.runs.iter().filter_map(|r| {
        let post = r.intrudes.as_ref()?;
        let spans = [
            Span::Say("the corner post of the side beside it reaches "),
            fig(&post.by),
            Span::Say(" into the stair opening: "),
            fig(&post.left),
            Span::Say(" is left clear."),
        ];
        Some(of_run(r.id, r.name.as_deref(), spans))
    });
    found.collect()
}

/// No word on the mount, where the posts' places hang on it.
pub(super) fn mount_untold(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let taken = layout.line.is_some() && choice::mount(job).is_none() && job.told(RowId::Line).is_none();
    let says = "posts notched over the edge are taken, the baluster line on the decking's edge; the mount moves every corner post.";
    if taken { vec![vec![Span::Say(says)]] } else { Vec::new() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Fact, LawTold, Local, Setting};
    use crate::layout::lay_out;
    use crate::rules::examples::corner_held_back_2_and_a_half;

    /// Held back 2 1/2 the two posts stand 2 1/2 x root 2 = 3.5355 apart: under 4, and not under the 3 1/2
    /// that the building department asks.
    #[test]
    fn a_corner_stops_the_ball_that_is_asked_for() {
        let found = |more: Option<Fact>| {
            let facts: Vec<Fact> = corner_held_back_2_and_a_half().into_iter().chain(more).collect();
            let job = Job::default().with_all(&facts).expect("a possible job");
            corner_gap(&job, &lay_out(&job))
        };
        assert!(found(None).is_empty());
        let asked = LawTold::Local(Local::Gap, Length::sixteenths(56));
        let fails = found(Some(Fact::Set(Setting::Law(asked))));
        let ball = Fig::told(Length::sixteenths(56), "what the building department asks");
        assert!(!fails.is_empty());
        assert!(fails.iter().all(|s| s.iter().any(|s| matches!(s, Span::Fig(f, _) if *f == ball))), "{fails:?}");
    }
}
