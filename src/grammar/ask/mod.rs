//! What each room can be asked: one vocabulary a room, wrapped in one [`super::Query`].

mod takeoff;

pub use takeoff::{Infill, TakeoffAsk};
