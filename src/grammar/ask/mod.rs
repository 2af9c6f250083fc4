//! Questions, one vocabulary for each room that answers them.

mod stairs;

pub use stairs::{LeafAsked, StairAsk};
