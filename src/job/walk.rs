//! The outline as points on the ground, and what cannot be built of it: sides that cross,
//! stairs off the end of a side, a recess deeper than the deck.

use super::apply::check_openings;
use super::outline::{Filled, Heading, Open, filled, headings, scaled, stands_free};
use super::{Impossible, Job, Run, RunId};
use crate::measure::{Length, Q};
use num_traits::{CheckedMul, CheckedSub, Signed, Zero};

/// A point: along the house to the right, out from it.
pub type Point = (Length, Length);

/// One side of the outline, as far as the walk is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// The side's run.
    pub run: RunId,
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    pub(super) heading: Heading,
}

/// The sides in walking order up to the first of unknown length, from the house's left
/// end at (0, 0). All of them where every length is told or follows.
pub fn legs(outline: &Filled) -> Vec<Leg> {
    let sides: Vec<&Run> = outline.job.runs.iter().filter(|r| r.turn.is_some()).collect();
    let headings = headings(sides.iter().filter_map(|r| r.turn));
    let mut at = (Length::ZERO, Length::ZERO);
    let known = sides.iter().zip(headings).map_while(|(r, heading)| r.length.map(|t| (r.id, t.length, heading)));
    known
        .map(|(run, length, heading)| {
            let from = at;
            at = (from.0 + scaled(length, heading.x), from.1 + scaled(length, heading.y));
            Leg { run, from, to: at, heading }
        })
        .collect()
}

/// A walk that does not come home, and the told sides that decide it.
#[derive(Clone, Debug, PartialEq)]
pub struct Miss {
    /// By how much.
    pub by: Open,
    /// The sides that reach along the house, told so.
    pub along: Vec<RunId>,
    /// The sides that reach out from it or home, told so.
    pub out: Vec<RunId>,
}

/// How the outline misses its end, where it does.
pub fn miss(outline: &Filled) -> Option<Miss> {
    let by = outline.open?;
    let legs = legs(outline);
    let told = |part: fn(Heading) -> Length| -> Vec<RunId> {
        let reaches = legs.iter().filter(|l| !part(l.heading).is_zero()).map(|l| l.run);
        reaches.filter(|id| !outline.derived.contains(id)).collect()
    };
    Some(Miss { by, along: told(|h| h.x), out: told(|h| h.y) })
}

/// Why the outline cannot be, if it cannot.
pub(super) fn check(job: &Job) -> Result<(), Impossible> {
    if job.runs.iter().all(|r| r.turn.is_none()) {
        return Ok(());
    }
    let outline = filled(job);
    for run in outline.job.runs.iter().filter(|r| outline.derived.contains(&r.id)) {
        check_openings(run)?;
    }
    let legs = legs(&outline);
    if let Some((a, b)) = crossing(&legs, stands_free(job)) {
        return Err(Impossible::SidesCross(a, b));
    }
    legs.iter().try_for_each(|leg| check_recess(&outline.job, leg, &legs))
}

/// The first two sides, not neighbours, that meet.
fn crossing(legs: &[Leg], free: bool) -> Option<(RunId, RunId)> {
    let last = legs.len().saturating_sub(1);
    let pairs = (0..legs.len()).flat_map(|j| (0..j.saturating_sub(1)).map(move |i| (i, j)));
    // With no house between them, the last side comes home to the first.
    let mut pairs = pairs.filter(|pair| !(free && *pair == (0, last))).map(|(i, j)| (&legs[i], &legs[j]));
    pairs.find(|(a, b)| meet(a, b).unwrap_or(false)).map(|(a, b)| (a.run, b.run))
}

/// True where two segments share a point. `None` past the reach of exact numbers.
fn meet(a: &Leg, b: &Leg) -> Option<bool> {
    let sides = [side(a, b.from)?, side(a, b.to)?, side(b, a.from)?, side(b, a.to)?];
    let apart = |one: Q, other: Q| one.is_positive() && other.is_positive() || one.is_negative() && other.is_negative();
    if sides.iter().all(Zero::is_zero) {
        return Some(overlap(a, b, |p| p.0) && overlap(a, b, |p| p.1));
    }
    Some(!apart(sides[0], sides[1]) && !apart(sides[2], sides[3]))
}

