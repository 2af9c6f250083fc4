//! The search: a wanted row from what is given, told, worked out, or taken by default.

use super::given::{SIZES, count_of};
use super::laid::Laid;
use super::{Given, Lacks, Solved, Source, known};
use crate::figure::Fig;
use crate::job::Job;
use crate::quantity::{Args, Input, Relation, RowId, Way, relations};
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// Relations follow one another at most so deep: no question of the trade takes more steps.
const DEPTH: u8 = 5;

/// Rows looked into for one question; past it the search gives up.
const WORK: u32 = 4_000;

/// A row of a job an engine works out.
#[derive(Clone, Copy, Debug)]
pub struct Provider {
    /// The row.
    pub gives: RowId,
    /// The rows it follows from: changing one changes it.
    pub needs: &'static [RowId],
    /// The rows it settles for itself, or reads from what is no row: where a line gives one of them and the job cannot take it, the figure is
    /// the job's and not the line's.
    pub settles: &'static [RowId],
    /// The figure for a job; `None` where the job does not tell enough.
    pub give: fn(&Job) -> Option<Fig>,
}

/// The engines a question is answered with.
#[derive(Clone, Copy, Debug)]
pub struct Engines {
    /// Rows worked out of a whole job.
    pub providers: &'static [Provider],
    /// Relations an engine works out: of its inputs alone.
    pub relations: &'static [Relation],
}

impl Engines {
    /// No engine at all.
    pub const NONE: Engines = Engines { providers: &[], relations: &[] };

    /// True where an engine reads a row of the job as it was told.
    pub fn read(&self, row: RowId) -> bool {
        self.providers.iter().any(|p| p.needs.contains(&row))
    }

    /// True where an engine's figure of one row stands on another, be it by way of other engines' rows.
    pub fn stands(&self, row: RowId, on: RowId) -> bool {
        let (mut open, mut seen) = (vec![row], Vec::new());
        while let Some(next) = open.pop() {
            if seen.contains(&next) {
                continue;
            }
            seen.push(next);
            for provider in self.providers.iter().filter(|p| p.gives == next) {
                let all = || provider.needs.iter().chain(provider.settles);
                if all().any(|r| *r == on) {
                    return true;
                }
                open.extend(all());
            }
        }
        false
    }
}

/// The wanted row.
///
/// In order: given in the line; told in the job; worked out by a relation or an engine; its default with its reason. A derivation from
/// what is given goes before one from the job; one with fewer defaults before one with more; one that uses more of what is given before one
/// that uses less.
/// An engine's figure of the whole job never stands beside something given that it would follow from and does not see: a job's bays are no
/// line's two bays.
///
/// # Errors
/// The rows that would do, where it has no value.
pub fn solve(want: RowId, given: &Given, job: &Job, engines: &Engines) -> Result<Solved, Lacks> {
    if let Some(changed) = super::change::changed(want, given, job) {
        return Ok(changed);
    }
    let laid = Laid::over(job, given, want, engines);
    let mut search = Search {
        given,
        laid: &laid,
        engines,
        by_engine: BTreeMap::new(),
        stack: Vec::new(),
        work: 0,
        lacks: Vec::new(),
    };
    // What is wanted is asked anew where something is given: its own told value would answer nothing.
    let found = search.row(want, !given.is_empty(), DEPTH);
    let mut lacks = search.lacks;
    found.ok_or_else(|| {
        lacks.sort_by_key(Vec::len);
        lacks.dedup();
        lacks.truncate(3);
        Lacks(lacks)
    })
}

struct Search<'a> {
    given: &'a Given,
    laid: &'a Laid<'a>,
    engines: &'a Engines,
    /// What engines gave already.
    by_engine: BTreeMap<RowId, Option<Solved>>,
    stack: Vec<RowId>,
    work: u32,
    lacks: Vec<Vec<RowId>>,
}

