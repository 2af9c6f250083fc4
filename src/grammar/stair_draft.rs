//! Stairs and gates as said, beyond a width and a place: what a width was measured between,
//! how deep, how many risers; several at once; moved; how a leaf is hung.

use super::draft::{Along, Mark};
use super::sense::Side;
use crate::job::{Head, Jamb, Lands, Newels, OpenSides, StairMeasure, Swing};
use crate::measure::Measure;

/// One thing said of stairs.
#[derive(Clone, Debug, PartialEq)]
pub enum StairSaid {
    /// What their width was measured between: "that's the treads", "48 is the framed hole".
    Measured(Option<Measure>, StairMeasure),
    /// A width: "what if they were 5' wide".
    Wide {
        /// The width.
        width: Measure,
        /// The stairs were named; else they must have been spoken of.
        named: bool,
    },
    /// How deep they are let into the deck.
    Recess(Measure),
    /// How many risers.
    Risers(u16),
    /// How many risers, and the height of each.
    RisersOf(u16, Measure),
    /// How many steps: risers, or treads.
    Steps(u16),
    /// The height of each riser and the run of each tread.
    Pitch(Measure, Measure),
    /// "7 risers, 11 treads": so many risers, or so high a one; and a tread's run.
    PitchBare(Measure, Measure),
    /// Nothing between the treads; how much is open.
    OpenRisers(Option<Measure>),
    /// Boards between the treads.
    ClosedRisers,
    /// How they meet the decking.
    Head(Head),
    /// How deep the landing at their foot is.
    Landing(Measure),
    /// How the ground falls the way they go.
    Fall {
        /// So much.
        by: Measure,
        /// In so much out; `None` for a foot.
        over: Option<Measure>,
        /// It rises.
        rises: bool,
    },
    /// The height of each riser.
    Rise(Measure),
    /// The run of each tread.
    Tread(Measure),
    /// Which sides are open.
    Open(OpenSides),
    /// Where the newels stand.
    Newels(Newels),
    /// What they land on.
    Lands(Lands),
    /// To the other end of their side.
    Flip,
    /// So far along their side, to the left or right, or toward what an end is.
    Slide(Measure, Mark),
    /// To another place of their side.
    Move(Along),
    /// "risers 7": how many, or how high.
    RisersBare(Measure),
    /// Told whole, of the side spoken of.
    Whole(StairsWhole),
    /// In a side, by what an end of it is: told of no run yet.
    Place(Option<Side>, Option<Along>),
    /// Their foot: a guard runs down to a newel there.
    DownTo,
}

/// Stairs told whole: which side, how wide, where.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StairsWhole {
    /// The side they are in; `None` for the one spoken of.
    pub on: Option<Side>,
    /// Their width; `None` takes that of the one before, or the one told of all.
    pub width: Option<Measure>,
    /// Where along the side.
    pub at: Option<Along>,
}

/// One thing said of how a gate's leaf is hung.
#[derive(Clone, Debug, PartialEq)]
pub enum HungSaid {
    /// One leaf or two.
    Leaves(u8),
    /// Which way it swings.
    Swing(Swing),
    /// The jamb of its hinges.
    Hinge(Jamb),
    /// The jamb of its latch.
    Latch(Jamb),
    /// The gap at the hinges.
    HingeGap(Measure),
    /// The gap at the latch.
    LatchGap(Measure),
    /// Whether it closes by itself.
    SelfClosing(bool),
    /// How wide the leaf is.
    Leaf(Measure),
    /// How far up the latch is let go.
    LatchHeight(Measure),
}
