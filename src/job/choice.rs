//! Where posts are wanted, or not wanted, in place of plain even bays.

use super::{Impossible, RunId, SlotId};
use crate::measure::Length;

/// Which end of a run a place is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EndOf {
    /// The from-end.
    From,
    /// The to-end.
    To,
}

impl EndOf {
    /// The other end.
    pub fn other(self) -> EndOf {
        match self {
            EndOf::From => EndOf::To,
            EndOf::To => EndOf::From,
        }
    }
}

/// A place along a run: so far, in inches, from what a tape hooks on at that end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// How far.
    pub at: Length,
    /// From which end.
    pub end: EndOf,
}

/// What posts are kept clear of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Thing {
    /// What stands at an end of the run.
    End(EndOf),
    /// The stairs in the run or at its end.
    Stairs,
    /// The gate in the run or at its end.
    Gate,
    /// A place along the run: a door, a light, whatever stands there.
    Spot(Spot),
}

/// No line post nearer to a thing than so much, in inches, face to thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeepOff {
    /// How much.
    pub by: Length,
    /// What of.
    pub of: Thing,
}

/// One thing told about where a run's posts go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Choice {
    /// A post with its centre there.
    Post(Spot),
    /// No longer a post there.
    NoPost(Spot),
    /// No post at a told place any more.
    NoPosts,
    /// Posts mirrored about the opening in the run, or about its middle; or no longer.
    Mirrored(bool),
    /// Line posts kept clear of a thing.
    KeepOff(KeepOff),
    /// Line posts kept clear of nothing any more.
    NoKeepOff,
}

/// The choices in force on one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Choices {
    /// Places told for posts, in the order told.
    pub posts: Vec<Spot>,
    /// Posts mirrored.
    pub mirrored: bool,
    /// What line posts are kept clear of.
    pub keep_off: Vec<KeepOff>,
}

impl Choices {
    /// Takes one choice in; the last told wins.
    ///
    /// # Errors
    /// A length outside its slot's range, or a post taken away where none was told.
    pub(super) fn take(&mut self, run: RunId, choice: Choice) -> Result<(), Impossible> {
        match choice {
            Choice::Post(spot) => {
                in_range(SlotId::PostAt, spot.at)?;
                self.posts.retain(|p| *p != spot);
                self.posts.push(spot);
            }
            Choice::NoPost(spot) => {
                let at = self.posts.iter().position(|p| *p == spot);
                self.posts.remove(at.ok_or(Impossible::NoPostThere { run, at: spot.at })?);
            }
            Choice::NoPosts => self.posts.clear(),
            Choice::Mirrored(yes) => self.mirrored = yes,
            Choice::KeepOff(keep) => {
                in_range(SlotId::KeepOff, keep.by)?;
                if let Thing::Spot(spot) = keep.of {
                    in_range(SlotId::PostAt, spot.at)?;
                }
                self.keep_off.retain(|k| k.of != keep.of);
                self.keep_off.push(keep);
            }
            Choice::NoKeepOff => self.keep_off.clear(),
        }
        Ok(())
    }

    /// The choices that make these, told from nothing.
    pub fn retold(&self) -> Vec<Choice> {
        let posts = self.posts.iter().copied().map(Choice::Post);
        let mirrored = self.mirrored.then_some(Choice::Mirrored(true));
        posts.chain(mirrored).chain(self.keep_off.iter().copied().map(Choice::KeepOff)).collect()
    }

    /// Every told place must lie on the run.
    pub(super) fn check(&self, length: Length) -> Result<(), Impossible> {
        match self.posts.iter().find(|p| p.at > length) {
            Some(off) => Err(Impossible::PostOffRun { at: off.at, run: length }),
            None => Ok(()),
        }
    }
}

fn in_range(slot: SlotId, l: Length) -> Result<(), Impossible> {
    if slot.takes(l) { Ok(()) } else { Err(Impossible::OutOfRange(slot, l)) }
}
