//! Balusters in a clear opening: how many, the gap, where each one stands.
//!
//! - [`spread`](Spread): so many balusters with equal gaps, each mark rounded from its own
//!   exact place, and the gaps that those marks leave.
//! - [`fewest`]: the fewest that keep every gap under the limit, on the tape as well.
//! - [`matched`]: one count for the bays of a side that differ by fractions.
//! - [`routed`]: rails with holes at a set pitch.
//! - [`dry`]: what the gaps are once wet lumber has dried.
//!
//! Everything here is a pure function of lengths.

pub mod dry;
mod fewest;
mod figures;
mod held;
mod matched;
mod opening;
mod routed;
mod spread;

pub use fewest::{Fewest, fewest};
pub use figures::{count_fig, gap_fig, mark_fig, pitch_fig, spacer_fig, widest_fig};
pub use held::HeldGap;
pub use matched::matched;
pub use opening::{GapLimit, Opening, Start};
pub use routed::{Routed, routed};
pub use spread::{NoSpread, Spread};
