//! Figures that follow by relations from what a question gives, each worked by hand.

use railhand::figure::Value;
use railhand::job::Job;
use railhand::measure::{Length, Q};
use railhand::provide::ask;
use railhand::quantity::RowId::{self, *};
use railhand::quantity::{Kind, money};
use railhand::solve::Given;

/// A number as a row takes it: inches, a count, money, a plain number.
fn value(row: RowId, n: f64) -> Value {
    let q = Q::new((n * 64_000.0).round() as i128, 64_000);
    match row.row().kind {
        Kind::Length => Value::Length(Length::from_q(q).expect("a length")),
        Kind::Count => Value::Count(n as u64),
        Kind::Money => Value::Money(money(q).expect("money")),
        Kind::Angle => Value::Quantity(q, railhand::figure::Unit::Degrees),
        Kind::Force => Value::Quantity(q, railhand::figure::Unit::Pounds),
        _ => Value::Number(q),
    }
}

fn given(rows: &[(RowId, f64)]) -> Given {
    Given::of(rows.iter().map(|(row, n)| (*row, value(*row, *n))))
}

fn asked(want: RowId, rows: &[(RowId, f64)]) -> Option<f64> {
    let fig = ask(want, &given(rows), &Job::default()).ok()?.fig;
    Some(*fig.as_q().numer() as f64 / *fig.as_q().denom() as f64)
}

/// The row asked, what the question gives, and the figure.
type Case<'a> = (RowId, &'a [(RowId, f64)], f64);

