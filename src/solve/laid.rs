//! A job with what a line gives laid over it.

use super::{Engines, Given, Solved, Source};
use crate::figure::{Fig, Value};
use crate::job::{Fact, Job};
use crate::quantity::RowId;
use std::borrow::Cow;

/// The job engines and settings are read from.
pub(super) struct Laid<'a> {
    job: Cow<'a, Job>,
    /// Each premise laid over it, and the job without that one.
    without: Vec<(RowId, Job)>,
    /// The premises the job cannot take, and those it keeps as figures by themselves that no engine reads: no engine sees them.
    pub unseen: Vec<RowId>,
}

impl<'a> Laid<'a> {
    /// Lays all that is given over the job, but for the wanted row's own.
    pub fn over(job: &'a Job, given: &Given, want: RowId, engines: &Engines) -> Laid<'a> {
        let (mut told, mut facts, mut unseen) = (Cow::Borrowed(job), Vec::new(), Vec::new());
        for row in given.rows().filter(|row| *row != want) {
            let fact = given.get(row).and_then(|fig| Fact::of(row, fig.value()));
            match fact.and_then(|fact| Some((told.with(&fact).ok()?, fact))) {
                Some((laid, fact)) => {
                    if matches!(fact, Fact::Row(..)) && !engines.read(row) {
                        unseen.push(row);
                    }
                    told = Cow::Owned(laid);
                    facts.push((row, fact));
                }
                None => unseen.push(row),
            }
        }
        let others = |row: RowId| {
            let kept = facts.iter().filter(|(r, _)| *r != row);
            kept.fold(job.clone(), |job, (_, fact)| job.with(fact).unwrap_or(job))
        };
        let without = facts.iter().map(|(row, _)| (*row, others(*row))).collect();
        Laid { job: told, without, unseen }
    }

    /// A figure the job keeps for what is asked next: told by itself, or how long a part is cut, which is told of all of them.
    pub fn kept(&self, row: RowId) -> Option<Fig> {
        let of_all = matches!(row, RowId::PostLength | RowId::BalusterLength);
        let kept = of_all || self.job.figures.contains_key(&row);
        Source::told(&*self.job, row).filter(|_| kept)
    }

    /// The premises the job took.
    pub fn rows(&self) -> impl Iterator<Item = RowId> {
        self.without.iter().map(|(row, _)| *row)
    }

    /// A figure of the job; what it moves with, of what was laid over it, is used for it.
    pub fn read(&self, of: impl Fn(&Job) -> Option<Fig>) -> Option<Solved> {
        let fig = of(&self.job)?;
        let value = |job: &Job| -> Option<Value> { of(job).map(|f| f.value()) };
        let moves = |job: &Job| value(job) != Some(fig.value());
        let used = self.without.iter().filter(|(_, job)| moves(job)).map(|(row, _)| *row).collect();
        Some(Solved { used, ..Solved::plain(fig) })
    }
}
