//! Exact numbers that may run past what can be carried: once past, a number stays past,
//! and is refused where it would become a figure.

use super::Refused;
use crate::figure::{Fig, Unit, Why};
use crate::measure::{Length, Q};
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed};
use std::ops::{Add, Div, Mul, Neg, Sub};

/// A rational number, or one past the reach of 128 bits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Num(Option<Q>);

impl Num {
    /// A number.
    pub fn of(q: Q) -> Num {
        Num(Some(q))
    }

    /// A whole number.
    pub fn whole(n: i64) -> Num {
        Num(Some(Ratio::from_integer(i128::from(n))))
    }

    /// The number under a figure: inches of a length, a quantity in its unit.
    pub fn fig(fig: &Fig) -> Num {
        Num(Some(fig.as_q()))
    }

    /// So many times itself.
    pub fn pow(self, n: u32) -> Num {
        (0..n).fold(Num::whole(1), |product, _| product * self)
    }

    /// Its size without its sign.
    pub fn abs(self) -> Num {
        Num(self.0.map(|q| q.abs()))
    }

    /// The rational number.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`] where it ran past what can be carried, or over nothing.
    pub fn q(self) -> Result<Q, Refused> {
        self.0.ok_or(Refused::PastNumbers)
    }

    /// The number as a quantity, worked out from these figures.
    ///
    /// # Errors
    /// As [`Num::q`].
    pub fn quantity(self, unit: Unit, says: &'static str, from: Vec<(&'static str, Fig)>) -> Result<Fig, Refused> {
        Ok(Fig::quantity(self.q()?, unit, Why::Formula(says, from)))
    }

    /// The number as a length in inches, worked out from these figures.
    ///
    /// # Errors
    /// As [`Num::q`].
    pub fn length(self, says: &'static str, from: Vec<(&'static str, Fig)>) -> Result<Fig, Refused> {
        let inches = Length::inches(1).times(self.q()?).ok_or(Refused::PastNumbers)?;
        Ok(Fig::length(inches, Why::Formula(says, from)))
    }
}

fn both(a: Num, b: Num, op: fn(&Q, &Q) -> Option<Q>) -> Num {
    Num(a.0.zip(b.0).and_then(|(a, b)| op(&a, &b)))
}

impl Add for Num {
    type Output = Num;
    fn add(self, o: Num) -> Num {
        both(self, o, Q::checked_add)
    }
}

impl Sub for Num {
    type Output = Num;
    fn sub(self, o: Num) -> Num {
        both(self, o, Q::checked_sub)
    }
}

impl Mul for Num {
    type Output = Num;
    fn mul(self, o: Num) -> Num {
        both(self, o, Q::checked_mul)
    }
}

impl Div for Num {
    type Output = Num;
    fn div(self, o: Num) -> Num {
        both(self, o, Q::checked_div)
    }
}

impl Neg for Num {
    type Output = Num;
    fn neg(self) -> Num {
        Num::whole(0) - self
    }
}

/// Nine places: what a root is carried to, for it is no fraction.
const CARRIED: i128 = 1_000_000_000;

/// One number over the longest side of the right triangle with the other two, carried to nine places.
///
/// # Errors
/// [`Refused::PastNumbers`], also where both sides are nothing.
pub fn over_hypotenuse(n: Num, (a, b): (Num, Num)) -> Result<Q, Refused> {
    let [n, a, b] = [n.q()?, a.q()?, b.q()?].map(|q| *q.numer() as f64 / *q.denom() as f64);
    let carried = n / (a * a + b * b).sqrt() * CARRIED as f64;
    if !carried.is_finite() || carried.abs() > 1e18 {
        return Err(Refused::PastNumbers);
    }
    Ok(Ratio::new(carried.round() as i128, CARRIED))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2^127 is one past what 128 bits with a sign hold.
    #[test]
    fn a_number_past_reach_stays_past() {
        let two = Num::whole(2);
        assert_eq!(two.pow(126).q(), Ok(Ratio::from_integer(1 << 126)));
        for past in [two.pow(127), two.pow(127) / two, Num::whole(1) / Num::whole(0), -two.pow(127) + two] {
            assert_eq!(past.q(), Err(Refused::PastNumbers));
        }
    }

    /// 10 over the 5 of 3, 4 and 5; 1 over the root of 2 is 0.7071067812.
    #[test]
    fn a_root_is_carried_to_nine_places() {
        let of = |n, a, b| over_hypotenuse(Num::whole(n), (Num::whole(a), Num::whole(b)));
        assert_eq!(of(10, 3, -4), Ok(Ratio::from_integer(2)));
        assert_eq!(of(1, 1, 1), Ok(Ratio::new(707_106_781, CARRIED)));
        assert_eq!(of(1, 0, 0), Err(Refused::PastNumbers));
    }
}
