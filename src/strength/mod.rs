//! Strength by arithmetic: what 200 lb at a guard's top asks of its parts, beside what
//! published design values allow them.
//!
//! [`section`] sees a piece end on; [`leg`] is what a notch leaves of one. [`wood`] turns
//! what was told of the wood into allowed stresses, from the tables in [`values`] and with the
//! cautious default for what was not told. [`beam`] is one beam under one load; [`post`],
//! [`rail`] and [`tie`] put the two sides beside each other. What any of it is worked from is
//! gathered in [`inputs`], from the job and the question, and nowhere else.
//!
//! Everything is an exact rational and a figure with its chain of reasons. What the tables
//! and formulas do not cover is [`Refused`], with the range. Stresses are nominal: no
//! allowance for a notch's square corner, knots or bolt holes. None of this says that a
//! guard is safe: that is for the building department or an engineer.

pub mod beam;
pub mod inputs;
mod leg;
mod number;
pub mod post;
pub mod rail;
mod refused;
pub mod section;
mod stand;
pub mod tie;
pub mod values;
mod wood;

pub use inputs::{FootCut, Inputs, Said};
pub use leg::{Leg, left_by};
pub use post::Judged;
pub use rail::Piece;
pub use refused::Refused;
pub use stand::Stand;
pub use wood::Wood;
