//! Ordinals in a question: which baluster or post a mark is asked of, and how many joists lie to a bay.

use super::readings::Reading;
use super::value::{Premise, row_of};
use crate::figure::Value;
use crate::grammar::scores::{Line, Shape, Token};
use crate::quantity::RowId;

const ORDINALS: [&str; 12] = [
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
];

/// What marks are asked of.
const MARKS: &[(RowId, RowId)] = &[
    (RowId::Mark, RowId::Nth),
    (RowId::MarkCentre, RowId::Nth),
    (RowId::MarkFar, RowId::Nth),
    (RowId::PostMark, RowId::PostNth),
    (RowId::PostOut, RowId::PostNth),
];

/// What the ordinals of a line say; none where a figure says it already.
pub(super) fn said(line: &Line, reading: &Reading<'_>) -> Vec<Premise> {
    let filled = |row: RowId| reading.filled.iter().any(|f| f.row == Some(row));
    let joists = every_joist(line).filter(|_| filled(RowId::Joists) && !filled(RowId::JoistsPerBay));
    let joists = joists.map(|n| Premise::Row(RowId::JoistsPerBay, Value::Count(n)));
    joists.into_iter().chain(nth(line, reading)).collect()
}

/// Which one a mark is asked of.
fn nth(line: &Line, reading: &Reading<'_>) -> Option<Premise> {
    let filled = |row: RowId| reading.filled.iter().any(|f| f.row == Some(row));
    let of = |want: &&str| MARKS.iter().find(|(mark, _)| row_of(want) == Some(*mark)).map(|(_, nth)| *nth);
    let row = reading.wants.iter().find_map(of).filter(|nth| !filled(*nth))?;
    which(line).map(|n| Premise::Row(row, Value::Count(n)))
}

/// "every third joist", "every other joist"; behind their spacing "every fifth one".
fn every_joist(line: &Line) -> Option<u64> {
    line.tokens.windows(3).find_map(|w| {
        let [every, nth] = [&w[0], &w[1]].map(|t| t.word.as_deref().unwrap_or_default());
        let of_joists = w[2].stem.starts_with("joist") || w[2].word.as_deref() == Some("one") || is_one(&w[2]);
        let other = (nth == "other").then_some(2);
        other.or_else(|| ordinal(nth)).filter(|_| every == "every" && of_joists)
    })
}

fn is_one(token: &Token) -> bool {
    token.value.as_ref().is_some_and(|v| v.shape == Shape::Spoken && v.size() == 1.0)
}

/// The one a line names: the first is where the others are counted from, and is meant only alone.
fn which(line: &Line) -> Option<u64> {
    let every = |i: usize| i > 0 && line.tokens[i - 1].word.as_deref() == Some("every");
    let counts = line.tokens.iter().enumerate().filter(|(i, _)| !every(*i));
    let mut all: Vec<u64> = counts.filter_map(|(_, t)| ordinal(t.word.as_deref()?)).collect();
    all.sort_unstable();
    all.dedup();
    match all[..] {
        [n] | [1, n] => Some(n),
        _ => None,
    }
}

fn ordinal(word: &str) -> Option<u64> {
    let at = ORDINALS.iter().position(|o| *o == word)?;
    u64::try_from(at + 1).ok()
}
