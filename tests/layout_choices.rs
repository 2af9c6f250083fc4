//! Posts where they were told, mirrored, kept off things; corners shared without an outline;
//! joists under runs of every kind. Every mark is worked out by hand in the comment above it.
//! Posts are 4x4, 3 1/2 dressed (PS 20 size table), no more than 72 on centre (AWC DCA 6, from
//! figure). Where posts go within that is common practice, no source.

mod common;

use common::{basis, centres, frac, inches, placed, run, stairs, texts};
use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::figure::Value;
use railhand::job::{
    Basis, Choice, End, EndOf, Fact, Gate, GateAt, Impossible, Job, JoistsRun, KeepOff, Mount, RunId, RunPatch,
    Setting, Spot, StairAt, StairOpening, Stairs, Thing, Told, Turn,
};
use railhand::layout::{Focus, Kind, Lack, Layout, Part, Took, Under, answer, lay_out};
use railhand::measure::Length;

fn mark(said: &str) -> Length {
    let part = |p: &str| {
        let (n, d) = p.split_once('/').unwrap_or((p, "1"));
        let number = |s: &str| s.parse::<i128>().expect("a mark is a number");
        frac(number(n), number(d))
    };
    said.split(' ').map(part).sum()
}

fn at(l: i64, end: EndOf) -> Choice {
    Choice::Post(Spot { at: inches(l), end })
}

fn off(by: i64, of: Thing) -> Choice {
    Choice::KeepOff(KeepOff { by: inches(by), of })
}

fn choosing(patch: RunPatch, choices: &[Choice]) -> RunPatch {
    RunPatch { choices: choices.to_vec(), ..patch }
}

fn laid(patch: RunPatch) -> Layout {
    common::laid(&[], patch)
}

/// Holds a run to its marks.
fn holds(name: &str, patch: RunPatch, want: &[&str]) {
    let layout = laid(patch);
    let want: Vec<Length> = want.iter().map(|m| mark(m)).collect();
    assert_eq!(centres(placed(&layout)), want, "{name}");
}

fn sixteen() -> RunPatch {
    run(inches(192), End::House, End::Corner)
}

/// A side of the deck between two corners, along its edge, posts on the edge.
fn front(length: &str) -> RunPatch {
    basis(run(mark(length), End::Corner, End::Corner), Basis::Edge)
}

#[test]
fn a_told_post_is_kept_and_each_side_of_it_is_split_evenly() {
    // 192 out to out: end centres 1 3/4 and 190 1/4. At 84: 82 1/4 before it, two of 41 1/8; 106 1/4
    // after, two of 53 1/8.
    holds("7 ft", choosing(sixteen(), &[at(84, EndOf::From)]), &["1 3/4", "42 7/8", "84", "137 1/8", "190 1/4"]);
    // 60 from the corner is 132: 130 1/4 before, two of 65 1/8; 58 1/4 after, one.
    holds("5 ft off the corner", choosing(sixteen(), &[at(60, EndOf::To)]), &["1 3/4", "66 7/8", "132", "190 1/4"]);
    // Two told: 1 3/4 to 60 is 58 1/4; 60 to 120 is 60; 120 to 190 1/4 is 70 1/4. One bay each.
    let two = [at(60, EndOf::From), at(120, EndOf::From)];
    holds("two", choosing(sixteen(), &two), &["1 3/4", "60", "120", "190 1/4"]);
    // Told bays are shared so that the longest is shortest: four over 82 1/4 and 106 1/4, two each.
    let four = RunPatch { bays: Some(Some(4)), ..choosing(sixteen(), &[at(84, EndOf::From)]) };
    holds("four bays", four, &["1 3/4", "42 7/8", "84", "137 1/8", "190 1/4"]);
    // Clear 185 between the faces: told 84 from the house post's inside face, which is the origin here;
    // ends at -1 3/4 and 186 3/4. 85 3/4 before, two of 42 7/8; 102 3/4 after, two of 51 3/8.
    let clear = choosing(basis(run(inches(185), End::House, End::Corner), Basis::Clear), &[at(84, EndOf::From)]);
    let layout = laid(clear);
    assert_eq!(centres(placed(&layout))[1..4], ["41 1/8", "84", "135 3/8"].map(mark));
    // From the decking's corner on the edge: 40 is one bay; 152 after it, three of 50 2/3.
    holds("edge", choosing(front("192"), &[at(40, EndOf::From)]), &["0", "40", "90 2/3", "141 1/3", "192"]);
    // The line 5 in moves the corner posts and not the told one: 35, then 147 in three of 49.
    let inside = [Setting::Line(inches(5))];
    let layout = common::laid(&inside, choosing(front("192"), &[at(40, EndOf::From)]));
    assert_eq!(centres(placed(&layout)), ["5", "40", "89", "138", "187"].map(mark));
    let kinds: Vec<Kind> = placed(&layout).posts.iter().map(|p| p.kind).collect();
    assert_eq!(kinds[1], Kind::Told);
}

