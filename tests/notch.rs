//! The feet of whole decks: which part comes off each post, where it is marked, which are
//! the same cut. Posts are 4x4, 3 1/2 dressed (PS 20 size table), centred on the baluster
//! line; that halves and quarters come off on the line, three quarters at an inside corner,
//! is common practice, no source.

mod common;

use common::{frac, inches};
use num_rational::Ratio;
use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::job::{
    End, Fact, Foot, Job, Mount, Nosing, NotchTold, PostRole, PostSize, RunId, RunPatch, Setting, Settings, StairAt,
    StairOpening, Told, Turn, Turned,
};
use railhand::measure::{Length, Lumber, decimal};
use railhand::notch::{
    Bolts, Cut, Fault, Feet, Saw, Shape, Size, Spot, Stack, Uncut, batches, draw_faces, draw_foot, feet, telling,
};

const RIGHT: Turn = Turn::Right(90);
const LEFT: Turn = Turn::Left(90);

fn job(facts: &[Fact]) -> Job {
    Job::default().with_all(facts).expect("the deck can be built")
}

fn standing(facts: &[Fact]) -> Feet {
    feet(&job(facts)).expect("the line is known")
}

fn set(s: Setting) -> Fact {
    Fact::Set(s)
}

fn foot(f: Foot) -> Fact {
    Fact::Set(Setting::Foot(f))
}

fn walk(sides: &[(Turn, i64)]) -> Vec<Fact> {
    let side = |(id, (turn, length)): (u32, &(Turn, i64))| {
        let patch = RunPatch { turn: Some(*turn), length: Some(Told::plain(inches(*length))), ..RunPatch::default() };
        Fact::Run(RunId(id), patch)
    };
    (1..).zip(sides).map(side).collect()
}

/// 12 ft out, 16 across, 12 home.
fn rectangle() -> Vec<Fact> {
    walk(&[(Turn::Start, 144), (RIGHT, 192), (RIGHT, 144)])
}

/// 20 ft out, 10 across, 8 back, 6 across, 12 home: one inside corner.
fn ell() -> Vec<Fact> {
    walk(&[(Turn::Start, 240), (RIGHT, 120), (RIGHT, 96), (LEFT, 72), (RIGHT, 144)])
}

fn recessed() -> Vec<Fact> {
    let stairs = StairOpening { recess: Some(inches(30)), ..StairOpening::new(inches(48), StairAt::Middle) };
    let patch = RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() };
    rectangle().into_iter().chain([Fact::Run(RunId(2), patch)]).collect()
}

fn alone(from: End, to: End) -> Vec<Fact> {
    vec![Fact::Run(RunId(1), common::run(inches(120), from, to))]
}

/// The name of each post's cut at the rim, by the kind of post, each kind once.
fn named(feet: &Feet) -> Vec<(&'static str, &'static str)> {
    let mut all: Vec<(&str, &str)> = feet
        .posts
        .iter()
        .map(|p| (p.kind.name(), p.foot.as_ref().map_or("fault", |f| f.lower.shape.name(f.lower.size))))
        .collect();
    all.sort();
    all.dedup();
    all
}

/// On the line: half off at an edge, a quarter at an outside corner, three at an inside
/// one: common practice, no source; the areas are of the structure table.
#[test]
fn every_spot_of_a_deck_has_its_own_cut() {
    let deck = [("corner", "one quadrant"), ("house", "half"), ("line post", "half")];
    assert_eq!(named(&standing(&rectangle())), deck);
    let with_inside =
        [("corner", "one quadrant"), ("house", "half"), ("inside corner", "three quadrants"), ("line post", "half")];
    assert_eq!(named(&standing(&ell())), with_inside);
    // A recessed stair well has two outside corners at its mouth and two inside ones at its
    // head (trade list, common practice, no source).
    let feet = standing(&recessed());
    assert_eq!(named(&feet), with_inside);
    let count = |kind: &str| feet.posts.iter().filter(|p| p.kind.name() == kind).count();
    assert_eq!((count("corner"), count("inside corner")), (4, 2));
    for (end, cut) in [
        (End::Corner, "one quadrant"),
        (End::InsideCorner, "three quadrants"),
        (End::StairHead, "half"),
        (End::House, "half"),
    ] {
        let all = named(&standing(&alone(end, End::StairHead)));
        assert!(all.contains(&(end.name(), cut)), "{all:?}");
    }
}

