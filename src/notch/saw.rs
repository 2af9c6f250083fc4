//! What a saw's blade reaches, and the web it leaves where a cut stops at a line.

use super::point::sqrt;
use crate::figure::{Fig, Why};
use crate::job::Settings;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::taken;

include!(concat!(env!("OUT_DIR"), "/saws.rs"));

/// A saw's blade.
#[derive(Clone, Debug, PartialEq)]
pub struct Saw {
    /// Across.
    pub blade: Fig,
    /// How deep it cuts, square.
    pub reach: Fig,
}

impl Saw {
    /// The saw told, or the one taken. A blade between two of the table's cuts as the
    /// smaller; one smaller than any of them is `None`.
    pub fn of(s: &Settings) -> Option<Saw> {
        let blade = taken(s, RowId::Blade);
        let across = blade.as_length()?;
        let (_, depth) = SAWS.iter().rev().find(|(size, _)| Length::sixteenths(*size) <= across)?;
        let says = "how deep a blade of that size cuts square: common practice, no source";
        let reach = Fig::length(Length::sixteenths(*depth), Why::Table(says, "saws, as commonly made"));
        Some(Saw { blade, reach })
    }

    /// True where one pass cuts so deep.
    pub fn cuts(&self, deep: Length) -> bool {
        self.reach.as_length().is_some_and(|reach| deep <= reach)
    }

    /// How far short of its line a cut so deep stays at the bottom where it stops at that
    /// line on the face: half the blade's chord. `None` for a cut deeper than half the blade.
    pub fn web(&self, deep: &Fig) -> Option<Fig> {
        let (across, deep_by) = (self.blade.as_length()?, deep.as_length()?);
        let rest = across - deep_by;
        if deep_by * 2 > across {
            return None;
        }
        let web = sqrt(deep_by.q() * rest.q())?;
        let inputs = vec![("blade", self.blade.clone()), ("depth of cut", deep.clone())];
        let says = "root of (depth x (blade - depth)): half the chord of a round blade so deep in";
        Some(Fig::length(web, Why::Formula(says, inputs)))
    }
}
