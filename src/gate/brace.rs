//! What keeps a leaf square: its height, its diagonal, its brace.

use crate::figure::{Fig, Unit, Why};
use crate::measure::{Length, arctan_degrees};
use crate::quantity::RowId;
use crate::solve::by;

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
    let height = by(RowId::LeafHeight, &[(RowId::HeightTop, top), (RowId::GapUnder, under)])?;
    Some(height).filter(|h| inches(h).is_positive())
}

/// The diagonal of a leaf, and how steep a brace along it is. `None` past what can be carried.
pub fn brace(width: &Fig, height: &Fig) -> Option<Brace> {
    let from = vec![("leaf's width", width.clone()), ("leaf's height", height.clone())];
    let diagonal = by(RowId::LeafDiagonal, &[(RowId::Leaf, width), (RowId::LeafHeight, height)])?;
    let degrees = arctan_degrees(inches(height).ratio(inches(width))?)?;
    Some(Brace {
        height: height.clone(),
        diagonal,
        angle: Fig::quantity(
            degrees,
            Unit::Degrees,
            Why::Formula("the angle whose tangent is height over width", from),
        ),
    })
}
