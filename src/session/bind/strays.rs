//! Figures of a telling that fill no row: whether they say again what is said, were taken back in the same breath, or are of another matter.

use super::readings::{Reading, is_taking_back};
use super::value::ways;
use crate::grammar::scores::{Item, Line, Shape};

/// How many figures without a row stand apart from all that is told; `None` where one stands among it.
pub(super) fn strays(line: &Line, reading: &Reading<'_>) -> Option<usize> {
    let mut apart = 0;
    for item in reading.strays(line) {
        if says_again(line, reading, item) || is_taken_back(line, reading, item) || counts_them(line, reading, item) {
            continue;
        }
        if !stands_apart(line, reading, item.at) {
            return None;
        }
        apart += 1;
    }
    Some(apart)
}

/// "25 by 15, the fifteen is against the house": one of the figures that are told, said again.
fn says_again(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let Some(value) = line.tokens.get(item.at).and_then(|t| t.value.as_ref()) else { return false };
    let pointed = item.at.checked_sub(1).and_then(|at| line.tokens.get(at)).and_then(|t| t.word.as_deref());
    let pointed = matches!(pointed, Some("the" | "that"));
    reading.filled.iter().filter_map(|f| line.tokens.get(f.at)?.value.as_ref()).any(|told| {
        let side = told.shape == Shape::Side;
        let alike = told.readings.iter().any(|r| value.readings.contains(r));
        alike && (side || pointed)
    })
}

/// "42, no, 36": what a later figure of the same kind took the place of.
fn is_taken_back(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let next =
        reading.filled.iter().filter(|f| f.at > item.at && line.tokens.get(f.at).is_some_and(|t| t.value.is_some()));
    let Some(next) = next.min_by_key(|f| f.at) else { return false };
    let between = &line.tokens[item.at + 1..next.at];
    let words: Vec<&str> = between.iter().filter_map(|t| t.word.as_deref()).collect();
    let back = is_taking_back(&words.join(" "));
    // "nine... nine foot three": begun, and said in full.
    let begun = || {
        let size = |at: usize| line.tokens.get(at)?.value.as_ref().map(|v| v.size());
        let whole = size(item.at).zip(size(next.at)).is_some_and(|(a, b)| a == (b / 12.0).floor() || a == b);
        whole && between.iter().all(|t| t.word.is_none() && t.value.is_none())
    };
    let fits = next.row.is_some_and(|row| !ways(row, line, item.at).is_empty());
    fits && (back || begun())
}

/// "three openings, 61, 61 and 54": how many of one row are told.
fn counts_them(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let Some(value) = line.tokens.get(item.at).and_then(|t| t.value.as_ref()) else { return false };
    let counts = matches!(value.shape, Shape::Bare | Shape::Spoken);
    let figure = |at: usize| line.tokens.get(at).is_some_and(|t| t.value.is_some());
    let rows = reading.filled.iter().filter(|f| f.at > item.at && figure(f.at)).filter_map(|f| f.row);
    let rows: Vec<_> = rows.collect();
    let times = |n: usize| n > 1 && value.size() == n as f64;
    counts && rows.first().is_some_and(|first| times(rows.iter().filter(|r| *r == first).count()))
}

/// True for a figure in whose part of the line nothing is told: "painter comes at 7".
fn stands_apart(line: &Line, reading: &Reading<'_>, at: usize) -> bool {
    let parts = |t: &str| matches!(t, "," | ";" | "." | "(" | ")" | "!" | "?");
    let start = line.tokens[..at].iter().rposition(|t| parts(&t.stem)).map_or(0, |n| n + 1);
    let end = line.tokens[at..].iter().position(|t| parts(&t.stem)).map_or(line.tokens.len(), |n| at + n);
    reading.filled.iter().all(|f| f.at < start || f.at >= end)
}
