//! What is said to be more or less than it is.

use super::About;
use super::readings::Reading;
use super::runs::is_length;
use super::value::{Premise, amount, row_of};
use crate::figure::Value;
use crate::grammar::scores::{How, Line};
use crate::job::{Fact, Run, RunPatch, Told};
use crate::measure::Q;
use crate::provide;
use crate::quantity::RowId;
use crate::solve::Given;
use crate::sums::{Expr, Sum};

impl<'a> About<'a> {
    /// The run spoken of last, or the only one.
    pub(super) fn spoken_of(&self) -> Option<&'a Run> {
        self.run.and_then(|id| self.job.run(id)).or(match &self.job.runs[..] {
            [only] => Some(only),
            _ => None,
        })
    }
}

/// True for the length of a run that is told, where the line says nothing of it itself.
pub(super) fn is_run_told(about: &About<'_>, row: RowId, so_far: &[Premise]) -> bool {
    let said = so_far.iter().any(|p| matches!(p, Premise::Row(r, _) if *r == row));
    !said && is_length(row) && about.spoken_of().is_some_and(|run| run.length.is_some())
}

/// The run spoken of, longer or shorter by so much: by as much however it is measured.
pub(super) fn run_changed(about: &About<'_>, row: RowId, by: Value, less: bool) -> Option<Fact> {
    let (run, Value::Length(by)) = (about.spoken_of().filter(|_| is_length(row))?, by) else { return None };
    let told = run.length?.length;
    let length = if less { told - by } else { told + by };
    Some(Fact::Run(run.id, RunPatch { length: Some(Told::plain(length)), ..RunPatch::default() }))
}

/// What is more or less of what is asked itself, as a sum of what it was: "it steps down 2 there, how high is that".
pub(super) fn as_sum(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Sum> {
    let figures = reading.filled.iter().filter(|f| f.word.is_none());
    let ([want], [filled]) = (&reading.wants[..], &figures.collect::<Vec<_>>()[..]) else { return None };
    let row = row_of(want).filter(|row| filled.row == Some(*row))?;
    let was = match about.spoken_of().filter(|_| is_length(row)) {
        Some(run) => run.length?.length,
        None => about.job.told(row)?.as_length()?,
    };
    let Value::Length(by) = amount(row, line, filled.at)? else { return None };
    let [was, by] = [was, by].map(|l| Box::new(Expr::Length(l)));
    match filled.how {
        How::Add => Some(Sum::Value(Expr::Plus(was, by))),
        How::Less => Some(Sum::Value(Expr::Less(was, by))),
        _ => None,
    }
}

/// Of what is judged as it becomes, how it stood has no part; where a gate is lost, its width has none.
pub(super) fn settle(reading: &Reading<'_>, judges: bool, premises: &mut Vec<Premise>) {
    let changes =
        |row: RowId| reading.filled.iter().any(|f| f.row == Some(row) && matches!(f.how, How::Add | How::Less));
    // Filled ground changes how high the deck stands.
    let changes = |row: RowId| changes(row) || row == RowId::Grade && changes(RowId::Fall);
    let last = |premises: &[Premise], i: usize, row: RowId| {
        premises.iter().skip(i + 1).all(|p| !matches!(p, Premise::Row(r, _) if *r == row))
    };
    let gone = reading.filled.iter().any(|f| f.row == Some(RowId::GateAt) && f.how == How::Nothing);
    let all = premises.clone();
    let mut i = 0;
    premises.retain(|premise| {
        i += 1;
        match premise {
            Premise::Row(RowId::GateWidth | RowId::GateOpening, _) => !gone,
            Premise::Row(row, _) => !(judges && changes(*row)) || last(&all, i - 1, *row),
            Premise::Fact(_) => true,
        }
    });
}

/// A row's figure so many times over; half of a count that is odd is one whole thing more.
pub(super) fn times_over(about: &About<'_>, row: RowId, times: Q, so_far: &[Premise]) -> Option<Value> {
    match stands(about, row, so_far)? {
        Value::Length(l) => l.times(times).map(Value::Length),
        Value::Count(n) => {
            u64::try_from((times * Q::from_integer(i128::from(n))).ceil().to_integer()).ok().map(Value::Count)
        }
        _ => None,
    }
}

/// A row's figure as this line gave it, as the last question did, as told, or as it comes out.
fn stands(about: &About<'_>, row: RowId, so_far: &[Premise]) -> Option<Value> {
    let said = so_far.iter().rev().find_map(|p| match p {
        Premise::Row(r, value) if *r == row => Some(*value),
        _ => None,
    });
    let given = about.asked.and_then(|a| a.given.iter().rev().find(|(r, _)| *r == row)).map(|(_, v)| *v);
    let now = || provide::ask(row, &Given::default(), about.job).ok().map(|s| s.fig.value());
    said.or(given).or_else(now)
}

/// A row's figure as it would be, more or less by so much than it is: as this line gave it, as the last question did, as told, or as it
/// comes out.
pub(super) fn changed(about: &About<'_>, row: RowId, by: Value, less: bool, so_far: &[Premise]) -> Option<Value> {
    match (stands(about, row, so_far)?, by) {
        (Value::Length(l), Value::Length(by)) => Some(Value::Length(if less { l - by } else { l + by })),
        (Value::Count(n), Value::Count(by)) if less => n.checked_sub(by).map(Value::Count),
        (Value::Count(n), Value::Count(by)) => n.checked_add(by).map(Value::Count),
        _ => None,
    }
}
