//! A run: one straight length of guard between two ends, as told.

use super::{Choices, Gate, Stairs};
use crate::measure::{Length, Shade};

/// A run's number. Never reused within a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RunId(pub u32);

/// A length as told: the figure and the manner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// The length, exactly as told.
    pub length: Length,
    /// A shade on it: kept, never added.
    pub shade: Option<Shade>,
    /// Told as "about".
    pub about: bool,
}

impl Told {
    /// A length told plainly.
    pub fn plain(length: Length) -> Told {
        Told { length, shade: None, about: false }
    }
}

/// What a run's length was measured between.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Basis {
    /// Out to out: outside face of one end post (or the wall) to the other's.
    #[default]
    Overall,
    /// Clear: inside face to inside face of the end posts.
    Clear,
    /// Centre of one end post to centre of the other.
    Centre,
    /// Along the decking's edge, corner to corner: how a side of the outline is told.
    Edge,
}

/// How a side of the deck's outline leaves the one before it, walked with the deck on
/// the right: from the house at the left end, out, across, and home.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Turn {
    /// The first side: straight out from the house.
    Start,
    /// The first side of a deck that stands by itself, no house at any side: its left side,
    /// walked from its near corner.
    Free,
    /// To the right by so many degrees: an outside corner.
    Right(u16),
    /// To the left by so many degrees: an inside corner.
    Left(u16),
}

/// What a run ends at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The house: wall, siding, brick, chimney.
    House,
    /// An outside corner.
    Corner,
    /// An inside corner.
    InsideCorner,
    /// A corner that is not square.
    AngledCorner,
    /// The head of a stair.
    StairHead,
    /// The newel at a stair's foot.
    BottomNewel,
    /// A gate jamb.
    GatePost,
    /// A post the run simply stops at.
    EndPost,
    /// A wall that is not the house.
    Wall,
    /// Nothing: a free end. It still gets a post.
    OpenEnd,
}

impl End {
    /// True where the deck's edge turns.
    pub fn is_corner(self) -> bool {
        matches!(self, End::Corner | End::InsideCorner | End::AngledCorner)
    }

    /// Every end, in the order help lists them.
    pub const ALL: [End; 10] = [
        End::House,
        End::Corner,
        End::InsideCorner,
        End::AngledCorner,
        End::StairHead,
        End::BottomNewel,
        End::GatePost,
        End::EndPost,
        End::Wall,
        End::OpenEnd,
    ];

    /// The end's name, in talk and in JSON.
    pub fn name(self) -> &'static str {
        match self {
            End::House => "house",
            End::Corner => "corner",
            End::InsideCorner => "inside corner",
            End::AngledCorner => "angled corner",
            End::StairHead => "stair head",
            End::BottomNewel => "bottom newel",
            End::GatePost => "gate post",
            End::EndPost => "end post",
            End::Wall => "wall",
            End::OpenEnd => "open end",
        }
    }

    /// True where the guard dies into something that already stands.
    pub fn is_wall(self) -> bool {
        matches!(self, End::House | End::Wall)
    }
}

/// One run as told. What was not told is `None`; defaults are the engines' business.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The run's number.
    pub id: RunId,
    /// The name the builder gave it ("front", "left").
    pub name: Option<String>,
    /// Its length.
    pub length: Option<Told>,
    /// What the length was measured between; `None` takes the default, out to out.
    pub basis: Option<Basis>,
    /// The end it starts from: the left one, seen from the house looking out.
    pub from: Option<End>,
    /// The end it goes to.
    pub to: Option<End>,
    /// Its gate, if any.
    pub gate: Option<Gate>,
    /// Its stair openings, if any.
    pub stairs: Stairs,
    /// A bay count asked for in place of the fewest the limit allows.
    pub bays: Option<u16>,
    /// Set where the run is a side of the deck's outline: how it leaves the side before.
    pub turn: Option<Turn>,
    /// Where posts are wanted or not wanted.
    pub choices: Choices,
}

impl Run {
    /// A run of which nothing has been told yet.
    pub fn untold(id: RunId) -> Run {
        Run {
            id,
            name: None,
            length: None,
            basis: None,
            from: None,
            to: None,
            gate: None,
            stairs: Stairs::NONE,
            bays: None,
            turn: None,
            choices: Choices::default(),
        }
    }
}
