//! What can be asked of stairs, their guard and handrail, and of a gate.

use crate::measure::{Length, Lumber};
use std::collections::BTreeMap;

/// A question about a flight or a gate, with the figures given in it.
#[derive(Clone, Debug, PartialEq)]
pub struct FlightAsk {
    /// What is asked.
    pub what: FlightWhat,
    /// Figures given in the question: they stand for this answer in place of what was told.
    pub given: Given,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FlightWhat {
    /// How many risers and treads.
    Steps,
    /// How high the decking is above the stairs' foot.
    Rise,
    /// How far out the stairs come.
    Run,
    /// The slope's angle.
    Rake,
    /// How long the stair rail is.
    RailLength,
    /// Where the posts down the stairs stand.
    Posts,
    /// How high each of them is above what it stands on.
    PostHeights,
    /// How level and rake rail meet at the top post.
    TopPost,
    /// The balusters down the stairs.
    Balusters,
    /// The triangle under the bottom rail.
    Triangle,
    /// Whether a handrail is needed.
    Handrail,
    /// How high it is.
    HandrailHeight,
    /// How it runs and ends.
    HandrailEnds,
    /// Whether something can be held as one.
    Grip,
    /// What handrails leave of the stair's width.
    WidthLeft,
    /// Whether the flight keeps to the limits.
    Check,
    /// How deep a landing is.
    Landing,
    /// How long a baluster down the stairs is.
    BalusterLength,
    /// Whether a gap between balusters passes there.
    Gap,
    /// How wide a gate's leaf is.
    Leaf,
    /// Its balusters.
    LeafBalusters,
    /// Its brace and diagonal.
    Brace,
    /// Which way it swings.
    Swing,
    /// Whether it is too wide.
    Wide,
    /// The posts it hangs on.
    GatePosts,
    /// What a pool asks of it.
    Pool,
    /// How high it is and how far off the deck.
    GateHeight,
    /// How high its latch is.
    LatchHeight,
    /// Whether risers may be open.
    OpenRisers,
    /// Whether a flight may rise so far without a landing.
    OneFlight,
    /// How far the bottom rail may be lifted.
    Lift,
    /// How high the stair guard's rail is.
    StairRailHeight,
    /// Where the top post stands.
    TopPostPlace,
    /// How far a handrail stands off what is beside it, and into the stair.
    HandrailSpace,
}

/// A size that may be given in a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// One riser.
    Rise,
    /// All of them.
    TotalRise,
    /// One tread.
    Tread,
    /// All of them.
    TotalRun,
    /// How far the nosing overhangs.
    Nosing,
    /// The stair's width.
    Width,
    /// The stair rail's top above the nosing line.
    Height,
    /// The level guard's height.
    Level,
    /// The bottom rail's underside above the nosing line.
    Lift,
    /// A baluster's width.
    Baluster,
    /// How far a handrail stands into the stair.
    Projection,
    /// A round rail's diameter.
    Round,
    /// A rail's width, not round.
    Across,
    /// Its depth.
    Deep,
    /// A gate's opening.
    Opening,
    /// A second measure of it.
    SecondOpening,
    /// A third.
    ThirdOpening,
    /// The gap at its hinges.
    HingeGap,
    /// The gap at its latch.
    LatchGap,
    /// The leaf's width.
    Leaf,
    /// The leaf's height.
    LeafHeight,
    /// The smallest riser, where they differ; the riser is then the largest.
    LeastRise,
    /// The rails, apart square to the slope.
    RailsApart,
    /// A latch's height.
    LatchHeight,
    /// The gap between balusters.
    Gap,
    /// What is open between two treads.
    OpenRiser,
}

/// What a question gives of its own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Given {
    /// How many risers.
    pub risers: Option<u16>,
    /// How many treads.
    pub treads: Option<u16>,
    /// How many "steps": risers or treads, the word does not say.
    pub steps: Option<u16>,
    /// Named lumber.
    pub lumber: Option<Lumber>,
    /// Asked of a guard's cap.
    pub cap: bool,
    /// Sizes.
    pub sizes: BTreeMap<Size, Length>,
}

impl Given {
    /// The size given.
    pub fn size(&self, size: Size) -> Option<Length> {
        self.sizes.get(&size).copied()
    }
}

impl FlightWhat {
    /// Every question.
    pub const ALL: [FlightWhat; 34] = [
        FlightWhat::Steps,
        FlightWhat::Rise,
        FlightWhat::Run,
        FlightWhat::Rake,
        FlightWhat::RailLength,
        FlightWhat::Posts,
        FlightWhat::PostHeights,
        FlightWhat::TopPost,
        FlightWhat::Balusters,
        FlightWhat::Triangle,
        FlightWhat::Handrail,
        FlightWhat::HandrailHeight,
        FlightWhat::HandrailEnds,
        FlightWhat::Grip,
        FlightWhat::WidthLeft,
        FlightWhat::Check,
        FlightWhat::Landing,
        FlightWhat::BalusterLength,
        FlightWhat::Gap,
        FlightWhat::Leaf,
        FlightWhat::LeafBalusters,
        FlightWhat::Brace,
        FlightWhat::Swing,
        FlightWhat::Wide,
        FlightWhat::GatePosts,
        FlightWhat::Pool,
        FlightWhat::GateHeight,
        FlightWhat::LatchHeight,
        FlightWhat::OpenRisers,
        FlightWhat::OneFlight,
        FlightWhat::Lift,
        FlightWhat::HandrailSpace,
        FlightWhat::TopPostPlace,
        FlightWhat::StairRailHeight,
    ];
}

impl Size {
    /// Every size.
    pub const ALL: [Size; 26] = [
        Size::Rise,
        Size::TotalRise,
        Size::Tread,
        Size::TotalRun,
        Size::Nosing,
        Size::Width,
        Size::Height,
        Size::Level,
        Size::Lift,
        Size::Baluster,
        Size::Projection,
        Size::Round,
        Size::Across,
        Size::Deep,
        Size::Opening,
        Size::SecondOpening,
        Size::ThirdOpening,
        Size::HingeGap,
        Size::LatchGap,
        Size::Leaf,
        Size::LeafHeight,
        Size::LeastRise,
        Size::RailsApart,
        Size::LatchHeight,
        Size::Gap,
        Size::OpenRiser,
    ];
}