/// A corner two sides share is one post; its number counts along the walk.
#[test]
fn a_shared_corner_is_one_post() {
    let feet = standing(&rectangle());
    let corners: Vec<_> = feet.posts.iter().filter(|p| p.kind.name() == "corner").map(|p| (p.run, p.shared)).collect();
    assert_eq!(corners, [(RunId(1), Some(RunId(2))), (RunId(2), Some(RunId(3)))]);
    assert_eq!(feet.posts.iter().map(|p| p.number).collect::<Vec<_>>(), (1..=feet.posts.len()).collect::<Vec<_>>());
}

/// Two runs told alone that end and start at one corner share its post too.
#[test]
fn runs_told_one_after_the_other_share_their_corner() {
    let run = |id, from, to| Fact::Run(RunId(id), common::run(inches(120), from, to));
    let feet = standing(&[run(1, End::House, End::Corner), run(2, End::Corner, End::StairHead)]);
    let corners: Vec<_> = feet.posts.iter().filter(|p| p.kind.name() == "corner").map(|p| (p.run, p.shared)).collect();
    assert_eq!(corners, [(RunId(1), Some(RunId(2)))]);
}

/// the line 1 inside the edge takes 2 3/4 of 3 1/2; 1/2 outside it, 1 1/4.
#[test]
fn the_line_moves_the_cut() {
    for (line, deep) in [(inches(1), frac(11, 4)), (frac(-1, 2), frac(5, 4))] {
        let facts: Vec<Fact> =
            alone(End::StairHead, End::StairHead).into_iter().chain([set(Setting::Line(line))]).collect();
        let feet = standing(&facts);
        let foot = feet.posts[0].foot.clone().expect("a foot");
        assert_eq!(foot.lower.shape, Shape::Straight { deep });
    }
}

/// A notch told alone says where the line stands: 1 1/2 off leaves 2, Q-4.
#[test]
fn a_told_notch_is_what_is_cut() {
    let deep = set(Setting::Notch(NotchTold::Deep(frac(3, 2))));
    let facts: Vec<Fact> = alone(End::StairHead, End::StairHead).into_iter().chain([deep.clone()]).collect();
    let told = standing(&facts);
    assert_eq!(told.line.as_ref().and_then(|l| l.as_length()), Some(frac(-1, 4)));
    let foot = told.posts[0].foot.clone().expect("a foot");
    assert_eq!((foot.lower.area_off(), foot.lower.area_left()), (Ratio::new(21, 4), Ratio::from_integer(7)));
    let against: Vec<Fact> = facts.into_iter().chain([set(Setting::Line(inches(1)))]).collect();
    assert!(
        matches!(&standing(&against).posts[0].foot, Err(Fault::NotchAgainstLine(made)) if made.as_length() == Some(frac(11, 4)))
    );
}

/// Decking whole at the post: with the line on the skirt's face and the nosing 1, the edge
/// leg is 3/4 thick where it passes the nosing, at a recessed head 3/4 x 3/4 (trade list,
/// common practice, no source).
#[test]
fn a_whole_nosing_makes_a_stepped_foot() {
    let more = [set(Setting::Overhang(inches(1))), set(Setting::Line(inches(1)))];
    let facts: Vec<Fact> = recessed().into_iter().chain(more).collect();
    assert_eq!(standing(&facts).nosing, None);
    let whole: Vec<Fact> = facts.into_iter().chain([foot(Foot::Nosing(Nosing::Whole))]).collect();
    let feet = standing(&whole);
    let of = |kind: &str| {
        feet.posts.iter().find(|p| p.kind.name() == kind).and_then(|p| p.foot.clone().ok()).expect("a foot")
    };
    let edge = of("line post");
    assert!(edge.is_stepped());
    assert_eq!(edge.upper.shape, Shape::Straight { deep: frac(11, 4) });
    assert_eq!(edge.lower.shape, Shape::Straight { deep: frac(7, 4) });
    // Where it passes the decking 3 1/2 x 3/4 = 2.625 sq in. is left, at the rim 3 1/2 x 1 3/4 = 6.125: the less counts.
    assert_eq!(edge.weakest().area_left(), Ratio::new(21, 8));
    assert_eq!(edge.lower.area_left(), Ratio::new(49, 8));
    let head = of("inside corner").upper;
    assert!(
        matches!(head.shape, Shape::AllButCorner { along, across, .. } if along == frac(3, 4) && across == frac(3, 4)),
        "{head:?}"
    );
}

