//! Checks on a told notch at the post's foot.

use super::say::{fig, inches};
use crate::figure::Fig;
use crate::job::{Anyway, Job, PostRole};
use crate::layout::{Layout, post_width};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::Span;
use crate::solve::{choice, told_length};

/// The notch told, if there is to be one.
pub(super) fn deep(job: &Job) -> Option<Length> {
    // A sleeve carries nothing: a whole post stands in it.
    if choice::notched_anyway(job) == Some(Anyway::Sleeve) {
        return None;
    }
    told_length(job, RowId::NotchDepth)
}

/// The widths of the job's posts, smallest first.
fn widths(job: &Job) -> Vec<(Length, Fig)> {
    let roles = [PostRole::Corner, PostRole::Line, PostRole::End, PostRole::Gate, PostRole::Stair];
    let figs = roles.iter().map(|r| post_width(&job.settings, &[*r]));
    let mut widths: Vec<_> = figs.filter_map(|f| f.as_length().map(|l| (l, f))).collect();
    widths.sort_by_key(|(l, _)| *l);
    widths
}

/// A 4x4, dry, green or as measured, is no wider than its nominal 4 in.
fn is_four(l: Length) -> bool {
    l <= Length::inches(limits::NOTCHED_POST.value)
}

/// A notch in a 4x4 where it meets the deck.
pub(super) fn in_4x4(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let barred = ": notched 4x4 guard posts are barred at the deck; leave them whole or go up a size.";
    notched(job, is_four, barred)
}

/// A notch in a larger post, which must be shown to carry the load.
pub(super) fn in_larger(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let shown = ": not barred by name, but what is left must be shown to carry the guard's load.";
    notched(job, |l| !is_four(l), shown)
}

/// The told notch in the first post of that kind, and what holds of it.
fn notched(job: &Job, kind: fn(Length) -> bool, says: &'static str) -> Vec<Vec<Span>> {
    let Some(depth) = deep(job) else { return Vec::new() };
    let post = widths(job).into_iter().find(|(l, _)| kind(*l));
    let spans = |(_, width): (Length, Fig)| {
        let (notch, post) = (inches(depth, "the notch"), fig(&width));
        vec![Span::Say("a notch of "), notch, Span::Say(" in a post of "), post, Span::Say(says)]
    };
    post.map(spans).into_iter().collect()
}

/// A notch of half the post or more.
pub(super) fn takes_half(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let smallest = widths(job).into_iter().next();
    let (Some(depth), Some((width, fig_width))) = (deep(job), smallest) else { return Vec::new() };
    if depth * limits::NOTCH_HALF.value < width {
        return Vec::new();
    }
    let tail = if depth >= width { ": nothing of it would be left." } else { ": half the post or more would be gone." };
    let told = inches(depth, "the notch");
    vec![vec![Span::Say("a notch of "), told, Span::Say(" in a post of "), fig(&fig_width), Span::Say(tail)]]
}
