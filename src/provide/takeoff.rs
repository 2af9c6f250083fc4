//! Parts, sticks and money of the job as laid out.

use crate::figure::{Fig, Value, Why};
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{
    self, BalusterCount, BalusterLength, BalusterTotal, BalusterWidth, BayClear, BayCount, Bracket, CentreMax, Cost,
    GapMax, Grade, PerTread, PieceCount, PieceLength, Pitch, PostCount, PostLength, PostWidth, RailCount, RailLength,
    Risers, StairBalusters, StickCount, Tread, Treads,
};
use crate::quantity::{Args, Relation, counted, every, want};
use crate::solve::Provider;
use crate::takeoff::cutplan::{CutOrder, Effort, Proved, Stick, Supply, Wanted, plan};
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
        give: |job| of_parts(job, "rails of all bays", is_rail),
    },
    Provider {
        gives: StairBalusters,
        needs: DOWN,
        settles: &[Treads, PerTread, Pitch],
        give: |job| of_parts(job, "balusters of all stair bays", on_stairs),
    },
    Provider { gives: StickCount, needs: BAYS, settles: BOUGHT, give: sticks },
    Provider { gives: Cost, needs: BAYS, settles: &[StickCount], give: cost },
];

/// Sticks for a part cut to several lengths, each with its count.
macro_rules! cut_plan {
    ($count:ident, $length:ident) => {
        Relation::work(
            StickCount,
            "the fewest sticks all the pieces are cut from, a kerf between two of them",
            &[counted($length), every($count), want(RowId::Stock), want(RowId::Kerf)],
            planned,
        )
    };
}

pub(super) const RELATIONS: &[Relation] = &[
    cut_plan!(PostCount, PostLength),
    cut_plan!(RailCount, RailLength),
    cut_plan!(BalusterCount, BalusterLength),
    cut_plan!(PieceCount, PieceLength),
];

/// The sticks of a plan that is proved to buy the least; its pieces are the counts and lengths the first input is added up from.
fn planned(a: &Args) -> Option<Value> {
    let Why::Formula(_, parts) = a.0.first()?.why() else { return None };
    let wanted = parts.chunks(2).map(|pair| {
        let [(_, n), (_, length)] = pair else { return None };
        let Value::Count(n) = n.value() else { return None };
        Some(Wanted { length: length.as_length()?, count: u32::try_from(n).ok()? })
    });
    let stick = Stick { length: a.length(2), supply: Supply::Yard(None) };
    let order = CutOrder { wanted: wanted.collect::<Option<_>>()?, sticks: vec![stick], kerf: a.length(3) };
    let plan = plan(&order, &mut Effort::AT_THE_PROMPT.clone()).ok().filter(|p| p.proved == Proved::Least)?;
    Some(Value::Count(u64::from(plan.bought_count())))
}

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

fn of_parts(job: &Job, says: &'static str, which: fn(&Part) -> bool) -> Option<Fig> {
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
