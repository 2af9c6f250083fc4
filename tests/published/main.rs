//! Checks against something outside the project: published tables and worked examples,
//! and general-purpose libraries.

mod balusters;
mod cutting;
mod gate;
mod handrail;
mod law;
mod layout;
mod notch;
mod stair_guard;
mod stair_limits;
mod stair_rise;
mod stair_slope;
mod strength;
mod sums;