#[test]
fn a_post_that_cannot_stand_where_told_is_not_moved() {
    let lacks = |patch: RunPatch| laid(patch).runs[0].result.clone().expect_err("it can't stand there");
    let stair = |l| choosing(stairs(front("240"), inches(48), StairAt::Middle), &[at(l, EndOf::From)]);
    assert_eq!(lacks(stair(120)), [Lack::PostPlace], "in the stairs");
    assert_eq!(lacks(stair(96)), [Lack::PostPlace], "against the stair head's post, 92 1/2 to 96");
    assert_eq!(lacks(choosing(sixteen(), &[at(4, EndOf::From)])), [Lack::PostPlace], "on the house post");
    // Where a post stands anyway none is added.
    let there = Choice::Post(Spot { at: mark("1 3/4"), end: EndOf::From });
    holds("there", choosing(run(inches(72), End::House, End::Corner), &[there]), &["1 3/4", "70 1/4"]);
    let job = |choices: &[Choice]| {
        let facts = [Fact::Run(RunId(1), sixteen()), Fact::Run(RunId(1), choosing(RunPatch::default(), choices))];
        Job::default().with_all(&facts).expect_err("it cannot be told")
    };
    assert_eq!(job(&[at(193, EndOf::From)]), Impossible::PostOffRun { at: inches(193), run: inches(192) });
    let none = Choice::NoPost(Spot { at: inches(84), end: EndOf::From });
    assert_eq!(job(&[none]), Impossible::NoPostThere { run: RunId(1), at: inches(84) });
    // Shortened past its told post, a run says so.
    let shorter = RunPatch { length: Some(Told::plain(inches(80))), ..RunPatch::default() };
    let facts = [choosing(sixteen(), &[at(84, EndOf::From)]), shorter].map(|p| Fact::Run(RunId(1), p));
    let refused = Job::default().with_all(&facts).expect_err("the post is off the run");
    assert_eq!(refused, Impossible::PostOffRun { at: inches(84), run: inches(80) });
}

#[test]
fn posts_mirrored_about_the_stairs() {
    // 48 in the middle of 240: faces at 96 and 144, stair head centres 94 1/4 and 145 3/4. Told 40 on
    // the left stands as 200 on the right: 40 and 54 1/4, then 54 1/4 and 40.
    let middle = stairs(front("240"), inches(48), StairAt::Middle);
    let both = [at(40, EndOf::From), Choice::Mirrored(true)];
    holds("middle", choosing(middle, &both), &["0", "40", "94 1/4", "145 3/4", "200", "240"]);
    // 60 from the left: opening 60 to 108, centres 58 1/4 and 109 3/4, its middle 84. The corner post at 0
    // stands as 168: 58 1/4 on each side of the stairs, then 72 by itself. Not mirrored, 109 3/4 to 240
    // would be two of 65 1/8.
    let odd = stairs(front("240"), inches(48), StairAt::FromLeft(inches(60)));
    holds("plain", odd.clone(), &["0", "58 1/4", "109 3/4", "174 7/8", "240"]);
    let layout = laid(choosing(odd, &[Choice::Mirrored(true)]));
    assert_eq!(centres(placed(&layout)), ["0", "58 1/4", "109 3/4", "168", "240"].map(mark));
    assert_eq!(placed(&layout).took, [Took::MirroredPart]);
    // 70 and 74 from the stair heads' centres to the corners: one bay and two of 37. They differ by less
    // than a post and 12 in.: two each, 35 and 37.
    let near = stairs(front("195 1/2"), inches(48), StairAt::FromLeft(mark("71 3/4")));
    holds("near, plain", near.clone(), &["0", "70", "121 1/2", "158 1/2", "195 1/2"]);
    let layout = laid(choosing(near, &[Choice::Mirrored(true)]));
    assert_eq!(centres(placed(&layout)), ["0", "35", "70", "121 1/2", "158 1/2", "195 1/2"].map(mark));
    assert_eq!(placed(&layout).took, [Took::SameCount]);
    // Without an opening, about the middle: told 50 stands as 142 too: 50, 92 in two of 46, 50.
    let plain = choosing(front("192"), &[at(50, EndOf::From), Choice::Mirrored(true)]);
    holds("no stairs", plain, &["0", "50", "96", "142", "192"]);
    // An image that would stand in the corner post has no room.
    let tight = choosing(
        stairs(front("240"), inches(48), StairAt::FromLeft(inches(60))),
        &[at(2, EndOf::To), Choice::Mirrored(true)],
    );
    assert!(laid(tight).runs[0].result.is_err());
}

