//! How a gate's leaf is hung.

use super::first_problem;
use super::{Branch, Branches, Problem, Resolver};
use crate::grammar::stair_draft::HungSaid;
use crate::job::{Gate, Hung, RunId, RunPatch, SlotId};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

impl Resolver<'_> {
    /// Of the gate just told, of the run spoken of, or the only one there is.
    pub(super) fn hung(&self, branch: Branch, said: &HungSaid) -> Branches {
        let none = Hung::default();
        let hung = match said {
            HungSaid::Leaves(n) => vec![Hung { leaves: Some(*n), ..none }],
            HungSaid::Swing(s) => vec![Hung { swing: Some(*s), ..none }],
            HungSaid::Hinge(j) => vec![Hung { hinge: Some(*j), ..none }],
            HungSaid::Latch(j) => vec![Hung { latch: Some(*j), ..none }],
            HungSaid::HingeGap(m) => gaps(m)?.into_iter().map(|l| Hung { hinge_gap: Some(l), ..none }).collect(),
            HungSaid::LatchGap(m) => gaps(m)?.into_iter().map(|l| Hung { latch_gap: Some(l), ..none }).collect(),
            HungSaid::LatchHeight(m) => {
                let up = latch_up(m)?.into_iter();
                up.map(|l| Hung { latch_height: Some(l), ..none }).collect()
            }
            HungSaid::Leaf(m) => leaves(m)?.into_iter().map(|l| Hung { leaf: Some(l), ..none }).collect(),
            HungSaid::SelfClosing(c) => vec![Hung { self_closing: Some(*c), ..none }],
        };
        let (id, gate) = self.gate_spoken_of(&branch)?;
        let ask = hung.len() > 1;
        let each = hung.into_iter().map(|h| {
            let gate = Gate { hung: h.or(gate.hung), ..gate };
            let patch = RunPatch { gate: Some(Some(gate)), ..RunPatch::default() };
            Branch { ask: branch.ask || ask, ..branch.clone() }.instead(id, patch)
        });
        first_problem(each.collect())
    }

    fn gate_spoken_of(&self, branch: &Branch) -> Result<(RunId, Gate), Problem> {
        let told = branch.focus.run.and_then(|id| branch.job.run(id));
        let focus = told.or_else(|| targets::focus(self.session, &branch.job));
        let gated: Vec<(RunId, Gate)> = branch.job.runs.iter().filter_map(|r| Some((r.id, r.gate?))).collect();
        match (focus.and_then(|r| Some((r.id, r.gate?))), &gated[..]) {
            (Some(one), _) => Ok(one),
            (None, [one]) => Ok(*one),
            (None, []) => Err(Problem::Unfit("No gate has been told yet that this could be of. Where does it hang?")),
            _ => Err(Problem::Ask("Which gate? Say the run it hangs in.", Vec::new())),
        }
    }
}

fn leaves(m: &Measure) -> Result<Vec<Length>, Problem> {
    let said = fits(m, SlotId::Leaf, None);
    if said.slipped() || m.about || m.shade.is_some() {
        return Err(Problem::Ask("How wide is the leaf, to the sixteenth?", Vec::new()));
    }
    Ok(said.lengths.iter().map(|(l, _)| *l).collect())
}

fn latch_up(m: &Measure) -> Result<Vec<Length>, Problem> {
    let said = fits(m, SlotId::LatchHeight, None);
    if said.slipped() || m.about || m.shade.is_some() {
        return Err(Problem::Ask("How far above the decking is the latch, to the sixteenth?", Vec::new()));
    }
    Ok(said.lengths.iter().map(|(l, _)| *l).collect())
}

fn gaps(m: &Measure) -> Result<Vec<Length>, Problem> {
    let said = fits(m, SlotId::LeafGap, None);
    if said.slipped() {
        return Err(Problem::Ask("How wide is that gap? I can't take it as a length.", Vec::new()));
    }
    Ok(said.lengths.iter().map(|(l, _)| *l).collect())
}
