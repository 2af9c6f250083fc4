//! One count along a side: the eye sees eight beside nine.

use crate::limits;
use crate::measure::Length;

/// The counts to build where these bays stand along one side, each with the fewest it needs.
/// Bays that differ by no more than the limit "matched-bays" all take the most any of them needs.
pub fn matched(bays: &[(Length, u32)]) -> Vec<u32> {
    let near = crate::solve::habit(&limits::MATCHED_BAYS);
    let alike = |a: Length, b: Length| a - b <= near && b - a <= near;
    bays.iter()
        .map(|(clear, own)| {
            bays.iter().filter(|(other, _)| alike(*clear, *other)).map(|(_, n)| *n).max().unwrap_or(*own)
        })
        .collect()
}
