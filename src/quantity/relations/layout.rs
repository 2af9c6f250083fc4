//! Runs, posts and bays of one size.

use super::whole::{over, up};
use crate::figure::{Value, Why};
use crate::measure::{Length, Q};
use crate::quantity::RowId::{
    BayCentre, BayClear, BayCount, BayLonger, BayShorter, BoltCount, BoltsPerPost, Bracket, CapLength, CapPast,
    CentreMax, ClearMax, CornerGap, CornerLeg, CornersCut, CutCorner, DeckAlong, EndBays, EndInset, HoldBack, Inside,
    Joists, JoistsPerBay, LastBay, LetIn, Line, Miter, NotchDepth, PostCount, PostFar, PostMark, PostMoved, PostNear,
    PostNth, PostOut, PostOver, PostTrim, PostWidth, PostsBetween, RailLength, RunCentre, RunClear, RunLength, RunMost,
    RunOverall, Turn,
};
use crate::quantity::relation::{Relation, every, first, follows, given, told, value, want};
use num_rational::Ratio;

pub(super) const RELATIONS: &[Relation] = &[
    Relation::work(BayClear, "the bay on center less a post over its trim", &[want(BayCentre), given(PostOver)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
    Relation::product("joists a bay times their spacing: posts stand at joists", BayCentre, Joists, JoistsPerBay),
    Relation::work(
        RunMost,
        "bays of the most on center and a post",
        &[want(BayCount), given(CentreMax), want(PostWidth)],
        |a| Some(Value::Length(a.length(1) * a.n(0) + a.length(2))),
    ),
    // What adds up every bay said stands before what takes one for all of them.
    Relation::work(
        RunClear,
        "the bays and the posts between",
        &[every(BayClear), want(PostWidth), given(PostsBetween)],
        |a| Some(Value::Length(a.length(0) + a.length(1) * a.n(2))),
    ),
    Relation::work(BayClear, "all of them added up, over how many they are: evened out", &[every(BayClear)], |a| {
        let Why::Formula(_, all) = a.0.first()?.why() else { return None };
        let n = i64::try_from(all.len()).ok().filter(|n| *n > 0)?;
        Some(Value::Length(a.length(0) / n))
    }),
    Relation::work(
        LastBay,
        "the run clear less the bays told, a post for each",
        &[want(RunClear), given(BayCount), given(BayClear), want(PostWidth)],
        |a| {
            let left = a.length(0) - (a.length(2) + a.length(3)) * a.n(1);
            (left >= Length::ZERO).then_some(Value::Length(left))
        },
    ),
    Relation::work(
        LastBay,
        "the run center to center less the whole bays in it, and a post",
        &[want(RunCentre), given(BayCentre), want(PostWidth)],
        |a| {
            let whole = over(a.q(0) - a.q(2), a.q(1))?.floor();
            let left = a.length(0) - a.length(1).times(whole)? - a.length(2);
            (left >= Length::ZERO).then_some(Value::Length(left))
        },
    ),
    Relation::work(
        EndBays,
        "the run clear less the bays told and one post more than they are, over the two ends",
        &[want(RunClear), given(BayCount), given(BayClear), want(PostWidth)],
        |a| {
            let left = a.length(0) - a.length(2) * a.n(1) - a.length(3) * (a.n(1) + 1);
            (left >= Length::ZERO).then_some(Value::Length(left / 2))
        },
    ),
    Relation::sum(
        "the bay and the way the post moved",
        &[(1, want(BayClear)), (1, want(PostMoved)), (-1, want(BayLonger))],
    ),
    Relation::sum(
        "the bay less the way the post moved",
        &[(1, want(BayClear)), (-1, want(PostMoved)), (-1, want(BayShorter))],
    ),
    Relation::work(
        BayCentre,
        "the bay clear, the way the post moved away from it, and one post width",
        &[given(BayClear), given(PostMoved), want(PostWidth)],
        |a| Some(Value::Length(a.length(0) + a.length(1) + a.length(2))),
    ),
    Relation::work(
        Line,
        "the notch less half a post: its shoulder stands on the edge",
        &[given(NotchDepth), want(PostWidth)],
        |a| Some(Value::Length(a.length(0) - a.length(1) / 2)),
    ),
    Relation::sum(
        "the bay clear + one post width",
        &[(1, want(BayClear)), (1, want(PostWidth)), (-1, want(BayCentre))],
    ),
    // A limit told clear says nothing of centers: the two are facts of their own, and this goes one way.
    Relation::work(ClearMax, "the most on center less a post width", &[want(CentreMax), want(PostWidth)], |a| {
        Some(Value::Length(a.length(0) - a.length(1))).filter(|_| a.length(0) > a.length(1))
    }),
    Relation::count("one post more than bays", &[(1, want(PostCount)), (-1, want(BayCount))], -1),
    Relation::count("one bay more than posts between the ends", &[(1, want(BayCount)), (-1, want(PostsBetween))], -1),
    Relation::sum("the run is taken out to out where nobody said", &[(1, want(RunLength)), (-1, want(RunOverall))])
        .by("common practice, no source"),
    Relation::sum("out to out less a post", &[(1, want(RunOverall)), (-1, want(PostWidth)), (-1, want(RunCentre))]),
    Relation::sum("out to out less two posts", &[(1, want(RunOverall)), (-2, want(PostWidth)), (-1, want(RunClear))]),
    Relation::work(RunCentre, "bays times their spacing", &[follows(BayCentre), follows(BayCount)], |a| {
        value(RunCentre, a.q(0) * a.q(1), false)
    }),
    Relation::work(BayCentre, "the run center to center over its bays", &[want(RunCentre), want(BayCount)], |a| {
        value(BayCentre, over(a.q(0), a.q(1))?, false)
    }),
    Relation::work(BayCount, "the run center to center over the spacing", &[want(RunCentre), given(BayCentre)], |a| {
        value(BayCount, over(a.q(0), a.q(1))?, false)
    }),
    Relation::product("bolts a post times posts", BoltCount, BoltsPerPost, PostCount),
    Relation::work(
        BayCount,
        "the fewest bays that pass no limit on center",
        &[want(RunCentre), want(CentreMax)],
        |a| fewest_of(a.q(0), a.q(1)),
    ),
    Relation::work(
        BayCount,
        "the fewest bays that pass no limit face to face",
        &[want(RunCentre), want(ClearMax), want(PostWidth)],
        |a| fewest_of(a.q(0), a.q(1) + a.q(2)),
    ),
    Relation::work(PostMark, "the spacing times the bays before it", &[follows(BayCentre), want(PostNth)], |a| {
        Some(Value::Length(a.length(0) * (a.n(1) - 1)))
    }),
    Relation::work(
        PostMark,
        "the corner post's way in from the decking's edge and the spacing: the tape hooked on the edge",
        &[given(Line), given(BayCentre)],
        |a| Some(Value::Length(a.length(0) + a.length(1))),
    ),
    Relation::sum(
        "the mark from the first post's center and half a post",
        &[(2, want(PostMark)), (1, want(PostWidth)), (-2, want(PostOut))],
    ),
    Relation::sum("the center less half a post", &[(2, given(PostMark)), (-1, want(PostWidth)), (-2, given(PostNear))]),
    Relation::sum("the near face and the post", &[(1, want(PostNear)), (1, want(PostWidth)), (-1, want(PostFar))]),
    Relation::sum(
        "the post and its trim on both sides",
        &[(1, want(PostWidth)), (2, want(PostTrim)), (-1, want(PostOver))],
    ),
    Relation::work(
        RunMost,
        "bays of the most clear, and one post more",
        &[want(BayCount), given(ClearMax), want(PostWidth)],
        |a| Some(Value::Length(a.length(1) * a.n(0) + a.length(2) * (a.n(0) + 1))),
    ),
    Relation::work(
        RailLength,
        "the bay less what the brackets take at each end",
        &[want(BayClear), told(Bracket)],
        |a| Some(Value::Length(a.length(0) - a.length(1) * 2)).filter(|_| a.length(0) > a.length(1) * 2),
    ),
    Relation::work(
        RailLength,
        "the bay and what is let into the post at each end",
        &[want(BayClear), given(LetIn)],
        |a| Some(Value::Length(a.length(0) + a.length(1) * 2)),
    ),
    Relation::sum(
        "the run out to out and the cap past each end",
        &[(1, want(RunOverall)), (2, want(CapPast)), (-1, want(CapLength))],
    ),
    Relation::count("what is left of 180 degrees inside", &[(1, want(Turn)), (1, want(Inside))], -180),
    Relation::work(
        CutCorner,
        "the root of the one leg squared + the other squared",
        &[first(CornerLeg), given(CornerLeg)],
        |a| Length::diagonal(a.length(0), a.length(1)).map(Value::Length),
    ),
    Relation::work(
        BayClear,
        "from the one post's near face to the next one's, less the post",
        &[first(PostNear), given(PostNear), want(PostWidth)],
        |a| {
            Some(Value::Length(a.length(1) - a.length(0) - a.length(2)))
                .filter(|_| a.length(1) > a.length(0) + a.length(2))
        },
    ),
    Relation::work(CutCorner, "a leg times the square root of 2: both legs alike", &[want(CornerLeg)], |a| {
        Length::diagonal(a.length(0), a.length(0)).map(Value::Length)
    }),
    Relation::work(CornerLeg, "the clip over the square root of 2: both legs alike", &[given(CutCorner)], |a| {
        Length::diagonal(a.length(0), a.length(0)).map(|l| Value::Length(l / 2))
    }),
    Relation::work(
        RunLength,
        "the deck along the house less a leg at each clipped corner",
        &[given(DeckAlong), given(CornersCut), given(CornerLeg)],
        |a| Some(Value::Length(a.length(0) - a.length(2) * a.n(1))).filter(|_| a.length(0) > a.length(2) * a.n(1)),
    ),
    Relation::work(Miter, "half the turn", &[want(Turn)], |a| value(Miter, a.q(0) / Ratio::from_integer(2), false)),
    Relation::work(CornerGap, "the hold-back times the square root of 2: across the corner", &[want(HoldBack)], |a| {
        Length::diagonal(a.length(0), a.length(0)).map(Value::Length)
    }),
    Relation::work(
        RunOverall,
        "the edge less what the posts stand in from each end",
        &[given(RunLength), given(EndInset)],
        |a| Some(Value::Length(a.length(0) - a.length(1) * 2)).filter(|_| a.length(0) > a.length(1) * 2),
    ),
];

fn fewest_of(run: Q, most: Q) -> Option<Value> {
    let zero = Ratio::from_integer(0);
    if most > zero && run > zero { up(over(run, most)?) } else { None }
}
