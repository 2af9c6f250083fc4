//! The slope of a flight, and what it makes of a measure.
//!
//! With r the riser, t the tread and c the slope from nosing to nosing (c^2 = r^2 + t^2):
//! along the slope = level x c/t; plumb = square x c/t; a level step drops r/t of itself
//! (plane geometry, no source).

use super::{inches, worked};
use crate::figure::{Fig, Unit, Why};
use crate::limits;
use crate::measure::{Length, Q, arctan_degrees};

/// The rise and tread that make a slope.
#[derive(Clone, Debug, PartialEq)]
pub struct Rake {
    rise: Fig,
    tread: Fig,
    /// Nosing to nosing.
    slope: Length,
    degrees: Q,
}

impl Rake {
    /// The slope of a riser on a tread. `None` where either is not above nothing or is past
    /// what can be carried.
    pub fn new(rise: Fig, tread: Fig) -> Option<Rake> {
        let (r, t) = (rise.as_length()?, tread.as_length()?);
        if !(r.is_positive() && t.is_positive()) {
            return None;
        }
        let (slope, degrees) = (hypotenuse(r, t)?, arctan_degrees(r.ratio(t)?)?);
        Some(Rake { rise, tread, slope, degrees })
    }

    /// One riser.
    pub fn rise(&self) -> &Fig {
        &self.rise
    }

    /// One tread, nosing to nosing on the level.
    pub fn tread(&self) -> &Fig {
        &self.tread
    }

    /// The slope's angle in degrees from the level: what a saw is set to for a plumb cut.
    pub fn angle(&self) -> Fig {
        let why = Why::Formula("the angle whose tangent is riser over tread", self.inputs());
        Fig::quantity(self.degrees, Unit::Degrees, why)
    }

    /// True past the angle where a stair is a ladder.
    pub fn is_ladder(&self) -> bool {
        self.degrees > Q::from_integer(i128::from(limits::STEEPEST.value))
    }

    /// From one nosing to the next.
    pub fn step(&self) -> Fig {
        worked(self.slope, "the root of riser squared + tread squared", self.inputs())
    }

    /// How much the nosing line falls over so much on the level.
    pub fn drop(&self, level: &Fig) -> Fig {
        let l = self.drop_of(inches(level));
        self.fig(l, "level x riser over tread", "level", level)
    }

    /// A level measure laid along the slope.
    pub fn along(&self, level: &Fig) -> Fig {
        self.fig(self.stretched(inches(level)), "level x (nosing to nosing over tread)", "level", level)
    }

    /// A measure along the slope laid on the level.
    pub fn level(&self, along: &Fig) -> Fig {
        self.fig(
            self.shrunk(inches(along)),
            "along the slope x (tread over nosing to nosing)",
            "along the slope",
            along,
        )
    }

    /// What a plumb measure is square to the slope.
    pub fn square(&self, plumb: &Fig) -> Fig {
        self.fig(self.shrunk(inches(plumb)), "plumb x (tread over nosing to nosing)", "plumb", plumb)
    }

    /// What a measure square to the slope is plumb: also a plumb cut through a rail so deep.
    pub fn plumb(&self, square: &Fig) -> Fig {
        self.fig(
            self.stretched(inches(square)),
            "square to the slope x (nosing to nosing over tread)",
            "square",
            square,
        )
    }

    pub(super) fn drop_of(&self, level: Length) -> Length {
        let (r, t) = (inches(&self.rise), inches(&self.tread));
        r.ratio(t).and_then(|part| level.times(part)).map_or(level, |l| if level.is_exact() { l } else { l.inexact() })
    }

    pub(super) fn stretched(&self, l: Length) -> Length {
        self.scaled(l, self.slope, inches(&self.tread))
    }

    pub(super) fn shrunk(&self, l: Length) -> Length {
        self.scaled(l, inches(&self.tread), self.slope)
    }

    /// `l` times over/under, carried to nine places where the slope is irrational.
    fn scaled(&self, l: Length, over: Length, under: Length) -> Length {
        let exact = l.times(over.q()).and_then(|l| l.over(under.q()));
        // Lengths in the sane range of their slots stay far inside 128 bits.
        let scaled = exact.unwrap_or(l);
        if self.slope.is_exact() && l.is_exact() { scaled } else { scaled.rounded(Length::CARRIED).inexact() }
    }

    fn inputs(&self) -> Vec<(&'static str, Fig)> {
        vec![("riser", self.rise.clone()), ("tread", self.tread.clone())]
    }

    fn fig(&self, l: Length, says: &'static str, name: &'static str, from: &Fig) -> Fig {
        let mut inputs = vec![(name, from.clone())];
        inputs.extend(self.inputs());
        worked(l, says, inputs)
    }
}

/// The root of two squares, carried to twelve places where the numbers allow it, so that a
/// long slope made of it is still good to nine.
pub(super) fn hypotenuse(a: Length, b: Length) -> Option<Length> {
    let thousand = Q::from_integer(1000);
    let fine = Length::diagonal(a.times(thousand)?, b.times(thousand)?).and_then(|d| d.over(thousand));
    let plain = || Length::diagonal(a, b);
    let coarse = || Length::diagonal(a.rounded(1_000_000).inexact(), b.rounded(1_000_000).inexact());
    fine.or_else(plain).or_else(coarse)
}