#[test]
fn line_posts_keep_off_what_was_told() {
    let twelve = || run(inches(144), End::House, End::Corner);
    let place = |l| Thing::Spot(Spot { at: inches(l), end: EndOf::From });
    // 1 3/4 to 142 1/4 is 140 1/2: two of 70 1/4, a post at 72. Off 72 by 6: 66 to 78 is barred, so three
    // of 46 5/6.
    holds("plain", twelve(), &["1 3/4", "72", "142 1/4"]);
    let layout = laid(choosing(twelve(), &[off(6, place(72))]));
    assert_eq!(centres(placed(&layout)), ["1 3/4", "48 7/12", "95 5/12", "142 1/4"].map(mark));
    assert!(matches!(&placed(&layout).took[..], [Took::MoreBays(n)] if n.value() == Value::Count(1)));
    // Off it by 25, 47 to 97: three put posts' faces to 50 1/3, four one on 72. Posts as near as they may
    // stand: faces at 47 and 97, centres 45 1/4 and 98 3/4; 43 1/2, 53 1/2, 43 1/2.
    let layout = laid(choosing(twelve(), &[off(25, place(72))]));
    assert_eq!(centres(placed(&layout)), ["1 3/4", "45 1/4", "98 3/4", "142 1/4"].map(mark));
    assert!(matches!(&placed(&layout).took[..], [Took::Edge(_), Took::Edge(_)]));
    // 84 clear of the siding is past any bay of 72 on centre.
    let far = laid(choosing(twelve(), &[off(84, Thing::End(EndOf::From))]));
    assert_eq!(far.runs[0].result, Err(vec![Lack::KeepOff]));
    // What even bays keep off anyway moves nothing: 18 from the corner's face.
    holds("corner", choosing(twelve(), &[off(18, Thing::End(EndOf::To))]), &["1 3/4", "72", "142 1/4"]);
    // 30 off the stairs (96 to 144 in 240): barred 66 to 174. 0 to 94 1/4 in two puts a post at 47 1/8,
    // its faces 45 3/8 and 48 7/8: clear as it is.
    let middle = stairs(front("240"), inches(48), StairAt::Middle);
    let want = ["0", "47 1/8", "94 1/4", "145 3/4", "192 7/8", "240"];
    holds("stairs", choosing(middle.clone(), &[off(30, Thing::Stairs)]), &want);
    // 50 off them: 46 to 194 is barred. In three, 31 5/12 and 62 5/6: the second is in. Four, 70 11/16.
    // So faces at 46, centre 44 1/4, and at 194, centre 195 3/4.
    let want = ["0", "44 1/4", "94 1/4", "145 3/4", "195 3/4", "240"];
    holds("stairs, 50", choosing(middle, &[off(50, Thing::Stairs)]), &want);
    // A told post is the teller's own business: it stands in what line posts keep off.
    let own = choosing(twelve(), &[off(6, place(72)), at(72, EndOf::From)]);
    holds("own", own, &["1 3/4", "72", "142 1/4"]);
    // A gate of 36 at the corner: jamb face 104 1/2, centre 102 3/4. Two of 50 1/2, a post at 52 1/4. 60 off
    // the gate bars 44 1/2 on: three of 33 2/3 have one at 69 1/12. Face at 44 1/2: centre 42 3/4.
    let gate = Gate::new(GateAt::To, Some(inches(36)));
    let gated = RunPatch { gate: Some(Some(gate)), ..choosing(twelve(), &[off(60, Thing::Gate)]) };
    holds("gate", gated, &["1 3/4", "42 3/4", "102 3/4", "142 1/4"]);
}

