//! The figures of balusters, parts and cuts, by their names in the JSON contract.

use crate::figure::Fig;

/// Parts alike.
#[derive(Clone, Debug, PartialEq)]
pub struct PartFig {
    /// What.
    pub part: &'static str,
    /// The lumber; `None` for hardware.
    pub stock: Option<String>,
    /// How long each is cut.
    pub cut: Option<Fig>,
    /// How far off square its ends are cut, in degrees: one for each end that is.
    pub bevels: Vec<Fig>,
    /// How many.
    pub count: Fig,
    /// Where they go.
    pub at: Vec<String>,
}

/// Sticks cut alike.
#[derive(Clone, Debug, PartialEq)]
pub struct StickFig {
    /// The lumber.
    pub size: String,
    /// The stick's length.
    pub stock: Fig,
    /// True where it was on hand.
    pub on_hand: bool,
    /// How many are cut so.
    pub times: Fig,
    /// Cut length and how many, longest first.
    pub cuts: Vec<(Fig, Fig)>,
    /// What is left of each.
    pub left: Fig,
}

/// What an answer about balusters, parts or cuts holds beside single figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TakeoffFigs {
    /// How many balusters bay by bay.
    pub each: Vec<Fig>,
    /// The running marks of one bay.
    pub marks: Vec<Fig>,
    /// Rails by length, longest first.
    pub rails: Vec<Fig>,
    /// The parts.
    pub parts: Vec<PartFig>,
    /// The cut plan.
    pub plan: Vec<StickFig>,
    /// What is to be bought: size, length, how many.
    pub buy: Vec<(String, Fig, Fig)>,
}

impl TakeoffFigs {
    /// True for a list a crew works from: the parts, the cuts or what is to be bought.
    pub fn has_list(&self) -> bool {
        !(self.parts.is_empty() && self.plan.is_empty() && self.buy.is_empty())
    }
}
