//! The vocabulary of questions, one file a subject.

mod strength;

pub use strength::{About, StrengthAsk};
