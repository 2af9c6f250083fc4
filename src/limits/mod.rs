//! Limits and defaults with their sources, made from the `.toml` files beside this one at build time.

mod places;

pub use places::{Edition, PLACES, Place, PlaceLimit};

use crate::measure::{Length, Q};

/// How far a value may be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Seen on a published page for this provision.
    Checked,
    /// Known, not confirmed.
    Memory,
    /// Common practice, no source.
    Practice,
}

/// How a figure is held to a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// No figure passes or fails by it.
    None,
    /// No more than it: just that passes.
    Most,
    /// No less than it: just that passes.
    Least,
    /// A ball of that size must not pass: just that fails.
    Under,
    /// What is more than it asks for something: just that does not.
    Over,
    /// So many and more ask for something: just that does.
    From,
}

impl Sense {
    /// True where a figure keeps to a limit, or asks for nothing by it; both in the same unit.
    pub fn keeps(self, figure: Q, limit: Q) -> bool {
        match self {
            Sense::None => true,
            Sense::Most | Sense::Over => figure <= limit,
            Sense::Least => figure >= limit,
            Sense::Under | Sense::From => figure < limit,
        }
    }
}

/// One limit or default.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// Its name, in lower case with hyphens.
    pub id: &'static str,
    /// The figure, in `unit`.
    pub value: i64,
    /// "in", "sixteenths" of one, "lb", "parts", "nominal" or "none".
    pub unit: &'static str,
    /// How a figure is held to it.
    pub sense: Sense,
    /// What it says, in plain words, without a full stop.
    pub says: &'static str,
    /// Where it is published; a source from memory says so itself, wherever it is printed.
    pub source: &'static str,
    /// The same by edition: of 2018, 2021 and 2024. Alike where the editions are not told apart.
    pub by_edition: [&'static str; 3],
    /// How far it may be trusted.
    pub trust: Trust,
    /// A word of warning; may be empty.
    pub note: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/limits.rs"));

impl Limit {
    /// The figure as a length. Only for limits in inches or sixteenths of one.
    pub fn length(&self) -> Length {
        match self.unit {
            "sixteenths" => Length::sixteenths(self.value),
            unit => {
                debug_assert_eq!(unit, "in");
                Length::inches(self.value)
            }
        }
    }
}

/// The limit of that id, if there is one.
pub fn find(id: &str) -> Option<&'static Limit> {
    LIMITS.iter().copied().find(|l| l.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The guard pages of AWC DCA 6 were seen by nobody who worked on these tables: what is laid to
    /// them was known, or seen in another publication.
    #[test]
    fn nothing_of_the_deck_guide_is_called_checked() {
        let of_guide: Vec<&Limit> = LIMITS.iter().copied().filter(|l| l.source.contains("DCA 6")).collect();
        assert!(of_guide.len() >= 12, "{}", of_guide.len());
        for limit in of_guide {
            assert_eq!(limit.trust, Trust::Memory, "{}", limit.id);
        }
    }

    /// One figure that stands in two limits has one trust: the guide's two bolts, its 2x4 rail, the 4 in. ball.
    #[test]
    fn one_figure_has_one_trust() {
        let alike = [
            ["post-bolts", "bolt-size"],
            ["bolt-size", "through-bolts"],
            ["top-rail", "rail-size"],
            ["level-gap", "whole-opening"],
        ];
        for [a, b] in alike.map(|pair| pair.map(|id| find(id).expect("a limit held"))) {
            assert_eq!(a.trust, b.trust, "{} and {}", a.id, b.id);
        }
    }

    /// Wherever a source is printed its trust is: a source from memory says so in its own words.
    #[test]
    fn a_source_from_memory_says_so() {
        for limit in LIMITS {
            for source in limit.by_edition.iter().chain([&limit.source]) {
                let says = source.ends_with("(from memory, not checked)");
                assert_eq!(says, limit.trust == Trust::Memory, "{}: {source}", limit.id);
            }
        }
    }
}
