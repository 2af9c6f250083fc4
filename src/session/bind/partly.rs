//! A telling as far as the job keeps it: the facts, and beside them what only stands for the questions after it.

use super::About;
use super::clips::{self, clip, is_of_clip};
use super::premises::of_item;
use super::readings::{Filled, Reading};
use super::roles::roles;
use super::runs::{Runs, is_each, is_length, is_of_runs, is_opening, is_placing};
use super::sides::{sides, without};
use super::told::{self, ASIDE, Says, Told, by_itself, has_posts_at_its_ends, is_definite, is_placed, is_three, says};
use super::value::{Premise, besides};
use crate::figure::Value;
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::scores::{How, Line};
use crate::job::outline::filled as outlined;
use crate::job::{DeckFact, Fact, Job, PostRole, Setting};
use crate::measure::{Length, Q};
use crate::provide;
use crate::quantity::{Owner, RowId};
use crate::session::resolve::house_sides;
use crate::solve::Given;
use std::ops::Range;

/// What is told of a line.
pub(super) struct Partly {
    /// What taking it so costs.
    pub cost: f32,
    /// What the job keeps.
    pub facts: Vec<Fact>,
    /// What it does not keep.
    pub given: Option<RowAsk>,
    /// A run by its length alone: to be offered.
    pub bare: bool,
    /// Sides that do not meet, or a guard that lacks what is in it: not to be taken as meant either.
    pub unclear: bool,
}

/// The rows that may be held instead of told, the fewest first: openings that nobody placed keep no run from being told.
pub(super) fn held_sets(reading: &Reading<'_>) -> Vec<Vec<RowId>> {
    let rows = || reading.filled.iter().filter_map(|f| f.row);
    let gates: Vec<RowId> = rows().filter(|r| is_opening(*r) == Some(true)).collect();
    let stairs: Vec<RowId> = rows().filter(|r| is_opening(*r) == Some(false)).collect();
    let placing: Vec<RowId> = rows().filter(|r| is_placing(*r)).collect();
    let mut all: Vec<Vec<RowId>> = vec![Vec::new()];
    // Two distances that may not agree are a question, not to be held beside the run.
    if placing.iter().filter(|r| **r == RowId::Offset).count() > 1 {
        return all;
    }
    let with = |rows: &[RowId]| [rows, &placing].concat();
    match (gates.is_empty(), stairs.is_empty()) {
        (true, true) if placing.is_empty() => {}
        (false, false) => all.extend([with(&gates), with(&stairs), [gates, with(&stairs)].concat()]),
        _ => all.push(with(&[gates, stairs].concat())),
    }
    all
}

/// The facts of a reading without what is held; `None` where an item can be neither told nor held.
pub(super) fn partly(about: &About<'_>, line: &Line, reading: &Reading<'_>, held: &[RowId]) -> Option<Partly> {
    let mut tale = Tale::new(about, reading, held);
    tale.of_some(line);
    tale.clip = clip(line, reading).filter(|_| tale.deck);
    let mut met = 0;
    for (n, filled) in reading.filled.iter().enumerate() {
        tale.named_again(line, met..filled.at);
        tale.take(line, n)?;
        met = filled.at + 1;
    }
    tale.named_again(line, met..line.tokens.len());
    tale.done(line)
}

/// A telling on its way.
struct Tale<'a> {
    about: &'a About<'a>,
    reading: &'a Reading<'a>,
    runs: Runs,
    facts: Vec<Fact>,
    /// The sides told to have a guard, by name.
    kept: Vec<String>,
    /// The sides told to have none.
    open: Vec<String>,
    rest: Vec<Filled<'a>>,
    held: &'a [RowId],
    cost: f32,
    /// A deck, or sides of one, are told.
    deck: bool,
    lengths: usize,
    ended: bool,
    /// How far back both corners of the deck are cut.
    clip: Option<Length>,
    /// Items that say of which posts or sides something is.
    taken: Vec<usize>,
}

