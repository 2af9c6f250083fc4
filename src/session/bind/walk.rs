//! A walk round the deck, side by side: "out 18, over 10, back 18 to the house".

use super::About;
use super::readings::{Filled, Reading};
use super::value::{Premise, ways};
use crate::figure::Value;
use crate::grammar::scores::{How, Line, Token};
use crate::job::outline::filled as outlined;
use crate::job::{Basis, End, Fact, Job, RunId, RunPatch, Told, Turn};
use crate::measure::Length;
use crate::quantity::RowId;
use std::ops::Range;

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

/// The sides a line goes on with behind a run that starts at the house: "then 10 across", "back 8 and 6 over", "and home". `None` for any other
/// line.
pub(super) fn goes_on(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Vec<Fact>> {
    let plain = |f: &Filled<'_>| matches!(f.row, Some(RowId::RunLength | RowId::Turn)) || goes_home(f);
    (reading.act == "tell" && reading.filled.iter().all(plain)).then_some(())?;
    let (mut heading, first) = under_way(about.job)?;
    let mut next = about.job.next_run();
    let mut facts: Vec<Fact> = first.into_iter().collect();
    let of_length = |r: &Range<usize>| {
        let mut at =
            reading.filled.iter().filter(|f| f.row == Some(RowId::RunLength) && r.contains(&f.at)).map(|f| f.at);
        at.next().filter(|_| at.next().is_none())
    };
    let home = reading.filled.iter().any(goes_home);
    let lengths = reading.filled.iter().filter(|f| f.row == Some(RowId::RunLength)).count();
    let parts: Vec<Range<usize>> = parts(line).into_iter().filter(|r| of_length(r).is_some()).collect();
    (parts.len() == lengths && (lengths > 0 || home)).then_some(())?;
    for part in &parts {
        let to = the_way(line, reading, part)?;
        facts.push(side(next, turn(to - heading)?, length(line, of_length(part)?)?));
        (heading, next) = (to, RunId(next.0 + 1));
    }
    // What is left of the way home follows from the sides before it.
    if home && lengths == 0 {
        let patch = RunPatch { basis: Some(Basis::Edge), turn: Some(turn(180 - heading)?), ..RunPatch::default() };
        facts.push(Fact::Run(next, patch));
    }
    Some(facts)
}

fn goes_home(f: &Filled<'_>) -> bool {
    let word = if let How::Words(words) = f.how { Some(words) } else { f.word };
    f.row == Some(RowId::RunTo) && matches!(word, Some("house" | "wall"))
}

/// Which way the walk told so far goes, clockwise from straight out, and what makes its first run one of a walk; `None` where the job is no
/// walk, or it has come home.
fn under_way(job: &Job) -> Option<(i32, Option<Fact>)> {
    if let [only] = &job.runs[..]
        && only.turn.is_none()
    {
        let out = only.from == Some(End::House) && matches!(only.to, None | Some(End::Corner)) && only.length.is_some();
        let patch = RunPatch { basis: Some(Basis::Edge), turn: Some(Turn::Start), ..RunPatch::default() };
        return out.then_some((0, Some(Fact::Run(only.id, patch))));
    }
    let by = |turn: Turn| match turn {
        Turn::Start => Some(0),
        Turn::Right(degrees) => Some(i32::from(degrees)),
        Turn::Left(degrees) => Some(-i32::from(degrees)),
        _ => None,
    };
    let heading: i32 = job.runs.iter().map(|r| by(r.turn?)).sum::<Option<i32>>()?;
    let heading = heading.rem_euclid(360);
    let home = heading == 180 && outlined(job).open.is_none() && job.runs.len() > 2;
    (!home && !job.runs.is_empty()).then_some((heading, None))
}

/// The parts of a line, each of which goes one way.
fn parts(line: &Line) -> Vec<Range<usize>> {
    let parts = |t: &Token| matches!(t.stem.as_str(), "," | ";" | "." | "then" | "and" | "&");
    let mut edges: Vec<usize> = (0..line.tokens.len()).filter(|at| parts(&line.tokens[*at])).collect();
    edges.push(line.tokens.len());
    let starts = [0].into_iter().chain(edges.iter().map(|e| e + 1));
    starts.zip(edges.iter().copied()).filter(|(from, to)| from < to).map(|(from, to)| from..to).collect()
}

/// The one way the words of a part go.
fn the_way(line: &Line, reading: &Reading<'_>, part: &Range<usize>) -> Option<i32> {
    let words = line.items.iter().filter(|i| part.contains(&i.at)).filter_map(|i| i.word());
    let turns = reading.filled.iter().filter(|f| f.row == Some(RowId::Turn) && part.contains(&f.at));
    let turns = turns.filter_map(|f| if let How::Words(words) = f.how { Some(words) } else { f.word });
    let mut ways = words.chain(turns).filter_map(way);
    let first = ways.next()?;
    ways.all(|w| w == first).then_some(first)
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
