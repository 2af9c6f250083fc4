//! Strength against published tables, permit calculations and a frame solver.

mod posts;
mod rails;
mod sections;
mod solver;
mod ties;
mod woods;

use railhand::figure::{Fig, Unit, Why};
use railhand::job::{Duration, Grade, Lie, Species};
use railhand::measure::{Length, Lumber, Q};
use railhand::strength::Wood;

/// A told length of so many inches and a fraction.
pub fn inches(num: i128, den: i128) -> Fig {
    Fig::told(Length::new(num, den).expect("small"), "the test's")
}

/// A told quantity.
pub fn told(n: i64, unit: Unit) -> Fig {
    Fig::quantity(Q::from_integer(n.into()), unit, Why::Told("the test's"))
}

pub fn value(fig: &Fig) -> f64 {
    let q = fig.as_q();
    *q.numer() as f64 / *q.denom() as f64
}

/// Holds a figure to a printed one: within half a unit of its last printed place.
#[track_caller]
pub fn printed(fig: &Fig, text: &str, what: &str) {
    let want: f64 = text.replace(',', "").parse().expect("a printed number");
    let places = text.split_once('.').map_or(0, |(_, p)| p.len());
    let half = 0.5 * 10_f64.powi(-(places as i32));
    assert!((value(fig) - want).abs() <= half * 1.000_001, "{what}: {} is not {text}", value(fig));
}

/// No.2 wood of a species in the wet, incised or not, at ten years' load.
pub fn wet(species: Species, incised: bool) -> Wood {
    Wood { species, grade: Grade::No2, wet: true, incised, duration: Duration::TenYears }
}

pub const TWO_BY_FOUR: Lumber = Lumber::by(2, 4);
pub const TWO_BY_SIX: Lumber = Lumber::by(2, 6);
pub const FLAT: Lie = Lie::Flat;
pub const EDGE: Lie = Lie::Edge;
