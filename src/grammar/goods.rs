//! What a line was read as of balusters, parts and the yard, before bare numbers get their unit.

use super::draft::Which;
use crate::job::{LongPart, Order, Species, StartWith};
use crate::measure::{Lumber, Measure};

/// Facts of the order.
#[derive(Clone, Debug, PartialEq)]
pub enum OrderDraft {
    /// One that has no bare length in it.
    Fact(Order),
    /// So many bays of a clear opening.
    Bays(u16, Measure),
    /// So many sticks of a size and length on hand.
    OnHand(Lumber, Measure, u16),
    /// The lengths rails are sold in, in feet.
    RailsSold(Vec<u16>),
}

/// An opening to fill, as said: any of it may be missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InfillDraft {
    /// The clear opening.
    pub opening: Option<Measure>,
    /// How many.
    pub count: Option<u16>,
    /// So many fewer than said.
    pub fewer: Option<u16>,
    /// One baluster's width.
    pub baluster: Option<Measure>,
    /// The gap to stay under.
    pub limit: Option<Measure>,
    /// What stands against the posts.
    pub start: Option<StartWith>,
    /// Which run.
    pub which: Option<Which>,
}

/// A question about balusters, parts, cuts or cost.
#[derive(Clone, Debug, PartialEq)]
pub enum TakeoffDraft {
    /// Balusters in an opening, a run or the job.
    Infill(InfillDraft),
    /// Balusters at a spacing on centre.
    OnCentre(Measure, Option<Measure>),
    /// A gap told by what goes through it.
    ByObject,
    /// A gap asked about by itself.
    Gap(Measure),
    /// The gap under the bottom rail asked about.
    GapUnder(Measure),
    /// Gaps once wet balusters dry: of which wood, from what gap.
    Dried(Option<Species>, Option<Measure>),
    /// Balusters in rails with holes.
    Routed {
        /// Hole to hole, centre to centre.
        pitch: Measure,
        /// The opening.
        clear: Option<Measure>,
        /// One baluster's width.
        baluster: Option<Measure>,
    },
    /// Balusters that measure another width, on the same marks.
    Measured(Measure),
    /// How many in all: balusters of bays told alone, or posts.
    InAll,
    /// Every part.
    Parts,
    /// "what do I need for a 16 foot rail": nothing told of it but its length.
    PartsFor(Measure),
    /// Every cut.
    Cuts,
    /// What to buy.
    Buy,
    /// What it costs.
    Cost,
    /// How a run splits with an eye to the sticks.
    Splits(Option<Which>),
    /// How long a part is cut.
    CutLength(LongPart),
    /// How long rails are cut.
    RailLength,
    /// "I cut one short, 46 5/8".
    CutShort(Measure),
}
