//! Questions, one vocabulary for each room that answers them.

mod flight;
mod stairs;

pub use flight::{FlightAsk, FlightWhat, Given, Size};
pub use stairs::StairAsk;
