//! Figures the engines hand to a question about a row, each worked by hand.

#[path = "common/talk.rs"]
mod talk;

use railhand::figure::{Fig, Value};
use railhand::measure::Length;
use railhand::provide::ask;
use railhand::quantity::RowId;
use railhand::solve::Given;
use talk::told_then;

fn of(lines: &[&str], row: RowId) -> Fig {
    ask(row, &Given::default(), &told_then(lines).job()).unwrap_or_else(|lacks| panic!("{row:?}: {lacks:?}")).fig
}

fn near(fig: &Fig, want: f64) {
    let (num, den) = (*fig.as_q().numer() as f64, *fig.as_q().denom() as f64);
    assert!((num / den - want).abs() < 5e-4 * want, "{} is not {want}", num / den);
}

/// A 2x10 rim is 9 1/4 (PS 20): less 2 at each edge 5 1/4, and no more than 5. 200 x (36 + 1 + 2 + 5) / 5 = 1,760 lb at the upper bolt,
/// 200 x (36 + 1 + 2) / 5 = 1,560 at the lower.
#[test]
fn the_bolts() {
    let told = ["36 high", "decking is 1 inch thick", "the rim is a 2x10"];
    near(&of(&told, RowId::BoltPull), 1760.0);
    near(&of(&told, RowId::BoltPush), 1560.0);
    assert_eq!(of(&told, RowId::PostArm).as_length(), Some(Length::inches(39)));
}

/// A 4x4 pushed outward at 36 in.: 7,200 / 7.1458 = 1,007.6 psi of hem-fir No.2 wet and incised, 867 by `tests/published/strength`: 1.162.
/// At a corner, on its diagonal: 7,200 / (3.5^3 / (6 root 2)) = 7,200 / 5.0528 = 1,424.9: 1.643.
#[test]
fn the_post_asked_most() {
    near(&of(&["36 high", "run 12 ft between end posts"], RowId::PostRatio), 1.162);
    near(&of(&["36 high", "run 12 ft between corners"], RowId::PostRatio), 1.643);
}

/// 12 ft out to out on posts of 3 1/2: 144 - 3 1/2 is 140 1/2 on center, two bays of 70 1/4, 66 3/4 clear. Most sag 66.75 / 96 = 0.6953.
#[test]
fn the_rail_of_the_longest_bay() {
    near(&of(&["run 12 ft between end posts"], RowId::SagLimit), 0.6953);
}

/// 7 on 11 under a rail on the nosing line: 7 + 11 - root(170) = 4.9616. Down the stairs a gap stays under 4 3/8 (IRC R312.1.3).
#[test]
fn down_the_stairs() {
    near(&of(&["7 risers, rise is 7, 11 inch treads"], RowId::TriangleBall), 4.9616);
    assert_eq!(of(&["36 high"], RowId::StairGapLimit).as_length(), Some(Length::sixteenths(70)));
}

/// On the decking's edge half of a 4x4 comes off: 1 3/4, and 1 3/4 stays; the line 1 in from the edge, 2 3/4 comes off and 3/4 stays.
#[test]
fn the_foot_with_the_least_left() {
    let run = "run 12 ft between end posts";
    let lengths = |lines: &[&str]| [RowId::NotchDepth, RowId::NotchLeft].map(|row| of(lines, row).value());
    let sixteenths = |n| Value::Length(Length::sixteenths(n));
    assert_eq!(lengths(&[run, "the baluster line is on the decking's edge"]), [sixteenths(28), sixteenths(28)]);
    assert_eq!(lengths(&[run, "the baluster line is 1 inside the decking's edge"]), [sixteenths(44), sixteenths(12)]);
}

/// Two runs of other lengths: no one length is "the run", and none is made of the longest bay and all bays together.
#[test]
fn a_run_among_several_is_not_made_up() {
    let ask_run =
        |lines: &[&str]| ask(RowId::RunLength, &Given::default(), &told_then(lines).job()).ok().map(|s| s.fig);
    let two = ["run 12 ft between end posts", "another run 9 ft between end posts"];
    assert_eq!(ask_run(&two), None);
    assert_eq!(ask_run(&two[..1]).and_then(|f| f.as_length()), Some(Length::inches(144)));
}

/// 16 ft with stairs of 4 ft in the middle: 192 - 48 = 144 of guard, 72 on each side.
#[test]
fn what_stairs_leave_of_a_run() {
    let told = ["run 16 ft between corners, 4 ft stairs in the middle"];
    assert_eq!(of(&told, RowId::GuardTotal).as_length(), Some(Length::inches(144)));
    assert_eq!(of(&told, RowId::Flank).as_length(), Some(Length::inches(72)));
}

/// Bays of other widths are counted bay by bay, whatever baluster is given: 12 ft and 9 ft out to out on posts of 3 1/2 give bays of
/// 66 3/4 and 48 3/4 (two each). Of 3/4 at under 4: (66 3/4 - 4) / 4 3/4 = 13.2, so 14; (48 3/4 - 4) / 4 3/4 = 9.4, so 10: 2 x 24 = 48.
#[test]
fn balusters_in_all_are_counted_bay_by_bay() {
    let job = told_then(&["run 12 ft between end posts", "another run 9 ft between end posts"]).job();
    let thin = Given::of([(RowId::BalusterWidth, Value::Length(Length::sixteenths(12)))]);
    assert_eq!(ask(RowId::BalusterTotal, &thin, &job).expect("a count").fig.value(), Value::Count(48));
}
