//! The drop at the deck's edge: what was told of it, and of how the ground falls away.

use super::{Fall, Job};
use crate::figure::{Fig, Why};
use crate::limits;

impl Job {
    /// The drop a guard is asked for over: the height told at the edge, and what the ground falls
    /// as told within the rule's reach of it. Ground that rises takes nothing off: the lowest is
    /// then at the edge itself.
    pub fn drop(&self) -> Option<Fig> {
        let edge = self.settings.grade?;
        let told = Fig::told(edge, "the height above ground");
        let Some(fall) = self.steepest_fall().and_then(within_reach) else { return Some(told) };
        let drop = edge.plus(fall.as_length()?)?;
        let says = "the height above ground at the edge and what the ground falls in reach of it";
        Some(Fig::length(drop, Why::Formula(says, vec![("height above ground", told), ("the fall", fall)])))
    }

    /// The steepest fall told of the ground, for the stairs in common or for one flight.
    fn steepest_fall(&self) -> Option<Fall> {
        let flights = self.runs.iter().flat_map(|r| r.stairs.iter()).map(|s| self.flight(s));
        let falls = flights.chain([self.flight]).filter_map(|f| f.fall).filter(|f| f.by.is_positive());
        falls.max_by_key(|f| f.by.ratio(f.over))
    }
}

/// What the ground falls in the reach of the rule on guards.
fn within_reach(fall: Fall) -> Option<Fig> {
    let reach = Fig::limit(&limits::GUARD_REACH);
    let down = reach.as_length()?.times(fall.by.ratio(fall.over)?)?;
    let (by, over) = (Fig::told(fall.by, "the ground's fall"), Fig::told(fall.over, "how far out it falls that"));
    Some(Fig::length(down, Why::Formula("reach x down / out", vec![("reach", reach), ("down", by), ("out", over)])))
}
