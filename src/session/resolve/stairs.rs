//! What is said of stairs that stand, or of all stairs: facts of the flight, moves, one more.

use super::first_problem;
use super::stair_sides::{at, end};
use super::{Branch, Branches, Problem, Resolver, grow};
use crate::grammar::draft::{Along, Mark};
use crate::grammar::sense::Side;
use crate::grammar::stair_draft::{StairSaid, StairsWhole};
use crate::job::outline::filled;
use crate::job::{
    End, Fact, Fall, Flight, FlightFact, RiserKind, Run, RunId, RunPatch, SlotId, StairAt, StairMeasure, StairOpening,
    StairPlace, Stairs,
};
use crate::measure::{Length, Meaning, Measure};
use crate::session::lengths::fits;
use crate::session::state::{Focus, Lack};
use crate::session::targets;

/// Stairs that stand in a run: which, in the order told.
#[derive(Clone, Copy)]
struct Stand {
    run: RunId,
    nth: usize,
    stairs: StairOpening,
}

const WHICH: &str = "Which stairs? Say them in full: how wide, and where in their side.";
const NO_STAIRS: &str = "No stairs have been told that this could be of. How wide are they, and where?";
pub(super) const NO_SIDE: &str = "No run goes by that side yet. Tell me it first: how long, and what it goes between.";
const WHERE: &str = "Where along that side are the stairs? Say in the middle, tight to an end, or how far from one.";

