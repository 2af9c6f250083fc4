//! Section properties: the NDS Supplement's table of dressed sections, and closed forms.

use super::{inches, printed, value};
use railhand::figure::Fig;
use railhand::strength::Leg;
use railhand::strength::section::{Push, Section};

fn figures(section: &Section) -> [Fig; 3] {
    let modulus = section.modulus(Push::Held).expect("small");
    [section.area().expect("small"), modulus, section.second_moment().expect("small")]
}

/// NDS Supplement Table 1B (A, S and I as printed there; S of a 6x6 and S, I of a 2x6 from
/// memory, and equal to b d^2 / 6, b d^3 / 12). 2x2 and 5/4x6 are not in the table: by formula.
#[test]
fn dressed_sections() {
    type Row = ((i128, i128), (i128, i128), [&'static str; 3]);
    let rows: [Row; 9] = [
        ((3, 2), (3, 2), ["2.25", "0.5625", "0.421875"]),
        ((3, 2), (7, 2), ["5.25", "3.06", "5.359"]),
        ((7, 2), (3, 2), ["5.25", "1.31", "0.984"]),
        ((3, 2), (11, 2), ["8.25", "7.563", "20.80"]),
        ((11, 2), (3, 2), ["8.25", "2.063", "1.547"]),
        ((11, 2), (1, 1), ["5.5", "0.916667", "0.458333"]),
        ((1, 1), (11, 2), ["5.5", "5.041667", "13.864583"]),
        ((7, 2), (7, 2), ["12.25", "7.146", "12.51"]),
        ((11, 2), (11, 2), ["30.25", "27.73", "76.26"]),
    ];
    for (b, d, want) in rows {
        let section = Section::rectangle(&inches(b.0, b.1), &inches(d.0, d.1)).expect("a section");
        for (fig, text) in figures(&section).iter().zip(want) {
            printed(fig, text, &format!("{b:?} by {d:?}"));
        }
    }
}

fn leg(leg: Leg) -> Section {
    leg.section(&inches(7, 2)).expect("something is left")
}

fn ell() -> Section {
    leg(Leg::Ell(inches(7, 4)))
}

/// Closed forms of a square of side a less a quadrant, at a = 3 1/2: parallel-axis sums by
/// hand, a grid sum and Green's theorem in a second program agree on them.
#[test]
fn an_outside_corners_l() {
    let a = 3.5_f64;
    let section = ell();
    assert_eq!(value(&section.area().expect("small")), 3.0 * a * a / 4.0);
    let (x, y) = section.centroid().expect("small");
    assert_eq!(x, y);
    assert_eq!(x, num_rational::Ratio::new(35, 24), "5a/12 from the full faces");
    printed(&section.second_moment().expect("small"), "8.597331", "11 a^4 / 192");
    let product = section.product().expect("small");
    assert!((*product.numer() as f64 / *product.denom() as f64 + a.powi(4) / 48.0).abs() < 1e-12);
    let rows = [
        (Push::Held, "4.210938", 11.0 * a.powi(3) / 112.0),
        (Push::Free, "3.473669", 35.0 * a.powi(3) / 432.0),
        (Push::Any, "2.65276", 0.061_871_8 * a.powi(3)),
    ];
    for (push, text, closed) in rows {
        let modulus = section.modulus(push).expect("small");
        printed(&modulus, text, &format!("{push:?}"));
        assert!((value(&modulus) - closed).abs() < 3e-6, "{push:?}");
    }
}

/// The L against a push across a face, at the full face's side: 11a^3/80 = 5.895313; across its
/// symmetry diagonal the tips are a root 2 over 3 off, 1.649916, so the heel at 2.062395 governs.
/// Closed forms by hand, a second program agrees.
#[test]
fn the_ls_other_sides() {
    let section = ell();
    let i = value(&section.second_moment().expect("small"));
    let (x, _) = section.centroid().expect("small");
    let to_full_face = *x.numer() as f64 / *x.denom() as f64;
    assert!((i / to_full_face - 5.895313).abs() < 5e-7);
    let product = section.product().expect("small");
    let weak = i + *product.numer() as f64 / *product.denom() as f64;
    let governs = value(&section.modulus(Push::Any).expect("small"));
    assert!((weak / 1.649916 - 3.315944).abs() < 1e-5 && governs < weak / 1.649916, "the tips give more: {governs}");
}

/// The principal second moments of the L, 5a^4/64 and 7a^4/192, have the sum and product of
/// the second moments about the faces.
#[test]
fn the_ls_principal_moments() {
    let section = ell();
    let i = value(&section.second_moment().expect("small"));
    let product = section.product().expect("small");
    let ixy = *product.numer() as f64 / *product.denom() as f64;
    for (principal, text) in [(i - ixy, 11.723633), (i + ixy, 5.471029)] {
        assert!((principal - text).abs() < 5e-7, "{principal} {text}");
    }
    // The distances to the farthest corners: a over root 2, and 5a root 2 over 12 at the heel.
    let weak = value(&section.modulus(Push::Any).expect("small"));
    assert!(((i + ixy) / weak - 2.062395).abs() < 5e-7);
    // Across the strong axis the tips are a over root 2 off: 4.737064.
    assert!(((i - ixy) / 2.474874 - 4.737064).abs() < 5e-6);
}

/// b d^2 / 6 of what is left, at a = 3 1/2; the full square also across its diagonal.
#[test]
fn legs_of_a_4x4() {
    let rows = [
        (Leg::Whole, Push::Held, "7.145833"),
        (Leg::Whole, Push::Free, "7.145833"),
        (Leg::Whole, Push::Any, "5.052867"),
        (Leg::Across(inches(7, 4)), Push::Held, "1.786458"),
        (Leg::Quarter(inches(7, 4)), Push::Held, "0.893229"),
        (Leg::Across(inches(2, 1)), Push::Held, "2.333333"),
    ];
    for (left, push, text) in rows {
        printed(&leg(left.clone()).modulus(push).expect("small"), text, &format!("{left:?} {push:?}"));
    }
}

/// Stress multipliers against the full post: 8; 4; 56/33, 72/35 and 2.694 for the L. And
/// for a leg 2 in. deep (2/3.5)^2 = 0.3265, 3.0625 times.
#[test]
fn stress_against_the_whole_post() {
    let whole = value(&leg(Leg::Whole).modulus(Push::Held).expect("small"));
    let rows = [
        (Leg::Quarter(inches(7, 4)), Push::Held, 8.0),
        (Leg::Across(inches(7, 4)), Push::Held, 4.0),
        (Leg::Ell(inches(7, 4)), Push::Held, 56.0 / 33.0),
        (Leg::Ell(inches(7, 4)), Push::Free, 72.0 / 35.0),
        (Leg::Ell(inches(7, 4)), Push::Any, 2.694),
        (Leg::Across(inches(2, 1)), Push::Held, 3.0625),
    ];
    for (left, push, times) in rows {
        let modulus = value(&leg(left.clone()).modulus(push).expect("small"));
        assert!((whole / modulus - times).abs() < 5e-4, "{left:?} {push:?}: {}", whole / modulus);
    }
}

/// A notch as deep as the post leaves nothing to judge, and says so.
#[test]
fn nothing_left_is_refused() {
    for left in [Leg::Across(inches(0, 1)), Leg::Quarter(inches(-1, 1)), Leg::Ell(inches(4, 1))] {
        assert!(left.section(&inches(7, 2)).is_err(), "{left:?}");
    }
}
