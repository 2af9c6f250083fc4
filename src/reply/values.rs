//! The figures of one answer, by their names in the JSON contract.

use super::TakeoffFigs;
use crate::figure::Fig;
use crate::job::{End, RunId};
use crate::measure::Shade;

/// One post of a layout.
#[derive(Clone, Debug, PartialEq)]
pub struct PostFig {
    /// Its run.
    pub run: RunId,
    /// What follows the run's number for a flank of recessed stairs; empty for the run itself.
    pub stretch: String,
    /// The run whose corner post it is too.
    pub shared: Option<RunId>,
    /// Its centre, from the origin.
    pub at: Fig,
    /// Its near face, from the origin.
    pub near_face: Fig,
    /// What the tape hooks on.
    pub from: &'static str,
    /// What kind of post it is: an end's name, or "line post".
    pub kind: &'static str,
    /// Why it must stand there.
    pub why: &'static str,
}

/// One bay of a layout.
#[derive(Clone, Debug, PartialEq)]
pub struct BayFig {
    /// Its run.
    pub run: RunId,
    /// What follows the run's number for a flank of recessed stairs; empty for the run itself.
    pub stretch: String,
    /// Face to face.
    pub clear: Fig,
    /// Centre to centre; `None` where one side has no post.
    pub centre: Option<Fig>,
    /// What it starts at: a post's kind, or the wall's name.
    pub from: &'static str,
    /// What it ends at.
    pub to: &'static str,
    /// True for a gate's opening, which carries no rail.
    pub gate: bool,
}

/// A flight's slope.
#[derive(Clone, Debug, PartialEq)]
pub struct RakeFig {
    /// Degrees from the level.
    pub angle: Fig,
    /// The total run, where it is known.
    pub run: Option<Fig>,
    /// The total rise.
    pub rise: Option<Fig>,
    /// The nosing line, from the decking's nosing to the lowest.
    pub slope: Option<Fig>,
}

/// A gate's leaf.
#[derive(Clone, Debug, PartialEq)]
pub struct GateFig {
    /// The opening between the jambs.
    pub opening: Fig,
    /// The leaf, edge to edge.
    pub leaf: Fig,
    /// The gap at the hinges.
    pub hinge_gap: Fig,
    /// The gap at the latch.
    pub latch_gap: Fig,
    /// Which way it swings, in the contract's words.
    pub swing: &'static str,
}

/// What is asked of a part beside what it is allowed.
#[derive(Clone, Debug, PartialEq)]
pub struct StrengthFig {
    /// The part and what is asked of it.
    pub what: &'static str,
    /// Asked.
    pub demand: Fig,
    /// Allowed.
    pub capacity: Fig,
    /// Asked over allowed.
    pub ratio: Fig,
    /// Where what is allowed is published.
    pub source: &'static str,
}

/// What comes off posts of one cut, and what is left.
#[derive(Clone, Debug, PartialEq)]
pub struct NotchFig {
    /// The post's size.
    pub post: String,
    /// The posts cut so, by their numbers.
    pub posts: Vec<usize>,
    /// The shape of the cut, or what is told of it.
    pub shape: &'static str,
    /// How deep it is from the deck side.
    pub off: Option<Fig>,
    /// How deep it is along each way it is marked.
    pub depths: Vec<(&'static str, Fig)>,
    /// What stays across the edge.
    pub left: Option<Fig>,
    /// The area that comes off and the area left, in square inches.
    pub areas: Option<(Fig, Fig)>,
    /// From the post's top to the shoulder.
    pub shoulder: Option<Fig>,
    /// From the shoulder down.
    pub leg: Option<Fig>,
    /// The piece to cut.
    pub total: Option<Fig>,
    /// A stepped foot's two levels, from the top down; empty for a foot of one depth.
    pub levels: Vec<LevelFig>,
}

/// The figures of one level of a stepped foot.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelFig {
    /// What the foot passes there: `decking` or `rim`.
    pub at: &'static str,
    /// The shape of the cut.
    pub shape: &'static str,
    /// How deep it is from the deck side.
    pub off: Option<Fig>,
    /// How deep it is along each way it is marked.
    pub depths: Vec<(&'static str, Fig)>,
    /// What stays across the edge.
    pub left: Option<Fig>,
    /// The area that comes off and the area left, in square inches.
    pub areas: (Fig, Fig),
    /// True for the level with the least left, which the strength is judged by.
    pub weakest: bool,
}

/// The figures of one answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Values {
    /// Lengths were given in millimetres, and are answered in them too.
    pub metric: bool,
    /// A sum's, conversion's or bare measure's answer.
    pub result: Option<Fig>,
    /// What is left over beside the result.
    pub left: Option<Fig>,
    /// Posts, run by run.
    pub posts: Vec<PostFig>,
    /// Bays, run by run.
    pub bays: Vec<BayFig>,
    /// The longest clear opening allowed now.
    pub clear_max: Option<Fig>,
    /// A shade on the result: kept, never added.
    pub shade: Option<Shade>,
    /// The result was told as "about".
    pub about: bool,
    /// What is asked of parts, beside what they are allowed.
    pub strength: Vec<StrengthFig>,
    /// What comes off the posts' feet, one entry for each cut.
    pub notches: Vec<NotchFig>,
    /// Whether a guard is required, where that was asked.
    pub guard_needed: Option<bool>,
    /// Further figures, by names of the program's own.
    pub more: Vec<(&'static str, Fig)>,
    /// A flight's slope.
    pub rake: Option<RakeFig>,
    /// A gate's leaf.
    pub gate: Option<GateFig>,
    /// Ends named by a query about one.
    pub ends: Vec<End>,
    /// Lists of balusters, parts and cuts.
    pub takeoff: TakeoffFigs,
}