impl Resolver<'_> {
    /// One thing said of stairs.
    pub(super) fn stair_said(&self, branch: Branch, said: &StairSaid) -> Branches {
        match said {
            StairSaid::Measured(m, what) => self.measured_between(branch, m.as_ref(), Some(*what)),
            StairSaid::Wide { named: false, .. }
                if self.stand(&branch)?.is_none() && branch.job.stair_width.is_none() =>
            {
                Err(Problem::Unfit(NO_STAIRS))
            }
            StairSaid::Wide { width, .. } => self.measured_between(branch, Some(width), None),
            StairSaid::Whole(whole) => self.stairs_whole(branch, whole),
            StairSaid::RisersBare(m) => risers_bare(branch, m),
            StairSaid::Recess(m) => self.recessed(branch, m),
            StairSaid::Risers(n) => told(branch, FlightFact::Risers(*n)),
            StairSaid::RisersOf(n, m) => {
                grow(told(branch, FlightFact::Risers(*n))?, |b| of_length(b, m, SlotId::Rise, FlightFact::Rise))
            }
            StairSaid::Steps(n) => {
                let steps = [*n, n + 1].map(|n| told(Branch { ask: true, ..branch.clone() }, FlightFact::Risers(n)));
                steps.into_iter().collect::<Result<Vec<_>, _>>().map(|all| all.concat())
            }
            StairSaid::Pitch(rise, tread) => {
                let risen = of_length(branch, rise, SlotId::Rise, FlightFact::Rise)?;
                grow(risen, |b| of_length(b, tread, SlotId::Tread, FlightFact::Tread))
            }
            StairSaid::PitchBare(risers, tread) => {
                grow(risers_bare(branch, risers)?, |b| of_length(b, tread, SlotId::Tread, FlightFact::Tread))
            }
            StairSaid::OpenRisers(None) => told(branch, FlightFact::Between(RiserKind::Open)),
            StairSaid::OpenRisers(Some(m)) => {
                of_length(branch, m, SlotId::OpenRiser, |l| FlightFact::Between(RiserKind::Opening(l)))
            }
            StairSaid::ClosedRisers => told(branch, FlightFact::Between(RiserKind::Closed)),
            StairSaid::Head(head) => told(branch, FlightFact::Head(*head)),
            StairSaid::Landing(m) => of_length(branch, m, SlotId::Landing, FlightFact::Landing),
            StairSaid::Fall { by, over, rises } => falls(branch, by, over.as_ref(), *rises),
            StairSaid::Rise(m) => of_length(branch, m, SlotId::Rise, FlightFact::Rise),
            StairSaid::Tread(m) => of_length(branch, m, SlotId::Tread, FlightFact::Tread),
            StairSaid::Open(sides) => told(branch, FlightFact::Open(*sides)),
            StairSaid::Newels(n) => told(branch, FlightFact::Newels(*n)),
            StairSaid::Lands(on) => told(branch, FlightFact::Lands(*on)),
            StairSaid::Flip => self.flip(branch),
            StairSaid::Slide(m, mark) => self.slide(branch, m, *mark),
            StairSaid::Move(along) => self.move_stairs(branch, along),
            StairSaid::Place(on, along) => self.place_stairs(branch, *on, None, along.as_ref()),
            StairSaid::DownTo => self.down_to(branch),
        }
    }

    /// The stairs spoken of: the only ones of the run in focus, or of the job; `None` where
    /// no run holds any.
    fn stand(&self, branch: &Branch) -> Result<Option<Stand>, Problem> {
        let all = |run: &Run| -> Vec<Stand> {
            run.stairs.iter().enumerate().map(|(nth, s)| Stand { run: run.id, nth, stairs: *s }).collect()
        };
        let job: Vec<Stand> = branch.job.runs.iter().flat_map(all).collect();
        let here = branch.focus.run.and_then(|id| branch.job.run(id)).map(all).unwrap_or_default();
        match (&here[..], &job[..]) {
            ([one], _) | ([], [one]) => Ok(Some(*one)),
            (_, []) => Ok(None),
            _ => Err(Problem::Ask(WHICH, Vec::new())),
        }
    }

    fn must_stand(&self, branch: &Branch) -> Result<Stand, Problem> {
        self.stand(branch)?.ok_or(Problem::Unfit(NO_STAIRS))
    }

    /// A width, or what it was measured between, or both.
    fn measured_between(&self, branch: Branch, m: Option<&Measure>, what: Option<StairMeasure>) -> Branches {
        let stand = self.stand(&branch)?;
        let widths: Vec<(Option<Length>, bool)> = match m {
            Some(m) => {
                let said = fits(m, SlotId::StairWidth, None);
                said.lengths
                    .iter()
                    .map(|(l, _)| (Some(*l), said.doubtful || said.lengths.len() > 1 || m.about || m.shade.is_some()))
                    .collect()
            }
            None => vec![(None, false)],
        };
        if widths.is_empty() {
            return Err(Problem::Ask("How wide? I can't take that as a width.", Vec::new()));
        }
        let each = widths.into_iter().map(|(width, ask)| {
            let mut b = branch.clone();
            b.ask |= ask;
            match stand {
                Some(s) => {
                    let stairs = StairOpening {
                        width: width.unwrap_or(s.stairs.width),
                        measure: what.or(s.stairs.measure),
                        ..s.stairs
                    };
                    put(b, s, stairs)
                }
                None => loose_width(b, width, what),
            }
        });
        first_problem(each.collect())
    }

    /// Let into the deck: what the width was measured between then moves every cut, so it is
    /// asked where it was not told.
    fn recessed(&self, branch: Branch, m: &Measure) -> Branches {
        let s = self.stand(&branch)?.ok_or(Problem::Ask(
            "Which stairs go into the deck? Tell me first how wide they are and where.",
            Vec::new(),
        ))?;
        let said = fits(m, SlotId::Recess, None);
        let measures = match s.stairs.measure {
            Some(told) => vec![told],
            None => StairMeasure::ALL.to_vec(),
        };
        let ask = said.doubtful || said.lengths.len() > 1 || measures.len() > 1 || m.about || m.shade.is_some();
        // Doubts about the depth and about the width are asked one at a time.
        let depths = said.lengths.iter().take(if measures.len() > 1 { 1 } else { 2 });
        let each = depths.flat_map(|(deep, _)| measures.iter().map(move |m| (*deep, *m)));
        let each = each.map(|(deep, measure)| {
            let stairs = StairOpening { recess: Some(deep), measure: Some(measure), ..s.stairs };
            put(Branch { ask: branch.ask || ask, ..branch.clone() }, s, stairs)
        });
        first_problem(each.collect())
    }

    fn flip(&self, branch: Branch) -> Branches {
        let Some(s) = self.stand(&branch)? else {
            let focus = targets::focus(self.session, &branch.job);
            let head = |r: &&Run| (r.from == Some(End::StairHead)) != (r.to == Some(End::StairHead));
            return match focus.filter(head) {
                Some(_) => self.swap(branch).map(|b| vec![b]),
                None => Err(Problem::Unfit(NO_STAIRS)),
            };
        };
        if s.stairs.at == StairAt::Middle {
            return Err(Problem::Ask(
                "Those stairs stand in the middle, so they have no other end. Where do they go?",
                Vec::new(),
            ));
        }
        Ok(vec![put(branch, s, StairOpening { at: s.stairs.at.flipped(), ..s.stairs })?])
    }

    fn slide(&self, branch: Branch, m: &Measure, mark: Mark) -> Branches {
        let s = self.must_stand(&branch)?;
        let outlined = filled(&branch.job).job;
        let run = outlined.run(s.run).ok_or(Problem::Unfit(NO_STAIRS))?;
        let Some(left) = end(run, mark) else {
            return Err(Problem::Ask("Slide them which way? Say left or right, standing at the house.", Vec::new()));
        };
        let by = fits(m, SlotId::Offset, None);
        let ask = by.doubtful || by.lengths.len() > 1 || m.about || m.shade.is_some();
        let each = by.lengths.iter().map(|(by, _)| {
            let at = slid(&s.stairs, run.length.map(|t| t.length), *by, left)?;
            put(Branch { ask: branch.ask || ask, ..branch.clone() }, s, StairOpening { at, ..s.stairs })
        });
        first_problem(each.collect())
    }

    fn move_stairs(&self, branch: Branch, along: &Along) -> Branches {
        let s = self.must_stand(&branch)?;
        let mut places = self.places(&branch, s.run, along)?;
        // "move them to the right side": tight to that end, or as far from it as from the other.
        if let (Along::AtSide(_), StairAt::FromLeft(off) | StairAt::FromRight(off)) = (along, s.stairs.at)
            && off.is_positive()
        {
            let mirrored = match places.first() {
                Some(StairAt::FromLeft(_)) => StairAt::FromLeft(off),
                _ => StairAt::FromRight(off),
            };
            places.insert(0, mirrored);
        }
        let ask = places.len() > 1;
        places.retain(|at| *at != s.stairs.at);
        if places.is_empty() {
            return Err(Problem::Ask("That is where they stand already.", Vec::new()));
        }
        let each = places
            .into_iter()
            .map(|at| put(Branch { ask: branch.ask || ask, ..branch.clone() }, s, StairOpening { at, ..s.stairs }));
        first_problem(each.collect())
    }

    /// Stairs in a side: put there where the side was told, else kept until it is.
    pub(super) fn place_stairs(
        &self,
        branch: Branch,
        on: Option<Side>,
        width: Option<&Measure>,
        along: Option<&Along>,
    ) -> Branches {
        let Some(on) = on.filter(|s| !matches!(s, Side::Side | Side::Other)) else {
            return Err(Problem::Ask(
                "Which side? Say left, right or front, standing at the house looking out.",
                Vec::new(),
            ));
        };
        if targets::named(&branch.job, on).is_some() {
            return self.stairs_on(branch, on, width, along.filter(|a| **a != Along::Untold));
        }
        let by = match along {
            Some(Along::AtEnd(e)) => Some(*e),
            Some(Along::Untold) | None => None,
            Some(_) => return Err(Problem::Ask(NO_SIDE, Vec::new())),
        };
        let place = StairPlace { side: on.name().to_owned(), by };
        let kept = grow(vec![branch.clone().with(Fact::StairPlace(place))?], |b| match width {
            Some(_) => self.stair_width(b, width),
            None => Ok(vec![b]),
        })?;
        // "stairs are at the right end": of the one run told, or of a side still to tell.
        let focus = targets::focus(self.session, &branch.job).filter(|r| r.turn.is_none()).map(|r| r.id);
        let (Some(id), Side::Left | Side::Right, None) = (focus, on, by) else { return Ok(kept) };
        let here = self.stairs_put(branch, id, width, &Along::AtSide(on))?;
        Ok(here.into_iter().chain(kept).map(|b| Branch { ask: true, ..b }).collect())
    }

    /// Stairs said to be in a side before it was told, once it is.
    pub(super) fn settle(&self, branch: Branch, id: RunId) -> Branches {
        let Some((place, width)) = branch.job.stair_place.clone().zip(branch.job.stair_width) else {
            return Ok(vec![branch]);
        };
        let outlined = filled(&branch.job).job;
        let Some(run) = outlined.run(id).filter(|r| r.stairs.is_empty() && r.name.as_deref() == Some(&place.side))
        else {
            return Ok(vec![branch]);
        };
        match place.by.and_then(|by| end(run, Mark::End(by))) {
            Some(from) => self.put_whole(&branch, id, Some(width), at(from, Length::ZERO), false),
            None => Ok(vec![branch]),
        }
    }

    /// "rail stops at a newel there": a guard down the stairs, from their head to that newel.
    fn down_to(&self, branch: Branch) -> Branches {
        let id = branch.job.next_run();
        let patch = RunPatch { from: Some(End::StairHead), to: Some(End::BottomNewel), ..RunPatch::default() };
        let mut b = branch.with(Fact::Run(id, patch))?;
        b.focus = Focus { run: Some(id), deck: false, slot: None, ..b.focus };
        Ok(vec![b])
    }

    /// The stairs of a run with one told whole: in place of the only ones that stand, or, where
    /// both its width and its place are new and nothing was corrected, maybe one more.
    pub(super) fn with_one(
        &self,
        branch: &Branch,
        id: RunId,
        width: Option<Length>,
        at: StairAt,
    ) -> Option<Vec<Stairs>> {
        let stood = branch.job.run(id).map(|r| r.stairs.clone()).unwrap_or_default();
        let loose = branch
            .job
            .stair_width
            .map(|w| StairOpening { measure: branch.job.stair_measure, ..StairOpening::new(w, at) });
        let old = stood.only().copied();
        let base = old.or(loose);
        let one = match (width, base) {
            (Some(w), Some(base)) => StairOpening { width: w, at, ..base },
            (Some(w), None) => StairOpening::new(w, at),
            (None, base) => StairOpening { at, ..base? },
        };
        let mut more = stood.clone();
        more.push(StairOpening { flight: Flight::default(), ..one });
        let same = |old: &StairOpening| width.is_none() || old.at == at || Some(old.width) == width;
        Some(match (stood.len(), old) {
            (0, _) => vec![one.into()],
            (1, Some(old)) if self.corrects || same(&old) => vec![one.into()],
            (1, _) => vec![more, one.into()],
            _ => vec![more],
        })
    }

    /// One stair told whole, taken in; a branch for each way it may be meant.
    pub(super) fn put_whole(
        &self,
        branch: &Branch,
        id: RunId,
        width: Option<Length>,
        at: StairAt,
        ask: bool,
    ) -> Branches {
        let ways = self.with_one(branch, id, width, at).ok_or_else(width_lacks)?;
        let ask = ask || ways.len() > 1;
        let each = ways.into_iter().map(|stairs| {
            let patch = RunPatch { stairs: Some(stairs), ..RunPatch::default() };
            let mut told = branch.clone().instead(id, patch)?;
            told.ask |= ask;
            told.focus = Focus { run: Some(id), deck: false, slot: None, ..told.focus };
            Ok(told)
        });
        first_problem(each.collect())
    }

    /// "stairs start 30 inches from the house, 36 wide": in the side spoken of.
    fn stairs_whole(&self, branch: Branch, whole: &StairsWhole) -> Branches {
        let run = match whole.on {
            Some(on) => targets::named(&branch.job, on),
            None => targets::focus(self.session, &branch.job),
        };
        let Some(id) = run.map(|r| r.id) else {
            return Err(Problem::Ask(
                "Which side are the stairs in? Tell me that run first: its length and what it goes between.",
                Vec::new(),
            ));
        };
        let along = whole.at.as_ref().ok_or(Problem::Ask(WHERE, Vec::new()))?;
        self.stairs_put(branch, id, whole.width.as_ref(), along)
    }

    /// Several stairs told whole, or one more beside those that stand.
    pub(super) fn more_stairs(&self, branch: Branch, each: &[StairsWhole], more: bool) -> Branches {
        let mut b = branch;
        let mut width = None;
        let mut told: Vec<(RunId, Stairs)> = Vec::new();
        for whole in each {
            let id = match whole.on {
                Some(on) => targets::named(&b.job, on).map(|r| r.id),
                None => targets::focus(self.session, &b.job).map(|r| r.id),
            };
            let id = id.ok_or(Problem::Ask(
                "Which side are the stairs in? Tell me that run first: its length and what it goes between.",
                Vec::new(),
            ))?;
            let stood = b.job.run(id).map(|r| r.stairs.clone()).unwrap_or_default();
            b.ask |= !more && !stood.is_empty() && !self.corrects;
            let said = whole.width.as_ref().map(|m| fits(m, SlotId::StairWidth, None));
            if said.as_ref().is_some_and(|s| s.lengths.is_empty()) {
                return Err(Problem::NoLength);
            }
            b.ask |= said.as_ref().is_some_and(|s| s.doubtful || s.lengths.len() > 1);
            b.ask |= whole.width.as_ref().is_some_and(|m| m.about || m.shade.is_some());
            width = said.and_then(|s| s.lengths.first().map(|(l, _)| *l)).or(width).or(b.job.stair_width);
            let width = width
                .or(stood.only().map(|s| s.width))
                .ok_or(Problem::Ask("How wide are those stairs?", Vec::new()))?;
            let along = whole.at.as_ref().ok_or(Problem::Ask(WHERE, Vec::new()))?;
            let places = self.places(&b, id, along)?;
            b.ask |= places.len() > 1;
            let one = StairOpening::new(width, *places.first().ok_or(Problem::NoLength)?);
            match told.iter_mut().find(|(run, _)| *run == id) {
                Some((_, all)) => all.push(one),
                None => {
                    let mut all = if more { stood } else { Stairs::NONE };
                    all.push(one);
                    told.push((id, all));
                }
            }
        }
        for (id, stairs) in told {
            b = b.with(Fact::Run(id, RunPatch { stairs: Some(stairs), ..RunPatch::default() }))?;
            b.focus = Focus { run: Some(id), deck: false, slot: None, ..b.focus };
        }
        Ok(vec![b])
    }
}

