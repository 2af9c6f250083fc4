//! A flight, and the opening it hangs in.

use super::whole::{over, up};
use crate::figure::{Unit, Value};
use crate::measure::{Length, arctan_degrees};
use crate::quantity::RowId::{
    Angle, Grade, PerTread, Pitch, Rise, Risers, Slope, StairBalusters, StairClear, StairPostWidth, StairWidth,
    TotalRise, TotalRun, Tread, Treads,
};
use crate::quantity::relation::{Args, Relation, want};

pub(super) const RELATIONS: &[Relation] = &[
    Relation::product("risers x riser", TotalRise, Rise, Risers),
    Relation::product("treads x tread", TotalRun, Tread, Treads),
    Relation::count(
        "one riser more than treads: hung one riser below the decking",
        &[(1, want(Risers)), (-1, want(Treads))],
        -1,
    )
    .by("common practice, no source"),
    Relation::sum("the deck's height above the ground at the stairs' foot", &[(1, want(Grade)), (-1, want(TotalRise))]),
    Relation::work(
        Slope,
        "the nosing line: the square root of the rise less one riser squared, and the run squared",
        &[want(TotalRise), want(Rise), want(TotalRun)],
        |a| Length::diagonal(a.length(0) - a.length(1), a.length(2)).map(Value::Length),
    ),
    Relation::work(Angle, "the angle whose tangent is riser over tread", &[want(Rise), want(Tread)], angle),
    Relation::work(Angle, "the angle whose tangent is rise over run", &[want(TotalRise), want(TotalRun)], angle),
    Relation::sum(
        "the stair opening less a post at each side",
        &[(1, want(StairWidth)), (-2, want(StairPostWidth)), (-1, want(StairClear))],
    ),
    Relation::work(PerTread, "the fewest to a tread at that spacing", &[want(Tread), want(Pitch)], |a| {
        up(over(a.q(0), a.q(1))?)
    }),
    Relation::product("balusters a tread times treads", StairBalusters, PerTread, Treads),
];

fn angle(a: &Args) -> Option<Value> {
    arctan_degrees(over(a.q(0), a.q(1))?).map(|d| Value::Quantity(d, Unit::Degrees))
}
