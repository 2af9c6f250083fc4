//! What a line that was not read may have asked: figures, by the learned scores. They are only offered: the scores rank and never decide.
//!
//! An offer is a row wanted with every value of the line as a premise of another row, and it stands only where the solver gives the figure
//! from all of them. So what is offered says back every figure that was said.

use crate::figure::Value;
use crate::grammar::ask::RowAsk;
use crate::grammar::scores::{self, Line, NONE, Reading, Scores};
use crate::grammar::{Act, Query};
use crate::job::Job;
use crate::provide;
use crate::quantity::{Kind, ROWS, RowId};
use crate::solve::Given;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// No more offers than these.
const MOST: usize = 3;

/// How many wants, and rows of a value, are looked at, the likeliest.
const LOOKED_AT: usize = 3;

/// The most ways to give the values rows that are tried for one want.
const TRIED: usize = 24;

/// The most values in a line that is looked at.
const VALUES: usize = 5;

/// The figures the line may have asked for, likeliest first; none where it tells something, or no figure comes of it.
pub(super) fn offers(job: &Job, line: &str) -> Vec<Act> {
    let Some(scores) = scores::shipped() else { return Vec::new() };
    let line = Line::read(line, &[]);
    let values: Vec<usize> = line.values().collect();
    if values.is_empty() || values.len() > VALUES {
        return Vec::new();
    }
    let asks = |act: &str| matches!(act, "ask" | "judge" | "suppose");
    let Some((act, _)) = scores.score_act(&line).into_iter().next().filter(|(act, _)| asks(act)) else {
        return Vec::new();
    };
    let mut found: Vec<(f32, RowAsk, Value)> = Vec::new();
    for (name, odds) in scores.score_want(&line, act).into_iter().take(LOOKED_AT) {
        let Some(want) = row_of(name) else { continue };
        for (ways, given) in assignments(scores, &line, &values, (act, name), want) {
            let premises = Given::of(given.iter().copied());
            let Ok(solved) = provide::ask(want, &premises, job) else { continue };
            let new = found.iter().all(|(.., fig)| *fig != solved.fig.value());
            if new && solved.unused(&premises).is_empty() && fits(want, solved.fig.value()) {
                found.push((odds + ways, RowAsk { want, given }, solved.fig.value()));
            }
        }
    }
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    found.into_iter().take(MOST).map(|(_, ask, _)| Act::Query(Query::Row(ask))).collect()
}

/// Ways to give every value a row of its own, likeliest first.
fn assignments(
    scores: &Scores,
    line: &Line,
    values: &[usize],
    (act, name): (&str, &str),
    want: RowId,
) -> Vec<(f32, Vec<(RowId, Value)>)> {
    let mut all: Vec<(f32, Vec<(RowId, Value)>)> = vec![(0.0, Vec::new())];
    for at in values {
        let Some(value) = line.tokens.get(*at).and_then(|t| t.value.as_ref()) else { return Vec::new() };
        let rows = scores.score_row(line, *at, act, name).into_iter().filter(|(row, _)| *row != NONE).take(LOOKED_AT);
        let taken: Vec<(f32, RowId, Value)> = rows
            .filter_map(|(row, odds)| {
                let (row, value) = as_row(row_of(row)?, &value.readings)?;
                (row != want).then_some((odds, row, value))
            })
            .collect();
        let grown = all.iter().flat_map(|(odds, given)| {
            let free = taken.iter().filter(|(_, row, _)| given.iter().all(|(r, _)| r != row));
            free.map(move |(o, row, value)| (odds + o, given.iter().copied().chain([(*row, *value)]).collect()))
        });
        let mut grown: Vec<_> = grown.collect();
        grown.sort_by(|a, b| b.0.total_cmp(&a.0));
        grown.truncate(TRIED);
        all = grown;
    }
    all
}

/// A value as a row takes it: the first of its readings that lies in the row's range. Lumber told for a width is as wide as it is dressed.
fn as_row(row: RowId, readings: &[Reading]) -> Option<(RowId, Value)> {
    let wide = match row {
        RowId::PostSize => RowId::PostWidth,
        RowId::BalusterSize => RowId::BalusterWidth,
        row => row,
    };
    readings.iter().find_map(|reading| {
        let value = match (reading, wide.row().kind) {
            (Reading::Length(l), Kind::Length) => Value::Length(*l),
            (Reading::Number(q), Kind::Length) => {
                let number = crate::measure::Number { value: *q, fraction: !q.is_integer(), plural: false };
                Value::Length(wide.bare(number).into_iter().find(|l| wide.takes(*l))?)
            }
            (Reading::Number(q), Kind::Count) if q.is_integer() => Value::Count(u64::try_from(q.to_integer()).ok()?),
            (Reading::Number(q), Kind::Number | Kind::Percent) => Value::Number(*q),
            (Reading::Lumber(l), Kind::Length) => Value::Length(l.dressed()?.1),
            _ => return None,
        };
        fits(wide, value).then_some((wide, value))
    })
}

/// True where a value lies in the row's range.
fn fits(row: RowId, value: Value) -> bool {
    match value {
        Value::Length(l) => row.takes(l),
        Value::Count(n) => i64::try_from(n).is_ok_and(|n| n >= row.row().sane.0 && n <= row.row().sane.1),
        Value::Number(_) | Value::Quantity(..) | Value::Money(_) => true,
    }
}

/// The row the corpus calls so: its id in small letters, a hyphen before each one that was a capital.
fn row_of(name: &str) -> Option<RowId> {
    static NAMES: LazyLock<BTreeMap<String, RowId>> = LazyLock::new(|| {
        let kebab = |id: RowId| {
            let capital = |c: char| if c.is_uppercase() { format!("-{}", c.to_lowercase()) } else { c.to_string() };
            format!("{id:?}").chars().map(capital).collect::<String>().trim_start_matches('-').to_owned()
        };
        ROWS.iter().map(|r| (kebab(r.id), r.id)).collect()
    });
    NAMES.get(name).copied()
}
