//! What a stick must be long enough for. One way only: how long a stick is does not follow from what is cut of it.

use crate::figure::Value;
use crate::quantity::RowId::{
    BalusterCount, BalusterLength, DeckAlong, DeckDiagonal, DeckOut, Kerf, PieceCount, PieceLength, PostCount,
    PostLength, RailCount, RailLength, RunClear, RunLength, StickNeeded,
};
use crate::quantity::relation::{Relation, also, given, want};

/// A stick for so many of a part.
macro_rules! of_part {
    ($count:ident, $length:ident) => {
        Relation::work(
            StickNeeded,
            "the pieces, and a kerf between two of them",
            &[given($length), given($count), want(Kerf)],
            |a| (a.n(1) > 0).then(|| Value::Length(a.length(0) * a.n(1) + a.length(2) * (a.n(1) - 1))),
        )
    };
}

pub(super) const RELATIONS: &[Relation] = &[
    Relation::work(
        StickNeeded,
        "the pieces, and a kerf between two of them",
        &[want(PieceLength), want(PieceCount), want(Kerf)],
        |a| (a.n(1) > 0).then(|| Value::Length(a.length(0) * a.n(1) + a.length(2) * (a.n(1) - 1))),
    ),
    of_part!(PostCount, PostLength),
    of_part!(BalusterCount, BalusterLength),
    of_part!(RailCount, RailLength),
    // Where the line counts several pieces, one of them is no answer.
    Relation::work(StickNeeded, "one piece", &[want(PieceLength), also(PieceCount)], |a| {
        (a.n(1) <= 1).then(|| Value::Length(a.length(0)))
    }),
    Relation::work(StickNeeded, "the bays and the posts between them, in one piece", &[want(RunClear)], |a| {
        Some(Value::Length(a.length(0)))
    }),
    Relation::work(StickNeeded, "the run in one piece", &[want(RunLength)], |a| Some(Value::Length(a.length(0)))),
    Relation::work(
        DeckDiagonal,
        "the root of the deck along the house squared + the deck out from it squared",
        &[want(DeckAlong), want(DeckOut)],
        |a| crate::measure::Length::diagonal(a.length(0), a.length(1)).map(Value::Length),
    ),
];
