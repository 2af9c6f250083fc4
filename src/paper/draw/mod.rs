//! Drawings to scale: the whole deck, each run with its posts, the posts' feet, the stairs, the gate, the sticks with
//! their cuts.

mod feet;
mod gate;
mod plan;
mod runs;
mod stairs;
mod sticks;

pub use feet::feet;
pub use gate::gate;
pub use plan::plan;
pub use runs::runs;
pub use stairs::stairs;
pub use sticks::sticks;

use super::page::{Anchor, Shape};
use crate::measure::{Length, Tape, exact_fraction};

/// Scales drawn to, in inches of the job to one on paper: a builder's scale has all of them.
const SCALES: [u32; 12] = [4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384];

/// The largest scale at which so long a thing fits into the room, in points.
fn scale_for(inches: f64, room: f64) -> u32 {
    let fits = |scale: &&u32| inches * 72.0 / f64::from(**scale) <= room;
    SCALES.iter().find(fits).or(SCALES.last()).copied().unwrap_or(384)
}

/// Points that an inch of the job takes.
fn per_inch(scale: u32) -> f64 {
    72.0 / f64::from(scale)
}

/// A dimension as the tape reads it, with the length it tells.
fn dimension(at: (f64, f64), size: f64, upright: bool, l: Length, tape: Tape) -> Shape {
    Shape::Text {
        at,
        size,
        bold: false,
        anchor: if upright { Anchor::End } else { Anchor::Middle },
        upright,
        words: tape.read(l),
        inches: Some(exact_fraction(l)),
    }
}

/// A text that begins at its place.
fn begun(shape: Shape) -> Shape {
    match shape {
        Shape::Text { at, size, bold, upright, words, inches, .. } => {
            Shape::Text { at, size, bold, anchor: Anchor::Start, upright, words, inches }
        }
        other => other,
    }
}

/// Places moved apart so that neighbours keep their distance, each as near its own as may be.
fn spaced(wanted: &[f64], apart: f64, most: f64) -> Vec<f64> {
    let mut places = wanted.to_vec();
    for k in 1..places.len() {
        places[k] = places[k].max(places[k - 1] + apart);
    }
    let mut limit = most;
    for place in places.iter_mut().rev() {
        *place = place.min(limit);
        limit = *place - apart;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_largest_scale_that_fits_is_drawn_to() {
        assert_eq!((scale_for(120.0, 450.0), scale_for(3.5, 450.0), scale_for(9_999.0, 450.0)), (24, 4, 384));
    }

    proptest! {
        #[test]
        fn spaced_places_keep_their_distance(mut wanted in prop::collection::vec(0.0..400.0_f64, 1..40)) {
            wanted.sort_by(f64::total_cmp);
            let places = spaced(&wanted, 8.0, 420.0);
            prop_assert!(places.windows(2).all(|w| w[1] - w[0] >= 8.0 - 1e-9));
            prop_assert!(places.iter().all(|p| *p <= 420.0));
        }
    }
}
