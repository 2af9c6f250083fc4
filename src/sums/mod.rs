//! Arithmetic at the prompt. It never touches the job.

mod eval;

pub use eval::{SumError, answer};

use crate::measure::{Length, Q};

/// Arithmetic on lengths and plain numbers.
#[derive(Clone, Debug, PartialEq)]
pub enum Expr {
    /// A length.
    Length(Length),
    /// A plain number.
    Number(Q),
    /// The sum of two.
    Plus(Box<Expr>, Box<Expr>),
    /// The first less the second.
    Less(Box<Expr>, Box<Expr>),
    /// The first times the second.
    Times(Box<Expr>, Box<Expr>),
    /// The first over the second.
    Over(Box<Expr>, Box<Expr>),
}

/// The unit a conversion ends in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Into {
    /// Inches.
    Inches,
    /// Feet and inches.
    FeetInches,
    /// Decimal feet.
    Feet,
    /// Millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Metres.
    Metres,
}

/// One sum.
#[derive(Clone, Debug, PartialEq)]
pub enum Sum {
    /// An expression.
    Value(Expr),
    /// How many pieces come out of a stick, and what is left. Kerf is not counted.
    Pieces {
        /// One piece.
        piece: Length,
        /// The stick.
        from: Length,
    },
    /// How many sticks so many pieces take, at so many to a stick.
    Sticks {
        /// Pieces wanted.
        pieces: u64,
        /// Pieces out of one stick.
        per: u64,
    },
    /// The same length in another unit.
    Convert(Length, Into),
    /// The diagonal that proves two sides square.
    Diagonal(Length, Length),
    /// Which of two lengths is bigger, and by how much.
    Bigger(Length, Length),
}
