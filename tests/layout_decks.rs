//! Whole decks, every post mark worked out by hand in the comment above its case. Posts are
//! 4x4, 3 1/2 dressed (PS 20 size table), no more than 72 on centre (AWC DCA 6, from memory),
//! unless a case says otherwise. Where a post stands by its mount is common practice, no source.

mod common;

use common::{frac, inches, text};
use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::figure::{Fig, Value};
use railhand::job::{
    End, Fact, Gate, GateAt, HouseEnd, Impossible, Job, JoistsRun, Mount, PostRole, PostSize, RunId, RunPatch, Setting,
    StairAt, StairOpening, Stairs, Told, Turn,
};
use railhand::layout::{Lack, Layout, Part, Placed, Under, lay_out, line_inside, plan};
use railhand::measure::{Length, Lumber};
use railhand::rules::{RULES, check};

const RIGHT: Turn = Turn::Right(90);
const LEFT: Turn = Turn::Left(90);

/// "70 3/8", "-5", "65 2/3" in inches.
fn mark(said: &str) -> Length {
    let (sign, said) = said.strip_prefix('-').map_or((1, said), |rest| (-1, rest));
    let part = |p: &str| {
        let (n, d) = p.split_once('/').unwrap_or((p, "1"));
        let number = |s: &str| s.parse::<i128>().expect("a mark is a number");
        frac(sign * number(n), number(d))
    };
    said.split(' ').map(part).sum()
}

fn side(id: u32, turn: Turn, length: Length) -> Fact {
    Fact::Run(RunId(id), RunPatch { turn: Some(turn), length: Some(Told::plain(length)), ..RunPatch::default() })
}

fn on(id: u32, patch: RunPatch) -> Fact {
    Fact::Run(RunId(id), patch)
}

fn walk(sides: &[(Turn, Length)], more: &[Fact]) -> Vec<Fact> {
    let sides = sides.iter().zip(1..).map(|((turn, length), id)| side(id, *turn, *length));
    sides.chain(more.iter().cloned()).collect()
}

/// 12 ft out, 16 across, 12 home.
fn rectangle() -> [(Turn, Length); 3] {
    [(Turn::Start, inches(144)), (RIGHT, inches(192)), (RIGHT, inches(144))]
}

/// 20 ft out, 10 across, 8 back, 6 across, 12 home.
fn ell() -> [(Turn, Length); 5] {
    [(Turn::Start, inches(240)), (RIGHT, inches(120)), (RIGHT, inches(96)), (LEFT, inches(72)), (RIGHT, inches(144))]
}

fn laid(facts: &[Fact]) -> Layout {
    lay_out(&Job::default().with_all(facts).expect("the deck can be built"))
}

fn of(layout: &Layout, i: usize) -> &Placed {
    layout.runs[i].result.as_ref().expect("the run can be laid out")
}

fn marks(layout: &Layout) -> Vec<Vec<Length>> {
    (0..layout.runs.len()).map(|i| common::centres(of(layout, i))).collect()
}

/// Overhang 1, skirt 3/4, rim 1 1/2, half a 4x4 1 3/4: the line 5 inside the edge.
fn inside_the_rim() -> Vec<Fact> {
    let told = [Setting::Mount(Mount::Inside), Setting::Overhang(inches(1)), Setting::Skirt(frac(3, 4))];
    told.map(Fact::Set).to_vec()
}

fn outside_the_rim() -> Vec<Fact> {
    vec![Fact::Set(Setting::Mount(Mount::Outside))]
}

fn stairs_in_front(width: i64, at: StairAt, recess: Option<i64>) -> Fact {
    let stairs = StairOpening { recess: recess.map(inches), ..StairOpening::new(inches(width), at) };
    on(2, RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() })
}

/// Holds a deck to the marks of each of its runs and to its posts in all.
fn holds(name: &str, facts: &[Fact], want: &[&[&str]], posts: usize) {
    let layout = laid(facts);
    let want: Vec<Vec<Length>> = want.iter().map(|run| run.iter().map(|m| mark(m)).collect()).collect();
    assert_eq!(marks(&layout), want, "{name}");
    assert_eq!(layout.distinct_posts(), posts, "{name}");
}

#[test]
fn rectangles_by_mount() {
    // Over the edge: the house post's centre is 1 3/4 from the siding, corner posts on the
    // corners. Out: 144 - 1 3/4 = 142 1/4, two bays of 71 1/8. Across: three of 64. 10 - 2 shared.
    let across = ["0", "64", "128", "192"];
    let out = ["1 3/4", "72 7/8", "144"];
    holds("over the edge", &walk(&rectangle(), &[]), &[&out, &across, &["0", "71 1/8", "142 1/4"]], 8);
    // Inside the rim, 5 in. Out: 139 - 1 3/4 = 137 1/4, two of 68 5/8. Across: 187 - 5 = 182, three of 60 2/3.
    let out = ["1 3/4", "70 3/8", "139"];
    let across = ["5", "65 2/3", "126 1/3", "187"];
    holds("inside", &walk(&rectangle(), &inside_the_rim()), &[&out, &across, &["5", "73 5/8", "142 1/4"]], 8);
    // Outside a flush rim: two posts a corner, faces held 2 1/2 back, so centres at 4 1/4. Out:
    // 139 3/4 - 1 3/4 = 138, two of 69. Across: 187 3/4 - 4 1/4 = 183 1/2, three of 61 1/6. None shared.
    let out = ["1 3/4", "70 3/4", "139 3/4"];
    let across = ["4 1/4", "65 5/12", "126 7/12", "187 3/4"];
    holds("outside", &walk(&rectangle(), &outside_the_rim()), &[&out, &across, &["4 1/4", "73 1/4", "142 1/4"]], 10);
}