impl Search<'_> {
    fn row(&mut self, row: RowId, anew: bool, depth: u8) -> Option<Solved> {
        if let Some(fig) = self.given.get(row).filter(|_| !anew || depth < DEPTH) {
            return Some(Solved { used: vec![row], ..Solved::plain(fig.clone()) });
        }
        let laid = self.laid;
        let kept = self.kept(row);
        let told = || kept.clone().or_else(|| laid.read(|job| Source::told(job, row)));
        if !anew && let Some(told) = told() {
            return Some(told);
        }
        let worked = self.worked_out(row, depth);
        let best = match worked {
            Some(w) if !w.used.is_empty() => Some(w),
            other => self.engine(row).or(other),
        };
        // What is given has no part in it: then it is what was told.
        if let Some(told) = told().filter(|_| best.as_ref().is_none_or(|b| b.used.is_empty())) {
            return Some(told);
        }
        // A row with a default of its own is not worked back out of another's, unless it is what was asked.
        let default = laid.read(|job| known::default(job, row)).map(|s| Solved { defaults: vec![row], ..s });
        let sound = |s: &Solved| s.defaults.is_empty() || default.is_none() || (depth == DEPTH && !s.used.is_empty());
        let best = best.filter(sound);
        // Given and not worked out of the rest of what is given, it is what was given: never a default in its stead.
        let works = |s: &Solved| s.defaults.is_empty() && (s.used.iter().any(|r| *r != row) || s.whole.contains(&row));
        match self.given.get(row).filter(|_| !best.as_ref().is_some_and(works)) {
            Some(fig) => Some(Solved { used: vec![row], ..Solved::plain(fig.clone()) }),
            None => best.or_else(told).or(default),
        }
    }

    /// What was told before by itself for what is asked next: it is given as much as what the question says, which it does not say anew.
    fn kept(&self, row: RowId) -> Option<Solved> {
        let fig = self.laid.kept(row).filter(|_| self.given.get(row).is_none())?;
        Some(Solved { used: vec![row], ..Solved::plain(fig) })
    }

    /// An engine's figure, where it sees everything given that it follows from.
    fn engine(&mut self, row: RowId) -> Option<Solved> {
        // A figure that stands on what is being worked out would only say what it was told.
        let circular = self.stack.iter().any(|open| self.engines.stands(row, *open));
        if circular || self.laid.unseen.iter().any(|given| self.engines.stands(row, *given)) {
            return None;
        }
        let (engines, laid) = (self.engines, self.laid);
        let give = |job: &Job| engines.providers.iter().filter(|p| p.gives == row).find_map(|p| (p.give)(job));
        let work = || {
            let mut solved = laid.read(give)?;
            solved.used.extend(laid.rows().filter(|given| engines.stands(row, *given)));
            solved.used.sort();
            solved.used.dedup();
            Some(Solved { engines: vec![row], ..solved })
        };
        self.by_engine.entry(row).or_insert_with(work).clone()
    }

    /// The best derivation of a row by a relation.
    fn worked_out(&mut self, row: RowId, depth: u8) -> Option<Solved> {
        self.work += 1;
        if depth == 0 || self.work > WORK || self.stack.contains(&row) {
            return None;
        }
        self.stack.push(row);
        let mut ways: Vec<Way> = index().get(&row).cloned().unwrap_or_default();
        ways.extend(self.engines.relations.iter().flat_map(Relation::ways).filter(|w| w.gives == row));
        let mut best: Option<Solved> = None;
        for way in ways {
            let found = self.by_way(&way, depth);
            let better = |f: &Solved| best.as_ref().is_none_or(|b| rank(f) > rank(b));
            if let Some(found) = found.filter(better) {
                best = Some(found);
            }
        }
        self.stack.pop();
        best
    }

    /// A row by one direction of one relation.
    fn by_way(&mut self, way: &Way, depth: u8) -> Option<Solved> {
        if way.relation.alone && self.stack.len() > 1 {
            return None;
        }
        let given = |i: &Input| matches!(i, Input::Given(_) | Input::Every(_) | Input::Counted(_) | Input::First(_));
        if way.from.iter().any(|i| !given(i) && self.stack.contains(&i.row())) {
            return None;
        }
        // Of parts of several sizes none speaks for the rest.
        let one_of = |i: &Input| !matches!(i, Input::Counted(_)) && self.given.counted(i.row()).is_some();
        if way.from.iter().any(|i| SIZES.contains(&i.row()) && one_of(i)) {
            return None;
        }
        let (mut args, mut missing) = (Vec::new(), Vec::new());
        let (mut used, mut defaults, mut engines, mut whole) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for input in &way.from {
            let found = match input {
                Input::Want(row) => self.row(*row, false, depth - 1),
                Input::Also(row) => {
                    self.said(*row, depth - 1).and_then(|s| if s.used.is_empty() { none(*row) } else { Some(s) })
                }
                Input::Follows(row) => self.row(*row, false, depth - 1).filter(|s| !s.used.is_empty()),
                Input::Told(row) => self.said(*row, depth - 1),
                Input::Every(row) => {
                    let used = self.given.said_with(*row);
                    self.given.every(*row).map(|fig| Solved { used, whole: vec![*row], ..Solved::plain(fig) })
                }
                Input::Counted(row) => self.given.counted(*row).map(|fig| Solved {
                    used: vec![*row, count_of(*row)],
                    whole: vec![*row, count_of(*row)],
                    ..Solved::plain(fig)
                }),
                Input::First(row) => self.given.first(*row).cloned().map(|fig| Solved {
                    used: vec![*row],
                    whole: vec![*row],
                    ..Solved::plain(fig)
                }),
                Input::Given(row) => {
                    let given = self.given.get(*row).cloned();
                    let given = given.map(|fig| Solved { used: vec![*row], ..Solved::plain(fig) });
                    given.or_else(|| self.kept(*row))
                }
            };
            match found {
                Some(solved) => {
                    args.push(solved.fig);
                    used.extend(solved.used);
                    defaults.extend(solved.defaults);
                    engines.extend(solved.engines);
                    whole.extend(solved.whole);
                }
                None => missing.push(input.row()),
            }
        }
        if !missing.is_empty() {
            if self.stack.len() == 1 {
                self.lacks.push(missing);
            }
            return None;
        }
        let fig = way.relation.fig(way.gives, &way.from, Args(args))?;
        for rows in [&mut used, &mut defaults, &mut engines, &mut whole] {
            rows.sort();
            rows.dedup();
        }
        Some(Solved { fig, used, defaults, engines, whole })
    }

    /// An input that is nothing where nobody told it, nor what it follows from.
    fn said(&mut self, row: RowId, depth: u8) -> Option<Solved> {
        let found = self.row(row, false, depth).filter(|s| s.defaults.is_empty());
        found.or_else(|| none(row))
    }
}

/// Nothing of a row.
fn none(row: RowId) -> Option<Solved> {
    let nothing = crate::figure::Why::Told("nothing told");
    let value = crate::quantity::nothing(row)?;
    Some(Solved::plain(Fig::new(value, nothing)))
}

/// What is given before what is not; then fewer defaults, for what was said counts the bays before a limit nobody told does; then more of
/// what is given; then all of a row that is given several times.
fn rank(s: &Solved) -> (bool, std::cmp::Reverse<usize>, usize, usize) {
    (!s.used.is_empty(), std::cmp::Reverse(s.defaults.len()), s.used.len(), s.whole.len())
}

/// Every direction of every relation, by the row it gives.
pub(super) fn index() -> &'static BTreeMap<RowId, Vec<Way>> {
    static INDEX: OnceLock<BTreeMap<RowId, Vec<Way>>> = OnceLock::new();
    INDEX.get_or_init(|| {
        let mut index: BTreeMap<RowId, Vec<Way>> = BTreeMap::new();
        for way in relations().flat_map(Relation::ways) {
            index.entry(way.gives).or_default().push(way);
        }
        index
    })
}
