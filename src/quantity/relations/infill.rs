//! Balusters in an opening.

use super::whole::{over, up};
use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId::{
    BalusterCount, BalusterTotal, BalusterWidth, BayClear, BayCount, EndGap, Gap, Mark, Nth, PerBay, PerFoot, Pitch,
    SpaceCount,
};
use crate::quantity::relation::{Args, Relation, value, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
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
    Relation::sum("the gap and one baluster", &[(1, want(Gap)), (1, want(BalusterWidth)), (-1, want(Pitch))]),
    Relation::count("one gap more than balusters", &[(1, want(SpaceCount)), (-1, want(BalusterCount))], -1),
    Relation::work(PerFoot, "a foot over the spacing", &[want(Pitch)], |a| {
        value(PerFoot, over(Ratio::from_integer(12), a.q(0))?, false)
    }),
    Relation::work(Pitch, "a foot over the balusters in it", &[want(PerFoot)], |a| {
        value(Pitch, over(Ratio::from_integer(12), a.q(0))?, false)
    }),
    Relation::product("balusters a bay times bays", BalusterTotal, PerBay, BayCount),
    Relation::sum("the balusters of a bay", &[(1, want(PerBay)), (-1, want(BalusterCount))]),
    Relation::work(Mark, "gaps and balusters before it", &[want(Gap), want(BalusterWidth), want(Nth)], |a| {
        Some(Value::Length(a.length(0) * a.n(2) + a.length(1) * (a.n(2) - 1)))
    }),
    Relation::work(
        EndGap,
        "half of what whole spacings leave",
        &[want(BayClear), want(BalusterCount), want(BalusterWidth), want(Pitch)],
        |a| {
            let rest = a.length(0) - a.length(3) * (a.n(1) - 1) - a.length(2);
            (a.n(1) > 0 && rest >= Length::ZERO).then(|| Value::Length(rest / 2))
        },
    ),
];

fn gap(a: &Args) -> Option<Value> {
    let rest = a.length(0) - a.length(2) * a.n(1);
    (rest.is_positive()).then(|| Value::Length(rest / (a.n(1) + 1)))
}
