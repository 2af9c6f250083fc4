//! Hairlines taken out of an overlay whose places are carried, not exact.
//!
//! An edge of the deck that runs along a face of the post is carried to nine places, so it
//! comes to lie a hair inside the face or outside it: without this, of two corners that are
//! the same one gets a hairline cut and the other none.

use super::overlay::twice_area;
use super::point::{Point, less};
use crate::measure::{Length, Q};
use num_rational::Ratio;
use num_traits::Signed;

/// The most by which carried places differ from exact ones, in parts of an inch: places
/// are carried to a thousandth of that, over a deck of at most a few hundred feet.
const HAIR: i128 = 1_000_000;

fn hair() -> Q {
    Ratio::new(1, HAIR)
}

/// A piece without its hairlines; `None` where it was nothing but one.
pub(super) fn tidy(footprint: &[Point], ring: Vec<Point>) -> Option<Vec<Point>> {
    let mut ring: Vec<Point> = ring.into_iter().map(|p| on_face(footprint, p)).collect();
    while let Some(k) = (0..ring.len()).find(|k| ring.len() > 2 && is_idle(&ring, *k)) {
        ring.remove(k);
    }
    (ring.len() > 2 && twice_area(&ring).abs() > hair()).then_some(ring)
}

/// A place a hair off a face of the post lies on it.
fn on_face(footprint: &[Point], p: Point) -> Point {
    let snapped = |l: Length, of: fn(&Point) -> Length| {
        footprint.iter().map(of).find(|face| (l - *face).q().abs() <= hair()).unwrap_or(l)
    };
    (snapped(p.0, |f| f.0), snapped(p.1, |f| f.1))
}

/// True for a corner that is none: on its neighbour, on the line between its neighbours,
/// or at the tip of a hairline.
fn is_idle(ring: &[Point], k: usize) -> bool {
    let n = ring.len();
    let (before, here, after) = (ring[(k + n - 1) % n], ring[k], ring[(k + 1) % n]);
    let (come, go) = (less(here, before), less(after, here));
    let reach = |v: Point| v.0.q().abs() + v.1.q().abs();
    let cross = come.0.q() * go.1.q() - come.1.q() * go.0.q();
    reach(come) <= hair() || cross.abs() <= hair() * reach(come).max(reach(go))
}

#[cfg(test)]
mod tests {
    use super::*;
    use pretty_assertions::assert_eq;

    fn at(x: i64, y: i64) -> Point {
        (Length::inches(x), Length::inches(y))
    }

    fn off(p: Point, x: i128, y: i128) -> Point {
        let nano = |n| Length::new(n, 1_000_000_000).expect("in range").inexact();
        (p.0 + nano(x), p.1 + nano(y))
    }

    /// A 4 in. square post; the hairline along its far face is 3 parts of a thousand million.
    #[test]
    fn a_hairline_goes_and_a_corner_stays() {
        let post = [at(-2, -2), at(2, -2), at(2, 2), at(-2, 2)];
        let hairline = vec![at(-2, 2), off(at(-2, 2), 0, -3), off(at(2, 2), 0, -3), at(2, 2)];
        assert_eq!(tidy(&post, hairline), None);
        // A triangle with a hairline on along the face: the triangle.
        let spiked = vec![off(at(0, 2), 0, -3), off(at(-2, 2), 0, -3), at(-2, 2), at(2, 2), at(2, 0)];
        assert_eq!(tidy(&post, spiked), Some(vec![at(0, 2), at(2, 2), at(2, 0)]));
        let half = vec![at(-2, 0), at(2, 0), at(2, 2), at(-2, 2)];
        assert_eq!(tidy(&post, half.clone()), Some(half));
    }
}
