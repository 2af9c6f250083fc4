//! Balusters, parts, cuts and cost, resolved: bare numbers get their unit, "13 of them" its opening.

use super::{Branch, Branches, Problem, Resolved, Resolver, grow};
use crate::grammar::ask::{Infill, TakeoffAsk};
use crate::grammar::draft::{AskDraft, Which};
use crate::grammar::goods::{InfillDraft, OrderDraft, TakeoffDraft};
use crate::grammar::{Act, Query};
use crate::job::{Fact, Job, Member, Order, RunId, SlotId};
use crate::layout::lay_out;
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::takeoff::{RAIL, rail_bays};

const WHICH_OPENING: &str = "Which opening? Say how wide it is, face to face.";

impl Resolver<'_> {
    /// A question of this kind on a line of its own.
    pub(super) fn takeoff_alone(&self, draft: &TakeoffDraft) -> Result<Resolved, Problem> {
        let asks = self.takeoff(draft, &self.session.job)?;
        let mut focus = self.session.talk.focus.clone();
        if let [TakeoffAsk::Infill(i)] = asks.as_slice() {
            focus.opening = Some(i.clear);
        }
        let ask = asks.len() > 1;
        let acts = asks.into_iter().map(|a| Act::Query(Query::Takeoff(a))).collect();
        Ok(Resolved { acts, ask, focus, then: None })
    }

    /// What a question may mean; more than one is asked about.
    pub(super) fn takeoff(&self, draft: &TakeoffDraft, job: &Job) -> Result<Vec<TakeoffAsk>, Problem> {
        Ok(match draft {
            TakeoffDraft::Infill(infill) => return self.infill(infill, job),
            TakeoffDraft::OnCentre(centre, baluster) => {
                let baluster = baluster.as_ref().map(|m| one(m, SlotId::BalusterWidth)).transpose()?;
                vec![TakeoffAsk::OnCentre { centre: one(centre, SlotId::GapMax)?, baluster }]
            }
            TakeoffDraft::Gap(m) => vec![TakeoffAsk::Gap(one(m, SlotId::GapMax)?)],
            TakeoffDraft::GapUnder(m) => vec![TakeoffAsk::GapUnder(one(m, SlotId::GapMax)?)],
            TakeoffDraft::ByObject => vec![TakeoffAsk::ByObject],
            TakeoffDraft::Dried(wood, gap) => {
                let gap = gap.as_ref().map(|m| one(m, SlotId::GapMax)).transpose()?;
                vec![TakeoffAsk::Dried { wood: *wood, gap }]
            }
            TakeoffDraft::Routed { pitch, clear, baluster } => {
                let pitch = one(pitch, SlotId::GapMax)?;
                let baluster = baluster.as_ref().map(|m| one(m, SlotId::BalusterWidth)).transpose()?;
                let clears = clear.as_ref().map(|m| self.openings(m)).transpose()?;
                let asks = clears.map_or(vec![None], |all| all.into_iter().map(Some).collect());
                asks.into_iter().map(|clear| TakeoffAsk::Routed { pitch, clear, baluster }).collect()
            }
            TakeoffDraft::CutShort(m) => vec![TakeoffAsk::CutShort(one(m, SlotId::Offset)?)],
            TakeoffDraft::Measured(m) => vec![TakeoffAsk::Measured(one(m, SlotId::BalusterWidth)?)],
            // Bays told alone are for their balusters.
            TakeoffDraft::InAll if !job.order.bays.is_empty() && job.runs.is_empty() => {
                vec![TakeoffAsk::Balusters(None)]
            }
            TakeoffDraft::InAll => {
                let acts = [Query::Posts(None), Query::Takeoff(TakeoffAsk::Balusters(None))].map(Act::Query);
                return Err(Problem::Ask("How many of what?", acts.into()));
            }
            TakeoffDraft::Parts => vec![TakeoffAsk::Parts],
            TakeoffDraft::PartsFor(m) => return Err(self.parts_for(m)),
            TakeoffDraft::Cuts => vec![TakeoffAsk::Cuts],
            TakeoffDraft::Buy => vec![TakeoffAsk::Buy],
            TakeoffDraft::Cost => vec![TakeoffAsk::Cost],
            TakeoffDraft::Splits(which) => vec![TakeoffAsk::Splits(self.run_of(*which, job)?)],
            TakeoffDraft::CutLength(part) => vec![TakeoffAsk::CutLength(*part)],
            TakeoffDraft::RailLength => vec![TakeoffAsk::RailLength],
        })
    }

    fn infill(&self, draft: &InfillDraft, job: &Job) -> Result<Vec<TakeoffAsk>, Problem> {
        let baluster = draft.baluster.as_ref().map(|m| one(m, SlotId::BalusterWidth)).transpose()?;
        let limit = draft.limit.as_ref().map(|m| one(m, SlotId::GapMax)).transpose()?;
        let count = match (draft.count, draft.fewer) {
            (Some(n), Some(less)) => {
                Some(n.checked_sub(less).ok_or(Problem::Refuse("There are not that many to drop."))?)
            }
            (None, Some(_)) => return Err(Problem::Ask("Drop it from how many?", Vec::new())),
            (n, None) => n,
        };
        let run = self.run_of(draft.which, job)?;
        let whole_job = count.is_none() && draft.opening.is_none() && draft.start.is_none();
        if whole_job && (baluster.is_some() || limit.is_some()) && !job_bays(job).is_empty() {
            // "how many 3/4 balusters": of the job, with a width not told for it.
            return Err(Problem::Ask(
                "For the whole job tell that first (\"balusters 3/4\", \"gap limit 4\"), then ask.",
                Vec::new(),
            ));
        }
        if whole_job && (run.is_some() || !job_bays(job).is_empty() || self.session.talk.focus.opening.is_none()) {
            return Ok(vec![TakeoffAsk::Balusters(run)]);
        }
        let clears = match &draft.opening {
            Some(m) => self.openings(m)?,
            None => sane(vec![self.opening_spoken_of(job, run)?])?,
        };
        Ok(clears
            .into_iter()
            .map(|clear| TakeoffAsk::Infill(Infill { clear, count, baluster, limit, start: draft.start }))
            .collect())
    }

    /// What a measure may be as an opening; more than one is asked about.
    fn openings(&self, m: &Measure) -> Result<Vec<Length>, Problem> {
        let fits = fits(m, SlotId::BayClear, None);
        if fits.doubtful && fits.lengths.len() < 2 {
            return Err(Problem::Ask(WHICH_OPENING, Vec::new()));
        }
        sane(fits.lengths.into_iter().map(|(l, _)| l).collect())
    }

    /// The opening asked about last, or the job's bays where they are all alike.
    fn opening_spoken_of(&self, job: &Job, run: Option<RunId>) -> Result<Length, Problem> {
        if let Some(l) = self.session.talk.focus.opening.filter(|_| run.is_none()) {
            return Ok(l);
        }
        let bays = job_bays(job).into_iter().filter(|(r, _)| run.is_none() || *r == run);
        let mut clears: Vec<Length> = bays.map(|(_, l)| l).collect();
        clears.dedup();
        match clears[..] {
            [one] => Ok(one),
            _ => Err(Problem::Ask(WHICH_OPENING, Vec::new())),
        }
    }

    fn run_of(&self, which: Option<Which>, job: &Job) -> Result<Option<RunId>, Problem> {
        match self.asked(AskDraft::Layout(which), job)? {
            Query::Layout(run) => Ok(run),
            _ => Ok(None),
        }
    }

    /// "what do I need for a 16 foot rail": too little to buy from.
    fn parts_for(&self, m: &Measure) -> Problem {
        let told = crate::grammar::draft::RunDraft { run_word: true, length: Some(m.clone()), ..Default::default() };
        let start = Branch {
            job: self.session.job.clone(),
            facts: Vec::new(),
            focus: self.session.talk.focus.clone(),
            ask: true,
        };
        let acts = self.run(start, &told).map(|all| all.into_iter().map(|b| Act::Tell(b.facts)).collect());
        Problem::Ask(
            "What does it go between, how high is it to the top, and what fills it: balusters of what size? Say 1 to take the length now.",
            acts.unwrap_or_default(),
        )
    }

    /// A fact of the order.
    pub(super) fn order(&self, branch: Branch, draft: &OrderDraft) -> Branches {
        match draft {
            OrderDraft::Fact(order) => branch.with(Fact::Order(order.clone())).map(|b| vec![b]),
            OrderDraft::RailsSold(feet) => {
                let size = branch.job.order.rail(Member::Top).flatten().unwrap_or(RAIL);
                branch.with(Fact::Order(Order::Sold(Some(size), feet.clone()))).map(|b| vec![b])
            }
            OrderDraft::Bays(n, m) => self.each_length(branch, m, SlotId::BayClear, |l| Order::Bays(*n, l)),
            OrderDraft::OnHand(size, m, n) => {
                self.each_length(branch, m, SlotId::Stock, |l| Order::OnHand(*size, l, *n))
            }
        }
    }

    fn each_length(&self, branch: Branch, m: &Measure, slot: SlotId, order: impl Fn(Length) -> Order) -> Branches {
        if m.about || m.shade.is_some() {
            return Err(Problem::Ask("Exactly how long? That is cut to.", Vec::new()));
        }
        let fits = fits(m, slot, None);
        let mut branches = Vec::new();
        for (l, _) in &fits.lengths {
            let grown = grow(vec![branch.clone()], |b| b.with(Fact::Order(order(*l))).map(|b| vec![b]));
            match grown {
                Ok(mut more) => branches.append(&mut more),
                Err(p) if fits.lengths.len() == 1 => return Err(p),
                Err(_) => {}
            }
        }
        for b in &mut branches {
            b.ask |= fits.doubtful;
            if slot == SlotId::BayClear {
                b.focus.opening = b.job.order.bays.last().map(|(_, l)| *l);
            }
        }
        if branches.is_empty() {
            Err(Problem::Ask("How long is that? I can't take it as a length.", Vec::new()))
        } else {
            Ok(branches)
        }
    }
}

fn sane(clears: Vec<Length>) -> Result<Vec<Length>, Problem> {
    let sane: Vec<Length> = clears.into_iter().filter(|l| SlotId::BayClear.takes(*l)).collect();
    if sane.is_empty() { Err(Problem::Ask(WHICH_OPENING, Vec::new())) } else { Ok(sane) }
}

/// Every rail bay of the job as it is laid out.
pub(super) fn job_bays(job: &Job) -> Vec<(Option<RunId>, Length)> {
    rail_bays(job, &lay_out(job)).into_iter().map(|b| (b.at.run(), b.clear)).collect()
}

/// One length for a slot that takes inches.
fn one(m: &Measure, slot: SlotId) -> Result<Length, Problem> {
    let fits = fits(m, slot, None);
    match fits.lengths[..] {
        [(l, _)] if slot.takes(l) && !fits.doubtful => Ok(l),
        _ => Err(Problem::Ask("Which length is that? Say it in inches.", Vec::new())),
    }
}
