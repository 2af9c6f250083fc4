//! Checks against something outside the project: published tables and worked examples,
//! and general-purpose libraries.

mod layout;
mod notch;
mod strength;
mod sums;
