//! A reading that tells, as facts: what is told of runs and their openings is gathered run by run, all else stands alone.

use super::About;
use super::asked::Way;
use super::partly::{held_sets, partly};
use super::premises::premises;
use super::readings::{Filled, Reading, is_taking_back};
use super::runs::{is_length, is_of_runs};
use super::spare::is_noun;
use super::strays::strays;
use super::value::{Premise, amount, fact, ways};
use super::walk::{goes_on, walk};
use crate::figure::Value;
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::items::likeliest;
use crate::grammar::scores::{How, Line, Token};
use crate::grammar::words::{Word, words};
use crate::grammar::{Act, Query};
use crate::job::{Fact, Job, Run, RunPatch, Told as LengthTold};
use crate::measure::{Length, Q};
use crate::quantity::RowId;
use crate::session::topics::opens;

/// What an item says of its row.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Says {
    /// A figure.
    Value(Value),
    /// Words.
    Word(String),
    /// More by so much, or less by so much where it is a length below nothing.
    Change(Value),
    /// So many fewer.
    Fewer(Value),
    /// Nothing of it: "no gate".
    Nothing,
    /// It is only named.
    Named,
}

/// The facts a reading tells, what no part of the job keeps held beside them; `None` where nothing of it can be told.
pub(super) fn told(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    if let Some(fact) = part_of_an_inch(about, line, reading) {
        return Some(Way::plain(0.0, Act::Tell(vec![fact])));
    }
    // A figure that is told and has no row is the one thing that must not be passed over, but in another matter of the same line.
    let strays = strays(line, reading)?;
    if run_together(line, reading) || measured_twice(reading) {
        return None;
    }
    if let Some(facts) = walk(about, line, reading) {
        let facts = facts?;
        let asks = asks_first(about.line, line, reading);
        let doubtful = strays > 0 || asks;
        return Some(Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(0.0, Act::Tell(facts)) });
    }
    if let Some(facts) = goes_on(about, line, reading) {
        return Some(Way { unbound: strays, doubtful: strays > 0, ..Way::plain(0.0, Act::Tell(facts)) });
    }
    let told = held_sets(reading).into_iter().find_map(|held| partly(about, line, reading, &held))?;
    let asks = asks_first(about.line, line, reading);
    let cost = told.cost + if asks { OPENS_AS_QUESTION } else { 0.0 };
    // What opens as a question is at most offered, and so is a run by its length alone: a figure makes no thing.
    let loose = |f: &Fact| matches!(f, Fact::Row(row, _) if !is_spoken_of(about, line, reading, *row));
    let offered = asks || told.bare || told.facts.iter().any(loose);
    // How high the far end stands is no part of the drop yet: told beside the deck's height it would be passed over.
    let far = told.facts.iter().any(|f| matches!(f, Fact::Row(RowId::GradeFar, _)));
    if let Some(both) = goods_again(about, &told.facts).filter(|_| told.given.is_none()) {
        return Some(Way { cost, ..Way::plain(0.0, both) });
    }
    let act = match told.given {
        Some(given) => Act::TellWith(told.facts, given),
        None => Act::Tell(told.facts),
    };
    // It is offered, and taken as meant where the talk goes on; what asks, passes a figure over, or
    // lacks what would change the guard, is not.
    let unbound = usize::from(strays > 0 || told.unclear || asks || far);
    Some(Way { unbound, doubtful: offered || unbound > 0, ..Way::plain(cost, act) })
}

/// What no part of the job keeps as it is said, as premises of what is asked next: "five 4x4s in 26 foot overall".
pub(super) fn given(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    // So many times as much as what, a telling does not say: "washers x2" are two to each bolt.
    let times = reading.filled.iter().any(|f| f.how == How::Times);
    if reading.act != "tell" || times || run_together(line, reading) {
        return None;
    }
    let strays = strays(line, reading)?;
    let (cost, taken) = premises(about, line, reading)?.into_iter().next()?;
    let (mut given, mut supposed) = (Vec::new(), Vec::new());
    for premise in taken {
        match premise {
            Premise::Row(row, value) => given.push((row, value)),
            Premise::Fact(fact) => supposed.push(fact),
        }
    }
    let asks = asks_first(about.line, line, reading);
    let fits = !given.is_empty() && about.job.with_all(&supposed).is_ok();
    let act = Act::Query(Query::Given(RowAsk { wants: Vec::new(), mood: Mood::Figure, given, supposed }));
    // A place or a name that no premise holds must not be passed over: then it is at most offered.
    let held_by_none = |f: &Filled<'_>| f.row.is_some_and(|r| is_of_runs(r) && r.row().is_words());
    let lost = reading.filled.iter().any(held_by_none);
    let doubtful = asks || lost || strays > 0;
    fits.then(|| Way { unbound: usize::from(doubtful), doubtful, ..Way::plain(cost + NOT_KEPT, act) })
}

