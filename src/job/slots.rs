//! The slot table: what each slot takes, its bare unit, its sane range, how it is written.
//!
//! One table for reader, writer, help and JSON.

use crate::measure::{Length, Number, Q};
use num_rational::Ratio;

/// A slot that takes a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SlotId {
    /// A run's length.
    RunLength,
    /// A side of the deck.
    DeckSide,
    /// The stairs' width, or the opening left for them.
    StairWidth,
    /// How far along a run something stands.
    Offset,
    /// A gate's opening.
    GateWidth,
    /// Height to the top of the top rail.
    HeightTop,
    /// Gap under the bottom rail.
    GapUnder,
    /// Width of a baluster.
    BalusterWidth,
    /// Most gap between balusters.
    GapMax,
    /// Longest clear opening between posts.
    ClearMax,
    /// Longest post spacing on centre.
    CentreMax,
    /// Deck above the ground.
    Grade,
    /// Depth of the notch.
    NotchDepth,
    /// A post's outside width.
    PostWidth,
    /// How far the decking stands past the skirt or rim.
    Overhang,
    /// The skirt's thickness.
    Skirt,
    /// The rim's thickness.
    Rim,
    /// The baluster line inside the decking's edge.
    Line,
    /// How far two corner posts stand back from the corner.
    HoldBack,
    /// The joists' spacing, on centre.
    Joists,
    /// Where the first joist stands.
    FirstJoist,
    /// How deep stairs are recessed into the deck.
    Recess,
    /// The height of one riser.
    Rise,
    /// The run of one tread.
    Tread,
    /// The gap at a gate's hinges or latch.
    LeafGap,
    /// How far up a gate's latch is let go.
    LatchHeight,
    /// All risers of a flight together.
    TotalRise,
    /// All its treads together.
    TotalRun,
    /// How far a nosing overhangs.
    Nosing,
    /// The stair guard above the nosing line.
    StairHeight,
    /// Where along a run a post is told.
    PostAt,
    /// How far posts are kept off a thing.
    KeepOff,
    /// How long a baluster is cut.
    BalusterLength,
    /// How long a post is cut.
    PostLength,
    /// What each end of a rail is cut short for its bracket.
    Bracket,
    /// What the saw takes.
    Kerf,
    /// A stick's length.
    Stock,
    /// A bay's clear opening, told alone.
    BayClear,
    /// How thick the decking is.
    Decking,
    /// How tall the rim is.
    RimTall,
    /// A cap that lies on the posts.
    Cap,
    /// How far posts stand above the rail.
    Above,
    /// A saw blade, across.
    Blade,
    /// A bolt, across.
    Bolt,
    /// A notch at the rail.
    RailNotch,
    /// How deep the landing at a stair's foot is.
    Landing,
    /// What is open between two treads.
    OpenRiser,
    /// How far the ground falls.
    Fall,
    /// How far out it falls so much.
    FallOver,
    /// A gate's leaf, edge to edge.
    Leaf,
}

/// Which unit a bare number takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BareUnit {
    /// Always inches.
    Inches,
    /// Feet up to and with the first number, inches from the second; between them, ask.
    FeetTo(i128, i128),
}

/// One row of the slot table.
#[derive(Clone, Copy, Debug)]
pub struct Slot {
    /// The slot.
    pub id: SlotId,
    /// What it is called in talk.
    pub name: &'static str,
    /// Its name in the JSON contract.
    pub json: &'static str,
    /// The unit of a bare number (common practice, no source).
    pub bare: BareUnit,
    /// The least and most length taken, in whole inches: outside it is a slip of the tongue.
    pub sane: (i64, i64),
}

const fn row(id: SlotId, name: &'static str, json: &'static str, bare: BareUnit, sane: (i64, i64)) -> Slot {
    Slot { id, name, json, bare, sane }
}

use BareUnit::{FeetTo, Inches};