#[test]
fn what_was_done_is_said() {
    let layout = laid(choosing(sixteen(), &[at(84, EndOf::From)]));
    insta::assert_snapshot!(texts(&answer(&layout, None, Focus::Whole)), @r#"
    5 posts, 4 bays: 2 of 3'-1 5/8", 2 of 4'-1 5/8" clear
    16'-0" taken out to out: from the siding to the outside face of the corner post.
    Marks, tape hooked on the siding: centre of post (near face)
      1 3/4"  (0")  post at the house
      3'-6 7/8"  (3'-5 1/8")  line post
      7'-0"  (6'-10 1/4")  line post where told
      11'-5 1/8"  (11'-3 3/8")  line post
      15'-10 1/4"  (15'-8 1/2")  corner post
    2 bays of 3'-1 5/8" clear, 3'-5 1/8" on centre; 2 bays of 4'-1 5/8" clear, 4'-5 1/8" on centre.
    Post kept where told: 7'-0" from the siding to its centre; what is left on each side of it is split evenly.
    Limit: no more than 6'-0" on centre: AWC DCA 6 (2012/2015), guard pages (from memory, not checked); not in the IRC; local rules decide.
    "#);
}

fn job(runs: Vec<RunPatch>, more: &[Setting]) -> Layout {
    let runs = runs.into_iter().zip(1..).map(|(patch, id)| Fact::Run(RunId(id), patch));
    let facts: Vec<Fact> = more.iter().map(|s| Fact::Set(*s)).chain(runs).collect();
    lay_out(&Job::default().with_all(&facts).expect("the runs can be told"))
}

#[test]
fn runs_told_in_walking_order_share_their_corner_posts() {
    let of = |l, from, to| run(inches(l), from, to);
    let named = |name: &str, patch: RunPatch| RunPatch { name: Some(name.to_owned()), ..patch };
    // 144 house to corner: 140 1/2, two bays, 3 posts. 192 corner to corner: 188 1/2, three bays, 4 posts.
    // 3 + 4 + 3, two of them shared.
    let (out, across, home) =
        (of(144, End::House, End::Corner), of(192, End::Corner, End::Corner), of(144, End::Corner, End::House));
    let walked = job(vec![out.clone(), across.clone(), home.clone()], &[]);
    assert_eq!(walked.distinct_posts(), 8);
    let first = texts(&answer(&walked, None, Focus::Posts)).lines().next().map(str::to_owned);
    let said = "8 posts in all, a corner post that two runs share counted once: a run told after another is taken to start at the corner where that one ends.";
    assert_eq!(first.as_deref(), Some(said));
    // Told by the names of sides, in no order of walking: left, right, then the front between them.
    let sides = vec![named("left", out.clone()), named("right", out.clone()), named("front", across.clone())];
    assert_eq!(job(sides, &[]).distinct_posts(), 8);
    // Left and right lie across from each other: no corner of theirs is one.
    let across_it = vec![named("left", across.clone()), named("right", across.clone())];
    assert_eq!(job(across_it, &[]).distinct_posts(), 8);
    // An inside corner and an outside one are two places.
    let odd = vec![of(144, End::House, End::InsideCorner), across.clone()];
    assert_eq!(job(odd, &[]).distinct_posts(), 7);
    // Outside the rim a corner has two posts: none is shared.
    let outside = job(vec![out, across, home], &[Setting::Mount(Mount::Outside)]);
    assert_eq!(outside.distinct_posts(), 10);
}

