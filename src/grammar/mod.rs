//! Words to islands to readings.

mod act;
pub mod ahead;
pub mod ask;
mod assemble;
pub mod canon;
pub mod choice;
pub mod draft;
pub mod effort;
pub mod flight_draft;
mod flight_words;
pub mod goods;
pub mod items;
pub mod kinds;
pub mod measures;
pub mod pieces;
pub mod reading;
pub mod scores;
pub mod sense;
pub mod slips;
pub mod stair_draft;
pub mod sums;
mod typo;
pub mod words;

pub use act::{Act, Query, Talk};
