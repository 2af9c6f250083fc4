//! A flight, and the opening it hangs in.

use super::whole::{over, up};
use crate::figure::{Unit, Value};
use crate::measure::{Length, arctan_degrees, cosine, tangent};
use crate::quantity::RowId::{
    Angle, BalusterLength, BalusterWidth, BevelDrop, Fall, FallOver, Gap, Grade, HandrailLength, HandrailPast,
    HandrailRisers, LandingUp, LevelDrop, LongSide, PerTread, Pitch, PostWidth, RakeDrop, RakeLength, RakeRun,
    RampLength, RampRise, RampRun, RampSlope, Recess, Rise, RiserMost, Risers, Slope, SlopeGap, SquareGap,
    StairBalusters, StairClear, StairGap, StairPostWidth, StairWidth, StairsPast, StepSlope, TotalRise, TotalRun,
    Tread, Treads,
};
use crate::quantity::relation::{Args, Relation, also, given, told, value, want};

pub(super) const RELATIONS: &[Relation] = &[
    Relation::product("risers x riser", TotalRise, Rise, Risers),
    Relation::product("treads x tread", TotalRun, Tread, Treads),
    Relation::count(
        "one riser more than treads: hung one riser below the decking",
        &[(1, want(Risers)), (-1, want(Treads))],
        -1,
    )
    .by("common practice, no source"),
    Relation::work(HandrailRisers, "every riser counts", &[want(Risers)], |a| up(a.q(0))),
    Relation::sum("the deck's height above the ground at the stairs' foot", &[(1, want(Grade)), (-1, want(TotalRise))]),
    // Top tread flush or one riser down: each tread told is one step of the slope.
    Relation::work(
        Slope,
        "treads x the root of the riser squared + the tread squared",
        &[given(Treads), want(Rise), want(Tread)],
        |a| Length::diagonal(a.length(1), a.length(2)).map(|step| Value::Length(step * a.n(0))),
    ),
    Relation::work(
        Slope,
        "the nosing line: the square root of the rise less one riser squared, and the run squared",
        &[want(TotalRise), want(Rise), want(TotalRun), also(Risers), also(Treads)],
        |a| {
            // Of as many treads as risers the run goes a step further than the rise.
            let hung = a.n(3) == 0 || a.n(4) == 0 || a.n(3) == a.n(4) + 1;
            Length::diagonal(a.length(0) - a.length(1), a.length(2)).filter(|_| hung).map(Value::Length)
        },
    ),
    Relation::work(Angle, "the angle whose tangent is riser over tread", &[want(Rise), want(Tread)], angle),
    Relation::work(Angle, "the angle whose tangent is rise over run", &[want(TotalRise), want(TotalRun)], angle),
    Relation::sum(
        "the stair opening less a post at each side",
        &[(1, want(StairWidth)), (-2, want(StairPostWidth)), (-1, want(StairClear))],
    ),
    Relation::work(StairPostWidth, "stair posts are as wide as the others", &[given(PostWidth)], |a| {
        Some(Value::Length(a.length(0)))
    })
    .by("common practice, no source"),
    Relation::work(Risers, "the fewest that are no higher than the most", &[want(TotalRise), given(RiserMost)], |a| {
        up(over(a.q(0), a.q(1))?)
    }),
    Relation::work(TotalRise, "the drop from level to level", &[given(LevelDrop)], |a| {
        Some(Value::Length(a.length(0)))
    }),
    Relation::work(
        TotalRise,
        "the deck above the ground at its edge, and what the ground falls from there",
        &[given(Grade), given(Fall), told(FallOver)],
        |a| {
            // A fall over a distance is a slope: how far out the stairs land is another matter.
            a.length(2).is_zero().then(|| Value::Length(a.length(0) + a.length(1)))
        },
    ),
    Relation::work(
        TotalRise,
        "the deck above the ground less the landing above it",
        &[given(Grade), given(LandingUp)],
        |a| Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1)),
    ),
    Relation::sum("the total run less the recess", &[(1, want(TotalRun)), (-1, want(Recess)), (-1, want(StairsPast))]),
    Relation::work(StepSlope, "the root of the riser squared + the tread squared", &[want(Rise), want(Tread)], hypot),
    Relation::work(
        RakeLength,
        "the root of the rise squared + the run squared",
        &[want(TotalRise), want(TotalRun)],
        hypot,
    ),
    Relation::work(RakeDrop, "the level distance x riser / tread", &[given(RakeRun), want(Rise), want(Tread)], |a| {
        a.length(0).times(a.length(1).ratio(a.length(2))?).map(Value::Length)
    }),
    Relation::work(BevelDrop, "the baluster x riser / tread", &[want(BalusterWidth), want(Rise), want(Tread)], |a| {
        a.length(0).times(a.length(1).ratio(a.length(2))?).map(Value::Length)
    }),
    Relation::work(BevelDrop, "the baluster x the tangent of the angle", &[want(BalusterWidth), given(Angle)], |a| {
        a.length(0).times(tangent(a.q(1))?).map(|l| Value::Length(l.inexact()))
    }),
    Relation::sum(
        "the length along the rise and run, and what goes past the nosings",
        &[(1, want(RakeLength)), (1, want(HandrailPast)), (-1, want(HandrailLength))],
    ),
    Relation::sum(
        "the short side and the bevel",
        &[(1, want(BalusterLength)), (1, want(BevelDrop)), (-1, want(LongSide))],
    ),
    Relation::work(
        StairGap,
        "a tread over its balusters, less one",
        &[want(Tread), given(PerTread), want(BalusterWidth)],
        |a| {
            let gap = over(a.q(0), a.q(1))? - a.q(2);
            value(StairGap, gap, false)
        },
    ),
    Relation::work(
        RampLength,
        "the root of the ramp's rise squared + its run squared",
        &[want(RampRise), want(RampRun)],
        hypot,
    ),
    Relation::product("its rise times the run to it", RampRun, RampRise, RampSlope),
    Relation::work(PerTread, "the fewest to a tread at that spacing", &[want(Tread), want(Pitch)], |a| {
        up(over(a.q(0), a.q(1))?)
    }),
    Relation::product("balusters a tread times treads", StairBalusters, PerTread, Treads),
    Relation::work(SlopeGap, "the level gap over the cosine of the angle", &[given(Gap), given(Angle)], |a| {
        a.length(0).over(cosine(a.q(1))?).map(|l| Value::Length(l.inexact()))
    }),
    Relation::work(
        SquareGap,
        "the gap along the slope x the tread over the slope of a step",
        &[given(SlopeGap), want(Rise), want(Tread)],
        |a| {
            let step = Length::diagonal(a.length(1), a.length(2))?;
            a.length(0).times(a.length(2).ratio(step)?).map(|l| Value::Length(l.inexact()))
        },
    ),
];

fn hypot(a: &Args) -> Option<Value> {
    Length::diagonal(a.length(0), a.length(1)).map(Value::Length)
}

fn angle(a: &Args) -> Option<Value> {
    arctan_degrees(over(a.q(0), a.q(1))?).map(|d| Value::Quantity(d, Unit::Degrees))
}
