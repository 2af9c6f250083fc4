//! What a word may mean: the lexicon's senses.

use crate::job::End;

/// One sense of a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// A place a run can end at.
    End(End),
}

include!(concat!(env!("OUT_DIR"), "/words.rs"));
