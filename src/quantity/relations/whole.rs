//! Division and whole numbers, as relations need them.

use crate::figure::Value;
use crate::measure::Q;
use crate::quantity::relation::Args;
use num_rational::Ratio;
use num_traits::CheckedDiv;

/// One over the other; `None` over nothing, and past 128 bits.
pub(super) fn over(a: Q, b: Q) -> Option<Q> {
    a.checked_div(&b)
}

/// A count, a broken one taken up.
pub(super) fn up(q: Q) -> Option<Value> {
    u64::try_from(q.ceil().to_integer()).ok().map(Value::Count)
}

/// A count, a broken one taken down.
pub(super) fn down(q: Q) -> Option<Value> {
    u64::try_from(q.floor().to_integer()).ok().map(Value::Count)
}

/// So many, the waste on them in a hundred, and the spares.
pub(super) fn extra(n: Q, waste: Q, spares: Q) -> Q {
    let hundred = Ratio::from_integer(100);
    n * (hundred + waste) / hundred + spares
}

/// So many, the waste on them and the spares, over those of each.
pub(super) fn each(a: &Args) -> Option<Value> {
    up(over(extra(a.q(0), a.q(1), a.q(2)), a.q(3))?)
}
