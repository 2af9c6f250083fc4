//! The kind of a value, by its words alone.

/// What the words say of a value's kind, before anything is known of its row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// A length in feet alone.
    Feet,
    /// A length in feet and inches.
    FeetInches,
    /// A length in inches.
    Inches,
    /// A metric length.
    Metric,
    /// A number in figures with no unit.
    Bare,
    /// A number in words with no unit.
    Spoken,
    /// A number with a fraction and no unit.
    Part,
    /// So many pieces of one length: "38s".
    Pieces,
    /// A nominal size of lumber.
    Lumber,
    /// One side of "12 by 16".
    Side,
    /// A measure that is always asked about.
    Doubt,
    /// Money.
    Money,
    /// Parts of a hundred.
    Percent,
    /// Degrees.
    Angle,
    /// A word that counts: "both", "pair".
    Word,
}

impl Shape {
    /// Its name in features.
    pub fn name(self) -> &'static str {
        match self {
            Shape::Feet => "ft",
            Shape::FeetInches => "ft-in",
            Shape::Inches => "in",
            Shape::Metric => "mm",
            Shape::Bare => "bare",
            Shape::Spoken => "spoken",
            Shape::Part => "part",
            Shape::Pieces => "pieces",
            Shape::Lumber => "lumber",
            Shape::Side => "side",
            Shape::Doubt => "doubt",
            Shape::Money => "money",
            Shape::Percent => "percent",
            Shape::Angle => "angle",
            Shape::Word => "word",
        }
    }
}
