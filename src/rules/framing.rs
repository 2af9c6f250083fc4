//! Checks on what lies under the posts: a joist beside each, or blocking.

use super::say::{fig, of_run};
use crate::job::{Blocking, Job};
use crate::layout::{Layout, Missed, Part, Under, framing_untold};
use crate::reply::Span;
use crate::solve::choice;

/// True where blocking was told at every post: each has its framing then.
fn blocked(job: &Job) -> bool {
    choice::blocking(job) == Some(Blocking::AtPosts)
}

/// Posts on a rim across the joists with no joist beside them.
pub(super) fn missed(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if blocked(job) {
        return Vec::new();
    }
    let sides = layout.framing.iter().filter_map(|f| match &f.under {
        Under::Missed(posts) if !posts.is_empty() => Some((f, posts)),
        _ => None,
    });
    let said = sides.map(|(f, posts)| {
        let mut spans = Vec::new();
        for (i, post) in posts.iter().enumerate() {
            spans.extend((i > 0).then_some(Span::Say("; ")));
            spans.extend(one(post));
        }
        spans.push(Span::Say("."));
        of_run(f.run, f.name.as_deref(), beside_stairs(f.part).into_iter().chain(spans))
    });
    said.collect()
}

/// Said first of a flank of recessed stairs.
fn beside_stairs(part: Part) -> Option<Span> {
    matches!(part, Part::InLeft(_) | Part::InRight(_)).then_some(Span::Say("along the stairs let into the deck: "))
}

/// "the line post at 5'-4" stands between joists: 5'-5 1/2" is beside one and keeps the limit, or block it".
fn one(post: &Missed) -> Vec<Span> {
    let where_it_is = if post.on_joist { " stands on a joist: " } else { " stands between joists: " };
    let mut spans = vec![Span::Say("the "), Span::Say(post.kind.post()), Span::Say(" at "), fig(&post.at)];
    spans.push(Span::Say(where_it_is));
    match &post.spot {
        Some(spot) => spans.extend([fig(spot), Span::Say(" is beside one and keeps the limit, or block it there")]),
        None => spans.push(Span::Say("no spot beside one keeps it where it belongs, so block it there")),
    }
    spans
}

/// A rim along the joists, or across them at an angle.
pub(super) fn rim_along(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if blocked(job) {
        return Vec::new();
    }
    let along = "its rim runs along the joists: every post wants blocking back to them, ";
    let angled = "its rim crosses the joists at an angle: every post wants blocking cut to it, ";
    let sides = layout.framing.iter().filter_map(|f| match &f.under {
        Under::RimAlong(posts) => Some((f, along, posts)),
        Under::Angled(posts) => Some((f, angled, posts)),
        _ => None,
    });
    let some = sides.filter(|(_, _, posts)| posts.as_q() > crate::measure::Q::from_integer(0));
    let said = some.map(|(f, says, posts)| {
        let spans = [Span::Say(says), fig(posts), Span::Say(" between its ends.")];
        of_run(f.run, f.name.as_deref(), beside_stairs(f.part).into_iter().chain(spans))
    });
    said.collect()
}

/// Some of the joists' facts told and not the others: nothing can be checked.
pub(super) fn half_told(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let Some(untold) = framing_untold(&job.settings) else { return astray(layout) };
    let mut spans = vec![Span::Say("posts cannot be checked against the joists until it is told ")];
    for (i, says) in untold.into_iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say(" and ")));
        spans.push(Span::Say(says));
    }
    spans.push(Span::Say("."));
    vec![spans]
}

/// Runs whose place over the joists nobody told.
fn astray(layout: &Layout) -> Vec<Vec<Span>> {
    let says = "its posts cannot be checked against the joists: which way it goes and where it starts is not told; tell the deck's sides, walked from the house.";
    let unknown = layout.framing.iter().filter(|f| f.under == Under::Unknown);
    unknown.map(|f| of_run(f.run, f.name.as_deref(), [Span::Say(says)])).collect()
}
