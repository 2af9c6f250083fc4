//! A reading that tells, as facts: what is told of runs and their openings is gathered run by run, all else stands alone.

use super::About;
use super::asked::Way;
use super::premises::premises;
use super::readings::{Filled, Reading};
use super::runs::{Runs, is_length, is_of_runs};
use super::spare::is_noun;
use super::value::{Premise, fact, ways};
use crate::figure::Value;
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::items::likeliest;
use crate::grammar::scores::{How, Line};
use crate::grammar::words::words;
use crate::grammar::{Act, Query};
use crate::job::{Fact, Job, Run};
use crate::quantity::RowId;
use crate::session::resolve::house_sides;
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
    let one_run = reading.filled.iter().filter(|f| f.row.is_some_and(is_length)).count() == 1;
    let ended = has_posts_at_its_ends(reading);
    let deck = rows.iter().any(|r| matches!(r, RowId::DeckAlong | RowId::DeckOut));
    let mut runs = Runs::new(reading.filled.iter().filter_map(|f| f.row).filter(|r| is_of_runs(*r)).collect());
    let (mut facts, mut kept): (Vec<Fact>, Vec<String>) = (Vec::new(), Vec::new());
    let asks = asks_first(about.line);
    let mut cost = if asks { OPENS_AS_QUESTION } else { 0.0 };
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
            // A post at each end and one between two bays.
            Told::Says(RowId::PostCount, Says::Value(Value::Count(n))) if ended && n > 1 => {
                runs.take(RowId::BayCount, &Says::Value(Value::Count(n - 1)))?;
            }
            Told::Says(row, said) if is_of_runs(row) => runs.take(row, &said)?,
            Told::Says(RowId::PostsBetween, Says::Value(Value::Count(n))) if one_run => {
                runs.take(RowId::BayCount, &Says::Value(Value::Count(n + 1)))?;
            }
            // What only says where all this is tells nothing by itself.
            Told::Says(RowId::Spot | RowId::Shape | RowId::Unit, Says::Word(_) | Says::Named) => cost += ASIDE,
            // A deck at a house has its guard on the other three sides.
            Told::Says(RowId::KeptSides, said) if deck && is_three(&said) => {}
            Told::Says(RowId::KeptSides, Says::Word(side)) if deck => kept.push(side),
            Told::Says(row, said) => facts.extend(by_itself(about.job, row, &said)?),
        }
    }
    // Stairs and gates may stand on a side of the deck told in the same line.
    let with_deck = about.job.with_all(&facts).ok()?;
    if deck {
        facts.extend(house_sides(&with_deck));
    }
    let with_deck = about.job.with_all(&facts).ok()?;
    facts.extend(without_guard(&with_deck, &kept));
    let with_deck = about.job.with_all(&facts).ok()?;
    let of_runs = runs.facts(&About { job: &with_deck, ..*about })?;
    // A figure by itself beside a run would not be the run's: "3 posts on the front, 12 ft".
    if !of_runs.is_empty() && facts.iter().any(|f| matches!(f, Fact::Row(..))) {
        return None;
    }
    facts.extend(of_runs);
    // What would change nothing was not what was meant.
    let stands = !facts.is_empty() && about.job.with_all(&facts).is_ok_and(|job| job != *about.job);
    // What opens as a question is at most offered, and so is a run by its length alone: a figure makes no thing.
    let bare = one_run && about.job.runs.is_empty() && !deck && !is_placed(reading);
    let bare = bare || facts.iter().any(|f| matches!(f, Fact::Row(row, _) if !is_spoken_of(about, reading, *row)));
    stands.then(|| Way { unbound: usize::from(asks || bare), ..Way::plain(cost, Act::Tell(facts)) })
}

/// What no part of the job keeps as it is said, as premises of what is asked next: "five 4x4s in 26 foot overall".
pub(super) fn given(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    if reading.act != "tell" || reading.unbound(line) > 0 || run_together(line, reading) {
        return None;
    }
    let (cost, taken) = premises(about, line, reading)?.into_iter().next()?;
    let (mut given, mut supposed) = (Vec::new(), Vec::new());
    for premise in taken {
        match premise {
            Premise::Row(row, value) => given.push((row, value)),
            Premise::Fact(fact) => supposed.push(fact),
        }
    }
    let asks = asks_first(about.line);
    let fits = !given.is_empty() && about.job.with_all(&supposed).is_ok();
    let act = Act::Query(Query::Given(RowAsk { wants: Vec::new(), mood: Mood::Figure, given, supposed }));
    // A place or a name that no premise holds must not be passed over: then it is at most offered.
    let held_by_none = |f: &Filled<'_>| f.row.is_some_and(|r| is_of_runs(r) && r.row().is_words());
    let lost = reading.filled.iter().any(held_by_none);
    fits.then(|| Way { unbound: usize::from(asks || lost), ..Way::plain(cost + NOT_KEPT, act) })
}

/// True for a line whose first word of weight asks: "so is that", but not "posts are 4x4".
fn asks_first(line: &str) -> bool {
    let words = words(line);
    let first = likeliest(&words, &[]).iter().find(|i| !i.is_light() && !i.is_sep()).map(|i| i.words.start);
    words.first().is_some_and(|w| opens(std::slice::from_ref(w)))
        || first.is_some_and(|at| opens(&words[at..words.len().min(at + 1)]))
}

/// What it costs a telling that no part of the job keeps it: a logarithm of odds.
const NOT_KEPT: f32 = -0.7;

/// What it costs a telling that a word of it has no place in the job: a logarithm of odds.
const ASIDE: f32 = -0.3;

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

/// True where the line names the row, or it was told, asked or given before: "12x" alone is not so many balusters.
fn is_spoken_of(about: &About<'_>, reading: &Reading<'_>, row: RowId) -> bool {
    let named = words(about.line).iter().any(|w| is_noun(reading, &w.text));
    let before = about.asked.is_some_and(|a| a.wants.contains(&row) || a.given.iter().any(|(r, _)| *r == row));
    named || before || about.job.told(row).is_some()
}

/// True where an end, a name or a basis says that a length is a run's.
fn is_placed(reading: &Reading<'_>) -> bool {
    use RowId::{RunCentre, RunClear, RunFrom, RunName, RunOverall, RunTo};
    let places = |row: RowId| matches!(row, RunCentre | RunClear | RunFrom | RunName | RunOverall | RunTo);
    reading.filled.iter().filter_map(|f| f.row).any(places)
}

/// The sides of a deck that are not among those named for the guard go without.
fn without_guard(job: &Job, kept: &[String]) -> Vec<Fact> {
    let named = |run: &&Run| run.name.as_ref().is_some_and(|name| kept.contains(name));
    let known = job.runs.iter().filter(named).count() == kept.len();
    let others = job.runs.iter().filter(|run| known && !kept.is_empty() && !named(run));
    others.map(|run| Fact::DropRun(run.id)).collect()
}

/// True for the telling of one run that ends on posts: taken over them, between them or from center to center, or between places that have one.
fn has_posts_at_its_ends(reading: &Reading<'_>) -> bool {
    let rows = || reading.filled.iter().filter_map(|f| f.row);
    let based = |row: RowId| matches!(row, RowId::RunOverall | RowId::RunClear | RowId::RunCentre);
    let posts = |f: &&Filled<'_>| {
        matches!(f.row, Some(RowId::RunFrom | RowId::RunTo)) && !matches!(f.word, Some("house" | "wall" | "column"))
    };
    rows().filter(|r| is_length(*r)).count() == 1
        && (rows().any(based) || reading.filled.iter().filter(posts).count() == 2)
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