/// True for a line whose first word of weight asks: "so is that", but not "posts are 4x4", nor where what was asked says no figure and
/// they come behind it: "could you start a run? It's 15 ft".
fn asks_first(said: &str, line: &Line, reading: &Reading<'_>) -> bool {
    let words = words(said);
    let figures = || reading.filled.iter().filter(|f| f.word.is_none()).map(|f| f.at);
    let end = line.tokens.iter().position(|t| t.stem == "?");
    if figures().next().is_some() && end.is_some_and(|end| figures().all(|at| at > end)) {
        return false;
    }
    if says_what_is(&words) && !words.iter().any(|w| w.text == "?") {
        return false;
    }
    let first = likeliest(&words, &[]).iter().find(|i| !i.is_light() && !i.is_sep()).map(|i| i.words.start);
    words.first().is_some_and(|w| opens(std::slice::from_ref(w)))
        || first.is_some_and(|at| opens(&words[at..words.len().min(at + 1)]))
}

/// "What I have here is 59", "where you step up it's 42": who does something stands right behind the first word. In a question the doing
/// stands there.
fn says_what_is(words: &[Word]) -> bool {
    const WHO: &[&str] = &["i", "we", "you", "they", "he", "she", "it"];
    let of = |at: usize, all: &[&str]| words.get(at).is_some_and(|w| all.contains(&w.text.as_str()));
    // "You can leave the gate": a question turns them round.
    of(0, WHO) || of(0, &["what", "where"]) && of(1, WHO)
}

/// So many at a price, behind so many at another: both are for the cost asked next, and neither takes the other's place.
fn goods_again(about: &About<'_>, facts: &[Fact]) -> Option<Act> {
    use RowId::{Price, StickCount};
    let told = |row: RowId| about.job.told(row).map(|fig| (row, fig.value()));
    let now = |row: RowId| {
        facts.iter().find_map(|f| if let Fact::Row(r, v) = f { (*r == row).then_some((row, *v)) } else { None })
    };
    let before = match about.asked.filter(|a| a.wants.is_empty() && a.given.iter().any(|(row, _)| *row == Price)) {
        Some(held) => held.given.clone(),
        None => vec![told(StickCount)?, told(Price)?],
    };
    let new = [now(StickCount)?, now(Price)?];
    let goods = before.iter().chain(&new).copied().collect::<Vec<_>>();
    let given = RowAsk { wants: Vec::new(), mood: Mood::Figure, given: goods, supposed: Vec::new() };
    let other = before.iter().all(|pair| !new.contains(pair)) && !is_taking_back(about.line);
    other.then_some(Act::Query(Query::Given(given)))
}

