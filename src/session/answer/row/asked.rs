//! A question with its job: rows are found from it, each with the rows never left out beside it.

use crate::figure::{Value, Why};
use crate::grammar::ask::RowAsk;
use crate::job::{Fact, Job};
use crate::measure::Length;
use crate::provide;
use crate::quantity::{Kind, RowId, relations};
use crate::solve::{Given, Lacks, Solved};

/// A question, and the job it is asked of.
pub(super) struct Asked<'a> {
    /// The job with what is tried on.
    pub job: &'a Job,
    /// The question.
    pub ask: &'a RowAsk,
    /// The premises; of a row given several times the last.
    pub given: Given,
}

/// A wanted row with what is never left out beside it.
#[derive(Clone)]
pub(super) struct Found {
    pub want: RowId,
    pub solved: Solved,
    pub beside: Vec<(RowId, Solved)>,
}

impl Found {
    /// The row and those beside it.
    pub fn all(&self) -> impl Iterator<Item = &Solved> {
        std::iter::once(&self.solved).chain(self.beside.iter().map(|(_, s)| s))
    }
}

/// No more rows are tried alone for one that lacks.
const TRIED: usize = 6;

/// A value in the middle of what is usual for a row, to see whether one would be enough.
fn middling(row: RowId) -> Option<Value> {
    let (lo, hi) = row.row().usual;
    let middle = lo + (hi - lo) / 2;
    match row.row().kind {
        Kind::Length => Some(Value::Length(Length::sixteenths(middle))),
        Kind::Count => u64::try_from(middle / 16).ok().map(Value::Count),
        Kind::Number | Kind::Percent => Some(Value::Number(i128::from(middle / 16).into())),
        _ => None,
    }
}

/// A row beside the wanted one. One the line gives itself is what the answer makes it: 13 balusters that keep gaps to 3 leave less than 3.
fn beside(row: RowId, want: RowId, premises: &Given, job: &Job) -> Option<Solved> {
    let left = || provide::ask(row, &premises.without(row), job).ok().filter(|s| s.used.contains(&want));
    let given = || provide::ask(row, premises, job).ok();
    if premises.get(row).is_some() { left().or_else(given) } else { given() }
}

impl<'a> Asked<'a> {
    pub fn of(job: &'a Job, ask: &'a RowAsk) -> Asked<'a> {
        Asked { job, ask, given: Given::of(ask.given.iter().copied()) }
    }

    /// A wanted row, and those beside it that are not wanted themselves.
    pub fn find(&self, want: RowId) -> Result<Found, Lacks> {
        let solved = self.solve(want)?;
        let premises = self.premises(want, &solved);
        let others = want.row().beside.iter().filter(|row| !self.ask.wants.contains(row));
        // Beside what takes all of a row nothing stands that takes one of it.
        let whole = |s: &Solved| solved.whole.iter().all(|row| !s.used.contains(row) || s.whole.contains(row));
        let follows = |s: &Solved| whole(s) && (premises.get(want).is_none() || !s.used.is_empty());
        let one = |row: &RowId| Some((*row, beside(*row, want, &premises, self.job).filter(follows)?));
        let found = others.filter_map(one).collect();
        Ok(Found { want, solved, beside: found })
    }

    /// True for a figure that is only what is usual, where every premise given had no part in it.
    pub fn is_usual_alone(&self, one: &Found) -> bool {
        let usual = one.solved.defaults.contains(&one.want) && one.solved.used.is_empty();
        usual && self.given.rows().next().is_some()
    }

    /// A row from the premises and the job; a row of words has no figure.
    pub fn solve(&self, want: RowId) -> Result<Solved, Lacks> {
        if want.row().is_words() { Err(Lacks::default()) } else { provide::ask(want, &self.given, self.job) }
    }

    /// A row from the job and the premises but the told value of one: what that comes to by the rest.
    pub fn without(&self, told: RowId, want: RowId) -> Result<Solved, Lacks> {
        if want.row().is_words() {
            return Err(Lacks::default());
        }
        provide::ask(want, &self.given.without(told), self.job)
    }

    /// The fewest rows that would do for one that lacks: one alone where that is enough, the first of the table.
    pub fn needs(&self, want: RowId, lacks: &Lacks) -> Vec<RowId> {
        let mut rows: Vec<RowId> = lacks.0.iter().flatten().copied().filter(|row| *row != want).collect();
        rows.sort();
        rows.dedup();
        let alone = rows.into_iter().take(TRIED).find(|row| self.follows(want, *row)).map(|row| vec![row]);
        alone.or_else(|| lacks.0.first().cloned()).unwrap_or_default()
    }

    /// True where one row more would be enough for another, whatever was told of that.
    pub fn follows(&self, want: RowId, from: RowId) -> bool {
        let premise = middling(from).map(|value| (from, value));
        let given = Given::of(self.ask.given.iter().copied().chain(premise));
        provide::ask(want, &given.without(want), self.job).is_ok()
    }

    /// What the rows beside an answer follow from: a count worked out from the premises is one of them, so that the gap is the one it leaves.
    /// One an engine took from the whole job is not: a job's bays are no one run's.
    pub fn premises(&self, want: RowId, solved: &Solved) -> Given {
        let by_relation = matches!(solved.fig.why(), Why::Formula(says, _)
            if relations().chain(provide::engines().relations).any(|r| r.says == *says));
        let answer = (by_relation && !solved.used.is_empty()).then(|| (want, solved.fig.value()));
        Given::of(self.ask.given.iter().copied().chain(answer))
    }

    /// The premises that are not the last told of their row: an answer takes one.
    pub fn over(&self) -> impl Iterator<Item = (RowId, Value)> + '_ {
        let given = &self.ask.given;
        let last = move |i: usize, row: RowId| given.iter().skip(i + 1).all(|(r, _)| *r != row);
        given.iter().copied().enumerate().filter(move |(i, (row, _))| !last(*i, *row)).map(|(_, premise)| premise)
    }

    /// The job with the premises that can be told laid over it, so that limits see them.
    pub fn overlaid(&self) -> Job {
        self.given.rows().fold(self.job.clone(), |job, row| self.with(job, row))
    }

    /// A job with one premise laid over it, where it can be told by itself.
    pub fn with(&self, job: Job, row: RowId) -> Job {
        let fact = self.given.get(row).and_then(|fig| Fact::of(row, fig.value()));
        fact.and_then(|fact| job.with(&fact).ok()).unwrap_or(job)
    }
}
