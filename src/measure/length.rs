//! One exact length: a rational number of inches, and whether it is exact.

use super::quick;
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed, ToPrimitive, Zero};
use rust_decimal::Decimal;
use std::cmp::Ordering;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// The rational number under every length: 128 bits a side, so that lengths a
/// person can type never overflow in the few steps any engine here takes.
pub type Q = Ratio<i128>;

/// A length in inches, held exactly.
///
/// What is irrational (a diagonal, a mitre) is carried to [`Length::CARRIED`]
/// of an inch and flagged inexact; the flag only ever goes from exact to inexact.
#[derive(Clone, Copy, Debug)]
pub struct Length {
    inches: Q,
    exact: bool,
}

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length { inches: Ratio::new_raw(0, 1), exact: true };
    /// The step, as a part of an inch, to which an irrational length is carried.
    pub const CARRIED: i128 = 1_000_000_000;
    /// The greatest size of numerator and denominator accepted from outside.
    pub const BOUND: i128 = 1_000_000_000_000;

    /// `num / den` inches. `None` when `den` is 0 or either passes [`Length::BOUND`].
    pub fn new(num: i128, den: i128) -> Option<Length> {
        if den == 0 || num.checked_abs()? > Self::BOUND || den.checked_abs()? > Self::BOUND {
            return None;
        }
        Some(Length { inches: Ratio::new(num, den), exact: true })
    }

    /// A whole number of inches.
    pub const fn inches(n: i64) -> Length {
        Length { inches: Ratio::new_raw(n as i128, 1), exact: true }
    }

    /// `n` sixteenths of an inch.
    pub fn sixteenths(n: i64) -> Length {
        Length { inches: Ratio::new(n as i128, 16), exact: true }
    }

    /// An exact rational number of inches, within [`Length::BOUND`].
    pub fn from_q(q: Q) -> Option<Length> {
        Length::new(*q.numer(), *q.denom())
    }

    /// A decimal number of inches as typed, exactly.
    pub fn from_decimal(d: Decimal) -> Option<Length> {
        Length::from_q(q_from_decimal(d)?)
    }

    /// A number of millimetres, exactly: 25.4 mm to the inch (NIST Handbook 44,
    /// appendix C), so one millimetre is 5/127 in.
    pub fn from_mm(mm: Q) -> Option<Length> {
        Length::from_q(mm.checked_mul(&Ratio::new(5, 127))?)
    }

    /// The rational number of inches.
    pub fn q(self) -> Q {
        self.inches
    }

    /// The rational number of millimetres.
    pub fn mm(self) -> Q {
        self.inches * Ratio::new(127, 5)
    }

    /// False once anything irrational went into it.
    pub fn is_exact(self) -> bool {
        self.exact
    }

    /// True for 0 in.
    pub fn is_zero(self) -> bool {
        self.inches.is_zero()
    }

    /// True for more than 0 in.
    pub fn is_positive(self) -> bool {
        self.inches.is_positive()
    }

    /// The sum, or `None` on overflow.
    pub fn plus(self, other: Length) -> Option<Length> {
        let inches = quick::sum(self.inches, other.inches).or_else(|| self.inches.checked_add(&other.inches))?;
        Some(Length { inches, exact: self.exact && other.exact })
    }

    /// The difference, or `None` on overflow.
    pub fn less(self, other: Length) -> Option<Length> {
        let inches = quick::sum(self.inches, -other.inches).or_else(|| self.inches.checked_sub(&other.inches))?;
        Some(Length { inches, exact: self.exact && other.exact })
    }

    /// So many times the length, or `None` on overflow.
    pub fn times(self, by: Q) -> Option<Length> {
        let inches = quick::product(self.inches, by).or_else(|| self.inches.checked_mul(&by))?;
        Some(Length { inches, exact: self.exact })
    }

    /// The length over a number, or `None` for 0 or on overflow.
    pub fn over(self, by: Q) -> Option<Length> {
        let inches = quick::quotient(self.inches, by).or_else(|| self.inches.checked_div(&by))?;
        Some(Length { inches, exact: self.exact })
    }

    /// How many times `other` goes into this, exactly; `None` when `other` is 0.
    pub fn ratio(self, other: Length) -> Option<Q> {
        quick::quotient(self.inches, other.inches).or_else(|| self.inches.checked_div(&other.inches))
    }

    /// The length rounded to the nearest 1/`den` of an inch, an exact tie away from
    /// zero, as a tape is read.
    pub fn rounded(self, den: i128) -> Length {
        let parts = quick::product(self.inches, Ratio::from_integer(den)).and_then(quick::nearest);
        if let Some(inches) = parts.and_then(|n| quick::quotient(Ratio::from_integer(n), Ratio::from_integer(den))) {
            return Length { inches, exact: self.exact };
        }
        let scaled = self.inches * Ratio::from_integer(den);
        let half = Ratio::new(1, 2);
        let n = if scaled.is_negative() { -((-scaled) + half).floor() } else { (scaled + half).floor() };
        Length { inches: n / Ratio::from_integer(den), exact: self.exact }
    }

    /// True when the length lies on the 1/`den` in. grid.
    pub fn on_grid(self, den: i128) -> bool {
        (self.inches * Ratio::from_integer(den)).is_integer()
    }

    /// The square-corner diagonal of two sides, carried to [`Length::CARRIED`] of an
    /// inch. Exact when the root is rational (3-4-5). `None` on overflow.
    pub fn diagonal(a: Length, b: Length) -> Option<Length> {
        let sum = a.inches.checked_mul(&a.inches)?.checked_add(&b.inches.checked_mul(&b.inches)?)?;
        let exact = a.exact && b.exact;
        let (n, d) = (u128::try_from(*sum.numer()).ok()?, u128::try_from(*sum.denom()).ok()?);
        if let (Some(rn), Some(rd)) = (exact_root(n), exact_root(d)) {
            let inches = Ratio::new(i128::try_from(rn).ok()?, i128::try_from(rd).ok()?);
            return Some(Length { inches, exact });
        }
        let carried = Self::CARRIED.unsigned_abs();
        let root = (n.checked_mul(carried)?.checked_mul(carried)? / d).isqrt();
        Some(Length { inches: Ratio::new(i128::try_from(root).ok()?, Self::CARRIED), exact: false })
    }

    /// The same length, flagged inexact: something irrational went into it.
    pub fn inexact(self) -> Length {
        Length { exact: false, ..self }
    }

    /// For drawing to scale only, never for a figure.
    pub fn for_drawing(self) -> f64 {
        self.inches.numer().to_f64().unwrap_or(0.0) / self.inches.denom().to_f64().unwrap_or(1.0)
    }
}

