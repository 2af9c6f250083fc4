//! What 200 lb at the guard's top asks of the job's posts, bolts and longest bay.

use crate::figure::Fig;
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{
    self, BoltPull, BoltPush, CentreMax, ClearMax, Decking, HeightTop, PostArm, PostRatio, PostWidth, RailRatio,
    RailSag, RimTall, SagLimit,
};
use crate::solve::Provider;
use crate::strength::post::arm_to_bolt;
use crate::strength::rail::{Bent, Way, bent};
use crate::strength::tie::Tie;
use crate::strength::{Inputs, Leg};

const BOLTS: &[RowId] = &[HeightTop, Decking, RimTall];

const BAY: &[RowId] = &[CentreMax, ClearMax, PostWidth];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: BoltPull, needs: BOLTS, give: |job| tie(job)?.pull().ok() },
    Provider { gives: BoltPush, needs: BOLTS, give: |job| tie(job)?.push().ok() },
    Provider { gives: PostArm, needs: &[HeightTop, Decking], give: arm },
    Provider { gives: PostRatio, needs: &[HeightTop], give: post },
    Provider { gives: RailSag, needs: BAY, give: |job| Some(rail(job)?.sag.demand) },
    Provider { gives: SagLimit, needs: BAY, give: |job| Some(rail(job)?.sag.capacity) },
    Provider { gives: RailRatio, needs: BAY, give: |job| Some(rail(job)?.stress.ratio) },
];

fn tie(job: &Job) -> Option<Tie> {
    Inputs::of(job).tie().ok()
}

fn arm(job: &Job) -> Option<Fig> {
    let of = Inputs::of(job);
    arm_to_bolt(&of.height, &of.decking, &of.edge).ok()
}

/// The posts laid out, each whole, as they bend at the deck: the one that is asked most of what it is allowed.
fn post(job: &Job) -> Option<Fig> {
    let of = Inputs::of(job);
    let all = of.stands(&lay_out(job).roles());
    let bent = all.iter().filter_map(|stand| stand.bent(&Leg::Whole, &of.height, &of.wood));
    bent.map(|judged| judged.ratio).max_by_key(Fig::as_q)
}

/// The rail of the longest bay laid out, under a load straight down.
fn rail(job: &Job) -> Option<Bent> {
    let of = Inputs::of(job);
    bent(&of.pieces, &of.wood, lay_out(job).longest_bay()?, &of.height, Way::Down).ok()
}
