//! Checks against something outside the project: published tables and worked examples,
//! and general-purpose libraries.

mod balusters;
mod cutting;
mod layout;
mod sums;
