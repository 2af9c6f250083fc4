//! A run told or changed: which one, its length, ends, bays.

use super::{Branch, Branches, Problem, Resolver, grow, walks};
use crate::grammar::Act;
use crate::grammar::draft::{GateDraft, RunDraft, SpotDraft};
use crate::grammar::sense::Side;
use crate::job::{Basis, End, Fact, Job, Run, RunId, RunPatch, SlotId};
use crate::measure::{Length, Meaning, Measure, Q, Said};
use crate::session::lengths::{fits, told};
use crate::session::state::Focus;
use crate::session::targets::{self, Target, target};

/// "gate on the left", where a side of the deck goes by that name: on that side.
fn on_its_side(job: &Job, draft: &RunDraft) -> Option<RunDraft> {
    let gate = draft.gate.as_ref()?.as_ref()?;
    let Some(SpotDraft::Side(side)) = gate.at else { return None };
    let named = draft.name.is_none() && draft.number.is_none() && job.named(side.name()).is_some();
    let gate = GateDraft { at: None, ..gate.clone() };
    named.then(|| RunDraft { name: Some(side), gate: Some(Some(gate)), ..draft.clone() })
}

impl Resolver<'_> {
    /// "5 posts": asked back as bays, which is what a run is split into.
    pub(super) fn posts_counted(&self, branch: &Branch, n: u16) -> Problem {
        let says = "So many posts in all, or so many bays? Say the bays of that run: posts at both ends make one bay less than there are posts.";
        let plain = |r: &&Run| r.gate.is_none() && r.stairs.is_empty();
        let run = targets::focus(self.session, &branch.job).filter(plain);
        let acts = run.zip(n.checked_sub(1)).map(|(run, bays)| {
            let patch = RunPatch { bays: Some(Some(bays)), ..RunPatch::default() };
            Act::Tell(branch.facts.iter().cloned().chain([Fact::Run(run.id, patch)]).collect())
        });
        Problem::Ask(says, acts.into_iter().collect())
    }

    /// "one more bay": than the run spoken of is laid out with.
    pub(super) fn bays_more(&self, branch: Branch, more: bool, by: u16, on: Option<Side>) -> Branches {
        let run = match on {
            Some(side) => targets::named(&branch.job, side),
            None => targets::focus(self.session, &branch.job),
        };
        let Some(run) = run else {
            return Err(Problem::Ask("Of which run? None has been told that could have more or fewer.", Vec::new()));
        };
        let id = run.id;
        if run.gate.is_some() || !run.stairs.is_empty() {
            return Err(Problem::Ask(
                "That run is parted by stairs or a gate: say where a post goes (\"post at 7 ft from the house\"), or how many bays it has in all.",
                Vec::new(),
            ));
        }
        let layout = crate::layout::lay_out(&branch.job);
        let placed = layout.runs.iter().find(|r| r.id == id).and_then(|r| r.result.as_ref().ok());
        let Some(now) = placed.map(|p| p.bays.iter().filter(|b| b.kind == crate::layout::BayKind::Rail).count()) else {
            return Err(Problem::Ask(
                "That run is not laid out yet, so there is no number of bays to change.",
                Vec::new(),
            ));
        };
        let now = u16::try_from(now).unwrap_or(u16::MAX);
        let bays = if more { now.checked_add(by) } else { now.checked_sub(by).filter(|n| *n > 0) };
        let Some(bays) = bays else {
            return Err(Problem::Ask("It has no bay to spare. How many bays should it have?", Vec::new()));
        };
        Ok(vec![branch.with(Fact::Run(id, RunPatch { bays: Some(Some(bays)), ..RunPatch::default() }))?])
    }

    pub(super) fn run(&self, branch: Branch, draft: &RunDraft) -> Branches {
        if let Some(draft) = on_its_side(&branch.job, draft) {
            return self.run(branch, &draft);
        }
        let only_stairs =
            draft.stairs.is_some() && RunDraft { stairs: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        if only_stairs && let Some(branches) = self.stairs_alone(&branch, draft)? {
            return Ok(branches);
        }
        if !self.corrects && walks::goes_that_way(&branch.job, draft) {
            return Err(Problem::Unfit("Which way does that side go: out, across, back, to the left or to the right?"));
        }
        if let Some(side) = self.other_side(&branch.job, draft) {
            return self.spot(branch, SpotDraft::Side(side));
        }
        if self.corrects && branch.focus.deck && only_a_length(draft) {
            return self.deck_size_again(branch, draft);
        }
        if self.corrects
            && let Some(branches) = self.setting_again(&branch, draft)?
        {
            return Ok(branches);
        }
        let (id, new) = match target(self.session, &branch.job, draft, self.corrects) {
            Target::Old(id) => (id, false),
            Target::New(id) => (id, true),
            Target::Missing if self.head_alone(&branch.job, draft) => {
                let id = branch.job.next_run();
                let head = RunPatch { to: Some(End::StairHead), ..RunPatch::default() };
                return self.gate(focused(branch.with(Fact::Run(id, head))?, id), id, draft);
            }
            Target::Missing => {
                return Err(Problem::Ask(
                    "No run has been told that this can change. Which run, how long, between what?",
                    Vec::new(),
                ));
            }
            Target::Which => return Err(Problem::Ask("Which run? Say its number or its name.", Vec::new())),
        };
        if self.sides && draft.length.is_none() && draft.name.is_none() {
            return self.walk_ends(branch, draft);
        }
        // In an outline the ends follow from the walk, but for those of the whole: "house at both ends".
        let ends = Some(draft.clone()).filter(|d| self.sides && d.from.is_some() && d.to.is_some());
        let walked = RunDraft { from: None, to: None, ..draft.clone() };
        let draft = if self.sides { &walked } else { draft };
        let named = self.side_named(&branch.job, draft)?;
        let draft = named.as_ref().unwrap_or(draft);
        if only_a_name(draft) && !(self.corrects && branch.job.run(id).is_some_and(|r| r.name.is_none())) {
            return Err(Problem::Ask("What of that side? Say how long it is and what it goes between.", Vec::new()));
        }
        if let Some((m, way)) = &draft.grow {
            return match (&draft.length, self.session.talk.focus.slot) {
                (None, None) if only_grows(draft) && named_or_none(&branch.job, draft) => {
                    self.grown(branch, id, m, *way)
                }
                _ => Err(Problem::Ask("Say the new figure in full: what is it now?", Vec::new())),
            };
        }
        let drafts = match (draft.not_end, branch.job.run(id)) {
            (Some(wrong), Some(run)) => self.put_right(run, draft, wrong)?,
            (_, run) => gate_or_run(draft, run.is_some_and(|r| r.length.is_some())),
        };
        // "first one at 15": of the joists told beside it, as like as a run; and so of a deck by itself.
        let stray = self.framing && !draft.run_word && draft.name.is_none();
        let ask = drafts.len() > 1 || stray || new && self.thin(draft) || !new && self.strays(draft);
        let each = drafts.iter().map(|draft| {
            let branches = self.lengths(branch.clone(), id, draft, new)?;
            let branches = grow(branches, |b| self.stairs(b, id, draft))?;
            grow(branches, |b| self.gate(b, id, draft))
        });
        // Of two ways to mean it, one that cannot be leaves the other.
        let (can, cannot): (Vec<_>, Vec<_>) = each.partition(Result::is_ok);
        let all: Vec<Branch> = can.into_iter().flatten().flatten().collect();
        if let (true, Some(Err(problem))) = (all.is_empty(), cannot.into_iter().next()) {
            return Err(problem);
        }
        let all = match &ends {
            Some(draft) => grow(all, |b| self.walk_ends(b, draft))?,
            None => all,
        };
        let all = grow(all, |b| self.settle(b, id))?;
        Ok(all.into_iter().map(|b| Branch { ask: b.ask || ask, ..b }).collect())
    }

    /// "add a 3 foot gate at the head of the stairs", before any run: a run that ends there.
    fn head_alone(&self, job: &Job, draft: &RunDraft) -> bool {
        let head = |g: &GateDraft| matches!(g.at, Some(SpotDraft::End(End::StairHead)));
        let gate = RunDraft { gate: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        !self.corrects && job.runs.is_empty() && gate && matches!(&draft.gate, Some(Some(g)) if head(g))
    }

    /// "make it 22" after a deck was told: of its two sizes, which is asked.
    fn deck_size_again(&self, branch: Branch, draft: &RunDraft) -> Branches {
        let m = draft.length.as_ref();
        let out = self.deck(branch.clone(), None, m)?;
        let along = self.deck(branch, m, None)?;
        Ok(out.into_iter().chain(along).map(|b| Branch { ask: true, ..b }).collect())
    }

    /// True for a length beside a question or a gate, that would change a run that stands.
    fn strays(&self, draft: &RunDraft) -> bool {
        let alone = draft.from.is_none() && draft.to.is_none() && !draft.it && draft.basis.is_none();
        draft.length.is_some() && alone && (self.asks || self.corrects && draft.gate.is_some())
    }

    /// True for a new run told by next to nothing: a length beside other matters, one place
    /// alone. It is offered, not taken.
    fn thin(&self, draft: &RunDraft) -> bool {
        let (ends, one) = (draft.from.is_some() || draft.to.is_some(), draft.from.is_some() != draft.to.is_some());
        let plain = !ends && draft.basis.is_none() && draft.name.is_none();
        let bare = plain
            && draft.gate.as_ref().is_none_or(Option::is_none)
            && draft.stairs.as_ref().is_none_or(Option::is_none);
        let named = draft.run_word || draft.name.is_some();
        bare && !draft.run_word
            || self.asks && !ends && draft.name.is_none()
            || one && !named && (draft.lone || draft.length.is_none() || self.runs > 1)
    }

    /// Name, ends, length and bays: one branch for each length it may be.
    pub(super) fn lengths(&self, mut branch: Branch, id: RunId, draft: &RunDraft, new: bool) -> Branches {
        let mut patch = RunPatch {
            name: draft.name.filter(|s| targets::named(&branch.job, *s).is_none()).map(|s| s.name().to_owned()),
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
        branch.focus = Focus { run: Some(id), said: branch.focus.said, bays: draft.bays.is_some(), ..Focus::default() };
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
        // A third of what stood, or three times it, is no mere correction.
        let before = branch.job.run(id).and_then(|r| r.length).map(|t| t.length).filter(|_| !new);
        let three = Q::from_integer(3);
        let far = |l: &Length| before.is_some_and(|b| l.q() * three <= b.q() || b.q() * three <= l.q());
        let stands = branch.job.run(id).and_then(|r| r.basis);
        // A side of the outline is measured along the decking's edge unless told otherwise.
        let side = patch.turn.is_some() || branch.job.run(id).is_some_and(|r| r.turn.is_some());
        patch.basis = draft.basis.or(stands).or(Some(if side { Basis::Edge } else { Basis::Overall }));
        let one = |(l, unit): &(Length, Said)| {
            let mut b = branch.clone();
            b.focus.said = Some(*unit);
            // Under a foot it is likelier a slip, or of something else.
            b.ask |= said.doubtful || far(l) || l.q() < Q::from_integer(12);
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
        let counts = n.value.is_integer()
            && !n.fraction
            && n.value <= 20.into()
            && draft.basis.is_none()
            && draft.bays.is_none();
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

/// "house to stairs 8 ft gate at stairs": so wide a gate, or so long a run with a gate.
/// The run first: a leaf of five feet and more is rare (common practice, no source).
fn gate_or_run(draft: &RunDraft, has_length: bool) -> Vec<RunDraft> {
    let width = draft.gate.as_ref().and_then(|g| g.as_ref()?.width.clone());
    let lacks = !has_length && draft.length.is_none() && draft.from.is_some() && draft.to.is_some();
    let wide =
        |m: &Measure| fits(m, SlotId::GateWidth, None).lengths.first().is_some_and(|(l, _)| *l >= Length::inches(60));
    let Some(width) = width.filter(|w| lacks && wide(w)) else { return vec![draft.clone()] };
    let gate = draft.gate.clone().map(|g| g.map(|g| GateDraft { width: None, ..g }));
    vec![RunDraft { length: Some(width), gate, ..draft.clone() }, draft.clone()]
}

/// "a foot longer", of a run named or not, and nothing else.
fn only_grows(draft: &RunDraft) -> bool {
    let of = RunDraft { grow: None, name: None, number: None, ..draft.clone() };
    RunDraft { it: false, run_word: false, words: 0..0, ..of } == RunDraft::default()
}

fn named_or_none(job: &Job, draft: &RunDraft) -> bool {
    draft.name.is_none_or(|side| targets::named(job, side).is_some())
}

fn focused(branch: Branch, id: RunId) -> Branch {
    Branch { focus: Focus { run: Some(id), deck: false, slot: None, ..branch.focus.clone() }, ..branch }
}

fn only_a_length(draft: &RunDraft) -> bool {
    let rest = RunDraft { length: None, it: false, words: 0..0, ..draft.clone() };
    draft.length.is_some() && rest == RunDraft::default()
}

fn only_a_name(draft: &RunDraft) -> bool {
    let rest = RunDraft { name: None, number: None, it: false, run_word: false, words: 0..0, ..draft.clone() };
    draft.name.is_some() && rest == RunDraft::default()
}
