//! What a layout is made of.

use super::{Framing, Kind, Limits, Meet, Part, Skew};
use crate::figure::Fig;
use crate::job::walk::Miss;
use crate::job::{Basis, End, EndOf, RunId, Told};
use crate::measure::{Length, Tape};

/// Every run of the job, laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// The runs, in the order told.
    pub runs: Vec<RunLayout>,
    /// The tape marks are read on.
    pub tape: Tape,
    /// The limits the bays keep to.
    pub limits: Limits,
    /// The baluster line inside the decking's edge, where a run needed it.
    pub line: Option<Fig>,
    /// The sides of the outline over their joists, where those were told.
    pub framing: Vec<Framing>,
    /// How far the outline misses its end, where it does not close.
    pub open: Option<Miss>,
    /// The longest clear opening allowed; see [`super::clear_max`].
    pub clear_max: Option<Fig>,
}

/// One run: its posts and bays, or what is lacking to place them.
#[derive(Clone, Debug, PartialEq)]
pub struct RunLayout {
    /// The run.
    pub id: RunId,
    /// Its name, if it was given one.
    pub name: Option<String>,
    /// All of the run, or one flank of its recessed stairs.
    pub part: Part,
    /// What its first and its last corner are shared with.
    pub meets: [Option<Meet>; 2],
    /// A neighbour's corner post that stands in stairs at this run's very end.
    pub intrudes: Option<Intrusion>,
    /// Its length as told.
    pub told: Option<Told>,
    /// What its length is taken between.
    pub basis: Basis,
    /// The layout, or every fact that stands in its way.
    pub result: Result<Placed, Vec<Lack>>,
}

/// A corner post of the side beside a run, in the way of stairs at the run's end.
#[derive(Clone, Debug, PartialEq)]
pub struct Intrusion {
    /// How far it reaches into the opening.
    pub by: Fig,
    /// What it leaves of the opening.
    pub left: Fig,
}

/// The posts and bays of one run.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The run's length as told.
    pub length: Fig,
    /// For a length along the decking's edge: the run along the baluster line.
    pub on_line: Option<Fig>,
    /// For a flank of recessed stairs: the clear between the posts at the stairs' head.
    pub head: Option<Fig>,
    /// The run from outside to outside, walls included.
    pub overall: Length,
    /// The origin's place, from the outside start.
    pub lead: Length,
    /// What the tape hooks on at the start.
    pub origin: &'static str,
    /// What it reaches to at the other end.
    pub reaches: &'static str,
    /// What the run starts at and ends at, as laid out.
    pub ends: [End; 2],
    /// The posts, in walking order.
    pub posts: Vec<Post>,
    /// The bays and openings, in walking order.
    pub bays: Vec<Bay>,
    /// How many rail bays; why that many.
    pub count: Fig,
    /// The fewest rail bays the limits allow; `None` where no number of bays would do.
    pub fewest: Option<Fig>,
    /// True where the tape, not the exact split, asked for one bay more.
    pub rounded_up: bool,
    /// What is left of the run each side of stairs or of a gate in the middle.
    pub flanks: Option<[Fig; 2]>,
    /// The opening of a gate that hangs beyond the run, where its width was told.
    pub beyond: Option<Fig>,
    /// Facts still untold that do not stand in the way.
    pub still: Vec<Lack>,
    /// What was done about choices told on the run.
    pub took: Vec<Took>,
}

/// What was done about a choice told on a run, to be said.
#[derive(Clone, Debug, PartialEq)]
pub enum Took {
    /// A post kept exactly where it was told, its centre so far from that end.
    Kept {
        /// How far.
        at: Fig,
        /// From which end.
        from: EndOf,
    },
    /// All posts mirror.
    Mirrored,
    /// Posts mirror as far as the shorter side goes.
    MirroredPart,
    /// The sides differ by less than a bay: the same count on both, no mirror image.
    SameCount,
    /// So many bays more than the limits ask for, to keep posts off what was told.
    MoreBays(Fig),
    /// A post at the edge of what it must keep off, by its mark: bays are not all alike.
    Edge(Fig),
}

/// One post.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// What kind.
    pub kind: Kind,
    /// Its width along the run.
    pub width: Fig,
    /// Its centre, from the origin.
    pub at: Fig,
    /// Its face nearer the origin, from the origin.
    pub near_face: Fig,
    /// Its near face's place, from the outside start.
    pub near: Length,
    /// What it takes of the line, in inches: its width, more where it stands askew.
    pub takes: Length,
    /// How a post at an angled corner stands askew to this run.
    pub skew: Option<Skew>,
}

/// What fills the space between two posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BayKind {
    /// Rail and balusters.
    Rail,
    /// A gate.
    Gate,
    /// The way to the stairs, open.
    Stairs,
    /// The way to the stairs, with a gate across it.
    GatedStairs,
}