/// The stairs in place of the ones that stand.
fn put(branch: Branch, s: Stand, stairs: StairOpening) -> Result<Branch, Problem> {
    let mut all = branch.job.run(s.run).map(|r| r.stairs.clone()).unwrap_or_default();
    all.put(s.nth, stairs);
    let mut b = branch.instead(s.run, RunPatch { stairs: Some(all), ..RunPatch::default() })?;
    b.focus = Focus { run: Some(s.run), deck: false, slot: None, ..b.focus };
    Ok(b)
}

fn loose_width(branch: Branch, width: Option<Length>, what: Option<StairMeasure>) -> Result<Branch, Problem> {
    if width.is_none() && branch.job.stair_width.is_none() {
        return Err(Problem::Unfit(NO_STAIRS));
    }
    let b = width.into_iter().try_fold(branch, |b, w| b.with(Fact::StairWidth(w)))?;
    what.into_iter().try_fold(b, |b, m| b.with(Fact::StairMeasure(m)))
}

fn told(branch: Branch, fact: FlightFact) -> Branches {
    Ok(vec![branch.with(Fact::Flight(fact))?])
}

/// "risers 7" is a count or a height: both where either is sane.
fn risers_bare(branch: Branch, m: &Measure) -> Branches {
    let count = match m.meaning {
        Meaning::Bare(n) if n.value.is_integer() && !n.fraction => u16::try_from(n.value.to_integer()).ok(),
        _ => None,
    };
    let counted = count.map(|n| Branch { ask: true, ..branch.clone() }.with(Fact::Flight(FlightFact::Risers(n))));
    let high = of_length(branch, m, SlotId::Rise, FlightFact::Rise);
    match (counted, high) {
        (None, high) => high,
        (Some(counted), Ok(high)) => Ok(std::iter::once(counted?).chain(high).collect()),
        (Some(counted), Err(_)) => Ok(vec![Branch { ask: false, ..counted? }]),
    }
}

