//! The gap limit that holds, as a figure and as a test.

use super::GapLimit;
use crate::figure::Fig;
use crate::measure::Length;

/// What every gap must keep to, with its reason.
#[derive(Clone, Debug, PartialEq)]
pub struct HeldGap {
    /// The limit.
    pub most: Fig,
    /// True where a gap of just that passes.
    pub equal_passes: bool,
}

impl HeldGap {
    /// A ball of this size must not pass: a gap as wide as the ball fails.
    pub fn under(most: Fig) -> HeldGap {
        HeldGap { most, equal_passes: false }
    }

    /// No more than this: a gap of just that passes.
    pub fn up_to(most: Fig) -> HeldGap {
        HeldGap { most, equal_passes: true }
    }

    /// The limit as openings keep to it.
    pub fn limit(&self) -> GapLimit {
        GapLimit { most: self.length(), equal_passes: self.equal_passes }
    }

    /// The limit as a length.
    pub fn length(&self) -> Length {
        self.most.as_length().unwrap_or(Length::ZERO)
    }

    /// The one of two that asks for more.
    pub fn tighter(self, other: HeldGap) -> HeldGap {
        let rank = |h: &HeldGap| (h.length(), h.equal_passes);
        if rank(&other) < rank(&self) { other } else { self }
    }
}
