//! A post's foot: its notch, its leg, its length, its bolts.

use crate::figure::Value;
use crate::limits::{BOLT_OVER, BOLT_ROWS};
use crate::quantity::RowId::{
    Above, BlockThick, Bolt, BoltEdge, BoltHole, BoltLength, BoltLower, BoltPast, BoltUpper, BoltsApart, BoltsMost,
    Cap, CornerShare, Decking, HeightTop, HolePlay, Leg, LegPast, NotchBoth, NotchCut, NotchDepth, NotchLeft,
    NotchPart, NotchShare, NotchTall, PostBase, PostBelow, PostLength, PostTop, PostWidth, Rim, RimTall, Shim, Skirt,
};
use crate::quantity::relation::{Relation, given, told, value, want};

pub(super) const RELATIONS: &[Relation] = &[
    Relation::sum(
        "the post width less the notch",
        &[(1, want(PostWidth)), (-1, want(NotchDepth)), (-1, want(NotchLeft))],
    ),
    Relation::product("the share left of the post", NotchLeft, PostWidth, NotchShare),
    Relation::work(NotchDepth, "the share of the post notched off", &[want(PostWidth), given(NotchPart)], |a| {
        a.length(0).times(a.q(1)).map(Value::Length)
    }),
    Relation::work(NotchPart, "the notch over the post", &[want(NotchDepth), want(PostWidth)], |a| {
        a.length(0).ratio(a.length(1)).and_then(|q| value(NotchPart, q, false))
    }),
    Relation::sum(
        "the notch as it was cut less the one wanted",
        &[(1, want(NotchCut)), (-1, want(NotchDepth)), (-1, want(Shim))],
    ),
    Relation::sum(
        "decking + rim height, flush with the rim's bottom, and what the leg hangs past it",
        &[(1, want(Decking)), (1, want(RimTall)), (1, told(LegPast)), (-1, want(NotchTall))],
    ),
    Relation::work(
        PostLength,
        "the post from its top to the decking less the base it stands on",
        &[want(PostTop), given(PostBase)],
        |a| Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1)),
    ),
    Relation::work(
        BoltsApart,
        "the rim height less the edge distance at each bolt",
        &[want(RimTall), given(BoltEdge)],
        |a| Some(Value::Length(a.length(0) - a.length(1) * 2)).filter(|_| a.length(0) > a.length(1) * 2),
    ),
    Relation::sum("the bolt and its play", &[(1, want(Bolt)), (1, want(HolePlay)), (-1, want(BoltHole))]),
    Relation::sum("the leg is as long as the notch", &[(1, want(NotchTall)), (-1, want(Leg))])
        .by("common practice, no source"),
    Relation::sum(
        "the height, less a cap that lies on the posts, and what stands above the rail",
        &[(1, want(HeightTop)), (-1, told(Cap)), (1, told(Above)), (-1, want(PostTop))],
    ),
    Relation::sum(
        "the post from its top to the decking + the post below the decking",
        &[(1, want(PostTop)), (1, want(PostBelow)), (-1, want(PostLength))],
    ),
    Relation::sum("what is below the decking's top is the leg", &[(1, want(Leg)), (-1, want(PostBelow))]),
    Relation::sum("decking + edge distance", &[(1, want(Decking)), (1, want(BoltEdge)), (-1, want(BoltUpper))]),
    Relation::sum(
        "the upper bolt below the decking's top + bolts apart",
        &[(1, want(BoltUpper)), (1, want(BoltsApart)), (-1, want(BoltLower))],
    ),
    Relation::work(
        BoltsApart,
        "the rim height less the edge distance at each bolt, and no more than the most bolts apart",
        &[want(RimTall), want(BoltEdge), want(BoltsMost)],
        |a| {
            let room = a.length(0) - a.length(1) * 2;
            room.is_positive().then(|| Value::Length(room.min(a.length(2))))
        },
    )
    .by(BOLT_ROWS.source),
    Relation::sum(
        "the lower bolt and the end distance below it",
        &[(1, want(BoltLower)), (1, want(BoltPast)), (-1, want(Leg))],
    ),
    Relation::work(
        crate::quantity::RowId::BoltLength,
        "what is left of the post, skirt, rim and block, and what washers and nut take",
        &[want(NotchLeft), told(Skirt), want(Rim), told(BlockThick)],
        |a| Some(Value::Length(a.length(0) + a.length(1) + a.length(2) + a.length(3) + BOLT_OVER.length())),
    )
    .by(BOLT_OVER.source),
    Relation::work(NotchShare, "what is left over the post", &[want(NotchLeft), want(PostWidth)], |a| {
        a.length(0).ratio(a.length(1)).and_then(|q| value(NotchShare, q, false))
    }),
    Relation::work(
        NotchLeft,
        "the post width less a notch in each of two faces",
        &[want(PostWidth), given(NotchBoth)],
        |a| Some(Value::Length(a.length(0) - a.length(1) * 2)).filter(|_| a.length(0) > a.length(1) * 2),
    ),
    Relation::work(
        CornerShare,
        "the square of the post less the square that is notched out, over the post's",
        &[want(NotchDepth), want(PostWidth)],
        |a| {
            let off = a.length(0).ratio(a.length(1))?;
            value(CornerShare, num_rational::Ratio::from_integer(1) - off * off, false)
        },
    ),
    Relation::work(
        BoltLength,
        "the whole post, skirt, rim and block, and what washers and nut take",
        &[given(PostWidth), told(Skirt), want(Rim), told(BlockThick)],
        |a| Some(Value::Length(a.length(0) + a.length(1) + a.length(2) + a.length(3) + BOLT_OVER.length())),
    )
    .by(BOLT_OVER.source),
];
