//! Arithmetic on rational inches, quick where the numbers are small.
//!
//! Lengths want 128 bits a side only at the far edge; division and common divisors
//! of 128 bits cost several times those of 64. Every figure anybody builds from fits
//! the small way, which is taken whenever the result does.

use super::length::Q;
use num_integer::Integer;
use num_rational::Ratio;
use std::cmp::Ordering;

/// Both sides of a number that fits 64 bits a side; its denominator is positive.
fn small(q: Q) -> Option<(i64, i64)> {
    Some((i64::try_from(*q.numer()).ok()?, i64::try_from(*q.denom()).ok()?))
}

/// `n / d` in lowest terms. `None` for `d` = 0 and at the edge of 128 bits.
fn lowest(n: i128, d: i128) -> Option<Q> {
    if d == 0 || n == i128::MIN || d == i128::MIN {
        return None;
    }
    match (u64::try_from(n.unsigned_abs()), u64::try_from(d.unsigned_abs())) {
        (Ok(un), Ok(ud)) => {
            let by = un.gcd(&ud);
            let n_out = i128::from(un / by) * (n.signum() * d.signum());
            Some(Ratio::new_raw(n_out, i128::from(ud / by)))
        }
        _ => Some(Ratio::new(n, d)),
    }
}

/// The sum, where both are small.
pub(super) fn sum(a: Q, b: Q) -> Option<Q> {
    let ((an, ad), (bn, bd)) = (small(a)?, small(b)?);
    if ad == bd {
        return lowest(i128::from(an) + i128::from(bn), i128::from(ad));
    }
    let n = i128::from(an) * i128::from(bd) + i128::from(bn) * i128::from(ad);
    lowest(n, i128::from(ad) * i128::from(bd))
}

/// The product, where both are small.
pub(super) fn product(a: Q, b: Q) -> Option<Q> {
    let ((an, ad), (bn, bd)) = (small(a)?, small(b)?);
    lowest(i128::from(an) * i128::from(bn), i128::from(ad) * i128::from(bd))
}

/// The quotient, where both are small and `b` is not 0.
pub(super) fn quotient(a: Q, b: Q) -> Option<Q> {
    let ((an, ad), (bn, bd)) = (small(a)?, small(b)?);
    lowest(i128::from(an) * i128::from(bd), i128::from(ad) * i128::from(bn))
}

/// How two numbers compare.
pub(super) fn compare(a: Q, b: Q) -> Ordering {
    match (small(a), small(b)) {
        (Some((an, ad)), Some((bn, bd))) => (i128::from(an) * i128::from(bd)).cmp(&(i128::from(bn) * i128::from(ad))),
        _ => a.cmp(&b),
    }
}

/// The nearest whole number, a tie away from zero; `None` where the sum is not small.
pub(super) fn nearest(q: Q) -> Option<i128> {
    let (n, d) = small(q)?;
    let (n, d) = (i128::from(n), i128::from(d));
    let away = n.abs() * 2 + d;
    let by = d * 2;
    let whole = match (u64::try_from(away), u64::try_from(by)) {
        (Ok(away), Ok(by)) => i128::from(away / by),
        _ => away / by,
    };
    Some(whole * n.signum())
}

#[cfg(test)]
mod tests {
    use super::*;
    use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, Signed};
    use proptest::prelude::*;

    fn any_q() -> impl Strategy<Value = Q> {
        let part = prop_oneof![-400_i128..400, -1_000_000_000_000_i128..1_000_000_000_000, Just(i128::from(i64::MAX))];
        (part.clone(), part.prop_filter("not over nothing", |d| *d != 0)).prop_map(|(n, d)| Ratio::new(n, d))
    }

    fn slow_nearest(q: Q) -> i128 {
        let half = Ratio::new(1, 2);
        let n = if q.is_negative() { -((-q) + half).floor() } else { (q + half).floor() };
        n.to_integer()
    }

    proptest! {
        /// num-rational does the same sums the long way.
        #[test]
        fn quick_sums_are_the_long_ones(a in any_q(), b in any_q()) {
            // What the long way overflows on, the short way may still do.
            if let Some(long) = a.checked_add(&b) {
                prop_assert_eq!(sum(a, b), Some(long));
            }
            if let Some(long) = a.checked_mul(&b) {
                prop_assert_eq!(product(a, b), Some(long));
            }
            if let Some(long) = a.checked_div(&b) {
                prop_assert_eq!(quotient(a, b), Some(long));
            }
            prop_assert_eq!(compare(a, b), a.cmp(&b));
            prop_assert_eq!(nearest(a), Some(slow_nearest(a)));
        }
    }

    #[test]
    fn nothing_is_divided_by_nothing() {
        let zero = Ratio::from_integer(0);
        assert_eq!(quotient(Ratio::from_integer(3), zero), None);
        assert_eq!(sum(Ratio::new(1, 3), Ratio::new(-1, 3)), Some(zero));
    }
}
