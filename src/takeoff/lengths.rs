//! How long a part is cut, from what it stands between.

use super::bays::Bevels;
use crate::figure::Fig;
use crate::job::Lie;
use crate::layout::Skew;
use crate::measure::{Length, Lumber, Q, half_tangent};
use crate::stairs::Rake;

/// A rail between two posts: the clear, less what each end is cut short for its bracket.
/// `None` where nothing is left.
pub fn rail(clear: Length, each_end: Length) -> Option<Length> {
    Some(clear - each_end * 2).filter(|l| l.is_positive())
}

/// As [`rail`], between posts that stand askew: its long point to its long point, where it
/// is so wide seen from above. `clear` is taken along its middle.
pub fn bevelled_rail(clear: Length, each_end: Length, bevels: Bevels, wide: Length) -> Option<Length> {
    let past = |skew: &Skew| skew.long_point(wide);
    let past: Option<Vec<Length>> = bevels.iter().flatten().map(past).collect();
    rail(clear + past?.into_iter().sum(), each_end)
}

/// How much height a member takes: its thickness lying flat, its width on edge. `None` for
/// lumber the size table does not hold.
pub fn depth(size: Lumber, lay: Lie) -> Option<Length> {
    let (thick, wide) = size.dressed()?;
    Some(if lay == Lie::Flat { thick } else { wide })
}

/// The members a baluster's length depends on, in height; nothing for one that is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stack {
    /// From the walking surface to the top of all.
    pub height: Length,
    /// Under the bottom rail.
    pub gap_under: Length,
    /// The cap's thickness.
    pub cap: Length,
    /// The top rail's depth.
    pub top: Length,
    /// The bottom rail's depth.
    pub bottom: Length,
}

impl Stack {
    /// A baluster that stands between the rails: what the others leave of the height.
    pub fn between(&self) -> Option<Length> {
        Some(self.on_faces()? - self.top - self.bottom).filter(|l| l.is_positive())
    }

    /// A baluster on the rails' faces, flush with the top rail's top and the bottom rail's
    /// underside.
    pub fn on_faces(&self) -> Option<Length> {
        Some(self.height - self.gap_under - self.cap).filter(|l| l.is_positive())
    }
}

/// The stick for a rail down a stair, plumb-cut at both ends: what its edge measures along the slope, and
/// its depth times rise over tread, since its two long points lie on opposite edges.
pub fn rake_rail(rake: &Rake, clear: Length, deep: Length) -> Option<Length> {
    let told = |l| Fig::told(l, "the rail");
    let edge = rake.along(&told(clear)).as_length()?;
    edge.plus(rake.drop(&told(deep)).as_length()?)
}

/// The stick for a baluster on the rake: its plumb length and its width times rise over
/// tread, both ends on the same bevel.
pub fn rake_baluster(plumb: Length, width: Length, rise: Length, tread: Length) -> Option<Length> {
    plumb.plus(width.times(rise.ratio(tread)?)?)
}

/// How one end of a cap is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CapEnd {
    /// Square, so far past the end of the line it is told by; below nothing, short of it.
    Square(Length),
    /// Mitred at a corner that turns by so many degrees: each piece is cut at half the turn.
    Mitre(u16),
}

/// A cap, centred on a line so long: its long point to its long point. Half its width times
/// the tangent of half the turn is added at a mitre. Inexact but at a square corner.
pub fn cap(line: Length, width: Length, ends: [CapEnd; 2]) -> Option<Length> {
    let mut length = line;
    for end in ends {
        length = length.plus(match end {
            CapEnd::Square(past) => past,
            CapEnd::Mitre(turn) => past_mitre(width, turn)?,
        })?;
    }
    Some(length)
}

/// What the long point of a piece so wide reaches past the corner of its line: half its
/// width times the tangent of half the turn.
pub(super) fn past_mitre(width: Length, turn: u16) -> Option<Length> {
    let tangent = half_tangent(i32::from(turn))?;
    let past = (width / 2).times(tangent.q())?;
    Some(if tangent.is_exact() { past } else { past.inexact() })
}

/// The angle a mitre is cut at, in degrees: half the turn.
pub fn mitre(turn: u16) -> Q {
    Q::new(i128::from(turn), 2)
}
