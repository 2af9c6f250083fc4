//! A gate's opening and its leaf.

use crate::figure::Value;
use crate::measure::Length;
use crate::quantity::RowId::{
    BayCentre, BayClear, GapUnder, GateOpening, GateUnder, GateWidth, HeightTop, HingeGap, LatchGap, Leaf,
    LeafDiagonal, LeafHeight, Leaves, Line, MiddleGap, PostWidth, StairWidth, Stile,
};
use crate::quantity::relation::{Relation, given, told, want};

pub(super) const RELATIONS: &[Relation] = &[
    Relation::sum(
        "the gate opening less the hinge gap and the latch gap",
        &[(1, want(GateOpening)), (-1, want(HingeGap)), (-1, want(LatchGap)), (-1, want(Leaf))],
    ),
    Relation::sum("a gate's width is its opening between the jambs", &[(1, want(GateWidth)), (-1, want(GateOpening))])
        .by("common practice, no source"),
    Relation::work(
        Leaf,
        "the gate opening less the hinge gap at each jamb and the gap between the leaves, over the leaves",
        &[want(GateOpening), want(HingeGap), want(MiddleGap), want(Leaves)],
        |a| {
            let rest = a.length(0) - a.length(1) * 2 - a.length(2);
            (a.n(3) == 2 && rest.is_positive()).then(|| Value::Length(rest / 2))
        },
    ),
    Relation::sum(
        "the height to the top less the gap under the gate",
        &[(1, want(HeightTop)), (-1, want(GateUnder)), (-1, want(LeafHeight))],
    ),
    Relation::work(
        LeafHeight,
        "the height to the top less the gap under, as the guard beside it",
        &[want(HeightTop), want(GapUnder)],
        |a| Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1)),
    )
    .by("common practice, no source"),
    Relation::work(
        BayClear,
        "the gate leaf less a stile at each side: what its balusters stand in",
        &[given(Leaf), given(Stile)],
        |a| Some(Value::Length(a.length(0) - a.length(1) * 2)).filter(|_| a.length(0) > a.length(1) * 2),
    ),
    Relation::work(
        LeafDiagonal,
        "the root of the gate leaf squared + the leaf's height squared",
        &[want(Leaf), want(LeafHeight)],
        |a| Length::diagonal(a.length(0), a.length(1)).map(Value::Length),
    ),
    Relation::work(
        GateOpening,
        "the stair opening from decking to decking, less a post centered on the baluster line at each side of it",
        &[given(StairWidth), told(Line), want(PostWidth)],
        |a| {
            let clear = a.length(0) + a.length(1) * 2 - a.length(2);
            clear.is_positive().then_some(Value::Length(clear))
        },
    )
    .alone(),
    Relation::work(GateOpening, "the gate posts on center less a post", &[given(BayCentre), want(PostWidth)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
];