impl<'a> Tale<'a> {
    fn new(about: &'a About<'a>, reading: &'a Reading<'a>, held: &'a [RowId]) -> Tale<'a> {
        let rows = || reading.filled.iter().filter_map(|f| f.row);
        Tale {
            about,
            reading,
            runs: Runs::default(),
            facts: Vec::new(),
            kept: Vec::new(),
            open: Vec::new(),
            rest: Vec::new(),
            held,
            cost: 0.0,
            deck: rows().any(|r| matches!(r, RowId::DeckAlong | RowId::DeckOut)),
            lengths: rows().filter(|r| is_length(*r)).count(),
            ended: has_posts_at_its_ends(reading),
            clip: None,
            taken: Vec::new(),
        }
    }

    /// What is said of some of the posts or of some of the sides.
    fn of_some(&mut self, line: &Line) {
        for (items, fact) in roles(line, self.reading) {
            self.taken.extend(items);
            self.facts.push(fact);
        }
        let sides = sides(self.reading);
        if sides.kept.is_empty() || self.deck {
            self.taken.extend(sides.items);
            self.kept.extend(sides.kept);
            self.open = sides.open;
        }
    }

    /// Sides and ends of the line that are named again among these words: what stands beside them stands there.
    fn named_again(&mut self, line: &Line, at: Range<usize>) {
        let of = |row: RowId| self.reading.filled.iter().filter(move |f| f.row == Some(row));
        let named = |row: RowId, word: &str| of(row).any(|f| f.word == Some(word));
        let free: Vec<&str> = line.items.iter().filter(|i| at.contains(&i.at)).filter_map(|i| i.word()).collect();
        for word in free {
            if named(RowId::RunName, word) {
                self.runs.again(word);
            } else if named(RowId::RunFrom, word) || named(RowId::RunTo, word) {
                self.runs.end_again(word);
            }
        }
    }

    /// Takes the item in; `None` where it can be neither told nor held.
    fn take(&mut self, line: &Line, n: usize) -> Option<()> {
        let filled = self.reading.filled[n];
        let Some(row) = filled.row.filter(|_| !self.taken.contains(&n)) else { return Some(()) };
        if self.clip.is_some() && is_of_clip(row) {
            return Some(());
        }
        // "corner post ... the corner" names one place twice.
        let named =
            |f: &Filled<'_>| f.row == Some(row) && f.how == filled.how && f.word.is_some() && f.word == filled.word;
        if n.checked_sub(1).and_then(|n| self.reading.filled.get(n)).is_some_and(named) {
            return Some(());
        }
        // One row told twice in a line is two things, or a change of mind: neither is told by itself.
        let bays = row == RowId::BayCount && self.times(row) > self.lengths.max(1);
        let twice = bays || !is_of_runs(row) && row != RowId::KeptSides && self.times(row) > 1;
        if self.held.contains(&row) || twice {
            self.rest.push(filled);
            return Some(());
        }
        // "A gate at each end" is two of them, and a run keeps one; "each end" is one term, or two words.
        let word = |at: usize| line.tokens.get(at).and_then(|t| t.word.as_deref()).is_some_and(is_each);
        if row == RowId::GateAt && (word(filled.at) || filled.at.checked_sub(1).is_some_and(word)) {
            return None;
        }
        let Some((more, said)) = says(line, &filled, row) else {
            self.rest.push(filled);
            return Some(());
        };
        self.cost += more;
        // A rim's size is how tall it is, too.
        if let Some(Premise::Row(row, value)) = besides(row, line, filled.at).filter(|_| row == RowId::RimSize) {
            let told = Fact::of(row, value);
            self.said(said, filled)?;
            self.facts.extend(told);
            return Some(());
        }
        let said = self.corrected(line, filled.at, said);
        self.said(said, filled)
    }

    /// "It's 11'4", "call it thirteen and a half": the length of the one run there is, in the unit that brings it near what it was.
    fn corrected(&mut self, line: &Line, at: usize, said: Told) -> Told {
        let Told::Says(row, Says::Value(Value::Length(l))) = said else { return said };
        let was = match &self.about.job.runs[..] {
            [only] if is_length(row) && is_definite(line, at) => only.length.map(|t| t.length),
            _ => None,
        };
        let Some(was) = was else { return Told::Says(row, Says::Value(Value::Length(l))) };
        self.runs.of_the_one();
        let number = line.tokens.get(at).and_then(|t| t.value.as_ref()).and_then(|v| v.number());
        let units = number.into_iter().flat_map(|n| [n, n * Q::from(12)]).filter_map(Length::from_q);
        let far = |l: &Length| {
            let by = *l - was;
            if by.is_positive() { by } else { -by }
        };
        let near = units.min_by_key(far).unwrap_or(l);
        Told::Says(row, Says::Value(Value::Length(near)))
    }

    fn said(&mut self, said: Told, filled: Filled<'a>) -> Option<()> {
        match said {
            Told::Fact(fact) => self.facts.push(fact),
            // A post at each end and one between two bays.
            Told::Says(RowId::PostCount, Says::Value(Value::Count(n))) if self.ended && n > 1 => {
                self.runs.take(RowId::BayCount, &Says::Value(Value::Count(n - 1)))?;
            }
            // Where a stair's rail ends is no run of the deck's: nothing told hangs on it.
            Told::Says(RowId::RunFrom | RowId::RunTo, Says::Word(_)) if self.is_of_flight() => self.cost += ASIDE,
            // A post that stands already is a post.
            Told::Says(RowId::PostAt, Says::Word(there)) if there == "existing" || self.is_an_end(&there) => {
                self.cost += ASIDE;
            }
            Told::Says(row, said) if is_of_runs(row) => self.runs.take(row, &said)?,
            Told::Says(RowId::PostsBetween, Says::Value(Value::Count(n))) if self.lengths == 1 => {
                self.runs.take(RowId::BayCount, &Says::Value(Value::Count(n + 1)))?;
            }
            // A post in the middle of a run makes two bays of it.
            Told::Says(RowId::PostAt, Says::Word(place)) if place == "middle" && self.lengths == 1 => {
                self.runs.take(RowId::BayCount, &Says::Value(Value::Count(2)))?;
            }
            // What only says where all this is tells nothing by itself.
            Told::Says(RowId::Spot | RowId::Shape | RowId::Unit, Says::Word(_) | Says::Named) => self.cost += ASIDE,
            // A deck at a house has its guard on the other three sides.
            Told::Says(RowId::KeptSides, said) if self.deck && is_three(&said) => {}
            Told::Says(RowId::KeptSides, Says::Word(side)) if self.deck => self.kept.push(side),
            // "Railing on two sides": which two, nobody has said.
            Told::Says(RowId::KeptSides, Says::Value(_)) if self.deck => return None,
            Told::Says(row, said) => match by_itself(self.about.job, row, &said) {
                Some(facts) => self.facts.extend(facts),
                None => self.rest.push(filled),
            },
        }
        Some(())
    }

    /// True where the line tells of a flight, and of runs no more than an end.
    fn is_of_flight(&self) -> bool {
        let rows = || self.reading.filled.iter().filter_map(|f| f.row);
        let end = |r: RowId| matches!(r, RowId::RunFrom | RowId::RunTo);
        rows().any(|r| r.row().owner == Owner::Stairs) && rows().filter(|r| is_of_runs(*r)).all(end)
    }

    /// True for a place both ends of the run are: the posts there are the run's own.
    fn is_an_end(&self, place: &str) -> bool {
        let at = |end: RowId| self.reading.filled.iter().any(|f| f.row == Some(end) && f.word == Some(place));
        at(RowId::RunFrom) && at(RowId::RunTo)
    }

    /// How wide and how long a walkway is that lies along no house and has a guard on one side, by that side's name: "walkway 4 wide 18 long, rail on
    /// the yard side".
    fn strip(&self, line: &Line) -> Option<(Length, Length)> {
        let rows = || self.reading.filled.iter().filter_map(|f| f.row);
        let plain = |r: RowId| {
            matches!(r, RowId::DeckAlong | RowId::DeckOut | RowId::RunName | RowId::KeptSides | RowId::Guarded)
        };
        let side = |f: &&Filled<'_>| f.row == Some(RowId::RunName) && f.word.is_some_and(|w| !SIDES.contains(&w));
        let one = rows().filter(|r| *r == RowId::RunName).count() == 1 && self.reading.filled.iter().any(|f| side(&f));
        let house = line.items.iter().any(|i| i.word() == Some("house"));
        let sizes: Vec<Length> = self
            .facts
            .iter()
            .filter_map(|f| match f {
                Fact::DeckAlong(l) | Fact::DeckOut(l) => Some(*l),
                _ => None,
            })
            .collect();
        let [a, b] = sizes[..] else { return None };
        let untold = self.about.job.runs.is_empty() && self.kept.is_empty() && self.open.is_empty();
        (untold && one && !house && rows().all(plain) && a != b).then(|| (a.min(b), a.max(b)))
    }

    fn times(&self, row: RowId) -> usize {
        self.reading.filled.iter().filter(|f| f.row == Some(row)).count()
    }

    /// The deck with its sides, then the runs and what stands in them, then what is held.
    fn done(self, line: &Line) -> Option<Partly> {
        let strip = self.strip(line);
        let Tale {
            about,
            reading,
            mut runs,
            mut facts,
            kept,
            open,
            mut rest,
            cost,
            deck,
            lengths,
            held: held_rows,
            clip,
            ..
        } = self;
        let deck = deck && strip.is_none();
        if let Some((wide, long)) = strip {
            facts.retain(|f| !matches!(f, Fact::DeckAlong(_) | Fact::DeckOut(_)));
            facts.push(Fact::Deck(DeckFact::Wide(wide)));
            runs.take(RowId::RunLength, &Says::Value(Value::Length(long)))?;
        }
        // Stairs and gates may stand on a side of the deck told in the same line.
        let with = |facts: &[Fact]| about.job.with_all(facts).ok();
        if deck {
            let told = with(&facts)?;
            let sides = match clip {
                Some(leg) => clips::sides(&told, leg)?,
                None => house_sides(&told),
            };
            facts.extend(sides);
        }
        facts.extend(told::without_guard(&with(&facts)?, &kept));
        // A side named that has no guard, and none left of those that are kept, says nothing twice.
        let open: Vec<String> =
            open.into_iter().filter(|name| kept.is_empty() || !deck || kept.contains(name)).collect();
        facts.extend(without(&with(&facts)?, &open)?);
        let with_deck = with(&facts)?;
        if let Some(length) = by_bays(line, reading, &with_deck) {
            facts.retain(|f| !matches!(f, Fact::Row(RowId::BayClear, _)));
            runs.take(RowId::RunOverall, &Says::Value(length))?;
        }
        let with_deck = with(&facts)?;
        let of_runs = runs.facts(&About { job: &with_deck, ..*about })?;
        // A figure by itself beside a run would not be the run's: "3 posts on the front, 12 ft".
        if !of_runs.is_empty() {
            let figure = |f: &&Filled<'_>| {
                let row = f.row.filter(|row| facts.iter().any(|fact| matches!(fact, Fact::Row(r, _) if r == row)));
                row.is_some()
            };
            rest.extend(reading.filled.iter().filter(figure));
            facts.retain(|f| !matches!(f, Fact::Row(..)));
        }
        facts.extend(of_runs);
        let (given, lost) = held(about, line, reading, &rest)?;
        if given.is_some() && !facts.iter().any(is_anchor) {
            return None;
        }
        // What would change nothing was not what was meant.
        let job = with(&facts).filter(|job| !facts.is_empty() && job != about.job)?;
        // What has an opening in it is a run.
        let opened =
            reading.filled.iter().filter_map(|f| f.row).any(|r| is_opening(r).is_some() && !held_rows.contains(&r));
        let bare = lengths == 1 && about.job.runs.is_empty() && !deck && !opened && !is_placed(line, reading);
        // A run without an opening that is in it, or a deck without a corner that is cut off it, is not the one that was meant.
        let mut rows = rest.iter().filter_map(|f| f.row);
        let ended = [RowId::RunFrom, RowId::RunTo].iter().all(|end| reading.filled.iter().any(|f| f.row == Some(*end)));
        // How many posts a run has hangs on its ends.
        let short = lost || rows.any(|row| changes_the_guard(row) || row == RowId::PostCount && !ended);
        Some(Partly { cost, bare, unclear: short || comes_apart(about.job, &job), facts, given })
    }
}

