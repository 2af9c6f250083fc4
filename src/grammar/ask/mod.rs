//! Questions, one vocabulary for each room that answers them.

mod flight;
mod stairs;
mod strength;

pub use flight::{FlightAsk, FlightWhat, Given, Size};
pub use stairs::StairAsk;
pub use strength::{About, StrengthAsk};
