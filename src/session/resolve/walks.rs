//! A deck's outline walked side by side: each way to go is a turn from the side before.

use super::{Branch, Branches, Problem, Resolver, grow};
use crate::grammar::draft::{RunDraft, Way};
use crate::grammar::sense::Side;
use crate::job::{Basis, End, Fact, Job, Run, RunId, RunPatch, SlotId, Turn};
use crate::measure::Measure;
use crate::session::lengths::{fits, told};
use crate::session::state::Focus;

/// Degrees clockwise from straight out.
fn heading(way: Way) -> i32 {
    match way {
        Way::Start | Way::Out => 0,
        Way::Right => 90,
        Way::In => 180,
        Way::Left => 270,
    }
}

/// The way the walk heads now; `None` before its first side.
fn now(job: &Job) -> Option<i32> {
    let turns = job.runs.iter().filter_map(|r| r.turn);
    turns.fold(None, |heading, turn| {
        let by = match turn {
            Turn::Start => 0,
            Turn::Right(d) => i32::from(d),
            Turn::Left(d) => -i32::from(d),
        };
        Some((heading.unwrap_or(0) + by).rem_euclid(360))
    })
}

fn turn(from: Option<i32>, way: Way) -> Result<Turn, Problem> {
    let to = heading(way);
    match from.map(|f| (to - f).rem_euclid(360)) {
        None if way == Way::Start => Ok(Turn::Start),
        None => {
            Err(Problem::Unfit("Where does the walk start? Begin at the house: say how far out the first side goes."))
        }
        Some(90) => Ok(Turn::Right(90)),
        Some(270) => Ok(Turn::Left(90)),
        Some(0) => {
            Err(Problem::Unfit("That goes straight on from the side before. Is it the same side, or is there a turn?"))
        }
        Some(_) => Err(Problem::Unfit("That goes straight back along the side before. Which way does it turn?")),
    }
}

/// The turn of the next side of a plain wraparound: off the house, then right and right.
pub(super) fn next_side(job: &Job) -> Turn {
    if job.runs.iter().any(|r| r.turn.is_some()) { Turn::Right(90) } else { Turn::Start }
}

/// "then 16' across the front": a walk has begun, heads out, and comes to the front.
pub(super) fn walks_on(job: &Job, draft: &RunDraft) -> bool {
    let nameless = draft.from.is_none() && draft.to.is_none() && draft.number.is_none();
    now(job) == Some(0) && nameless && draft.length.is_some() && draft.name == Some(Side::Front)
}

/// A walk may begin with what was told as a run off the house, or as the deck's size out.
fn begun(branch: Branch, way: Way) -> Result<Branch, Problem> {
    if way == Way::Start || now(&branch.job).is_some() {
        return Ok(branch);
    }
    let start = RunPatch { turn: Some(Turn::Start), ..RunPatch::default() };
    let off_the_house = |r: &&Run| r.from == Some(End::House) && matches!(r.to, None | Some(End::Corner));
    let first = branch.job.runs.first().filter(off_the_house).map(|r| r.id);
    match (first, branch.job.runs.len(), branch.job.deck_out) {
        // Told off the house it was out to out; as a side of the deck it is the decking's edge.
        (Some(id), 1, _) => branch.with(Fact::Run(id, RunPatch { basis: Some(Basis::Edge), ..start })),
        (None, 0, Some(_)) => {
            let id = branch.job.next_run();
            branch.with(Fact::Run(id, start))
        }
        _ => Ok(branch),
    }
}

fn opposite(name: &str) -> Option<Side> {
    match name {
        "left" => Some(Side::Right),
        "right" => Some(Side::Left),
        "north" => Some(Side::South),
        "south" => Some(Side::North),
        "east" => Some(Side::West),
        "west" => Some(Side::East),
        _ => None,
    }
}

