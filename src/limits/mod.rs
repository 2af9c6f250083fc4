//! Limits and defaults with their sources, made from the `.toml` files beside this one at build time.

mod places;

pub use places::{Edition, PLACES, Place, PlaceLimit};

use crate::measure::Length;

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

/// One limit or default.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// Its name, in lower case with hyphens.
    pub id: &'static str,
    /// The figure, in `unit`.
    pub value: i64,
    /// "in", "sixteenths" of one, "lb", "parts", "nominal" or "none".
    pub unit: &'static str,
    /// What it says, in plain words, without a full stop.
    pub says: &'static str,
    /// Where it is published.
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
