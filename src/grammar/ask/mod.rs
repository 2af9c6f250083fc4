//! What each room can be asked: one vocabulary a room, wrapped in one [`super::Query`].

mod notch;
mod strength;
mod takeoff;

pub use notch::{NotchAsk, Whose};
pub use strength::{About, StrengthAsk};
pub use takeoff::{Infill, TakeoffAsk};