#[test]
fn an_l_inside_the_rim_and_outside_it() {
    // 5 in from outside corners, 5 past the inside one.
    // 1: 235 - 1 3/4 = 233 1/4, four of 58 5/16 (three would be 77 3/4).
    // 2: 115 - 5 = 110, two of 55. 3: 96 + 5 - 5 = 96, two of 48.
    // 4: from 5 before the inside corner to 72 - 5 = 67: 72, one bay. 5: as the rectangle's.
    let want: [&[&str]; 5] = [
        &["1 3/4", "60 1/16", "118 3/8", "176 11/16", "235"],
        &["5", "60", "115"],
        &["5", "53", "101"],
        &["-5", "67"],
        &["5", "73 5/8", "142 1/4"],
    ];
    // 5 + 3 + 3 + 2 + 3 = 16, four corners shared.
    holds("inside", &walk(&ell(), &inside_the_rim()), &want, 12);
    // Outside: pairs at the three outside corners, 4 1/4 in; one post in the inside corner, against
    // both rims: 1 3/4 short of it on run 3, 1 3/4 past it on run 4.
    // 1: 235 3/4 - 1 3/4 = 234, four of 58 1/2. 2: 115 3/4 - 4 1/4 = 111 1/2, two of 55 3/4.
    // 3: 94 1/4 - 4 1/4 = 90, two of 45. 4: 67 3/4 - 1 3/4 = 66. 5: 142 1/4 - 4 1/4 = 138, two of 69.
    let want: [&[&str]; 5] = [
        &["1 3/4", "60 1/4", "118 3/4", "177 1/4", "235 3/4"],
        &["4 1/4", "60", "115 3/4"],
        &["4 1/4", "49 1/4", "94 1/4"],
        &["1 3/4", "67 3/4"],
        &["4 1/4", "73 1/4", "142 1/4"],
    ];
    holds("outside", &walk(&ell(), &outside_the_rim()), &want, 15);
}

#[test]
fn stairs_flush_and_recessed() {
    // 48 guard to guard in the middle of 192: the posts' outside faces at 72 and 120, their centres
    // 1 3/4 outside: 70 1/4 and 121 3/4. From the corner 70 1/4, one bay.
    let flush = walk(&rectangle(), &[stairs_in_front(48, StairAt::Middle, None)]);
    let out: [&str; 3] = ["1 3/4", "72 7/8", "144"];
    let home: [&str; 3] = ["0", "71 1/8", "142 1/4"];
    holds("flush", &flush, &[&out, &["0", "70 1/4", "121 3/4", "192"], &home], 8);
    // A hole of 48 by 36, 60 from the left, posts on the edge: the mouth's corners at 60 and 108, its
    // flanks 36 to the head. On the right 192 - 108 = 84, two of 42. 3 + 5 + 2 + 2 + 3 less 2
    // deck corners and 2 mouth corners.
    let recessed = walk(&rectangle(), &[stairs_in_front(48, StairAt::FromLeft(inches(60)), Some(36))]);
    holds("recessed", &recessed, &[&out, &["0", "60", "108", "150", "192"], &["0", "36"], &["0", "36"], &home], 11);
    // The same hole in the middle, 5 inside the rim: at the mouth 72 - 5 = 67 and 120 + 5 = 125;
    // each flank from 5 in from the mouth to 5 past the head's corner.
    let more = [inside_the_rim(), vec![stairs_in_front(48, StairAt::Middle, Some(36))]].concat();
    let (out, home) = (["1 3/4", "70 3/8", "139"], ["5", "73 5/8", "142 1/4"]);
    let front = ["5", "67", "125", "187"];
    let deck = walk(&rectangle(), &more);
    holds("recessed, inside", &deck, &[&out, &front, &["5", "41"], &["-5", "31"], &home], 10);
    let parts: Vec<Part> = laid(&deck).runs.iter().map(|r| r.part).collect();
    assert_eq!(parts, [Part::Whole, Part::Whole, Part::InLeft(0), Part::InRight(0), Part::Whole]);
}

#[test]
fn two_stairs_in_one_side_and_a_landing_alone() {
    // 36 guard to guard 30 from each corner of 192: openings 30 to 66 and 126 to 162, the posts beside them
    // at 28 1/4, 67 3/4, 124 1/4 and 163 3/4. Bays of 28 1/4, 56 1/2, 28 1/4. 3 + 6 + 3, two shared.
    let opening = |at| StairOpening::new(inches(36), at);
    let both = Stairs::from(vec![opening(StairAt::FromLeft(inches(30))), opening(StairAt::FromRight(inches(30)))]);
    let two = on(2, RunPatch { stairs: Some(both), ..RunPatch::default() });
    let (out, home) = (["1 3/4", "72 7/8", "144"], ["0", "71 1/8", "142 1/4"]);
    let front = ["0", "28 1/4", "67 3/4", "124 1/4", "163 3/4", "192"];
    holds("two stairs", &walk(&rectangle(), &[two]), &[&out, &front, &home], 10);
    // A landing of 48 by 48 at the top of its steps, no house: three sides told one after the other, out to
    // out, from the stair head round to it again. End centres 1 3/4 and 46 1/4; six posts, two shared.
    let of = |id, from, to| on(id, common::run(inches(48), from, to));
    let landing =
        [of(1, End::StairHead, End::Corner), of(2, End::Corner, End::Corner), of(3, End::Corner, End::StairHead)];
    let side: [&str; 2] = ["1 3/4", "46 1/4"];
    holds("landing", &landing, &[&side, &side, &side], 4);
}