fn joists(first: i64, way: JoistsRun) -> [Setting; 3] {
    [Setting::Joists(inches(16)), Setting::FirstJoist(inches(first)), Setting::JoistsRun(way)]
}

fn along(under: &Under, posts: u64) -> bool {
    matches!(under, Under::RimAlong(n) if n.value() == Value::Count(posts))
}

/// Joists 16 on centre, 2-by (1 1/2, PS 20): a 4x4 stands beside one with its centre 2 1/2 from the
/// joist's.
#[test]
fn joists_under_runs_told_without_an_outline() {
    let twelve = || run(inches(144), End::House, End::Corner);
    // Out from the house along joists that run out: the one line post wants blocking.
    let layout = job(vec![twelve()], &joists(8, JoistsRun::Out));
    assert!(along(&layout.framing[0].under, 1));
    // Joists along the house at 8, 24 ... 72: the line post at 72 stands on one. Beside it 69 1/2 or 74 1/2
    // make a bay of 72 3/4: over.
    let under = |layout: &Layout, i: usize| match &layout.framing[i].under {
        Under::Missed(posts) => posts.clone(),
        other => panic!("it lies across the joists: {other:?}"),
    };
    let missed = under(&job(vec![twelve()], &joists(8, JoistsRun::Along)), 0);
    assert_eq!(missed.len(), 1);
    assert!(missed[0].on_joist && missed[0].spot.is_none());
    // Told home to the house, 72 from the corner is 72 from the siding as well.
    let home = under(&job(vec![run(inches(144), End::Corner, End::House)], &joists(8, JoistsRun::Along)), 0);
    assert_eq!(home.len(), 1);
    // Nobody said which way a run between corners goes; a front goes along the house, but where it starts
    // over joists that run out is not told.
    let unknown = job(vec![run(inches(144), End::Corner, End::Corner)], &joists(8, JoistsRun::Along));
    assert_eq!(unknown.framing[0].under, Under::Unknown);
    let named = RunPatch { name: Some("front".to_owned()), ..run(inches(144), End::Corner, End::Corner) };
    assert!(along(&job(vec![named.clone()], &joists(8, JoistsRun::Along)).framing[0].under, 1));
    assert_eq!(job(vec![named], &joists(8, JoistsRun::Out)).framing[0].under, Under::Unknown);
}

fn side(turn: Turn, l: i64) -> RunPatch {
    RunPatch { turn: Some(turn), length: Some(Told::plain(inches(l))), ..RunPatch::default() }
}

#[test]
fn joists_under_clipped_corners_and_recessed_stairs() {
    // A clip of 100 at 45 degrees: its line post crosses the joists at an angle, whichever way they run.
    let clipped = || vec![side(Turn::Start, 120), side(Turn::Right(45), 100), side(Turn::Right(45), 72)];
    for way in [JoistsRun::Out, JoistsRun::Along] {
        let layout = job(clipped(), &joists(8, way));
        assert!(matches!(&layout.framing[1].under, Under::Angled(n) if n.value() == Value::Count(1)));
    }
    // Stairs of 48 let 100 into a deck 144 deep: each flank 100, two bays of 50, one line post, 94 out from
    // the siding. Along joists that run out it wants blocking; joists along the house stand at 88 and 104: 6
    // and 10 off, so it misses them. Beside them 90 1/2 and 101 1/2 keep 72: 90 1/2, 3 1/2 off, is nearest.
    let hole = StairOpening { recess: Some(inches(100)), ..StairOpening::new(inches(48), StairAt::Middle) };
    let front = RunPatch { stairs: Some(Stairs::from(hole)), ..side(Turn::Right(90), 240) };
    let deck = || vec![side(Turn::Start, 144), front.clone(), side(Turn::Right(90), 144)];
    let flanks = |layout: &Layout| -> Vec<Under> {
        let inner = layout.framing.iter().filter(|f| matches!(f.part, Part::InLeft(_) | Part::InRight(_)));
        inner.map(|f| f.under.clone()).collect()
    };
    let out = flanks(&job(deck(), &joists(8, JoistsRun::Out)));
    assert!(out.len() == 2 && out.iter().all(|u| along(u, 1)), "{out:?}");
    // From the mouth in the mark is 50, and 53 1/2 the spot; from the head out 50, and 46 1/2.
    for (under, spot) in flanks(&job(deck(), &joists(8, JoistsRun::Along))).iter().zip(["53 1/2", "46 1/2"]) {
        let Under::Missed(posts) = under else { panic!("{under:?}") };
        assert_eq!(posts.len(), 1);
        assert_eq!(posts[0].spot.as_ref().and_then(|f| f.as_length()), Some(mark(spot)));
    }
}