fn exact_root(n: u128) -> Option<u128> {
    let r = n.isqrt();
    (r * r == n).then_some(r)
}

/// A typed decimal as an exact rational.
pub fn q_from_decimal(d: Decimal) -> Option<Q> {
    let d = d.normalize();
    let den = 10_i128.checked_pow(d.scale())?;
    Some(Ratio::new(d.mantissa(), den))
}

// The operators serve the engines, whose inputs are lengths and counts inside the
// sane range of their slots: nowhere near the 128-bit edge. Sums at the prompt,
// which a person can chain without end, use `plus`, `less`, `times` and `over`.
impl Add for Length {
    type Output = Length;
    fn add(self, o: Length) -> Length {
        let inches = quick::sum(self.inches, o.inches).unwrap_or_else(|| self.inches + o.inches);
        Length { inches, exact: self.exact && o.exact }
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, o: Length) -> Length {
        let inches = quick::sum(self.inches, -o.inches).unwrap_or_else(|| self.inches - o.inches);
        Length { inches, exact: self.exact && o.exact }
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, n: i64) -> Length {
        let n = Ratio::from_integer(i128::from(n));
        Length { inches: quick::product(self.inches, n).unwrap_or_else(|| self.inches * n), exact: self.exact }
    }
}

impl Div<i64> for Length {
    type Output = Length;
    fn div(self, n: i64) -> Length {
        let n = Ratio::from_integer(i128::from(n));
        Length { inches: quick::quotient(self.inches, n).unwrap_or_else(|| self.inches / n), exact: self.exact }
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length { inches: -self.inches, exact: self.exact }
    }
}

impl std::iter::Sum for Length {
    fn sum<I: Iterator<Item = Length>>(iter: I) -> Length {
        iter.fold(Length::ZERO, Add::add)
    }
}

impl PartialEq for Length {
    fn eq(&self, o: &Length) -> bool {
        self.inches == o.inches
    }
}

impl Eq for Length {}

impl PartialOrd for Length {
    fn partial_cmp(&self, o: &Length) -> Option<Ordering> {
        Some(self.cmp(o))
    }
}

impl Ord for Length {
    fn cmp(&self, o: &Length) -> Ordering {
        quick::compare(self.inches, o.inches)
    }
}
