//! Questions about the posts' feet: what comes off, how long they are, how they are cut.

use crate::job::{End, PostSize};
use crate::measure::{Length, Lumber};

/// Whose foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Whose {
    /// Every post's.
    All,
    /// Those that stand at such an end.
    At(End),
    /// The line posts'.
    Line,
    /// The post of that number, counted along the runs as told.
    Number(u32),
}

/// A question about the posts' feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NotchAsk {
    /// What comes off a foot, where it is marked, what is left.
    Cut(Whose),
    /// How long posts are cut.
    Length(Whose),
    /// How long a post is above the decking.
    Above(Whose),
    /// How the foot is cut, step by step.
    Steps(Whose),
    /// The foot drawn.
    Draw(Whose),
    /// Where the bolts go.
    Bolts(Whose),
    /// Which posts are the same cut.
    Same,
    /// How tall the notch is.
    Tall,
    /// What a notch leaves of a post.
    Left {
        /// How deep.
        deep: Length,
        /// The post; `None` for the job's own.
        post: Option<PostSize>,
    },
    /// Whether a post of that size may be notched.
    May(Lumber),
    /// Posts notched long ago, and loose.
    Old(Option<Lumber>),
}
