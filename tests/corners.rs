//! Corners of whole decks: the feet of an angled corner from either side, rails and caps that
//! come to them. Posts are 4x4, 3 1/2 dressed, a 2x4 3 1/2 by 1 1/2, a 2x6 5 1/2 wide (PS 20
//! size table); all else is plane geometry, worked by hand or by the clipping below.

mod common;

use common::{clears, frac, inches};
use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::job::{
    Fact, Foot, Job, Lie, Member, Mount, Nosing, Order, RunId, RunPatch, Setting, StairAt, StairOpening, Told, Turn,
    Turned,
};
use railhand::layout::lay_out;
use railhand::measure::{Length, Lumber};
use railhand::notch::{Cut, Feet, Level, Spot, batches, feet, same_cut, section_corners};
use railhand::strength::section::{Push, Section};
use railhand::takeoff::{What, caps, parts};

const RIGHT: Turn = Turn::Right(90);
const BEND: Turn = Turn::Right(45);

fn job(facts: &[Fact]) -> Job {
    Job::default().with_all(facts).expect("the deck can be built")
}

fn set(s: Setting) -> Fact {
    Fact::Set(s)
}

fn foot(f: Foot) -> Fact {
    set(Setting::Foot(f))
}

fn walk(sides: &[(Turn, Length)]) -> Vec<Fact> {
    let side = |(id, (turn, length)): (u32, &(Turn, Length))| {
        let patch = RunPatch { turn: Some(*turn), length: Some(Told::plain(*length)), ..RunPatch::default() };
        Fact::Run(RunId(id), patch)
    };
    (1..).zip(sides).map(side).collect()
}

/// 16 by 12 ft, its front left corner clipped at 45 degrees so far along both sides.
fn clipped(by: i64) -> Vec<(Turn, Length)> {
    let slant = Length::diagonal(inches(by), inches(by)).expect("in range");
    vec![(Turn::Start, inches(144 - by)), (BEND, slant), (BEND, inches(192 - by)), (RIGHT, inches(144))]
}

/// The same deck seen in a mirror: the sides the other way round, each turn before the side
/// that it came after.
fn mirrored(sides: &[(Turn, Length)]) -> Vec<(Turn, Length)> {
    let turns = sides[1..].iter().rev().map(|s| s.0);
    std::iter::once(Turn::Start).chain(turns).zip(sides.iter().rev().map(|s| s.1)).collect()
}

fn on_line(line: Length, overhang: Length, turned: Turned) -> Vec<Fact> {
    vec![
        set(Setting::Line(line)),
        set(Setting::Overhang(overhang)),
        foot(Foot::Nosing(Nosing::CutBack)),
        foot(Foot::Turned(turned)),
    ]
}

fn standing(sides: &[(Turn, Length)], more: &[Fact]) -> Feet {
    let facts: Vec<Fact> = walk(sides).into_iter().chain(more.iter().cloned()).collect();
    feet(&job(&facts)).expect("the line is known")
}

fn angled(feet: &Feet) -> Vec<Option<Cut>> {
    let posts = feet.posts.iter().filter(|p| p.kind.name() == "angled corner");
    posts.map(|p| p.foot.as_ref().ok().map(|f| f.lower.clone())).collect()
}

/// What of a square so wide lies behind two edges, each so far out from its center, its way
/// out so many degrees right of the square's: Sutherland and Hodgman's clipping, and the
/// shoelace formula. Nothing of the program's own is in it.
fn behind(side: f64, out: f64, edges: [f64; 2]) -> f64 {
    let h = side / 2.0;
    let mut ring = vec![(-h, -h), (h, -h), (h, h), (-h, h)];
    for degrees in edges {
        let (x, y) = degrees.to_radians().sin_cos();
        let past = |p: (f64, f64)| p.0 * x + p.1 * y - out;
        let mut kept = Vec::new();
        for (k, here) in ring.iter().enumerate() {
            let before = ring[(k + ring.len() - 1) % ring.len()];
            let (a, b) = (past(before), past(*here));
            if (a > 0.0) != (b > 0.0) {
                let t = a / (a - b);
                kept.push((before.0 + (here.0 - before.0) * t, before.1 + (here.1 - before.1) * t));
            }
            if b <= 0.0 {
                kept.push(*here);
            }
        }
        ring = kept;
    }
    let cross = |k: usize| {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        a.0 * b.1 - b.0 * a.1
    };
    (0..ring.len()).map(cross).sum::<f64>() / 2.0
}

