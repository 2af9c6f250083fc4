//! Heights down a post.

use crate::figure::Fig;
use crate::job::Job;
use crate::notch::Stack;
use crate::quantity::RowId::{
    self, Above, BoltLower, BoltUpper, BoltsApart, Cap, Decking, HeightTop, Leg, NotchTall, PostLength, PostTop,
    RimTall,
};
use crate::solve::Provider;

const LEG: &[RowId] = &[Decking, RimTall];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: PostTop, needs: &[HeightTop, Cap, Above], give: |job| Some(stack(job).shoulder) },
    Provider { gives: Leg, needs: LEG, give: |job| stack(job).leg },
    Provider { gives: NotchTall, needs: LEG, give: |job| stack(job).notch_tall() },
    Provider { gives: PostLength, needs: &[HeightTop, Decking, RimTall, Cap, Above], give: |job| stack(job).total },
    Provider { gives: BoltUpper, needs: &[Decking], give: |job| bolts(job, |b| b.upper) },
    Provider { gives: BoltLower, needs: LEG, give: |job| bolts(job, |b| b.lower) },
    Provider { gives: BoltsApart, needs: &[RimTall], give: |job| bolts(job, |b| b.apart) },
];

fn stack(job: &Job) -> Stack {
    Stack::of(&job.settings)
}

fn bolts(job: &Job, which: fn(crate::notch::Bolts) -> Fig) -> Option<Fig> {
    stack(job).bolts.map(which)
}