/// "The half should be three quarters": of two parts of an inch the one the run's length ends in gives way to the other. A length that ends in
/// neither, or a line that tells anything else, is none of this.
fn part_of_an_inch(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Fact> {
    let run = about.spoken_of().filter(|_| reading.act == "tell" && reading.filled.is_empty())?;
    // A half in words is a word of its own.
    let part = |t: &Token| match t.word.as_deref() {
        Some("half") => Some(Q::new(1, 2)),
        _ => t.value.as_ref()?.number(),
    };
    let all: Vec<Q> = line.tokens.iter().filter_map(part).collect();
    let [a, b] = all[..] else { return None };
    let zero = Q::from_integer(0);
    let parts = [a, b].iter().all(|q| *q > zero && *q < Q::from_integer(1)) && a != b;
    let length = run.length.filter(|_| parts)?.length;
    let ends = length.q() - length.q().floor();
    let now = if ends == a { b } else { a };
    let length = Length::from_q(length.q() - ends + now).filter(|_| ends == a || ends == b)?;
    Some(Fact::Run(run.id, RunPatch { length: Some(LengthTold::plain(length)), ..RunPatch::default() }))
}

/// What it costs a telling that no part of the job keeps it: a logarithm of odds.
const NOT_KEPT: f32 = -0.7;

/// What it costs a telling that a word of it has no place in the job: a logarithm of odds.
pub(super) const ASIDE: f32 = -0.3;

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
    let value = line.tokens.get(filled.at)?.value.as_ref();
    // "Run two" is named by its number.
    if let (RowId::RunName, How::Set, Some(number)) = (row, filled.how, value.and_then(|v| v.number())) {
        let nth = number.is_integer().then(|| u64::try_from(number.to_integer()).ok()).flatten()?;
        return plain(Says::Value(Value::Count(nth)));
    }
    if value.is_none() {
        if row == RowId::RunName && is_both_sides(line, filled.at) {
            return plain(Says::Word(String::from(BOTH_SIDES)));
        }
        return plain(Says::Word(filled.word?.to_owned()));
    }
    // However little it is of the row, it is so much more or less.
    let change = |less: bool| match amount(row, line, filled.at)? {
        Value::Length(l) if less => Some(Says::Change(Value::Length(-l))),
        value if less => Some(Says::Fewer(value)),
        value => Some(Says::Change(value)),
    };
    if matches!(filled.how, How::Add | How::Less) {
        return plain(change(filled.how == How::Less)?);
    }
    let (cost, premise) = ways(row, line, filled.at).into_iter().next()?;
    let told = match premise {
        Premise::Fact(fact) => Told::Fact(fact),
        Premise::Row(row, value) => Told::Says(row, Says::Value(value)),
    };
    Some((cost, told))
}

/// What the left and the right side are called together.
pub(super) const BOTH_SIDES: &str = "sides";

/// True for "sides" as typed, but not "one of the sides".
fn is_both_sides(line: &Line, at: usize) -> bool {
    let sides = line.tokens.get(at).and_then(|t| t.word.as_deref()) == Some(BOTH_SIDES);
    let one = line.tokens[at.saturating_sub(3)..at].iter().any(|t| t.value.as_ref().is_some_and(|v| v.size() == 1.0));
    sides && !one
}

/// The facts that tell a row by itself.
pub(super) fn by_itself(job: &Job, row: RowId, said: &Says) -> Option<Vec<Fact>> {
    let one = |f: Option<Fact>| f.map(|f| vec![f]);
    match said {
        Says::Value(value) => one(Fact::of(row, *value)),
        Says::Word(word) => one(fact(row, word)),
        Says::Nothing => one(fact(row, "none").or_else(|| row.row().may_be_nothing.then(|| zero(row)).flatten())),
        Says::Change(by) => one(Fact::of(row, more(job.told(row)?.value(), *by)?)),
        Says::Fewer(by) => one(Fact::of(row, fewer(job.told(row)?.value(), *by)?)),
        // A thing only named says something that is not told so: it is not passed over.
        Says::Named => None,
    }
}

fn more(now: Value, by: Value) -> Option<Value> {
    match (now, by) {
        (Value::Length(now), Value::Length(by)) => Some(Value::Length(now + by)),
        (Value::Count(now), Value::Count(by)) => now.checked_add(by).map(Value::Count),
        _ => None,
    }
}

fn fewer(now: Value, by: Value) -> Option<Value> {
    match (now, by) {
        (Value::Count(now), Value::Count(by)) => now.checked_sub(by).map(Value::Count),
        _ => None,
    }
}

fn zero(row: RowId) -> Option<Fact> {
    Fact::of(row, Value::Length(Length::ZERO))
}

pub(super) fn is_three(said: &Says) -> bool {
    match said {
        Says::Value(Value::Count(n)) => *n == 3,
        Says::Word(word) => matches!(word.as_str(), "three" | "all" | "all three"),
        _ => false,
    }
}

/// True where the line names the row, or it was told, asked or given before: "12x" alone is not so many balusters.
fn is_spoken_of(about: &About<'_>, line: &Line, reading: &Reading<'_>, row: RowId) -> bool {
    // As typed, and as the lexicon has it: "clr" is clear.
    let known = line.items.iter().filter_map(|i| i.word()).any(|w| is_noun(reading, w));
    let named = known || words(about.line).iter().any(|w| is_noun(reading, &w.text));
    let before = about.asked.is_some_and(|a| a.wants.contains(&row) || a.given.iter().any(|(r, _)| *r == row));
    named || before || about.job.told(row).is_some()
}

