//! Questions about stair openings and gates.

use crate::measure::Length;

/// A question about stair openings and gates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StairAsk {
    /// How high the deck is by its stairs: risers times rise.
    Height,
    /// The stairs told: how wide, where, how many risers.
    Told,
    /// How wide a leaf an opening takes.
    Leaf(LeafAsked),
    /// Which way a gate swings.
    Swing,
    /// Whether one leaf may be so wide.
    OneLeaf(Length),
}

/// An opening and the gaps told for a leaf in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeafAsked {
    /// The opening, jamb face to jamb face.
    pub opening: Length,
    /// The gap at the hinges.
    pub hinge: Option<Length>,
    /// The gap at the latch.
    pub latch: Option<Length>,
}
