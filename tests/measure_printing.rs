//! How lengths are printed, and what an inch, a foot and a piece of lumber are.

use num_rational::Ratio;
use pretty_assertions::assert_eq;
use railhand::measure::{Length, Lumber, Q, Tape, decimal, exact_fraction, exact_phrase};

fn inches(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("inside the bound")
}

#[test]
fn the_tape_reads_the_nearest_mark_and_a_tie_up() {
    // Worked by hand from exact fractions; rounding a tie up is common practice, no source.
    let table: &[(i128, i128, i128, &str)] = &[
        (507, 4, 16, "10'-6 3/4\""),
        (144, 1, 16, "12'-0\""),
        (12, 1, 16, "1'-0\""),
        (11, 1, 16, "11\""),
        (0, 1, 16, "0\""),
        (1, 2, 16, "1/2\""),
        (3, 64, 16, "1/16\""),
        (1, 32, 16, "1/16\""),
        (1, 33, 16, "0\""),
        (-1, 32, 16, "-1/16\""),
        (-507, 4, 16, "-10'-6 3/4\""),
        (383, 32, 16, "1'-0\""),
        (925, 24, 2, "3'-2 1/2\""),
        (925, 24, 8, "3'-2 1/2\""),
        (925, 24, 32, "3'-2 17/32\""),
        (925, 24, 64, "3'-2 35/64\""),
    ];
    for (num, den, tape, expected) in table {
        let tape = Tape::to(*tape).expect("a tape is made so");
        assert_eq!(tape.read(inches(*num, *den)), *expected, "{num}/{den}");
    }
    assert!(Tape::to(10).is_none() && Tape::to(0).is_none());
}

/// 21 balusters 1 1/2 in. wide in 115 3/16 in.: the gap is 1339/352 in., and the eleventh
/// mark is an exact tie on the tape, 56.84375 in. Worked with exact fractions; a float
/// lands on either side of it. The first three marks are 3 13/16, 9 1/8 and 14 7/16.
#[test]
fn an_exact_tie_on_a_running_mark_rounds_up() {
    let width = inches(3, 2);
    let gap = (inches(1843, 16) - width * 21) / 22;
    assert_eq!(gap, inches(1339, 352));
    let mark = |i: i64| gap + (gap + width) * i;
    assert_eq!(decimal(mark(10).q()), ("56.84375".to_owned(), true));
    assert_eq!(Tape::SIXTEENTHS.read_inches(mark(10)), "56 7/8\"");
    assert!(!Tape::SIXTEENTHS.is_true(mark(10)));
    let marks: Vec<_> = (0..3).map(|i| Tape::SIXTEENTHS.read_inches(mark(i))).collect();
    assert_eq!(marks, ["3 13/16\"", "9 1/8\"", "14 7/16\""]);
}

#[test]
fn exact_fractions_and_decimals() {
    assert_eq!(exact_fraction(inches(947, 24)), "39 11/24");
    assert_eq!(exact_fraction(inches(-3, 8)), "-3/8");
    assert_eq!(exact_fraction(Length::ZERO), "0");
    let table: &[(i128, i128, &str, bool)] = &[
        (507, 4, "126.75", true),
        (12, 1, "12", true),
        (0, 1, "0", true),
        (1, 64, "0.015625", true),
        (-1, 2, "-0.5", true),
        (1, 3, "0.333333", false),
        (2, 3, "0.666667", false),
        (947, 24, "39.458333", false),
        (115, 28, "4.107143", false),
    ];
    for (num, den, text, exact) in table {
        assert_eq!(decimal(Ratio::new(*num, *den)), ((*text).to_owned(), *exact), "{num}/{den}");
    }
}

#[test]
fn exact_phrases() {
    assert_eq!(exact_phrase(inches(507, 4)), "10'-6 3/4\"");
    assert_eq!(exact_phrase(inches(1, 64)), "1/64\"");
    assert_eq!(exact_phrase(Length::from_mm(Q::from_integer(3201)).expect("small")), "3201 mm");
    assert_eq!(exact_phrase(inches(947, 24)), "39 11/24\"");
}

/// NIST Handbook 44, appendix C: 1 inch = 25.4 mm exactly, 1 foot = 12 inches = 0.3048 m
/// exactly, 1 yard = 0.9144 m exactly.
#[test]
fn inch_and_foot_are_exact() {
    assert_eq!(Length::inches(1).mm(), Ratio::new(254, 10));
    assert_eq!(Length::inches(12).mm(), Ratio::new(3048, 10));
    assert_eq!(Length::inches(36).mm(), Ratio::new(9144, 10));
    let metre = Length::from_mm(Q::from_integer(1000)).expect("small");
    assert_eq!(metre * 3048, Length::inches(12 * 10_000));
    assert!(metre.is_exact());
}

/// PS 20 size table, dry: 2 in. nominal is 1 1/2, 4 is 3 1/2, 6 is 5 1/2, 8 is 7 1/4,
/// 10 is 9 1/4, 12 is 11 1/4; 5/4 decking is 1 in.; timbers 5 in. and thicker are 1/2 off.
#[test]
fn lumber_is_dressed_to_the_size_table() {
    let table: &[(Lumber, &str, &str)] = &[
        (Lumber::by(2, 2), "1 1/2", "1 1/2"),
        (Lumber::by(2, 4), "1 1/2", "3 1/2"),
        (Lumber::by(2, 6), "1 1/2", "5 1/2"),
        (Lumber::by(2, 8), "1 1/2", "7 1/4"),
        (Lumber::by(2, 10), "1 1/2", "9 1/4"),
        (Lumber::by(2, 12), "1 1/2", "11 1/4"),
        (Lumber::FOUR_BY_FOUR, "3 1/2", "3 1/2"),
        (Lumber::by(4, 6), "3 1/2", "5 1/2"),
        (Lumber::SIX_BY_SIX, "5 1/2", "5 1/2"),
        (Lumber::by(8, 8), "7 1/2", "7 1/2"),
        (Lumber { thick_quarters: 5, wide: 6 }, "1", "5 1/2"),
    ];
    for (lumber, thick, wide) in table {
        let (t, w) = lumber.dressed().expect("in the table");
        assert_eq!((exact_fraction(t).as_str(), exact_fraction(w).as_str()), (*thick, *wide), "{lumber}");
    }
    assert_eq!(Lumber::by(2, 5).dressed(), None);
}
