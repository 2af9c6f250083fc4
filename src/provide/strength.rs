//! What 200 lb at the guard's top asks of the job's posts, bolts and longest bay.

use crate::figure::Fig;
use crate::job::{Job, PostRole};
use crate::layout::lay_out;
use crate::quantity::RowId::{
    self, BayClear, BoltEdge, BoltPull, BoltPush, BoltUpper, BoltsApart, CentreMax, ClearMax, Decking, HeightTop,
    LineLoad, PostArm, PostRatio, PostWidth, Push, RailRatio, RailSag, RimTall, SagLimit,
};
use crate::solve::Provider;
use crate::strength::post::arm_to_bolt;
use crate::strength::rail::{Bent, Way, bent};
use crate::strength::tie::Tie;
use crate::strength::{Inputs, Leg};

const BOLTS: &[RowId] = &[HeightTop, Decking, RimTall];

const BAY: &[RowId] = &[CentreMax, ClearMax, PostWidth];

/// The lever of a push at the top on the bolts.
const LEVER: &[RowId] = &[Push, PostArm, BoltUpper, BoltsApart, BoltEdge];

/// The bay a rail spans, and what it bears.
const RAIL: &[RowId] = &[BayClear, Push, LineLoad];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: BoltPull, needs: BOLTS, settles: LEVER, give: |job| tie(job)?.pull().ok() },
    Provider { gives: BoltPush, needs: BOLTS, settles: LEVER, give: |job| tie(job)?.push().ok() },
    Provider { gives: PostArm, needs: &[HeightTop, Decking], settles: &[BoltUpper, BoltEdge], give: arm },
    Provider { gives: PostRatio, needs: &[HeightTop], settles: &[Push, LineLoad], give: post },
    Provider { gives: RailSag, needs: BAY, settles: RAIL, give: |job| Some(rail(job)?.sag.demand) },
    Provider { gives: SagLimit, needs: BAY, settles: RAIL, give: |job| Some(rail(job)?.sag.capacity) },
    Provider { gives: RailRatio, needs: BAY, settles: RAIL, give: |job| Some(rail(job)?.stress.ratio) },
];

fn tie(job: &Job) -> Option<Tie> {
    Inputs::of(job).tie().ok()
}

fn arm(job: &Job) -> Option<Fig> {
    let of = Inputs::of(job);
    arm_to_bolt(&of.height, &of.decking, &of.edge).ok()
}

/// The posts, each whole, as they bend at the deck: the one that is asked most of what it is allowed.
fn post(job: &Job) -> Option<Fig> {
    let of = Inputs::of(job);
    let all = of.stands(&roles_judged(job));
    let bent = all.iter().filter_map(|stand| stand.bent(&Leg::Whole, &of.height, &of.wood));
    bent.map(|judged| judged.ratio).max_by_key(Fig::as_q)
}

/// The roles of the job's posts; where none is placed yet line and corner posts, and those told.
pub fn roles_judged(job: &Job) -> Vec<PostRole> {
    let placed = lay_out(job).roles();
    if !placed.is_empty() {
        return placed;
    }
    [PostRole::Line, PostRole::Corner]
        .into_iter()
        .chain(crate::solve::told_sizes(job).iter().map(|(role, _)| *role))
        .collect()
}

/// The rail of the longest bay laid out, under a load straight down.
fn rail(job: &Job) -> Option<Bent> {
    let of = Inputs::of(job);
    bent(&of.pieces, &of.wood, lay_out(job).longest_bay()?, &of.height, Way::Down).ok()
}
