//! The pull on a post's upper bolt.

use super::beam::top_load;
use super::post::arm_to_bolt;
use super::{Judged, Refused};
use crate::figure::{Fig, Unit, Why};
use crate::limits;
use crate::measure::Q;
use crate::quantity::RowId;
use crate::solve::{by, habit};

/// A post bolted through the rim with two bolts, one over the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Tie {
    /// The guard's height above the decking.
    pub height: Fig,
    /// The decking's thickness.
    pub decking: Fig,
    /// From the rim's top down to the upper bolt.
    pub edge: Fig,
    /// The bolts' spacing.
    pub apart: Fig,
}

impl Tie {
    /// The pull on the upper bolt, in pounds: moments about the lower one.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn pull(&self) -> Result<Fig, Refused> {
        self.force(RowId::BoltPull)
    }

    /// The push of the lower bolt, in pounds: moments about the upper one.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn push(&self) -> Result<Fig, Refused> {
        self.force(RowId::BoltPush)
    }

    /// True where the pull is far over what the hold-down is good for.
    pub fn is_far(&self, pull: &Judged) -> bool {
        pull.ratio.as_q() * Q::from_integer(10) > Q::from_integer(i128::from(limits::FAR_OVER.value))
    }

    /// True where the bolts stand closer together than the guide shows.
    pub fn is_close(&self) -> bool {
        self.apart.as_length() < Some(habit(&limits::BOLT_ROWS_LEAST))
    }

    fn force(&self, row: RowId) -> Result<Fig, Refused> {
        let arm = arm_to_bolt(&self.height, &self.decking, &self.edge)?;
        let from = [(RowId::Push, &top_load()), (RowId::PostArm, &arm), (RowId::BoltsApart, &self.apart)];
        by(row, &from).ok_or(Refused::PastNumbers)
    }
}

/// The bolts' spacing in a rim so deep, each bolt `edge` from its edges, and no more than the most.
///
/// # Errors
/// [`Refused::RimTooShallow`] where no spacing is left.
pub fn apart_in(rim: &Fig, edge: &Fig, most: &Fig) -> Result<Fig, Refused> {
    let rows = [(RowId::RimTall, rim), (RowId::BoltEdge, edge), (RowId::BoltsMost, most)];
    by(RowId::BoltsApart, &rows).ok_or(Refused::RimTooShallow)
}

/// The published tension of the hold-down at the upper bolt, in pounds.
pub fn hold_down() -> Fig {
    let pounds = Q::from_integer(i128::from(limits::HOLD_DOWN.value));
    Fig::quantity(pounds, Unit::Pounds, Why::Limit(&limits::HOLD_DOWN))
}
