//! What each room can be asked: one vocabulary a room, wrapped in one [`super::Query`].

mod flight;
mod notch;
mod row;
mod rule;
mod strength;
mod takeoff;
mod why;
mod work;

pub use flight::{FlightAsk, FlightWhat, Given, Size};
pub use notch::{NotchAsk, Whose};
pub use row::{Mood, RowAsk};
pub use rule::RuleAsk;
pub use strength::{About, StrengthAsk};
pub use takeoff::{Infill, TakeoffAsk};
pub use why::{Apart, Counted, WhyAsk};
pub use work::{Task, WorkAsk};
