//! Statics of the push at a guard's top.

use crate::figure::{Unit, Value};
use crate::measure::Q;
use crate::quantity::RowId::{
    BayCentre, BayLoad, BoltPull, BoltPush, BoltUpper, BoltsApart, HeightTop, LineLoad, PostArm, Push,
};
use crate::quantity::relation::{Relation, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    Relation::sum(
        "the height to the top + the upper bolt below the decking's top",
        &[(1, want(HeightTop)), (1, want(BoltUpper)), (-1, want(PostArm))],
    ),
    Relation::work(BayLoad, "the load on a foot times the bay's feet", &[want(LineLoad), want(BayCentre)], |a| {
        Some(Value::Quantity(a.q(0) * a.q(1) / Ratio::from_integer(12), Unit::Pounds))
    }),
    Relation::work(
        BoltPull,
        "the push at the top x (the arm of the push at the upper bolt + bolts apart) / bolts apart: its arm to the lower bolt",
        &[want(Push), want(PostArm), want(BoltsApart)],
        |a| lever(a.q(0), a.q(1) + a.q(2), a.q(2)),
    ),
    Relation::work(
        BoltPush,
        "the push at the top x the arm of the push at the upper bolt / bolts apart",
        &[want(Push), want(PostArm), want(BoltsApart)],
        |a| lever(a.q(0), a.q(1), a.q(2)),
    ),
];

fn lever(push: Q, arm: Q, apart: Q) -> Option<Value> {
    (apart > Ratio::from_integer(0)).then(|| Value::Quantity(push * arm / apart, Unit::Pounds))
}