#[test]
fn a_bracket_at_the_house_and_posts_of_5_1_2() {
    // A 6x6 is 5 1/2 (PS 20). Out: nothing at the siding; to the corner post's face 144 - 2 3/4 = 141 1/4.
    // Two bays would be 67 7/8 clear, 73 3/8 on centre: over. Three: (141 1/4 - 11)/3 = 43 5/12 clear; the
    // first centre at 43 5/12 + 2 3/4 = 46 1/6, the next 48 11/12 on. Across: three of 64.
    let six = Setting::Post(PostRole::All, PostSize::Lumber(Lumber::SIX_BY_SIX));
    let more = [Fact::Set(six), Fact::Set(Setting::HouseEnd(HouseEnd::Bracket))];
    let want: [&[&str]; 3] = [&["46 1/6", "95 1/12", "144"], &["0", "64", "128", "192"], &["0", "48 11/12", "97 5/6"]];
    holds("bracket", &walk(&rectangle(), &more), &want, 8);
}

#[test]
fn a_gate_at_a_corner_hangs_on_the_shared_post() {
    // The line told 1 in. Out: 143 - 1 3/4 = 141 1/4, two of 70 5/8. Across: corner post 1, its far face
    // 2 3/4; 36 on stands the jamb's face, its centre 40 1/2; 191 - 40 1/2 = 150 1/2, three of 50 1/6.
    let gate = Gate::new(GateAt::From, Some(inches(36)));
    let more = [Fact::Set(Setting::Line(inches(1))), on(2, RunPatch { gate: Some(Some(gate)), ..RunPatch::default() })];
    let want: [&[&str]; 3] =
        [&["1 3/4", "72 3/8", "143"], &["1", "40 1/2", "90 2/3", "140 5/6", "191"], &["1", "71 5/8", "142 1/4"]];
    holds("gate", &walk(&rectangle(), &more), &want, 9);
    // With gate posts of 5 1/2 the shared corner post is one of them on both of its runs.
    let six = Fact::Set(Setting::Post(PostRole::Gate, PostSize::Lumber(Lumber::SIX_BY_SIX)));
    let layout = laid(&[walk(&rectangle(), &more), vec![six]].concat());
    let width = |run: usize, post: usize| of(&layout, run).posts[post].width_length();
    assert_eq!([width(0, 2), width(1, 0), width(1, 4)], [frac(11, 2), frac(11, 2), frac(7, 2)]);
    // Outside the rim the corner has two posts, and only the gate's own is a gate post.
    let six = Fact::Set(Setting::Post(PostRole::Gate, PostSize::Lumber(Lumber::SIX_BY_SIX)));
    let layout = laid(&[walk(&rectangle(), &more), vec![six], outside_the_rim()].concat());
    let width = |run: usize, post: usize| of(&layout, run).posts[post].width_length();
    assert_eq!([width(0, 2), width(1, 0)], [frac(7, 2), frac(11, 2)]);
}

#[test]
fn a_metric_deck() {
    // 3 m out, 4 m across, posts 89 mm, 1500 on centre. Out: 3000 - 44.5 = 2955.5, two of 1477.75.
    // Across: three of 1333 1/3. A millimetre is 5/127 in. (NIST Handbook 44).
    let mm = |n: i128, d: i128| frac(n * 5, d * 127);
    let post = Setting::Post(PostRole::All, PostSize::Width(mm(89, 1)));
    let sides = [(Turn::Start, mm(3000, 1)), (RIGHT, mm(4000, 1)), (RIGHT, mm(3000, 1))];
    let layout = laid(&walk(&sides, &[Fact::Set(post), Fact::Set(Setting::CentreMax(mm(1500, 1)))]));
    let want = vec![
        vec![mm(89, 2), mm(6089, 4), mm(3000, 1)],
        vec![mm(0, 1), mm(4000, 3), mm(8000, 3), mm(4000, 1)],
        vec![mm(0, 1), mm(5911, 4), mm(5911, 2)],
    ];
    assert_eq!(marks(&layout), want);
}

#[test]
fn a_clipped_corner_is_carried_to_its_places() {
    // 120 out, a 45 degree clip of 48, 72 across, home 120 + 48 cos 45 = 153.9411255; the line 5 in.
    // 5 tan 22.5 = 2.0710678 (memory: tan 22.5 = 0.41421356, cos 45 = 0.70710678).
    // 1: 117.9289322 - 1.75 = 116.1789322, two of 58.0894661. 2: 48 - 2 x 2.0710678. 3: 67 - 2.0710678.
    // 4: 153.9411255 - 1.75 - 5 = 147.1911255, three of 49.0637085 (two would be 73.6).
    let sides = [(Turn::Start, inches(120)), (Turn::Right(45), inches(48)), (Turn::Right(45), inches(72))];
    let last = on(4, RunPatch { turn: Some(RIGHT), ..RunPatch::default() });
    let layout = laid(&walk(&sides, &[inside_the_rim(), vec![last]].concat()));
    let want: [&[i128]; 4] = [
        &[17_500_000, 598_394_661, 1_179_289_322],
        &[20_710_678, 459_289_322],
        &[20_710_678, 670_000_000],
        &[50_000_000, 540_637_085, 1_031_274_170, 1_521_911_255],
    ];
    for (run, want) in want.iter().enumerate() {
        let got = common::centres(of(&layout, run));
        assert_eq!(got.len(), want.len(), "run {run}");
        for (got, want) in got.iter().zip(*want) {
            let off = *got - frac(*want, 10_000_000);
            assert!(off < frac(1, 1_000_000) && off > frac(-1, 1_000_000), "run {run}: {got:?} for {want}");
        }
    }
    let exact = |run: usize, post: usize| of(&layout, run).posts[post].at.as_length().is_some_and(Length::is_exact);
    assert!(exact(0, 0) && !exact(0, 2) && !exact(1, 0), "only what a mitre moves is inexact");
}

