//! A guard post under 200 lb (IRC Table R301.5): bending, what it carries, sway, shear.

use super::{EDGE, inches, printed, told, value, wet};
use railhand::figure::Unit;
use railhand::job::{Duration, Grade, Species};
use railhand::measure::Lumber;
use railhand::strength::section::{Push, Section};
use railhand::strength::tie::Tie;
use railhand::strength::{Judged, Leg, Refused, Wood, beam, post};

const ARMS: [i128; 5] = [36, 37, 39, 42, 45];

fn four(left: Leg) -> Section {
    left.section(&inches(7, 2)).expect("something is left")
}

/// A leg so thick pushed along its width.
fn along(left: railhand::figure::Fig) -> Section {
    Section::rectangle(&left, &inches(7, 2)).expect("something is left")
}

fn six(left: Leg) -> Section {
    left.section(&inches(11, 2)).expect("something is left")
}

fn half() -> railhand::figure::Fig {
    inches(7, 4)
}

/// M = 200 a over S of the section (b d^2 / 6 and the L's closed forms); worked by hand and by a
/// second program.
#[test]
fn bending_by_section_and_arm() {
    let two = || inches(2, 1);
    let rows: [(&str, Section, Push, [&str; 5]); 12] = [
        ("4x4", four(Leg::Whole), Push::Held, ["1007.6", "1035.6", "1091.5", "1175.5", "1259.5"]),
        ("L held", four(Leg::Ell(half())), Push::Held, ["1709.8", "1757.3", "1852.3", "1994.8", "2137.3"]),
        ("L free", four(Leg::Ell(half())), Push::Free, ["2072.7", "2130.3", "2245.5", "2418.2", "2590.9"]),
        ("L diagonal", four(Leg::Ell(half())), Push::Any, ["2714.2", "2789.6", "2940.3", "3166.5", "3392.7"]),
        ("2 deep", four(Leg::Across(two())), Push::Held, ["3085.7", "3171.4", "3342.9", "3600.0", "3857.1"]),
        ("2 wide", along(two()), Push::Held, ["1763.3", "1812.2", "1910.2", "2057.1", "2204.1"]),
        ("half", four(Leg::Across(half())), Push::Held, ["4030.3", "4142.3", "4366.2", "4702.0", "5037.9"]),
        ("half along", along(half()), Push::Held, ["2015.2", "2071.1", "2183.1", "2351.0", "2519.0"]),
        ("quarter", four(Leg::Quarter(half())), Push::Held, ["8060.6", "8284.5", "8732.4", "9404.1", "10075.8"]),
        ("6x6", six(Leg::Whole), Push::Held, ["259.7", "266.9", "281.3", "302.9", "324.6"]),
        (
            "6x6 quarter",
            six(Leg::Quarter(inches(11, 4))),
            Push::Held,
            ["2077.2", "2134.9", "2250.3", "2423.4", "2596.5"],
        ),
        ("6x6 half", six(Leg::Across(inches(11, 4))), Push::Held, ["1038.6", "1067.5", "1125.2", "1211.7", "1298.3"]),
    ];
    for (name, section, push, want) in rows {
        for (arm, text) in ARMS.iter().zip(want) {
            let stress = post::bending(&section, push, &inches(*arm, 1)).expect("inside the range");
            printed(&stress, text, &format!("{name} at {arm}"));
        }
    }
}

fn judged(section: &Section, push: Push, wood: Wood, arm: i128) -> f64 {
    let size = Lumber::FOUR_BY_FOUR;
    let demand = post::bending(section, push, &inches(arm, 1)).expect("inside the range");
    let judged = Judged::of(demand, wood.bending(size, EDGE).expect("in the table")).expect("small");
    assert_eq!(judged.holds(), value(&judged.ratio) <= 1.0);
    value(&judged.ratio)
}

