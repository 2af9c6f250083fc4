//! The overlay of a post's footprint and the deck, done by a polygon library on a grid of
//! whole numbers.

use super::point::Point;
use super::tidy::tidy;
use crate::measure::{Length, Q};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;
use num_rational::Ratio;

/// Grid steps to the inch: tape marks to 1/512 in., tenths and whole millimetres (5/127
/// in.) fall on it exactly, and so do lengths carried to nine places.
const GRID: i128 = 127 * Length::CARRIED;

/// The outer corners of each piece, the inside on the left.
pub(super) type Pieces = Vec<Vec<Point>>;

/// What of a footprint lies in a region, and what does not; tidied where anything
/// irrational went into it.
pub(super) fn split(footprint: &[Point], region: &[Point]) -> Option<(Pieces, Pieces)> {
    let exact = footprint.iter().chain(region).all(|p| is_exact(p.0) && is_exact(p.1));
    let (foot, deck) = (on_grid(footprint)?, on_grid(region)?);
    let cut = |rule| {
        let shapes = Overlay::from_subj_and_clip(&foot, &deck).overlay(rule, FillRule::NonZero);
        let pieces = shapes.into_iter().filter_map(|mut rings| (!rings.is_empty()).then(|| rings.swap_remove(0)));
        let pieces = pieces.map(|ring| ring.into_iter().map(|p| off_grid(p, exact)).collect());
        if exact { pieces.collect() } else { pieces.filter_map(|ring| tidy(footprint, ring)).collect() }
    };
    Some((cut(OverlayRule::Intersect), cut(OverlayRule::Difference)))
}

/// Exact, and on the grid as it is.
fn is_exact(l: Length) -> bool {
    l.is_exact() && (l.q() * Ratio::from_integer(GRID)).is_integer()
}

fn on_grid(points: &[Point]) -> Option<Vec<IntPoint<i64>>> {
    let step = |l: Length| i64::try_from((l.q() * Ratio::from_integer(GRID)).round().to_integer()).ok();
    points.iter().map(|p| Some(IntPoint::new(step(p.0)?, step(p.1)?))).collect()
}

fn off_grid(p: IntPoint<i64>, exact: bool) -> Point {
    let inches = |n: i64| Length::inches(1).times(Ratio::new(i128::from(n), GRID)).unwrap_or(Length::ZERO);
    let flagged = |l: Length| if exact { l } else { l.rounded(Length::CARRIED).inexact() };
    (flagged(inches(p.x)), flagged(inches(p.y)))
}

/// The area of pieces, in square inches.
pub(super) fn area(pieces: &[Vec<Point>]) -> Q {
    pieces.iter().map(|ring| twice_area(ring) / Ratio::from_integer(2)).sum()
}

pub(super) fn twice_area(ring: &[Point]) -> Q {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.0.q() * b.1.q() - b.0.q() * a.1.q()).sum()
}
