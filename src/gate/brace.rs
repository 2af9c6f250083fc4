//! What keeps a leaf square: its height, its diagonal, its brace.

use crate::figure::{Fig, Unit, Why};
use crate::measure::{Length, arctan_degrees};

/// A leaf's height and what is pulled across it.
#[derive(Clone, Debug, PartialEq)]
pub struct Brace {
    /// The leaf, bottom to top.
    pub height: Fig,
    /// Corner to corner: both diagonals are so long where the leaf is square.
    pub diagonal: Fig,
    /// The brace's slope from the level.
    pub angle: Fig,
}

fn inches(f: &Fig) -> Length {
    f.as_length().unwrap_or(Length::ZERO)
}

/// A leaf that comes up to the guard's top and stands so far off the deck.
pub fn leaf_height(top: &Fig, under: &Fig) -> Option<Fig> {
    let height = inches(top) - inches(under);
    let from = vec![("top", top.clone()), ("gap under", under.clone())];
    height
        .is_positive()
        .then(|| Fig::length(height, Why::Formula("the guard's height less the gap under the leaf", from)))
}

/// The diagonal of a leaf, and how steep a brace along it is. `None` past what can be carried.
pub fn brace(width: &Fig, height: &Fig) -> Option<Brace> {
    let from = || vec![("leaf's width", width.clone()), ("leaf's height", height.clone())];
    let diagonal = Length::diagonal(inches(width), inches(height))?;
    let degrees = arctan_degrees(inches(height).ratio(inches(width))?)?;
    Some(Brace {
        height: height.clone(),
        diagonal: Fig::length(diagonal, Why::Formula("the root of width squared + height squared", from())),
        angle: Fig::quantity(
            degrees,
            Unit::Degrees,
            Why::Formula("the angle whose tangent is height over width", from()),
        ),
    })
}
