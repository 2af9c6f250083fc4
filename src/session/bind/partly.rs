//! A telling as far as the job keeps it: the facts, and beside them what only stands for the questions after it.

use super::About;
use super::premises::of_item;
use super::readings::{Filled, Reading};
use super::runs::{Runs, is_length, is_of_runs, is_opening, is_placing};
use super::told::{self, ASIDE, Says, Told, by_itself, has_posts_at_its_ends, is_placed, is_three, says};
use super::value::Premise;
use crate::figure::Value;
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::scores::Line;
use crate::job::outline::filled as outlined;
use crate::job::{Fact, Job};
use crate::quantity::RowId;
use crate::session::resolve::house_sides;

/// What is told of a line.
pub(super) struct Partly {
    /// What taking it so costs.
    pub cost: f32,
    /// What the job keeps.
    pub facts: Vec<Fact>,
    /// What it does not keep.
    pub given: Option<RowAsk>,
    /// A run by its length alone, or sides that do not meet: to be offered.
    pub bare: bool,
}

/// The rows that may be held instead of told, the fewest first: openings that nobody placed keep no run from being told.
pub(super) fn held_sets(reading: &Reading<'_>) -> Vec<Vec<RowId>> {
    let rows = || reading.filled.iter().filter_map(|f| f.row);
    let gates: Vec<RowId> = rows().filter(|r| is_opening(*r) == Some(true)).collect();
    let stairs: Vec<RowId> = rows().filter(|r| is_opening(*r) == Some(false)).collect();
    let placing: Vec<RowId> = rows().filter(|r| is_placing(*r)).collect();
    let mut all: Vec<Vec<RowId>> = vec![Vec::new()];
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
    for n in 0..reading.filled.len() {
        tale.take(line, n)?;
    }
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
    rest: Vec<Filled<'a>>,
    held: &'a [RowId],
    cost: f32,
    /// A deck, or sides of one, are told.
    deck: bool,
    one_run: bool,
    ended: bool,
    /// Items that say of which posts or sides something is.
    taken: Vec<usize>,
}

