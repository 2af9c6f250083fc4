//! What a pool asks of a guard and gate that close it off.

use crate::figure::{Fig, Why};
use crate::infill::{GapLimit, Opening, fewest};
use crate::limits::{self, Limit};
use crate::measure::{Length, Tape};

/// What is known of the barrier.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Barrier {
    /// Its top, above the ground on the side away from the pool.
    pub top: Length,
    /// The gap under it, over decking or concrete.
    pub under: Option<Length>,
    /// The top of its bottom rail, above the same ground.
    pub bottom_rail_top: Option<Length>,
    /// The height of the latch's release, above the same ground.
    pub latch: Option<Length>,
}

/// Every limit the barrier does not keep.
pub fn breaches(b: &Barrier) -> Vec<&'static Limit> {
    let low = (b.top < limits::POOL_TOP.length()).then_some(&limits::POOL_TOP);
    let under = b.under.is_some_and(|l| l > limits::POOL_GAP_DECK.length()).then_some(&limits::POOL_GAP_DECK);
    low.into_iter().chain(under).collect()
}

/// The gap balusters of a pool barrier may have: tight where the rails' tops are close enough to
/// climb by, the plain limit where they are not.
pub fn gap_limit(b: &Barrier) -> &'static Limit {
    let apart = b.bottom_rail_top.map(|rail| b.top - rail);
    match apart {
        Some(apart) if apart >= limits::POOL_RAILS_APART.length() => &limits::LEVEL_GAP,
        // Where the rails are was not told: the tighter limit holds.
        _ => &limits::POOL_TIGHT_GAP,
    }
}

/// How high the top must be for the plain gap, over a bottom rail whose top is so high.
pub fn top_for_plain_gap(bottom_rail_top: &Fig) -> Fig {
    let l = bottom_rail_top.as_length().unwrap_or(Length::ZERO) + limits::POOL_RAILS_APART.length();
    let from =
        vec![("bottom rail's top", bottom_rail_top.clone()), ("rails apart", Fig::limit(&limits::POOL_RAILS_APART))];
    Fig::length(l, Why::Formula("the bottom rail's top + what the rails must be apart", from))
}

/// True where the latch must stand on the pool side, low on the gate.
pub fn latch_on_pool_side(b: &Barrier) -> Option<bool> {
    b.latch.map(|l| l < limits::POOL_LATCH.length())
}

/// The fewest balusters in a clear, and their gap: "not more than" lets the limit itself pass.
pub fn balusters(clear: Length, width: Length, tape: Tape) -> Option<(u32, Length)> {
    let limit = GapLimit::up_to(limits::POOL_TIGHT_GAP.length());
    let found = fewest(Opening::measured(clear, width, limit, tape)).ok()?.taped;
    Some((found.count(), found.gap()))
}
