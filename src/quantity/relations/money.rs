//! What it costs. Markup is on the goods, tax on both, labor on top untaxed, as the program's own bill adds it up.

use super::whole::over;
use crate::figure::Value;
use crate::measure::Q;
use crate::quantity::RowId::{
    BalusterCount, BayCount, Cost, Discount, Goods, GuardTotal, Labor, Lineal, Markup, Packs, PerBay, PerFoot, PerPack,
    PieceCount, PostCount, Price, PricePerFoot, RailCount, StickCount, Stock, Tax, Waste,
};
use crate::quantity::relation::{Args, Relation, every, follows, given, told, value, want};
use num_rational::Ratio;

/// So many of a part at a price apiece, and the price back out of it.
macro_rules! each {
    ($says:literal, $count:expr) => {
        Relation::work(Goods, $says, &[given(Price), $count], |a| value(Goods, a.q(0) * a.q(1), false))
    };
}

macro_rules! one {
    ($says:literal, $count:ident) => {
        Relation::work(Price, $says, &[given(Cost), given($count)], |a| value(Price, over(a.q(0), a.q(1))?, false))
    };
}

pub(super) const RELATIONS: &[Relation] = &[
    // What adds up every price said stands before what takes one for all.
    Relation::work(Goods, "each count times the price said with it", &[every(Price)], |a| value(Goods, a.q(0), false)),
    each!("sticks times the price of one", given(StickCount)),
    Relation::work(Goods, "sticks times the price of one", &[given(Price), want(StickCount), given(Stock)], |a| {
        value(Goods, a.q(0) * a.q(1), false)
    }),
    each!("balusters times the price of one", given(BalusterCount)),
    Relation::work(
        Goods,
        "balusters a bay times bays times the price of one",
        &[given(Price), given(PerBay), follows(BayCount)],
        |a| value(Goods, a.q(0) * a.q(1) * a.q(2), false),
    ),
    Relation::work(
        Goods,
        "feet of guard times the balusters of a foot times the price of one",
        &[given(GuardTotal), given(PerFoot), given(Price)],
        |a| value(Goods, a.q(0) / twelve() * a.q(1) * a.q(2), false),
    ),
    each!("posts times the price of one", given(PostCount)),
    each!("rails times the price of one", given(RailCount)),
    each!("pieces times the price of one", given(PieceCount)),
    Relation::work(Goods, "packs times the price of one", &[given(Price), want(Packs), given(PerPack)], |a| {
        value(Goods, a.q(0) * a.q(1), false)
    }),
    one!("the cost over the sticks", StickCount),
    one!("the cost over the balusters", BalusterCount),
    one!("the cost over the posts", PostCount),
    one!("the cost over the pieces", PieceCount),
    Relation::work(
        Goods,
        "feet, and the waste on them, times the price of a foot",
        &[want(Lineal), told(Waste), want(PricePerFoot)],
        |a| value(Goods, a.q(0) / twelve() * percent(a.q(1)) * a.q(2), false),
    ),
    Relation::work(Goods, "feet of guard times the price of a foot", &[given(GuardTotal), given(PricePerFoot)], |a| {
        value(Goods, a.q(0) / twelve() * a.q(1), false)
    }),
    Relation::work(PricePerFoot, "the cost over the feet of guard", &[given(Cost), given(GuardTotal)], |a| {
        value(PricePerFoot, over(a.q(0) * twelve(), a.q(1))?, false)
    }),
    Relation::work(PricePerFoot, "the price of one over its feet", &[given(Price), given(Stock)], |a| {
        value(PricePerFoot, over(a.q(0) * twelve(), a.q(1))?, false)
    }),
    Relation::work(
        Cost,
        "the goods less the discount, the markup on them, the tax on both, and the labor",
        &[want(Goods), told(Discount), told(Markup), told(Tax), told(Labor)],
        bill,
    ),
];

fn twelve() -> Q {
    Ratio::from_integer(12)
}

fn percent(more: Q) -> Q {
    Ratio::from_integer(1) + more / Ratio::from_integer(100)
}

fn bill(a: &Args) -> Option<Value> {
    value(Cost, a.q(0) * percent(-a.q(1)) * percent(a.q(2)) * percent(a.q(3)) + a.q(4), false)
}
