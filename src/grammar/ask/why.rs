//! "why" with words of its own: what the reason is asked of.

use crate::job::RunId;
use crate::measure::{Length, Q};

/// What a bay's length was said to be taken between.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Apart {
    /// Not said.
    Unsaid,
    /// Face to face.
    Clear,
    /// Centre to centre.
    Centre,
}

/// What was counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Counted {
    /// Posts.
    Posts,
    /// Bays.
    Bays,
    /// Balusters.
    Balusters,
}

/// A "why" with words of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WhyAsk {
    /// Why bays are not so long.
    NotBay(Length, Apart),
    /// Why a run has not so many bays.
    NotBays(RunId, u16),
    /// Why a post stands at a mark of a run.
    PostAt(RunId, Length),
    /// Why the line posts of a run stand where they do.
    LinePosts(RunId),
    /// Where a length among the figures said last comes from.
    Length(Length),
    /// Where a figure said last comes from, its unit not said.
    Number(Q),
    /// Why so many.
    Counted(Counted, u16),
}