impl Resolver<'_> {
    /// "house at both ends": of the whole walk, told last.
    pub(super) fn walk_ends(&self, branch: Branch, draft: &RunDraft) -> Branches {
        let sides: Vec<RunId> = branch.job.runs.iter().filter(|r| r.turn.is_some()).map(|r| r.id).collect();
        let (Some(first), Some(last)) = (sides.first().copied(), sides.last().copied()) else {
            return Ok(vec![branch]);
        };
        let from = RunPatch { from: draft.from, ..RunPatch::default() };
        let to = RunPatch { to: draft.to, ..RunPatch::default() };
        Ok(vec![branch.with(Fact::Run(first, from))?.with(Fact::Run(last, to))?])
    }

    /// "the other side": the one across from the first side told.
    pub(super) fn side_named(&self, job: &Job, draft: &RunDraft) -> Result<Option<RunDraft>, Problem> {
        if draft.name != Some(Side::Other) {
            return Ok(None);
        }
        let across = job.runs.first().and_then(|r| r.name.as_deref()).and_then(opposite);
        match across.filter(|_| self.sides) {
            Some(side) => Ok(Some(RunDraft { name: Some(side), ..draft.clone() })),
            None => Err(Problem::Ask("Which side is the other one? Say left, right or front.", Vec::new())),
        }
    }

    /// One side of the walk; without a length it is left to follow from the others.
    pub(super) fn walk(&self, branch: Branch, way: Way, length: Option<&Measure>, on: Option<Side>) -> Branches {
        if way == Way::Start && self.ends {
            return Err(Problem::Unfit("Is that one run, or the first side of the deck?"));
        }
        let branch = begun(branch, way)?;
        let before = now(&branch.job);
        if length.is_none() && before == Some(180) {
            // Already heading home: the last side runs to the house.
            return Ok(vec![branch]);
        }
        let turn = turn(before, way)?;
        let id = branch.job.next_run();
        let name = on.filter(|s| branch.job.named(s.name()).is_none()).map(|s| s.name().to_owned());
        let basis = length.map(|_| Basis::Edge);
        let patch = RunPatch { turn: Some(turn), name, basis, ..RunPatch::default() };
        let Some(m) = length else {
            return Ok(vec![focused(branch.with(Fact::Run(id, patch))?, id)]);
        };
        let said = fits(m, SlotId::DeckSide, None);
        if said.lengths.is_empty() {
            return Err(Problem::Ask("How long is that side? I can't take that as a length.", Vec::new()));
        }
        grow(vec![branch], |b| {
            let one = |(l, unit): &(crate::measure::Length, crate::measure::Said)| {
                let patch = RunPatch { length: Some(told(m, *l)), ..patch.clone() };
                let mut b = focused(b.clone().with(Fact::Run(id, patch))?, id);
                b.ask |= said.doubtful;
                b.focus.said = Some(*unit);
                Ok(b)
            };
            said.lengths.iter().map(one).collect()
        })
    }

    /// The three sides of a deck against the house, once both its sizes are told and no
    /// run was told by hand.
    pub(super) fn sides(&self, branch: Branch) -> Result<Branch, Problem> {
        let job = &branch.job;
        if job.deck_along.is_none() || job.deck_out.is_none() || !job.runs.is_empty() {
            return Ok(branch);
        }
        let first = job.next_run().0;
        let sides = [("left", Turn::Start), ("front", Turn::Right(90)), ("right", Turn::Right(90))];
        sides.into_iter().zip(first..).try_fold(branch, |b, ((name, turn), id)| {
            let patch = RunPatch { name: Some(name.to_owned()), turn: Some(turn), ..RunPatch::default() };
            b.with(Fact::Run(RunId(id), patch))
        })
    }

    /// "10 deep" after the deck's other side.
    pub(super) fn deck_more(&self, branch: Branch, along: Option<&Measure>, out: Option<&Measure>) -> Branches {
        if !branch.focus.deck {
            return Err(Problem::Ask(
                "What is that the size of? Say the deck, the stairs, the gate or the run with it.",
                Vec::new(),
            ));
        }
        self.deck(branch, along, out)
    }
}

fn focused(branch: Branch, id: RunId) -> Branch {
    Branch { focus: Focus { run: Some(id), deck: false, bays: false, slot: None, ..branch.focus }, ..branch }
}
