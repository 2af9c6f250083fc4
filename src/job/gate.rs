//! A gate as told: where it hangs, its opening, and how its leaf is hung.

use crate::measure::Length;

/// Where in or beyond a run a gate hangs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GateAt {
    /// At the run's from-end.
    From,
    /// At the run's to-end.
    To,
    /// Centred in the run.
    Middle,
    /// At the left end, told so: the from-end, standing at the house looking out.
    Left,
    /// At the right end, told so: the to-end.
    Right,
    /// Across the run's stair opening, or across each of several.
    Stairs,
    /// So far along the run from its from-end: where the opening begins.
    OffFrom(Length),
    /// So far from the run's to-end.
    OffTo(Length),
}

impl GateAt {
    /// The same place without the side it was told by: left is the from-end.
    pub fn place(self) -> GateAt {
        match self {
            GateAt::Left => GateAt::From,
            GateAt::Right => GateAt::To,
            at => at,
        }
    }

    /// The same place in the run walked the other way.
    pub fn flipped(self) -> GateAt {
        match self {
            GateAt::From => GateAt::To,
            GateAt::To => GateAt::From,
            GateAt::OffFrom(by) => GateAt::OffTo(by),
            GateAt::OffTo(by) => GateAt::OffFrom(by),
            at => at,
        }
    }

    /// How far it stands from an end of the run; `None` where it was not told by a distance.
    pub fn off(self) -> Option<Length> {
        match self {
            GateAt::OffFrom(by) | GateAt::OffTo(by) => Some(by),
            _ => None,
        }
    }
}

/// Which way a leaf swings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Swing {
    /// In, over the deck.
    OverDeck,
    /// Out, over the stairs or off the deck.
    Out,
    /// Both ways.
    Both,
}

/// Which of its two jambs a leaf is hinged or latched on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Jamb {
    /// The left one, seen from the house looking out.
    Left,
    /// The right one.
    Right,
    /// The one nearer the house.
    House,
    /// The one away from the house.
    Away,
}

/// How a gate's leaf is hung, as far as it was told.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hung {
    /// One leaf or two; `None` until told.
    pub leaves: Option<u8>,
    /// Which way it swings.
    pub swing: Option<Swing>,
    /// The jamb it is hinged on.
    pub hinge: Option<Jamb>,
    /// The jamb it latches on.
    pub latch: Option<Jamb>,
    /// The gap at the hinges.
    pub hinge_gap: Option<Length>,
    /// The gap at the latch.
    pub latch_gap: Option<Length>,
    /// Whether it closes by itself.
    pub self_closing: Option<bool>,
    /// How wide the leaf is, or each of two.
    pub leaf: Option<Length>,
    /// How far above the decking the latch is let go.
    pub latch_height: Option<Length>,
}

impl Hung {
    /// This, what it was not told taken from another.
    pub fn or(self, other: Hung) -> Hung {
        Hung {
            leaves: self.leaves.or(other.leaves),
            swing: self.swing.or(other.swing),
            hinge: self.hinge.or(other.hinge),
            latch: self.latch.or(other.latch),
            hinge_gap: self.hinge_gap.or(other.hinge_gap),
            latch_gap: self.latch_gap.or(other.latch_gap),
            self_closing: self.self_closing.or(other.self_closing),
            leaf: self.leaf.or(other.leaf),
            latch_height: self.latch_height.or(other.latch_height),
        }
    }
}

/// A gate told on a run.
///
/// At a stair head or gate post the leaf hangs beyond the run, across the opening;
/// anywhere else it takes its width out of the run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gate {
    /// Where it hangs.
    pub at: GateAt,
    /// The opening told for it, jamb face to jamb face; `None` until told.
    pub width: Option<Length>,
    /// How its leaf is hung.
    pub hung: Hung,
}

impl Gate {
    /// A gate told by its place and its opening alone.
    pub fn new(at: GateAt, width: Option<Length>) -> Gate {
        Gate { at, width, hung: Hung::default() }
    }
}
