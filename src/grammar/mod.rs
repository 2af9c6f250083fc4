//! Words to islands to readings.

mod act;
pub mod canon;
pub mod measures;
pub mod sense;
pub mod words;

pub use act::{Act, Query, Talk};
