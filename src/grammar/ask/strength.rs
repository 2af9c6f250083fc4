//! Questions about span and strength.

use crate::job::{Lie, Species};
use crate::measure::{Length, Lumber};

/// What a strength question is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum About {
    /// A rail over a bay.
    Bay,
    /// A bay so long: a what-if.
    Reach,
    /// The longest bay a rail reaches over.
    Longest,
    /// One rail beside another.
    Stiffer,
    /// A whole post.
    Post,
    /// What a notch leaves of a post.
    Left,
    /// The pull on a post's upper bolt.
    Bolt,
}

impl About {
    /// Everything a strength question is about.
    pub const ALL: [About; 7] =
        [About::Bay, About::Reach, About::Longest, About::Stiffer, About::Post, About::Left, About::Bolt];
}

/// A strength question; what it does not say is the job's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrengthAsk {
    /// What it is about.
    pub about: About,
    /// A clear span.
    pub span: Option<Length>,
    /// The guard's height.
    pub height: Option<Length>,
    /// The posts' lumber.
    pub post: Option<Lumber>,
    /// The top rail's lumber.
    pub rail: Option<Lumber>,
    /// How the top rail lies.
    pub lie: Option<Lie>,
    /// A cap laid flat on it.
    pub cap: Option<Lumber>,
    /// The rim's lumber.
    pub rim: Option<Lumber>,
    /// The wood.
    pub species: Option<Species>,
}

impl StrengthAsk {
    /// A question that says nothing more.
    pub fn of(about: About) -> StrengthAsk {
        StrengthAsk {
            about,
            span: None,
            height: None,
            post: None,
            rail: None,
            lie: None,
            cap: None,
            rim: None,
            species: None,
        }
    }
}
