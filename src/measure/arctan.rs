//! The angle of a slope, without floats.

use super::Q;
use num_rational::Ratio;
use num_traits::Signed;

/// The fixed point: 18 places.
const ONE: i128 = 1_000_000_000_000_000_000;
/// 180 / pi to 18 places.
const DEGREES: i128 = 57_295_779_513_082_320_876;
/// The places an angle is carried to.
const CARRIED: i128 = 1_000_000_000;
/// The finest fraction a slope is taken to before the series: its square must fit.
const FINEST: i128 = 1_000_000_000;

/// The angle in degrees whose tangent is `slope`, from 0 up to 90, carried to nine places.
/// `None` for a slope below nothing.
pub fn arctan_degrees(slope: Q) -> Option<Q> {
    if slope.is_negative() {
        return None;
    }
    let one = Ratio::from_integer(1);
    let degrees = if slope > one { 90 * ONE - series(fixed(one / slope)) } else { series(fixed(slope)) };
    let step = ONE / CARRIED;
    Some(Ratio::new((degrees + step / 2) / step, CARRIED))
}

fn fixed(q: Q) -> i128 {
    let coarse = (q * Ratio::from_integer(FINEST)).round().to_integer();
    coarse * (ONE / FINEST)
}

/// Euler's series, x/(1+x^2) (1 + 2/3 y + 2/3 4/5 y^2 + ...) with y = x^2/(1+x^2): each term is
/// at most half the one before for x up to 1. In degrees.
fn series(x: i128) -> i128 {
    let square = x * x / ONE;
    let y = square * ONE / (ONE + square);
    let mut term = x * ONE / (ONE + square);
    let mut sum = term;
    for k in 1..64 {
        term = term * y / ONE * (2 * k) / (2 * k + 1);
        sum += term;
    }
    // At most 45 degrees: the product is parted so that it stays within 128 bits.
    sum / PART * (DEGREES / PART) + sum % PART * (DEGREES / PART) / PART
}

/// Half the places of the fixed point.
const PART: i128 = 1_000_000_000;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::decimal;
    use pretty_assertions::assert_eq;

    /// From printed trigonometric tables (common knowledge, no source), but for the three
    /// stair pitches: 7 3/4 on 10, 7 1/2 on 10 1/4 and 7 on 11, worked with a calculator.
    #[test]
    fn agrees_with_tables() {
        let rows = [
            ((0, 1), "0"),
            ((1, 1), "45"),
            ((31, 40), "37.7757"),
            ((30, 41), "36.1932"),
            ((7, 11), "32.4712"),
            ((1_732_050_808, 1_000_000_000), "60"),
            ((577_350_269, 1_000_000_000), "30"),
            ((100, 1), "89.4271"),
        ];
        for ((over, under), want) in rows {
            let degrees = arctan_degrees(Ratio::new(over, under)).expect("a slope");
            let four = Ratio::from_integer(10_000);
            assert_eq!(decimal((degrees * four).round() / four).0, want, "{over}/{under}");
        }
        assert_eq!(arctan_degrees(Ratio::new(-1, 2)), None);
    }
}
