//! Sines and cosines without floats: fixed-point series, carried to nine places.

use super::{Length, Q};
use num_rational::Ratio;
use num_traits::CheckedDiv;

/// The fixed point: 18 places.
const ONE: i128 = 1_000_000_000_000_000_000;
/// The finest part of a degree an angle is taken to.
const FINEST: i128 = 1_000_000_000;
/// Pi to 18 places.
const PI: i128 = 3_141_592_653_589_793_238;

/// The sine and cosine of so many degrees, as lengths of a unit side. Exact at right
/// angles; elsewhere carried to [`Length::CARRIED`] and flagged inexact.
pub fn sin_cos(degrees: i32) -> (Length, Length) {
    let degrees = degrees.rem_euclid(360);
    (whole_sine(degrees), whole_sine((degrees + 90) % 360))
}

fn whole_sine(degrees: i32) -> Length {
    match degrees {
        0 | 180 => Length::inches(0),
        90 => Length::inches(1),
        270 => Length::inches(-1),
        181..360 => -whole_sine(degrees - 180),
        91..180 => whole_sine(180 - degrees),
        _ => carried(series(i128::from(degrees) * PI / 180)),
    }
}

/// The sine of so many degrees, broken ones too, from 0 to 90; carried to [`Length::CARRIED`]. `None` outside of that.
pub fn sine(degrees: Q) -> Option<Q> {
    let ninety = Ratio::from_integer(90);
    let fine = Ratio::from_integer(FINEST);
    let turned = (degrees * fine).round().to_integer() * (ONE / FINEST) / 180;
    (degrees >= Ratio::from_integer(0) && degrees <= ninety).then(|| carried(series(turned * PI / ONE)).q())
}

/// The cosine of so many degrees, as [`sine`].
pub fn cosine(degrees: Q) -> Option<Q> {
    sine(Ratio::from_integer(90) - degrees)
}

/// The tangent of so many degrees from 0 up to 90, as [`sine`]. `None` at 90.
pub fn tangent(degrees: Q) -> Option<Q> {
    sine(degrees)?.checked_div(&cosine(degrees)?)
}

/// x - x^3/3! + x^5/5! - ... for x from 0 to pi/2, in fixed point.
fn series(x: i128) -> i128 {
    let square = x * x / ONE;
    let (mut term, mut sum) = (x, x);
    for k in 1..12 {
        term = -(term * square / ONE) / (2 * k * (2 * k + 1));
        sum += term;
    }
    sum
}

fn carried(fixed: i128) -> Length {
    let step = ONE / Length::CARRIED;
    Length::new((fixed + step / 2) / step, Length::CARRIED).unwrap_or(Length::ZERO).inexact()
}

/// The tangent of half so many degrees, for a mitre's set-back; inexact but at 0 and 90.
pub fn half_tangent(degrees: i32) -> Option<Length> {
    // tan(a/2) = sin a / (1 + cos a), which needs no half degrees.
    let (sin, cos) = sin_cos(degrees);
    let below = Ratio::from_integer(1) + cos.q();
    let exact = sin.is_exact() && cos.is_exact();
    let tangent = sin.over(below)?;
    Some(if exact { tangent } else { tangent.inexact() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use pretty_assertions::assert_eq;

    #[test]
    fn right_angles_are_exact_and_the_rest_agree_with_tables() {
        // Values to nine places from printed trigonometric tables (common knowledge, no source).
        let table = [(30, "0.5"), (45, "0.707106781"), (60, "0.866025404"), (89, "0.999847695"), (1, "0.017452406")];
        for (degrees, sine) in table {
            let (sin, _) = sin_cos(degrees);
            assert!(!sin.is_exact());
            assert_eq!(crate::measure::decimal(sin.q()).0, sine, "{degrees}");
        }
        for (degrees, sin, cos) in [(0, 0, 1), (90, 1, 0), (180, 0, -1), (270, -1, 0), (-90, -1, 0), (450, 1, 0)] {
            let (s, c) = sin_cos(degrees);
            assert!(s.is_exact() && c.is_exact());
            assert_eq!((s, c), (Length::inches(sin), Length::inches(cos)), "{degrees}");
        }
    }

    /// Values to six places from printed trigonometric tables (common knowledge, no source).
    #[test]
    fn broken_degrees_agree_with_tables() {
        let six = |q: crate::measure::Q| crate::measure::decimal(q.trunc_to(6)).0;
        let half = Ratio::new(45, 2);
        assert_eq!(
            [sine(half), cosine(half), tangent(half)].map(|q| q.map(six)),
            ["0.382683", "0.92388", "0.414214"].map(|s| Some(s.to_owned()))
        );
        assert_eq!(sine(Ratio::new(45, 4)).map(six).as_deref(), Some("0.19509"));
        assert_eq!(
            [sine(Ratio::from_integer(91)), sine(Ratio::from_integer(-1)), tangent(Ratio::from_integer(90))],
            [None; 3]
        );
    }

    #[test]
    fn the_set_back_of_a_forty_five_degree_corner_is_tan_22_and_a_half() {
        let tangent = half_tangent(45).map(|t| crate::measure::decimal(t.q().trunc_to(9)).0);
        assert_eq!(tangent.as_deref(), Some("0.414213562"));
        assert_eq!(half_tangent(90).map(|t| (t.q(), t.is_exact())), Some((Ratio::from_integer(1), true)));
    }

    trait TruncTo {
        fn trunc_to(self, places: u32) -> Self;
    }

    impl TruncTo for crate::measure::Q {
        fn trunc_to(self, places: u32) -> Self {
            let scale = Ratio::from_integer(10_i128.pow(places));
            (self * scale).round() / scale
        }
    }
}
