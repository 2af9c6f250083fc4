//! What a line gives, and what came of a question.

use crate::figure::{Fig, Value, Why};
use crate::measure::{Length, Q};
use crate::quantity::{Kind, RowId, money};
use num_traits::{CheckedAdd, CheckedMul};

/// What is counted and bought.
const PARTS: &[RowId] = &[
    RowId::PostCount,
    RowId::BalusterCount,
    RowId::RailCount,
    RowId::PieceCount,
    RowId::StickCount,
    RowId::Packs,
    RowId::BoltCount,
];

/// Sizes of parts that are counted.
pub const SIZES: &[RowId] =
    &[RowId::BalusterWidth, RowId::BalusterLength, RowId::PostLength, RowId::RailLength, RowId::PieceLength];

/// The row that counts what has a size: posts cut so long are counted as posts.
pub fn count_of(size: RowId) -> RowId {
    match size {
        RowId::PostLength => RowId::PostCount,
        RowId::RailLength => RowId::RailCount,
        RowId::PieceLength => RowId::PieceCount,
        _ => RowId::BalusterCount,
    }
}

/// The premises of one line: rows with their values. They are used for its answer and never kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Given(Vec<(RowId, Fig)>);

impl Given {
    /// The premises, in the order said. A row said again holds as last said; what was said first is how it stood.
    pub fn of(rows: impl IntoIterator<Item = (RowId, Value)>) -> Given {
        let fig = |(row, value): (RowId, Value)| (row, Fig::new(value, Why::Told(row.said())));
        Given(rows.into_iter().map(fig).collect())
    }

    /// The value given for a row.
    pub fn get(&self, row: RowId) -> Option<&Fig> {
        self.0.iter().rev().find(|(r, _)| *r == row).map(|(_, fig)| fig)
    }

    /// How a row stood before it was said anew; `None` where it was said once at most.
    pub fn before(&self, row: RowId) -> Option<&Fig> {
        let mut said = self.0.iter().filter(|(r, _)| *r == row);
        let first = said.next()?;
        said.next().map(|_| &first.1)
    }

    /// The first of the two values given of a row; `None` where it was not given just twice.
    pub fn first(&self, row: RowId) -> Option<&Fig> {
        let mut said = self.0.iter().filter(|(r, _)| *r == row);
        let first = said.next()?;
        said.next().filter(|_| said.next().is_none()).map(|_| &first.1)
    }

    /// All that was given of a row, added up; prices each times the count said with it. `None` where it was not given twice.
    pub fn every(&self, row: RowId) -> Option<Fig> {
        if row.row().kind == Kind::Money {
            return self.priced(row);
        }
        let all: Vec<&Fig> = self.0.iter().filter(|(r, _)| *r == row).map(|(_, fig)| fig).collect();
        if row.row().kind == Kind::Count {
            let count = |fig: &&Fig| if let Value::Count(n) = fig.value() { Some(n) } else { None };
            let sum = all.iter().filter_map(count).try_fold(0_u64, u64::checked_add)?;
            let named = all.iter().map(|fig| (row.row().name, (*fig).clone())).collect();
            return (all.len() > 1).then(|| Fig::count(sum, Why::Formula("all of them added up", named)));
        }
        let sum = all.iter().filter_map(|fig| fig.as_length()).try_fold(Length::ZERO, Length::plus)?;
        let named = all.iter().map(|fig| (row.row().name, (*fig).clone())).collect();
        (all.len() > 1).then(|| Fig::length(sum, Why::Formula("all of them added up", named)))
    }

    /// "6 of 3 1/2 and 5 of 1 1/2": every size of a part times the count said with it. `None` where each size has not its count.
    pub fn counted(&self, row: RowId) -> Option<Fig> {
        let of = |row: RowId| self.0.iter().filter(move |(r, _)| *r == row).map(|(_, fig)| fig);
        let count = count_of(row);
        let pairs: Vec<(&Fig, &Fig)> = of(count).zip(of(row)).collect();
        let paired = pairs.len() > 1 && [count, row].iter().all(|r| of(*r).count() == pairs.len());
        let times = |(n, size): &(&Fig, &Fig)| size.as_length()?.times(n.as_q());
        let sum = pairs.iter().map(times).try_fold(Length::ZERO, |sum, l| sum.plus(l?))?;
        let name = |row: RowId| row.row().name;
        let named = pairs.iter().flat_map(|(n, size)| [(name(count), (*n).clone()), (name(row), (*size).clone())]);
        let why = Why::Formula("each count times the size said with it", named.collect());
        paired.then(|| Fig::length(sum, why))
    }

    /// The rows all of a row are added up from: with prices the counts said with them.
    pub fn said_with(&self, row: RowId) -> Vec<RowId> {
        let counted = |r: &RowId| row.row().kind == Kind::Money && PARTS.contains(r);
        self.rows().filter(|r| *r == row || counted(r)).collect()
    }

    /// "9 posts at 14.50, 44 balusters at 2.10": every price has the count of a part said before it, and after the last price.
    fn priced(&self, price: RowId) -> Option<Fig> {
        let (mut sum, mut count, mut named) = (Q::from_integer(0), None, Vec::new());
        for (row, fig) in &self.0 {
            if PARTS.contains(row) {
                count = Some((row.row().name, fig));
            } else if *row == price {
                let (name, n) = count.take()?;
                sum = sum.checked_add(&fig.as_q().checked_mul(&n.as_q())?)?;
                named.extend([(name, n.clone()), (row.row().name, fig.clone())]);
            }
        }
        let why = Why::Formula("each count times the price said with it", named);
        (self.0.iter().filter(|(r, _)| *r == price).count() > 1).then_some(())?;
        Some(Fig::money(money(sum)?, why))
    }

    /// All that is given but a row's own value.
    pub fn without(&self, row: RowId) -> Given {
        Given(self.0.iter().filter(|(r, _)| *r != row).cloned().collect())
    }

    /// True where nothing was given.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The rows given, each once.
    pub fn rows(&self) -> impl Iterator<Item = RowId> {
        let first = |(i, row): &(usize, &(RowId, Fig))| self.0.iter().position(|(r, _)| *r == row.0) == Some(*i);
        self.0.iter().enumerate().filter(first).map(|(_, (row, _))| *row)
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
    /// The rows it was worked out from that an engine gave of the whole job.
    pub engines: Vec<RowId>,
    /// The rows given several times of which it takes every value at once: a sum of runs is no answer for each of them.
    pub whole: Vec<RowId>,
}

impl Solved {
    /// A figure that follows from nothing given, taken or worked out by an engine.
    pub fn plain(fig: Fig) -> Solved {
        Solved { fig, used: Vec::new(), defaults: Vec::new(), engines: Vec::new(), whole: Vec::new() }
    }

    /// The premises that had no part in the answer; they are said, not passed over.
    pub fn unused(&self, given: &Given) -> Vec<RowId> {
        given.rows().filter(|row| !self.used.contains(row)).collect()
    }
}

/// What would do for an answer: sets of rows, the shortest first; each set would be enough.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lacks(pub Vec<Vec<RowId>>);
