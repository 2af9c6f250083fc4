//! What is to be cut from what, in whole ticks.

/// Pieces of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Item {
    /// Its length and one kerf, in ticks.
    pub len: u32,
    /// How many are wanted.
    pub want: u32,
}

/// Sticks of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bin {
    /// Its length and one kerf, in ticks.
    pub cap: u32,
    /// What one costs; nothing for one that is on hand.
    pub cost: u64,
    /// How many there are; `None` for as many as are wanted.
    pub most: Option<u32>,
}

/// A cutting problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instance {
    /// The pieces, longest first, each length once.
    pub items: Vec<Item>,
    /// The sticks.
    pub bins: Vec<Bin>,
}

/// One way to cut one stick.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pattern {
    /// Which stick, by its place in [`Instance::bins`].
    pub bin: usize,
    /// How many of each item.
    pub cuts: Vec<u32>,
}

impl Instance {
    /// How many pieces are wanted.
    pub fn pieces(&self) -> u64 {
        self.items.iter().map(|i| u64::from(i.want)).sum()
    }

    /// How many of each item are wanted.
    pub fn wants(&self) -> Vec<u32> {
        self.items.iter().map(|i| i.want).collect()
    }

    /// The greatest stick.
    pub fn longest(&self) -> u32 {
        self.bins.iter().map(|b| b.cap).max().unwrap_or(0)
    }

    /// The room a pattern takes.
    pub fn used(&self, pattern: &Pattern) -> u64 {
        self.items.iter().zip(&pattern.cuts).map(|(item, n)| u64::from(item.len) * u64::from(*n)).sum()
    }

    /// What a plan costs.
    pub fn cost(&self, plan: &[(Pattern, u32)]) -> u64 {
        plan.iter().map(|(p, times)| self.bins[p.bin].cost * u64::from(*times)).sum()
    }

    /// True where a plan cuts every piece exactly once, overfills no stick and takes no more
    /// sticks than there are.
    pub fn holds(&self, plan: &[(Pattern, u32)]) -> bool {
        let fits = plan.iter().all(|(p, _)| self.used(p) <= u64::from(self.bins[p.bin].cap));
        let cut = |i: usize| plan.iter().map(|(p, times)| p.cuts[i] * times).sum::<u32>();
        let taken = |k: usize| plan.iter().filter(|(p, _)| p.bin == k).map(|(_, times)| times).sum::<u32>();
        fits && (0..self.items.len()).all(|i| cut(i) == self.items[i].want)
            && (0..self.bins.len()).all(|k| self.bins[k].most.is_none_or(|most| taken(k) <= most))
    }
}