fn any_choice() -> impl Strategy<Value = Choice> {
    let end = || prop::sample::select(vec![EndOf::From, EndOf::To]);
    let spot = || (8_i128..3000, end()).prop_map(|(n, end)| Spot { at: frac(n, 8), end });
    let thing =
        prop_oneof![end().prop_map(Thing::End), Just(Thing::Stairs), Just(Thing::Gate), spot().prop_map(Thing::Spot)];
    prop_oneof![
        3 => spot().prop_map(Choice::Post),
        1 => Just(Choice::Mirrored(true)),
        2 => (1_i64..40, thing).prop_map(|(by, of)| off(by, of)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// Whatever is chosen: told posts stand exactly where told, no bay passes the limit, and the
    /// spans between fixed places are even unless a post stands at the edge of what it keeps off.
    #[test]
    fn choices_keep_told_posts_and_the_limit(
        l in 300_i128..3000, choices in prop::collection::vec(any_choice(), 0..4),
        opening in prop::option::of((240_i128..480, 0_i128..600)),
    ) {
        let plain = run(frac(l, 8), End::Corner, End::House);
        let patch = match opening {
            Some((wide, from)) => stairs(plain, frac(wide, 8), StairAt::FromLeft(frac(from, 8))),
            None => plain,
        };
        let fact = Fact::Run(RunId(1), choosing(patch, &choices));
        let Ok(job) = Job::default().with(&fact) else { return Ok(()) };
        let layout = lay_out(&job);
        let Ok(p) = &layout.runs[0].result else { return Ok(()) };
        let marks = centres(p);
        prop_assert!(marks.windows(2).all(|m| m[0] < m[1]));
        prop_assert!(p.rail_bays().all(|b| b.spacing <= inches(72)));
        for spot in &job.runs[0].choices.posts {
            let want = if spot.end == EndOf::From { spot.at } else { frac(l, 8) - spot.at };
            prop_assert!(marks.contains(&want), "{want:?} of {marks:?}");
        }
        let bays: Length = p.bays.iter().map(railhand::layout::Bay::clear_length).sum();
        let posts: Length = p.posts.iter().map(railhand::layout::Post::width_length).sum();
        prop_assert_eq!(bays + posts, p.overall);
        for keep in &job.runs[0].choices.keep_off {
            let Thing::Spot(spot) = keep.of else { continue };
            let thing = if spot.end == EndOf::From { spot.at } else { frac(l, 8) - spot.at };
            for post in p.posts.iter().filter(|post| post.kind == Kind::Line) {
                let near = post.near_face.as_length().expect("a mark is a length");
                prop_assert!(near + post.width_length() <= thing - keep.by || near >= thing + keep.by);
            }
        }
    }

    /// Mirrored about stairs in the middle, every mark has its image.
    #[test]
    fn a_mirror_is_one(l in 1200_i128..3000, told in 16_i128..500, wide in 240_i128..480) {
        let patch = stairs(front("240"), frac(wide, 8), StairAt::Middle);
        let patch = RunPatch { length: Some(Told::plain(frac(l, 8))), ..patch };
        let told = Choice::Post(Spot { at: frac(told, 8), end: EndOf::From });
        let layout = laid(choosing(patch, &[told, Choice::Mirrored(true)]));
        let Ok(p) = &layout.runs[0].result else { return Ok(()) };
        let marks = centres(p);
        // A told post on a stair head's own adds none, so four at the least.
        prop_assert!(marks.len() >= 4);
        prop_assert!(marks.iter().all(|m| marks.contains(&(frac(l, 8) - *m))), "{marks:?}");
    }
}
