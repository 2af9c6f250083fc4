//! The guard's height, what stands in it, and the ground below.

use crate::figure::Value;
use crate::limits::GUARD_REACH;
use crate::measure::Length;
use crate::quantity::RowId::{
    BalusterLength, BottomRailTall, BottomTop, Cap, DeckFall, DeckOut, Decking, Drop, Fall, FallOver, FallRate,
    FallWithin, FarUnder, GapUnder, Grade, GradeFar, HeightTop, LaidOver, PanelTall, RailsApart, RailsClear,
    RimBottomUp, RimTall, RimTopUp, TopRailTall, TopUnder, TopUp,
};
use crate::quantity::relation::{Relation, given, told, want};

const BALL: &str = "IRC R312.1.1 (2018, 2021); R321.1.1 (2024)";

pub(super) const RELATIONS: &[Relation] = &[
    Relation::sum(
        "the height above ground and the fall within 36 in. of the edge",
        &[(1, told(FallWithin)), (1, want(Grade)), (-1, want(Drop))],
    )
    .by(BALL),
    Relation::work(
        FallWithin,
        "what the ground falls over the 36 in. out from the edge, of the fall told and the distance it is told over",
        &[want(Fall), want(FallOver)],
        |a| {
            // A fall is a slope: 1 1/2 in a foot is 4 1/2 over the three feet that count, and 12 in 10 ft is 3 3/5.
            let by = a.length(0).times(GUARD_REACH.length().ratio(a.length(1))?)?;
            // Ground that rises makes no drop less: what is below the edge itself stays as deep.
            Some(Value::Length(by.max(Length::ZERO)))
        },
    )
    .by(BALL),
    Relation::work(
        Drop,
        "the height above ground and all that the ground falls from there: nobody says over how far",
        &[want(Grade), given(Fall), told(FallOver), told(FallWithin)],
        |a| {
            // Ground that rises makes no drop less.
            let falls = a.length(1).max(Length::ZERO);
            (a.length(2).is_zero() && a.length(3).is_zero()).then(|| Value::Length(a.length(0) + falls))
        },
    )
    .by(BALL),
    Relation::work(FallRate, "the fall over the distance, for a foot of it", &[want(Fall), want(FallOver)], |a| {
        a.length(0).times(Length::inches(12).ratio(a.length(1))?).map(Value::Length)
    }),
    Relation::work(Fall, "the fall in a foot, for each foot", &[given(FallRate), given(FallOver)], |a| {
        a.length(0).times(a.length(1).ratio(Length::inches(12))?).map(Value::Length)
    }),
    Relation::sum(
        "the height and the deck's above ground",
        &[(1, want(HeightTop)), (1, want(Grade)), (-1, want(TopUp))],
    ),
    Relation::sum("the rim's top and the decking", &[(1, want(RimTopUp)), (1, want(Decking)), (-1, want(Grade))]),
    Relation::sum(
        "the rim's bottom and its height",
        &[(1, want(RimBottomUp)), (1, want(RimTall)), (-1, want(RimTopUp))],
    ),
    Relation::work(
        FarUnder,
        "the gap under, and what the deck falls over its depth: the rail is level",
        &[want(GapUnder), given(DeckFall), want(DeckOut)],
        |a| Some(Value::Length(a.length(0) + a.length(1).times(a.length(2).ratio(Length::inches(12))?)?)),
    ),
    Relation::work(
        HeightTop,
        "what it was less what is laid over the decking",
        &[given(HeightTop), given(LaidOver)],
        |a| Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1)),
    ),
    Relation::sum(
        "the gap under, the panel, and a cap on it",
        &[(1, want(GapUnder)), (1, want(PanelTall)), (1, told(Cap)), (-1, want(HeightTop))],
    ),
    Relation::sum(
        "the two rails and the clear between them",
        &[(1, want(TopRailTall)), (1, want(RailsClear)), (1, want(BottomRailTall)), (-1, want(PanelTall))],
    ),
    Relation::sum(
        "the height less the cap, the rails and the gap under",
        &[
            (1, want(HeightTop)),
            (-1, told(Cap)),
            (-1, want(TopRailTall)),
            (-1, want(BottomRailTall)),
            (-1, want(GapUnder)),
            (-1, want(RailsClear)),
        ],
    ),
    Relation::sum(
        "the height less the cap and the top rail",
        &[(1, want(HeightTop)), (-1, told(Cap)), (-1, want(TopRailTall)), (-1, want(TopUnder))],
    ),
    Relation::sum(
        "the gap under and the bottom rail",
        &[(1, told(GapUnder)), (1, want(BottomRailTall)), (-1, want(BottomTop))],
    ),
    Relation::sum(
        "from the top of the bottom rail to the underside of the top rail",
        &[(1, want(TopUnder)), (-1, want(BottomTop)), (-1, want(BalusterLength))],
    ),
    Relation::sum(
        "the rails' tops apart: the height less the gap under, the bottom rail and the cap",
        &[(1, want(HeightTop)), (-1, told(Cap)), (-1, want(BottomTop)), (-1, want(RailsApart))],
    ),
    Relation::work(
        GradeFar,
        "the height above ground, and what the ground falls over the deck's depth",
        &[given(Grade), given(FallRate), given(DeckOut)],
        |a| Some(Value::Length(a.length(0) + a.length(1).times(a.length(2).ratio(Length::inches(12))?)?)),
    ),
    Relation::work(
        GradeFar,
        "the height above ground, and what the ground falls from there",
        &[want(Grade), given(Fall)],
        |a| Some(Value::Length(a.length(0) + a.length(1))),
    ),
];