/// How long a run between two posts is by its bays: by the relations, from how many there are, each one's clear and the posts' size, all told.
fn by_bays(line: &Line, reading: &Reading<'_>, job: &Job) -> Option<Value> {
    let one = |row: RowId| {
        let mut all = reading.filled.iter().filter(|f| f.row == Some(row));
        all.next().filter(|_| all.next().is_none())
    };
    let value = |row: RowId| match says(line, one(row)?, row)?.1 {
        Told::Says(_, Says::Value(value)) => Some((row, value)),
        _ => None,
    };
    let bays = [value(RowId::BayCount)?, value(RowId::BayClear)?];
    let whole = reading.filled.iter().any(|f| f.row.is_some_and(is_length));
    let told = job.told(RowId::PostWidth).is_some() && told::ends_on_posts(reading) && !whole;
    let worked = provide::ask(RowId::RunOverall, &Given::of(bays), job).ok().filter(|_| told)?;
    Some(worked.fig.value())
}

/// The sides of a deck at a house.
const SIDES: &[&str] = &["left", "front", "right", "back", "side", "sides"];

/// What is told of a run, the deck or some of the posts stands whatever is held beside it.
fn is_anchor(fact: &Fact) -> bool {
    let of_some = |s: &Setting| matches!(s, Setting::Post(role, _) if *role != PostRole::All);
    matches!(fact, Fact::Run(..) | Fact::DeckAlong(_) | Fact::DeckOut(_)) || matches!(fact, Fact::Set(s) if of_some(s))
}

