//! Sticks, pieces and what is left of them.
//!
//! What is counted and how long it is cut belong together: balusters are not cut as long as posts. So the parts a question gives are
//! taken from the question alone.

use super::whole::{down, each, extra, over, up};
use crate::figure::Value;
use crate::measure::{Length, Q};
use crate::quantity::RowId::{
    BalusterCount, BalusterLength, BalusterTotal, BayCount, GuardTotal, Kerf, LeftOver, Lineal, LinealExtra, PerStick,
    PieceCount, PieceCountExtra, PieceLength, PieceYield, PostCount, PostLength, RailCount, RailLength, RailsPerBay,
    RunLength, Scrap, Spares, StickCount, Stock, Waste,
};
use crate::quantity::relation::{Args, Relation, counted, every, follows, given, told, value, want};
use num_rational::Ratio;

/// Sticks for so many of a part cut so long.
macro_rules! sticks {
    ($count:expr, $length:expr) => {
        Relation::work(
            StickCount,
            "the pieces, the waste on them and the spares, over the whole pieces a stick gives, a kerf between two of them",
            &[$count, told(Waste), told(Spares), want(Stock), $length, want(Kerf)],
            |a| up(over(extra(a.q(0), a.q(1), a.q(2)), per_stick(a.q(3), a.q(4), a.q(5))?)?),
        )
    };
}

/// What a stick gives of a part cut so long, and what it leaves.
macro_rules! per_stick {
    ($length:ident) => {
        Relation::work(
            PerStick,
            "the whole pieces a stick gives, a kerf between two of them",
            &[want(Stock), given($length), want(Kerf)],
            |a| down(per_stick(a.q(0), a.q(1), a.q(2))?),
        )
    };
}

macro_rules! left_over {
    ($length:ident) => {
        Relation::work(
            LeftOver,
            "the stick less its pieces and a kerf behind each, the last where there is room for it",
            &[want(Stock), given($length), want(Kerf), want(PerStick)],
            left,
        )
    };
}

/// The stick to buy for so many of a part out of each.
macro_rules! bought_so_long {
    ($length:ident) => {
        Relation::work(
            Stock,
            "the pieces and a kerf between two of them, up to an even foot: sticks are sold so",
            &[given(PerStick), given($length), want(Kerf)],
            |a| even_feet(a.length(1) * a.n(0) + a.length(2) * (a.n(0) - 1)),
        )
        .by("common practice, no source")
    };
}

/// So many of a part, end to end.
macro_rules! lineal {
    ($says:literal, $count:expr, $length:expr) => {
        Relation::work(Lineal, $says, &[$count, $length], |a| Some(Value::Length(a.length(1) * a.n(0))))
    };
}

/// All lengths given of a part, each as often as it was counted, end to end.
macro_rules! every_length {
    ($length:ident) => {
        Relation::work(Lineal, "each length times its count, added up", &[counted($length)], |a| {
            Some(Value::Length(a.length(0)))
        })
    };
}

/// What of the sticks bought did not become pieces.
macro_rules! scrap {
    ($count:ident, $length:ident) => {
        Relation::work(
            Scrap,
            "the sticks' length less the pieces', over the sticks'",
            &[given(StickCount), given(Stock), given($count), given($length)],
            |a| {
                let bought = a.q(0) * a.q(1);
                value(Scrap, over((bought - a.q(2) * a.q(3)) * Ratio::from_integer(100), bought)?, false)
            },
        )
    };
}

