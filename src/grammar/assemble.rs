//! Pieces to clauses: what belongs to one run is gathered until something it already
//! has is said again after a break; then the next run begins.

use super::Query;
use super::draft::{Clash, Clause, Reading, RunDraft};
use super::items::Item;
use super::pieces::Say;
use super::reading::Step;
use crate::job::End;
use std::ops::Range;

#[derive(Default)]
struct Gather {
    runs: Vec<RunDraft>,
    current: Option<RunDraft>,
    /// What stands by itself, with the word it starts at.
    others: Vec<(usize, Clause)>,
    broke: bool,
    repair: bool,
    several: bool,
    corrects: bool,
    supposes: bool,
    clash: Option<Clash>,
    words: Range<usize>,
}

/// Gathers the pieces of one cover into a reading.
pub(super) fn assemble(items: &[Item], steps: &[Step]) -> Reading {
    let mut gather = Gather::default();
    for (k, step) in steps.iter().enumerate() {
        let Step::Piece(at, piece) = step else { continue };
        gather.words = items[*at].words.start..items[piece.end - 1].words.end;
        gather.take(&piece.say, &steps[k + 1..]);
    }
    gather.finish()
}

impl Gather {
    fn finish(mut self) -> Reading {
        self.runs.extend(self.current.take());
        let runs = self.runs.into_iter().map(|r| (r.words.start, Clause::Run(r)));
        let mut placed: Vec<(usize, Clause)> = runs.chain(self.others).collect();
        placed.sort_by_key(|(at, _)| *at);
        let clauses: Vec<Clause> = placed.into_iter().map(|(_, clause)| clause).collect();
        // A word for a run alone tells nothing of it.
        let empty =
            |r: &RunDraft| RunDraft { run_word: false, it: false, words: 0..0, ..r.clone() } == RunDraft::default();
        if clauses.iter().any(|c| matches!(c, Clause::Run(r) if empty(r))) {
            self.clash.get_or_insert(Clash::Apart);
        }
        // "why 4 inches" asks about a figure; it tells none.
        let why = clauses.iter().any(|c| matches!(c, Clause::Query(Query::Why | Query::Sources)));
        if why && clauses.len() > 1 {
            self.clash.get_or_insert(Clash::Apart);
        }
        // A spot alone answers or corrects; beside anything else it is a spot of something unsaid.
        let spot = clauses.iter().any(|c| matches!(c, Clause::Spot(_)));
        if spot && clauses.iter().filter(|c| !matches!(c, Clause::Fine | Clause::Talk(_))).count() > 1 {
            self.clash.get_or_insert(Clash::Apart);
        }
        Reading {
            clauses,
            corrects: self.corrects,
            supposes: self.supposes,
            left: Vec::new(),
            near: Vec::new(),
            cost: 0,
            clash: self.clash,
        }
    }

    fn empty(&self) -> bool {
        self.runs.is_empty() && self.current.is_none() && self.others.is_empty()
    }

    fn take(&mut self, say: &Say, ahead: &[Step]) {
        match say {
            Say::Break => {
                self.broke = true;
                return;
            }
            Say::Noise => return,
            Say::Change | Say::Repair => {
                self.corrects |= self.empty();
                self.repair |= !self.empty();
                return;
            }
            Say::Suppose => {
                self.supposes = true;
                return;
            }
            Say::Runs => self.several = true,
            Say::Clause(c) => self.others.push((self.words.start, c.clone())),
            Say::NotLength(m) => {
                self.corrects = true;
                self.run().not = Some(m.clone());
            }
            _ => self.take_run(say, ahead),
        }
        self.broke = false;
    }

    /// The run being gathered.
    fn run(&mut self) -> &mut RunDraft {
        let words = self.words.clone();
        let run = self.current.get_or_insert_with(|| RunDraft { words: words.clone(), ..RunDraft::default() });
        run.words.end = words.end;
        run
    }

    fn next_run(&mut self) {
        self.runs.extend(self.current.take());
    }

