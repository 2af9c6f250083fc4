//! The levels of a foot: what is left at each, and which has the least.

use super::cut::{Cut, Spot};
use super::feet::Foot;
use crate::measure::Length;
use crate::strength::section::Corner;
use num_rational::Ratio;

/// The two levels of a foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Where it passes the decking.
    Decking,
    /// Where it passes the skirt and the rim.
    Rim,
}

impl Level {
    /// Its name in the JSON contract.
    pub fn name(self) -> &'static str {
        match self {
            Level::Decking => "decking",
            Level::Rim => "rim",
        }
    }
}

impl Foot {
    /// Its two levels from the top down; one where it is not stepped.
    pub fn levels(&self) -> Vec<(Level, &Cut)> {
        let both = [(Level::Decking, &self.upper), (Level::Rim, &self.lower)];
        if self.is_stepped() { both.into() } else { vec![both[1]] }
    }

    /// The level with the least left: the decking reaches out over the rim, so what is left
    /// there is part of what is left below.
    pub fn weakest_level(&self) -> (Level, &Cut) {
        let upper = self.is_stepped() && self.upper.area_left() < self.lower.area_left();
        if upper { (Level::Decking, &self.upper) } else { (Level::Rim, &self.lower) }
    }
}

/// The corners of what is left as a section's: exact, or carried to a thousandth of an inch, which no saw holds.
pub fn section_corners(ring: &[Spot]) -> Vec<Corner> {
    let plain = |l: Length| {
        if l.is_exact() { l.q() } else { (l.q() * Ratio::from_integer(1000)).round() / Ratio::from_integer(1000) }
    };
    ring.iter().map(|(x, y)| (plain(*x), plain(*y))).collect()
}
