//! How long a part is cut, from what it stands between.

use super::bays::Bevels;
use crate::figure::Fig;
use crate::job::Lie;
use crate::layout::Skew;
use crate::measure::{Length, Lumber, half_tangent};
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
    lay.depth(size)
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

#[cfg(test)]
mod tests {
    use super::*;

    fn l(num: i128, den: i128) -> Length {
        Length::new(num, den).expect("small")
    }

    /// 68 1/2 clear, 1/4 off each of its two ends: 68.
    #[test]
    fn a_rail_is_cut_short_at_both_ends() {
        assert_eq!(rail(l(137, 2), l(1, 4)), Some(l(68, 1)));
        assert_eq!(rail(l(1, 2), l(1, 4)), None, "nothing is left of it");
    }

    /// A 2x6 cap is 5 1/2 wide (PS 20). At a square corner its long point lies half its width, 2 3/4, past the
    /// line: 120 and one miter 122 3/4, two 125 1/2. At 45 degrees it is 2 3/4 x tan 22.5 = 2 3/4 x 0.41421356 =
    /// 1.1390873 past. Held 1 3/4 past a square end instead: 120 + 1 3/4 + 2 3/4 = 124 1/2.
    #[test]
    fn a_cap_reaches_past_its_line_at_a_miter() {
        let of = |ends| cap(l(120, 1), l(11, 2), ends).expect("small");
        let square = CapEnd::Square(Length::ZERO);
        assert_eq!(of([square, CapEnd::Mitre(90)]), l(491, 4));
        assert_eq!(of([CapEnd::Mitre(90), CapEnd::Mitre(90)]), l(251, 2));
        assert_eq!(of([CapEnd::Square(l(7, 4)), CapEnd::Mitre(90)]), l(249, 2));
        let angled = of([square, CapEnd::Mitre(45)]);
        let (least, most) = (l(121_139_080, 1_000_000), l(121_139_094, 1_000_000));
        assert!(!angled.is_exact() && least < angled && angled < most, "{angled:?}");
    }

    /// 36 to the top, 3 under, a 1 1/2 cap, 1 1/2 rails lying flat: on the rails' faces
    /// 36 - 3 - 1 1/2 = 31 1/2; between them 1 1/2 and 1 1/2 less, 28 1/2.
    #[test]
    fn what_the_cap_takes_no_baluster_has() {
        let flat = l(3, 2);
        let stack = Stack { height: l(36, 1), gap_under: l(3, 1), cap: flat, top: flat, bottom: flat };
        assert_eq!((stack.on_faces(), stack.between()), (Some(l(63, 2)), Some(l(57, 2))));
    }
}
