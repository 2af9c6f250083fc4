//! The figures of a layout, by their names in the JSON contract.

use super::{Bay, BayKind, Layout, Placed, Post, RunLayout};
use crate::figure::{Fig, Why};
use crate::job::RunId;
use crate::reply::{BayFig, PostFig, Values};

/// The figures of every run laid out in `layout`; see [`Layout::only`] for one run's.
///
/// `more` holds `posts_count` and `bays_count` over the runs laid out, and for each run
/// `run_length`, `flank_left` and `flank_right`, `stair_opening`, `gate_opening`.
pub fn values(layout: &Layout) -> Values {
    let mut values = Values { clear_max: layout.clear_max.clone(), ..Values::default() };
    for run in &layout.runs {
        let Ok(placed) = &run.result else { continue };
        values.posts.extend(placed.posts.iter().map(|p| post(run, placed, p)));
        values.bays.extend(placed.bays.iter().filter(|b| b.kind != BayKind::Stairs).map(|b| bay(run, b)));
        values.more.extend(openings(placed));
        values.more.extend(corner_gaps(run));
    }
    values.more.extend(layout.line.clone().map(|l| ("line", l)));
    if layout.runs.iter().any(|r| r.result.is_ok()) {
        values.more.extend(counts(layout));
    }
    values
}

/// The gaps across this run's corners of two posts; each corner is the later run's.
fn corner_gaps(run: &RunLayout) -> impl Iterator<Item = (&'static str, Fig)> {
    run.meets.iter().flatten().filter(|m| m.later).filter_map(|m| m.gap.clone()).map(|gap| ("corner_gap", gap))
}

/// The run a post stands in too, where it is the one post of a corner.
fn shared_with(run: &RunLayout, placed: &Placed, p: &Post) -> Option<RunId> {
    let meets = |end: usize| run.meets[end].as_ref().filter(|m| m.gap.is_none()).map(|m| m.run);
    let is = |post: Option<&Post>| post.is_some_and(|first| first.near == p.near);
    meets(0).filter(|_| is(placed.posts.first())).or_else(|| meets(1).filter(|_| is(placed.posts.last())))
}

fn post(run: &RunLayout, placed: &Placed, p: &Post) -> PostFig {
    let (kind, why) = (p.kind.name(), p.kind.why());
    let (shared, stretch) = (shared_with(run, placed, p), run.part.suffix());
    PostFig {
        run: run.id,
        stretch,
        shared,
        at: p.at.clone(),
        near_face: p.near_face.clone(),
        from: placed.origin,
        kind,
        why,
    }
}

fn bay(run: &RunLayout, b: &Bay) -> BayFig {
    let (from, to, gate) = (b.from, b.to, b.kind.is_gate());
    BayFig { run: run.id, stretch: run.part.suffix(), clear: b.clear.clone(), centre: b.centre.clone(), from, to, gate }
}

fn openings(placed: &Placed) -> Vec<(&'static str, Fig)> {
    let mut more = vec![("run_length", placed.length.clone())];
    more.extend(placed.on_line.clone().map(|l| ("run_on_line", l)));
    more.extend(placed.head.clone().map(|l| ("stair_opening", l)));
    if let Some([left, right]) = &placed.flanks {
        more.extend([("flank_left", left.clone()), ("flank_right", right.clone())]);
    }
    let opening = |b: &Bay| match b.kind {
        BayKind::Rail => None,
        BayKind::Gate => Some(("gate_opening", b.clear.clone())),
        BayKind::Stairs | BayKind::GatedStairs => Some(("stair_opening", b.clear.clone())),
    };
    more.extend(placed.bays.iter().filter_map(opening));
    more.extend(placed.beyond.clone().map(|w| ("gate_opening", w)));
    more
}

/// Posts and rail bays over all runs, each run's own posts counted.
pub(super) fn counts(layout: &Layout) -> [(&'static str, Fig); 2] {
    let placed = || layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    let posts = layout.distinct_posts() as u64;
    let bays = placed().map(|p| p.rail_bays().count() as u64).sum();
    let why = || {
        Why::Formula(
            "counted over the runs laid out; a corner post that two sides of the outline share is one",
            Vec::new(),
        )
    };
    [("posts_count", Fig::count(posts, why())), ("bays_count", Fig::count(bays, why()))]
}
