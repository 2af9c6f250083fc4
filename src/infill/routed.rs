//! Rails with holes for the balusters at a set pitch: only the end gaps can be chosen.

use super::GapLimit;
use crate::measure::Length;

/// Balusters in a rail with holes at a set pitch, centred in the opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Routed {
    /// How many.
    pub count: u32,
    /// The gap between two of them.
    pub gap: Length,
    /// The gap at each post: (clear - (count - 1) x pitch - baluster) / 2.
    pub end: Length,
}

/// The fewest balusters of a routed rail whose end gaps are under the limit; `None` where the
/// pitch itself leaves too wide a gap, or no count does.
pub fn routed(clear: Length, baluster: Length, pitch: Length, limit: GapLimit) -> Option<Routed> {
    let gap = pitch - baluster;
    if !baluster.is_positive() || !gap.is_positive() || !limit.allows(gap) {
        return None;
    }
    let most = (clear.ratio(pitch)?.floor().to_integer() + 1).clamp(0, 2_000) as u32;
    let end = |n: u32| (clear - pitch * (i64::from(n) - 1) - baluster) / 2;
    let fits = (1..=most).map(|count| Routed { count, gap, end: end(count) }).filter(|r| r.end >= Length::ZERO);
    fits.into_iter().find(|r| limit.allows(r.end))
}
