//! Which runs meet at which corners.
//!
//! Sides of an outline meet in walking order, and where no house closes it the last meets
//! the first. Runs told without one are taken to, where one
//! ends at a corner and the next told starts at a corner of the same kind, or where they go
//! by the names of sides that adjoin: left and front, front and right. That is said.

use super::ground::{Neighbour, Side, gated, has_corner};
use crate::job::outline::closing;
use crate::job::{End, Job, Run, Turn};

/// An end of one of the runs.
type At = (usize, Side);

/// The two ends of each run of a filled job, in the runs' order.
pub(super) fn neighbours(job: &Job) -> Vec<[Neighbour; 2]> {
    let runs = &job.runs[..];
    let mut all = vec![[Neighbour::default(); 2]; runs.len()];
    let sides: Vec<usize> = (0..runs.len()).filter(|i| runs[*i].turn.is_some()).collect();
    let next = sides.windows(2).map(|pair| (pair[0], pair[1], runs[pair[1]].turn));
    let round = closing(job).and_then(|turn| Some((*sides.last()?, *sides.first()?, Some(turn))));
    for (before, after, turn) in next.chain(round) {
        let ends = [(before, Side::Finish), (after, Side::Start)];
        let shared = ends.iter().all(|(i, side)| has_corner(&runs[*i], *side));
        join(runs, &mut all, ends, Neighbour { turn, ..Neighbour::default() }, shared);
    }
    for ends in taken(runs) {
        let turn = side_turn(&runs[ends[0].0], ends[0].1);
        join(runs, &mut all, ends, Neighbour { turn, taken: true, ..Neighbour::default() }, true);
    }
    all
}

fn join(runs: &[Run], all: &mut [[Neighbour; 2]], ends: [At; 2], corner: Neighbour, shared: bool) {
    for ((i, side), (other, its)) in [(ends[0], ends[1]), (ends[1], ends[0])] {
        all[i][side as usize] = Neighbour {
            run: shared.then_some(runs[other].id),
            post_beyond: !shared && has_corner(&runs[other], its),
            gate: shared && gated(&runs[other], its),
            later: other < i,
            ..corner
        };
    }
}

/// The turn a square corner makes by its name; none at an angled one, whose turn nobody told.
fn side_turn(run: &Run, side: Side) -> Option<Turn> {
    match side.of(run).0 {
        Some(End::Corner) => Some(Turn::Right(90)),
        Some(End::InsideCorner) => Some(Turn::Left(90)),
        _ => None,
    }
}

/// The corners that runs without an outline are taken to share, each end in one at most.
fn taken(runs: &[Run]) -> Vec<[At; 2]> {
    let mut found: Vec<[At; 2]> = Vec::new();
    let in_order = (1..runs.len()).map(|i| [(i - 1, Side::Finish), (i, Side::Start)]);
    let in_order = in_order.filter(|[(a, _), (b, _)]| !apart(&runs[*a], &runs[*b]));
    // Names say which sides adjoin whatever order they were told in.
    for ends in by_name(runs).into_iter().chain(in_order) {
        let free = |at: &At| !found.iter().flatten().any(|used| used == at);
        if ends.iter().all(free) && same_corner(runs, ends) {
            found.push(ends);
        }
    }
    found
}

fn same_corner(runs: &[Run], ends: [At; 2]) -> bool {
    let outside = |(i, _): &At| runs[*i].turn.is_none();
    let corner = |(i, side): At| side_turn(&runs[i], side).filter(|_| has_corner(&runs[i], side));
    ends.iter().all(outside) && corner(ends[0]).is_some() && corner(ends[0]) == corner(ends[1])
}

/// True for two runs whose names say that they lie across from each other.
fn apart(a: &Run, b: &Run) -> bool {
    let pair = [a, b].map(|r| r.name.as_deref().unwrap_or_default());
    matches!(pair, ["left", "right"] | ["right", "left"] | ["front", "back"] | ["back", "front"])
}

/// The front's left corner with the left side's one corner, its right with the right side's.
fn by_name(runs: &[Run]) -> Vec<[At; 2]> {
    let named = |name: &str| runs.iter().position(|r| r.name.as_deref() == Some(name));
    let corner = |i: usize| match [Side::Start, Side::Finish].map(|side| has_corner(&runs[i], side)) {
        [true, false] => Some((i, Side::Start)),
        [false, true] => Some((i, Side::Finish)),
        _ => None,
    };
    let Some(front) = named("front") else { return Vec::new() };
    let sides = [("left", Side::Start), ("right", Side::Finish)];
    sides.iter().filter_map(|(name, of)| Some([(front, *of), corner(named(name)?)?])).collect()
}
