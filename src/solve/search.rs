//! The search: a wanted row from what is given, told, worked out, or taken by default.

use super::{Given, Lacks, Solved, Source, known};
use crate::figure::Fig;
use crate::job::{Fact, Job};
use crate::quantity::{Args, Input, Relation, RowId, Way, relations};
use std::borrow::Cow;
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
}

/// The wanted row.
///
/// In order: given in the line; told in the job; worked out by a relation or an engine; its default with its reason. A derivation that uses
/// more of what is given goes before one that uses less, and one with fewer defaults before one with more.
///
/// # Errors
/// The rows that would do, where it has no value.
pub fn solve(want: RowId, given: &Given, job: &Job, engines: &Engines) -> Result<Solved, Lacks> {
    let told = if given.is_empty() { Cow::Borrowed(job) } else { Cow::Owned(overlaid(job, given, want)) };
    let mut search = Search { given, job: &told, engines, stack: Vec::new(), work: 0, lacks: Vec::new() };
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

/// The job with what is given laid over it, so that engines see it.
fn overlaid(job: &Job, given: &Given, want: RowId) -> Job {
    let facts = given.rows().filter(|row| *row != want).filter_map(|row| Fact::of(row, given.get(row)?.value()));
    facts.fold(job.clone(), |job, fact| job.with(&fact).unwrap_or(job))
}

struct Search<'a> {
    given: &'a Given,
    job: &'a Job,
    engines: &'a Engines,
    stack: Vec<RowId>,
    work: u32,
    lacks: Vec<Vec<RowId>>,
}

impl Search<'_> {
    fn row(&mut self, row: RowId, anew: bool, depth: u8) -> Option<Solved> {
        if let Some(fig) = self.given.get(row).filter(|_| !anew || depth < DEPTH) {
            return Some(Solved { fig: fig.clone(), used: vec![row], defaults: Vec::new() });
        }
        let plain = |fig| Solved { fig, used: Vec::new(), defaults: Vec::new() };
        let told = || Source::told(self.job, row).map(plain);
        if !anew && let Some(told) = told() {
            return Some(told);
        }
        let worked = self.worked_out(row, depth);
        let by_engine = || self.engines.providers.iter().filter(|p| p.gives == row).find_map(|p| (p.give)(self.job));
        let best = match worked {
            Some(w) if !w.used.is_empty() => Some(w),
            other => by_engine().map(|fig| Solved { used: self.through_engine(row), ..plain(fig) }).or(other),
        };
        // A row with a default of its own is not worked back out of another's, unless it is what was asked.
        let default = known::default(self.job, row).map(|fig| Solved { fig, used: Vec::new(), defaults: vec![row] });
        let sound = |s: &Solved| s.defaults.is_empty() || default.is_none() || (depth == DEPTH && !s.used.is_empty());
        best.filter(sound).or_else(told).or(default)
    }

    /// The given rows an engine sees, laid over the job.
    fn through_engine(&self, row: RowId) -> Vec<RowId> {
        let provider = self.engines.providers.iter().find(|p| p.gives == row);
        let needs = provider.map_or(&[] as &[RowId], |p| p.needs);
        self.given.rows().filter(|r| needs.contains(r)).collect()
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
        if way.from.iter().any(|i| self.stack.contains(&i.row())) {
            return None;
        }
        let (mut args, mut used, mut defaults, mut missing) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for input in &way.from {
            let found = match input {
                Input::Want(row) => self.row(*row, false, depth - 1),
                Input::Told(row) => self.said(*row, depth - 1),
            };
            match found {
                Some(solved) => {
                    args.push(solved.fig);
                    used.extend(solved.used);
                    defaults.extend(solved.defaults);
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
        for rows in [&mut used, &mut defaults] {
            rows.sort();
            rows.dedup();
        }
        Some(Solved { fig, used, defaults })
    }

    /// An input that is nothing where nobody told it, nor what it follows from.
    fn said(&mut self, row: RowId, depth: u8) -> Option<Solved> {
        let found = self.row(row, false, depth).filter(|s| s.defaults.is_empty());
        found.or_else(|| {
            let nothing = crate::figure::Why::Told("nothing told");
            let value = crate::quantity::nothing(row)?;
            Some(Solved { fig: Fig::new(value, nothing), used: Vec::new(), defaults: Vec::new() })
        })
    }
}

/// More of what is given first, then fewer defaults.
fn rank(s: &Solved) -> (usize, std::cmp::Reverse<usize>) {
    (s.used.len(), std::cmp::Reverse(s.defaults.len()))
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
