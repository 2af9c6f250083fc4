//! Words to islands to readings.

mod act;
pub mod ahead;
mod assemble;
pub mod canon;
pub mod draft;
pub mod items;
pub mod measures;
pub mod pieces;
pub mod reading;
pub mod stair_draft;
pub mod sense;
pub mod sums;
pub mod words;

pub use act::{Act, Query, Talk};