/// How the two edges of a 45-degree corner stand to a post turned so.
fn edges(turned: Turned) -> [f64; 2] {
    match turned {
        Turned::Split => [-22.5, 22.5],
        Turned::First => [0.0, 45.0],
        Turned::Next => [-45.0, 0.0],
    }
}

fn area(cut: Option<&Cut>) -> f64 {
    let shown = |c: &Cut| *c.area_off().numer() as f64 / *c.area_off().denom() as f64;
    cut.map_or(0.0, shown)
}

/// The line 10 mm inside the edge and the nosing 1 in. back, the posts' centers stand 0.60630
/// outside the rim's two edges: 6.125 - 3.5 x 0.60630 / cos 22.5 - 3.0625 x tan 22.5 = 2.5596
/// square inches come off at both corners.
#[test]
fn the_two_corners_of_a_clip_are_cut_alike() {
    let mm = |n: i128| Length::new(n * 5, 127).expect("in range");
    for line in [mm(10), mm(-10), mm(25), mm(-30), inches(1), frac(7, 4), frac(-3, 4), frac(11, 4), inches(3)] {
        let feet = standing(&clipped(48), &on_line(line, inches(1), Turned::Split));
        let cuts = angled(&feet);
        let worked = behind(3.5, line.for_drawing() - 1.0, edges(Turned::Split));
        for cut in &cuts {
            assert!((area(cut.as_ref()) - worked).abs() < 1e-5, "{line:?}: {} against {worked}", area(cut.as_ref()));
        }
        let posts: Vec<_> = feet.posts.iter().filter(|p| p.kind.name() == "angled corner").collect();
        assert_eq!(posts.len(), 2);
        assert!(worked == 0.0 || same_cut(posts[0], posts[1]), "{line:?}");
    }
    let ten = area(angled(&standing(&clipped(48), &on_line(mm(10), inches(1), Turned::Split)))[0].as_ref());
    assert!((ten - 2.5596).abs() < 1e-4, "{ten}");
}

/// The rim's first edge along a face of the post: nothing of it is cut at the line 3/4 outside
/// the edge (1 3/4 out of the rim), all of it behind that edge at 2 3/4 inside; no hairline is
/// a cut, and both corners are one batch.
#[test]
fn an_edge_along_a_face_leaves_no_hairline() {
    for (line, off) in [(frac(-3, 4), None), (frac(11, 4), Some(1.75))] {
        for turned in [Turned::First, Turned::Next] {
            let feet = standing(&clipped(48), &on_line(line, inches(1), turned));
            for cut in angled(&feet) {
                let worked = off.map_or(0.0, |out| behind(3.5, out, edges(turned)));
                assert_eq!(cut.is_some(), off.is_some(), "{line:?} {turned:?}");
                assert!((area(cut.as_ref()) - worked).abs() < 1e-5, "{line:?} {turned:?}");
            }
            let both = batches(&feet).iter().filter(|b| b.posts.iter().any(|k| feet.posts[*k].turn == 45)).count();
            assert_eq!(both, usize::from(off.is_some()), "{line:?} {turned:?}");
        }
    }
}

fn near(a: Length, b: Length) -> bool {
    (a - b).for_drawing().abs() < 1e-5
}