impl<'a> Tale<'a> {
    fn new(about: &'a About<'a>, reading: &'a Reading<'a>, held: &'a [RowId]) -> Tale<'a> {
        let rows = || reading.filled.iter().filter_map(|f| f.row);
        let of_runs = rows().filter(|r| is_of_runs(*r) && !held.contains(r)).collect();
        Tale {
            about,
            reading,
            runs: Runs::new(of_runs),
            facts: Vec::new(),
            kept: Vec::new(),
            rest: Vec::new(),
            held,
            cost: 0.0,
            deck: rows().any(|r| matches!(r, RowId::DeckAlong | RowId::DeckOut)),
            one_run: rows().filter(|r| is_length(*r)).count() == 1,
            ended: has_posts_at_its_ends(reading),
            taken: Vec::new(),
        }
    }

    /// Takes the item in; `None` where it can be neither told nor held.
    fn take(&mut self, line: &Line, n: usize) -> Option<()> {
        let filled = self.reading.filled[n];
        let Some(row) = filled.row.filter(|_| !self.taken.contains(&n)) else { return Some(()) };
        // "corner post ... the corner" names one place twice.
        let named =
            |f: &Filled<'_>| f.row == Some(row) && f.how == filled.how && f.word.is_some() && f.word == filled.word;
        if n.checked_sub(1).and_then(|n| self.reading.filled.get(n)).is_some_and(named) {
            return Some(());
        }
        // One row told twice in a line is two things, or a change of mind: neither is told by itself.
        let twice = !is_of_runs(row) && row != RowId::KeptSides && self.times(row) > 1;
        if self.held.contains(&row) || twice && !self.is_sized(n) {
            self.rest.push(filled);
            return Some(());
        }
        let Some((more, said)) = says(line, &filled, row) else {
            self.rest.push(filled);
            return Some(());
        };
        self.cost += more;
        self.said(said, filled)
    }

    fn said(&mut self, said: Told, filled: Filled<'a>) -> Option<()> {
        match said {
            Told::Fact(fact) => self.facts.push(fact),
            // A post at each end and one between two bays.
            Told::Says(RowId::PostCount, Says::Value(Value::Count(n))) if self.ended && n > 1 => {
                self.runs.take(RowId::BayCount, &Says::Value(Value::Count(n - 1)))?;
            }
            Told::Says(row, said) if is_of_runs(row) => self.runs.take(row, &said)?,
            Told::Says(RowId::PostsBetween, Says::Value(Value::Count(n))) if self.one_run => {
                self.runs.take(RowId::BayCount, &Says::Value(Value::Count(n + 1)))?;
            }
            // What only says where all this is tells nothing by itself.
            Told::Says(RowId::Spot | RowId::Shape | RowId::Unit, Says::Word(_) | Says::Named) => self.cost += ASIDE,
            // A deck at a house has its guard on the other three sides.
            Told::Says(RowId::KeptSides, said) if self.deck && is_three(&said) => {}
            Told::Says(RowId::KeptSides, Says::Word(side)) if self.deck => self.kept.push(side),
            Told::Says(row, said) => match by_itself(self.about.job, row, &said) {
                Some(facts) => self.facts.extend(facts),
                None => self.rest.push(filled),
            },
        }
        Some(())
    }

    fn times(&self, row: RowId) -> usize {
        self.reading.filled.iter().filter(|f| f.row == Some(row)).count()
    }

    fn is_sized(&self, _n: usize) -> bool {
        false
    }

    /// The deck with its sides, then the runs and what stands in them, then what is held.
    fn done(self, line: &Line) -> Option<Partly> {
        let Tale { about, reading, runs, mut facts, kept, mut rest, cost, deck, one_run, .. } = self;
        // Stairs and gates may stand on a side of the deck told in the same line.
        let with = |facts: &[Fact]| about.job.with_all(facts).ok();
        if deck {
            let sides = house_sides(&with(&facts)?);
            facts.extend(sides);
        }
        facts.extend(told::without_guard(&with(&facts)?, &kept));
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
        let given = held(about, line, reading, &rest)?;
        if given.is_some() && !facts.iter().any(is_anchor) {
            return None;
        }
        // What would change nothing was not what was meant.
        let job = with(&facts).filter(|job| !facts.is_empty() && job != about.job)?;
        let bare = one_run && about.job.runs.is_empty() && !deck && !is_placed(line, reading);
        Some(Partly { cost, bare: bare || comes_apart(about.job, &job), facts, given })
    }
}

/// What is told of a run, the deck or some of the posts stands whatever is held beside it.
fn is_anchor(fact: &Fact) -> bool {
    matches!(fact, Fact::Run(..) | Fact::DeckAlong(_) | Fact::DeckOut(_))
}

/// True where the sides told do not meet any more.
fn comes_apart(before: &Job, job: &Job) -> bool {
    outlined(before).open.is_none() && outlined(job).open.is_some()
}

/// What is held for what is asked next, in the order said; `Some(None)` where nothing is. A word no premise can hold is named.
fn held(about: &About<'_>, line: &Line, reading: &Reading<'_>, rest: &[Filled<'_>]) -> Option<Option<RowAsk>> {
    let (mut given, mut supposed) = (Vec::new(), Vec::new());
    let mut so_far = Vec::new();
    for filled in reading.filled.iter().filter(|f| rest.contains(f)) {
        let Some((_, premise)) = of_item(about, line, filled, &so_far)?.into_iter().next() else { continue };
        so_far.push(premise.clone());
        match premise {
            Premise::Row(row, value) => given.push((row, value)),
            Premise::Fact(fact) => supposed.push(fact),
        }
    }
    let none = given.is_empty() && supposed.is_empty();
    Some((!none).then(|| RowAsk { wants: Vec::new(), mood: Mood::Figure, given, supposed }))
}
