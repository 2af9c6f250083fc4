//! A deck's outline walked side by side: each way to go is a turn from the side before.

use super::{Branch, Branches, Problem, Resolver, grow};
use crate::grammar::draft::{Clause, Reading, RunDraft, Way};
use crate::grammar::sense::Side;
use crate::job::outline::{degrees, filled, stands_free};
use crate::job::{Basis, End, Fact, Job, Run, RunId, RunPatch, SlotId, Turn, View};
use crate::measure::Measure;
use crate::session::lengths::{fits, told};
use crate::session::state::Focus;

/// Degrees clockwise from straight out; a turn adds to the way the walk heads now.
fn heading(way: Way, from: i32, yard: bool) -> i32 {
    match way {
        Way::Start | Way::Out => 0,
        Way::Right | Way::Side { right: true } => 90,
        Way::In => 180,
        Way::Left | Way::Side { right: false } => 270,
        Way::Turn { right, degrees } => {
            // Seen from the yard the walk goes round the other way.
            let by = i32::from(degrees);
            (if right == yard { from - by } else { from + by }).rem_euclid(360)
        }
    }
}

/// The way the walk heads now; `None` before its first side.
fn now(job: &Job) -> Option<i32> {
    degrees(job.runs.iter().filter_map(|r| r.turn)).last().map(|d| d.rem_euclid(360))
}

fn turn(job: &Job, way: Way) -> Result<Turn, Problem> {
    let Some(from) = now(job) else {
        return if way == Way::Start {
            Ok(Turn::Start)
        } else {
            Err(Problem::Unfit("Where does the walk start? Begin at the house: say how far out the first side goes."))
        };
    };
    let yard = job.settings.view == Some(View::Yard);
    match (heading(way, from, yard) - from).rem_euclid(360) {
        0 => {
            Err(Problem::Unfit("That goes straight on from the side before. Is it the same side, or is there a turn?"))
        }
        180 => Err(Problem::Unfit("That goes straight back along the side before. Which way does it turn?")),
        right if right < 180 => Ok(Turn::Right(u16::try_from(right).unwrap_or(90))),
        left => Ok(Turn::Left(u16::try_from(360 - left).unwrap_or(90))),
    }
}

/// The turn of the next side where it faces one that stands: back the way that one went.
pub(super) fn facing(job: &Job, model: RunId) -> Result<Turn, Problem> {
    let turns = job.runs.iter().filter(|r| r.turn.is_some()).map(|r| r.id);
    let went = turns.zip(degrees(job.runs.iter().filter_map(|r| r.turn))).find(|(id, _)| *id == model);
    let way = match went.map(|(_, d)| d.rem_euclid(360)) {
        Some(0) => Way::In,
        Some(90) => Way::Left,
        Some(180) => Way::Out,
        Some(270) => Way::Right,
        _ => {
            return Err(Problem::Ask(
                "Which way does that side go? Tell me it as a walk: so far, and which way.",
                Vec::new(),
            ));
        }
    };
    turn(job, way)
}

/// True while a walk has begun and its last side does not come home to the house.
pub(super) fn under_way(job: &Job) -> bool {
    let last = filled(job).job.runs.into_iter().rfind(|r| r.turn.is_some());
    !stands_free(job) && last.is_some_and(|r| r.to.is_none())
}

/// True for "right 10'", or a length alone, while a walk is under way and no run goes by that name: the way it
/// goes on, unless it comes to that side of the deck next.
pub(super) fn goes_that_way(job: &Job, draft: &RunDraft) -> bool {
    let only = RunDraft { name: None, length: None, words: 0..0, ..draft.clone() } == RunDraft::default();
    let handed = draft.name.is_none_or(|s| matches!(s, Side::Left | Side::Right) && job.named(s.name()).is_none());
    only && handed && draft.length.is_some() && under_way(job) && !walks_on(job, draft)
}