/// On which side of a leg a point lies: a cross product.
fn side(leg: &Leg, p: Point) -> Option<Q> {
    let (x, y) = (leg.to.0 - leg.from.0, leg.to.1 - leg.from.1);
    let (px, py) = (p.0 - leg.from.0, p.1 - leg.from.1);
    x.q().checked_mul(&py.q())?.checked_sub(&y.q().checked_mul(&px.q())?)
}

fn overlap(a: &Leg, b: &Leg, of: fn(Point) -> Length) -> bool {
    let span = |l: &Leg| (of(l.from).min(of(l.to)), of(l.from).max(of(l.to)));
    let ((a_lo, a_hi), (b_lo, b_hi)) = (span(a), span(b));
    a_lo <= b_hi && b_lo <= a_hi
}

/// A recess must leave some deck between its head and whatever lies behind it.
fn check_recess(job: &Job, leg: &Leg, legs: &[Leg]) -> Result<(), Impossible> {
    let Some(run) = job.run(leg.run) else { return Ok(()) };
    let recessed = run.stairs.iter().filter_map(|s| s.recess.map(|r| (s, r)));
    for (stairs, recess) in recessed {
        let (Some(left), _) = stairs.flanks(run.length.map(|t| t.length)) else { continue };
        match depth(leg, left, stairs.width, legs) {
            Some(deck) if recess >= deck => return Err(Impossible::RecessTooDeep { recess, deck }),
            _ => {}
        }
    }
    Ok(())
}

/// How deep the deck is, square in from an opening: to the nearest side or the house.
fn depth(leg: &Leg, start: Length, width: Length, legs: &[Leg]) -> Option<Length> {
    let (first, last) = (legs.first()?, legs.last()?);
    // The house closes the walk.
    let house = Leg { run: last.run, from: last.to, to: first.from, heading: leg.heading };
    let others = legs.iter().filter(|l| l.run != leg.run).chain([&house]);
    others.filter_map(|other| nearest(leg, start, start + width, other)).min()
}

/// The nearest that a segment comes to a side, within a stretch of that side.
fn nearest(leg: &Leg, start: Length, end: Length, other: &Leg) -> Option<Length> {
    let (a, b) = (seen(leg, other.from)?, seen(leg, other.to)?);
    let inside = |p: &Point| p.0 > start && p.0 < end;
    let ends = [a, b].into_iter().filter(inside).map(|p| p.1);
    let cut = [start, end].into_iter().filter_map(|u| at(a, b, u));
    ends.chain(cut).filter(|w| w.is_positive()).min()
}

/// A point as seen from a side: along it from its start, and square in from it (right of
/// the walk, where the deck is).
fn seen(leg: &Leg, p: Point) -> Option<Point> {
    let (x, y) = (p.0 - leg.from.0, p.1 - leg.from.1);
    let (hx, hy) = (leg.heading.x, leg.heading.y);
    let part = |l: Length, h: Length| l.times(h.q()).map(|s| if h.is_exact() { s } else { s.inexact() });
    Some((part(x, hx)?.plus(part(y, hy)?)?, part(x, hy)?.less(part(y, hx)?)?))
}

/// How far in a segment lies so far along, where it reaches over that place.
fn at(a: Point, b: Point, along: Length) -> Option<Length> {
    let (lo, hi) = if a.0 <= b.0 { (a, b) } else { (b, a) };
    if lo.0 > along || hi.0 < along || lo.0 == hi.0 {
        return None;
    }
    let part = (along - lo.0).ratio(hi.0 - lo.0)?;
    lo.1.plus((hi.1 - lo.1).times(part)?)
}
