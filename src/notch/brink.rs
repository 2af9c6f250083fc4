//! The deck's brink near a post: straight edges walked with the deck on the right, and what
//! lies so far inside them.

use super::point::{Point, Way, plus, scaled, signed_half_tangent};
use crate::measure::Length;

/// How far the edges of a lone corner are drawn: past any post that can be told.
const REACH: i64 = 4_000;
/// How far an outline is drawn on behind the house's wall.
const BEHIND: i64 = 120;
/// The steps, in degrees, in which a lone corner is closed round its back.
const STEP: i32 = 60;

/// One straight edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    /// Its way, in whole degrees clockwise from straight out.
    pub degrees: i32,
    /// Its length.
    pub length: Length,
}

/// The brink: where it starts, its edges, and how it is closed behind.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Brink {
    start: Point,
    edges: Vec<Edge>,
    /// Closed through these places behind the first and the last edge.
    behind: Vec<Point>,
}

impl Brink {
    /// A straight edge through the origin, heading so.
    pub fn straight(degrees: i32) -> Brink {
        Brink::corner(degrees, 0)
    }

    /// A corner at the origin: an edge heading so comes to it and turns so many degrees
    /// right (an outside corner) or, below nothing, left.
    pub fn corner(degrees: i32, turn: i32) -> Brink {
        let far = Length::inches(REACH);
        let edges = vec![Edge { degrees, length: far }, Edge { degrees: degrees + turn, length: far }];
        // Round the back, from the edge going out clockwise to the edge coming in.
        let round = (degrees + turn + STEP..degrees + 180).step_by(STEP as usize);
        let behind = round.map(|d| Way::degrees(d).by(far * 2)).collect();
        let start = Way::degrees(degrees).by(-far);
        Brink { start, edges, behind }
    }

    /// A whole outline from the house and home. Its first and last edges run on behind the
    /// wall, which no post stands in.
    pub fn outline(start: Point, mut edges: Vec<Edge>) -> Brink {
        let behind = Length::inches(BEHIND);
        let first = edges.first().map_or(0, |e| e.degrees);
        if let Some(e) = edges.first_mut() {
            e.length = e.length + behind;
        }
        if let Some(e) = edges.last_mut() {
            e.length = e.length + behind;
        }
        Brink { start: plus(start, Way::degrees(first).by(-behind)), edges, behind: Vec::new() }
    }

    /// True for a deck's whole outline.
    pub fn is_outline(&self) -> bool {
        self.edges.iter().all(|e| e.length < Length::inches(REACH))
    }

    /// The way of one of its edges, in degrees.
    pub fn heading(&self, edge: usize) -> Option<i32> {
        self.edges.get(edge).map(|e| e.degrees)
    }

    /// The corners of the region so far inside the brink; `None` where an edge is too short
    /// for that, or past what numbers reach.
    pub fn inside(&self, by: Length) -> Option<Vec<Point>> {
        let turns: Vec<i32> = self.edges.windows(2).map(|pair| turn(pair[0].degrees, pair[1].degrees)).collect();
        let mitres: Option<Vec<Length>> =
            turns.iter().map(|t| signed_half_tangent(*t).map(|m| scaled(by, m))).collect();
        let mitres = mitres?;
        let mitre = |k: Option<usize>| k.and_then(|k| mitres.get(k)).copied().unwrap_or(Length::ZERO);
        let mut at = self.start;
        let mut corners = Vec::new();
        for (k, edge) in self.edges.iter().enumerate() {
            let way = Way::degrees(edge.degrees);
            let (before, after) = (mitre(k.checked_sub(1)), mitre(Some(k)));
            if !(edge.length - before - after).is_positive() {
                return None;
            }
            if k == 0 {
                corners.push(plus(at, way.right().by(by)));
            }
            at = plus(at, way.by(edge.length));
            corners.push(plus(plus(at, way.right().by(by)), way.by(-after)));
        }
        corners.extend(self.behind.iter().copied());
        Some(corners)
    }
}

/// A turn from one way to another, right positive, from -180 to 180 degrees.
pub(super) fn turn(from: i32, to: i32) -> i32 {
    (to - from + 180).rem_euclid(360) - 180
}

#[cfg(test)]
mod tests {
    use super::super::cut::{Cut, Size};
    use super::*;
    use num_rational::Ratio;
    use proptest::prelude::*;

    fn at_corner(degrees: i32, turned: i32, line: Length, inset: Length) -> Cut {
        let brink = Brink::corner(degrees, turned);
        let centre = brink.inside(line).expect("the edges reach")[1];
        let region = brink.inside(inset).expect("the edges reach");
        Cut::of(Size::square(Length::sixteenths(56)), centre, Way::degrees(degrees), &region).expect("on the grid")
    }

    proptest! {
        /// Turning the whole deck changes nothing: exactly at right angles, and to a
        /// millionth of a square inch at any other.
        #[test]
        fn turning_the_deck_changes_nothing(
            by in 0_i32..360, turned in prop_oneof![Just(90), Just(-90), Just(0), -140_i32..140], line in -20_i64..20, inset in 0_i64..24,
        ) {
            let (line, inset) = (Length::sixteenths(line), Length::sixteenths(inset));
            let (here, there) = (at_corner(0, turned, line, inset), at_corner(by, turned, line, inset));
            if by % 90 == 0 && turned % 90 == 0 {
                prop_assert_eq!(&here.off, &there.off);
                prop_assert_eq!(&here.shape, &there.shape);
            }
            let apart = here.area_off() - there.area_off();
            prop_assert!(apart < Ratio::new(1, 1_000_000) && apart > Ratio::new(-1, 1_000_000));
        }
    }
}
