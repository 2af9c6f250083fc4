//! Stair openings by what their width was measured between, and several in one side.
//!
//! Figures are worked by hand from plane geometry and common practice (no source): at a hole's
//! corners the posts' centres stand on the baluster line, so the clear is hole + 2 x line -
//! post; a dry 4x4 is 3 1/2 (PS 20 size table).

mod common;

use common::{frac, inches, job, laid, placed, run};
use railhand::job::{End, Fact, Flight, Job, Newels, RunPatch, Setting, StairAt, StairMeasure, StairOpening, Stairs};
use railhand::layout::{BayKind, Lack, Part, beside, other_ways, stretches, values};
use railhand::measure::Length;

fn with(stairs: Vec<StairOpening>) -> RunPatch {
    RunPatch { stairs: Some(Stairs::from(stairs)), ..run(inches(240), End::Corner, End::Corner) }
}

fn opening(measure: StairMeasure, recess: Option<i64>) -> StairOpening {
    let plain = StairOpening::new(inches(48), StairAt::Middle);
    StairOpening { measure: Some(measure), recess: recess.map(inches), ..plain }
}

fn figure(job: &Job, name: &str) -> Vec<Length> {
    let more = values(&railhand::layout::lay_out(job)).more;
    more.iter().filter(|(n, _)| *n == name).filter_map(|(_, f)| f.as_length()).collect()
}

/// What the width is between, how deep the stairs are let in, what else is told; the clear, the guard on each side.
type Width = (StairMeasure, Option<i64>, Vec<Setting>, Length, Length);

#[test]
fn each_way_to_measure_a_width_leaves_its_own_guard() {
    use StairMeasure::{Decking, Framing, Posts, Treads};
    let line = |l: i64| Setting::Line(inches(l));
    let trim = [Setting::Overhang(inches(1)), Setting::Skirt(frac(3, 4))];
    // (what the 48 is, how deep, settings, the clear between the posts, the guard on each side)
    let rows: [Width; 8] = [
        // At the deck's edge: clear between the posts; treads with newels beside them.
        (Posts, None, vec![], inches(48), inches(96)),
        (Treads, None, vec![], inches(48), inches(96)),
        // A hole: 48 + 2 x 0 - 3 1/2; and with the line 1 in., 46 1/2.
        (Decking, Some(36), vec![], frac(89, 2), inches(96)),
        (Decking, Some(36), vec![line(1)], frac(93, 2), inches(96)),
        (Treads, Some(36), vec![], frac(89, 2), inches(96)),
        // Told between the posts the hole is 48 + 3 1/2, and 48 - 2 + 3 1/2 with the line 1 in.
        (Posts, Some(36), vec![], inches(48), frac(377, 4)),
        (Posts, Some(36), vec![line(1)], inches(48), frac(381, 4)),
        // A framed hole of 48 under an overhang of 1 and a skirt of 3/4: 44 1/2 of decking, less a post.
        (Framing, Some(36), [trim.to_vec(), vec![line(0)]].concat(), inches(41), frac(391, 4)),
    ];
    for (measure, deep, settings, clear, flank) in rows {
        let job = job(&settings, with(vec![opening(measure, deep)]));
        assert_eq!(figure(&job, "stair_opening").first(), Some(&clear), "{measure:?} {deep:?}");
        assert_eq!(figure(&job, "flank_left"), [flank], "{measure:?} {deep:?}");
        assert_eq!(figure(&job, "flank_right"), [flank], "{measure:?} {deep:?}");
    }
}

#[test]
fn newels_on_the_treads_take_two_posts_off() {
    let mut told = opening(StairMeasure::Treads, None);
    told.flight = Flight { newels: Some(Newels::OnTreads), ..Flight::default() };
    let job = job(&[], with(vec![told]));
    // 48 - 2 x 3 1/2, and the guard gains a post on each side.
    assert_eq!(figure(&job, "stair_opening"), [inches(41)]);
    assert_eq!(figure(&job, "flank_left"), [frac(199, 2)]);
    let lengths: Vec<_> = stretches(&job, &job.runs[0]).iter().map(|s| s.length).collect();
    assert_eq!(lengths, [Some(frac(199, 2)), Some(frac(199, 2))]);
}

#[test]
fn a_hole_wants_its_depth_and_what_hangs_over_it() {
    let lacks = |measure, deep, settings: &[Setting]| {
        laid(settings, with(vec![opening(measure, deep)])).runs[0].result.clone().err()
    };
    assert_eq!(lacks(StairMeasure::Decking, None, &[]), Some(vec![Lack::RecessDepth]));
    assert_eq!(lacks(StairMeasure::Framing, None, &[]), Some(vec![Lack::RecessDepth]));
    assert_eq!(lacks(StairMeasure::Framing, Some(36), &[]), Some(vec![Lack::Overhang, Lack::Skirt]));
}

#[test]
fn several_stairs_part_one_side_into_stretches() {
    // 240: stairs 36 wide from 24, 48 in the middle (96 to 144), 36 from 24 off the right end (180 to 216).
    let right = StairOpening::new(inches(36), StairAt::FromRight(inches(24)));
    let left = StairOpening::new(inches(36), StairAt::FromLeft(inches(24)));
    let told = vec![right, StairOpening::new(inches(48), StairAt::Middle), left];
    let job = job(&[], with(told.clone()));
    let got: Vec<_> = stretches(&job, &job.runs[0]).iter().map(|s| (s.part, s.part.suffix(), s.length)).collect();
    let want = [
        (Part::Left, "-left", 24),
        (Part::Between(0), "-between", 36),
        (Part::Between(1), "-between-2", 36),
        (Part::Right, "-right", 24),
    ];
    assert_eq!(got, want.map(|(p, s, l)| (p, s.to_owned(), Some(inches(l)))));
    let layout = laid(&[], with(told));
    let opened: Vec<_> = placed(&layout).bays.iter().filter(|b| b.kind == BayKind::Stairs).collect();
    assert_eq!(opened.iter().map(|b| b.clear_length()).collect::<Vec<_>>(), [36, 48, 36].map(inches));
}

#[test]
fn stairs_that_reach_into_each_other_are_refused() {
    let told = |off| StairOpening::new(inches(48), StairAt::FromLeft(inches(off)));
    for second in [40, 60, 83, 84] {
        // The first ends at 36 + 48: without guard between them there is no room for the two posts.
        let fact = Fact::Run(Job::default().next_run(), with(vec![told(36), told(second)]));
        assert!(Job::default().with(&fact).is_err(), "the second from {second}");
    }
    let apart = Fact::Run(Job::default().next_run(), with(vec![told(36), told(120)]));
    assert!(Job::default().with(&apart).is_ok());
}

#[test]
fn what_the_other_ways_would_leave_is_said_from_the_same_rules() {
    let plain = StairOpening::new(inches(48), StairAt::Middle);
    let job = job(&[], with(vec![plain]));
    let others = other_ways(&job, &plain).map(|f| f.and_then(|f| f.as_length()));
    assert_eq!(others, [Some(inches(41)), Some(frac(89, 2))]);
    let left = beside(&job, job.runs[0].id).and_then(|b| b.flanks).expect("the run is laid out");
    assert_eq!(left.map(|f| f.as_length()), [Some(inches(96)), Some(inches(96))]);
}
