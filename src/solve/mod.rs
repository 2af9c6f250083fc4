//! The one place where a figure's inputs come from.
//!
//! [`known`] finds a row of a job without an engine: told, worked out by a relation, or the default with its reason. [`in_force`] gives a
//! limit as it holds for the job. [`solve`] answers a wanted row from what a line gives and what the job tells, through relations and
//! engines alike; an engine that has
//! its inputs in hand works a relation with [`by`]. No engine, rule or answer reads a setting or falls back to a constant by itself: a test searches the source for that.

mod by;
mod change;
pub mod choice;
mod given;
mod known;
mod laid;
mod law;
pub mod order;
mod posts;
mod search;

pub use by::by;
pub use change::{hangs_on, moves_by};
pub use given::{Given, Lacks, Solved};
pub use known::{Source, joist_thick, known, taken, tape_parts, told_length};
pub use law::{default_of, habit, in_force, limit_length, source_of, told_instead};
pub use posts::{post_size, post_width, told_sizes, widest_post};
pub use search::{Engines, Provider, solve};

#[cfg(test)]
mod tests;
