//! Posts as they are judged: their size, and the push they bear.

use super::post::bending;
use super::section::Push;
use super::{Judged, Leg, Wood};
use crate::figure::{Fig, Why};
use crate::job::{Lie, PostRole, PostSize};
use crate::measure::Lumber;

/// Posts of one size that bear one push: a corner post any, the others outward and along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// The first of their roles.
    pub role: PostRole,
    /// Their size.
    pub size: PostSize,
}

impl Stand {
    /// True for corner posts.
    pub fn is_corner(&self) -> bool {
        self.role == PostRole::Corner
    }

    /// Their name.
    pub fn name(&self) -> &'static str {
        match self.role {
            PostRole::All | PostRole::Line => "line post",
            PostRole::Corner => "corner post",
            PostRole::End => "end post",
            PostRole::Gate => "gate post",
            PostRole::Stair => "stair post",
        }
    }

    /// The push that counts for one that is whole.
    pub fn push(&self) -> Push {
        if self.is_corner() { Push::Any } else { Push::Held }
    }

    /// Their lumber and its side, where the tables hold it and it is square.
    pub fn square(&self) -> Option<(Lumber, Fig)> {
        let PostSize::Lumber(size) = self.size else { return None };
        let (side, _) = size.dressed().filter(|_| size.is_square())?;
        Some((size, Fig::length(side, Why::Table("dressed dry size of the post", size.table()))))
    }

    /// The bending asked of them with this left at the foot, pushed at the end of an arm, beside what the wood is allowed; `None` where
    /// they are not judged, or the arm is none of a guard's.
    pub fn bent(&self, leg: &Leg, arm: &Fig, wood: &Wood) -> Option<Judged> {
        let (size, side) = self.square()?;
        let push = if *leg == Leg::Whole { self.push() } else { leg.push() };
        let asked = bending(&leg.section(&side).ok()?, push, arm).ok()?;
        Judged::of(asked, wood.bending(size, Lie::Edge).ok()?).ok()
    }
}
