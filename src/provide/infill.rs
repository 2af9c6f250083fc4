//! Balusters: of one opening by its sizes, and of the job bay by bay.

use crate::figure::{Fig, Value, Why};
use crate::gate::gap;
use crate::infill::{Opening, fewest};
use crate::job::Job;
use crate::layout::lay_out;
use crate::measure::Tape;
use crate::quantity::RowId::{
    self, BalusterCount, BalusterLength, BalusterTotal, BalusterWidth, BayClear, CentreMax, Gap, GapLimit as GapHeld,
    PostWidth,
};
use crate::quantity::{Args, Relation, want};
use crate::solve::Provider;
use crate::takeoff::{baluster_fig, baluster_length, fill, gap_limit_fig};

pub(super) const RELATIONS: &[Relation] = &[Relation::work(
    BalusterCount,
    "the fewest balusters whose gaps all keep to the limit, exactly and as marked",
    &[want(BayClear), want(BalusterWidth), want(GapHeld)],
    count,
)];

/// What is told or asked of gaps; at a pool what its barrier's rails are apart by.
const LIMIT: &[RowId] = &[
    RowId::GapMax,
    RowId::LocalGap,
    RowId::Pool,
    RowId::HeightTop,
    RowId::Cap,
    RowId::GapUnder,
    RowId::BottomRail,
    RowId::BottomRailLies,
];

const FILL: &[RowId] = &[BalusterWidth, GapHeld, CentreMax, PostWidth];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: GapHeld, needs: LIMIT, give: |job| Some(gap_limit_fig(job)) },
    Provider { gives: BalusterTotal, needs: FILL, give: total },
    Provider { gives: Gap, needs: FILL, give: widest_gap },
    Provider { gives: BalusterLength, needs: &[RowId::HeightTop, RowId::GapUnder], give: length },
];

/// The fewest that fill an opening, on a tape of sixteenths.
fn count(a: &Args) -> Option<Value> {
    let limit = gap::held(a.0.get(2)?.clone()).limit();
    let opening = Opening::measured(a.length(0), a.length(1), limit, Tape::default());
    fewest(opening).ok().map(|f| Value::Count(u64::from(f.taped.count())))
}

fn total(job: &Job) -> Option<Fig> {
    let bays = fill(job, &lay_out(job), None).ok().filter(|b| !b.is_empty())?;
    let n = bays.iter().map(|b| u64::from(b.spread.count())).sum();
    Some(Fig::count(
        n,
        Why::Formula("balusters of all bays", vec![("gap limit", gap_limit_fig(job)), ("baluster", baluster_fig(job))]),
    ))
}

fn widest_gap(job: &Job) -> Option<Fig> {
    let bays = fill(job, &lay_out(job), None).ok()?;
    let widest = bays.iter().map(|b| b.spread.gap()).max()?;
    Some(Fig::length(widest, Why::Formula("the widest gap of all bays", vec![("baluster", baluster_fig(job))])))
}

fn length(job: &Job) -> Option<Fig> {
    let l = baluster_length(job).ok().flatten()?;
    Some(Fig::length(l, Why::Formula("the height less the cap, the rails and the gap under", Vec::new())))
}