/// Where the line lies by the mount: common practice, no source.
#[test]
fn the_line_follows_from_the_mount_or_is_asked() {
    use Setting::{Line as At, Mount as Mounted, Overhang, Post, Rim, Skirt};
    let corner_six = Post(PostRole::Corner, PostSize::Lumber(Lumber::SIX_BY_SIX));
    let (one, thin) = (Overhang(inches(1)), Skirt(frac(3, 4)));
    type Line = Result<&'static str, Vec<Lack>>;
    let rows: Vec<(Vec<Setting>, Line)> = vec![
        (vec![], Ok("0")),
        (vec![Mounted(Mount::OverEdge)], Ok("0")),
        (vec![Mounted(Mount::Inside), one, thin], Ok("5")),
        (vec![Mounted(Mount::Inside), one, thin, Rim(inches(3))], Ok("6 1/2")),
        (vec![Mounted(Mount::Inside), Overhang(inches(0)), Skirt(inches(0))], Ok("3 1/4")),
        (vec![Mounted(Mount::Inside), thin], Err(vec![Lack::Overhang])),
        (vec![Mounted(Mount::Inside)], Err(vec![Lack::Overhang, Lack::Skirt])),
        (vec![Mounted(Mount::Outside)], Ok("-1 3/4")),
        (vec![Mounted(Mount::Outside), one], Ok("-3/4")),
        // A skirt behind the posts is cut or packed: which was not said.
        (vec![Mounted(Mount::Outside), thin], Err(vec![Lack::Line])),
        // Two sizes of post against one rim have no one line.
        (vec![Mounted(Mount::Outside), corner_six], Err(vec![Lack::Line])),
        (vec![Mounted(Mount::Surface)], Err(vec![Lack::Line])),
        (vec![Mounted(Mount::Surface), At(inches(3))], Ok("3")),
        (vec![Mounted(Mount::Inside), At(inches(-2))], Ok("-2")),
    ];
    for (told, want) in rows {
        let facts: Vec<Fact> = told.iter().map(|s| Fact::Set(*s)).collect();
        let job = Job::default().with_all(&facts).expect("the settings are sane");
        let got = line_inside(&job.settings).map(|f| f.as_length());
        assert_eq!(got, want.map(|m| Some(mark(m))), "{told:?}");
    }
    // What is lacking is asked for the job once, and no mark is given.
    let layout = laid(&walk(&rectangle(), &[Fact::Set(Mounted(Mount::Inside))]));
    assert!(layout.runs.iter().all(|r| r.result == Err(vec![Lack::Overhang, Lack::Skirt])));
    let said = common::texts(&railhand::layout::answer(&layout, None, railhand::layout::Focus::Whole));
    assert_eq!(said.matches("Still to tell").count(), 1, "{said}");
}

/// Common practice, no source: the figures a carpenter checks the program by.
#[test]
fn figures_of_the_trade() {
    let front = |facts: &[Fact], i: usize| of(&laid(facts), i).clone();
    // A hole of 48 leaves hole + 2 x line - post: 44 1/2 on the edge, 46 1/2 at 1 in, 54 1/2 at 5; a
    // hole of 36 leaves 32 1/2, under the 36 a stair must have (IRC R311.7.1).
    let recess = |hole, line| {
        let more = [Fact::Set(Setting::Line(inches(line))), stairs_in_front(hole, StairAt::Middle, Some(36))];
        walk(&rectangle(), &more)
    };
    let rows = [(48, 0, "44 1/2", false), (48, 1, "46 1/2", false), (48, 5, "54 1/2", false), (36, 0, "32 1/2", true)];
    for (hole, line, clear, narrow) in rows {
        let facts = recess(hole, line);
        let head = front(&facts, 2).head.and_then(|f| f.as_length());
        assert_eq!(head, Some(mark(clear)), "{hole} at {line}");
        let job = Job::default().with_all(&facts).expect("the deck can be built");
        let found = check(&job, &lay_out(&job)).iter().any(|f| f.rule == "stair-opening-narrow");
        assert_eq!(found, narrow, "{hole} at {line}");
    }
    // Corner on the edge, the stair head's outside face at 120: centres 118 1/4 apart.
    let edge =
        RunPatch { basis: Some(railhand::job::Basis::Edge), ..common::run(inches(120), End::Corner, End::StairHead) };
    let ten = front(&[on(1, edge)], 0);
    assert_eq!(common::centres(&ten).last(), Some(&mark("118 1/4")));
    // Held back 2 1/2 the gap across a square corner is 3.54 and passes; 3 gives 4.24 and fails.
    for (back, low, high, fails) in [("2 1/2", (353, 100), (354, 100), false), ("3", (424, 100), (425, 100), true)] {
        let told = [outside_the_rim(), vec![Fact::Set(Setting::HoldBack(mark(back)))]].concat();
        let job = Job::default().with_all(&walk(&rectangle(), &told)).expect("the deck can be built");
        let layout = lay_out(&job);
        let gap = layout.runs[1].meets[0].as_ref().and_then(|m| m.gap.as_ref()).and_then(|f| f.as_length());
        let gap = gap.expect("two posts at the corner leave a gap");
        assert!(gap > frac(low.0, low.1) && gap < frac(high.0, high.1), "{gap:?}");
        assert_eq!(check(&job, &layout).iter().filter(|f| f.rule == "corner-gap-too-wide").count() > 0, fails);
    }
}