    /// Makes way for a value the run has already: by repair, by a new run after a
    /// break, or not at all.
    fn make_way(&mut self, has: bool) {
        if !has || std::mem::take(&mut self.repair) {
            return;
        }
        if self.broke || self.several {
            self.next_run();
        } else {
            self.clash.get_or_insert(Clash::Twice(self.words.clone()));
        }
    }

    fn has(&self, field: fn(&RunDraft) -> bool) -> bool {
        self.current.as_ref().is_some_and(field)
    }

    fn take_run(&mut self, say: &Say, ahead: &[Step]) {
        match say {
            Say::Length { measure, basis, run, it } => {
                self.make_way(self.has(|r| r.length.is_some()));
                let draft = self.run();
                draft.length = Some(measure.clone());
                draft.basis = basis.or(draft.basis);
                draft.run_word |= run;
                draft.it |= it;
            }
            Say::Both(from, to) => {
                self.make_way(self.has(|r| r.from.is_some() || r.to.is_some()));
                let draft = self.run();
                (draft.from, draft.to) = (Some(*from), Some(*to));
            }
            Say::From(end) => {
                self.make_way(self.has(|r| r.from.is_some()));
                self.run().from = Some(*end);
            }
            Say::To(end) => self.take_to(*end),
            Say::Lone(end) => self.take_lone(*end),
            Say::Basis(basis) => self.run().basis = Some(*basis),
            Say::RunWord(number) => {
                self.begin_if_full(ahead);
                let draft = self.run();
                draft.run_word = true;
                draft.number = number.or(draft.number);
            }
            Say::Name(side) => {
                self.begin_if_full(ahead);
                let other = *side;
                self.make_way(self.current.as_ref().is_some_and(|r| r.name.is_some_and(|n| n != other)));
                self.run().name = Some(*side);
            }
            Say::Gate(gate) => {
                self.make_way_in_place(self.has(|r| r.gate.is_some()));
                self.run().gate = Some(gate.clone());
            }
            Say::Stairs(stairs) => {
                self.make_way_in_place(self.has(|r| r.stairs.is_some()));
                self.run().stairs = Some(stairs.clone());
            }
            Say::Bays(n) => {
                self.make_way_in_place(self.has(|r| r.bays.is_some()));
                self.run().bays = Some(*n);
            }
            _ => {}
        }
    }

    fn take_to(&mut self, end: End) {
        let walked_on = self.broke && self.has(|r| r.to.is_some());
        let before = self.current.as_ref().and_then(|r| r.to);
        self.make_way(self.has(|r| r.to.is_some()));
        let draft = self.run();
        if walked_on && draft.from.is_none() {
            draft.from = before;
        }
        draft.to = Some(end);
    }

    fn take_lone(&mut self, end: End) {
        if self.has(|r| r.from.is_some() && r.to.is_some()) {
            let before = self.current.as_ref().and_then(|r| r.to);
            self.make_way(true);
            self.run().from = before;
        }
        let walked_from = self.runs.last().filter(|r| r.lone).and_then(|r| r.to);
        let draft = self.run();
        draft.lone = true;
        match (draft.from, walked_from) {
            (None, Some(before)) => (draft.from, draft.to) = (Some(before), Some(end)),
            (None, None) => draft.from = Some(end),
            (Some(_), _) => draft.to = Some(end),
        }
    }

    /// A gate or a bay count said again stands in place of the first only by repair.
    fn make_way_in_place(&mut self, has: bool) {
        if has && !std::mem::take(&mut self.repair) {
            self.clash.get_or_insert(Clash::Twice(self.words.clone()));
        }
    }

    /// A name or run word opens the next run when this one has its length and a new
    /// length is coming before the next break.
    fn begin_if_full(&mut self, ahead: &[Step]) {
        if self.broke && self.has(|r| r.length.is_some()) && length_ahead(ahead) {
            self.next_run();
        }
    }
}

fn length_ahead(ahead: &[Step]) -> bool {
    ahead
        .iter()
        .filter_map(|s| match s {
            Step::Piece(_, p) => Some(&p.say),
            Step::Left(..) => None,
        })
        .take_while(|say| **say != Say::Break)
        .any(|say| matches!(say, Say::Length { .. }))
}
