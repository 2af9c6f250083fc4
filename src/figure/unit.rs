//! What a quantity that is no length is counted in.

/// The unit of a [`super::Value::Quantity`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// Pounds of force.
    Pounds,
    /// Pounds to the square inch.
    Psi,
    /// Inch-pounds of moment.
    InchPounds,
    /// Square inches of section.
    In2,
    /// Cubic inches of section modulus.
    In3,
    /// Inches to the fourth, of second moment of area.
    In4,
    /// A factor or a ratio.
    Times,
    /// Degrees of an angle.
    Degrees,
}

impl Unit {
    /// Its name in the JSON contract and behind the number in an answer; empty for a bare ratio.
    pub fn name(self) -> &'static str {
        match self {
            Unit::Pounds => "lb",
            Unit::Psi => "psi",
            Unit::InchPounds => "in-lb",
            Unit::In2 => "in^2",
            Unit::In3 => "in^3",
            Unit::In4 => "in^4",
            Unit::Times => "",
            Unit::Degrees => "degrees",
        }
    }

    /// How many places behind the point a figure in it is printed to. A saw's scale is read to a
    /// tenth of a degree at best (common practice, no source).
    pub fn places(self) -> u32 {
        match self {
            Unit::Pounds | Unit::Psi | Unit::InchPounds => 0,
            Unit::Times => 2,
            Unit::Degrees => 1,
            Unit::In2 | Unit::In3 | Unit::In4 => 3,
        }
    }
}
