//! Figures of a telling that fill no row: whether they say again what is said, were taken back in the same breath, or are of another matter.

use super::readings::{Filled, Reading, is_taking_back};
use super::value::ways;
use crate::grammar::scores::{Is, Item, Line, Shape, Token, stem};
use crate::quantity::{ROWS, RowId};
use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::LazyLock;

/// How many figures without a row stand apart from all that is told; `None` where one stands among it.
pub(super) fn strays(line: &Line, reading: &Reading<'_>) -> Option<usize> {
    let mut apart = 0;
    for item in reading.strays(line) {
        let said = is_of_the_bay(line, reading, item)
            || names_the_post(line, reading, item)
            || says_again(line, reading, item)
            || is_taken_back(line, reading, item);
        if said || counts_them(line, reading, item) || counts_ends(line, reading, item) || is_of_a_name(line, item) {
            continue;
        }
        if !stands_apart(line, reading, item.at) {
            return None;
        }
        apart += usize::from(!is_of_another_matter(line, item));
    }
    Some(apart)
}

/// "Between the two gates": both ends of the run, that are told.
fn counts_ends(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let two = line
        .tokens
        .get(item.at)
        .and_then(|t| t.value.as_ref())
        .is_some_and(|v| v.shape != Shape::Feet && v.size() == 2.0);
    let end = |row: RowId| reading.filled.iter().find(|f| f.row == Some(row));
    let (Some(from), Some(to)) = (end(RowId::RunFrom), end(RowId::RunTo)) else { return false };
    two && (from.how == to.how) && (item.at + 1..=item.at + 2).any(|at| at == from.at || at == to.at)
}

/// "Clear between the two posts": a bay has two.
fn is_of_the_bay(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let token = |at: usize| line.tokens.get(at);
    let two = token(item.at).and_then(|t| t.value.as_ref()).is_some_and(|v| v.shape != Shape::Feet && v.size() == 2.0);
    let posts = token(item.at + 1).is_some_and(|t| t.stem == "post");
    let between = line.tokens[item.at.saturating_sub(2)..item.at].iter().any(|t| t.stem == "between");
    two && posts && between && reading.filled.iter().any(|f| f.row == Some(RowId::BayClear))
}

/// "The 4x4s measure 3 9/16": what is measured is called by its size.
fn names_the_post(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let size = line.tokens.get(item.at).and_then(|t| t.value.as_ref()).and_then(|v| v.lumber());
    let square = size.is_some_and(|l| l.thick_quarters == 4 * l.wide);
    let behind = reading.filled.iter().find(|f| f.at > item.at).and_then(|f| f.row);
    square && behind == Some(RowId::PostWidth)
}

/// "Three-season room": part of what something is called.
fn is_of_a_name(line: &Line, item: &Item) -> bool {
    let spoken = line.tokens.get(item.at).and_then(|t| t.value.as_ref()).is_some_and(|v| v.shape == Shape::Spoken);
    let at = |n: usize| line.tokens.get(item.at + n);
    let hyphen = at(1).is_some_and(|t| t.stem == "-");
    let named = line.item(item.at + 2).is_some_and(|i| matches!(i.is, Is::Name(_)));
    spoken && hyphen && named
}

/// The figures that are of another matter altogether: they are passed over, and named.
pub(super) fn of_another_matter(line: &Line, reading: &Reading<'_>) -> Vec<usize> {
    let passed = |i: &&Item| stands_apart(line, reading, i.at) && is_of_another_matter(line, i);
    reading.strays(line).filter(passed).map(|i| i.at).collect()
}

/// "Painter comes at 7": a number without a unit in a part of the line that names nothing of the trade.
fn is_of_another_matter(line: &Line, item: &Item) -> bool {
    static NOUNS: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
        let figures = ROWS.iter().filter(|row| !row.is_words());
        let nouns = figures.flat_map(|row| row.nouns.split(',').map(str::trim)).filter(|n| !n.contains(' '));
        nouns.map(stem).collect()
    });
    if is_an_hour(line, item.at) {
        return true;
    }
    let value = line.tokens.get(item.at).and_then(|t| t.value.as_ref());
    let bare = value.is_some_and(|v| matches!(v.shape, Shape::Bare | Shape::Spoken) && v.size().fract() == 0.0);
    bare && line.tokens[part(line, item.at)].iter().all(|t| t.word.is_none() || !NOUNS.contains(&t.stem))
}

/// "Tuesday at 8": the hour of a day.
fn is_an_hour(line: &Line, at: usize) -> bool {
    const DAYS: &[&str] =
        &["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "tomorrow", "today"];
    let word = |back: usize| at.checked_sub(back).and_then(|n| line.tokens.get(n)?.word.as_deref()).unwrap_or_default();
    word(1) == "at" && DAYS.contains(&word(2))
}

/// The part of the line around a token.
fn part(line: &Line, at: usize) -> Range<usize> {
    let parts = |t: &Token| matches!(t.stem.as_str(), "," | ";" | "." | "(" | ")" | "!" | "?");
    let start = line.tokens[..at].iter().rposition(parts).map_or(0, |n| n + 1);
    start..line.tokens[at..].iter().position(parts).map_or(line.tokens.len(), |n| at + n)
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

/// "42, no, 36": what a later figure that fits the same row took the place of.
fn is_taken_back(line: &Line, reading: &Reading<'_>, item: &Item) -> bool {
    let figure = |at: usize| line.tokens.get(at).is_some_and(|t| t.value.is_some());
    let fits = |f: &&Filled<'_>| f.row.is_some_and(|row| !ways(row, line, item.at).is_empty());
    let next = reading.filled.iter().filter(|f| f.at > item.at && figure(f.at)).find(fits);
    let Some(next) = next else { return false };
    let between = &line.tokens[item.at + 1..next.at];
    let words: Vec<&str> = between.iter().filter_map(|t| t.word.as_deref()).collect();
    // "nine... nine foot three": begun, and said in full.
    let begun = || {
        let size = |at: usize| line.tokens.get(at)?.value.as_ref().map(|v| v.size());
        let whole = size(item.at).zip(size(next.at)).is_some_and(|(a, b)| a == (b / 12.0).floor() || a == b);
        whole && between.iter().all(|t| t.word.is_none() && t.value.is_none())
    };
    is_taking_back(&words.join(" ")) || begun()
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
    let part = part(line, at);
    reading.filled.iter().all(|f| !part.contains(&f.at))
}
