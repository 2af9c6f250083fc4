//! Beams and rails against a general-purpose frame solver: `frame_vectors.toml`, made by
//! `frame_vectors.py` with PyNiteFEA 3.2.0.

use super::{told, value};
use railhand::figure::{Fig, Unit, Why};
use railhand::measure::{Length, Q};
use railhand::strength::beam::{bending_sag, moment};
use railhand::strength::section::{Push, Section};
use railhand::strength::values::Case;
use serde::Deserialize;

#[derive(Deserialize)]
struct Vectors {
    beam: Vec<Beam>,
    pair: Vec<Pair>,
}

#[derive(Deserialize)]
struct Beam {
    case: String,
    b: f64,
    d: f64,
    e: i64,
    span: f64,
    sag: f64,
    moment: f64,
}

#[derive(Deserialize)]
struct Pair {
    first: (f64, f64),
    second: (f64, f64),
    e: i64,
    span: f64,
    sag: f64,
    moments: (f64, f64),
}

fn vectors() -> Vectors {
    toml::from_str(include_str!("frame_vectors.toml")).expect("the vectors are TOML")
}

/// A length on the sixteenths, as the vectors' are.
fn length(inches: f64) -> Fig {
    Fig::told(Length::sixteenths((inches * 16.0) as i64), "the vector's")
}

fn section((b, d): (f64, f64)) -> Section {
    Section::rectangle(&length(b), &length(d)).expect("a section")
}

fn close(ours: &Fig, theirs: f64, within: f64, what: &str) {
    let ours = value(ours);
    assert!((ours / theirs - 1.0).abs() < within, "{what}: {ours} against {theirs}");
}

#[test]
fn single_beams() {
    let load = told(200, Unit::Pounds);
    let all = vectors().beam;
    assert_eq!(all.len(), 96);
    for v in all {
        let case = match v.case.as_str() {
            "MidPoint" => Case::MidPoint,
            _ => Case::EndPoint,
        };
        let (span, e) = (length(v.span), told(v.e, Unit::Psi));
        let i = section((v.b, v.d)).second_moment().expect("small");
        let what = format!("{} {}x{} {}", v.case, v.b, v.d, v.span);
        close(&bending_sag(case, &load, &span, &e, &i).expect("small"), v.sag, 1e-5, &what);
        close(&moment(case, &load, &span).expect("small"), v.moment, 1e-5, &what);
    }
}

/// Two pieces that bend alike and slip: sag by the second moments added up, each piece's moment
/// in the proportion of its own, so its stress is M c over the sum.
#[test]
fn pieces_that_share_a_load() {
    let load = told(200, Unit::Pounds);
    let all = vectors().pair;
    assert_eq!(all.len(), 9);
    for v in all {
        let each = [v.first, v.second].map(|s| section(s).second_moment().expect("small"));
        let sum = each.iter().map(Fig::as_q).sum::<Q>();
        let both = Fig::quantity(sum, Unit::In4, Why::Told("the test's"));
        let span = length(v.span);
        let sag = bending_sag(Case::MidPoint, &load, &span, &told(v.e, Unit::Psi), &both).expect("small");
        close(&sag, v.sag, 5e-5, &format!("{:?} {:?} {}", v.first, v.second, v.span));
        let m = value(&moment(Case::MidPoint, &load, &span).expect("small"));
        for ((piece, i), theirs) in [v.first, v.second].iter().zip(&each).zip([v.moments.0, v.moments.1]) {
            let ours = m * piece.1 / 2.0 / value(&both);
            let modulus = value(&section(*piece).modulus(Push::Held).expect("small"));
            assert!((ours / (theirs / modulus) - 1.0).abs() < 2e-4, "{piece:?} of {i:?}: {ours} {}", theirs / modulus);
        }
    }
}
