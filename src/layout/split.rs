//! Parting a span between two fixed posts into equal clear bays.

use super::{Lack, Limits};

use crate::measure::{Length, Q, Tape};
use num_rational::Ratio;

/// More bays than any run has room for: the search stops here.
const MOST_BAYS: u16 = 250;

/// A place with a width: a post, or a wall without one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub near: Length,
    pub width: Length,
    pub post: bool,
}

impl Place {
    pub fn far(self) -> Length {
        self.near + self.width
    }

    pub fn centre(self) -> Length {
        self.near + self.width / 2
    }
}

/// The space between two fixed places, with the line posts' width.
#[derive(Clone, Copy, Debug)]
pub(super) struct Span {
    pub left: Place,
    pub right: Place,
    pub line: Length,
    /// The tape's origin; places less this are what is read off it.
    pub origin: Length,
}

impl Span {
    pub fn clear(&self) -> Length {
        self.right.near - self.left.far()
    }

    /// The clear of each of `n` equal bays; `None` where the line posts leave no room.
    pub fn each(&self, n: u16) -> Option<Length> {
        let n = i64::from(n);
        let each = (self.clear() - self.line * (n - 1)) / n.max(1);
        (n > 0 && each.is_positive()).then_some(each)
    }

    /// Line post `k` of `n - 1`, its place as one expression from the span's start.
    pub fn line_post(&self, n: u16, k: u16) -> Place {
        let (n, k) = (i64::from(n), i64::from(k));
        let part: Q = Ratio::new(i128::from(k), i128::from(n));
        let clears = (self.clear() - self.line * (n - 1)).times(part).unwrap_or(Length::ZERO);
        Place { near: self.left.far() + clears + self.line * (k - 1), width: self.line, post: true }
    }

    /// Every place from the left one to the right one, in order.
    pub fn places(&self, n: u16) -> impl Iterator<Item = Place> {
        (0..=n).map(move |k| match k {
            0 => self.left,
            k if k == n => self.right,
            k => self.line_post(n, k),
        })
    }

    /// The fewest bays that pass no limit exactly, then the fewest that pass none on
    /// the tape either. `None` where no count does.
    pub fn fewest(&self, limits: &Limits, tape: Tape) -> Option<Fewest> {
        let exact = (1..=MOST_BAYS).take_while(|n| self.each(*n).is_some()).find(|n| self.holds(*n, limits, None))?;
        let taped = (exact..=MOST_BAYS)
            .take_while(|n| self.each(*n).is_some())
            .find(|n| self.holds(*n, limits, None) && self.holds(*n, limits, Some(tape)))?;
        Some(Fewest { exact, taped })
    }

    /// True when no bay of `n` passes a limit, exactly and on the tape.
    pub fn passes(&self, n: u16, limits: &Limits, tape: Tape) -> bool {
        self.each(n).is_some() && self.holds(n, limits, None) && self.holds(n, limits, Some(tape))
    }

    /// True when no bay of `n` passes a limit: exactly, or by the marks read on a tape
    /// (the centre limit by centre marks, the clear limit by near-face marks).
    fn holds(&self, n: u16, limits: &Limits, tape: Option<Tape>) -> bool {
        let mut before = None;
        self.places(n).all(|place| {
            let read = self.read(place, tape);
            let held = before.is_none_or(|(centre, far): (Length, Length)| limits.allow(read.0 - centre, read.1 - far));
            before = Some((read.0, read.1 + place.width));
            held
        })
    }

    /// A place's centre and near face, from the origin.
    fn read(&self, place: Place, tape: Option<Tape>) -> (Length, Length) {
        let (centre, near) = (place.centre() - self.origin, place.near - self.origin);
        match tape.filter(|_| place.post) {
            Some(tape) => (tape.round(centre), tape.round(near)),
            None => (centre, near),
        }
    }
}

/// Fewest bays, exactly and on the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Fewest {
    pub exact: u16,
    pub taped: u16,
}

/// Shares a told bay count between spans so that the longest bay is as short as can
/// be. Where spans tie for the last bay, nobody can say which gets it.
pub(super) fn share(told: u16, spans: &[Span]) -> Result<Vec<u16>, Lack> {
    let mut counts = vec![1_u16; spans.len()];
    let mut left = usize::from(told).checked_sub(spans.len()).ok_or(Lack::BaySplit)?;
    while left > 0 {
        let each: Vec<_> = spans.iter().zip(&counts).map(|(s, n)| s.each(*n).unwrap_or(Length::ZERO)).collect();
        let longest = each.iter().max().copied().ok_or(Lack::BaySplit)?;
        let ties: Vec<usize> = (0..each.len()).filter(|i| each[*i] == longest).collect();
        if ties.len() > left {
            return Err(Lack::BaySplit);
        }
        left -= ties.len();
        ties.iter().for_each(|i| counts[*i] += 1);
    }
    Ok(counts)
}
