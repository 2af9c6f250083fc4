//! Runs, posts and bays of one size.

use super::whole::{over, up};
use crate::figure::Value;
use crate::measure::{Length, Q};
use crate::quantity::RowId::{
    BayCentre, BayClear, BayCount, BoltCount, BoltsPerPost, CentreMax, ClearMax, CornerGap, HoldBack, Miter, Nth,
    PostCount, PostMark, PostWidth, PostsBetween, RunCentre, RunClear, RunLength, RunOverall, Turn,
};
use crate::quantity::relation::{Relation, value, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    Relation::sum(
        "the bay clear + one post width",
        &[(1, want(BayClear)), (1, want(PostWidth)), (-1, want(BayCentre))],
    ),
    // A limit told clear says nothing of centers: the two are facts of their own, and this goes one way.
    Relation::work(ClearMax, "the most on center less a post width", &[want(CentreMax), want(PostWidth)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
    Relation::count("one post more than bays", &[(1, want(PostCount)), (-1, want(BayCount))], -1),
    Relation::count("one bay more than posts between the ends", &[(1, want(BayCount)), (-1, want(PostsBetween))], -1),
    Relation::sum("the run is taken out to out where nobody said", &[(1, want(RunLength)), (-1, want(RunOverall))])
        .by("common practice, no source"),
    Relation::sum("out to out less a post", &[(1, want(RunOverall)), (-1, want(PostWidth)), (-1, want(RunCentre))]),
    Relation::sum("out to out less two posts", &[(1, want(RunOverall)), (-2, want(PostWidth)), (-1, want(RunClear))]),
    Relation::product("bays times their spacing", RunCentre, BayCentre, BayCount),
    Relation::product("bolts a post times posts", BoltCount, BoltsPerPost, PostCount),
    Relation::work(
        BayCount,
        "the fewest bays that pass no limit on center",
        &[want(RunCentre), want(CentreMax)],
        |a| fewest_of(a.q(0), a.q(1)),
    ),
    Relation::work(
        BayCount,
        "the fewest bays that pass no limit face to face",
        &[want(RunCentre), want(ClearMax), want(PostWidth)],
        |a| fewest_of(a.q(0), a.q(1) + a.q(2)),
    ),
    Relation::work(PostMark, "the spacing times the bays before it", &[want(BayCentre), want(Nth)], |a| {
        Some(Value::Length(a.length(0) * (a.n(1) - 1)))
    }),
    Relation::work(Miter, "half the turn", &[want(Turn)], |a| value(Miter, a.q(0) / Ratio::from_integer(2), false)),
    Relation::work(CornerGap, "the hold-back times the square root of 2: across the corner", &[want(HoldBack)], |a| {
        Length::diagonal(a.length(0), a.length(0)).map(Value::Length)
    }),
];

fn fewest_of(run: Q, most: Q) -> Option<Value> {
    let zero = Ratio::from_integer(0);
    if most > zero && run > zero { up(over(run, most)?) } else { None }
}
