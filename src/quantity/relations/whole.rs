//! Division and whole numbers, as relations need them.

use crate::figure::Value;
use crate::measure::Q;
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
