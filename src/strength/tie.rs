//! The pull on a post's upper bolt.

use super::beam::top_load;
use super::number::Num;
use super::{Judged, Refused};
use crate::figure::{Fig, Unit, Why};
use crate::limits;
use crate::measure::Q;
use crate::solve::habit;

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
        let arm = self.arm() + Num::fig(&self.apart);
        self.about(arm, "the pull on the upper bolt: the push times its arm to the lower bolt, over the bolts' spacing")
    }

    /// The push of the lower bolt, in pounds: moments about the upper one.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn push(&self) -> Result<Fig, Refused> {
        self.about(self.arm(), "the push at the lower bolt: the push times its arm to the upper bolt, over the spacing")
    }

    /// True where the pull is far over what the hold-down is good for.
    pub fn is_far(&self, pull: &Judged) -> bool {
        pull.ratio.as_q() * Q::from_integer(10) > Q::from_integer(i128::from(limits::FAR_OVER.value))
    }

    /// True where the bolts stand closer together than the guide shows.
    pub fn is_close(&self) -> bool {
        self.apart.as_length() < Some(habit(&limits::BOLT_ROWS_LEAST))
    }

    fn arm(&self) -> Num {
        Num::fig(&self.height) + Num::fig(&self.decking) + Num::fig(&self.edge)
    }

    fn about(&self, arm: Num, says: &'static str) -> Result<Fig, Refused> {
        let load = top_load();
        let force = Num::fig(&load) * arm / Num::fig(&self.apart);
        let from = vec![
            ("push", load),
            ("height", self.height.clone()),
            ("decking", self.decking.clone()),
            ("down to the upper bolt", self.edge.clone()),
            ("between the bolts", self.apart.clone()),
        ];
        force.quantity(Unit::Pounds, says, from)
    }
}

/// The bolts' spacing in a rim so deep, each bolt `edge` from its edges.
///
/// # Errors
/// [`Refused::RimTooShallow`] where no spacing is left.
pub fn apart_in(rim: &Fig, edge: &Fig) -> Result<Fig, Refused> {
    let apart = Num::fig(rim) - Num::whole(2) * Num::fig(edge);
    if apart.q()? <= Q::from_integer(0) {
        return Err(Refused::RimTooShallow);
    }
    apart.length(
        "the rim's depth less an edge distance at each bolt",
        vec![("rim", rim.clone()), ("edge", edge.clone())],
    )
}

/// The published tension of the hold-down at the upper bolt, in pounds.
pub fn hold_down() -> Fig {
    let pounds = Q::from_integer(i128::from(limits::HOLD_DOWN.value));
    Fig::quantity(pounds, Unit::Pounds, Why::Limit(&limits::HOLD_DOWN))
}