/// "left 12, front 18, right 12": three sides and no more, the first across from the last,
/// nothing said of their ends but the house.
pub(super) fn goes_round(reading: &Reading) -> bool {
    let runs: Vec<&RunDraft> =
        reading.clauses.iter().filter_map(|c| if let Clause::Run(r) = c { Some(r) } else { None }).collect();
    let [first, middle, last] = runs[..] else { return false };
    let house = |end: Option<End>| matches!(end, None | Some(End::House));
    let homes = first.from == Some(End::House) || last.to == Some(End::House);
    let plain = |r: &&RunDraft| {
        r.name.is_some() && r.length.is_some() && r.basis.is_none() && house(r.from) && house(r.to) && r.bays.is_none()
    };
    let across = first
        .name
        .and_then(|s| opposite(s.name()))
        .is_some_and(|s| matches!(last.name, Some(l) if l == s || l == Side::Other));
    homes && runs.iter().all(plain) && across && middle.name == Some(Side::Front)
}

/// The turn of the next side of a plain wraparound: off the house, then right and right.
pub(super) fn next_side(job: &Job) -> Turn {
    if job.runs.iter().any(|r| r.turn.is_some()) { Turn::Right(90) } else { Turn::Start }
}

/// "then 16' across the front": a walk has begun, heads out, and comes to the front; or
/// heads across and comes to the last side.
pub(super) fn walks_on(job: &Job, draft: &RunDraft) -> bool {
    let nameless = draft.from.is_none() && draft.to.is_none() && draft.number.is_none();
    let first = job.runs.iter().find(|r| r.turn.is_some()).and_then(|r| r.name.as_deref());
    let next = match now(job) {
        Some(0) => draft.name == Some(Side::Front),
        // Across the front it comes to the side that faces the first.
        Some(90) => draft.name.is_some() && draft.name == first.map_or(Some(Side::Right), opposite),
        _ => false,
    };
    next && nameless && draft.length.is_some() && under_way(job)
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
        if way == Way::Start && self.ends && self.walks < 2 {
            return Err(Problem::Unfit("Is that one run, or the first side of the deck?"));
        }
        let name = |right: bool| if right { Side::Right } else { Side::Left };
        if let Way::Side { right } = way
            && (!under_way(&branch.job) || branch.job.named(name(right).name()).is_some() || self.corrects)
        {
            return Err(Problem::Unfit(
                "Is that a side's name, or the way the walk goes? Say to the right or to the left.",
            ));
        }
        if now(&branch.job).is_some() && !under_way(&branch.job) && length.is_some() {
            return Err(Problem::Unfit(
                "The outline comes home to the house already. Say new deck to walk another, or which side is not so.",
            ));
        }
        // "left side is 12 out": the first side, by its name.
        let first = way == Way::Out && now(&branch.job).is_none() && branch.job.runs.is_empty();
        let way = if first && (on.is_some() || self.walks > 1) { Way::Start } else { way };
        if way == Way::Start && matches!(on, Some(Side::Front | Side::Back)) {
            return Err(Problem::Unfit("Is that how far the deck comes out, or how long that side is?"));
        }
        let branch = begun(branch, way)?;
        let before = now(&branch.job);
        if length.is_none() && before == Some(180) {
            // Already heading home: the last side runs to the house.
            return Ok(vec![branch]);
        }
        let turn = turn(&branch.job, way)?;
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
        house_sides(&branch.job).into_iter().try_fold(branch, Branch::with)
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

/// The three sides of a deck at a house whose sizes are both told; none where sides are told already.
pub(in crate::session) fn house_sides(job: &Job) -> Vec<Fact> {
    if job.deck_along.is_none() || job.deck_out.is_none() || !job.runs.is_empty() {
        return Vec::new();
    }
    let sides = [("left", Turn::Start), ("front", Turn::Right(90)), ("right", Turn::Right(90))];
    let patch = |name: &str, turn| RunPatch { name: Some(name.to_owned()), turn: Some(turn), ..RunPatch::default() };
    let ids = (job.next_run().0..).map(RunId);
    sides.iter().zip(ids).map(|((name, turn), id)| Fact::Run(id, patch(name, *turn))).collect()
}

fn focused(branch: Branch, id: RunId) -> Branch {
    Branch { focus: Focus { run: Some(id), deck: false, bays: false, slot: None, ..branch.focus }, ..branch }
}
