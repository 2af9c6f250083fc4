//! What is to be cut, from what, and why it may not go.

use crate::measure::Length;
use rust_decimal::Decimal;

/// Pieces of one length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// How long each is, as the tape reads it.
    pub length: Length,
    /// How many.
    pub count: u32,
}

/// Where a stick comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Supply {
    /// Bought, as many as are wanted, at this price each where one was told.
    Yard(Option<Decimal>),
    /// So many on hand.
    OnHand(u32),
}

/// Sticks of one length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stick {
    /// How long.
    pub length: Length,
    /// Where from.
    pub supply: Supply,
}

/// One cutting job: pieces of one size of lumber.
#[derive(Clone, Debug, PartialEq)]
pub struct CutOrder {
    /// The pieces.
    pub wanted: Vec<Wanted>,
    /// The sticks.
    pub sticks: Vec<Stick>,
    /// What the saw takes between two pieces.
    pub kerf: Length,
}

/// Why nothing can be cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CannotCut {
    /// No piece is wanted.
    NothingWanted,
    /// There is no stick to cut from.
    NoStock,
    /// A piece is longer than every stick.
    TooLong {
        /// The piece.
        piece: Length,
        /// The longest stick.
        longest: Length,
    },
    /// The saw takes more than a stick, or less than nothing.
    Kerf(Length),
    /// What is on hand does not do, and nothing can be bought.
    NotEnough,
    /// More pieces, or longer sticks, than this reckons with.
    TooMuch,
}

impl CutOrder {
    /// The longest stick there is.
    pub fn longest(&self) -> Option<Length> {
        let some = |s: &&Stick| s.supply != Supply::OnHand(0);
        self.sticks.iter().filter(some).map(|s| s.length).max()
    }

    /// What stands in the way of any plan.
    pub(super) fn check(&self) -> Result<(), CannotCut> {
        if self.wanted.iter().all(|w| w.count == 0) {
            return Err(CannotCut::NothingWanted);
        }
        let longest = self.longest().filter(|l| l.is_positive()).ok_or(CannotCut::NoStock)?;
        if self.kerf < Length::ZERO || self.kerf >= longest {
            return Err(CannotCut::Kerf(self.kerf));
        }
        match self.wanted.iter().filter(|w| w.count > 0).map(|w| w.length).max() {
            Some(piece) if piece > longest => Err(CannotCut::TooLong { piece, longest }),
            _ => Ok(()),
        }
    }

    /// True where every stick that can be bought has a price: then money is what is least.
    pub fn priced(&self) -> bool {
        let mut bought = self.sticks.iter().filter(|s| matches!(s.supply, Supply::Yard(_))).peekable();
        bought.peek().is_some() && bought.all(|s| matches!(s.supply, Supply::Yard(Some(_))))
    }
}
