//! Balusters in an opening.

use super::whole::{over, up};
use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId::{
    BalusterCount, BalusterLeast, BalusterTotal, BalusterWidth, BayClear, BayCount, EndGap, FirstCentre, FirstGap, Gap,
    GapMax, Mark, MarkCentre, MarkFar, Nth, PerBay, PerFoot, PerStick, Pitch, SpaceCount, StickCount,
};
use crate::quantity::relation::{Args, Relation, counted, every, follows, given, value, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    // What takes balusters of several sizes stands before what takes one size for all.
    Relation::work(
        Gap,
        "the clear less the balusters of each size, over one gap more than balusters",
        &[want(BayClear), every(BalusterCount), counted(BalusterWidth)],
        |a| {
            let rest = a.length(0) - a.length(2);
            rest.is_positive().then(|| Value::Length(rest / (a.n(1) + 1)))
        },
    ),
    Relation::work(
        BalusterCount,
        "the sticks times the balusters of each",
        &[given(StickCount), given(PerStick)],
        |a| value(BalusterCount, a.q(0) * a.q(1), false),
    ),
    Relation::work(
        Gap,
        "the clear less the balusters, over one gap more than balusters",
        &[want(BayClear), want(BalusterCount), want(BalusterWidth)],
        gap,
    ),
    Relation::work(
        BayClear,
        "the balusters and one gap more than balusters",
        &[want(BalusterCount), want(BalusterWidth), want(Gap)],
        |a| Some(Value::Length(a.length(1) * a.n(0) + a.length(2) * (a.n(0) + 1))),
    ),
    Relation::work(
        BalusterWidth,
        "the clear less the gaps, over the balusters",
        &[want(BayClear), want(BalusterCount), want(Gap)],
        |a| {
            let rest = a.length(0) - a.length(2) * (a.n(1) + 1);
            (a.n(1) > 0 && rest.is_positive()).then(|| Value::Length(rest / a.n(1)))
        },
    ),
    Relation::work(
        BalusterCount,
        "the fewest that leave no gap wider than the one wanted",
        &[want(BayClear), want(BalusterWidth), want(Gap)],
        |a| up(over(a.q(0) - a.q(2), a.q(1) + a.q(2))?),
    ),
    Relation::work(
        Gap,
        "the clear less the first gap and the balusters, over the balusters: the others alike",
        &[want(BayClear), want(BalusterCount), want(BalusterWidth), given(FirstGap)],
        |a| {
            let rest = a.length(0) - a.length(3) - a.length(2) * a.n(1);
            (a.n(1) > 0 && rest.is_positive()).then(|| Value::Length(rest / a.n(1)))
        },
    ),
    Relation::sum("the gap and one baluster", &[(1, want(Gap)), (1, want(BalusterWidth)), (-1, want(Pitch))]),
    Relation::count("one gap more than balusters", &[(1, want(SpaceCount)), (-1, want(BalusterCount))], -1),
    Relation::work(PerFoot, "a foot over the spacing", &[want(Pitch)], |a| {
        value(PerFoot, over(Ratio::from_integer(12), a.q(0))?, false)
    }),
    Relation::work(Pitch, "a foot over the balusters in it", &[want(PerFoot)], |a| {
        value(Pitch, over(Ratio::from_integer(12), a.q(0))?, false)
    }),
    Relation::work(BalusterTotal, "balusters a bay times bays", &[follows(PerBay), follows(BayCount)], |a| {
        value(BalusterTotal, a.q(0) * a.q(1), false)
    }),
    Relation::work(PerBay, "the balusters in all over the bays", &[given(BalusterTotal), follows(BayCount)], |a| {
        value(PerBay, over(a.q(0), a.q(1))?, false)
    }),
    Relation::work(BayCount, "the balusters in all over those of a bay", &[given(BalusterTotal), given(PerBay)], |a| {
        value(BayCount, over(a.q(0), a.q(1))?, false)
    }),
    Relation::sum("the balusters of a bay", &[(1, want(PerBay)), (-1, want(BalusterCount))]),
    Relation::work(Mark, "gaps and balusters before it", &[want(Gap), want(BalusterWidth), want(Nth)], |a| {
        Some(Value::Length(a.length(0) * a.n(2) + a.length(1) * (a.n(2) - 1)))
    }),
    Relation::work(
        Mark,
        "the first gap, then a gap and a baluster for each before it",
        &[given(FirstGap), given(Gap), want(BalusterWidth), want(Nth)],
        |a| Some(Value::Length(a.length(0) + (a.length(1) + a.length(2)) * (a.n(3) - 1))),
    ),
    Relation::work(MarkCentre, "its near edge and half of it", &[want(Mark), want(BalusterWidth)], |a| {
        Some(Value::Length(a.length(0) + a.length(1) / 2))
    }),
    Relation::work(
        MarkCentre,
        "the first one's center and a spacing for each after it",
        &[given(FirstCentre), want(Pitch), want(Nth)],
        |a| Some(Value::Length(a.length(0) + a.length(1) * (a.n(2) - 1))),
    ),
    Relation::work(MarkFar, "its near edge and its width", &[want(Mark), want(BalusterWidth)], |a| {
        Some(Value::Length(a.length(0) + a.length(1)))
    }),
    Relation::sum(
        "the gap at the post and half a baluster",
        &[(2, want(FirstCentre)), (-2, want(EndGap)), (-1, want(BalusterWidth))],
    ),
    Relation::work(EndGap, "as wide as the others", &[want(Gap)], |a| Some(Value::Length(a.length(0))))
        .by("common practice, no source"),
    Relation::work(
        EndGap,
        "half of what whole spacings leave",
        &[want(BayClear), want(BalusterCount), want(BalusterWidth), want(Pitch)],
        |a| {
            let rest = a.length(0) - a.length(3) * (a.n(1) - 1) - a.length(2);
            (a.n(1) > 0 && rest >= Length::ZERO).then(|| Value::Length(rest / 2))
        },
    ),
    Relation::work(
        BalusterLeast,
        "the clear less a gap at the limit more than balusters, over the balusters",
        &[want(BayClear), want(BalusterCount), given(GapMax)],
        |a| {
            let rest = a.length(0) - a.length(2) * (a.n(1) + 1);
            (a.n(1) > 0 && rest.is_positive()).then(|| Value::Length(rest / a.n(1)))
        },
    ),
];

fn gap(a: &Args) -> Option<Value> {
    let rest = a.length(0) - a.length(2) * a.n(1);
    (rest.is_positive()).then(|| Value::Length(rest / (a.n(1) + 1)))
}
