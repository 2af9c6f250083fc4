//! Heights down a post.

use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::measure::Length;
use crate::notch::{Depths, Stack, feet};
use crate::quantity::RowId::{
    self, Above, BoltEdge, BoltLower, BoltPast, BoltUpper, BoltsApart, BoltsMost, Cap, Decking, HeightTop, Leg, Line,
    NotchDepth, NotchLeft, NotchTall, PostBelow, PostLength, PostTop, PostWidth, RimTall, TopRailTall, TopUnder,
};
use crate::solve::Provider;

const CUT: &[RowId] = &[Line, PostWidth];

const LEG: &[RowId] = &[Decking, RimTall];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider {
        gives: PostTop,
        needs: &[HeightTop, Cap, Above],
        settles: &[TopUnder, TopRailTall],
        give: |job| Some(stack(job).shoulder),
    },
    Provider { gives: Leg, needs: LEG, settles: &[NotchTall], give: |job| stack(job).leg },
    Provider { gives: NotchTall, needs: LEG, settles: &[Leg], give: |job| stack(job).notch_tall() },
    Provider {
        gives: PostLength,
        needs: &[HeightTop, Decking, RimTall, Cap, Above],
        settles: &[PostTop, PostBelow, Leg, NotchTall],
        give: |job| stack(job).total,
    },
    Provider { gives: NotchDepth, needs: CUT, settles: &[NotchLeft], give: |job| weakest(job, Depths::off) },
    Provider { gives: NotchLeft, needs: CUT, settles: &[NotchDepth], give: |job| weakest(job, |d| d.left) },
    Provider {
        gives: BoltUpper,
        needs: &[Decking],
        settles: &[BoltEdge, BoltLower],
        give: |job| bolts(job, |b| b.upper),
    },
    Provider {
        gives: BoltLower,
        needs: LEG,
        settles: &[BoltEdge, BoltUpper, BoltsApart, BoltsMost, BoltPast, Leg],
        give: |job| bolts(job, |b| b.lower),
    },
    Provider {
        gives: BoltsApart,
        needs: &[RimTall],
        settles: &[BoltEdge, BoltsMost, BoltUpper, BoltLower],
        give: |job| bolts(job, |b| b.apart),
    },
];

/// What the foot with the least left loses and keeps, as its lines are marked.
fn weakest(job: &Job, which: fn(Depths) -> Option<Length>) -> Option<Fig> {
    let feet = feet(job).ok()?;
    let cuts = feet.posts.iter().filter_map(|p| Some((p.foot.as_ref().ok()?.weakest(), &p.width)));
    let (cut, width) = cuts.min_by_key(|(cut, _)| cut.area_left())?;
    let from = [Some(("post", width.clone())), feet.line.clone().map(|l| ("line", l))];
    let why = Why::Formula(
        "the footprint of the post with the least left, laid over the deck",
        from.into_iter().flatten().collect(),
    );
    Some(Fig::length(which(cut.depths())?, why))
}

fn stack(job: &Job) -> Stack {
    Stack::of(&job.settings)
}

fn bolts(job: &Job, which: fn(crate::notch::Bolts) -> Fig) -> Option<Fig> {
    stack(job).bolts.map(which)
}
