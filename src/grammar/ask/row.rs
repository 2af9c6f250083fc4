//! Rows of the table asked for, with what the line gives for them: the one generic question.

use super::Infill;
use crate::figure::Value;
use crate::job::Fact;
use crate::measure::Length;
use crate::quantity::RowId;

/// Whether a figure is asked for, or a word on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Mood {
    /// What is it?
    #[default]
    Figure,
    /// Is it all right, does it pass?
    Judge,
    /// Is something amiss: is it too high, will it fail?
    Fault,
    /// May what a limit may ask for be left off?
    Without,
}

impl Mood {
    /// True where a word on it is asked for.
    pub fn judges(self) -> bool {
        self != Mood::Figure
    }
}

/// Rows wanted. What is given or supposed counts for this answer alone and is never kept.
#[derive(Clone, Debug, PartialEq)]
pub struct RowAsk {
    /// The rows, one to [`RowAsk::MOST`], in the order asked.
    pub wants: Vec<RowId>,
    /// What is asked of them.
    pub mood: Mood,
    /// The premises, in the order said; a row may be given several times ("bays of 5 ft, 5 ft and 41").
    pub given: Vec<(RowId, Value)>,
    /// Facts tried on: choices, lumber, places, runs.
    pub supposed: Vec<Fact>,
}

impl RowAsk {
    /// No more rows are wanted in one question.
    pub const MOST: usize = 3;

    /// One row's figure.
    pub fn figure(want: RowId, given: Vec<(RowId, Value)>) -> RowAsk {
        RowAsk { wants: vec![want], mood: Mood::Figure, given, supposed: Vec::new() }
    }

    /// A word on one row.
    pub fn judge(want: RowId, given: Vec<(RowId, Value)>) -> RowAsk {
        RowAsk { mood: Mood::Judge, ..RowAsk::figure(want, given) }
    }
}

impl From<Infill> for RowAsk {
    /// An opening to fill, as the rows it is about: for the questions that go on from it.
    fn from(infill: Infill) -> RowAsk {
        let length = |row, l: Option<Length>| l.map(|l| (row, Value::Length(l)));
        let count = infill.count.map(|n| (RowId::BalusterCount, Value::Count(u64::from(n))));
        let want = if count.is_some() { RowId::Gap } else { RowId::BalusterCount };
        let given = [
            length(RowId::BayClear, Some(infill.clear)),
            count,
            length(RowId::BalusterWidth, infill.baluster),
            length(RowId::GapMax, infill.limit),
        ];
        RowAsk::figure(want, given.into_iter().flatten().collect())
    }
}