/// 3/8 and 5/8 over the deck square to one edge, (3 - root 2)/4 split.
#[test]
fn an_angled_corner_turns_the_post_as_told() {
    let area = |turn, turned| {
        let deck = walk(&[(Turn::Start, 144), (turn, 96), (turn, 96), (Turn::Right(90), 240)]);
        let facts: Vec<Fact> = deck.into_iter().chain([foot(Foot::Turned(turned))]).collect();
        let feet = standing(&facts);
        let post = feet.posts.iter().find(|p| p.kind.name() == "angled corner").expect("an angled corner").clone();
        let cut = post.foot.expect("a foot").lower;
        decimal((cut.area_off() * Ratio::from_integer(100_000)).round() / Ratio::from_integer(100_000)).0
    };
    assert_eq!(area(Turn::Right(45), Turned::First), "4.59375");
    assert_eq!(area(Turn::Right(45), Turned::Next), "4.59375");
    assert_eq!(area(Turn::Right(45), Turned::Split), "4.85647");
    assert_eq!(area(Turn::Left(45), Turned::First), "7.65625");
    assert_eq!(area(Turn::Left(45), Turned::Split), "7.39353");
}

/// What is wrong is said of the fact at fault; the rest of the job stands.
#[test]
fn faults_name_the_fact() {
    let with = |more: &[Fact]| {
        let facts: Vec<Fact> = alone(End::StairHead, End::StairHead).into_iter().chain(more.iter().cloned()).collect();
        standing(&facts)
    };
    let first = |feet: &Feet| feet.posts[0].foot.clone();
    assert_eq!(first(&with(&[set(Setting::Line(inches(-2)))])), Err(Fault::OffDeck));
    assert_eq!(first(&with(&[set(Setting::Line(inches(2)))])).map(|f| f.lower.shape), Ok(Shape::Whole));
    let thin = [set(Setting::Post(PostRole::All, PostSize::Width(inches(2)))), set(Setting::Skirt(inches(2)))];
    assert_eq!(first(&with(&thin)), Err(Fault::SkirtTooThick));
    assert_eq!(first(&with(&[set(Setting::Notch(NotchTold::Deep(frac(7, 2))))])), Err(Fault::NothingLeft));
    let angled = alone(End::AngledCorner, End::StairHead);
    assert_eq!(first(&standing(&angled)), Err(Fault::TurnUntold));
    for (mount, cut) in [(Mount::Outside, true), (Mount::Surface, true), (Mount::OverEdge, false)] {
        assert_eq!(with(&[set(Setting::Mount(mount))]).uncut.is_some(), cut, "{mount:?}");
    }
    assert_eq!(with(&[set(Setting::Notch(NotchTold::None))]).uncut, Some(Uncut::Told));
}

/// PS 20: a 2x10 is 9 1/4 tall, 5/4 board 1 thick: the notch is 10 1/4 tall; 36 to the top
/// less a 1 in. cap is 35 to the shoulder; 45 1/4 in all.
#[test]
fn the_lengths_down_a_post() {
    let facts = [foot(Foot::RimTall(frac(37, 4))), foot(Foot::Decking(inches(1))), foot(Foot::Cap(inches(1)))];
    let stack = Stack::of(&job(&facts).settings);
    let of = |fig: Option<railhand::figure::Fig>| fig.and_then(|f| f.as_length());
    assert_eq!(stack.shoulder.as_length(), Some(inches(35)));
    assert_eq!(of(stack.notch_tall()), Some(frac(41, 4)));
    assert_eq!(of(stack.leg.clone()), Some(frac(41, 4)));
    assert_eq!(of(stack.total.clone()), Some(frac(181, 4)));
    let above = Stack::of(&job(&[foot(Foot::Cap(inches(1))), foot(Foot::Above(inches(4)))]).settings);
    assert_eq!((above.shoulder.as_length(), above.total), (Some(inches(40)), None));
}

