//! What gaps become when wet lumber dries with every baluster's centre fixed.
//!
//! Across the grain wood loses nothing until it is as dry as its fibre saturation point F, then
//! evenly down to its whole shrinkage S at no moisture. From MI to MF per cent of moisture:
//! D (MI - MF) / (100 F / S - F + MI), with MI no more than F (Wood Handbook, eq. 13-3).

use crate::job::Species as Wood;
use crate::limits::Trust;
use crate::measure::{Length, Q};
use num_rational::Ratio;

/// A kind of wood and how it shrinks.
#[derive(Debug, PartialEq)]
pub struct Species {
    /// Its id, in lower case with hyphens.
    pub id: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Whole shrinkage along the rings from green to no moisture, in tenths of a per cent: the
    /// greater of the two ways a board may lie.
    pub tangential: i128,
    /// Fibre saturation, in per cent of moisture.
    pub saturation: i128,
    /// Where it is published.
    pub source: &'static str,
    /// How far it may be trusted.
    pub trust: Trust,
}

include!(concat!(env!("OUT_DIR"), "/species.rs"));

/// The species of that id.
pub fn find(id: &str) -> Option<&'static Species> {
    SPECIES.iter().find(|s| s.id == id)
}

/// Per cent of moisture lumber sold wet is taken to be put up at (common practice, no source).
pub const PUT_UP: i128 = 25;
/// Per cent of moisture it is taken to dry to out of doors (common practice, no source).
pub const DRY: i128 = 12;

/// The ids of what a name in the yard may be: southern pine is any of four.
fn ids(wood: Wood) -> &'static [&'static str] {
    match wood {
        Wood::SouthernPine => &["loblolly", "longleaf", "shortleaf", "slash"],
        Wood::DouglasFir => &["douglas-fir"],
        Wood::Cedar => &["redcedar"],
        Wood::Redwood => &["redwood-old", "redwood-young"],
        Wood::HemFir | Wood::SprucePineFir => &[],
    }
}

/// Of what that name may be, the one that shrinks most; `None` where no figures are held.
/// Without a name, the one that shrinks most of all held.
pub fn worst(wood: Option<Wood>) -> Option<&'static Species> {
    let held = SPECIES.iter().filter(|s| wood.is_none_or(|w| ids(w).contains(&s.id)));
    held.max_by_key(|s| s.tangential)
}

/// What a size loses from put up wet to dry.
pub fn lost(size: Length, species: &Species) -> Length {
    shrinkage(size, species, Ratio::from_integer(PUT_UP), Ratio::from_integer(DRY))
}

/// How much of a size is lost drying from one moisture to another, in per cent. Nothing
/// where it does not dry.
pub fn shrinkage(size: Length, species: &Species, from: Q, to: Q) -> Length {
    let f = Ratio::from_integer(species.saturation);
    let from = from.min(f);
    if to >= from {
        return Length::ZERO;
    }
    let over = f * Ratio::from_integer(1000) / Ratio::from_integer(species.tangential.max(1)) - f + from;
    size.times((from - to) / over).unwrap_or(Length::ZERO)
}

/// What gaps grow by when balusters and posts dry where they stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growth {
    /// Between two balusters: one baluster's shrinkage.
    pub middle: Length,
    /// Between a post and a baluster: half of each one's.
    pub end: Length,
}

/// The growth for a baluster and a post that lose so much.
pub fn growth(baluster: Length, post: Length) -> Growth {
    Growth { middle: baluster, end: (baluster + post) / 2 }
}
