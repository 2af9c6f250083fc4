//! One level of a post's foot: what of its footprint lies over the deck and comes off, and
//! what is left.
//!
//! Seen by someone standing on the deck, looking out over the edge: x to the right, y out,
//! from the post's centre.

use super::overlay::{area, split};
use super::point::{Point, Way, less};
use super::shape::{Shape, shape};
use crate::measure::{Length, Lumber, Q};

/// A place on the foot: to the right and out from its centre, in inches.
pub type Spot = (Length, Length);

/// A post's footprint: along the edge it looks over, and across it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Along the edge, in inches.
    pub along: Length,
    /// Across it.
    pub across: Length,
}

impl Size {
    /// A square post.
    pub fn square(side: Length) -> Size {
        Size { along: side, across: side }
    }

    /// The lumber it is dressed from, where it is of a post's size.
    pub fn lumber(self) -> Option<Lumber> {
        let named = [(4, 4), (6, 6), (4, 6), (8, 8)].map(|(a, b)| Lumber::by(a, b));
        named.into_iter().find(|l| l.dressed() == Some((self.across, self.along)))
    }

    /// Its four corners, from the deck side's left one on, round against the clock.
    pub fn corners(self) -> [Spot; 4] {
        let (x, y) = (self.along / 2, self.across / 2);
        [(-x, -y), (x, -y), (x, y), (-x, y)]
    }
}

/// What comes off at one level, and what is left.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// The post.
    pub size: Size,
    /// The outer corners of each piece that comes off, the inside on the left.
    pub off: Vec<Vec<Spot>>,
    /// The outer corners of each piece left, the largest first.
    pub left: Vec<Vec<Spot>>,
    /// The shape of the cut.
    pub shape: Shape,
    /// The corners of the deck at this level, as seen from the post.
    pub deck: Vec<Spot>,
}

/// How deep a cut is from the deck side, and what it leaves; all `None` where it has no such measure.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Depths {
    /// Along the edge.
    pub along: Option<Length>,
    /// Across it.
    pub across: Option<Length>,
    /// What stays: across the edge, or along it where nothing is cut across.
    pub left: Option<Length>,
}

impl Depths {
    /// How deep it is across the edge, or along it where nothing is cut across.
    pub fn off(self) -> Option<Length> {
        self.across.or(self.along)
    }
}

impl Cut {
    /// How deep it is, and what it leaves.
    pub fn depths(&self) -> Depths {
        let Size { along: wide, across: thick } = self.size;
        let (along, across, left) = match self.shape {
            Shape::Straight { deep } => (None, Some(deep), Some(thick - deep)),
            Shape::Side { deep, .. } => (Some(deep), None, Some(wide - deep)),
            Shape::Corner { along, deep, .. } => (Some(along), Some(deep), Some(thick - deep)),
            Shape::AllButCorner { along, across, .. } => (Some(wide - along), Some(thick - across), Some(across)),
            Shape::Clear | Shape::Whole | Shape::Other => (None, None, None),
        };
        Depths { along, across, left }
    }

    /// The overlay of a post centred there, looking out across that way, and the region
    /// of the deck at one level. `None` past what the grid holds.
    pub(super) fn of(size: Size, centre: Point, way: Way, region: &[Point]) -> Option<Cut> {
        Cut::at(size, region.iter().map(|p| seen(way, less(*p, centre))).collect())
    }

    /// The overlay of a post and the deck at one level, its corners as seen from the post.
    /// `None` past what the grid holds.
    pub fn at(size: Size, deck: Vec<Spot>) -> Option<Cut> {
        let (off, mut left) = split(&size.corners(), &deck)?;
        left.sort_by_key(|ring| std::cmp::Reverse(area(std::slice::from_ref(ring))));
        let shape = shape(size, &off, &left);
        Some(Cut { size, off, left, shape, deck })
    }

    /// A foot that is not cut at all.
    pub(super) fn whole(size: Size) -> Cut {
        Cut { size, off: Vec::new(), left: vec![size.corners().to_vec()], shape: Shape::Clear, deck: Vec::new() }
    }

    /// The area that comes off, in square inches.
    pub fn area_off(&self) -> Q {
        area(&self.off)
    }

    /// The area left, in square inches.
    pub fn area_left(&self) -> Q {
        area(&self.left)
    }
}

/// A place as seen walking that way: along it, and out, to its left.
fn seen(way: Way, p: Point) -> Spot {
    (way.reach(p), -way.right().reach(p))
}

/// The greatest and the least a measure takes at the corners of some pieces.
pub(super) fn span(pieces: &[Vec<Spot>], of: impl Fn(&Spot) -> Length) -> Option<(Length, Length)> {
    let all = || pieces.iter().flatten().map(&of);
    Some((all().min()?, all().max()?))
}
