//! The guard's height, what stands in it, and the ground below.

use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId::{
    BalusterLength, BottomRailTall, BottomTop, Cap, Drop, Fall, FallOver, FallRate, FallWithin, GapUnder, Grade,
    HeightTop, RailsApart, TopRailTall, TopUnder,
};
use crate::quantity::relation::{Relation, told, want};

/// How far out from the deck's edge the drop is looked for, in inches (IRC R312.1.1).
const REACH: i64 = 36;

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
            let out = Length::inches(REACH).min(a.length(1));
            // Ground that rises makes no drop less: what is below the edge itself stays as deep.
            let by = a.length(0).times(out.ratio(a.length(1))?)?;
            Some(Value::Length(by.max(Length::ZERO)))
        },
    )
    .by(BALL),
    Relation::work(FallRate, "the fall over the distance, for a foot of it", &[want(Fall), want(FallOver)], |a| {
        a.length(0).times(Length::inches(12).ratio(a.length(1))?).map(Value::Length)
    }),
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
];
