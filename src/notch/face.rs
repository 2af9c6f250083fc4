//! The four faces of a foot, and what of each is cut away.

use super::cut::{Cut, Spot};
use super::shape::Hand;
use crate::measure::Length;

/// A face of a post, by where it looks, for someone on the deck looking out over the edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// Towards the deck.
    Deck,
    /// To the right.
    Right,
    /// Out.
    Out,
    /// To the left.
    Left,
}

impl Face {
    /// Round the post against the clock.
    pub const ALL: [Face; 4] = [Face::Deck, Face::Right, Face::Out, Face::Left];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Face::Deck => "deck-side face",
            Face::Right => "right-hand face",
            Face::Out => "outside face",
            Face::Left => "left-hand face",
        }
    }

    /// The face on that hand.
    pub fn on(hand: Hand) -> Face {
        match hand {
            Hand::Left => Face::Left,
            Hand::Right => Face::Right,
        }
    }

    /// How far a spot lies along this face from its left edge, looking straight at it;
    /// `None` off the face.
    fn along(self, cut: &Cut, (x, y): Spot) -> Option<Length> {
        let (a, b) = (cut.size.along / 2, cut.size.across / 2);
        match self {
            Face::Deck => (y == -b).then_some(x + a),
            Face::Right => (x == a).then_some(y + b),
            Face::Out => (y == b).then_some(a - x),
            Face::Left => (x == -a).then_some(b - y),
        }
    }

    /// How wide it is.
    pub fn width(self, cut: &Cut) -> Length {
        match self {
            Face::Deck | Face::Out => cut.size.along,
            Face::Right | Face::Left => cut.size.across,
        }
    }

    /// The stretches of this face that come off below the shoulder, from its left edge,
    /// looking straight at it.
    pub fn cut_away(self, cut: &Cut) -> Vec<(Length, Length)> {
        let mut found = Vec::new();
        for ring in &cut.off {
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                if let (Some(from), Some(to)) = (self.along(cut, *a), self.along(cut, *b)) {
                    found.push((from.min(to), from.max(to)));
                }
            }
        }
        found.sort();
        found
    }

    /// True where some of it comes off and some stays.
    pub fn is_partly_cut(self, cut: &Cut) -> bool {
        let gone: Length = self.cut_away(cut).into_iter().map(|(from, to)| to - from).sum();
        gone.is_positive() && gone < self.width(cut)
    }
}

/// The two neighbouring faces that show a cut best: both partly cut, else as far as they are.
pub fn telling(cut: &Cut) -> [Face; 2] {
    let score = |f: Face| u8::from(f.is_partly_cut(cut)) * 2 + u8::from(!f.cut_away(cut).is_empty());
    let pairs = (0..4).map(|k| [Face::ALL[k], Face::ALL[(k + 1) % 4]]);
    // Of pairs that show as much the first is taken: the deck side's before the outside's.
    pairs
        .rev()
        .max_by_key(|[a, b]| (score(*a).min(score(*b)), score(*a) + score(*b)))
        .unwrap_or([Face::Deck, Face::Right])
}
