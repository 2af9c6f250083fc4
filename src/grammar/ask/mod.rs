//! The vocabulary of questions, a file for each room that answers them.

mod notch;

pub use notch::{NotchAsk, Whose};