/// T-1, T-4, T-6 of the structure table: 2x10 5 apart (5 1/4 fits, 5 is the most), 2x8
/// 3 1/4, 2x12 5; the leg passes the lower bolt by 2 at least. A 2x6 has no room.
#[test]
fn bolts_keep_their_edges() {
    let apart = |rim: Length| {
        let told = |l| railhand::figure::Fig::told(l, "told");
        Bolts::of(&Settings::default(), &told(inches(1)), &told(rim))
            .map(|b| (b.upper.as_length(), b.apart.as_length(), b.lower.as_length()))
    };
    let row = |upper, apart, lower| Some((Some(upper), Some(apart), Some(lower)));
    assert_eq!(apart(frac(37, 4)), row(inches(3), inches(5), inches(8)));
    assert_eq!(apart(frac(29, 4)), row(inches(3), frac(13, 4), frac(25, 4)));
    assert_eq!(apart(frac(45, 4)), row(inches(3), inches(5), inches(8)));
    assert_eq!(apart(frac(11, 2)), None);
    // Leg 1 3/4, skirt 3/4, rim 1 1/2, block 1 1/2, and 1: 6 1/2 (trade list, common practice, no source).
    let through =
        [frac(7, 4), frac(3, 4), frac(3, 2), frac(3, 2)].map(|l| ("part", railhand::figure::Fig::told(l, "told")));
    assert_eq!(Bolts::length(through.to_vec()).as_length(), Some(frac(13, 2)));
}

/// Half the chord of a circle by Pythagoras: 10 in. across and 1 3/4 deep, 5^2 - 3.25^2.
#[test]
fn a_round_blade_leaves_a_web() {
    let saw = Saw::of(&job(&[]).settings).expect("a saw");
    let web = saw.web(&railhand::figure::Fig::told(frac(7, 4), "deep")).expect("a web");
    assert_eq!(decimal((web.as_q() * Ratio::from_integer(1000)).round() / Ratio::from_integer(1000)).0, "3.8");
    let small = Saw::of(&job(&[foot(Foot::Blade(frac(29, 4)))]).settings).expect("a saw");
    assert!(small.cuts(frac(7, 4)) && !small.cuts(frac(7, 2)));
}

/// Corner cuts that a quarter turn makes alike are one batch; mirror images are two.
#[test]
fn the_same_cut_is_one_batch() {
    let sizes = |feet: &Feet| batches(feet).iter().map(|b| (b.posts.len(), b.mirrors)).collect::<Vec<_>>();
    let feet = standing(&rectangle());
    let halves = feet.posts.len() - 2;
    assert_eq!(sizes(&feet), [(halves, None), (2, None)]);
    // A post that is not square is cut the other way round at the other corner.
    let size = set(Setting::Post(PostRole::All, PostSize::Lumber(Lumber::by(4, 6))));
    let oblong: Vec<Fact> = alone(End::Corner, End::Corner).into_iter().chain([size]).collect();
    assert_eq!(sizes(&standing(&oblong)), [(1, None), (1, None), (1, Some(0))]);
}

#[test]
fn drawings_fit_the_page_and_show_the_quarters() {
    let feet = standing(&ell());
    let of = |kind: &str| {
        feet.posts.iter().find(|p| p.kind.name() == kind).and_then(|p| p.foot.clone().ok()).expect("a foot")
    };
    let stack = Stack::of(&job(&[foot(Foot::RimTall(frac(37, 4)))]).settings);
    for (kind, off, left) in [("corner", 1, 3), ("inside corner", 3, 1), ("line post", 1, 1)] {
        let foot = of(kind);
        let drawn = draw_foot(&foot.lower);
        let count = |c| drawn.iter().flat_map(|row| row.chars()).filter(|x| *x == c).count();
        assert_eq!(count('x') * left, count('#') * off, "{kind}");
        let faces = draw_faces(&foot, &stack, telling(&foot.lower), railhand::measure::Tape::SIXTEENTHS);
        assert!(drawn.iter().chain(&faces).all(|row| row.chars().count() <= 80 && row.is_ascii()), "{kind}");
        assert!(faces.iter().any(|row| row.contains("shoulder, 36\"")), "{faces:?}");
    }
}

/// Every fourth of the plane round a corner at (x, y) that turns so many degrees, as a deck.
fn corner_deck(x: i64, y: i64, degrees: i32, turn: i32) -> Vec<Spot> {
    let (far, at) = (inches(400), (Length::sixteenths(x), Length::sixteenths(y)));
    let way = |d: i32| railhand::measure::sin_cos(d);
    let step = |p: Spot, d: i32, l: Length| {
        let (sin, cos) = way(d);
        (p.0 + l.times(sin.q()).expect("in range"), p.1 + l.times(cos.q()).expect("in range"))
    };
    let (start, end) = (step(at, degrees, -far), step(at, degrees + turn, far));
    let mut deck = vec![start, at, end];
    // Round the back in steps, clockwise from the edge going out to the edge coming in.
    deck.extend((degrees + turn + 50..degrees + 180).step_by(50).map(|d| step(at, d, far * 2)));
    deck
}