fn holds(cases: &[Case<'_>]) {
    let off = |(want, rows, right): &&Case<'_>| {
        asked(*want, rows).is_none_or(|got| (got - right).abs() > 1e-4 * right.abs().max(1.0))
    };
    let wrong: Vec<String> = cases
        .iter()
        .filter(off)
        .map(|(w, rows, right)| format!("{w:?} of {rows:?} is {right}, not {:?}", asked(*w, rows)))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn sticks_packs_and_pieces() {
    holds(&[
        // 100 bolts at two a post: 50 posts; 25 at two: 12, and one bolt left.
        (PostCount, &[(PerPack, 100.0), (BoltsPerPost, 2.0)], 50.0),
        (PostCount, &[(PerPack, 25.0), (BoltsPerPost, 2.0)], 12.0),
        // Two of 58 1/4 and a kerf of 1/8 are 116 5/8: a stick of 10 ft. Two of 60 and none are just that.
        (Stock, &[(PerStick, 2.0), (RailLength, 58.25), (Kerf, 0.125)], 120.0),
        (Stock, &[(PerStick, 2.0), (RailLength, 60.0), (Kerf, 0.0)], 120.0),
        // Two of 48 and a kerf of 1/8: 96 1/8, more than an 8 ft stick.
        (StickNeeded, &[(PostCount, 2.0), (PostLength, 48.0), (Kerf, 0.125)], 96.125),
        // Four of 31 3/4 and three kerfs are 127 3/8 of 96: too many; (96 + 1/8) / (31 3/4 + 1/8) = 3.01: 3 a stick, 44 / 3 = 14.7: 15.
        (StickCount, &[(BalusterCount, 44.0), (BalusterLength, 31.75), (Stock, 96.0), (Kerf, 0.125)], 15.0),
        // Two posts of 46 1/4 a 96: 7 / 2 = 3.5: 4.
        (StickCount, &[(PostCount, 7.0), (PostLength, 46.25), (Stock, 96.0)], 4.0),
        // 36 and 3 spares, three a stick: 13. 62 of four: 15.5: 16.
        (StickCount, &[(BalusterCount, 36.0), (Spares, 3.0), (PerStick, 3.0)], 13.0),
        (StickCount, &[(BalusterCount, 62.0), (PerStick, 4.0)], 16.0),
        // Five bays of two rails 61 long, two to a 144: 5.
        (StickCount, &[(RailsPerBay, 2.0), (BayCount, 5.0), (BayClear, 61.0), (Stock, 144.0)], 5.0),
        (PerStick, &[(PostLength, 37.75), (Stock, 192.0), (Kerf, 0.125)], 5.0),
        // 47 of ten: 5. 44 times 4 screws are 176, of a hundred: 2.
        (Packs, &[(BalusterCount, 47.0), (PerPack, 10.0)], 5.0),
        (Packs, &[(BalusterCount, 44.0), (ScrewsPer, 4.0), (PerPack, 100.0)], 2.0),
        // Four at each of two ends of 2 x 9 rails: 4 x 2 x 18 = 144.
        (Screws, &[(ScrewsPerEnd, 4.0), (RailsPerBay, 2.0), (BayCount, 9.0)], 144.0),
        (Washers, &[(WashersPerPost, 4.0), (PostCount, 13.0)], 52.0),
        // 20 x 96 = 1920 bought, 56 x 31 = 1736 used: 184 / 1920 = 9.58333 %.
        (Scrap, &[(StickCount, 20.0), (Stock, 96.0), (PieceCount, 56.0), (PieceLength, 31.0)], 9.58333),
        // 27 x 33 = 891; 5 x 2 x 64 1/2 = 645; 2 x 444 = 888.
        (Lineal, &[(BalusterCount, 27.0), (BalusterLength, 33.0)], 891.0),
        (Lineal, &[(BayCount, 5.0), (RailsPerBay, 2.0), (BayClear, 64.5)], 645.0),
        (Lineal, &[(RailsPerBay, 2.0), (GuardTotal, 444.0)], 888.0),
        // 2544 and 12 % of it, 305.28.
        (LinealExtra, &[(Lineal, 2544.0), (Waste, 12.0)], 2849.28),
        (Weight, &[(BalusterCount, 60.0), (WeightEach, 1.9)], 114.0),
        // 22 ft at 1.3.
        (Weight, &[(Lineal, 264.0), (WeightFoot, 1.3)], 28.6),
        // Three of 31 from a 96, of 11.
        (PieceYield, &[(StickCount, 11.0), (Stock, 96.0), (BalusterLength, 31.0)], 33.0),
    ]);
}

/// 9 posts are counted, and what a stick gives of a baluster says nothing of them.
#[test]
fn posts_are_not_cut_as_long_as_balusters() {
    assert_eq!(asked(StickCount, &[(PostCount, 9.0), (BalusterLength, 31.0), (Stock, 96.0)]), None);
}

#[test]
fn what_it_costs() {
    holds(&[
        (Cost, &[(BalusterCount, 44.0), (Price, 2.35)], 103.4),
        // 9 x 14.50 + 44 x 2.10 + 5 x 17.80 = 130.50 + 92.40 + 89.
        (
            Cost,
            &[(PostCount, 9.0), (Price, 14.5), (BalusterCount, 44.0), (Price, 2.1), (RailCount, 5.0), (Price, 17.8)],
            311.9,
        ),
        // 842.60 and 6 1/2 %: 897.369. 1100 less 15 %: 935. 26 x 7.25 = 188.50, and 8 %: 203.58.
        (Cost, &[(Goods, 842.6), (Tax, 6.5)], 897.37),
        (Cost, &[(Goods, 1100.0), (Discount, 15.0)], 935.0),
        (Cost, &[(StickCount, 26.0), (Price, 7.25), (Tax, 8.0)], 203.58),
        // 31 ft at 48; 13 of four a pack are 4 packs at 11.60.
        (Cost, &[(GuardTotal, 372.0), (PricePerFoot, 48.0)], 1488.0),
        (Cost, &[(PostCount, 13.0), (PerPack, 4.0), (Price, 11.6)], 46.4),
        (Price, &[(Cost, 38.25), (BalusterCount, 15.0)], 2.55),
        (PricePerFoot, &[(Cost, 1752.0), (GuardTotal, 576.0)], 36.5),
    ]);
}

#[test]
fn runs_bays_and_posts() {
    holds(&[
        // Three posts of 3 1/2 are two bays; 2 x 72 + 3 1/2. Four bays of 66 and five posts: 264 + 17 1/2.
        (RunMost, &[(PostCount, 3.0), (PostWidth, 3.5), (CentreMax, 72.0)], 147.5),
        (RunMost, &[(BayCount, 4.0), (PostWidth, 3.5), (ClearMax, 66.0)], 281.5),
        // Posts told count the bays, not the limit nobody told: (288 - 4 x 5 1/2) / 3 = 88 2/3.
        (BayClear, &[(RunOverall, 288.0), (PostCount, 4.0), (PostWidth, 5.5)], 88.66667),
        // 44 + 52 3/8 + 49 + 2 x 3 1/2.
        (
            RunClear,
            &[(BayClear, 44.0), (BayClear, 52.375), (BayClear, 49.0), (PostsBetween, 2.0), (PostWidth, 3.5)],
            152.375,
        ),
        // 235 - 3 x 57 1/2; 296 1/2 less four of 72 is 8 1/2, less a post 5.
        (LastBay, &[(RunClear, 235.0), (BayCount, 3.0), (BayClear, 54.0), (PostWidth, 3.5)], 62.5),
        (LastBay, &[(RunOverall, 300.0), (BayCentre, 72.0), (PostWidth, 3.5)], 5.0),
        // 222 - 3 x 48 - 4 x 3 1/2 = 64, two of 32.
        (EndBays, &[(RunClear, 222.0), (BayCount, 3.0), (BayClear, 48.0), (PostWidth, 3.5)], 32.0),
        (BayLonger, &[(BayClear, 63.25), (PostMoved, 6.0)], 69.25),
        (BayShorter, &[(BayClear, 58.0), (PostMoved, 5.0)], 53.0),
        (BayCentre, &[(BayClear, 66.0), (PostMoved, 5.0), (PostWidth, 3.5)], 74.5),
        (BayClear, &[(Joists, 16.0), (JoistsPerBay, 4.0), (PostWidth, 3.5)], 60.5),
        // 188 1/2 in three is 62 5/6; half a post on: 64 7/12.
        (PostOut, &[(RunOverall, 192.0), (PostCount, 4.0), (PostWidth, 3.5), (PostNth, 2.0)], 64.58333),
        (PostMark, &[(PostNear, 61.625), (PostWidth, 5.5)], 64.375),
        (PostFar, &[(PostMark, 96.0), (PostWidth, 3.5)], 97.75),
        (PostOver, &[(PostWidth, 3.5), (PostTrim, 0.75)], 5.0),
        (BayClear, &[(BayCentre, 60.0), (PostOver, 5.0)], 55.0),
        // The sleeve stands in the bay, whatever post it hides.
        (BayClear, &[(BayCentre, 72.0), (PostWidth, 3.5), (PostOver, 5.0)], 67.0),
        (RailLength, &[(BayClear, 63.75), (Bracket, 0.125)], 63.5),
        (RailLength, &[(BayClear, 58.375), (LetIn, 0.5)], 59.375),
        (CapLength, &[(RunOverall, 170.0), (CapPast, 1.0)], 172.0),
        // The corner 135 inside turns 45: 22 1/2 each.
        (Miter, &[(Inside, 135.0)], 22.5),
        // 36 x 1.414214; 60 / 1.414214.
        (CutCorner, &[(CornerLeg, 36.0)], 50.91169),
        (CornerLeg, &[(CutCorner, 60.0)], 42.42641),
        // 14 ft less 30 in. at each of two corners: 168 - 60; one: 138.
        (RunLength, &[(DeckAlong, 168.0), (DeckOut, 120.0), (CornersCut, 2.0), (CornerLeg, 30.0)], 108.0),
        (RunLength, &[(DeckAlong, 168.0), (CornersCut, 1.0), (CornerLeg, 30.0)], 138.0),
        (BayLoad, &[(LineLoad, 50.0), (BayCentre, 66.0)], 275.0),
        // 228 - 2 x 5 = 218; less a post 214 1/2, in three.
        (BayCentre, &[(RunLength, 228.0), (EndInset, 5.0), (PostCount, 4.0), (PostWidth, 3.5)], 71.5),
        (GateOpening, &[(BayCentre, 46.0), (PostWidth, 5.5)], 40.5),
    ]);
}

/// Where a post stands is not said by a spacing alone: from what it is measured is not known.
#[test]
fn a_near_face_is_not_guessed() {
    assert_eq!(asked(PostNear, &[(BayClear, 52.0), (PostWidth, 3.5), (PostNth, 5.0)]), None);
}

#[test]
fn the_guard_and_its_openings() {
    holds(&[
        // 192 + 2 x 144 less stairs of 48: 432. All four sides of it: 2 x 336.
        (GuardTotal, &[(DeckAlong, 192.0), (DeckOut, 144.0), (StairWidth, 48.0)], 432.0),
        (GuardTotal, &[(DeckAlong, 192.0), (DeckOut, 144.0), (KeptSides, 4.0)], 672.0),
        // A bump-out 48 deep adds its two sides: 264 + 288 + 96.
        (GuardTotal, &[(DeckAlong, 264.0), (DeckOut, 144.0), (BumpOut, 48.0)], 648.0),
        (GuardTotal, &[(RunLength, 216.0), (RunLength, 120.0), (RunLength, 96.0)], 432.0),
        (GuardTotal, &[(RunLength, 240.0), (StairWidth, 36.0), (StairCount, 2.0)], 168.0),
        (GuardTotal, &[(RunLength, 312.0), (KeptSides, 2.0)], 624.0),
        (GuardTotal, &[(Landing, 60.0), (KeptSides, 2.0)], 120.0),
        (RunLength, &[(GuardTotal, 504.0), (KeptSides, 3.0)], 168.0),
        (RunLength, &[(GuardTotal, 564.0), (RunLength, 186.0), (RunLength, 186.0)], 192.0),
        // 252 - 48 - 60; 300 - 48 - 162; 196 - 64 - 84.
        (Flank, &[(RunLength, 252.0), (StairWidth, 48.0), (Offset, 60.0)], 144.0),
        (Flank, &[(RunLength, 300.0), (StairWidth, 48.0), (Flank, 162.0)], 90.0),
        (StairWidth, &[(RunLength, 196.0), (Flank, 64.0), (Flank, 84.0)], 48.0),
        (AllAround, &[(DeckAlong, 192.0), (DeckOut, 156.0)], 696.0),
        // 192^2 + 144^2 = 240^2.
        (DeckDiagonal, &[(DeckAlong, 192.0), (DeckOut, 144.0)], 240.0),
        // Octagon: 144 / (1 + root 2) = 59.6468; 120 x sin 22.5 = 45.9220; 30 x (1 + root 2) = 72.4264. 144 x sin 11.25 = 28.0930.
        (DeckSide, &[(AcrossFlats, 144.0), (FacetCount, 8.0)], 59.64675),
        (DeckSide, &[(AcrossPoints, 120.0), (FacetCount, 8.0)], 45.92201),
        (AcrossFlats, &[(DeckSide, 30.0), (FacetCount, 8.0)], 72.42641),
        (DeckSide, &[(AcrossPoints, 144.0), (FacetCount, 16.0)], 28.09301),
        (DeckSide, &[(GuardTotal, 260.0), (FacetCount, 5.0)], 52.0),
        (Miter, &[(FacetCount, 8.0)], 22.5),
        // A joist is 1 1/2.
        (BlockLength, &[(Joists, 16.0)], 14.5),
        (Flank, &[(RunLength, 228.0), (GateWidth, 42.0), (Offset, 30.0)], 156.0),
    ]);
}

#[test]
fn heights() {
    holds(&[
        // 22 + 9 1/4 + 1; 43 + 1 + 36.
        (Grade, &[(RimBottomUp, 22.0), (RimTall, 9.25), (Decking, 1.0)], 32.25),
        (TopUp, &[(RimTopUp, 43.0), (Decking, 1.0), (HeightTop, 36.0)], 80.0),
        // 3 at the house, and 1/8 a foot over 12 ft: 4 1/2.
        (FarUnder, &[(GapUnder, 3.0), (DeckFall, 0.125), (DeckOut, 144.0)], 4.5),
        (Fall, &[(FallRate, 1.0), (FallOver, 120.0)], 10.0),
        (HeightTop, &[(HeightTop, 36.5), (LaidOver, 1.0)], 35.5),
        (HeightTop, &[(GapUnder, 2.75), (PanelTall, 33.0), (Cap, 1.25)], 37.0),
        // 38 - 2 x 1 1/2 - 3 1/2; 1 1/2 + 29 + 3 1/2.
        (RailsClear, &[(HeightTop, 38.0), (TopRailTall, 1.5), (BottomRailTall, 1.5), (GapUnder, 3.5)], 31.5),
        (PanelTall, &[(TopRailTall, 1.5), (RailsClear, 29.0), (BottomRailTall, 3.5)], 34.0),
        (LeafHeight, &[(HeightTop, 42.0), (GateUnder, 3.0)], 39.0),
        // 24 and 1/2 a foot over 12 ft.
        (GradeFar, &[(Grade, 24.0), (FallRate, 0.5), (DeckOut, 144.0)], 30.0),
        (GradeFar, &[(Grade, 38.0), (Fall, 2.0)], 40.0),
    ]);
}

#[test]
fn feet() {
    holds(&[
        (NotchTall, &[(Decking, 1.0), (RimTall, 11.25), (LegPast, 1.0)], 13.25),
        (NotchTall, &[(Decking, 1.5), (RimTall, 7.25), (LegPast, -0.5)], 8.25),
        // 40 3/4 + 15/16 + 7 1/4 + 2.
        (PostLength, &[(PostTop, 40.75), (Decking, 0.9375), (RimTall, 7.25), (LegPast, 2.0)], 50.9375),
        (PostLength, &[(HeightTop, 42.0), (Cap, 1.0), (PostBase, 0.5)], 40.5),
        (NotchDepth, &[(PostWidth, 5.5), (NotchPart, 0.25)], 1.375),
        (NotchLeft, &[(PostWidth, 5.5), (NotchPart, 0.5)], 2.75),
        (Shim, &[(NotchCut, 1.625), (NotchDepth, 1.5)], 0.125),
        // Both edges said: 11 1/4 - 2 x 2, whatever is the most.
        (BoltsApart, &[(RimTall, 11.25), (BoltEdge, 2.0)], 7.25),
        (BoltHole, &[(Bolt, 0.5), (HolePlay, 0.0625)], 0.5625),
        // A 6x6 notched 3: 3 - 2 3/4.
        (Line, &[(NotchDepth, 3.0), (PostWidth, 5.5)], 0.25),
        (NotchLeft, &[(PostWidth, 3.5), (NotchBoth, 0.75)], 2.0),
        // 1 - (1 3/4 / 3 1/2)^2.
        (CornerShare, &[(NotchDepth, 1.75), (PostWidth, 3.5)], 0.75),
        // 2 + 3/4 + 1 1/2 + 1 1/2 and an inch; the whole post of 3 1/2, 1 1/2, 1 1/2 and an inch.
        (BoltLength, &[(NotchLeft, 2.0), (Skirt, 0.75), (Rim, 1.5), (BlockThick, 1.5)], 6.75),
        (BoltLength, &[(PostWidth, 3.5), (Rim, 1.5), (BlockThick, 1.5)], 7.5),
    ]);
}

#[test]
fn balusters() {
    holds(&[
        // (66 - 12 x 1 1/2) / 13 = 3.692308, and 3/4.
        (FirstCentre, &[(BayClear, 66.0), (BalusterCount, 12.0), (BalusterWidth, 1.5)], 4.442308),
        (EndGap, &[(FirstCentre, 5.25), (BalusterWidth, 1.5)], 4.5),
        // 3 x 3 5/8 + 2 x 1 1/2 + 3/4; 4 3/8 + 6 x 5 1/4; 2 7/8 + 6 x 3 3/4 + 7 x 1 1/4.
        (MarkCentre, &[(Gap, 3.625), (BalusterWidth, 1.5), (Nth, 3.0)], 14.625),
        (MarkCentre, &[(FirstCentre, 4.375), (Pitch, 5.25), (Nth, 7.0)], 35.875),
        (MarkFar, &[(FirstGap, 2.875), (Gap, 3.75), (BalusterWidth, 1.25), (Nth, 7.0)], 34.125),
        // (60 - 2 - 18) / 12.
        (Gap, &[(FirstGap, 2.0), (BayClear, 60.0), (BalusterCount, 12.0), (BalusterWidth, 1.5)], 3.333333),
        // The leaf less two stiles is 33: (33 - 9) / 7.
        (Gap, &[(Leaf, 40.0), (Stile, 3.5), (BalusterCount, 6.0), (BalusterWidth, 1.5)], 3.428571),
        (StairGap, &[(Tread, 10.0), (PerTread, 2.0), (BalusterWidth, 1.5)], 3.5),
        // 1 1/2 x 7 / 10; 1 1/2 x tan 36.6 = 1.11402; 29 + 1 1/2 x 7 1/2 / 10.
        (BevelDrop, &[(BalusterWidth, 1.5), (Rise, 7.0), (Tread, 10.0)], 1.05),
        (BevelDrop, &[(BalusterWidth, 1.5), (Angle, 36.6)], 1.11402),
        (LongSide, &[(BalusterLength, 29.0), (BalusterWidth, 1.5), (Rise, 7.5), (Tread, 10.0)], 30.125),
        // 3 5/8 / cos 36.6 (0.802817); 5 x 10 / root(7.75^2 + 100) = 50 / 12.65158.
        (SlopeGap, &[(Gap, 3.625), (Angle, 36.6)], 4.51535),
        (SquareGap, &[(SlopeGap, 5.0), (Rise, 7.75), (Tread, 10.0)], 3.952075),
        // (62 - 12 x 4) / 11.
        (BalusterLeast, &[(BalusterCount, 11.0), (BayClear, 62.0), (GapMax, 4.0)], 1.272727),
        // Three bays of 65 clear: (65 - 4) / 5 1/2 = 11.1, so 12 each.
        (BalusterTotal, &[(BayCount, 3.0), (BayClear, 65.0), (BalusterWidth, 1.5)], 36.0),
    ]);
}

#[test]
fn flights() {
    holds(&[
        (Risers, &[(TotalRise, 40.5), (RiserMost, 7.75)], 6.0),
        (Rise, &[(LevelDrop, 21.0), (RiserMost, 7.75)], 7.0),
        (TotalRise, &[(Grade, 37.5), (Fall, 1.75)], 39.25),
        // 103 1/4 - 44 1/4 = 59 = 8 x 7 3/8.
        (Risers, &[(Grade, 103.25), (LandingUp, 44.25), (Rise, 7.375)], 8.0),
        (StairsPast, &[(TotalRun, 42.5), (Recess, 30.0)], 12.5),
        // root(56.25 + 100); 45 and 60: 75; 18 and 216: root(46980).
        (StepSlope, &[(Rise, 7.5), (Tread, 10.0)], 12.5),
        (RakeLength, &[(TotalRise, 45.0), (TotalRun, 60.0)], 75.0),
        (RampLength, &[(RampRise, 18.0), (RampRun, 216.0)], 216.74870),
        (RampRun, &[(RampRise, 24.0), (RampSlope, 12.0)], 288.0),
        // Four treads of 7 over 10, however many risers there are: 4 x root(49 + 100) = 48.826222.
        (Slope, &[(Rise, 7.0), (Tread, 10.0), (Treads, 4.0), (Risers, 4.0)], 48.826222),
        // 42 x 7 1/2 / 10 1/2.
        (RakeDrop, &[(RakeRun, 42.0), (Rise, 7.5), (Tread, 10.5)], 30.0),
        // 7 x root(7.625^2 + 10.25^2) = 89.42493, and 12.
        (
            HandrailLength,
            &[(Risers, 7.0), (Rise, 7.625), (Treads, 7.0), (Tread, 10.25), (HandrailPast, 12.0)],
            101.42493,
        ),
        // Stair posts are as wide as the posts told: 42 - 2 x 5 1/2.
        (StairClear, &[(StairWidth, 42.0), (PostWidth, 5.5)], 31.0),
    ]);
}

/// What stays the same stays the same: 31 at 36 high is 37 at 42; over a gap an inch lower, an inch longer.
#[test]
fn what_changes_moves_what_it_is_a_part_of() {
    holds(&[
        (BalusterLength, &[(BalusterLength, 31.0), (HeightTop, 36.0), (HeightTop, 42.0)], 37.0),
        (BalusterLength, &[(BalusterLength, 28.75), (GapUnder, 3.0), (GapUnder, 2.0)], 29.75),
        (NotchTall, &[(NotchTall, 10.25), (Decking, 1.0), (Decking, 1.25)], 10.5),
        (LatchGap, &[(LatchGap, 0.75), (Leaf, 36.0), (Leaf, 35.75)], 1.0),
        // Of what a run of bays makes of a wider post, more than one thing could stay: nothing is moved.
        (BayClear, &[(BayClear, 60.0), (PostWidth, 3.5), (PostWidth, 5.5)], 60.0),
    ]);
}

/// A row given and asked is what was given, and never a default: 35 3/4 high, though 36 would be taken.
#[test]
fn what_is_given_is_not_taken_otherwise() {
    holds(&[(HeightTop, &[(HeightTop, 35.75)], 35.75), (BayCount, &[(RunOverall, 264.0), (BayCount, 3.0)], 3.0)]);
}

/// What the job has of all its runs is not taken for the one that is asked of: no price, no spacing, no length comes of itself.
#[test]
fn nothing_follows_from_nothing_said() {
    for row in [RunCentre, RunOverall, PostMark, Goods, Packs, StickCount] {
        assert_eq!(asked(row, &[]), None, "{row:?}");
    }
    // Two stairs, and what stands between them: more than one piece is left.
    assert_eq!(asked(Flank, &[(RunLength, 264.0), (StairWidth, 48.0), (StairCount, 2.0), (Offset, 36.0)]), None);
}

/// The stairs told of a run are no stairs of the one that is asked of: 240 stays 240.
#[test]
fn a_run_asked_of_has_its_own_openings() {
    use railhand::job::Fact;
    let stairs = Fact::of(StairWidth, value(StairWidth, 48.0)).expect("a fact");
    let job = Job::default().with(&stairs).expect("a job");
    let fig = ask(GuardTotal, &given(&[(RunLength, 240.0)]), &job).expect("a length").fig;
    assert_eq!(fig.as_length(), Some(Length::inches(240)));
}

#[test]
fn several_of_one_row_are_taken_together() {
    holds(&[
        // 71 + 71 + 48 = 190, over three: 63 1/3.
        (BayClear, &[(BayClear, 71.0), (BayClear, 71.0), (BayClear, 48.0)], 190.0 / 3.0),
        // 148 clear, 31 to the first stair post, a 4x4, 42 of stairs, a 4x4: 148 - 31 - 3 1/2 - 42 - 3 1/2 = 68.
        (Flank, &[(RunClear, 148.0), (Offset, 31.0), (StairWidth, 42.0), (PostWidth, 3.5)], 68.0),
        // 24 + 30 ft, less stairs of 4 and of 3 ft: 47 ft.
        (GuardTotal, &[(RunLength, 288.0), (RunLength, 360.0), (StairWidth, 48.0), (StairWidth, 36.0)], 564.0),
        // 16 + 12 + 12 ft, less 4 and 3: 33 ft.
        (GuardTotal, &[(DeckAlong, 192.0), (DeckOut, 144.0), (StairWidth, 48.0), (StairWidth, 36.0)], 396.0),
        // One run of 22 ft, less two flights of 3: 16 ft.
        (GuardTotal, &[(RunLength, 264.0), (StairWidth, 36.0), (StairWidth, 36.0)], 192.0),
        // 3 and 4 ft: 5 ft.
        (CutCorner, &[(CornerLeg, 36.0), (CornerLeg, 48.0)], 60.0),
        // Near faces at 46 and 95 1/2: 49 1/2 less a 4x4.
        (BayClear, &[(PostNear, 46.0), (PostNear, 95.5), (PostWidth, 3.5)], 46.0),
        // 9 at 12 and 14 at 1.80: 108 + 25.20.
        (Cost, &[(PostCount, 9.0), (Price, 12.0), (BalusterCount, 14.0), (Price, 1.8)], 133.2),
    ]);
}

#[test]
fn balusters_of_two_sizes_stand_in_one_bay() {
    holds(&[
        // 62 less 6 x 3 1/2 and 5 x 1 1/2, over 12 gaps: 33.5 / 12.
        (
            Gap,
            &[(BayClear, 62.0), (BalusterCount, 6.0), (BalusterWidth, 3.5), (BalusterCount, 5.0), (BalusterWidth, 1.5)],
            2.791_67,
        ),
        // 18 sticks of three: 54; one size alone is as ever: (62 - 9) / 7.
        (BalusterCount, &[(StickCount, 18.0), (PerStick, 3.0)], 54.0),
        (Gap, &[(BayClear, 62.0), (BalusterCount, 6.0), (BalusterWidth, 1.5)], 7.571_43),
    ]);
    // 21 and 7 1/2 are more than 20 holds, and the narrow ones alone are no answer.
    let wide =
        [(BayClear, 20.0), (BalusterCount, 6.0), (BalusterWidth, 3.5), (BalusterCount, 5.0), (BalusterWidth, 1.5)];
    assert_eq!(asked(Gap, &wide), None);
}

#[test]
fn what_is_left_and_what_a_foot_costs() {
    holds(&[
        // Six of 8 ft are 48 ft, less 42 ft 6.
        (LeftOver, &[(StickCount, 6.0), (Stock, 96.0), (Lineal, 510.0)], 66.0),
        // 30 ft of guard, four to the foot at 1.80: 216.
        (Cost, &[(GuardTotal, 360.0), (PerFoot, 4.0), (Price, 1.8)], 216.0),
    ]);
    // More pieces than sticks leave nothing to say.
    assert_eq!(asked(LeftOver, &[(StickCount, 1.0), (Stock, 96.0), (Lineal, 510.0)]), None);
}

#[test]
fn what_is_so_many_times_a_thing_stays_in_step_with_it() {
    holds(&[
        // 42 in 6 risers, and one more of the same: 42 x 7 / 6.
        (TotalRise, &[(TotalRise, 42.0), (Risers, 6.0), (Risers, 7.0)], 49.0),
        // 16 bolts in 8 posts, and 9 posts: 18.
        (BoltCount, &[(BoltCount, 16.0), (PostCount, 8.0), (PostCount, 9.0)], 18.0),
    ]);
}

#[test]
fn parts_cut_to_two_lengths_come_out_of_the_same_sticks() {
    let posts = [(PostCount, 6.0), (PostLength, 44.75), (PostCount, 4.0), (PostLength, 40.0), (Kerf, 0.125)];
    let of = |stock: f64| posts.iter().copied().chain([(Stock, stock)]).collect::<Vec<_>>();
    holds(&[
        // Two to a 10 ft stick, of either length (2 x 44 3/4 and 1/8 are 89 5/8; three of 40 and two kerfs 120 1/4): 5. By 12 ft, 144:
        // three of 44 3/4 and two kerfs are 134 1/2, so 2 sticks, and three of 40 1, and the last one more: 4.
        (StickCount, &of(120.0), 5.0),
        (StickCount, &of(144.0), 4.0),
        // 6 x 44 3/4 + 4 x 40
        (Lineal, &posts[..4], 428.5),
    ]);
    // One longer than the stick comes out of none.
    assert_eq!(asked(StickCount, &of(42.0)), None);
}

#[test]
fn a_gate_at_a_stair_head_and_posts_at_the_edge() {
    holds(&[
        // Posts centered on the edges of a 48 hole take half a 4x4 at each side: 48 - 3 1/2. An inch inside the edge: 48 + 2 - 3 1/2.
        (GateOpening, &[(StairWidth, 48.0), (PostWidth, 3.5)], 44.5),
        (GateOpening, &[(StairWidth, 48.0), (PostWidth, 3.5), (Line, 1.0)], 46.5),
        // It takes no more of the run than the stairs do: 192 - 48.
        (GuardTotal, &[(RunLength, 192.0), (StairWidth, 48.0)], 144.0),
        // The corner post 5 in from the edge, the next 62 on.
        (PostMark, &[(Line, 5.0), (BayCentre, 62.0)], 67.0),
        // 29 up, and 12 1/2 lower further out, nobody says over how far: 41 1/2. Over 60 it falls 7 1/2 in the 36 that count.
        (Drop, &[(Grade, 29.0), (Fall, 12.5)], 41.5),
        (Drop, &[(Grade, 29.0), (Fall, 12.5), (FallOver, 60.0)], 36.5),
        // Ground that rises makes no drop less.
        (Drop, &[(Grade, 29.0), (Fall, 0.0)], 29.0),
    ]);
}