#[test]
fn a_gate_at_a_recessed_head_hangs_between_the_head_posts() {
    let with = |width: Option<&str>| {
        let gate = Gate::new(GateAt::Stairs, width.map(mark));
        let told = RunPatch { gate: Some(Some(gate)), ..RunPatch::default() };
        laid(&walk(&rectangle(), &[stairs_in_front(48, StairAt::Middle, Some(36)), on(2, told)]))
    };
    // 48 - 3 1/2 = 44 1/2 on the edge, whether the gate's width is told or not.
    for layout in [with(None), with(Some("44 1/2"))] {
        assert_eq!(of(&layout, 2).beyond.as_ref().and_then(|f| f.as_length()), Some(mark("44 1/2")));
    }
    assert_eq!(with(Some("48")).runs[1].result, Err(vec![Lack::GatePlace]), "a leaf's opening that is not there");
    let corner = stairs_in_front(48, StairAt::FromLeft(inches(0)), Some(36));
    assert_eq!(laid(&walk(&rectangle(), &[corner])).runs[1].result, Err(vec![Lack::RecessAtCorner]));
}

#[test]
fn what_cannot_be_built_is_refused_with_its_figures() {
    let refused = |facts: &[Fact]| Job::default().with_all(facts).expect_err("it can't be built");
    // The deck is 144 deep behind the front.
    let deep = walk(&rectangle(), &[stairs_in_front(48, StairAt::Middle, Some(144))]);
    assert_eq!(refused(&deep), Impossible::RecessTooDeep { recess: inches(144), deck: inches(144) });
    // On the L's run 3, the step's side, the deck is 120 deep to run 1; on run 4, 144 to the house.
    let deep = |run, deep| {
        let stairs =
            StairOpening { recess: Some(inches(deep)), ..StairOpening::new(inches(36), StairAt::FromLeft(inches(12))) };
        walk(&ell(), &[on(run, RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() })])
    };
    for (run, deck) in [(3, 120), (4, 144)] {
        let too_deep = Impossible::RecessTooDeep { recess: inches(deck), deck: inches(deck) };
        assert_eq!(refused(&deep(run, deck)), too_deep);
        assert!(Job::default().with_all(&deep(run, deck - 1)).is_ok());
    }
    // Out 144, right 100, right 50, right 200: the last goes back through the first.
    let crossed = [(Turn::Start, inches(144)), (RIGHT, inches(100)), (RIGHT, inches(50)), (RIGHT, inches(200))];
    assert_eq!(refused(&walk(&crossed, &[])), Impossible::SidesCross(RunId(1), RunId(4)));
    // The last leg is worked out as 144: stairs of 48, 100 from the left, end at 148.
    let home = on(3, RunPatch { turn: Some(RIGHT), ..RunPatch::default() });
    let stairs = StairOpening::new(inches(48), StairAt::FromLeft(inches(100)));
    let off = on(3, RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() });
    let facts = [walk(&rectangle()[..2], &[]), vec![home, off]].concat();
    assert_eq!(refused(&facts), Impossible::StairsDontFit { needs: inches(148), run: inches(144) });
    assert_eq!(refused(&walk(&[(Turn::Right(0), inches(144))], &[])), Impossible::NoSuchTurn(0));
    assert_eq!(refused(&walk(&[(Turn::Left(171), inches(144))], &[])), Impossible::NoSuchTurn(171));
}

#[test]
fn an_open_outline_names_its_sides() {
    let mut sides = rectangle();
    sides[2].1 = inches(132);
    let job = Job::default().with_all(&walk(&sides, &[Fact::DeckAlong(inches(204))])).expect("sane");
    let found = check(&job, &lay_out(&job));
    let said = found.iter().find(|f| f.rule == "outline-open").expect("it does not close").spans.clone();
    insta::assert_snapshot!(
        text(&railhand::reply::Line::new(railhand::reply::Role::Caution, said)),
        @r#"the sides don't come back to the house: out and home, by run 1 and run 3, they end 1'-0" out from the house; along it, by run 2, they reach 1'-0" less than the deck's length. Is a side still to come, or is one off?"#
    );
    assert!(RULES.iter().any(|r| r.id == "outline-open"));
}

