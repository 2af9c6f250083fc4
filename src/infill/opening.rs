//! A clear opening to fill, and what its gaps must keep to.

use crate::measure::{Length, Tape};

/// The most a gap may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GapLimit {
    /// The limit.
    pub most: Length,
    /// True where a gap of just that passes ("not more than", as pool barriers say); false where
    /// it lets the ball of that size through, and fails.
    pub equal_passes: bool,
}

impl GapLimit {
    /// A ball of this size must not pass: a gap as wide as the ball fails.
    pub fn under(most: Length) -> GapLimit {
        GapLimit { most, equal_passes: false }
    }

    /// No more than this: a gap of just that passes.
    pub fn up_to(most: Length) -> GapLimit {
        GapLimit { most, equal_passes: true }
    }

    /// True when the gap passes.
    pub fn allows(self, gap: Length) -> bool {
        gap < self.most || (self.equal_passes && gap == self.most)
    }
}

/// What stands against the posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Start {
    /// A gap at each post.
    #[default]
    Gap,
    /// A baluster tight to each post.
    Baluster,
}

/// A clear opening to fill with balusters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// Face to face, exactly.
    pub clear: Length,
    /// Face to face as it gets built, where the posts stand on rounded marks: the last gap is
    /// what this leaves.
    pub built: Length,
    /// One baluster's width.
    pub baluster: Length,
    /// The limit on every gap.
    pub limit: GapLimit,
    /// What stands against the posts.
    pub start: Start,
    /// The tape marks are read on.
    pub tape: Tape,
}

impl Opening {
    /// An opening as measured, with a gap at each post.
    pub fn measured(clear: Length, baluster: Length, limit: GapLimit, tape: Tape) -> Opening {
        Opening { clear, built: clear, baluster, limit, start: Start::Gap, tape }
    }
}
