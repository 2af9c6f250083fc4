//! The items of a line as premises of a question.

use super::changed::{changed, is_run_told, run_changed, times_over};
use super::readings::{Filled, Reading};
use super::runs::{Runs, is_of_runs};
use super::told::{self, Told};
use super::value::{Premise, amount, besides, ways, word};
use super::{About, ordinal};
use crate::figure::Value;
use crate::grammar::scores::{How, Line};
use crate::job::Fact;
use crate::quantity::{Kind, RowId, nothing};

/// The most ways of the values that are tried for one reading.
const TRIED: usize = 8;

/// The premises of one reading, and what taking them so costs.
pub(super) type Taken = (f32, Vec<Premise>);

/// Every way to take the items by their rows, the cheapest first; `None` where one of them can be taken in none.
pub(super) fn premises(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Vec<Taken>> {
    let mut all: Vec<Taken> = vec![(0.0, Vec::new())];
    // More or less of something is so of what the line itself says of it, wherever in the line that stands.
    let changes = |f: &&Filled<'_>| matches!(f.how, How::Add | How::Less);
    let said = reading.filled.iter().filter(|f| !changes(f));
    for filled in said.chain(reading.filled.iter().filter(changes)) {
        let so_far: Vec<Premise> = all.first().map(|(_, given)| given.clone()).unwrap_or_default();
        let ways = of_item(about, line, filled, &so_far)?;
        if ways.is_empty() {
            continue;
        }
        let more = filled.row.and_then(|row| besides(row, line, filled.at));
        let with = |(cost, given): &Taken| -> Vec<Taken> {
            let all = |p: &Premise| given.iter().cloned().chain([p.clone()]).chain(more.clone()).collect();
            let grown = |(c, p): &(f32, Premise)| (cost + c, all(p));
            ways.iter().map(grown).collect()
        };
        all = all.iter().flat_map(with).collect();
        all.sort_by(|a, b| b.0.total_cmp(&a.0));
        all.truncate(TRIED);
    }
    let ordinals = ordinal::said(line, reading);
    all.iter_mut().for_each(|(_, given)| given.extend(ordinals.iter().cloned()));
    Some(all)
}

/// The premises with what is said of runs and their openings as runs that are tried on, laid out and all; `None` where nothing places them.
pub(super) fn placed(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Vec<Premise>> {
    let places = |row: RowId| row.row().kind == Kind::Place && is_of_runs(row);
    if !reading.filled.iter().filter_map(|f| f.row).any(places) {
        return None;
    }
    let mut runs = Runs::default();
    let mut taken = Vec::new();
    for filled in &reading.filled {
        let row = filled.row?;
        if is_of_runs(row) {
            match told::says(line, filled, row)?.1 {
                Told::Says(row, said) => runs.take(row, &said)?,
                Told::Fact(_) => return None,
            }
        } else {
            taken.extend(of_item(about, line, filled, &taken)?.into_iter().next().map(|(_, premise)| premise));
        }
    }
    let facts = runs.facts(about)?;
    // Of several flights each needs a run that keeps it.
    let stairs = reading.filled.iter().filter(|f| f.row == Some(RowId::StairWidth)).count();
    let kept = |fact: &Fact| {
        if let Fact::Run(_, patch) = fact { patch.stairs.as_ref().map_or(0, crate::job::Stairs::len) } else { 0 }
    };
    if stairs > 1 && facts.iter().map(kept).sum::<usize>() < stairs {
        return None;
    }
    taken.extend(facts.into_iter().map(Premise::Fact));
    Some(taken)
}

/// The ways to take one item as a premise; none for a word that is only named.
pub(super) fn of_item(
    about: &About<'_>,
    line: &Line,
    filled: &Filled<'_>,
    so_far: &[Premise],
) -> Option<Vec<(f32, Premise)>> {
    let row = filled.row?;
    let changed = |by: Value, less: bool| Some(vec![(0.0, Premise::Row(row, changed(about, row, by, less, so_far)?))]);
    match (filled.how, line.tokens.get(filled.at)?.value.as_ref()) {
        // "forget the blade": nothing is as much of it as any other figure.
        (How::Nothing, None) if row.row().may_be_nothing => {
            Some(nothing(row).map(|none| (0.0, Premise::Row(row, none))).into_iter().collect())
        }
        // A pool that is named is there.
        (How::Named, _) if row == RowId::Pool => Some(word(row, POOL).map(|p| (0.0, p)).into_iter().collect()),
        (How::Named, _) | (How::Nothing, None) => Some(Vec::new()),
        // A stick is as long whatever its size: that is named, and bends nothing.
        (How::Set, Some(_)) if row == RowId::StockSize => Some(Vec::new()),
        (How::Set, Some(_)) => Some(ways(row, line, filled.at)).filter(|w| !w.is_empty()),
        (How::Add | How::Less, Some(_)) if is_run_told(about, row, so_far) => {
            let run = run_changed(about, row, amount(row, line, filled.at)?, filled.how == How::Less)?;
            Some(vec![(0.0, Premise::Fact(run))])
        }
        // Ground that is filled where no fall was spoken of stands nearer to the deck.
        (How::Less, Some(_)) if row == RowId::Fall && !is_fall_said(about, so_far) => {
            let height = super::changed::changed(about, RowId::Grade, amount(row, line, filled.at)?, true, so_far)?;
            Some(vec![(0.0, Premise::Row(RowId::Grade, height))])
        }
        (How::Add | How::Less, Some(_)) => changed(amount(row, line, filled.at)?, filled.how == How::Less),
        (How::Times, Some(said)) => {
            let times = said.number().filter(|q| q.is_integer() || q.denom() < &100)?;
            let value = times_over(about, row, times, so_far)?;
            Some(vec![(0.0, Premise::Row(row, value))])
        }
        // A place or a choice that no premise can hold leaves the question as it is, and costs.
        (How::Set, None) => Some(word(row, filled.word?).map(|p| (0.0, p)).into_iter().collect()),
        (How::Words(words), _) => Some(word(row, words).map(|p| (0.0, p)).into_iter().collect()),
        _ => None,
    }
}

/// True where the ground's fall was told, or is said in the line.
fn is_fall_said(about: &About<'_>, so_far: &[Premise]) -> bool {
    about.job.told(RowId::Fall).is_some() || so_far.iter().any(|p| matches!(p, Premise::Row(RowId::Fall, _)))
}

/// How a pool beside the guard is told.
const POOL: &str = "closed off by the guard";