fn of_length(branch: Branch, m: &Measure, slot: SlotId, fact: fn(Length) -> FlightFact) -> Branches {
    let said = fits(m, slot, None);
    let ask = said.doubtful || said.lengths.len() > 1 || m.about || m.shade.is_some();
    if said.lengths.is_empty() {
        return Err(Problem::NoLength);
    }
    let each = said
        .lengths
        .iter()
        .map(|(l, _)| Branch { ask: branch.ask || ask, ..branch.clone() }.with(Fact::Flight(fact(*l))));
    first_problem(each.collect())
}

/// "falls 1/4 inch per foot": so much down, or up, on so much out.
fn falls(branch: Branch, by: &Measure, over: Option<&Measure>, rises: bool) -> Branches {
    let sure = |m: &Measure, slot| match fits(m, slot, None).lengths[..] {
        [(l, _)] if m.shade.is_none() && !m.about => Ok(l),
        _ => Err(Problem::Ask("How much does the ground fall, in how much? Say both with their units.", Vec::new())),
    };
    let by = sure(by, SlotId::Fall)?;
    let over = over.map_or(Ok(Length::inches(12)), |m| sure(m, SlotId::FallOver))?;
    told(branch, FlightFact::Fall(Fall { by: if rises { -by } else { by }, over }))
}

/// Where stairs stand once slid so far to the left or the right.
fn slid(stairs: &StairOpening, run: Option<Length>, by: Length, left: bool) -> Result<StairAt, Problem> {
    let by = if left { -by } else { by };
    let off = match stairs.at {
        StairAt::FromLeft(off) => off + by,
        StairAt::FromRight(off) => off - by,
        StairAt::Middle => {
            stairs.flanks(run).0.ok_or(Problem::Ask(
                "They stand in the middle of a side of unknown length: say how far from an end they go.",
                Vec::new(),
            ))? + by
        }
    };
    if off < Length::ZERO {
        return Err(Problem::Refuse("That would slide the stairs off the end of their side; nothing was moved."));
    }
    Ok(at(!matches!(stairs.at, StairAt::FromRight(_)), off))
}

/// How wide the stairs are is asked where no width was told.
pub(super) fn width_lacks() -> Problem {
    Problem::Lacks("How wide is the stair opening, guard to guard?", Lack::StairWidth)
}
