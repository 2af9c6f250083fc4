//! A question about stairs or a gate, as asked: its numbers have no units yet.

use super::ask::{FlightWhat, Size};
use crate::measure::{Lumber, Measure};
use std::ops::Range;

/// What makes a question of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asks {
    /// A word or a mark, wherever it stands.
    Word,
    /// "does", "is", "have": only where it opens a line or stands behind a break.
    Opening,
    /// The thing named: only where nothing is told beside it.
    Naming,
}

/// A question about stairs or a gate, as asked.
#[derive(Clone, Debug, PartialEq)]
pub struct FlightDraft {
    /// What is asked.
    pub what: FlightWhat,
    /// What in it asks.
    pub asks: Asks,
    /// Stairs are named in it.
    pub named: bool,
    /// What the question gives.
    pub given: FlightGiven,
    /// Words read over that have no part in it: they are named.
    pub idle: Vec<Range<usize>>,
}

/// What a question about stairs or a gate gives, its numbers without units yet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FlightGiven {
    /// How many risers.
    pub risers: Option<u16>,
    /// How many treads.
    pub treads: Option<u16>,
    /// How many steps.
    pub steps: Option<u16>,
    /// Named lumber.
    pub lumber: Option<Lumber>,
    /// Asked of a cap.
    pub cap: bool,
    /// Sizes, each once.
    pub sizes: Vec<(Size, Measure)>,
}

impl FlightGiven {
    /// True where that size is given.
    pub fn has(&self, size: Size) -> bool {
        self.sizes.iter().any(|(s, _)| *s == size)
    }
}
