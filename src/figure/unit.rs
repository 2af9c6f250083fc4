//! What a quantity that is no length is counted in.

/// The unit of a [`super::Value::Quantity`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// Degrees of an angle.
    Degrees,
}

impl Unit {
    /// Its name in the JSON contract and behind the number in an answer.
    pub fn name(self) -> &'static str {
        match self {
            Unit::Degrees => "degrees",
        }
    }

    /// How many places behind the point a figure in it is printed to. A saw's scale is read to a
    /// tenth of a degree at best (common practice, no source).
    pub fn places(self) -> u32 {
        match self {
            Unit::Degrees => 1,
        }
    }
}
