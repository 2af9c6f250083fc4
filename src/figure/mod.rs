//! A figure and its reason. Nothing else in the crate makes one: a number without
//! a reason cannot reach an answer.

mod unit;

pub use unit::Unit;

use crate::limits::Limit;
use crate::measure::{Length, Q, q_from_decimal};
use num_rational::Ratio;
use rust_decimal::Decimal;
use std::sync::Arc;

/// What a figure measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// A length.
    Length(Length),
    /// A count of things.
    Count(u64),
    /// A plain number.
    Number(Q),
    /// Money, of no named coin.
    Money(Decimal),
    /// A force, stress, section or other quantity that is no length.
    Quantity(Q, Unit),
}

/// Where a figure comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The builder said so; the words are the read-back's.
    Told(&'static str),
    /// Nobody said; this default was taken.
    Default(&'static Limit),
    /// A limit that holds.
    Limit(&'static Limit),
    /// A row of a published table: what it gives, and the table.
    Table(&'static str, &'static str),
    /// Worked out: in words, from these named figures.
    Formula(&'static str, Vec<(&'static str, Fig)>),
}

/// A figure: a value and why it is that.
#[derive(Clone, Debug, PartialEq)]
pub struct Fig {
    value: Value,
    why: Arc<Why>,
}

impl Fig {
    /// The only constructor: no reason, no figure.
    pub fn new(value: Value, why: Why) -> Fig {
        Fig { value, why: Arc::new(why) }
    }

    /// A length with its reason.
    pub fn length(l: Length, why: Why) -> Fig {
        Fig::new(Value::Length(l), why)
    }

    /// A count with its reason.
    pub fn count(n: u64, why: Why) -> Fig {
        Fig::new(Value::Count(n), why)
    }

    /// A quantity with its reason.
    pub fn quantity(q: Q, unit: Unit, why: Why) -> Fig {
        Fig::new(Value::Quantity(q, unit), why)
    }

    /// Money with its reason.
    pub fn money(m: Decimal, why: Why) -> Fig {
        Fig::new(Value::Money(m), why)
    }

    /// A length told by the builder.
    pub fn told(l: Length, what: &'static str) -> Fig {
        Fig::length(l, Why::Told(what))
    }

    /// A limit in inches, as a figure.
    pub fn limit(limit: &'static Limit) -> Fig {
        Fig::length(limit.length(), Why::Limit(limit))
    }

    /// The value.
    pub fn value(&self) -> Value {
        self.value
    }

    /// The value as a length, where it is one.
    pub fn as_length(&self) -> Option<Length> {
        match self.value {
            Value::Length(l) => Some(l),
            Value::Count(_) | Value::Number(_) | Value::Quantity(..) | Value::Money(_) => None,
        }
    }

    /// The value as a plain rational number: inches of a length, a count, a number, a quantity in its unit.
    pub fn as_q(&self) -> Q {
        match self.value {
            Value::Length(l) => l.q(),
            Value::Count(n) => Ratio::from_integer(i128::from(n)),
            Value::Number(q) | Value::Quantity(q, _) => q,
            // A price is told with a few places, and sums of them stay far inside 128 bits.
            Value::Money(m) => q_from_decimal(m).unwrap_or_default(),
        }
    }

    /// Why it is that.
    pub fn why(&self) -> &Why {
        &self.why
    }
}