/// True where the one foot is the other in a mirror, the other turned so many quarters.
fn mirrors(one: &Cut, other: &Cut, quarters: u8) -> bool {
    let turned = |(x, y): Spot| (0..quarters).fold((x, y), |(x, y), _| (-y, x));
    let corners = |c: &Cut| c.left.iter().flatten().copied().collect::<Vec<Spot>>();
    let (a, b) = (corners(one), corners(other));
    let met = |p: &Spot, q: Spot| near(p.0, -q.0) && near(p.1, q.1);
    a.len() == b.len() && a.iter().all(|p| b.iter().any(|q| met(p, turned(*q))))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Each angled corner's foot against the clipping, and a deck's feet against those of the
    /// deck seen in a mirror, a post square to the side walked first being square to the next.
    #[test]
    fn a_mirrored_deck_has_mirrored_feet(
        mm in -60_i128..90, over in 0_i64..32, by in 30_i64..70, which in 0_usize..3,
    ) {
        let (line, over) = (Length::new(mm * 5, 127).expect("in range"), Length::sixteenths(over));
        let (there, back) = [(Turned::First, Turned::Next), (Turned::Next, Turned::First), (Turned::Split, Turned::Split)][which];
        let deck = clipped(by);
        let (one, other) = (standing(&deck, &on_line(line, over, there)), standing(&mirrored(&deck), &on_line(line, over, back)));
        let worked = behind(3.5, (line - over).for_drawing(), edges(there));
        for cut in angled(&one) {
            prop_assert!((area(cut.as_ref()) - worked).abs() < 1e-5, "{} against {worked}", area(cut.as_ref()));
        }
        prop_assert_eq!(one.posts.len(), other.posts.len());
        for (a, b) in one.posts.iter().zip(other.posts.iter().rev()) {
            match (&a.foot, &b.foot) {
                (Ok(x), Ok(y)) => {
                    // At a right angle the post is square to both sides: a quarter turn is no other cut.
                    let quarters = if a.turn == 90 { 0..4 } else { 0..1 };
                    prop_assert!(quarters.clone().any(|q| mirrors(&x.lower, &y.lower, q)), "{:?} {:?}", x.lower.left, y.lower.left);
                }
                (x, y) => prop_assert_eq!(x.as_ref().err(), y.as_ref().err()),
            }
        }
    }
}

/// 12 ft out, 4 ft at 45, 16 across, 4 at 45, 12 home.
fn octagon() -> Vec<(Turn, Length)> {
    [(Turn::Start, 144), (BEND, 48), (BEND, 192), (BEND, 48), (BEND, 144)].map(|(t, l)| (t, inches(l))).to_vec()
}

fn rails_of(run: u32, turned: Turned, lie: Lie) -> Vec<(Length, Vec<String>)> {
    let more = [
        set(Setting::Line(inches(0))),
        foot(Foot::Turned(turned)),
        Fact::Order(Order::Rail(Member::Top, Some(Lumber::by(2, 4)))),
        Fact::Order(Order::Lay(Member::Top, lie)),
    ];
    let job = job(&walk(&octagon()).into_iter().chain(more).collect::<Vec<_>>());
    let all = parts(&job, &lay_out(&job), |_| None).expect("the bays can be filled");
    let of_run =
        |p: &&railhand::takeoff::Part| p.what == What::TopRail && p.at.iter().any(|w| w.run() == Some(RunId(run)));
    let bevels = |p: &railhand::takeoff::Part| p.bevels.iter().flatten().map(|s| s.degrees().to_string()).collect();
    all.list.iter().filter(of_run).map(|p| (p.cut.expect("a length"), bevels(p))).collect()
}

