//! The work a line may cost: counted, not timed, so that a line reads the same on any machine.

use std::cell::Cell;

/// The most work one line is given, in looks at an item: more than any line as people say them was seen to take (a
/// limit of this program's own).
pub const MOST: u64 = 2_500_000;

/// The work done on one line so far.
#[derive(Debug)]
pub struct Effort {
    spent: Cell<u64>,
    most: u64,
}

/// A line that would take more work than any line said by a person.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tangled;

impl Effort {
    /// Work for one line.
    pub fn new(most: u64) -> Effort {
        Effort { spent: Cell::new(0), most }
    }

    /// Counts so many looks.
    pub fn spend(&self, looks: usize) {
        self.spent.set(self.spent.get().saturating_add(u64::try_from(looks).unwrap_or(u64::MAX)));
    }

    /// How many looks were taken.
    pub fn spent(&self) -> u64 {
        self.spent.get()
    }

    /// True once the work is used up: what was read since is not all there is.
    pub fn is_over(&self) -> bool {
        self.spent.get() > self.most
    }
}
