//! What can be asked of the guard itself.

use crate::measure::Length;

/// A question about whether a guard is wanted, or high enough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GuardAsk {
    /// Whether a guard is required at a drop; the job's where not said.
    Needed(Option<Length>),
    /// Whether a guard so high to its top is high enough.
    HighEnough(Length),
}
