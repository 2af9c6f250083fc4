//! Sticks, pieces and money.

use crate::figure::Value;
use crate::measure::{Length, Q};
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
        |a| count((a.q(0) + a.q(2)) / nonzero(a.q(1) + a.q(2))?, false),
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
        |a| count(a.q(0) / nonzero(a.q(1))?, true),
    ),
    Relation::work(
        PieceCountExtra,
        "the pieces, the waste on them, and the spares",
        &[want(PieceCount), told(Waste), told(Spares)],
        |a| {
            let hundred = Ratio::from_integer(100);
            count(a.q(0) * (hundred + a.q(1)) / hundred + a.q(2), true)
        },
    ),
    Relation::product("pieces times their length", Lineal, PieceLength, PieceCount),
    Relation::product("sticks times the price of one", Cost, Price, StickCount),
    Relation::work(Cost, "feet times the price of a foot", &[want(Lineal), want(PricePerFoot)], |a| {
        value(Cost, a.q(0) / Ratio::from_integer(12) * a.q(1), false)
    }),
];

fn nonzero(q: Q) -> Option<Q> {
    Some(q).filter(|q| *q != Ratio::from_integer(0))
}

fn count(q: Q, up: bool) -> Option<Value> {
    let whole = if up { q.ceil() } else { q.floor() };
    u64::try_from(whole.to_integer()).ok().map(Value::Count)
}
