//! Islands of measure: lengths, numbers and lumber, as typed or as said.

use super::words::Word;
use crate::measure::Measure;

/// A measure read from words `at..end`.
#[derive(Clone, Debug, PartialEq)]
pub struct Island {
    /// One past the last word of it.
    pub end: usize,
    /// What it may mean.
    pub measure: Measure,
}

/// Every measure that starts at word `at`, likeliest (longest) first.
pub fn measures_at(words: &[Word], at: usize) -> Vec<Island> {
    let _ = (words, at);
    Vec::new()
}
