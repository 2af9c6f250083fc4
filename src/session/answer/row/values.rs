//! The figures of an answer under their names in the JSON contract.

use super::asked::{Asked, Found};
use crate::figure::{Fig, Value, Why};
use crate::measure::Q;
use crate::quantity::{Kind, ROWS, RowId};
use crate::reply::Reply;
use std::sync::LazyLock;

/// Names the contract has for values of another form.
const OTHER: [&str; 4] = ["posts", "bays", "gate", "notch"];

/// How deep the figures a figure was worked out from are gone into.
const DEPTH: u8 = 4;

/// A row's name among the values: its own in the contract, else its id's.
pub(super) fn name(row: RowId) -> &'static str {
    let json = row.row().json;
    if json.is_empty() || OTHER.contains(&json) { own(row) } else { json }
}

/// "bay_clear".
fn own(row: RowId) -> &'static str {
    static NAMES: LazyLock<Vec<&'static str>> = LazyLock::new(|| {
        let snake = |id: RowId| {
            let capital = |c: char| if c.is_uppercase() { format!("_{}", c.to_lowercase()) } else { c.to_string() };
            &*format!("{id:?}").chars().map(capital).collect::<String>().trim_start_matches('_').to_owned().leak()
        };
        ROWS.iter().map(|r| snake(r.id)).collect()
    });
    NAMES[row as usize]
}

/// Puts in what was found: the rows, those beside them, then what they were worked out from.
pub(super) fn put(reply: &mut Reply, found: &[Found]) {
    let first = found.first().map(|one| one.solved.fig.clone());
    reply.values.result = reply.values.result.take().or(first);
    found.iter().for_each(|one| put_row(reply, one.want, &one.solved.fig));
    found.iter().for_each(|one| reply.values.more.extend(otherwise(one.want, &one.solved.fig)));
    let beside = found.iter().flat_map(|one| &one.beside);
    beside.for_each(|(row, solved)| put_row(reply, *row, &solved.fig));
    found.iter().flat_map(Found::all).for_each(|solved| put_working(reply, &solved.fig, DEPTH));
}

/// The same figure as it is said otherwise: a share in parts of a hundred, parts of a hundred as a share, stock in feet.
pub(super) fn otherwise(row: RowId, fig: &Fig) -> Option<(&'static str, Fig)> {
    let of = |name, q, says| {
        Some((name, Fig::new(Value::Number(q), Why::Formula(says, vec![(row.row().name, fig.clone())]))))
    };
    match row.row().kind {
        Kind::Percent => of("ratio", fig.as_q() / Q::from_integer(100), "the parts of a hundred over a hundred"),
        _ if SHARES.contains(&row) => of("percent", fig.as_q() * Q::from_integer(100), "a hundred times the share"),
        _ if IN_FEET.contains(&row) => of("feet", fig.as_q() / Q::from_integer(12), "inches over twelve"),
        _ => None,
    }
}

/// Shares of a whole.
pub(super) const SHARES: &[RowId] = &[RowId::NotchPart, RowId::NotchShare, RowId::CornerShare];

/// Stock that is bought by the foot, and what is left of it.
const IN_FEET: &[RowId] = &[RowId::Lineal, RowId::LinealExtra, RowId::LeftOver];

/// Puts in the premises that had a part: an answer may be worked out by an engine that does not name them.
pub(super) fn put_given(reply: &mut Reply, asked: &Asked, used: &[RowId]) {
    let given =
        used.iter().filter(|row| !asked.ask.wants.contains(row)).filter_map(|row| Some((*row, asked.given.get(*row)?)));
    given.for_each(|(row, fig)| put_row(reply, row, fig));
}

/// Puts in the premises that had no part: they are named in the answer.
pub(super) fn put_unused(reply: &mut Reply, asked: &Asked, used: &[RowId]) {
    let unused = asked.given.rows().filter(|row| !used.contains(row) && !asked.ask.wants.contains(row));
    unused.filter_map(|row| Some((row, asked.given.get(row)?))).for_each(|(row, fig)| put_row(reply, row, fig));
}

/// Puts one row in; where another figure has its name, under its id's.
pub(super) fn put_row(reply: &mut Reply, row: RowId, fig: &Fig) {
    let other = |n: &str| reply.values.more.iter().any(|(name, f)| *name == n && f.value() != fig.value());
    let name = if other(name(row)) { own(row) } else { name(row) };
    if reply.values.more.iter().all(|(n, _)| *n != name) {
        reply.values.more.push((name, fig.clone()));
    }
}

/// Puts in every figure one was worked out from.
pub(super) fn put_working(reply: &mut Reply, fig: &Fig, depth: u8) {
    let Why::Formula(_, from) = fig.why() else { return };
    // All it was worked out from goes before what that was worked out from.
    for (name, input) in from {
        match ROWS.iter().find(|r| r.name == *name) {
            Some(row) => put_row(reply, row.id, input),
            None if reply.values.more.iter().all(|(n, _)| n != name) => reply.values.more.push((name, input.clone())),
            None => {}
        }
    }
    for (_, input) in from.iter().filter(|_| depth > 0) {
        put_working(reply, input, depth - 1);
    }
}
