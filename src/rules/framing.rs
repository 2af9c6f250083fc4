//! Checks on what lies under the posts: a joist beside each, or blocking.

use super::say::{fig, of_run};
use crate::job::{Blocking, Job};
use crate::layout::{Layout, Missed, Under, framing_untold};
use crate::reply::Span;

/// True where blocking was told at every post: each has its framing then.
fn blocked(job: &Job) -> bool {
    job.settings.blocking == Some(Blocking::AtPosts)
}

/// Posts on a rim across the joists with no joist beside them.
pub(super) fn missed(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if blocked(job) {
        return Vec::new();
    }
    let sides = layout.framing.iter().filter_map(|f| match &f.under {
        Under::Missed(posts) if !posts.is_empty() => Some((f, posts)),
        Under::Missed(_) | Under::RimAlong(_) => None,
    });
    let said = sides.map(|(f, posts)| {
        let mut spans = Vec::new();
        for (i, post) in posts.iter().enumerate() {
            spans.extend((i > 0).then_some(Span::Say("; ")));
            spans.extend(one(post));
        }
        spans.push(Span::Say("."));
        of_run(f.run, f.name.as_deref(), spans)
    });
    said.collect()
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

/// A rim along the joists.
pub(super) fn rim_along(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if blocked(job) {
        return Vec::new();
    }
    let sides = layout.framing.iter().filter_map(|f| match &f.under {
        Under::RimAlong(posts) if posts.as_q() > crate::measure::Q::from_integer(0) => Some((f, posts)),
        Under::RimAlong(_) | Under::Missed(_) => None,
    });
    let said = sides.map(|(f, posts)| {
        let says = "its rim runs along the joists: every post wants blocking back to them, ";
        let spans = [Span::Say(says), fig(posts), Span::Say(" between its ends.")];
        of_run(f.run, f.name.as_deref(), spans)
    });
    said.collect()
}

/// Some of the joists' facts told and not the others: nothing can be checked.
pub(super) fn half_told(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let Some(untold) = framing_untold(&job.settings) else { return Vec::new() };
    let mut spans = vec![Span::Say("posts cannot be checked against the joists until it is told ")];
    for (i, says) in untold.into_iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say(" and ")));
        spans.push(Span::Say(says));
    }
    spans.push(Span::Say("."));
    vec![spans]
}
