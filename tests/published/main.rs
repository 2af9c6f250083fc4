//! Checks against something outside the project: published tables and worked examples,
//! and general-purpose libraries.

mod gate;
mod handrail;
mod layout;
mod stair_guard;
mod stair_rise;
mod stair_slope;
mod strength;
mod sums;
