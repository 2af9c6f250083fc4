//! A gate's place, and stairs' place.

use super::{Branch, Branches, Problem, Resolver};
use crate::grammar::Act;
use crate::grammar::draft::{Along, GateDraft, RunDraft, SpotDraft, StairDraft, StairSpot};
use crate::grammar::sense::{Side, Spot};
use crate::job::{End, Fact, Gate, GateAt, Run, RunId, RunPatch, SlotId, StairAt, Stairs};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

const ENDS: [GateAt; 2] = [GateAt::From, GateAt::To];

fn end_of(run: &Run, at: GateAt) -> Option<End> {
    match at.place() {
        GateAt::From => run.from,
        GateAt::To => run.to,
        _ => None,
    }
}

/// The run's ends that are this.
pub(super) fn ends_that_are(run: &Run, end: End) -> Vec<GateAt> {
    ENDS.into_iter().filter(|at| end_of(run, *at) == Some(end)).collect()
}

/// The run's gate at the other end, when its ends change places.
pub(super) fn flipped(run: &Run) -> Option<Option<Gate>> {
    let gate = run.gate?;
    Some(Some(Gate { at: gate.at.flipped(), ..gate }))
}

/// Where a gate may hang, likeliest first; more than one means ask.
fn places(run: &Run, spot: Option<SpotDraft>) -> Vec<GateAt> {
    let heads = || {
        let ends = ends_that_are(run, End::StairHead);
        if ends.is_empty() && !run.stairs.is_empty() { vec![GateAt::Stairs] } else { ends }
    };
    let both = || ENDS.to_vec();
    let or = |found: Vec<GateAt>, rest: Vec<GateAt>| if found.is_empty() { rest } else { found };
    match spot {
        Some(SpotDraft::Spot(Spot::Middle)) => vec![GateAt::Middle],
        Some(SpotDraft::Spot(Spot::Far)) => vec![GateAt::To],
        Some(SpotDraft::Spot(Spot::Near)) => vec![GateAt::From],
        Some(SpotDraft::Spot(Spot::Other)) => match run.gate.map(|g| g.at.place()) {
            Some(GateAt::From) => vec![GateAt::To],
            Some(GateAt::To) => vec![GateAt::From],
            _ => both(),
        },
        Some(SpotDraft::Spot(Spot::Bottom)) => or(ends_that_are(run, End::BottomNewel), both()),
        Some(SpotDraft::Side(Side::Left)) => vec![GateAt::Left],
        Some(SpotDraft::Side(Side::Right)) => vec![GateAt::Right],
        Some(SpotDraft::End(End::StairHead)) => heads(),
        Some(SpotDraft::End(end)) => ends_that_are(run, end),
        Some(SpotDraft::Spot(Spot::End)) => or(heads(), both()),
        Some(SpotDraft::Spot(Spot::Top) | SpotDraft::Side(_) | SpotDraft::Spot(Spot::BothEnds)) | None => {
            let gated = or(heads(), ends_that_are(run, End::GatePost));
            or(gated, vec![GateAt::From, GateAt::To, GateAt::Middle])
        }
    }
}

