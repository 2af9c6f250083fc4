//! Changes told by what is wrong or by how much: "not the corner", "a foot longer", "move it".

use super::{Branch, Branches, Problem, Resolver, gates};
use crate::grammar::Act;
use crate::grammar::draft::{GateDraft, RunDraft, Sizing, StairDraft};
use crate::job::{Basis, End, Fact, Gate, GateAt, Run, RunId, RunPatch, SlotId, Told};
use crate::measure::{Length, Meaning, Measure, Q};
use crate::session::lengths::fits;
use crate::session::targets;

impl Resolver<'_> {
    /// "a foot longer": on to the length that stands, or off it. A bare whole number may be
    /// feet or inches, so it is asked.
    pub(super) fn grown(&self, branch: Branch, id: RunId, m: &Measure, way: Sizing) -> Branches {
        let Some(stands) = branch.job.run(id).and_then(|r| r.length) else {
            return Err(Problem::Ask("That run has no length yet to change. How long is it?", Vec::new()));
        };
        let by = steps(m);
        if by.is_empty() || m.shade.is_some() || m.about {
            return Err(Problem::Ask("By how much? I can't take that as a length.", Vec::new()));
        }
        let ask = by.len() > 1 || m.guess.is_some();
        let each = by.into_iter().map(|by| {
            let whole = if way == Sizing::Longer { stands.length + by } else { stands.length - by };
            let mut b = branch.clone();
            // So much more than a third of it is rather the new figure.
            b.ask |= ask || by.q() * Q::from_integer(3) > stands.length.q();
            b.focus.run = Some(id);
            b.with(Fact::Run(id, RunPatch { length: Some(Told::plain(whole)), ..RunPatch::default() }))
        });
        super::first_problem(each.collect())
    }

    /// "the stairs, not the corner": the end that is wrong gives way to the one told. One
    /// draft for each end it may be.
    pub(super) fn put_right(&self, run: &Run, draft: &RunDraft, wrong: End) -> Result<Vec<RunDraft>, Problem> {
        let at = gates::ends_that_are(run, wrong);
        if at.is_empty() {
            return Err(Problem::Ask(
                "No end of that run is what you say is wrong. Which run, and which end?",
                Vec::new(),
            ));
        }
        let right = match (draft.from, draft.to) {
            (Some(end), None) | (None, Some(end)) => end,
            (None, None) => return Err(Problem::Ask("Not that: what is it then?", Vec::new())),
            (Some(_), Some(_)) => {
                return Err(Problem::Ask("Which end is wrong? Say one end: \"it ends at the stairs\".", Vec::new()));
            }
        };
        let said = |at: &GateAt| draft.lone || (*at == GateAt::From) == draft.from.is_some();
        let put = |at: GateAt| {
            let (from, to) = if at == GateAt::From { (Some(right), None) } else { (None, Some(right)) };
            RunDraft { from, to, not_end: None, ..draft.clone() }
        };
        let drafts: Vec<RunDraft> = at.into_iter().filter(said).map(put).collect();
        if drafts.is_empty() {
            return Err(Problem::Ask("It is the other end of that run that is so. Which end?", Vec::new()));
        }
        Ok(drafts)
    }

    /// "36 wide" behind a stop: of the gate or the stairs of the run spoken of.
    pub(super) fn wide(&self, branch: Branch, m: &Measure) -> Branches {
        let width = Some(m.clone());
        // "stairs come off the side, 36 wide": of those stairs, whatever else stands.
        if self.placed {
            return self.stair_width(branch, width.as_ref());
        }
        let run = targets::focus(self.session, &branch.job).cloned();
        match run.map(|r| (r.id, r.gate.is_some(), !r.stairs.is_empty())) {
            Some((id, true, false)) => {
                let gate = Some(Some(GateDraft { width, at: None }));
                self.gate(branch, id, &RunDraft { gate, ..RunDraft::default() })
            }
            Some((_, false, true)) => {
                let stairs = Some(Some(StairDraft { width, at: None }));
                self.run(branch, &RunDraft { stairs, ..RunDraft::default() })
            }
            _ => Err(Problem::Ask("What is that wide: a gate, the stairs?", Vec::new())),
        }
    }

    /// "move the gate": to any place but its own.
    pub(super) fn moved(&self, branch: &Branch) -> Problem {
        let run = targets::focus(self.session, &branch.job);
        let Some((id, gate)) = run.and_then(|r| Some((r.id, r.gate?))) else {
            return Problem::Ask("Move what, and to where?", Vec::new());
        };
        let others = [GateAt::From, GateAt::To, GateAt::Middle].into_iter().filter(|at| *at != gate.at.place());
        let acts = others.map(|at| Act::Tell(vec![gates::fact(id, Gate { at, ..gate })])).collect();
        Problem::Ask("Move the gate where? Say the number, or say the end.", acts)
    }

    /// "6 past the stairs": a run of its own from there, if that is meant, and in which unit.
    pub(super) fn past(&self, branch: &Branch, m: &Measure, end: End) -> Problem {
        let id = branch.job.next_run();
        let told = |l: Length| {
            let patch = RunPatch {
                length: Some(Told::plain(l)),
                basis: Some(Basis::Overall),
                from: Some(end),
                to: Some(End::OpenEnd),
                ..RunPatch::default()
            };
            Act::Tell(branch.facts.iter().cloned().chain([Fact::Run(id, patch)]).collect())
        };
        let takes = |l: &Length| SlotId::RunLength.takes(*l);
        let acts = steps(m).into_iter().filter(takes).map(told).collect();
        Problem::Ask("How far past, in feet or in inches? And is it a run of its own, ending free?", acts)
    }
}

/// The lengths a step may be: a bare whole number is inches or feet.
fn steps(m: &Measure) -> Vec<Length> {
    match m.meaning {
        Meaning::Bare(n) if !n.fraction && !n.plural => {
            [Length::from_q(n.value), Length::from_q(n.value * Q::from_integer(12))].into_iter().flatten().collect()
        }
        _ => fits(m, SlotId::Offset, None).lengths.into_iter().map(|(l, _)| l).collect(),
    }
}
