//! Sticks, pieces and money.

use super::whole::{down, over, up};
use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId::{
    Cost, Kerf, LeftOver, Lineal, PerStick, PieceCount, PieceCountExtra, PieceLength, Price, PricePerFoot, Spares,
    StickCount, Stock, Waste,
};
use crate::quantity::relation::{Relation, told, value, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    Relation::work(
        PerStick,
        "the whole pieces a stick gives, a kerf between two of them",
        &[want(Stock), want(PieceLength), want(Kerf)],
        |a| down(over(a.q(0) + a.q(2), a.q(1) + a.q(2))?),
    ),
    Relation::work(
        LeftOver,
        "the stick less its pieces and a kerf behind each, the last where there is room for it",
        &[want(Stock), want(PieceLength), want(Kerf), want(PerStick)],
        |a| {
            let cut = a.length(0) - a.length(1) * a.n(3) - a.length(2) * (a.n(3) - 1);
            if cut < Length::ZERO { None } else { Some(Value::Length((cut - a.length(2)).max(Length::ZERO))) }
        },
    ),
    Relation::work(
        StickCount,
        "the pieces over the pieces of a stick",
        &[want(PieceCountExtra), want(PerStick)],
        |a| up(over(a.q(0), a.q(1))?),
    ),
    Relation::work(
        PieceCountExtra,
        "the pieces, the waste on them, and the spares",
        &[want(PieceCount), told(Waste), told(Spares)],
        |a| {
            let hundred = Ratio::from_integer(100);
            up(a.q(0) * (hundred + a.q(1)) / hundred + a.q(2))
        },
    ),
    Relation::product("pieces times their length", Lineal, PieceLength, PieceCount),
    Relation::product("sticks times the price of one", Cost, Price, StickCount),
    Relation::work(Cost, "feet times the price of a foot", &[want(Lineal), want(PricePerFoot)], |a| {
        value(Cost, a.q(0) / Ratio::from_integer(12) * a.q(1), false)
    }),
];