impl Resolver<'_> {
    /// The lengths a width may be; a single `None` when no width was said.
    fn widths(&self, m: Option<&Measure>, slot: SlotId) -> Result<(Vec<Option<Length>>, bool), Problem> {
        let Some(m) = m else { return Ok((vec![None], false)) };
        let said = fits(m, slot, None);
        if said.lengths.is_empty() {
            return Err(Problem::Ask("How wide? I can't take that as a width.", Vec::new()));
        }
        let inexact = m.shade.is_some() || m.about;
        Ok((said.lengths.iter().map(|(l, _)| Some(*l)).collect(), said.doubtful || inexact))
    }

    pub(super) fn gate(&self, branch: Branch, id: RunId, draft: &RunDraft) -> Branches {
        let Some(gate) = &draft.gate else { return Ok(vec![branch]) };
        let Some(gate) = gate else {
            return Ok(vec![branch.with(Fact::Run(id, RunPatch { gate: Some(None), ..RunPatch::default() }))?]);
        };
        let Some(run) = branch.job.run(id).cloned() else { return Err(Problem::Refuse("No run for that gate.")) };
        let stood = run.gate.filter(|_| gate.at.is_none());
        let at = match stood {
            Some(g) => vec![g.at],
            None => places(&run, gate.at),
        };
        if at.is_empty() {
            return Err(Problem::Ask(
                "No end of that run is what you say the gate is at. Which end does it hang at?",
                self.choices(&branch, id, gate),
            ));
        }
        let (widths, doubtful) = self.widths(gate.width.as_ref(), SlotId::GateWidth)?;
        let kept = run.gate.and_then(|g| g.width);
        let ask = at.len() > 1 || widths.len() > 1 || doubtful;
        let mut out = Vec::new();
        for at in at {
            for width in &widths {
                let told = Gate { at, width: width.or(kept), hung: run.gate.map(|g| g.hung).unwrap_or_default() };
                let mut b = branch.clone();
                b.ask |= ask;
                out.push(b.with(fact(id, told))?);
            }
        }
        Ok(out)
    }

    fn choices(&self, branch: &Branch, id: RunId, gate: &GateDraft) -> Vec<Act> {
        let width =
            self.widths(gate.width.as_ref(), SlotId::GateWidth).ok().and_then(|(w, _)| w.first().copied().flatten());
        let told = ENDS.into_iter().map(|at| fact(id, Gate::new(at, width)));
        told.map(|f| Act::Tell(branch.facts.iter().cloned().chain([f]).collect())).collect()
    }

    /// "I meant right": the gate spoken of last hangs there instead.
    pub(super) fn spot(&self, branch: Branch, spot: SpotDraft) -> Branches {
        let run = targets::focus(self.session, &branch.job).filter(|r| r.gate.is_some());
        let Some(id) = run.map(|r| r.id) else {
            return Err(Problem::Ask("What is there? Say the gate, the stairs or the run with it.", Vec::new()));
        };
        let draft = RunDraft { gate: Some(Some(GateDraft { width: None, at: Some(spot) })), ..RunDraft::default() };
        self.gate(branch, id, &draft)
    }

    /// Stairs told of a run.
    pub(super) fn stairs(&self, branch: Branch, id: RunId, draft: &RunDraft) -> Branches {
        let Some(stairs) = &draft.stairs else { return Ok(vec![branch]) };
        let Some(stairs) = stairs else {
            return Ok(vec![
                branch.with(Fact::Run(id, RunPatch { stairs: Some(Stairs::NONE), ..RunPatch::default() }))?,
            ]);
        };
        match &stairs.at {
            None => self.stair_width(branch, stairs.width.as_ref()),
            Some(StairSpot::Middle) => self.opening(branch, id, stairs, &[StairAt::Middle]),
            Some(StairSpot::Off(m, side)) => {
                let off = fits(m, SlotId::Offset, None);
                let at: Vec<StairAt> = off
                    .lengths
                    .iter()
                    .map(|(l, _)| if *side == Side::Left { StairAt::FromLeft(*l) } else { StairAt::FromRight(*l) })
                    .collect();
                let inexact = m.about || m.shade.is_some() || off.doubtful;
                self.opening(Branch { ask: branch.ask || inexact, ..branch }, id, stairs, &at)
            }
            Some(StairSpot::Between) => self.stairs_between(branch, stairs),
            Some(StairSpot::At(spot)) => self.stairs_at(branch, id, stairs, *spot),
        }
    }

    pub(super) fn stair_width(&self, branch: Branch, width: Option<&Measure>) -> Branches {
        let (widths, doubtful) = self.widths(width, SlotId::StairWidth)?;
        let mut out = Vec::new();
        for width in widths {
            let mut b = branch.clone();
            b.ask |= doubtful;
            out.push(match width {
                Some(w) => b.with(Fact::StairWidth(w))?,
                None => b,
            });
        }
        Ok(out)
    }

    /// An opening in the run, with guard left and right of it.
    fn opening(&self, branch: Branch, id: RunId, stairs: &StairDraft, at: &[StairAt]) -> Branches {
        let (widths, doubtful) = self.widths(stairs.width.as_ref(), SlotId::StairWidth)?;
        let ask = doubtful || widths.len() > 1 || at.len() > 1;
        let each = at.iter().flat_map(|at| widths.iter().map(move |w| (*at, *w)));
        let each = each.map(|(at, width)| self.put_whole(&branch, id, width, at, ask));
        each.collect::<Result<Vec<_>, _>>().map(|all| all.concat())
    }

    /// Stairs between the last two runs: each ends at their head.
    fn stairs_between(&self, branch: Branch, stairs: &StairDraft) -> Branches {
        let n = branch.job.runs.len();
        let Some([first, second]) = branch.job.runs.get(n.wrapping_sub(2)..).filter(|r| r.len() == 2) else {
            return Err(Problem::Ask("Stairs between which two runs?", Vec::new()));
        };
        let (a, b) = (first.id, second.id);
        let branch = branch.with(Fact::Run(a, RunPatch { to: Some(End::StairHead), ..RunPatch::default() }))?;
        let branch = branch.with(Fact::Run(b, RunPatch { from: Some(End::StairHead), ..RunPatch::default() }))?;
        self.stair_width(branch, stairs.width.as_ref())
    }

    /// Stairs at an end of the run: that end is their head.
    fn stairs_at(&self, branch: Branch, id: RunId, stairs: &StairDraft, spot: SpotDraft) -> Branches {
        let head = Some(End::StairHead);
        let (from, to) = match spot {
            SpotDraft::Spot(Spot::BothEnds) => (head, head),
            SpotDraft::Spot(Spot::Near) | SpotDraft::Side(Side::Left) => (head, None),
            SpotDraft::Spot(Spot::Far | Spot::Other) | SpotDraft::Side(Side::Right) => (None, head),
            _ => {
                return Err(Problem::Ask(
                    "Where along the run are the stairs? Say in the middle, at the left end, or how far from an end.",
                    Vec::new(),
                ));
            }
        };
        // An end told as something else is not turned into stairs without a word.
        let other = |told: Option<End>, end: Option<End>| end.is_some() && told.is_some_and(|t| Some(t) != end);
        let turned = branch.job.run(id).is_some_and(|r| other(r.from, from) || other(r.to, to));
        let mut branch = branch.with(Fact::Run(id, RunPatch { from, to, ..RunPatch::default() }))?;
        branch.ask |= turned && !self.corrects;
        self.stair_width(branch, stairs.width.as_ref())
    }

    /// "stairs are 4 foot wide", with no run told in the same breath.
    pub(super) fn stairs_alone(&self, branch: &Branch, draft: &RunDraft) -> Result<Option<Vec<Branch>>, Problem> {
        let Some(Some(stairs)) = &draft.stairs else { return self.no_stairs(branch) };
        let focus = targets::focus(self.session, &branch.job);
        match (focus, &stairs.at) {
            // With no run told, "on the left" is the deck's left side, or an end of one still to tell.
            (None, Some(StairSpot::At(SpotDraft::Side(side)))) if branch.job.runs.is_empty() => {
                let kept =
                    self.place_stairs(branch.clone(), Some(*side), stairs.width.as_ref(), Some(&Along::Untold))?;
                Ok(Some(kept.into_iter().map(|b| Branch { ask: true, ..b }).collect()))
            }
            (None, Some(_)) => Err(no_run()),
            (Some(run), None) if !run.stairs.is_empty() => self.widen(branch.clone(), run, stairs).map(Some),
            (_, None) => self.stair_width(branch.clone(), stairs.width.as_ref()).map(Some),
            (Some(_), Some(_)) => Ok(None),
        }
    }

    /// "no stairs": those told go; where none were, there are none.
    fn no_stairs(&self, branch: &Branch) -> Result<Option<Vec<Branch>>, Problem> {
        let head = |r: &Run| r.from == Some(End::StairHead) || r.to == Some(End::StairHead);
        if branch.job.runs.iter().any(head) {
            return Err(Problem::Ask("A run ends at the stairs. What is at that end instead?", Vec::new()));
        }
        let spoken = targets::focus(self.session, &branch.job).filter(|r| !r.stairs.is_empty());
        match spoken.or_else(|| branch.job.runs.iter().find(|r| !r.stairs.is_empty())) {
            Some(run) => {
                let gone = RunPatch { stairs: Some(Stairs::NONE), ..RunPatch::default() };
                Ok(Some(vec![branch.clone().with(Fact::Run(run.id, gone))?]))
            }
            None => Ok(Some(vec![branch.clone().with(Fact::NoStairs)?])),
        }
    }

    /// A new width for the opening that stands.
    fn widen(&self, branch: Branch, run: &Run, stairs: &StairDraft) -> Branches {
        let Some(at) = run.stairs.only().map(|s| s.at) else {
            return Err(Problem::Ask("Which stairs? Say them in full: how wide, and where in their side.", Vec::new()));
        };
        self.opening(branch, run.id, stairs, &[at])
    }
}

fn no_run() -> Problem {
    Problem::Ask(
        "Which side are the stairs in? Tell me that run first: its length and what it goes between.",
        Vec::new(),
    )
}

pub(super) fn fact(id: RunId, gate: Gate) -> Fact {
    Fact::Run(id, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() })
}