/// True where an end, a name or a basis says that a length is a run's.
pub(super) fn is_placed(line: &Line, reading: &Reading<'_>) -> bool {
    use RowId::{RunCentre, RunClear, RunFrom, RunName, RunOverall, RunTo};
    let places = |row: RowId| matches!(row, RunCentre | RunClear | RunFrom | RunName | RunOverall | RunTo);
    let length = reading.filled.iter().find(|f| f.row.is_some_and(is_length)).map(|f| f.at);
    let noun = |at: usize| line.tokens.get(at).and_then(|t| t.word.as_deref()).is_some_and(|w| A_RUN.contains(&w));
    // "a 14 foot run", "the run's 14 foot": the word stands beside the figure.
    let near = |at: usize| {
        noun(at + 1) || at.checked_sub(1).is_some_and(noun) || at.checked_sub(3).is_some_and(|b| (b..at).any(noun))
    };
    reading.filled.iter().filter_map(|f| f.row).any(places) || length.is_some_and(near)
}

/// True where what has this length was spoken of before: "it's 11'4", "the run is 11-4"; not where the line goes on to another.
pub(super) fn is_definite(line: &Line, at: usize) -> bool {
    const IS: &[&str] = &["'s", "is", "be", "should", "was"];
    let word = |at: usize| line.tokens.get(at).and_then(|t| t.word.as_deref()).unwrap_or_default();
    let Some(before) = (0..at).rev().find(|n| !IS.contains(&word(*n))) else { return false };
    let goes_on = line.tokens.iter().any(|t| t.stem == "then");
    let noun = before + 1 < at && (word(before) == "length" || A_RUN.contains(&word(before)));
    !goes_on && (noun || matches!(word(before), "it" | "its" | "it's"))
}

/// What a run is called beside its length.
const A_RUN: &[&str] = &["run", "side", "stretch"];

/// The sides of a deck that are not among those named for the guard go without.
pub(super) fn without_guard(job: &Job, kept: &[String]) -> Vec<Fact> {
    let named = |run: &&Run| run.name.as_ref().is_some_and(|name| kept.contains(name));
    let known = job.runs.iter().filter(named).count() == kept.len();
    let others = job.runs.iter().filter(|run| known && !kept.is_empty() && !named(run));
    others.map(|run| Fact::DropRun(run.id)).collect()
}

/// True for the telling of one run that ends on posts: taken over them, between them or from center to center, or between places that have one.
pub(super) fn has_posts_at_its_ends(reading: &Reading<'_>) -> bool {
    let rows = || reading.filled.iter().filter_map(|f| f.row);
    let based = |row: RowId| matches!(row, RowId::RunOverall | RowId::RunClear | RowId::RunCentre);
    rows().filter(|r| is_length(*r)).count() == 1 && (rows().any(based) || ends_on_posts(reading))
}

/// True where both ends are places that have a post.
pub(super) fn ends_on_posts(reading: &Reading<'_>) -> bool {
    let posts = |f: &&Filled<'_>| {
        let word = if let How::Words(words) = f.how { Some(words) } else { f.word };
        matches!(f.row, Some(RowId::RunFrom | RowId::RunTo))
            && !matches!(word, Some("house" | "wall" | "column" | "chimney"))
    };
    reading.filled.iter().filter(posts).count() == 2
}

/// True where one run is measured twice, between different things: nobody can tell which holds.
fn measured_twice(reading: &Reading<'_>) -> bool {
    let rows = || reading.filled.iter().filter_map(|f| f.row);
    let times = |row: RowId| rows().filter(|r| *r == row).count();
    let [overall, clear, centre] = [RowId::RunOverall, RowId::RunClear, RowId::RunCentre].map(times);
    let others = [RowId::RunName, RowId::RunFrom, RowId::RunLength].map(times);
    let kinds = [overall, clear, centre].iter().filter(|n| **n > 0).count();
    kinds > 1 && others.iter().all(|n| *n < 2)
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
