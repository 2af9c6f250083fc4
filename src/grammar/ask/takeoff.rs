//! What can be asked of balusters, parts, cuts and cost.

use crate::job::{LongPart, RunId, Species, StartWith};
use crate::measure::Length;

/// One opening to fill, as asked: what was not said is the job's, or the default.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Infill {
    /// The clear opening.
    pub clear: Length,
    /// How many balusters; `None` for the fewest that pass.
    pub count: Option<u16>,
    /// One baluster's width.
    pub baluster: Option<Length>,
    /// The gap to stay under.
    pub limit: Option<Length>,
    /// What stands against the posts.
    pub start: Option<StartWith>,
}

/// A question about balusters, parts, cuts or cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TakeoffAsk {
    /// How many balusters, of one run or in all.
    Balusters(Option<RunId>),
    /// One opening's balusters, gap and marks.
    Infill(Infill),
    /// The gap balusters of a width leave at a spacing on centre.
    OnCentre {
        /// Centre to centre.
        centre: Length,
        /// One baluster's width.
        baluster: Option<Length>,
    },
    /// The gap, told by what goes through it.
    ByObject,
    /// Whether a gap passes.
    Gap(Length),
    /// Whether the gap under the bottom rail passes.
    GapUnder(Length),
    /// What gaps become once wet balusters dry.
    Dried {
        /// Of which wood; the job's where not said.
        wood: Option<Species>,
        /// The gap as put up; the job's widest where not said.
        gap: Option<Length>,
    },
    /// Balusters in rails with holes at a set pitch.
    Routed {
        /// Hole to hole, centre to centre.
        pitch: Length,
        /// The clear opening; the job's bays where not said.
        clear: Option<Length>,
        /// One baluster's width.
        baluster: Option<Length>,
    },
    /// Whether the job's marks do for balusters that measure this.
    Measured(Length),
    /// Every part.
    Parts,
    /// Every cut, to be read at the saw.
    Cuts,
    /// What to buy.
    Buy,
    /// What it costs.
    Cost,
    /// How a run splits with an eye to the sticks.
    Splits(Option<RunId>),
    /// How long balusters or posts are cut.
    CutLength(LongPart),
    /// How long rails are cut.
    RailLength,
    /// What a piece cut short was for, and what it still makes.
    CutShort(Length),
}