/// A post that splits a 45-degree turn takes 3.5 / cos 22.5 = 3.7884 of the line, its face
/// 1.8942 from its center: of 48 between centers 44.2116 is clear along the middle. Beveled
/// 22 1/2 at both ends a 2x4 on edge is 2 x 0.75 x tan 22.5 = 0.6213 longer at its long edge,
/// 44.8329, on the tape 44 13/16; on the flat 2 x 1.75 x 0.41421 = 1.4497, 45.6613, 45 11/16.
#[test]
fn a_rail_between_posts_that_split_the_turn() {
    let facts: Vec<Fact> = walk(&octagon())
        .into_iter()
        .chain([set(Setting::Line(inches(0))), foot(Foot::Turned(Turned::Split))])
        .collect();
    let layout = lay_out(&job(&facts));
    let slant = layout.runs[1].result.as_ref().expect("it can be laid out");
    assert_eq!(clears(slant).iter().map(|l| l.rounded(10_000)).collect::<Vec<_>>(), [frac(442_116, 10_000)]);
    let both = || vec!["45/2".to_owned(), "45/2".to_owned()];
    assert_eq!(rails_of(2, Turned::Split, Lie::Edge), [(frac(717, 16), both())]);
    assert_eq!(rails_of(2, Turned::Split, Lie::Flat), [(frac(731, 16), both())]);
}

/// Square to the side walked first, the next side's rail comes to the post's corner, 1.75 x
/// root 2 = 2.4749 from its center: 48 - 2.4749 - 1.75 = 43.7751 clear, and its two edges
/// reach 0.75 past the corner: 44.5251, on the tape 44 1/2. That side's far post is square to it.
#[test]
fn a_rail_that_comes_to_a_posts_corner() {
    assert_eq!(rails_of(2, Turned::First, Lie::Edge), [(frac(89, 2), vec!["45".to_owned()])]);
    assert_eq!(rails_of(2, Turned::Next, Lie::Edge), [(frac(89, 2), vec!["45".to_owned()])]);
}

/// Nobody said how the posts are turned: as before, 48 - 3 1/2 = 44 1/2 and square cuts.
#[test]
fn a_rail_between_posts_nobody_turned() {
    let facts: Vec<Fact> = walk(&octagon()).into_iter().chain([set(Setting::Line(inches(0)))]).collect();
    let layout = lay_out(&job(&facts));
    assert_eq!(clears(layout.runs[1].result.as_ref().expect("it can be laid out")), [frac(89, 2)]);
}

fn recessed(more: &[Fact]) -> Vec<Fact> {
    let sides = [(Turn::Start, 144), (RIGHT, 192), (RIGHT, 144)].map(|(t, l)| (t, inches(l)));
    let stairs = StairOpening { recess: Some(inches(30)), ..StairOpening::new(inches(48), StairAt::Middle) };
    let front = Fact::Run(RunId(2), RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() });
    walk(&sides).into_iter().chain([front]).chain(more.iter().cloned()).collect()
}

/// The caps, 5 1/2 wide, by run and stretch.
fn cap_lengths(facts: &[Fact]) -> Vec<(String, Length)> {
    let layout = lay_out(&job(facts));
    let all = caps(&layout, frac(11, 2), None).expect("no stick is too short");
    all.iter().map(|c| (c.at.label(), c.length)).collect()
}

/// The caps of [`recessed`]: a side, the front's two, the two flanks, a side.
fn around_the_mouth(side: Length, front: Length, flank: Length) -> Vec<(String, Length)> {
    let runs = ["run 1", "run 2", "run 2", "run 2-in-left", "run 2-in-right", "run 3"];
    runs.map(str::to_owned).into_iter().zip([side, front, front, flank, flank, side]).collect()
}

/// On the decking's edge the caps turn on its corners: past each corner a long point reaches
/// half the width, 2 3/4. The sides 144 + 2 3/4 from the wall; the front 72 to the stairs'
/// mouth, mitered at both ends, 77 1/2; each flank 30 to the head's post, 2 3/4 past the mouth
/// and 1 3/4 past the center at its square end, 34 1/2.
#[test]
fn caps_meet_at_the_mouth_of_recessed_stairs() {
    let on_edge = [set(Setting::Line(inches(0)))];
    let (side, front, flank) = (frac(587, 4), frac(155, 2), frac(69, 2));
    assert_eq!(cap_lengths(&recessed(&on_edge)), around_the_mouth(side, front, flank));
    // The line 1 inside: a corner 1 in from each of the front's, 70 + 5 1/2; sides 143 + 2 3/4.
    let inside = cap_lengths(&recessed(&[set(Setting::Line(inches(1)))]));
    assert_eq!(inside[1].1, frac(151, 2));
    assert_eq!((inside[0].1, inside[3].1), (frac(583, 4), flank));
}

