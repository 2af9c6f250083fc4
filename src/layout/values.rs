//! The figures of a layout, by their names in the JSON contract.

use super::{Bay, BayKind, Layout, Placed, Post};
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
        values.posts.extend(placed.posts.iter().map(|p| post(run.id, placed, p)));
        values.bays.extend(placed.bays.iter().filter(|b| b.kind != BayKind::Stairs).map(|b| bay(run.id, b)));
        values.more.extend(openings(placed));
    }
    if layout.runs.iter().any(|r| r.result.is_ok()) {
        values.more.extend(counts(layout));
    }
    values
}

fn post(run: RunId, placed: &Placed, p: &Post) -> PostFig {
    let (kind, why) = (p.kind.name(), p.kind.why());
    PostFig { run, at: p.at.clone(), near_face: p.near_face.clone(), from: placed.origin, kind, why }
}

fn bay(run: RunId, b: &Bay) -> BayFig {
    let (from, to, gate) = (b.from, b.to, b.kind.is_gate());
    BayFig { run, clear: b.clear.clone(), centre: b.centre.clone(), from, to, gate }
}

fn openings(placed: &Placed) -> Vec<(&'static str, Fig)> {
    let mut more = vec![("run_length", placed.length.clone())];
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
    let posts = placed().map(|p| p.posts.len() as u64).sum();
    let bays = placed().map(|p| p.rail_bays().count() as u64).sum();
    let why = || Why::Formula("counted run by run; a corner post two runs share is counted in both", Vec::new());
    [("posts_count", Fig::count(posts, why())), ("bays_count", Fig::count(bays, why()))]
}
