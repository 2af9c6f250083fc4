//! Places and ways in plan: x along the house to the right, y straight out from it.

use crate::measure::{Length, Q, half_tangent, sin_cos};

/// A place, in inches.
pub(super) type Point = (Length, Length);

/// A way to go, as a unit direction; exact only at right angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Way {
    x: Length,
    y: Length,
}

/// So many times, flagged inexact where the factor is.
///
/// What is irrational is carried to nine places before it is multiplied and after: left to
/// grow, a millimetre told and two turns of the edge pass what exact numbers reach.
pub(super) fn scaled(l: Length, by: Length) -> Length {
    if by.is_exact() && (l.is_exact() || by.q().is_integer()) {
        return l.times(by.q()).unwrap_or(Length::ZERO);
    }
    carried(l).times(carried(by).q()).map_or(Length::ZERO, |s| carried(s).inexact())
}

pub(super) fn plus(a: Point, b: Point) -> Point {
    (a.0 + b.0, a.1 + b.1)
}

pub(super) fn less(a: Point, b: Point) -> Point {
    (a.0 - b.0, a.1 - b.1)
}

impl Way {
    /// So many degrees clockwise from straight out.
    pub fn degrees(degrees: i32) -> Way {
        let (sin, cos) = sin_cos(degrees);
        Way { x: sin, y: cos }
    }

    /// A quarter turn clockwise: into the deck, walking with it on the right.
    pub fn right(self) -> Way {
        Way { x: self.y, y: -self.x }
    }

    /// This way turned on by half of so many degrees, clockwise.
    pub fn half_turned(self, degrees: i32) -> Option<Way> {
        let tangent = signed_half_tangent(degrees)?;
        let (to_right, long) = (self.right(), Length::diagonal(Length::inches(1), tangent)?);
        let part = |a: Length, b: Length| (a + scaled(b, tangent)).over(long.q()).map(|l| carried(l).inexact());
        Some(Way { x: part(self.x, to_right.x)?, y: part(self.y, to_right.y)? })
    }

    /// So far this way.
    pub fn by(self, l: Length) -> Point {
        (scaled(l, self.x), scaled(l, self.y))
    }

    /// How far a place lies this way.
    pub fn reach(self, p: Point) -> Length {
        scaled(p.0, self.x) + scaled(p.1, self.y)
    }
}

/// Rounded to the places an irrational length is carried to.
fn carried(l: Length) -> Length {
    l.rounded(Length::CARRIED)
}

/// tan(turn / 2), below nothing for a turn to the left.
pub(super) fn signed_half_tangent(degrees: i32) -> Option<Length> {
    let size = half_tangent(degrees.abs())?;
    Some(if degrees < 0 { -size } else { size })
}

/// The square root of a number of square inches, carried; exact where it is rational.
pub(super) fn sqrt(q: Q) -> Option<Length> {
    let (n, d) = (u128::try_from(*q.numer()).ok()?, u128::try_from(*q.denom()).ok()?);
    let (rn, rd) = (n.isqrt(), d.isqrt());
    if rn * rn == n && rd * rd == d {
        return Length::new(i128::try_from(rn).ok()?, i128::try_from(rd).ok()?);
    }
    let carried = Length::CARRIED.unsigned_abs();
    let root = (n.checked_mul(carried)?.checked_mul(carried)? / d).isqrt();
    Length::new(i128::try_from(root).ok()?, Length::CARRIED).map(Length::inexact)
}