impl BayKind {
    /// True where a gate hangs.
    pub fn is_gate(self) -> bool {
        matches!(self, BayKind::Gate | BayKind::GatedStairs)
    }
}

/// The space between two posts, or between a post and a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// What fills it.
    pub kind: BayKind,
    /// Where it starts, from the outside start of the run.
    pub start: Length,
    /// Face to face.
    pub clear: Fig,
    /// Centre to centre; `None` where a side has no post.
    pub centre: Option<Fig>,
    /// Centre to centre, a side without a post counting as a post of no width.
    pub spacing: Length,
    /// What it starts at.
    pub from: &'static str,
    /// What it ends at.
    pub to: &'static str,
}

/// A fact a layout lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lack {
    /// The run's length.
    Length,
    /// What it starts at.
    From,
    /// What it ends at.
    To,
    /// The width of a gate that takes its width out of the run.
    GateWidth,
    /// The width of a gate that hangs beyond the run, so where its other jamb stands.
    GateBeyond,
    /// Where a gate stands that meets the stair opening.
    GatePlace,
    /// How a told bay count is shared between two sides.
    BaySplit,
    /// How far the baluster line lies inside the decking's edge.
    Line,
    /// How far the decking overhangs.
    Overhang,
    /// How thick the skirt is.
    Skirt,
    /// How many degrees an angled corner turns.
    Turn,
    /// How deep the hole is that the stairs' width was told of.
    RecessDepth,
    /// How wide the hole is, where posts outside the rim leave it open.
    Hole,
    /// Stairs recessed at the very corner of the deck: those are sides of the outline.
    RecessAtCorner,
    /// A post told where none can stand.
    PostPlace,
    /// What posts are to be mirrored about, or room for a mirror image.
    Mirror,
    /// A place for posts as far off what was told as was told.
    KeepOff,
    /// Room: the posts and openings told do not fit the run.
    Room,
}

impl Lack {
    /// The fact in words, to follow "still to tell: ", or what is wrong.
    pub fn says(self) -> &'static str {
        match self {
            Lack::Length => "how long the run is",
            Lack::From => "what the run starts at",
            Lack::To => "what the run ends at",
            Lack::GateWidth => "how wide the gate is",
            Lack::GateBeyond => "how wide the gate is, for its other jamb",
            Lack::GatePlace => "the gate and the stair opening do not fit as told",
            Lack::BaySplit => "how many bays on each side of the opening or of the post told",
            Lack::Line => "how far the baluster line lies inside the decking's edge",
            Lack::Overhang => "how far the decking overhangs the skirt, or the rim (say 0 for none)",
            Lack::Skirt => "how thick the skirt over the rim is (say 0 for none)",
            Lack::Turn => "how many degrees the angled corner turns",
            Lack::RecessDepth => {
                "how deep the stairs go into the deck, as their width was told of a hole in it (or say it is clear between the posts)"
            }
            Lack::Hole => "how wide the hole for the stairs is, decking to decking",
            Lack::RecessAtCorner => "stairs recessed at a corner of the deck: tell the sides they make instead",
            Lack::PostPlace => "a post is told where another post or an opening is",
            Lack::Mirror => "the posts can't be mirrored: more than one opening, or no room for a post's mirror image",
            Lack::KeepOff => "posts can't keep that far off and pass no limit",
            Lack::Room => "the posts, bays and openings told do not fit in the run",
        }
    }

    /// True for a fact that was not told; false where the facts told do not fit.
    pub fn is_untold(self) -> bool {
        !matches!(
            self,
            Lack::GatePlace | Lack::Room | Lack::RecessAtCorner | Lack::PostPlace | Lack::Mirror | Lack::KeepOff
        )
    }

    /// True for a fact of the whole job, asked once and not for each run.
    pub fn is_of_the_job(self) -> bool {
        matches!(self, Lack::Line | Lack::Overhang | Lack::Skirt)
    }
}

impl Bay {
    /// The clear opening in inches.
    pub fn clear_length(&self) -> Length {
        // Made as a length in place.rs and nowhere else.
        self.clear.as_length().unwrap_or(Length::ZERO)
    }
}

impl Post {
    /// The post's width in inches.
    pub fn width_length(&self) -> Length {
        // Made as a length in sizes.rs and nowhere else.
        self.width.as_length().unwrap_or(Length::ZERO)
    }

    /// Where it ends, from the outside start.
    pub fn far(&self) -> Length {
        self.near + self.takes
    }

    /// Its centre, from the outside start.
    pub fn centre(&self) -> Length {
        self.near + self.takes / 2
    }
}

impl Placed {
    /// The bays that carry rail.
    pub fn rail_bays(&self) -> impl Iterator<Item = &Bay> {
        self.bays.iter().filter(|b| b.kind == BayKind::Rail)
    }
}