/// fb / Fb' of a wet No.2 4x4 at 36 in., CD 1.0 then 1.6 (NDS Supplement values as in the wood
/// tests), to the two printed places.
#[test]
fn asked_over_allowed_at_36() {
    use Species::{Cedar, DouglasFir, HemFir, Redwood, SouthernPine, SprucePineFir};
    let rows = [
        (SouthernPine, false, [[0.92, 0.57], [1.55, 0.97], [1.88, 1.18], [3.66, 2.29], [7.33, 4.58]]),
        (DouglasFir, true, [[1.10, 0.69], [1.86, 1.16], [2.26, 1.41], [4.39, 2.74], [8.78, 5.49]]),
        (HemFir, true, [[1.16, 0.73], [1.97, 1.23], [2.39, 1.49], [4.65, 2.91], [9.30, 5.81]]),
        (SprucePineFir, true, [[1.13, 0.71], [1.92, 1.20], [2.32, 1.45], [4.52, 2.82], [9.03, 5.64]]),
        (Cedar, false, [[0.96, 0.60], [1.63, 1.02], [1.97, 1.23], [3.84, 2.40], [7.68, 4.80]]),
        (Redwood, false, [[0.93, 0.58], [1.57, 0.98], [1.91, 1.19], [3.71, 2.32], [7.41, 4.63]]),
    ];
    let sections = [
        (four(Leg::Whole), Push::Held),
        (four(Leg::Ell(half())), Push::Held),
        (four(Leg::Ell(half())), Push::Free),
        (four(Leg::Across(half())), Push::Held),
        (four(Leg::Quarter(half())), Push::Held),
    ];
    for (species, incised, want) in rows {
        for ((section, push), [long, short]) in sections.iter().zip(want) {
            let wood = wet(species, incised);
            let times =
                [judged(section, *push, wood, 36), judged(section, *push, wood.under(Duration::TenMinutes), 36)];
            for (got, want) in times.iter().zip([long, short]) {
                assert!((got - want).abs() <= 0.005_001, "{species:?} {push:?}: {got} is not {want}");
            }
        }
    }
    assert!((judged(&sections[0].0, Push::Held, wet(SouthernPine, false), 42) - 1.0686).abs() < 5e-5);
}

/// A public permit calculation for an incised dry hem-fir No.2 4x4, 200 lb at 36 in., CD 1.0,
/// prints fb 1,008, Fb' 1,020, ratio 0.99 and a movement of 0.20 in.
#[test]
fn a_permit_calculation_of_a_rail_post() {
    let wood = Wood { wet: false, ..wet(Species::HemFir, true) };
    let (section, arm) = (four(Leg::Whole), inches(36, 1));
    let demand = post::bending(&section, Push::Held, &arm).expect("inside the range");
    printed(&demand, "1008", "fb");
    let allowed = wood.bending(Lumber::FOUR_BY_FOUR, EDGE).expect("in the table");
    printed(&allowed, "1020", "Fb'");
    printed(&Judged::of(demand, allowed).expect("small").ratio, "0.99", "fb / Fb'");
    let sway = post::sway(&section, &arm, &wood.stiffness(Lumber::FOUR_BY_FOUR).expect("in the table"));
    printed(&sway.expect("small"), "0.20", "movement");
    // Wet the same post is over: 1,007.6 / 867.
    assert!((judged(&section, Push::Held, wet(Species::HemFir, true), 36) - 1.162).abs() < 5e-4);
}

/// Another permit calculation: M 7,200, a section modulus of 6 needed at Fb 800 with CF 1.5, and
/// the lag's pull of 1,252 lb over 5 3/4 in., which leaves out the arm below the deck: the push of 200 lb at
/// 36 in. about a lag at the decking's top. With 1 in. of decking and 3/4 in. down to it the push at the other is
/// 200 x 37 3/4 / 5 3/4 = 1,313.
#[test]
fn another_permit_calculation() {
    let m = post::moment(&inches(36, 1)).expect("inside the range");
    printed(&m, "7200", "moment");
    printed(&post::modulus_needed(&m, &told(1200, Unit::Psi)).expect("small"), "6", "modulus needed");
    printed(&four(Leg::Whole).modulus(Push::Held).expect("small"), "7.146", "a 4x4's");
    let tie = |decking, edge: (i128, i128)| Tie {
        height: inches(36, 1),
        decking: inches(decking, 1),
        edge: inches(edge.0, edge.1),
        apart: inches(23, 4),
    };
    printed(&tie(0, (0, 1)).push().expect("small"), "1252", "the lag, its arm left out");
    printed(&tie(1, (3, 4)).push().expect("small"), "1313", "the lag, with its arm");
}

/// What one quarter of a southern pine 4x4 may carry at 36 in.: 27.3 lb, 43.7 at CD 1.6. And the
/// load that breaks clear wood there, from the mean MOR of the Wood Handbook's Table 5-3a
/// (shortleaf pine 7,397 psi green, 13,053 at 12 %): 183.5 and 323.9 lb.
#[test]
fn what_a_quarter_carries() {
    let (quarter, arm) = (four(Leg::Quarter(half())), inches(36, 1));
    for (psi, text) in [(1100, "27.3"), (1760, "43.7"), (7397, "183.5"), (13_053, "323.9")] {
        let load = post::carries(&quarter, Push::Held, &arm, &told(psi, Unit::Psi)).expect("small");
        printed(&load, text, &format!("at {psi} psi"));
    }
}

