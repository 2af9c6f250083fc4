//! Where each stretch of guard lies on the ground, as far as it was told: what its posts are
//! held against the joists by.

use super::Part;
use super::placed::{Placed, RunLayout};
use crate::job::outline::Filled;
use crate::job::walk::{Leg, Point, legs};
use crate::job::{End, JoistsRun, Run};
use crate::measure::Length;

/// Where a stretch lies: x along the house from its left end, y out from the siding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Reach {
    /// From one point to another.
    Between {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// Only its direction is known, as a joist's.
    Way(JoistsRun),
    /// Not even that.
    Unknown,
}

/// Every stretch that is laid out, and where it lies.
pub(super) fn reaches<'a>(outline: &Filled, runs: &'a [RunLayout]) -> Vec<(&'a RunLayout, &'a Placed, Reach)> {
    let legs = legs(outline);
    let lies = |r: &RunLayout| {
        let run = outline.job.run(r.id)?;
        let leg = legs.iter().find(|l| l.run == r.id);
        match (r.part, leg) {
            (Part::InLeft(n), leg) => flank(run, leg?, n, r, true),
            (Part::InRight(n), leg) => flank(run, leg?, n, r, false),
            (_, Some(leg)) => Some(Reach::Between { from: leg.from, to: leg.to }),
            // A side of the outline whose place is not known yet will be.
            (_, None) if run.turn.is_some() => None,
            (_, None) => Some(by_ends(run)),
        }
    };
    runs.iter().filter_map(|r| Some((r, r.result.as_ref().ok()?, lies(r)?))).collect()
}

/// A run told without an outline: out from the house where one of its ends is there, else as
/// its name says. One that starts at the house lies at its own marks out from it.
fn by_ends(run: &Run) -> Reach {
    let length = run.length.map_or(Length::ZERO, |t| t.length);
    let out = |from, to| Reach::Between { from: (Length::ZERO, from), to: (Length::ZERO, to) };
    match (run.from, run.to, run.name.as_deref()) {
        (Some(End::House), Some(End::House), Some("front" | "back")) => Reach::Way(JoistsRun::Along),
        (Some(End::House), Some(End::House), _) => Reach::Unknown,
        (Some(End::House), _, _) => out(Length::ZERO, length),
        (_, Some(End::House), _) => out(length, Length::ZERO),
        (_, _, Some("front" | "back")) => Reach::Way(JoistsRun::Along),
        (_, _, Some("left" | "right")) => Reach::Way(JoistsRun::Out),
        _ => Reach::Unknown,
    }
}

/// A flank of the run's `n`th stairs from the left: square in from the side, from the mouth to
/// the head on the left of them, or back on the right.
fn flank(run: &Run, leg: &Leg, n: u8, r: &RunLayout, left: bool) -> Option<Reach> {
    let length = run.length.map(|t| t.length);
    let stairs = *run.stairs.along(length).get(usize::from(n))?;
    let edge = stairs.flanks(length).0? + if left { Length::ZERO } else { stairs.width };
    let deep = r.result.as_ref().ok()?.length.as_length()?;
    let (x, y) = way(leg)?;
    let mouth = step(leg.from, (x, y), edge);
    // The deck lies on the right of the walk.
    let head = step(mouth, (y, -x), deep);
    let (from, to) = if left { (mouth, head) } else { (head, mouth) };
    Some(Reach::Between { from, to })
}

/// The direction of a side square to the house; none for another.
fn way(leg: &Leg) -> Option<(i64, i64)> {
    let sign = |l: Length| i64::from(l.is_positive()) - i64::from(l < Length::ZERO);
    let (x, y) = (sign(leg.to.0 - leg.from.0), sign(leg.to.1 - leg.from.1));
    (x == 0 || y == 0).then_some((x, y))
}

fn step(at: Point, (x, y): (i64, i64), by: Length) -> Point {
    (at.0 + by * x, at.1 + by * y)
}