#[test]
fn posts_in_all_come_first_and_marks_past_the_edge_are_said_so() {
    use railhand::layout::{Focus, answer};
    let layout = laid(&walk(&ell(), &inside_the_rim()));
    let first = answer(&layout, None, Focus::Posts).iter().map(text).next();
    assert_eq!(first.as_deref(), Some("12 posts in all, a corner post that two runs share counted once."));
    insta::assert_snapshot!(common::texts(&answer(&layout, Some(RunId(4)), Focus::Posts)), @r#"
    2 posts
    6'-0" taken on the decking's edge: from the decking's inside corner to the decking's corner; 6'-0" on the baluster line.
    Marks, tape hooked on the decking's inside corner: centre of post (near face)
      5" past the edge: inside corner post
      5'-7"  (5'-5 1/4")  corner post
    Baluster line, through the posts' centres: 5" inside the decking's edge.
    Limit: no more than 6'-0" on centre: AWC DCA 6 (2012/2015), guard pages (from memory, not checked); not in the IRC; local rules decide.
    "#);
    // Runs told one after the other, each from the corner where the one before ends: 3 + 3 less the one
    // they share, and the answer says what was taken.
    let told = |id| on(id, common::run(inches(120), End::Corner, End::Corner));
    let first = answer(&laid(&[told(1), told(2)]), None, Focus::Posts).iter().map(text).next();
    let shared = "5 posts in all, a corner post that two runs share counted once: a run told after another is taken to start at the corner where that one ends.";
    assert_eq!(first.as_deref(), Some(shared));
}

#[test]
fn a_corner_post_beside_stairs_at_the_deck_s_corner_narrows_them() {
    // Stairs of 48 from the left corner: the left side's corner post, centred on the line d in, reaches d
    // + 1 3/4 into them: 46 1/4 left on the edge, 41 1/4 with the line 5 in.
    for (line, reaches, left) in [(0, "1 3/4", "3'-10 1/4\""), (5, "6 3/4", "3'-5 1/4\"")] {
        let at = StairAt::FromLeft(inches(0));
        let more = [Fact::Set(Setting::Line(inches(line))), stairs_in_front(48, at, None)];
        let job = Job::default().with_all(&walk(&rectangle(), &more)).expect("the deck can be built");
        let layout = lay_out(&job);
        let got = layout.runs[1].intrudes.as_ref().and_then(|i| i.by.as_length());
        assert_eq!(got, Some(mark(reaches)));
        let found = check(&job, &layout);
        let said = found.iter().find(|f| f.rule == "corner-post-in-stairs").expect("it is said").spans.clone();
        let said = text(&railhand::reply::Line::new(railhand::reply::Role::Caution, said));
        assert!(said.contains(left), "{said}");
        // Left 3; front 3 from the stairs on (144 less half a post: two bays); right 3; one corner shared.
        assert_eq!(layout.distinct_posts(), 3 + 3 + 3 - 1, "{line}");
    }
    // Outside the rim the left side's post stands off the corner, outside the opening.
    let more = [outside_the_rim(), vec![stairs_in_front(48, StairAt::FromLeft(inches(0)), None)]].concat();
    assert_eq!(laid(&walk(&rectangle(), &more)).runs[1].intrudes, None);
}

/// Joists 16 on centre, 2-by (1 1/2, PS 20): a 4x4 stands beside one with its centre 2 1/2 from the
/// joist's. Front: corner posts on 0 and 192, line posts at 64 and 128.
#[test]
fn posts_that_miss_the_joists_are_named_with_the_nearest_spot() {
    let deck = |first: &str, way, more: &[Fact]| {
        let told = [Setting::Joists(inches(16)), Setting::FirstJoist(mark(first)), Setting::JoistsRun(way)];
        let told: Vec<Fact> = told.map(Fact::Set).into_iter().chain(more.iter().cloned()).collect();
        laid(&walk(&rectangle(), &told))
    };
    let missed = |layout: &Layout, run: usize| -> Vec<(Option<Length>, bool, Option<Length>)> {
        let Under::Missed(posts) = &layout.framing[run].under else { panic!("run {run} lies across the joists") };
        let length = |f: &Fig| f.as_length();
        posts.iter().map(|p| (length(&p.at), p.on_joist, p.spot.as_ref().and_then(length))).collect()
    };
    let miss = |at, on, spot: Option<&str>| (Some(mark(at)), on, spot.map(mark));
    // First joist 15 1/4: joists at 63 1/4 and 127 1/4, so both line posts stand on one. Beside them 65 3/4
    // (bays 65 3/4, 62 1/4) and 60 3/4 (bays 60 3/4, 67 1/4) keep 72; 65 3/4 is nearer (1 3/4 from 64).
    let layout = deck("15 1/4", JoistsRun::Out, &[]);
    assert_eq!(missed(&layout, 1), [miss("64", true, Some("65 3/4")), miss("128", true, Some("129 3/4"))]);
    // The sides out run along such joists: their one line post wants blocking.
    let along = |f: &railhand::layout::Framing| matches!(&f.under, Under::RimAlong(n) if n.value() == Value::Count(1));
    assert!(along(&layout.framing[0]) && along(&layout.framing[2]));
    // First joist 2 1/2 more than a multiple of 16 short of 64: 61 1/2 is beside 64, and 125 1/2 beside 128.
    assert_eq!(missed(&deck("13 1/2", JoistsRun::Out, &[]), 1), []);
    // A 1/4 off counts as beside (common practice); 5/16 does not. Joists at 61 3/16, 77 3/16: 63 11/16.
    assert_eq!(missed(&deck("13 1/4", JoistsRun::Out, &[]), 1), []);
    let layout = deck("13 3/16", JoistsRun::Out, &[]);
    assert_eq!(missed(&layout, 1), [miss("64", false, Some("63 11/16")), miss("128", false, Some("127 11/16"))]);
    // A limit of 64 on centre leaves a post no room to move: blocking.
    let tight = [Fact::Set(Setting::CentreMax(inches(64)))];
    assert_eq!(missed(&deck("15 1/4", JoistsRun::Out, &tight), 1), [miss("64", true, None), miss("128", true, None)]);
    // A stair head's posts never move: 70 1/4 is 9 off 79 1/4 and 7 off 63 1/4; 121 3/4 5 1/2 off 127 1/4.
    let stairs = [stairs_in_front(48, StairAt::Middle, None)];
    let layout = deck("15 1/4", JoistsRun::Out, &stairs);
    assert_eq!(missed(&layout, 1), [miss("70 1/4", false, None), miss("121 3/4", false, None)]);
    // Joists along the house, counted from the siding: on run 1 the line post at 72 7/8 stands 1 1/8 from
    // the joist at 74; beside it 71 1/2 (bays 69 3/4 and 72 1/2: over 72) fails, 76 1/2 is 74 3/4 from the
    // house post: over too. 74 - 16 + 2 1/2 = 60 1/2 leaves 83 1/2. So blocking.
    let layout = deck("10", JoistsRun::Along, &[]);
    assert_eq!(missed(&layout, 0), [miss("72 7/8", true, None)]);
    // Run 3 comes home: its line post is 144 - 71 1/8 = 72 7/8 from the siding, and as stuck.
    assert_eq!(missed(&layout, 2), [miss("71 1/8", true, None)]);
    assert!(matches!(&layout.framing[1].under, Under::RimAlong(n) if n.value() == Value::Count(2)));
}

#[test]
fn a_plan_shows_corners_stairs_and_house() {
    let job = Job::default()
        .with_all(&walk(&ell(), &[stairs_in_front(48, StairAt::FromRight(inches(24)), None)]))
        .expect("the deck can be built");
    insta::assert_snapshot!(plan(&job, 40).join("\n"), @r#"
                _________
                _________
         #---2--+       +--#
         |                 |
         |                 |
         |                 |
         |                 3
         |                 |
         |                 |
         |                 #-----4----#
         |                            |
         1                            |
         |                            |
         |                            |
         |                            |
         |                            5
         |                            |
         |                            |
         |                            |
         |                            |
      ============== house ===============
    1: 20'-0"
    2: 10'-0", stairs 4'-0"
    3: 8'-0"
    4: 6'-0"
    5: 12'-0"
    "#);
    assert!(plan(&Job::default(), 40).is_empty());
}

/// The deck seen in a mirror: the walk told from its other end.
fn mirrored(sides: &[(Turn, Length)]) -> Vec<(Turn, Length)> {
    let turns = std::iter::once(Turn::Start).chain(sides.iter().skip(1).rev().map(|(turn, _)| *turn));
    turns.zip(sides.iter().rev().map(|(_, length)| *length)).collect()
}

/// Decks that close: out, across, back, across again, home; some with both steps the other way.
fn closing() -> impl Strategy<Value = Vec<(Turn, Length)>> {
    (100_i64..400, 60_i64..300, 20_i64..80, 60_i64..200, any::<bool>()).prop_map(|(out, across, step, on, in_first)| {
        let (out, across, step, on) = (inches(out), inches(across), inches(step), inches(on));
        match in_first {
            false => vec![(Turn::Start, out), (RIGHT, across), (RIGHT, step), (LEFT, on), (RIGHT, out - step)],
            true => vec![(Turn::Start, out - step), (RIGHT, on), (LEFT, step), (RIGHT, across), (RIGHT, out)],
        }
    })
}

fn any_turn() -> impl Strategy<Value = Turn> {
    let degrees = prop_oneof![3 => Just(90_u16), 1 => Just(45), 1 => 1_u16..=170];
    (degrees, any::<bool>()).prop_map(|(d, left)| if left { Turn::Left(d) } else { Turn::Right(d) })
}

/// Tape marks, millimetres, and fractions no tape has.
fn any_side() -> impl Strategy<Value = Length> {
    prop_oneof![
        (200_i128..4000).prop_map(|n| frac(n, 8)),
        (500_i128..9000).prop_map(|mm| frac(mm * 5, 127)),
        (20_i128..400, 1_i128..97, 97_i128..1000).prop_map(|(n, p, d)| inches(n as i64) + frac(p, d)),
    ]
}

fn any_stairs() -> impl Strategy<Value = StairOpening> {
    let at = prop_oneof![
        Just(StairAt::Middle),
        (0_i64..60).prop_map(|l| StairAt::FromLeft(inches(l))),
        (0_i64..60).prop_map(|l| StairAt::FromRight(inches(l))),
    ];
    (30_i64..60, at, prop::option::of(12_i64..60)).prop_map(|(width, at, recess)| StairOpening {
        recess: recess.map(inches),
        ..StairOpening::new(inches(width), at)
    })
}

fn any_setting() -> impl Strategy<Value = Setting> {
    let eighths = |lo: i128, hi: i128| (lo..hi).prop_map(|n| frac(n, 8));
    let post = prop::sample::select(vec![Lumber::FOUR_BY_FOUR, Lumber::SIX_BY_SIX]);
    let mount = vec![Mount::OverEdge, Mount::Inside, Mount::Outside, Mount::Surface];
    prop_oneof![
        3 => prop::sample::select(mount).prop_map(Setting::Mount),
        1 => post.prop_map(|l| Setting::Post(PostRole::All, PostSize::Lumber(l))),
        1 => eighths(0, 20).prop_map(Setting::Overhang),
        1 => eighths(0, 12).prop_map(Setting::Skirt),
        1 => eighths(8, 30).prop_map(Setting::Rim),
        1 => eighths(-30, 60).prop_map(Setting::Line),
        1 => eighths(0, 40).prop_map(Setting::HoldBack),
        1 => eighths(96, 200).prop_map(Setting::Joists),
        1 => eighths(0, 200).prop_map(Setting::FirstJoist),
        1 => prop::sample::select(vec![JoistsRun::Out, JoistsRun::Along]).prop_map(Setting::JoistsRun),
        1 => Just(Setting::HouseEnd(HouseEnd::Bracket)),
    ]
}

fn any_deck() -> impl Strategy<Value = Vec<Fact>> {
    let sides = prop::collection::vec((any_turn(), any_side()), 1..7);
    let told = prop::collection::vec(any_setting(), 0..8);
    (sides, told, prop::option::of((1_u32..8, any_stairs()))).prop_map(|(sides, told, stairs)| {
        let first = std::iter::once((Turn::Start, inches(120)));
        let on_side = stairs.map(|(id, s)| on(id, RunPatch { stairs: Some(s.into()), ..RunPatch::default() }));
        let more: Vec<Fact> = told.into_iter().map(Fact::Set).chain(on_side).collect();
        walk(&first.chain(sides).collect::<Vec<_>>(), &more)
    })
}

/// The law of any walk holds of something: a good part of them is laid out.
#[test]
fn random_walks_are_often_laid_out() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let stands = |runner: &mut TestRunner| {
        let facts = any_deck().new_tree(runner).expect("a deck").current();
        let job = Job::default().with_all(&facts);
        job.is_ok_and(|job| lay_out(&job).runs.iter().filter(|r| r.result.is_ok()).count() > 1)
    };
    let standing = (0..200).filter(|_| stands(&mut runner)).count();
    assert!(standing > 60, "{standing} of 200");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn a_mirrored_walk_gives_mirrored_posts(sides in closing(), line in -2_i64..8) {
        let told = [Fact::Set(Setting::Line(inches(line)))];
        let (there, back) = (laid(&walk(&sides, &told)), laid(&walk(&mirrored(&sides), &told)));
        let mut turned: Vec<Vec<Length>> = marks(&back);
        turned.reverse();
        for (run, (_, length)) in turned.iter_mut().zip(&sides) {
            run.reverse();
            run.iter_mut().for_each(|m| *m = *length - *m);
        }
        prop_assert_eq!(marks(&there), turned);
        prop_assert_eq!(there.distinct_posts(), back.distinct_posts());
    }

    /// Runs and openings sum to the perimeter less the house side on the decking's edge; on
    /// the line of a square-cornered deck to 4 x line less (plane geometry, no source).
    #[test]
    fn runs_sum_to_the_perimeter(sides in closing(), line in -2_i64..8) {
        let layout = laid(&walk(&sides, &[Fact::Set(Setting::Line(inches(line)))]));
        let edge: Length = sides.iter().map(|(_, l)| *l).sum();
        let of_runs = |pick: fn(&Placed) -> Option<Length>| -> Length {
            (0..sides.len()).filter_map(|i| pick(of(&layout, i))).sum()
        };
        prop_assert_eq!(of_runs(|p| p.length.as_length()), edge);
        prop_assert_eq!(of_runs(|p| p.on_line.as_ref()?.as_length()), edge - inches(line) * 4);
        // Posts and clears on the line: each run less its half posts at the house reaches corner to corner.
        let reach = of_runs(|p| Some(p.posts.last()?.at.as_length()? - p.posts.first()?.at.as_length()?));
        prop_assert_eq!(reach, edge - inches(line) * 4 - frac(7, 2));
    }

    /// With a corner clipped at 45 degrees each run there is 0.41421356 (memory: tan 22.5) of the
    /// line shorter on it, so the deck is 2 x line x (1 + 2 x 0.41421356) less in all.
    #[test]
    fn a_clipped_corner_takes_its_part_of_the_line(
        out in 100_i64..300, clip in 30_i64..90, across in 60_i64..300, line in -2_i64..8,
    ) {
        let sides = [(Turn::Start, inches(out)), (Turn::Right(45), inches(clip)), (Turn::Right(45), inches(across))];
        let home = on(4, RunPatch { turn: Some(RIGHT), ..RunPatch::default() });
        let layout = laid(&walk(&sides, &[Fact::Set(Setting::Line(inches(line))), home]));
        let on_line = |i: usize| of(&layout, i).on_line.as_ref().and_then(|f| f.as_length());
        let edge = |i: usize| of(&layout, i).length.as_length();
        let off: Vec<Length> = (0..4).filter_map(|i| Some(edge(i)? - on_line(i)?)).collect();
        let (mitre, square) = (frac(41_421_356, 100_000_000) * line, inches(line));
        for (got, want) in off.iter().zip([mitre, mitre * 2, mitre + square, square]) {
            prop_assert!(*got - want < frac(1, 1_000_000) && want - *got < frac(1, 1_000_000), "{got:?} {want:?}");
        }
    }

    /// A run's guard and its openings are its length on the edge, wherever the stairs stand.
    #[test]
    fn flanks_and_opening_are_the_run(across in 160_i64..400, wide in 30_i64..60, from in 12_i64..60) {
        let mut sides = rectangle();
        sides[1].1 = inches(across);
        let at = StairAt::FromLeft(inches(from));
        let layout = laid(&walk(&sides, &[stairs_in_front(wide, at, None)]));
        let front = of(&layout, 1);
        let [left, right] = front.flanks.as_ref().expect("stairs have two sides").clone();
        let sum = [left, right].iter().filter_map(Fig::as_length).fold(inches(wide), |sum, l| sum + l);
        prop_assert_eq!(sum, inches(across));
    }

    /// Never wider than asked, plain ASCII, every side named. (Corners closer than a
    /// character fall on each other; the first and the last never do.)
    #[test]
    fn a_plan_keeps_its_width(sides in closing(), width in 30_usize..100, recess in prop::option::of(12_i64..30)) {
        let at = StairAt::FromLeft(inches(12));
        let facts = walk(&sides, &[stairs_in_front(36, at, recess)]);
        let Ok(job) = Job::default().with_all(&facts) else { return Ok(()) };
        let drawn = plan(&job, width);
        prop_assert!(!drawn.is_empty());
        prop_assert!(drawn.iter().all(|l| l.len() <= width && l.is_ascii()), "{:#?}", drawn);
        let corners: usize = drawn.iter().map(|l| l.matches('#').count()).sum();
        prop_assert!(corners >= 2, "{:#?}", drawn);
        let named = |id: usize| drawn.iter().any(|l| l.starts_with(&[id.to_string(), ": ".to_owned()].concat()));
        prop_assert!((1..=sides.len()).all(named), "{:#?}", drawn);
    }
    /// Whatever the walk, the mount, the stairs and the joists: refused, lacking, or laid out
    /// with marks that rise and bays that keep the limit.
    #[test]
    fn any_walk_is_refused_or_laid_out_by_the_rules(
        facts in any_deck(),
    ) {
        let Ok(job) = Job::default().with_all(&facts) else { return Ok(()) };
        let layout = lay_out(&job);
        let placed: Vec<&Placed> = layout.runs.iter().filter_map(|r| r.result.as_ref().ok()).collect();
        for p in &placed {
            prop_assert!(common::centres(p).windows(2).all(|m| m[0] < m[1]));
            prop_assert!(p.rail_bays().all(|b| b.spacing <= inches(72)));
        }
        let posts: usize = placed.iter().map(|p| p.posts.len()).sum();
        prop_assert!(layout.distinct_posts() <= posts && layout.distinct_posts() + 2 * layout.runs.len() >= posts);
        for found in check(&job, &layout) {
            prop_assert!(!found.spans.is_empty());
        }
        prop_assert!(plan(&job, 60).iter().all(|l| l.len() <= 60));
    }
}
