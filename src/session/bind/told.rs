//! A reading that tells, as facts: what is told of runs and their openings is gathered run by run, all else stands alone.

use super::About;
use super::asked::Way;
use super::readings::{Filled, Reading};
use super::runs::{Runs, is_length, is_of_runs};
use super::value::{Premise, fact, ways};
use crate::figure::Value;
use crate::grammar::Act;
use crate::grammar::scores::{How, Line};
use crate::grammar::words::words;
use crate::job::{Fact, Job};
use crate::quantity::RowId;
use crate::session::topics::opens;

/// What an item says of its row.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Says {
    /// A figure.
    Value(Value),
    /// Words.
    Word(String),
    /// More or less by so much.
    Change(Value),
    /// Nothing of it: "no gate".
    Nothing,
    /// It is only named.
    Named,
}

/// The facts a reading tells; `None` where one of its items has a row that cannot be told so.
pub(super) fn told(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    // A figure that is told and has no row is the one thing that must not be passed over.
    if reading.unbound(line) > 0 || run_together(line, reading) {
        return None;
    }
    let alone = |f: &&Filled<'_>| f.row.is_some_and(|r| !is_of_runs(r));
    let rows: Vec<RowId> = reading.filled.iter().filter(alone).filter_map(|f| f.row).collect();
    // One row told twice in a line is two things, or a change of mind: neither is told by itself.
    if rows.iter().enumerate().any(|(i, row)| rows[..i].contains(row)) {
        return None;
    }
    let deck = rows.iter().any(|r| matches!(r, RowId::DeckAlong | RowId::DeckOut));
    let mut runs = Runs::new(reading.filled.iter().filter_map(|f| f.row).filter(|r| is_of_runs(*r)).collect());
    let mut facts: Vec<Fact> = Vec::new();
    let mut cost = if opens(&words(about.line)) { OPENS_AS_QUESTION } else { 0.0 };
    for (n, filled) in reading.filled.iter().enumerate() {
        let Some(row) = filled.row else { continue };
        // "corner post ... the corner" names one place twice.
        let named =
            |f: &Filled<'_>| f.row == Some(row) && f.how == filled.how && f.word.is_some() && f.word == filled.word;
        if n.checked_sub(1).and_then(|n| reading.filled.get(n)).is_some_and(named) {
            continue;
        }
        let (more, said) = says(line, filled, row)?;
        cost += more;
        match said {
            Told::Fact(fact) => facts.push(fact),
            Told::Says(row, said) if is_of_runs(row) => runs.take(row, &said)?,
            // A deck at a house has its guard on the other three sides.
            Told::Says(RowId::KeptSides, said) if deck && is_three(&said) => {}
            Told::Says(row, said) => facts.extend(by_itself(about.job, row, &said)?),
        }
    }
    let of_runs = runs.facts(about)?;
    // A figure by itself beside a run would not be the run's: "3 posts on the front, 12 ft".
    if !of_runs.is_empty() && facts.iter().any(|f| matches!(f, Fact::Row(..))) {
        return None;
    }
    facts.extend(of_runs);
    // What would change nothing was not what was meant.
    let stands = !facts.is_empty() && about.job.with_all(&facts).is_ok_and(|job| job != *about.job);
    stands.then(|| Way::plain(cost, Act::Tell(facts)))
}

/// What it costs a telling that its line opens as a question does: a logarithm of odds.
const OPENS_AS_QUESTION: f32 = -2.5;

/// What an item says, or at once the fact it tells.
pub(super) enum Told {
    Says(RowId, Says),
    Fact(Fact),
}

/// What an item says of a row, and what taking it so costs.
pub(super) fn says(line: &Line, filled: &Filled<'_>, row: RowId) -> Option<(f32, Told)> {
    let plain = |s: Says| Some((0.0, Told::Says(row, s)));
    match filled.how {
        How::Nothing => return plain(Says::Nothing),
        How::Named => return plain(Says::Named),
        How::Words(words) => return plain(Says::Word(words.to_owned())),
        How::Times => return None,
        How::Set | How::Add | How::Less => {}
    }
    if line.tokens.get(filled.at)?.value.is_none() {
        return plain(Says::Word(filled.word?.to_owned()));
    }
    let (cost, premise) = ways(row, line, filled.at).into_iter().next()?;
    let told = match (premise, filled.how) {
        (Premise::Fact(fact), How::Set) => Told::Fact(fact),
        (Premise::Row(row, value), How::Set) => Told::Says(row, Says::Value(value)),
        (Premise::Row(row, value), How::Add) => Told::Says(row, Says::Change(value)),
        (Premise::Row(row, Value::Length(l)), _) => Told::Says(row, Says::Change(Value::Length(-l))),
        _ => return None,
    };
    Some((cost, told))
}

/// The facts that tell a row by itself.
fn by_itself(job: &Job, row: RowId, said: &Says) -> Option<Vec<Fact>> {
    let one = |f: Option<Fact>| f.map(|f| vec![f]);
    match said {
        Says::Value(value) => one(Fact::of(row, *value)),
        Says::Word(word) => one(fact(row, word)),
        Says::Nothing => one(fact(row, "none").or_else(|| row.row().may_be_nothing.then(|| zero(row)).flatten())),
        Says::Change(Value::Length(by)) => {
            let now = job.told(row)?.as_length()?;
            one(Fact::of(row, Value::Length(now + *by)))
        }
        Says::Change(_) => None,
        // A thing only named says something that is not told so: it is not passed over.
        Says::Named => None,
    }
}

fn zero(row: RowId) -> Option<Fact> {
    Fact::of(row, Value::Length(crate::measure::Length::ZERO))
}

fn is_three(said: &Says) -> bool {
    match said {
        Says::Value(Value::Count(n)) => *n == 3,
        Says::Word(word) => matches!(word.as_str(), "three" | "all" | "all three"),
        _ => false,
    }
}

/// True where two lengths of runs stand side by side, or one or the other is meant: "10' 12'", "12 or 13".
fn run_together(line: &Line, reading: &Reading<'_>) -> bool {
    const PARTS: &[&str] = &[",", ";", "/", "&", "-", ">", "then", "and", "plu", "+"];
    let lengths: Vec<usize> = reading.filled.iter().filter(|f| f.row.is_some_and(is_length)).map(|f| f.at).collect();
    let other = |from: usize, to: usize| reading.filled.iter().any(|f| f.at > from && f.at < to);
    lengths.windows(2).any(|pair| {
        let between = &line.tokens[pair[0] + 1..pair[1]];
        let either = between.iter().any(|t| t.stem == "or");
        let parted = between.iter().any(|t| PARTS.contains(&t.stem.as_str())) || other(pair[0], pair[1]);
        either || !parted
    })
}
