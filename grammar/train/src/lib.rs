//! Learns from the corpus under `grammar/talk/` how likely a line's act, want and rows are, and writes the weights.
//!
//! `cargo run --release` trains and writes; `cargo run --release -- folds` prints how well unseen meanings are read.

pub mod align;
pub mod corpus;
pub mod decide;
pub mod fact;
pub mod folds;
pub mod learn;
pub mod outcome;
pub mod pack;
pub mod softmax;
pub mod table;
pub mod words;
