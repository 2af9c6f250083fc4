//! What each room can be asked: one vocabulary a room, wrapped in one [`super::Query`].

mod notch;
mod stairs;
mod strength;
mod takeoff;

pub use notch::{NotchAsk, Whose};
pub use stairs::{LeafAsked, StairAsk};
pub use strength::{About, StrengthAsk};
pub use takeoff::{Infill, TakeoffAsk};
