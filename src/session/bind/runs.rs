//! Runs as told in one line: lengths, ends, names and openings in the order said, parted into runs and told run by run.

mod bends;
mod draft;
mod opening;
mod part;
mod place;

use super::About;
use super::told::Says;
use crate::figure::Value;
use crate::job::{Basis, End, Fact};
use crate::measure::Length;
use crate::quantity::RowId;
use bends::{Bend, bend, bends};
use draft::Draft;
use opening::Kind;
pub(super) use part::is_each;
use part::{drafts, part_by_openings, share, sides};
use place::end;

/// True for a row that is told of a run or of an opening in it.
pub(super) fn is_of_runs(row: RowId) -> bool {
    use RowId::{BayCount, Flank, Offset, OffsetFrom, RunFrom, RunName, RunTo, Turn};
    let ends = matches!(row, Flank | RunFrom | RunTo | RunName | Offset | OffsetFrom | BayCount | Turn);
    is_length(row) || ends || is_opening(row).is_some()
}

/// True for a row of a gate's opening, false for one of stairs'; `None` for any other.
pub(super) fn is_opening(row: RowId) -> Option<bool> {
    opening::kind(row).map(|kind| kind == Kind::Gate)
}

/// True for a row that says where along its run an opening stands.
pub(super) fn is_placing(row: RowId) -> bool {
    matches!(row, RowId::Offset | RowId::OffsetFrom)
}

/// True for a row of a run's length.
pub(super) fn is_length(row: RowId) -> bool {
    length_of(row).is_some()
}

/// The basis a row of lengths tells; `None` for a row that is no run's length.
fn length_of(row: RowId) -> Option<Option<Basis>> {
    match row {
        RowId::RunLength => Some(None),
        RowId::RunOverall => Some(Some(Basis::Overall)),
        RowId::RunClear => Some(Some(Basis::Clear)),
        RowId::RunCentre => Some(Some(Basis::Centre)),
        _ => None,
    }
}

/// One thing said of runs: what of a run, or what of an opening.
#[derive(Clone, Debug, PartialEq)]
enum Said {
    Name(String),
    /// Its number.
    Nth(u32),
    Length(Length, Option<Basis>),
    Longer(Length),
    From(End),
    To(End),
    Bays(u16),
    /// No run any more.
    Gone,
    Opening(RowId, Says),
    /// A side named again, for what stands in it.
    Again(String),
}

/// What a line says of runs, in the order said.
#[derive(Clone, Debug, Default)]
pub(super) struct Runs {
    said: Vec<Said>,
    /// How the guard goes on behind so many lengths.
    turns: Vec<(usize, Bend)>,
    /// The length is that of the one run there is.
    of_the_one: bool,
}

impl Runs {
    /// Takes in what is said of a row; `None` where it cannot be told so.
    pub(super) fn take(&mut self, row: RowId, said: &Says) -> Option<()> {
        let more = match (row, said) {
            (RowId::RunName, Says::Word(name)) => Said::Name(name.clone()),
            (RowId::RunName, Says::Value(Value::Count(n))) => Said::Nth(u32::try_from(*n).ok()?),
            // "30 in from the left": of the opening's distance.
            (RowId::RunFrom, Says::Word(place)) if end(place).is_none() => {
                self.said.iter().any(|s| matches!(s, Said::Opening(RowId::Offset, _))).then_some(())?;
                Said::Opening(RowId::OffsetFrom, said.clone())
            }
            (RowId::RunFrom, Says::Word(place)) => Said::From(end(place)?),
            (RowId::RunTo, Says::Word(place)) => Said::To(end(place)?),
            (RowId::BayCount, Says::Value(Value::Count(n))) => Said::Bays(u16::try_from(*n).ok()?),
            (RowId::Turn, said) => {
                let lengths = self.said.iter().filter(|s| matches!(s, Said::Length(..))).count();
                self.turns.push((lengths, bend(said)?));
                return Some(());
            }
            (row, Says::Nothing) if is_length(row) => Said::Gone,
            (row, Says::Value(Value::Length(l))) if is_length(row) => Said::Length(*l, length_of(row)?),
            (row, Says::Change(Value::Length(l))) if is_length(row) => Said::Longer(*l),
            (row, said) if is_opening(row).is_some() || is_placing(row) => Said::Opening(row, said.clone()),
            _ => return None,
        };
        self.said.push(more);
        Some(())
    }

    /// What is said is of the one run there is.
    pub(super) fn of_the_one(&mut self) {
        self.of_the_one = true;
    }

    /// A side that is named a second time: what stands beside it stands in that side.
    pub(super) fn again(&mut self, name: &str) {
        self.said.push(Said::Again(name.to_owned()));
    }

    /// An end that is named a second time, behind an opening or its distance: there it stands, or from there that is measured.
    pub(super) fn end_again(&mut self, place: &str) {
        // The head of stairs is the stairs' own.
        if matches!(end(place), Some(End::StairHead | End::GatePost)) {
            return;
        }
        let row = match self.said.last() {
            Some(Said::Opening(RowId::Offset, Says::Value(_))) => RowId::OffsetFrom,
            Some(Said::Opening(RowId::StairWidth, _)) => RowId::StairAt,
            Some(Said::Opening(RowId::GateWidth | RowId::GateOpening, _)) => RowId::GateAt,
            _ => return,
        };
        self.said.push(Said::Opening(row, Says::Word(place.to_owned())));
    }

    /// The facts that tell them; `None` where it is not clear which run is meant.
    pub(super) fn facts(self, about: &About<'_>) -> Option<Vec<Fact>> {
        let mut runs = sides(drafts(&self.said)?)?;
        let between = part_by_openings(&mut runs);
        bends(&self.turns, &mut runs)?;
        share(about.line, &self.said, &mut runs)?;
        let mut next = about.job.next_run();
        let mut facts: Vec<Fact> = Vec::new();
        if let Some((kind, width)) = between {
            facts.push(match kind {
                Kind::Stairs => Fact::StairWidth(width),
                Kind::Gate => Fact::of(RowId::GateOpening, Value::Length(width))?,
            });
        }
        let several = runs.len() > 1;
        if let ([one], true) = (&mut runs[..], self.of_the_one) {
            one.of_the_one = true;
        }
        for draft in runs.into_iter().filter(|d| *d != Draft::default()) {
            facts.extend(draft.facts(about, &mut next, several)?);
        }
        Some(facts)
    }
}
