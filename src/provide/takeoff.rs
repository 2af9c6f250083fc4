//! Parts, sticks and money of the job as laid out.

use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{
    self, BalusterTotal, BalusterWidth, BayClear, BayCount, Bracket, CentreMax, Cost, GapMax, Grade, PerTread, Pitch,
    PostCount, PostWidth, RailCount, RailLength, Risers, StairBalusters, StickCount, Tread, Treads,
};
use crate::solve::Provider;
use crate::takeoff::cutplan::Effort;
use crate::takeoff::{Bought, Part, Parts, What, bill_of, buy, longest, parts};

const BAYS: &[RowId] = &[CentreMax, PostWidth];

/// What a buying list settles.
const BOUGHT: &[RowId] = &[
    BayCount,
    PostCount,
    RailCount,
    RailLength,
    BalusterTotal,
    StairBalusters,
    RowId::Stock,
    RowId::PieceLength,
    RowId::PieceCount,
    RowId::PieceCountExtra,
    RowId::PerStick,
    RowId::Lineal,
];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: RailLength, needs: &[CentreMax, PostWidth, Bracket], settles: &[BayClear], give: rail },
    Provider {
        gives: RailCount,
        needs: BAYS,
        settles: &[BayCount],
        give: |job| counted(job, "rails of all bays", is_rail),
    },
    Provider {
        gives: StairBalusters,
        needs: DOWN,
        settles: &[Treads, PerTread, Pitch],
        give: |job| counted(job, "balusters of all stair bays", on_stairs),
    },
    Provider { gives: StickCount, needs: BAYS, settles: BOUGHT, give: sticks },
    Provider { gives: Cost, needs: BAYS, settles: &[StickCount], give: cost },
];

const DOWN: &[RowId] = &[BalusterWidth, GapMax, Risers, Tread, Grade];

fn all(job: &Job) -> Option<Parts> {
    parts(job, &lay_out(job), |size| longest(job, size)).ok()
}

fn is_rail(part: &Part) -> bool {
    matches!(part.what, What::TopRail | What::BottomRail)
}

fn on_stairs(part: &Part) -> bool {
    part.what == What::StairBaluster
}

/// The longest rail cut.
fn rail(job: &Job) -> Option<Fig> {
    let cut = all(job)?.list.iter().filter(|p| is_rail(p)).filter_map(|p| p.cut).max()?;
    Some(Fig::length(cut, Why::Formula("the longest rail of the cut list", Vec::new())))
}

fn counted(job: &Job, says: &'static str, which: fn(&Part) -> bool) -> Option<Fig> {
    let n: u64 = all(job)?.list.iter().filter(|p| which(p)).map(|p| u64::from(p.count)).sum();
    (n > 0).then(|| Fig::count(n, Why::Formula(says, Vec::new())))
}

/// The buying list; none where a size cannot be cut from what it is sold in.
fn bought(job: &Job) -> Option<Vec<Bought>> {
    let list = buy(job, &all(job)?, &mut Effort::AT_THE_PROMPT.clone());
    (!list.is_empty() && list.iter().all(|b| b.plan.is_ok())).then_some(list)
}

fn sticks(job: &Job) -> Option<Fig> {
    let n = bought(job)?.iter().flat_map(|b| &b.list).map(|(_, n)| u64::from(*n)).sum();
    Some(Fig::count(n, Why::Formula("every stick of the buying list", Vec::new())))
}

fn cost(job: &Job) -> Option<Fig> {
    let bill = bill_of(job, &bought(job)?).ok()?;
    Some(Fig::money(bill.total, Why::Formula("the buying list at the prices told, and what comes on top", Vec::new())))
}
