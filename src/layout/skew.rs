//! A post at an angled corner that stands askew to its run: what it takes of the line, and
//! the bevel of what comes to its face.
//!
//! A post so wide, turned by `a` from the run, takes `width / cos(a)` of the line through
//! its center: a 4x4 that splits a 45-degree turn takes 3 1/2 / cos 22 1/2 = 3.788, so a rail
//! starts 1.894 from its center (plane geometry, no source).

use super::ground::Side;
use crate::figure::{Fig, Unit, Why};
use crate::job::{Turn, Turned};
use crate::measure::{Length, Q, half_tangent};

/// How far a post's nearest face is turned from square to its run: more than 0 and no more
/// than 45 degrees. At 45 the run comes to the post's corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Skew {
    /// In half degrees: half of a whole turn comes out even.
    halves: i32,
}

impl Skew {
    /// The skew of a corner's post to the run that comes to it (its finish) or goes on from
    /// it (its start). `None` where it stands square to it, or nobody said how it is turned.
    pub(super) fn at(turn: Option<Turn>, side: Side, turned: Option<Turned>) -> Option<Skew> {
        let degrees = match turn? {
            Turn::Right(d) | Turn::Left(d) => i32::from(d),
            Turn::Start | Turn::Free => return None,
        };
        let askew = match (turned.filter(|_| degrees % 90 != 0)?, side) {
            (Turned::Split, _) => degrees,
            (Turned::First, Side::Start) | (Turned::Next, Side::Finish) => degrees * 2,
            (Turned::First, Side::Finish) | (Turned::Next, Side::Start) => 0,
        };
        // Faces stand a quarter turn apart, 180 halves.
        let past = askew.rem_euclid(180);
        let halves = past.min(180 - past);
        (halves > 0).then_some(Skew { halves })
    }

    /// The angle a piece that comes to its face is cut at, in degrees off square.
    pub fn degrees(self) -> Q {
        Q::new(i128::from(self.halves), 2)
    }

    /// True where the run comes to the post's very corner, and a piece to two faces.
    pub fn is_arris(self) -> bool {
        self.halves == 90
    }

    /// What a post so wide takes of the line.
    pub fn takes(self, width: &Fig) -> Option<Fig> {
        let along = Length::diagonal(Length::inches(1), self.tangent()?)?;
        let takes = width.as_length()?.times(along.q())?.rounded(Length::CARRIED).inexact();
        let angle = Fig::quantity(self.degrees(), Unit::Degrees, Why::Told("how the post is turned"));
        let inputs = vec![("post", width.clone()), ("degrees from square to the run", angle)];
        Some(Fig::length(takes, Why::Formula("the post / cos(how far it is turned)", inputs)))
    }

    /// How much farther the long point of a piece so wide reaches than its middle.
    pub fn long_point(self, wide: Length) -> Option<Length> {
        Some((wide / 2).times(self.tangent()?.q())?.rounded(Length::CARRIED).inexact())
    }

    fn tangent(self) -> Option<Length> {
        Some(half_tangent(self.halves)?.rounded(Length::CARRIED))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use pretty_assertions::assert_eq;

    fn thousandths(l: Option<Length>) -> Option<Length> {
        l.map(|l| l.rounded(1_000))
    }

    /// 3 1/2 / cos 22 1/2 = 3.5 / 0.92388 = 3.788, half of it 1.894; a rail 1 1/2 wide reaches
    /// 0.75 x tan 22 1/2 = 0.75 x 0.41421 = 0.311 farther at its long edge.
    #[test]
    fn a_post_that_splits_a_turn() {
        let skew = Skew::at(Some(Turn::Right(45)), Side::Start, Some(Turned::Split)).expect("askew");
        let post = Fig::told(Length::sixteenths(56), "the post");
        let takes = skew.takes(&post).and_then(|f| f.as_length());
        assert_eq!(thousandths(takes.map(|l| l / 2)), Length::new(1_894, 1_000));
        assert_eq!(thousandths(skew.long_point(Length::sixteenths(24))), Length::new(311, 1_000));
        assert_eq!(skew.degrees(), Q::new(45, 2));
        assert_eq!(skew, Skew::at(Some(Turn::Left(45)), Side::Finish, Some(Turned::Split)).expect("askew"));
    }

    /// Square to one side, the other comes to its corner: 3 1/2 x root 2 = 4.950, half 2.475.
    #[test]
    fn a_post_square_to_one_side() {
        let at = |side, turned| Skew::at(Some(Turn::Right(45)), side, Some(turned));
        assert_eq!(at(Side::Finish, Turned::First), None);
        assert_eq!(at(Side::Start, Turned::Next), None);
        for (side, turned) in [(Side::Start, Turned::First), (Side::Finish, Turned::Next)] {
            let skew = at(side, turned).expect("askew");
            let takes = skew.takes(&Fig::told(Length::sixteenths(56), "the post")).and_then(|f| f.as_length());
            assert!(skew.is_arris());
            assert_eq!(thousandths(takes.map(|l| l / 2)), Length::new(2_475, 1_000));
        }
        // At a right angle, or where nobody said, it stands square.
        assert_eq!(Skew::at(Some(Turn::Right(90)), Side::Start, Some(Turned::Split)), None);
        assert_eq!(Skew::at(Some(Turn::Right(45)), Side::Start, None), None);
        // 60 degrees off one face is 30 off the next.
        assert_eq!(
            Skew::at(Some(Turn::Right(60)), Side::Start, Some(Turned::First)).map(Skew::degrees),
            Some(Q::from_integer(30))
        );
    }
}
