//! Handrails against IRC R311.7.8: W18 and W19 are rows of a sheet of check values.

use railhand::figure::Fig;
use railhand::job::Settings;
use railhand::measure::{Length, Lumber, decimal};
use railhand::stairs::grip::{Section, Verdict, grip, of_lumber};
use railhand::stairs::handrail::{height_holds, width_left};

fn sixteenths(n: i64) -> Length {
    Length::sixteenths(n)
}

/// W18: perimeter 4 to 6 1/4 and no more than 2 1/4 corner to corner; round by diameter alone.
#[test]
fn w18_profiles() {
    let boxed = |w, d| Section::Box(sixteenths(w), sixteenths(d));
    let rows = [
        (boxed(24, 24), Some("6"), "2.1213", "grips"),
        (boxed(25, 25), Some("6.25"), "2.2097", "grips"),
        (boxed(20, 28), Some("6"), "2.1506", "grips"),
        (boxed(20, 30), Some("6.25"), "2.2535", "grip-across-most"),
        (boxed(24, 56), Some("10"), "3.8079", "recess"),
        (boxed(12, 16), Some("3.5"), "1.25", "grip-around-least"),
        (Section::Round(sixteenths(32)), None, "2", "grips"),
        (Section::Round(sixteenths(20)), None, "1.25", "grips"),
        (Section::Round(sixteenths(19)), None, "1.1875", "grip-round-least"),
        (Section::Round(sixteenths(33)), None, "2.0625", "recess"),
    ];
    for (section, around, across, want) in rows {
        let found = grip(section, &Settings::default()).expect("it can be measured");
        assert_eq!(found.around.map(|f| decimal(f.as_q()).0).as_deref(), around, "{section:?}");
        let four = railhand::measure::Q::from_integer(10_000);
        assert_eq!(decimal((found.across.as_q() * four).round() / four).0, across, "{section:?}");
        let verdict = match found.verdict {
            Verdict::Grips => "grips",
            Verdict::OnlyWithRecess(_) => "recess",
            Verdict::Fails(limit) => limit.id,
        };
        assert_eq!(verdict, want, "{section:?}");
    }
}

/// A 2x6 cap is 5 1/2 by 1 1/2 dressed (PS 20): 14 around, far past 6 1/4.
#[test]
fn a_cap_is_no_handrail() {
    let cap = grip(of_lumber(Lumber::by(2, 6)).expect("in the table"), &Settings::default()).expect("measured");
    assert_eq!(cap.around.as_ref().and_then(Fig::as_length), Some(Length::inches(14)));
    assert!(matches!(cap.verdict, Verdict::OnlyWithRecess(l) if l.id == "grip-around-most"));
    let two_by_two = grip(of_lumber(Lumber::by(2, 2)).expect("in the table"), &Settings::default()).expect("measured");
    assert_eq!(two_by_two.verdict, Verdict::Grips);
}

/// W19: 36 wide, 4 1/2 in: one rail leaves 31 1/2, two leave 27; both pass with nothing to spare.
#[test]
fn w19_what_handrails_leave() {
    let told = |n| Fig::told(sixteenths(n), "in the check");
    for (rails, clear) in [(1, "31.5"), (2, "27")] {
        let left = width_left(&told(576), &told(72), rails);
        assert_eq!(decimal(left.clear.as_q()).0, clear);
        assert!(left.holds(&Settings::default()));
        assert!(!width_left(&told(575), &told(72), rails).holds(&Settings::default()));
    }
}

/// R311.7.8.1: 34 to 38, both ends included.
#[test]
fn handrail_height() {
    let rows = [(543, false), (544, true), (608, true), (609, false)];
    rows.into_iter().for_each(|(n, holds)| assert_eq!(height_holds(sixteenths(n), &Settings::default()), holds, "{n}"));
}
