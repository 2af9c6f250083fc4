//! What a notch at the deck leaves of a post, end on, and which push counts for it.

use super::Refused;
use super::section::{Push, Section};
use crate::figure::Fig;
use crate::measure::{Length, Q};
use crate::quantity::RowId;
use crate::solve::by;

/// What is left of a square post where it passes the deck.
#[derive(Clone, Debug, PartialEq)]
pub enum Leg {
    /// All of it.
    Whole,
    /// Cut along one face: a leg so thick, pushed across its thickness.
    Across(Fig),
    /// Three parts of a quarter cut, both arms so thick: an outside corner's L.
    Ell(Fig),
    /// One square piece so thick, the rest cut: an inside corner's.
    Quarter(Fig),
}

impl Leg {
    /// The push that counts for it: an L or a quarter is a corner post's.
    pub fn push(&self) -> Push {
        match self {
            Leg::Whole | Leg::Across(_) => Push::Free,
            Leg::Ell(_) | Leg::Quarter(_) => Push::Any,
        }
    }

    /// What is left at the shoulder of a post this wide.
    ///
    /// # Errors
    /// [`Refused::NothingLeft`] where nothing is, or more than the post.
    pub fn section(&self, post: &Fig) -> Result<Section, Refused> {
        match self {
            Leg::Whole => Section::rectangle(post, post),
            Leg::Across(left) => Section::rectangle(post, inside(left, post)?),
            Leg::Quarter(left) => Section::rectangle(inside(left, post)?, inside(left, post)?),
            Leg::Ell(left) => ell(inside(left, post)?, post),
        }
    }
}

/// What a notch so deep leaves across a post; nothing where it is as deep as the post, and a leg of nothing is refused.
pub fn left_by(notch: &Fig, post: &Fig) -> Fig {
    let nothing = || Fig::length(Length::ZERO, notch.why().clone());
    by(RowId::NotchLeft, &[(RowId::PostWidth, post), (RowId::NotchDepth, notch)]).unwrap_or_else(nothing)
}

fn inside<'a>(left: &'a Fig, post: &Fig) -> Result<&'a Fig, Refused> {
    let fits = left.as_q() > Q::from_integer(0) && left.as_q() <= post.as_q();
    if fits { Ok(left) } else { Err(Refused::NothingLeft) }
}

/// An L with both arms `left` thick, its full faces on the axes.
fn ell(left: &Fig, post: &Fig) -> Result<Section, Refused> {
    let (zero, a, t) = (Q::from_integer(0), post.as_q(), left.as_q());
    let made_of = vec![("post", post.clone()), ("left of each arm", left.clone())];
    Section::of(&[(zero, zero), (a, zero), (a, t), (t, t), (t, a), (zero, a)], made_of)
}
