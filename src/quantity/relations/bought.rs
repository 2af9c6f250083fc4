//! Packs, screws, washers and what it all weighs.

use super::whole::{down, each, extra, over, up};
use crate::quantity::RowId::{
    BalusterCount, BalusterTotal, BoltCount, BoltsPerPost, Lineal, Packs, PerPack, PieceCount, PostCount, RailCount,
    Screws, ScrewsPer, ScrewsPerEnd, Spares, Washers, WashersPerPost, Waste, Weight, WeightEach, WeightFoot,
};
use crate::quantity::relation::{Relation, given, told, value, want};
use num_rational::Ratio;

/// Every one of a part so heavy, or with so much to it.
macro_rules! times {
    ($gives:ident, $says:literal, $each:ident, $count:expr) => {
        Relation::work($gives, $says, &[given($each), $count], |a| value($gives, a.q(0) * a.q(1), false))
    };
}

pub(super) const RELATIONS: &[Relation] = &[
    Relation::work(
        Packs,
        "the balusters over those of a pack",
        &[given(BalusterCount), told(Waste), told(Spares), given(PerPack)],
        each,
    ),
    Relation::work(
        Packs,
        "one for a post, over those of a pack",
        &[given(PostCount), told(Waste), told(Spares), given(PerPack)],
        each,
    ),
    Relation::work(
        Packs,
        "the pieces over those of a pack",
        &[given(PieceCount), told(Waste), told(Spares), given(PerPack)],
        each,
    ),
    Relation::work(
        Packs,
        "the bolts over those of a pack",
        &[given(BoltCount), told(Waste), told(Spares), given(PerPack)],
        each,
    ),
    Relation::work(
        Packs,
        "the screws over those of a pack",
        &[want(Screws), told(Waste), told(Spares), given(PerPack)],
        each,
    ),
    Relation::work(
        PostCount,
        "the whole posts a pack of bolts does, bolts a post for each",
        &[given(PerPack), given(BoltsPerPost)],
        |a| down(over(a.q(0), a.q(1))?),
    ),
    times!(Screws, "screws a baluster times balusters", ScrewsPer, given(BalusterCount)),
    times!(Screws, "screws a baluster times balusters in all", ScrewsPer, want(BalusterTotal)),
    Relation::work(
        Screws,
        "screws a rail end, at two ends of every rail",
        &[given(ScrewsPerEnd), want(RailCount)],
        |a| up(a.q(0) * a.q(1) * Ratio::from_integer(2)),
    ),
    times!(Washers, "washers a post times posts", WashersPerPost, want(PostCount)),
    Relation::work(Screws, "the screws and the waste on them", &[given(Screws), given(Waste)], |a| {
        up(extra(a.q(0), a.q(1), Ratio::from_integer(0)))
    }),
    times!(Weight, "pounds apiece times balusters", WeightEach, given(BalusterCount)),
    times!(Weight, "pounds apiece times posts", WeightEach, given(PostCount)),
    times!(Weight, "pounds apiece times pieces", WeightEach, given(PieceCount)),
    Relation::work(Weight, "pounds a foot times the feet", &[given(WeightFoot), want(Lineal)], |a| {
        value(Weight, a.q(0) * a.q(1) / Ratio::from_integer(12), false)
    }),
];
