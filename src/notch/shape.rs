//! The shape of a cut, by what is left of the foot.

use super::cut::{Size, Spot, span};
use crate::measure::Length;

/// A hand's side, looking out over the edge from the deck.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hand {
    /// The left.
    Left,
    /// The right.
    Right,
}

/// The shape of what comes off a foot at one level.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Nothing: the post stands clear of the deck.
    Clear,
    /// All of it: the post stands on the deck.
    Whole,
    /// A straight notch across the deck-side face, so deep.
    Straight {
        /// How deep, from the deck-side face.
        deep: Length,
    },
    /// A straight notch down one side face: a post at the deck's end.
    Side {
        /// How deep, from that side's face.
        deep: Length,
        /// Which side.
        hand: Hand,
    },
    /// One corner comes off: the foot of an outside corner's post, an L left.
    Corner {
        /// From the side's face.
        along: Length,
        /// From the deck-side face.
        deep: Length,
        /// The side it comes off, looking out over the first edge.
        hand: Hand,
    },
    /// All but one corner comes off: the foot of an inside corner's post.
    AllButCorner {
        /// The leg left, along the edge.
        along: Length,
        /// The leg left, across it.
        across: Length,
        /// The side it is left on.
        hand: Hand,
    },
    /// Anything else: told by its corners.
    Other,
}

impl Shape {
    /// Its name in the JSON contract: halves and quarters by their names, the rest by what
    /// is done.
    pub fn name(&self, size: Size) -> &'static str {
        let half = |l: Length, of: Length| l * 2 == of;
        match *self {
            Shape::Clear => "none",
            Shape::Whole => "all",
            Shape::Straight { deep } if half(deep, size.across) => "half",
            Shape::Straight { .. } => "straight",
            Shape::Side { deep, .. } if half(deep, size.along) => "half",
            Shape::Side { .. } => "straight",
            Shape::Corner { along, deep, .. } if half(along, size.along) && half(deep, size.across) => "one quadrant",
            Shape::Corner { .. } => "one corner",
            Shape::AllButCorner { along, across, .. } if half(along, size.along) && half(across, size.across) => {
                "three quadrants"
            }
            Shape::AllButCorner { .. } => "all but one corner",
            Shape::Other => "slanted",
        }
    }
}

/// What the overlay's pieces make.
pub(super) fn shape(size: Size, off: &[Vec<Spot>], left: &[Vec<Spot>]) -> Shape {
    let (x, y) = (size.along / 2, size.across / 2);
    if off.is_empty() {
        return Shape::Clear;
    }
    let Some(((lo_x, hi_x), (lo_y, hi_y))) = span(left, |s| s.0).zip(span(left, |s| s.1)) else {
        return Shape::Whole;
    };
    let whole_x = lo_x == -x && hi_x == x;
    let whole_y = lo_y == -y && hi_y == y;
    if let Some(((olo_x, ohi_x), (olo_y, ohi_y))) = rectangle(off) {
        let (full_x, full_y) = (olo_x == -x && ohi_x == x, olo_y == -y && ohi_y == y);
        match (full_x, full_y) {
            (true, false) if olo_y == -y => return Shape::Straight { deep: ohi_y - olo_y },
            (false, true) if olo_x == -x => return Shape::Side { deep: ohi_x - olo_x, hand: Hand::Left },
            (false, true) if ohi_x == x => return Shape::Side { deep: ohi_x - olo_x, hand: Hand::Right },
            (false, false) if olo_y == -y && (olo_x == -x || ohi_x == x) && whole_x && whole_y => {
                let hand = if olo_x == -x { Hand::Left } else { Hand::Right };
                return Shape::Corner { along: ohi_x - olo_x, deep: ohi_y - olo_y, hand };
            }
            _ => return Shape::Other,
        }
    }
    if rectangle(left).is_some() && hi_y == y && (lo_x == -x) != (hi_x == x) {
        let hand = if lo_x == -x { Hand::Left } else { Hand::Right };
        return Shape::AllButCorner { along: hi_x - lo_x, across: hi_y - lo_y, hand };
    }
    Shape::Other
}

type Extent = ((Length, Length), (Length, Length));

/// The extent of one piece that is a rectangle square to the post.
fn rectangle(pieces: &[Vec<Spot>]) -> Option<Extent> {
    let [ring] = pieces else { return None };
    let extent = (span(pieces, |s| s.0)?, span(pieces, |s| s.1)?);
    let ((x0, x1), (y0, y1)) = extent;
    let at_corner = |s: &Spot| (s.0 == x0 || s.0 == x1) && (s.1 == y0 || s.1 == y1);
    (ring.len() == 4 && ring.iter().all(at_corner)).then_some(extent)
}
