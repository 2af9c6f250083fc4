//! What can be asked, a file for each part of the work.

mod flight;

pub use flight::{FlightAsk, FlightWhat, Given, Size};
