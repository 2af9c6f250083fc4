//! A run told or changed: which one, its length, ends, bays.

use super::{Branch, Branches, Problem, Resolver, grow, walks};
use crate::grammar::draft::{RunDraft, SpotDraft};
use crate::grammar::sense::Side;
use crate::job::{Basis, Fact, Job, RunId, RunPatch, SlotId};
use crate::measure::{Length, Meaning, Said};
use crate::session::lengths::{fits, told};
use crate::session::state::Focus;
use crate::session::targets::{self, Target, target};

impl Resolver<'_> {
    pub(super) fn run(&self, branch: Branch, draft: &RunDraft) -> Branches {
        let only_stairs =
            draft.stairs.is_some() && RunDraft { stairs: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        if only_stairs && let Some(branches) = self.stairs_alone(&branch, draft)? {
            return Ok(branches);
        }
        if let Some(side) = self.other_side(&branch.job, draft) {
            return self.spot(branch, SpotDraft::Side(side));
        }
        if self.corrects
            && let Some(branches) = self.setting_again(&branch, draft)?
        {
            return Ok(branches);
        }
        let (id, new) = match target(self.session, &branch.job, draft, self.corrects) {
            Target::Old(id) => (id, false),
            Target::New(id) => (id, true),
            Target::Missing => {
                return Err(Problem::Ask(
                    "No run has been told that this can change. Which run, how long, between what?",
                    Vec::new(),
                ));
            }
            Target::Which => return Err(Problem::Ask("Which run? Say its number or its name.", Vec::new())),
        };
        if self.sides && draft.length.is_none() && draft.name.is_none() {
            // "house at both ends": the walk starts and ends there as it is.
            return Ok(vec![branch]);
        }
        // In an outline the ends follow from the walk.
        let walked = RunDraft { from: None, to: None, ..draft.clone() };
        let draft = if self.sides { &walked } else { draft };
        let named = self.side_named(&branch.job, draft)?;
        let draft = named.as_ref().unwrap_or(draft);
        let mut branches = self.lengths(branch, id, draft, new)?;
        branches = grow(branches, |b| self.stairs(b, id, draft))?;
        grow(branches, |b| self.gate(b, id, draft))
    }

    /// Name, ends, length and bays: one branch for each length it may be.
    pub(super) fn lengths(&self, mut branch: Branch, id: RunId, draft: &RunDraft, new: bool) -> Branches {
        let mut patch = RunPatch {
            name: draft.name.map(|s| s.name().to_owned()).filter(|n| branch.job.named(n).is_none()),
            from: draft.from,
            to: draft.to,
            bays: draft.bays,
            basis: draft.basis,
            turn: (self.sides || new && walks::walks_on(&branch.job, draft)).then(|| walks::next_side(&branch.job)),
            ..RunPatch::default()
        };
        if let Some(n) = self.bays_again(draft, new) {
            return Ok(vec![branch.with(Fact::Run(id, RunPatch { bays: Some(Some(n)), ..RunPatch::default() }))?]);
        }
        branch.focus =
            Focus { run: Some(id), said: branch.focus.said, deck: false, bays: draft.bays.is_some(), slot: None };
        self.check_not(&branch.job, id, draft)?;
        let Some(m) = &draft.length else {
            return if patch.is_empty() && !new {
                Ok(vec![branch])
            } else {
                Ok(vec![branch.with(Fact::Run(id, patch))?])
            };
        };
        let inherit = if new { None } else { branch.focus.said };
        let said = fits(m, SlotId::RunLength, inherit);
        if said.lengths.is_empty() {
            return Err(Problem::Ask("How long is the run? I can't take that as a length.", Vec::new()));
        }
        let stands = branch.job.run(id).and_then(|r| r.basis);
        // A side of the outline is measured along the decking's edge unless told otherwise.
        let side = patch.turn.is_some() || branch.job.run(id).is_some_and(|r| r.turn.is_some());
        patch.basis = draft.basis.or(stands).or(Some(if side { Basis::Edge } else { Basis::Overall }));
        let one = |(l, unit): &(Length, Said)| {
            let mut b = branch.clone();
            b.focus.said = Some(*unit);
            b.ask |= said.doubtful;
            b.with(Fact::Run(id, RunPatch { length: Some(told(m, *l)), ..patch.clone() }))
        };
        let mut out = Vec::new();
        let mut problem = None;
        for length in &said.lengths {
            match one(length) {
                Ok(b) => out.push(b),
                Err(p) => problem = problem.or(Some(p)),
            }
        }
        match problem {
            Some(p) if out.is_empty() => Err(p),
            _ => Ok(out),
        }
    }

    /// "I meant right": a side alone, and the run spoken of has a gate.
    pub(super) fn other_side(&self, job: &Job, draft: &RunDraft) -> Option<Side> {
        let alone = RunDraft { name: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        let gated = targets::focus(self.session, job).is_some_and(|r| r.gate.is_some());
        draft.name.filter(|s| self.corrects && alone && gated && matches!(s, Side::Left | Side::Right))
    }

    /// "make it four" after "3 bays": a bare whole number, and bays were spoken of last.
    pub(super) fn bays_again(&self, draft: &RunDraft, new: bool) -> Option<u16> {
        let Meaning::Bare(n) = draft.length.as_ref()?.meaning else { return None };
        let counts = n.value.is_integer() && !n.fraction && n.value <= 20.into() && draft.basis.is_none();
        let speaks = !new
            && self.corrects
            && self.session.talk.focus.bays
            && !draft.run_word
            && draft.from.is_none()
            && draft.to.is_none();
        if counts && speaks { u16::try_from(n.value.to_integer()).ok() } else { None }
    }

    /// "not 12": it must be what stands, or the wrong run was meant.
    pub(super) fn check_not(&self, job: &Job, id: RunId, draft: &RunDraft) -> Result<(), Problem> {
        let Some(not) = &draft.not else { return Ok(()) };
        let stands = job.run(id).and_then(|r| r.length);
        let said = fits(not, SlotId::RunLength, self.session.talk.focus.said);
        let also = fits(not, SlotId::RunLength, None);
        let matches = said.lengths.iter().chain(&also.lengths).any(|(l, _)| stands.is_some_and(|t| t.length == *l));
        if !matches {
            return Err(Problem::Ask("No run I'm speaking of has that length. Which run, and what is it?", Vec::new()));
        }
        if draft.length.is_none() {
            return Err(Problem::Ask("Not that: what is it then?", Vec::new()));
        }
        Ok(())
    }
}
