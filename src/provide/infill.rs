//! Balusters: of one opening by its sizes, and of the job bay by bay.

use crate::figure::{Fig, Value, Why};
use crate::gate::gap;
use crate::infill::{Opening, fewest};
use crate::job::{CapTold, Job, Member};
use crate::layout::lay_out;
use crate::measure::Tape;
use crate::quantity::RowId::{
    self, BalusterCount, BalusterLength, BalusterTotal, BalusterWidth, BayClear, CentreMax, Gap, GapLimit as GapHeld,
    PostWidth,
};
use crate::quantity::{Args, Relation, want};
use crate::solve::{Provider, order};
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

/// What filling a bay settles.
const FILLED: &[RowId] = &[
    BayClear,
    BalusterCount,
    BalusterTotal,
    Gap,
    RowId::PerBay,
    RowId::SpaceCount,
    RowId::Pitch,
    RowId::PerFoot,
    RowId::EndGap,
    RowId::Mark,
];

/// What stands above and below a baluster.
const BETWEEN: &[RowId] =
    &[RowId::TopUnder, RowId::BottomTop, RowId::TopRailTall, RowId::BottomRailTall, RowId::RailsApart];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: GapHeld, needs: LIMIT, settles: &[RowId::RailsApart], give: |job| Some(gap_limit_fig(job)) },
    Provider { gives: BalusterTotal, needs: FILL, settles: FILLED, give: total },
    Provider { gives: Gap, needs: FILL, settles: FILLED, give: widest_gap },
    Provider { gives: RowId::TopRailTall, needs: &[], settles: &[], give: |job| tall(job, Member::Top) },
    Provider { gives: RowId::BottomRailTall, needs: &[], settles: &[], give: |job| tall(job, Member::Bottom) },
    Provider { gives: RowId::Cap, needs: &[], settles: &[], give: cap },
    Provider { gives: BalusterLength, needs: &[RowId::HeightTop, RowId::GapUnder], settles: BETWEEN, give: length },
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

/// How tall a rail of the job is, as it lies.
fn tall(job: &Job, of: Member) -> Option<Fig> {
    let size = order::rail(job, of)?;
    let tall = order::depth(job, of, size)?;
    Some(Fig::length(tall, Why::Table("dressed size of the rail, as it lies", size.table())))
}

/// How thick the cap of the job is.
fn cap(job: &Job) -> Option<Fig> {
    match job.cap() {
        CapTold::Thick(l) => Some(Fig::told(l, "the cap")),
        CapTold::None | CapTold::Untold => None,
    }
}

fn length(job: &Job) -> Option<Fig> {
    let l = baluster_length(job).ok().flatten()?;
    Some(Fig::length(l, Why::Formula("the height less the cap, the rails and the gap under", Vec::new())))
}
