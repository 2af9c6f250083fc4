//! Checks on runs as told: their ends, the manner of their lengths.

use super::say::{about, fig};
use crate::figure::Fig;
use crate::job::{End, Job, Run};
use crate::layout::Layout;
use crate::measure::Shade;
use crate::reply::Span;
use crate::solve::choice;

fn ends(r: &Run) -> impl Iterator<Item = End> {
    r.from.into_iter().chain(r.to)
}

/// An end with no post told: it gets one.
pub(super) fn free_end(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let free = job.runs.iter().filter(|r| ends(r).any(|e| e == End::OpenEnd));
    free.map(|r| about(r, [Span::Say("a post is set at the open end.")])).collect()
}

/// A run that dies into a wall, with no word of what stands there.
pub(super) fn house_end_untold(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let untold = choice::house_end(job).is_none();
    let walled = job.runs.iter().filter(|r| untold && ends(r).any(End::is_wall));
    let says = "a post against the wall is taken; say bracket at the house if the rail is fixed to the wall instead.";
    walled.map(|r| about(r, [Span::Say(says)])).collect()
}

/// A length told as about, strong or shy.
pub(super) fn length_not_exact(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let told = job.runs.iter().filter_map(|r| r.length.map(|l| (r, l)));
    let loose = told.filter(|(_, l)| l.about || l.shade.is_some());
    let spans = |(r, l): (&Run, crate::job::Told)| {
        let manner = match l.shade {
            Some(Shade::Strong) => " was told strong",
            Some(Shade::Shy) => " was told shy",
            None => " was told as about",
        };
        let length = fig(&Fig::told(l.length, "the run's length"));
        about(r, [length, Span::Say(manner), Span::Say("; it is laid out as said: measure it before cutting.")])
    };
    loose.map(spans).collect()
}
