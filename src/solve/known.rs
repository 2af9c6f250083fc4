//! A row of a job without an engine.

use super::{Engines, Given, law, posts, solve};
use crate::figure::{Fig, Value, Why};
use crate::job::{Job, Settings};
use crate::limits::{self, Limit};
use crate::measure::{Length, Lumber, Q};
use crate::quantity::{Default, RowId};

/// What rows are read from: a job, or its settings alone.
pub trait Source {
    /// The settings.
    fn settings(&self) -> &Settings;
    /// A row as told; `None` where nobody told it.
    fn told(&self, row: RowId) -> Option<Fig>;
}

impl Source for Job {
    fn settings(&self) -> &Settings {
        &self.settings
    }

    fn told(&self, row: RowId) -> Option<Fig> {
        posts::row(self, row).or_else(|| Job::told(self, row))
    }
}

impl Source for Settings {
    fn settings(&self) -> &Settings {
        self
    }

    fn told(&self, row: RowId) -> Option<Fig> {
        posts::row(self, row).or_else(|| Settings::told(self, row))
    }
}

/// A row of the job: told, worked out by a relation from what was told, or the default with its reason; `None` where none of them has it.
pub fn known(job: &Job, row: RowId) -> Option<Fig> {
    solve(row, &Given::default(), job, &Engines::NONE).ok().map(|s| s.fig)
}

/// A length as told; `None` where nobody told it.
pub fn told_length(of: &impl Source, row: RowId) -> Option<Length> {
    of.told(row)?.as_length()
}

/// A row as told, else its default with its reason. Only for a row that has a default; one without is nothing long.
pub fn taken(of: &impl Source, row: RowId) -> Fig {
    let none = || Fig::length(Length::ZERO, Why::Told("nothing told"));
    of.told(row).or_else(|| default(of, row)).unwrap_or_else(none)
}

/// What is taken where nobody told a row.
pub(super) fn default(of: &impl Source, row: RowId) -> Option<Fig> {
    // Words have no figure: what is taken of them stands with what reads them.
    if row.row().is_words() {
        return None;
    }
    match row.row().default {
        Default::None => None,
        Default::Limit(limit) if limit.unit == "lb" => {
            let pounds = i128::from(limit.value).into();
            Some(Fig::quantity(pounds, crate::figure::Unit::Pounds, Why::Default(limit)))
        }
        Default::Limit(limit) if limit.unit == "none" => None,
        Default::Limit(limit) => Some(law::default_of(of, limit)),
        Default::Thick(limit) => dressed(limit, false),
        Default::Wide(limit) => dressed(limit, true),
    }
}

/// The parts of an inch marks are rounded to, as a figure: told, or the tape that is taken.
pub fn tape_parts(parts: Q) -> Fig {
    let taken = parts == Q::from_integer(i128::from(limits::TAPE.value));
    let why = if taken { Why::Default(&limits::TAPE) } else { Why::Told("the tape") };
    Fig::new(Value::Number(parts), why)
}

/// How thick a joist is: the dressed thickness of the lumber joists are taken to be.
pub fn joist_thick() -> Fig {
    dressed(&limits::JOIST_SIZE, false).unwrap_or_else(|| Fig::told(Length::ZERO, "the joist"))
}

/// The dressed size of square lumber, or the thickness of lumber, of the nominal size a limit gives.
fn dressed(limit: &'static Limit, wide: bool) -> Option<Fig> {
    let nominal = u16::try_from(limit.value).ok()?;
    let (thick, width) = Lumber::by(nominal, nominal).dressed()?;
    let size = Fig::new(Value::Count(u64::from(nominal)), Why::Default(limit));
    let (says, l) = match wide {
        true => ("dressed dry width by the PS 20 size table", width),
        false => ("dressed dry thickness by the PS 20 size table", thick),
    };
    Some(Fig::length(l, Why::Formula(says, vec![("nominal size", size)])))
}
