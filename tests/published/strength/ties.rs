//! The upper bolt's pull: statics, against the deck guide's 1,800 lb hold-down (AWC DCA 6, from memory).

use super::{inches, printed};
use railhand::strength::Refused;
use railhand::strength::tie::{Tie, apart_in, hold_down};

fn tie(h: i128, d: (i128, i128), e: (i128, i128), s: (i128, i128)) -> Tie {
    Tie { height: inches(h, 1), decking: inches(d.0, d.1), edge: inches(e.0, e.1), apart: inches(s.0, s.1) }
}

/// T = P (h + d + e + s) / s about the lower bolt, B = P (h + d + e) / s: worked by hand.
#[test]
fn pull_and_push() {
    let rows = [
        (36, (1, 1), (2, 1), (5, 1), "1760.0", "1560.0"),
        (36, (3, 2), (2, 1), (5, 1), "1780.0", "1580.0"),
        (36, (3, 2), (5, 2), (5, 1), "1800.0", "1600.0"),
        (36, (1, 1), (2, 1), (13, 4), "2600.0", "2400.0"),
        (36, (1, 1), (2, 1), (21, 4), "1685.7", "1485.7"),
        (36, (1, 1), (2, 1), (29, 4), "1275.9", "1075.9"),
        (42, (1, 1), (2, 1), (5, 1), "2000.0", "1800.0"),
        (42, (3, 2), (5, 2), (5, 1), "2040.0", "1840.0"),
        (36, (1, 1), (2, 1), (39, 8), "1800.0", "1600.0"),
        // A permit calculation's lag, with the arm below the deck it left out: 1,513 lb.
        (36, (1, 1), (3, 4), (23, 4), "1513", "1313"),
    ];
    for (h, d, e, s, pull, push) in rows {
        let tie = tie(h, d, e, s);
        printed(&tie.pull().expect("small"), pull, &format!("pull at {h} {s:?}"));
        printed(&tie.push().expect("small"), push, &format!("push at {h} {s:?}"));
    }
}

/// Two bolts with 2 in. edge distances in a 2x8, 2x10 and 2x12 rim (PS 20 sizes): 7 1/4 - 4 = 3 1/4; 9 1/4 - 4 = 5 1/4 and
/// 11 1/4 - 4 = 7 1/4, both past the 5 in. two bolts stand apart at most; where 6 are allowed, 5 1/4 and 6.
#[test]
fn bolts_in_a_rim() {
    let apart = |rim: (i128, i128), most| apart_in(&inches(rim.0, rim.1), &inches(2, 1), &inches(most, 1));
    let rows = [((29, 4), 5, "3.25"), ((37, 4), 5, "5"), ((45, 4), 5, "5"), ((37, 4), 6, "5.25"), ((45, 4), 6, "6")];
    for (rim, most, text) in rows {
        printed(&apart(rim, most).expect("they fit"), text, &format!("{rim:?}"));
    }
    assert!(matches!(apart((7, 2), 5), Err(Refused::RimTooShallow)));
}

#[test]
fn the_published_hold_down() {
    printed(&hold_down(), "1800", "AWC DCA 6, from memory");
}
