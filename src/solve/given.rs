//! What a line gives, and what came of a question.

use crate::figure::{Fig, Value};
use crate::quantity::RowId;

/// The premises of one line: rows with their values. They are used for its answer and never kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Given(Vec<(RowId, Fig)>);

impl Given {
    /// The premises, in the order said; a row said again is the last one said.
    pub fn of(rows: impl IntoIterator<Item = (RowId, Value)>) -> Given {
        let mut given = Given::default();
        for (row, value) in rows {
            given.0.retain(|(r, _)| *r != row);
            given.0.push((row, Fig::new(value, crate::figure::Why::Told(row.said()))));
        }
        given
    }

    /// The value given for a row.
    pub fn get(&self, row: RowId) -> Option<&Fig> {
        self.0.iter().find(|(r, _)| *r == row).map(|(_, fig)| fig)
    }

    /// True where nothing was given.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The rows given.
    pub fn rows(&self) -> impl Iterator<Item = RowId> {
        self.0.iter().map(|(row, _)| *row)
    }
}

/// A wanted row, and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// The figure, with its reason.
    pub fig: Fig,
    /// The given rows it was worked out from.
    pub used: Vec<RowId>,
    /// The rows nobody told, taken by default.
    pub defaults: Vec<RowId>,
}

impl Solved {
    /// The premises that had no part in the answer; they are said, not passed over.
    pub fn unused(&self, given: &Given) -> Vec<RowId> {
        given.rows().filter(|row| !self.used.contains(row)).collect()
    }
}

/// What would do for an answer: sets of rows, the shortest first; each set would be enough.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lacks(pub Vec<Vec<RowId>>);