/// On graded stock the weakest in twenty breaks at about 2.1 Fb (ASTM D1990, from memory, not
/// checked): 2,310 psi of southern pine No.2, so a quarter breaks at 57 lb.
#[test]
fn what_breaks_a_quarter_of_graded_stock() {
    let (quarter, arm) = (four(Leg::Quarter(half())), inches(36, 1));
    let load = post::carries(&quarter, Push::Held, &arm, &told(2310, Unit::Psi)).expect("small");
    printed(&load, "57", "2.1 x 1,100 psi");
}

/// ASTM E985: a post's top moves no more than its height over 12: 3 in. at 36, 3 1/2 at 42.
#[test]
fn how_far_a_top_may_move() {
    for (height, text) in [(36, "3.0"), (42, "3.5")] {
        printed(&post::sway_limit(&inches(height, 1)).expect("small"), text, &format!("{height} in."));
    }
}

/// P a^3 / (3 E I) of a 4x4: 0.178, 0.197, 0.155 and 0.249 in. at 36, 0.282 at 42.
#[test]
fn sway_of_a_4x4() {
    let rows = [
        (36, 1_400_000, "0.178"),
        (36, 1_260_000, "0.197"),
        (36, 1_600_000, "0.155"),
        (36, 1_000_000, "0.249"),
        (42, 1_400_000, "0.282"),
    ];
    for (arm, e, text) in rows {
        let sway = post::sway(&four(Leg::Whole), &inches(arm, 1), &told(e, Unit::Psi)).expect("small");
        printed(&sway, text, &format!("{arm} in., E {e}"));
    }
}

/// Shear in a quarter: 1.5 x 200 / 3.0625 = 98 psi, under every wet, incised Fv of the tables;
/// bearing of 200 lb on it: 65 psi, under every Fc_perp.
#[test]
fn bending_governs_a_quarter() {
    let area = four(Leg::Quarter(half())).area().expect("small");
    let shear = beam::shear_stress(&told(200, Unit::Pounds), &area).expect("small");
    printed(&shear, "98", "shear");
    let bearing = 200.0 / value(&area);
    assert!((bearing - 65.3).abs() < 0.05);
    for species in Species::ALL {
        let wood = Wood { incised: false, ..wet(species, false) };
        assert!(value(&wood.shear(Lumber::FOUR_BY_FOUR).expect("in the table")) > value(&shear), "{species:?}");
        assert!(value(&wood.bearing(Lumber::FOUR_BY_FOUR).expect("in the table")) > bearing, "{species:?}");
    }
}

/// No.2 6x6s with a quarter left are over even at CD 1.6; half legs are over at CD 1.0, and at
/// 1.6 southern pine holds (1,360) and incised Douglas fir (960) and hem-fir (736) do not.
#[test]
fn notched_6x6s() {
    let at = |left: Leg, wood: Wood| {
        let demand = post::bending(&six(left), Push::Held, &inches(36, 1)).expect("inside the range");
        Judged::of(demand, wood.bending(Lumber::SIX_BY_SIX, EDGE).expect("in the table")).expect("small").holds()
    };
    for species in Species::ALL {
        let wood = Wood {
            grade: Grade::No2,
            ..Wood::taken(&railhand::job::Timber { species: Some(species), ..Default::default() })
        };
        let short = wood.under(Duration::TenMinutes);
        assert!(!at(Leg::Quarter(inches(11, 4)), short), "{species:?}");
        assert!(!at(Leg::Across(inches(11, 4)), wood), "{species:?}");
        let held = at(Leg::Across(inches(11, 4)), short);
        match species {
            Species::SouthernPine => assert!(held),
            Species::DouglasFir | Species::HemFir => assert!(!held, "{species:?}"),
            _ => {}
        }
    }
}

/// Heights no guard has are refused, with the range.
#[test]
fn heights_outside_the_range() {
    for arm in [0, 11, 97, 480] {
        assert!(matches!(post::moment(&inches(arm, 1)), Err(Refused::Height(..))), "{arm}");
    }
    assert!(post::moment(&inches(12, 1)).is_ok() && post::moment(&inches(96, 1)).is_ok());
}
