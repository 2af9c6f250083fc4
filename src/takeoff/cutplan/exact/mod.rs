//! The least costly way to cut a list, in whole ticks: no lengths, no words, no lumber.
//!
//! Every piece and every stick is one kerf longer here than it is: `n` pieces with `n - 1`
//! kerfs fit a stick exactly where `n` longer pieces fit the longer stick.
//!
//! 1. [`columns`] solves the linear relaxation over all cutting patterns, making patterns as
//!    they are needed (Gilmore and Gomory's pattern generation), in floating point.
//! 2. [`bound`] turns its prices into a bound in whole numbers, whatever the rounding did, and
//!    raises that to the next total sticks can have.
//! 3. [`greedy`] and [`dive`] make plans, [`polish`] betters them. One that meets the bound is proved the least.
//! 4. [`search`] closes what is left: it looks for a plan at the bound, and where there is
//!    none raises the bound.
//!
//! Prices only steer; what is promised is checked in whole numbers.

mod bound;
mod columns;
mod dive;
mod dominance;
mod fill;
mod greedy;
mod instance;
mod luck;
mod polish;
mod search;
mod simplex;
mod solve;
mod totals;

pub use instance::{Bin, Instance, Item, Pattern};
pub use solve::{Solved, solve};