/// The share of a fine grid of points of the post that lie in the deck, told edge by edge:
/// inside both edges of an outside corner, inside either of an inside one.
fn sampled(size: f64, x: i64, y: i64, degrees: i32, turn: i32) -> f64 {
    let n = 240;
    let (cx, cy) = (x as f64 / 16.0, y as f64 / 16.0);
    let behind = |d: i32, px: f64, py: f64| {
        let (sin, cos) = f64::from(d).to_radians().sin_cos();
        (px - cx) * cos - (py - cy) * sin >= 0.0
    };
    let place = |k: i32| ((f64::from(k) + 0.5) / f64::from(n) - 0.5) * size;
    let inside = |px, py| {
        let (a, b) = (behind(degrees, px, py), behind(degrees + turn, px, py));
        if turn > 0 { a && b } else { a || b }
    };
    let count = (0..n).flat_map(|i| (0..n).map(move |j| (i, j))).filter(|(i, j)| inside(place(*i), place(*j))).count();
    count as f64 / f64::from(n * n) * size * size
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Off and left make the post, and the overlay agrees with counting points.
    #[test]
    fn the_overlay_agrees_with_counting_points(
        x in -48_i64..48, y in -48_i64..48, degrees in 0_i32..360, turn in prop_oneof![-150_i32..-5, 5_i32..150], six in any::<bool>(),
    ) {
        let side = if six { frac(11, 2) } else { frac(7, 2) };
        let cut = Cut::at(Size::square(side), corner_deck(x, y, degrees, turn)).expect("on the grid");
        let whole = side.q() * side.q();
        let slack = Ratio::new(1, 1_000_000);
        let apart = cut.area_off() + cut.area_left() - whole;
        prop_assert!(apart < slack && -apart < slack);
        let counted = sampled(side.for_drawing(), x, y, degrees, turn);
        let off = Length::from_q((cut.area_off() * Ratio::from_integer(1_000_000)).round() / Ratio::from_integer(1_000_000)).expect("in range");
        // A grid of 240 misses at most its cells along the two edges.
        prop_assert!((off.for_drawing() - counted).abs() < side.for_drawing() * side.for_drawing() * 4.0 / 240.0, "{} against {counted}", off.for_drawing());
    }

    /// Square to the deck the areas are exact, however the line lies.
    #[test]
    fn square_cuts_are_exact(line in -27_i64..27, inside_corner in any::<bool>()) {
        let facts: Vec<Fact> = if inside_corner { ell() } else { rectangle() };
        let facts: Vec<Fact> = facts.into_iter().chain([set(Setting::Line(Length::sixteenths(line)))]).collect();
        let feet = standing(&facts);
        for post in &feet.posts {
            let foot = post.foot.as_ref().expect("a foot");
            prop_assert_eq!(foot.lower.area_off() + foot.lower.area_left(), Ratio::new(49, 4));
        }
    }

    /// Told from its other end, a run's posts are cut the same, mirrored.
    #[test]
    fn the_same_from_either_end(line in -27_i64..27, from in 0_usize..4, to in 0_usize..4, length in 40_i64..300) {
        let ends = [End::Corner, End::InsideCorner, End::StairHead, End::House];
        let told = |from: End, to: End| {
            let run = Fact::Run(RunId(1), common::run(inches(length), from, to));
            standing(&[set(Setting::Line(Length::sixteenths(line))), run])
        };
        let (there, back) = (told(ends[from], ends[to]), told(ends[to], ends[from]));
        let areas = |feet: &Feet| feet.posts.iter().map(|p| p.foot.as_ref().map(|f| (f.lower.area_off(), f.lower.shape.name(f.lower.size))).ok()).collect::<Vec<_>>();
        let mut turned = areas(&back);
        turned.reverse();
        prop_assert_eq!(areas(&there), turned);
    }
}

/// A 4x6 stands with its wide side along the run: 5 1/2 by 3 1/2 (PS 20 size table).
#[test]
fn a_post_that_is_not_square() {
    let size = set(Setting::Post(PostRole::All, PostSize::Lumber(Lumber::by(4, 6))));
    let facts: Vec<Fact> = alone(End::StairHead, End::StairHead).into_iter().chain([size]).collect();
    let post = standing(&facts).posts[0].clone();
    assert_eq!((post.size.along, post.size.across), (frac(11, 2), frac(7, 2)));
}