/// True for what is held and would change the guard that is told: openings in it, corners and bumps of the deck.
fn changes_the_guard(row: RowId) -> bool {
    use RowId::{BayCount, BumpAlong, BumpOut, CornerLeg, CutCorner, Recess, StairCount, Turn};
    let changes = matches!(row, BayCount | BumpAlong | BumpOut | CornerLeg | CutCorner | Recess | StairCount | Turn);
    changes || is_opening(row).is_some() || is_placing(row)
}

/// True where the sides told do not meet any more.
fn comes_apart(before: &Job, job: &Job) -> bool {
    outlined(before).open.is_none() && outlined(job).open.is_some()
}

/// What is held for what is asked next, in the order said, and whether a place is lost that no premise can hold; `None` where anything else
/// would be.
fn held(about: &About<'_>, line: &Line, reading: &Reading<'_>, rest: &[Filled<'_>]) -> Option<(Option<RowAsk>, bool)> {
    let (mut given, mut supposed) = (Vec::new(), Vec::new());
    let (mut so_far, mut lost) = (Vec::new(), false);
    for filled in reading.filled.iter().filter(|f| rest.contains(f)) {
        let Some((_, premise)) = of_item(about, line, filled, &so_far)?.into_iter().next() else {
            // A denial, a thing only named or a choice is not passed over.
            filled.row.filter(|row| is_place(*row) && !matches!(filled.how, How::Nothing | How::Named))?;
            lost = true;
            continue;
        };
        so_far.push(premise.clone());
        match premise {
            Premise::Row(row, value) => given.push((row, value)),
            Premise::Fact(fact) => supposed.push(fact),
        }
    }
    let none = given.is_empty() && supposed.is_empty();
    let given = (!none).then(|| RowAsk { wants: Vec::new(), mood: Mood::Figure, given, supposed });
    Some((given, lost))
}

/// True for a place that is named as left over where nothing that is told stands there.
fn is_place(row: RowId) -> bool {
    matches!(row, RowId::GateAt | RowId::StairAt | RowId::OffsetFrom | RowId::PostAt | RowId::RunFrom | RowId::RunTo)
}
