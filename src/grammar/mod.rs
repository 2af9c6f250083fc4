//! Words to islands to readings.

mod act;
pub mod ahead;
pub mod canon;
pub mod draft;
pub mod items;
pub mod measures;
mod assemble;
pub mod pieces;
pub mod reading;
pub mod sums;
pub mod sense;
pub mod words;

pub use act::{Act, Query, Talk};
