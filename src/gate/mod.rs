//! The gate: its leaf between the jambs, what fills and braces it, which way it swings, and
//! what a pool asks of it.
//!
//! Everything here is a pure function of what was told; nothing is rounded but where a
//! name says so.

pub mod brace;
pub mod gap;
pub mod leaf;
pub mod pool;

pub use brace::{Brace, brace};
pub use leaf::{Leaf, LeafTold, Unfit, leaf};
