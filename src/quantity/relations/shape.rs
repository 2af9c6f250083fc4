//! The deck's sides, the guard on them and what openings leave of it.

use super::whole::over;
use crate::figure::{Unit, Value};
use crate::measure::{Length, sine, tangent};
use crate::quantity::RowId::{
    AcrossFlats, AcrossPoints, AllAround, BayCount, BlockLength, BumpOut, DeckAlong, DeckDiagonal, DeckOut, DeckSide,
    FacetCount, Flank, GateOpening, GateWidth, GuardTotal, Joists, KeptSides, Landing, LandingWide, Offset, PostCount,
    PostWidth, RunClear, RunLength, StairCount, StairWidth, Turn,
};
use crate::quantity::relation::{Args, Relation, also, every, follows, given, want};
use crate::solve::joist_thick;
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    // What adds up every opening said stands before what takes one for all.
    Relation::work(
        GuardTotal,
        "all the runs and a bump-out's two sides, less every opening for stairs and the gate",
        &[every(RunLength), every(StairWidth), also(GateWidth), also(BumpOut)],
        |a| left(a.length(0) + a.length(3) * 2, a.length(1) + a.length(2)),
    ),
    Relation::work(
        GuardTotal,
        "the run less every opening for stairs and the gate",
        &[given(RunLength), every(StairWidth), also(GateWidth)],
        |a| left(a.length(0), a.length(1) + a.length(2)),
    ),
    Relation::work(
        GuardTotal,
        "the deck's edge off the house and a bump-out's two sides, less every opening for stairs and the gate",
        &[given(DeckAlong), given(DeckOut), every(StairWidth), also(GateWidth), also(KeptSides), also(BumpOut)],
        |a| left(edge(a, a.n(4), a.length(5))?, a.length(2) + a.length(3)),
    ),
    Relation::work(
        GuardTotal,
        "all the runs and a bump-out's two sides, less the openings for stairs and gates",
        &[every(RunLength), also(StairCount), also(StairWidth), also(GateWidth), also(BumpOut)],
        |a| less_openings(a.length(0) + a.length(4) * 2, a),
    ),
    Relation::work(
        GuardTotal,
        "the run on each of the sides alike and a bump-out's two sides, less the openings for stairs and gates",
        &[given(RunLength), also(StairCount), also(StairWidth), also(GateWidth), also(KeptSides), also(BumpOut)],
        |a| less_openings(a.length(0) * a.n(4).max(1) + a.length(5) * 2, a),
    ),
    Relation::work(
        GuardTotal,
        "the deck's edge off the house and a bump-out's two sides, less the openings for stairs and gates",
        &[
            given(DeckAlong),
            given(DeckOut),
            also(StairCount),
            also(StairWidth),
            also(GateWidth),
            also(KeptSides),
            also(BumpOut),
        ],
        |a| less_openings(edge(a, a.n(5), a.length(6))?, &Args(a.0[1..].to_vec())),
    ),
    Relation::work(
        GuardTotal,
        "the landing on each of its open sides",
        &[given(Landing), also(LandingWide), given(KeptSides)],
        |a| {
            let square = a.length(1).is_zero() || a.length(1) == a.length(0);
            (square && a.n(2) > 0).then(|| Value::Length(a.length(0) * a.n(2)))
        },
    ),
    Relation::work(RunLength, "the guard in all less the other runs", &[given(GuardTotal), every(RunLength)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
    Relation::work(
        RunLength,
        "the guard in all over the sides, all alike",
        &[given(GuardTotal), given(KeptSides), also(BayCount), also(PostCount)],
        // Bays and posts told with all of the guard are not those of one side.
        |a| (a.n(1) > 0 && a.n(2) == 0 && a.n(3) == 0).then(|| Value::Length(a.length(0) / a.n(1))),
    ),
    Relation::work(
        Flank,
        "the run less the stair opening and what is before it",
        &[given(RunLength), given(StairWidth), given(Offset), also(StairCount)],
        rest,
    ),
    Relation::work(
        Flank,
        "the run clear less what is before the stairs, a post on each side of them, and their opening",
        &[given(RunClear), given(StairWidth), given(Offset), want(PostWidth), also(StairCount)],
        |a| {
            let left = a.length(0) - a.length(1) - a.length(2) - a.length(3) * 2;
            (a.n(4) <= 1 && left >= Length::ZERO).then_some(Value::Length(left))
        },
    ),
    Relation::work(
        Flank,
        "the run less the gate and what is before it",
        &[given(RunLength), follows(GateOpening), given(Offset), also(StairCount)],
        rest,
    ),
    Relation::work(
        Flank,
        "the run less the stair opening and the guard on its other side",
        &[given(RunLength), given(StairWidth), given(Flank)],
        rest,
    ),
    Relation::work(StairWidth, "the run less the guard on both sides", &[given(RunLength), every(Flank)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
    Relation::work(AllAround, "both sides, twice", &[want(DeckAlong), want(DeckOut)], |a| {
        Some(Value::Length((a.length(0) + a.length(1)) * 2))
    }),
    Relation::product("its sides, all alike", AllAround, DeckSide, FacetCount),
    Relation::product("the guard over its sides, all alike", GuardTotal, DeckSide, FacetCount),
    Relation::work(DeckDiagonal, "the root of along squared + out squared", &[want(DeckAlong), want(DeckOut)], |a| {
        Length::diagonal(a.length(0), a.length(1)).map(Value::Length)
    }),
    Relation::work(
        DeckSide,
        "across the flats x the tangent of 180 degrees over the sides",
        &[given(AcrossFlats), want(FacetCount)],
        |a| a.length(0).times(tangent(part(a)?)?).map(|l| Value::Length(l.inexact())),
    ),
    Relation::work(
        DeckSide,
        "across the points x the sine of 180 degrees over the sides",
        &[given(AcrossPoints), want(FacetCount)],
        |a| a.length(0).times(sine(part(a)?)?).map(|l| Value::Length(l.inexact())),
    ),
    Relation::work(
        AcrossFlats,
        "a side over the tangent of 180 degrees over the sides",
        &[want(DeckSide), want(FacetCount)],
        |a| a.length(0).over(tangent(part(a)?)?).map(|l| Value::Length(l.inexact())),
    ),
    Relation::work(Turn, "360 degrees over the sides", &[given(FacetCount)], |a| {
        Some(Value::Quantity(over(Ratio::from_integer(360), a.q(0))?, Unit::Degrees))
    }),
    Relation::work(BlockLength, "the joist spacing less a joist", &[want(Joists)], |a| {
        let l = a.length(0) - joist_thick().as_length()?;
        l.is_positive().then_some(Value::Length(l))
    }),
];

/// Half the angle a side takes, seen from the middle of a shape of so many.
fn part(a: &Args) -> Option<crate::measure::Q> {
    over(Ratio::from_integer(180), a.q(1))
}

/// The edge of a deck along and out, off the house or all around, with what a bump-out adds; `None` where it is not said which sides.
fn edge(a: &Args, sides: i64, bump: Length) -> Option<Length> {
    let edge = a.length(0) + a.length(1) * 2 + bump * 2;
    match sides {
        0 | 3 => Some(edge),
        4 => Some(edge + a.length(0)),
        _ => None,
    }
}

/// What stairs, each alike, and a gate leave of so much guard.
fn less_openings(all: Length, a: &Args) -> Option<Value> {
    left(all, a.length(2) * a.n(1).max(1) + a.length(3))
}

fn left(all: Length, open: Length) -> Option<Value> {
    (all > open).then(|| Value::Length(all - open))
}

/// Of one opening: several may stand between.
fn rest(a: &Args) -> Option<Value> {
    if a.n(3) > 1 {
        return None;
    }
    let left = a.length(0) - a.length(1) - a.length(2);
    (left >= Length::ZERO).then_some(Value::Length(left))
}
