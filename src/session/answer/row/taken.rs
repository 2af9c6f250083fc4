//! What is said of premises that had no part, and of what was taken though nobody told it.

use super::asked::Asked;
use super::say::figure;
use crate::figure::{Fig, Unit, Value, Why};
use crate::job::Job;
use crate::limits::{self, Limit};
use crate::quantity::{Default, ROWS, RowId};
use crate::reply::{Line, Role, Span};
use crate::solve::{Solved, choice, taken as default_of};

/// The premises no figure was worked out from, and those a row was given over and above the one that counts.
pub(super) fn unused(asked: &Asked, used: &[RowId]) -> Option<Line> {
    let over = over(asked).into_iter().map(|(row, value)| (row, Fig::new(value, Why::Told(row.said()))));
    list("Not used for it: ", unused_of(asked, used).chain(over))
}

/// The values a row was given before the one that counts, where no figure was worked out from them.
fn over(asked: &Asked) -> Vec<(RowId, Value)> {
    let solved: Vec<Solved> = asked.ask.wants.iter().filter_map(|want| asked.solve(*want).ok()).collect();
    let part = |row: RowId, value: Value| solved.iter().any(|s| s.whole.contains(&row) || is_input(&s.fig, row, value));
    asked.over().filter(|(row, value)| !part(*row, *value)).collect()
}

/// A row a figure was worked out from by one of its values, another of which had no part.
pub(super) fn passed_over(asked: &Asked, used: &[RowId]) -> Option<RowId> {
    let other = |row: &RowId, value: &Value| asked.given.get(*row).is_some_and(|fig| fig.value() != *value);
    over(asked).into_iter().find(|(row, value)| used.contains(row) && other(row, value)).map(|(row, _)| row)
}

/// True where a figure was worked out from that value of the row: how it stood before it was said anew.
fn is_input(fig: &Fig, row: RowId, value: Value) -> bool {
    let Why::Formula(_, from) = fig.why() else { return false };
    from.iter().any(|(name, input)| *name == row.row().name && input.value() == value)
}

/// The premises no figure was worked out from, where each value of a row given several times was.
pub(super) fn idle(asked: &Asked, used: &[RowId]) -> Option<Line> {
    list("Not used for it: ", unused_of(asked, used))
}

fn unused_of<'a>(asked: &'a Asked, used: &'a [RowId]) -> impl Iterator<Item = (RowId, Fig)> + 'a {
    let rows = asked.given.rows().filter(|row| !used.contains(row));
    rows.filter_map(|row| Some((row, asked.given.get(row)?.clone())))
}

/// What nobody told and was taken as is usual: rows with their figures, then what engines took that is no row, in its own words.
pub(super) fn taken<'a>(job: &Job, rows: &[RowId], figs: impl Iterator<Item = &'a Fig>) -> Option<Line> {
    let lead = "Not told, so taken as usual: ";
    let of_rows = list(lead, rows.iter().map(|row| (*row, default_of(job, *row))));
    let mut taken: Vec<&'static Limit> = Vec::new();
    let mut of_wood = false;
    for f in figs {
        defaults_in(f, &mut taken);
        of_wood |= is_of_wood(f);
    }
    taken.extend((of_wood && choice::timber(job).species.is_none()).then_some(&limits::WOOD));
    taken.retain(|l| ROWS.iter().all(|r| !is_default(r.default, l)));
    let words = taken.into_iter().map(|l| Line::new(Role::Detail, [Span::Say(l.says), Span::Say(stop(l))]));
    of_rows.into_iter().chain(words).reduce(joined)
}

/// What had no part and what was taken, in one line.
pub(super) fn both(unused: Option<Line>, taken: Option<Line>) -> Option<Line> {
    unused.into_iter().chain(taken).reduce(joined)
}

fn joined(mut line: Line, more: Line) -> Line {
    line.spans.push(Span::Say(" "));
    line.spans.extend(more.spans);
    line
}

fn is_default(of: Default, limit: &Limit) -> bool {
    match of {
        Default::Limit(l) | Default::Thick(l) | Default::Wide(l) => l.id == limit.id,
        Default::None => false,
    }
}

/// The defaults a figure was worked out from, however deep.
fn defaults_in(f: &Fig, found: &mut Vec<&'static Limit>) {
    match f.why() {
        Why::Default(limit) if found.iter().all(|l| l.id != limit.id) => found.push(limit),
        Why::Formula(_, from) => from.iter().for_each(|(_, input)| defaults_in(input, found)),
        _ => {}
    }
}

/// True where a figure follows from what wood bears.
fn is_of_wood(f: &Fig) -> bool {
    let from = |why: &Why| matches!(why, Why::Formula(_, from) if from.iter().any(|(_, input)| is_of_wood(input)));
    matches!(f.value(), Value::Quantity(_, Unit::Psi)) || from(f.why())
}

/// A full stop, but for words that end in one ("3 in.").
pub(super) fn stop(limit: &Limit) -> &'static str {
    if limit.says.ends_with('.') { "" } else { "." }
}

fn list(lead: &'static str, rows: impl Iterator<Item = (RowId, Fig)>) -> Option<Line> {
    let mut spans = Vec::new();
    for (row, f) in rows {
        spans.push(Span::Say(if spans.is_empty() { lead } else { ", " }));
        spans.extend([Span::Say(row.row().name), Span::Say(" ")]);
        spans.extend(figure(row, &f));
    }
    let any = !spans.is_empty();
    spans.push(Span::Say("."));
    any.then(|| Line::new(Role::Detail, spans))
}
