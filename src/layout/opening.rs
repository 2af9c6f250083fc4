//! A stair's width as told, made into what the guard is laid out by: of stairs that start
//! at the deck's edge the opening between the posts, of stairs let into the deck the hole
//! from decking to decking.
//!
//! - Between the posts: at a hole's corners the posts stand on the baluster line, so the
//!   hole is the clear less twice the line, and a post (plane geometry, no source).
//! - The treads: newels stand beside the stringers and leave all of them clear, or on the
//!   treads and take two posts off (common practice, no source). In a hole they fill it.
//! - The framing: a hole is less by the skirt and the overhang on each side.

use super::Lack;
use super::ground::Ground;
use super::line::overhang_and_skirt;
use super::sizes::{post_width, roles};
use crate::figure::{Fig, Why};
use crate::job::{End, Mount, Newels, StairAt, StairMeasure, StairOpening};
use crate::measure::Length;
use crate::solve::choice;

/// A stair opening the layout can build: its width is the opening in the guard, or the
/// hole of stairs let into the deck.
#[derive(Clone, Debug)]
pub(super) struct Built {
    pub stairs: StairOpening,
    /// The width, and how it came from what was told.
    pub width: Fig,
}

/// The opening as built.
///
/// # Errors
/// The facts its width hangs on and nobody told.
pub(super) fn built(told: &StairOpening, ground: &Ground) -> Result<Built, Vec<Lack>> {
    let width = width(told, ground)?;
    let built = width.as_length().unwrap_or(told.width);
    if !built.is_positive() {
        return Err(vec![Lack::Room]);
    }
    // What was told keeps its middle: it grows or shrinks to both sides alike.
    let shift = |off: Length| if off.is_zero() { off } else { off - (built - told.width) / 2 };
    let at = match told.at {
        StairAt::Middle => StairAt::Middle,
        StairAt::FromLeft(off) => StairAt::FromLeft(shift(off)),
        StairAt::FromRight(off) => StairAt::FromRight(shift(off)),
    };
    Ok(Built { stairs: StairOpening { width: built, at, ..*told }, width })
}

fn width(told: &StairOpening, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    use StairMeasure::{Decking, Framing, Posts, Treads};
    match (told.measure, told.recess.is_some()) {
        (None | Some(Posts), false) => Ok(Fig::told(told.width, "the stair opening")),
        (Some(Treads), false) => Ok(beside_treads(told, ground)),
        (Some(Decking | Framing), false) => Err(vec![Lack::RecessDepth]),
        (None | Some(Decking), true) => Ok(Fig::told(told.width, "the stairs, decking to decking")),
        (Some(Treads), true) => Ok(Fig::told(told.width, "the treads: the hole is taken as wide")),
        (Some(Framing), true) => in_framing(told.width, ground),
        (Some(Posts), true) => around_posts(told.width, ground),
    }
}

/// The clear between newels beside the treads, or on them.
fn beside_treads(told: &StairOpening, ground: &Ground) -> Fig {
    let treads = Fig::told(told.width, "the treads");
    if told.flight.or(ground.flight).newels != Some(Newels::OnTreads) {
        return treads;
    }
    let post = post_width(ground.settings, &roles(End::StairHead, false));
    let clear = told.width - post.as_length().unwrap_or(Length::ZERO) * 2;
    let inputs = vec![("treads", treads), ("newel", post)];
    Fig::length(clear, Why::Formula("the treads less the two newels that stand on them", inputs))
}

/// The hole in the decking over a hole in the framing.
fn in_framing(hole: Length, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    let (over, skirt) = overhang_and_skirt(ground.settings)?;
    let each = over.as_length().unwrap_or(Length::ZERO) + skirt.as_length().unwrap_or(Length::ZERO);
    let inputs = vec![("framed hole", Fig::told(hole, "the framed hole")), ("overhang", over), ("skirt", skirt)];
    let why = Why::Formula("the framed hole less the skirt and the overhang on each side", inputs);
    Ok(Fig::length(hole - each * 2, why))
}

/// The hole that leaves so much between the posts at its corners.
fn around_posts(clear: Length, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    if choice::mount(ground.settings) == Some(Mount::Outside) {
        return Err(vec![Lack::Hole]);
    }
    let line = ground.line.as_ref().map_err(Clone::clone)?;
    let post = post_width(ground.settings, &roles(End::InsideCorner, false));
    let (d, width) = (line.as_length().unwrap_or(Length::ZERO), post.as_length().unwrap_or(Length::ZERO));
    let inputs = vec![
        ("clear between the posts", Fig::told(clear, "the stairs, clear between the posts")),
        ("line inside the edge", line.clone()),
        ("post", post),
    ];
    let why = Why::Formula("the clear less twice the line, and a post: its posts' centres stand on the line", inputs);
    Ok(Fig::length(clear - d * 2 + width, why))
}
