//! So many balusters with equal gaps, and the gaps their marks leave.

use super::{Opening, Start};
use crate::measure::{Length, Q};
use num_rational::Ratio;

/// So many balusters, evenly spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    opening: Opening,
    count: u32,
    gap: Length,
}

/// Why balusters cannot be spread so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSpread {
    /// They leave no room for a gap.
    TooMany,
    /// Fewer than two cannot stand tight to two posts.
    TooFew,
    /// No opening, or balusters of no width.
    Nothing,
}

impl Spread {
    /// `count` balusters in the opening, all gaps equal:
    /// (clear - count x baluster) / (count + 1), or / (count - 1) where one is tight to each post.
    pub fn of(opening: Opening, count: u32) -> Result<Spread, NoSpread> {
        if !opening.clear.is_positive() || !opening.baluster.is_positive() {
            return Err(NoSpread::Nothing);
        }
        let gaps = match opening.start {
            Start::Gap => i64::from(count) + 1,
            Start::Baluster if count >= 2 => i64::from(count) - 1,
            Start::Baluster => return Err(NoSpread::TooFew),
        };
        let gap = (opening.clear - opening.baluster * i64::from(count)) / gaps;
        if gap.is_positive() { Ok(Spread { opening, count, gap }) } else { Err(NoSpread::TooMany) }
    }

    /// The opening they stand in.
    pub fn opening(&self) -> &Opening {
        &self.opening
    }

    /// How many.
    pub fn count(&self) -> u32 {
        self.count
    }

    /// The equal gap, exactly.
    pub fn gap(&self) -> Length {
        self.gap
    }

    /// From one baluster to the same place on the next, exactly.
    pub fn pitch(&self) -> Length {
        self.gap + self.opening.baluster
    }

    /// Baluster `i`'s near face, exactly, from the first post's face.
    pub fn place(&self, i: u32) -> Length {
        let first = match self.opening.start {
            Start::Gap => self.gap,
            Start::Baluster => Length::ZERO,
        };
        first + self.pitch() * i64::from(i)
    }

    /// Baluster `i`'s mark: its exact place, rounded once.
    pub fn mark(&self, i: u32) -> Length {
        self.opening.tape.round(self.place(i))
    }

    /// Every mark, in order.
    pub fn marks(&self) -> impl Iterator<Item = Length> + '_ {
        (0..self.count).map(|i| self.mark(i))
    }

    /// Every gap as the marks leave it, from post to post; one of nothing beside a baluster
    /// that is tight to its post.
    pub fn gaps(&self) -> Vec<Length> {
        let mut end = Length::ZERO;
        let mut gaps = Vec::with_capacity(self.count as usize + 1);
        for mark in self.marks() {
            gaps.push(mark - end);
            end = mark + self.opening.baluster;
        }
        gaps.push(self.opening.built - end);
        gaps
    }

    /// The widest gap the marks leave.
    pub fn widest(&self) -> Length {
        self.gaps().into_iter().max().unwrap_or(self.gap)
    }

    /// True when every gap is under the limit, exactly and on the tape.
    pub fn passes(&self) -> bool {
        let limit = self.opening.limit;
        limit.allows(self.gap) && self.gaps().into_iter().all(|gap| limit.allows(gap))
    }

    /// A spacer block: the gap to the nearest tape mark.
    pub fn spacer(&self) -> Length {
        self.opening.tape.round(self.gap)
    }

    /// How far off the last baluster comes where the pitch is rounded and stepped off: more
    /// than nothing where it overshoots.
    pub fn drift(&self) -> Length {
        (self.opening.tape.round(self.pitch()) - self.pitch()) * i64::from(self.count)
    }

    /// The same balusters measured to be another width, on the same marks: the widest gap then.
    pub fn widest_with(&self, width: Length) -> Length {
        let by = self.opening.baluster - width;
        // On left-face marks a thinner one widens the gap after it; the first gap stays.
        self.gaps().into_iter().skip(1).map(|gap| gap + by).max().unwrap_or(self.gap)
    }

    /// The parts an inch is read to, as a number for words.
    pub fn parts(&self) -> Q {
        Ratio::from_integer(self.opening.tape.den())
    }
}
