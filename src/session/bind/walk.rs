//! A walk round the deck, side by side: "out 18, over 10, back 18 to the house".

use super::About;
use super::readings::Reading;
use super::value::{Premise, ways};
use crate::figure::Value;
use crate::grammar::scores::{How, Line};
use crate::job::outline::filled as outlined;
use crate::job::{Basis, Fact, RunId, RunPatch, Told, Turn};
use crate::measure::Length;
use crate::quantity::RowId;

/// The sides of a walk that starts at the house and says at each length which way it goes, none where it does not come home; `None` for any
/// other line.
pub(super) fn walk(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Option<Vec<Fact>>> {
    let plain = |row: RowId| {
        matches!(row, RowId::RunLength | RowId::Turn | RowId::RunFrom | RowId::RunTo | RowId::RunName | RowId::Shape)
    };
    if !about.job.runs.is_empty() || !reading.filled.iter().all(|f| f.row.is_some_and(plain) && f.how != How::Nothing) {
        return None;
    }
    let at: Vec<usize> = reading.filled.iter().filter(|f| f.row == Some(RowId::RunLength)).map(|f| f.at).collect();
    if at.len() < 3 {
        return None;
    }
    let lengths = at.iter().map(|at| length(line, *at)).collect::<Option<Vec<_>>>()?;
    let headings = headings(line, reading, &at)?;
    // It begins at the house, straight out.
    headings.first().filter(|first| **first == 0)?;
    let turns = headings.windows(2).map(|pair| turn(pair[1] - pair[0])).collect::<Option<Vec<_>>>()?;
    let sides = [Turn::Start].into_iter().chain(turns).zip(lengths).zip(about.job.next_run().0..);
    let facts: Vec<Fact> = sides.map(|((turn, length), id)| side(RunId(id), turn, length)).collect();
    let closes = about.job.with_all(&facts).is_ok_and(|job| outlined(&job).open.is_none());
    Some(closes.then_some(facts))
}

fn side(id: RunId, turn: Turn, length: Length) -> Fact {
    let length = Some(Told::plain(length));
    Fact::Run(id, RunPatch { length, basis: Some(Basis::Edge), turn: Some(turn), ..RunPatch::default() })
}

fn length(line: &Line, at: usize) -> Option<Length> {
    match ways(RowId::RunLength, line, at).into_iter().next()?.1 {
        Premise::Row(_, Value::Length(l)) => Some(l),
        _ => None,
    }
}

/// Degrees clockwise from straight out for each length, by the one word of a way beside it; `None` where a length has none, or two that differ.
fn headings(line: &Line, reading: &Reading<'_>, at: &[usize]) -> Option<Vec<i32>> {
    // "At the house on the left" is where it starts.
    let places =
        |at: usize| reading.filled.iter().any(|f| f.at == at && matches!(f.row, Some(RowId::RunName | RowId::RunFrom)));
    let between = |from: usize, to: usize| -> Option<i32> {
        let items = line.items.iter().filter(|i| i.at >= from && i.at < to && !places(i.at));
        let mut ways = items.filter_map(|i| way(i.word()?));
        let first = ways.next()?;
        // "back to the house": said twice, it is one way.
        ways.all(|w| w == first).then_some(first)
    };
    let first = at.first()?;
    let last = line.tokens.len();
    let edge = |n: usize| at.get(n).copied().unwrap_or(last);
    // The way stands before each length, or behind each.
    match between(0, *first) {
        Some(_) => {
            let starts = [0].into_iter().chain(at.iter().copied());
            starts.zip(at).map(|(from, to)| between(from, *to)).collect()
        }
        None => (0..at.len()).map(|n| between(at[n], edge(n + 1))).collect(),
    }
}

/// The way a word goes, walked with the deck on the right.
fn way(word: &str) -> Option<i32> {
    match word {
        "out" => Some(0),
        "right" | "across" | "over" => Some(90),
        "back" | "in" | "toward house" => Some(180),
        "left" => Some(270),
        _ => None,
    }
}

/// A square turn; `None` for no turn, or one straight back.
fn turn(by: i32) -> Option<Turn> {
    match by.rem_euclid(360) {
        90 => Some(Turn::Right(90)),
        270 => Some(Turn::Left(90)),
        _ => None,
    }
}