/// Outside a flush rim the line stands 1 3/4 off the edge and each corner has two posts, held
/// back 2 1/2: the caps go past them to the line's corner. Side 144 + 1 3/4 + 2 3/4; front from
/// 1 3/4 before the corner to 1 3/4 into the mouth, 72 + 3 1/2 + 5 1/2; a flank from 1 3/4 out
/// of the mouth to 1 3/4 short of the head's corner, 30 + 2 3/4 + 1 3/4.
#[test]
fn caps_meet_past_the_two_posts_of_a_corner() {
    let outside =
        [set(Setting::Mount(Mount::Outside)), set(Setting::Overhang(inches(0))), set(Setting::Skirt(inches(0)))];
    let (side, front, flank) = (frac(297, 2), inches(81), frac(69, 2));
    assert_eq!(cap_lengths(&recessed(&outside)), around_the_mouth(side, front, flank));
}

/// At a 45-degree corner a cap 5 1/2 wide reaches 2.75 x tan 22.5 = 1.1391 past the corner: 48
/// and twice that is 50.278, cut 50 5/16.
#[test]
fn caps_meet_at_an_angled_corner() {
    let facts: Vec<Fact> = walk(&octagon()).into_iter().chain([set(Setting::Line(inches(0)))]).collect();
    assert_eq!(cap_lengths(&facts)[1], ("run 2".to_owned(), frac(805, 16)));
}

/// Square leg 3/4 x 3/4 at the head of recessed stairs past a nosing left whole (line 1, nosing
/// 1): its section modulus is 0.75 cubed over 6, 9/128. Cut back it is 1 3/4 square, 343/384.
/// With no recess the weakest is an edge's leg, 3 1/2 by 3/4: 3.5 x 0.75 squared over 6, 21/64.
#[test]
fn the_weakest_foot_of_a_deck() {
    let told = |nosing| [set(Setting::Line(inches(1))), set(Setting::Overhang(inches(1))), foot(Foot::Nosing(nosing))];
    let of = |facts: &[Fact]| {
        let feet = feet(&job(facts)).expect("the line is told");
        let cut = feet.posts.iter().filter_map(|p| Some((p, p.foot.as_ref().ok()?.weakest_level())));
        let judged = cut.map(|(p, (level, cut))| {
            let ring = cut.left.first().expect("something is left");
            let section = Section::of(&section_corners(ring), vec![("post", p.width.clone())]).expect("a section");
            (p.kind.name(), level, section.modulus(Push::Free).expect("a modulus").as_q())
        });
        judged.min_by_key(|j| j.2).expect("posts are cut")
    };
    let whole = of(&recessed(&told(Nosing::Whole)));
    assert_eq!(whole, ("inside corner", Level::Decking, num_rational::Ratio::new(9, 128)));
    let back = of(&recessed(&told(Nosing::CutBack)));
    assert_eq!((back.1, back.2), (Level::Rim, num_rational::Ratio::new(343, 384)));
    let plain = [(Turn::Start, 144), (RIGHT, 192), (RIGHT, 144)].map(|(t, l)| (t, inches(l)));
    let facts: Vec<Fact> = walk(&plain).into_iter().chain(told(Nosing::Whole)).collect();
    let edge = of(&facts);
    assert_eq!((edge.1, edge.2), (Level::Decking, num_rational::Ratio::new(21, 64)));
    assert!(edge.0 != "corner");
    // Nobody said what becomes of the nosing: taken as cut back.
    assert_eq!(of(&recessed(&told(Nosing::Whole)[..2])).2, back.2);
}