pub(super) const RELATIONS: &[Relation] = &[
    Relation::work(
        PerStick,
        "the whole pieces a stick gives, a kerf between two of them",
        &[want(Stock), want(PieceLength), want(Kerf)],
        |a| down(per_stick(a.q(0), a.q(1), a.q(2))?),
    ),
    per_stick!(BalusterLength),
    per_stick!(PostLength),
    per_stick!(RailLength),
    Relation::work(
        LeftOver,
        "the stick less its pieces and a kerf behind each, the last where there is room for it",
        &[want(Stock), want(PieceLength), want(Kerf), want(PerStick)],
        left,
    ),
    Relation::work(
        LeftOver,
        "the sticks' length less the pieces'",
        &[given(StickCount), given(Stock), given(Lineal)],
        |a| Some(Value::Length(a.length(1) * a.n(0) - a.length(2))).filter(|_| a.length(1) * a.n(0) >= a.length(2)),
    ),
    bought_so_long!(PieceLength),
    bought_so_long!(BalusterLength),
    bought_so_long!(PostLength),
    bought_so_long!(RailLength),
    left_over!(BalusterLength),
    left_over!(PostLength),
    left_over!(RailLength),
    sticks!(given(PieceCount), given(PieceLength)),
    sticks!(given(BalusterCount), given(BalusterLength)),
    sticks!(want(BalusterTotal), given(BalusterLength)),
    sticks!(given(PostCount), given(PostLength)),
    sticks!(given(RailCount), given(RailLength)),
    Relation::work(
        StickCount,
        "rails a bay times bays, the waste on them and the spares, over the whole rails a stick gives",
        &[
            given(RailsPerBay),
            follows(BayCount),
            told(Waste),
            told(Spares),
            want(Stock),
            follows(RailLength),
            want(Kerf),
        ],
        |a| up(over(extra(a.q(0) * a.q(1), a.q(2), a.q(3)), per_stick(a.q(4), a.q(5), a.q(6))?)?),
    ),
    Relation::work(
        StickCount,
        "the pieces over the pieces of a stick",
        &[want(PieceCountExtra), want(PerStick)],
        |a| up(over(a.q(0), a.q(1))?),
    ),
    Relation::work(
        StickCount,
        "the balusters over those of a stick",
        &[given(BalusterCount), told(Waste), told(Spares), given(PerStick)],
        each,
    ),
    Relation::work(
        StickCount,
        "the posts over those of a stick",
        &[given(PostCount), told(Waste), told(Spares), given(PerStick)],
        each,
    ),
    Relation::work(
        StickCount,
        "the rails over those of a stick",
        &[given(RailCount), told(Waste), told(Spares), given(PerStick)],
        each,
    ),
    Relation::work(
        PieceCountExtra,
        "the pieces, the waste on them, and the spares",
        &[want(PieceCount), told(Waste), told(Spares)],
        |a| up(extra(a.q(0), a.q(1), a.q(2))),
    ),
    Relation::work(
        PieceCountExtra,
        "the balusters, the waste on them, and the spares",
        &[given(BalusterCount), told(Waste), told(Spares)],
        |a| up(extra(a.q(0), a.q(1), a.q(2))),
    ),
    Relation::product("rails a bay times bays", RailCount, RailsPerBay, BayCount),
    Relation::product("pieces times their length", Lineal, PieceLength, PieceCount),
    every_length!(PieceLength),
    every_length!(BalusterLength),
    every_length!(PostLength),
    every_length!(RailLength),
    scrap!(PieceCount, PieceLength),
    scrap!(BalusterCount, BalusterLength),
    scrap!(PostCount, PostLength),
    lineal!("balusters times their length", given(BalusterCount), given(BalusterLength)),
    Relation::work(Lineal, "one length along every run", &[every(RunLength)], |a| Some(Value::Length(a.length(0)))),
    Relation::work(LinealExtra, "the stock and the waste on it", &[want(Lineal), want(Waste)], |a| {
        value(LinealExtra, extra(a.q(0), a.q(1), Ratio::from_integer(0)), false)
    }),
    lineal!("posts times their length", given(PostCount), given(PostLength)),
    lineal!("rails a bay times the guard in all", given(RailsPerBay), given(GuardTotal)),
    Relation::work(
        Lineal,
        "rails a bay times bays times their length",
        &[given(RailsPerBay), follows(BayCount), follows(RailLength)],
        |a| Some(Value::Length(a.length(2) * (a.n(0) * a.n(1)))),
    ),
    Relation::work(
        PieceYield,
        "the sticks times the whole pieces of each",
        &[given(StickCount), want(PerStick)],
        |a| up(a.q(0) * a.q(1)),
    ),
];

/// A length up to the next even foot; `None` where there is none.
fn even_feet(l: Length) -> Option<Value> {
    let feet = l.ratio(Length::inches(24))?.ceil();
    l.is_positive().then(|| Length::inches(24).times(feet).map(Value::Length)).flatten()
}

/// The whole pieces a stick gives: one kerf less than pieces.
fn per_stick(stick: Q, piece: Q, kerf: Q) -> Option<Q> {
    over(stick + kerf, piece + kerf).map(|q| q.floor())
}

fn left(a: &Args) -> Option<Value> {
    let cut = a.length(0) - a.length(1) * a.n(3) - a.length(2) * (a.n(3) - 1);
    if cut < Length::ZERO { None } else { Some(Value::Length((cut - a.length(2)).max(Length::ZERO))) }
}