/// Every slot that takes a length.
pub const SLOTS: [Slot; 50] = [
    row(SlotId::RunLength, "run", "length", FeetTo(36, 61), (4, 2400)),
    row(SlotId::DeckSide, "deck side", "deck", FeetTo(60, 97), (24, 2400)),
    row(SlotId::StairWidth, "stair opening", "width", FeetTo(12, 20), (18, 240)),
    row(SlotId::Offset, "distance along the run", "at", FeetTo(36, 61), (0, 2400)),
    row(SlotId::GateWidth, "gate", "width", FeetTo(8, 18), (20, 144)),
    row(SlotId::HeightTop, "height to the top", "height_top", Inches, (12, 96)),
    row(SlotId::GapUnder, "gap under", "gap_under", Inches, (0, 24)),
    row(SlotId::BalusterWidth, "baluster", "baluster", Inches, (0, 12)),
    row(SlotId::GapMax, "gap limit", "gap_max", Inches, (0, 12)),
    row(SlotId::ClearMax, "most clear", "clear_max", FeetTo(12, 18), (12, 144)),
    row(SlotId::CentreMax, "most on centre", "oc_max", FeetTo(12, 18), (12, 144)),
    row(SlotId::Grade, "height above ground", "grade", Inches, (0, 1200)),
    row(SlotId::NotchDepth, "notch", "notch", Inches, (0, 12)),
    row(SlotId::PostWidth, "post width", "post_width", Inches, (1, 24)),
    row(SlotId::Overhang, "overhang", "overhang", Inches, (0, 12)),
    row(SlotId::Skirt, "skirt", "skirt", Inches, (0, 3)),
    row(SlotId::Rim, "rim", "rim", Inches, (1, 8)),
    row(SlotId::Line, "baluster line", "line", Inches, (-12, 24)),
    row(SlotId::HoldBack, "hold-back", "hold_back", Inches, (0, 12)),
    row(SlotId::Joists, "joist spacing", "joists", Inches, (6, 48)),
    row(SlotId::FirstJoist, "first joist", "first_joist", Inches, (0, 48)),
    row(SlotId::Recess, "recess", "recess", FeetTo(12, 18), (6, 240)),
    row(SlotId::Rise, "riser", "rise", Inches, (1, 12)),
    row(SlotId::Tread, "tread", "tread", Inches, (4, 60)),
    row(SlotId::LeafGap, "gap at the gate", "hinge_gap", Inches, (0, 4)),
    row(SlotId::LatchHeight, "latch height", "latch_height", Inches, (12, 84)),
    row(SlotId::TotalRise, "total rise", "total_rise", Inches, (4, 400)),
    row(SlotId::TotalRun, "total run", "total_run", FeetTo(16, 24), (4, 600)),
    row(SlotId::Nosing, "nosing", "nosing", Inches, (0, 4)),
    row(SlotId::StairHeight, "stair rail", "stair_height", Inches, (24, 60)),
    row(SlotId::PostAt, "place for a post", "posts_told", FeetTo(36, 61), (1, 2400)),
    row(SlotId::KeepOff, "distance to keep posts off", "keep_off", FeetTo(0, 7), (1, 240)),
    row(SlotId::BalusterLength, "balusters' length", "baluster_length", Inches, (4, 96)),
    row(SlotId::PostLength, "posts' length", "post_length", Inches, (12, 240)),
    row(SlotId::Bracket, "bracket", "bracket", Inches, (0, 6)),
    row(SlotId::Kerf, "kerf", "kerf", Inches, (0, 1)),
    row(SlotId::Stock, "stick", "stock", FeetTo(24, 25), (2, 480)),
    row(SlotId::BayClear, "bay", "clear", FeetTo(12, 18), (4, 240)),
    row(SlotId::Decking, "decking", "decking", Inches, (0, 4)),
    row(SlotId::RimTall, "rim height", "rim_height", Inches, (3, 24)),
    row(SlotId::Cap, "cap on the posts", "cap", Inches, (0, 6)),
    row(SlotId::Above, "posts above the rail", "above_rail", Inches, (0, 24)),
    row(SlotId::Blade, "saw blade", "blade", Inches, (4, 20)),
    row(SlotId::Bolt, "bolt", "bolt", Inches, (0, 2)),
    row(SlotId::RailNotch, "notch at the rail", "rail_notch", Inches, (0, 12)),
    row(SlotId::Landing, "landing", "landing", FeetTo(12, 20), (6, 240)),
    row(SlotId::OpenRiser, "opening between treads", "open_riser", Inches, (0, 12)),
    row(SlotId::Fall, "fall of the ground", "fall", Inches, (0, 240)),
    row(SlotId::FallOver, "distance the ground falls over", "fall_over", Inches, (1, 1200)),
    row(SlotId::Leaf, "gate leaf", "leaf", FeetTo(8, 12), (12, 144)),
];

impl SlotId {
    /// This slot's row.
    pub fn row(self) -> &'static Slot {
        // The table has a row for every id, in declaration order; a test holds it to that.
        &SLOTS[self as usize]
    }

    /// The lengths a bare number may be in this slot, likeliest first; two mean "ask".
    pub fn bare(self, n: Number) -> Vec<Length> {
        let inches = |q: Q| Length::from_q(q);
        let feet = |q: Q| Length::from_q(q * Ratio::from_integer(12));
        let lengths = match self.row().bare {
            Inches => vec![inches(n.value)],
            FeetTo(..) if n.fraction => vec![inches(n.value)],
            FeetTo(f, _) if n.value <= Ratio::from_integer(f) => vec![feet(n.value)],
            FeetTo(_, i) if n.value >= Ratio::from_integer(i) => vec![inches(n.value)],
            FeetTo(..) => vec![inches(n.value), feet(n.value)],
        };
        lengths.into_iter().flatten().collect()
    }

    /// True where nothing at all is a fact like any other: "no skirt", "no overhang".
    fn may_be_nothing(self) -> bool {
        use SlotId::{Above, Bracket, Cap, FirstJoist, HoldBack, Kerf, Line, Nosing, Overhang, Skirt};
        matches!(self, Overhang | Skirt | Line | HoldBack | FirstJoist | Bracket | Kerf | Cap | Above | Nosing)
    }

    /// True when the length lies in the slot's sane range.
    pub fn takes(self, l: Length) -> bool {
        let (lo, hi) = self.row().sane;
        (l.is_positive() || self.may_be_nothing()) && l >= Length::inches(lo) && l <= Length::inches(hi)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_slot_finds_its_own_row() {
        for slot in SLOTS {
            assert_eq!(slot.id.row().id, slot.id);
            assert!(slot.sane.0 < slot.sane.1, "{}", slot.name);
        }
    }
}
