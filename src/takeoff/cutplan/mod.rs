//! The shortest buying list: every piece cut from sticks, the least of them bought.
//!
//! A saw takes its kerf between two pieces and nowhere else: `n` pieces and `n - 1` kerfs go
//! into a stick. What is least is the length bought, or the money where every stick has a
//! price; then the number of sticks. Sticks on hand cost nothing, so they are used first.
//!
//! [`plan`] turns lengths into whole ticks, has [`exact`] find the plan, and counts it back.
//! A plan is proved the least, or says how much less there could be at most.

pub mod exact;
mod order;
mod patience;
mod plan;
mod ticks;

pub use order::{CannotCut, CutOrder, Stick, Supply, Wanted};
pub use patience::{Effort, Patience};
pub use plan::{CutPlan, CutStick, Proved, plan};
