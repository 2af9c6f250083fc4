//! The handrail: whether one is needed, how high, and what it leaves of the stair.

use super::{inches, times, worked};
use crate::figure::Fig;
use crate::job::Settings;
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::solve::limit_length;

/// True where a flight of so many risers must have a handrail.
pub fn needed(risers: u16) -> bool {
    i64::from(risers) >= limits::HANDRAIL_RISERS.value
}

/// True where a handrail's top so far above the nosing line is in its range.
pub fn height_holds(height: Length, s: &Settings) -> bool {
    height >= limit_length(s, &limits::HANDRAIL_LOW) && height <= limit_length(s, &limits::HANDRAIL_HIGH)
}

/// What handrails leave of a stair's width.
#[derive(Clone, Debug, PartialEq)]
pub struct Left {
    /// Clear between them, or between the one and the other side.
    pub clear: Fig,
    /// The least it must be.
    pub least: &'static Limit,
}

/// What one or two handrails that stand so far into the stair leave of it.
pub fn width_left(width: &Fig, projection: &Fig, rails: u16) -> Left {
    let clear = inches(width) - times(inches(projection), rails);
    let from = vec![("stair", width.clone()), ("handrail stands in", projection.clone())];
    let says = if rails > 1 { "the stair less both handrails" } else { "the stair less the handrail" };
    let least = if rails > 1 { &limits::STAIR_WIDTH_TWO_RAILS } else { &limits::STAIR_WIDTH_ONE_RAIL };
    Left { clear: worked(clear, says, from), least }
}

impl Left {
    /// True where it is enough.
    pub fn holds(&self, s: &Settings) -> bool {
        inches(&self.clear) >= limit_length(s, self.least)
    }
}
