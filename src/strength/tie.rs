//! The pull on a post's upper bolt.

use super::Refused;
use super::beam::top_load;
use super::number::Num;
use crate::figure::{Fig, Unit, Why};
use crate::limits;
use crate::measure::Q;

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
    /// The bolts as the guide draws them, under a guard so high: decking 1 in., the upper bolt 2
    /// down the rim, the lower one 5 below it.
    pub fn as_drawn(height: Fig) -> Tie {
        let drawn = |l: &'static limits::Limit| Fig::length(l.length(), Why::Default(l));
        let (decking, edge) = (drawn(&limits::DECKING), drawn(&limits::BOLT_EDGE));
        Tie { height, decking, edge, apart: drawn(&limits::BOLTS_APART) }
    }

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

/// The load an even load along the guard's top brings to a post between two bays, in pounds.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn even_load(per_foot: &Fig, spacing: &Fig) -> Result<Fig, Refused> {
    let load = Num::fig(per_foot) * Num::fig(spacing) / Num::whole(12);
    let from = vec![("load to the foot", per_foot.clone()), ("post spacing", spacing.clone())];
    load.quantity(Unit::Pounds, "load to the foot times the post spacing", from)
}
