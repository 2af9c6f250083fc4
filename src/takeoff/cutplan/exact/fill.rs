//! The best filling of a stick: a knapsack with so many of each item, for every stick at once.

use super::instance::{Instance, Pattern};

/// A worth that can be added up and compared.
pub trait Worth: Copy + PartialOrd + std::ops::Add<Output = Self> {
    /// Nothing.
    const NONE: Self;
    /// So many times the worth.
    fn times(self, n: u32) -> Self;
}

impl Worth for f64 {
    const NONE: f64 = 0.0;
    fn times(self, n: u32) -> f64 {
        self * f64::from(n)
    }
}

impl Worth for i64 {
    const NONE: i64 = 0;
    fn times(self, n: u32) -> i64 {
        self * i64::from(n)
    }
}

/// The best fillings for every capacity up to the longest stick.
pub struct Fillings<W> {
    /// `best[c]`: the most worth in `c` ticks.
    best: Vec<W>,
    /// `taken[i * caps + c]`: how many of item `i` the best filling of items up to `i` takes.
    taken: Vec<u8>,
    caps: usize,
}

impl<W: Worth> Fillings<W> {
    /// Fills every capacity with at most `most[i]` of item `i`, each worth `worth[i]`. Items
    /// worth nothing are left out.
    pub fn of(instance: &Instance, worth: &[W], most: &[u32]) -> Fillings<W> {
        let caps = instance.longest() as usize + 1;
        let mut all = Fillings { best: vec![W::NONE; caps], taken: vec![0; caps * instance.items.len()], caps };
        for (i, item) in instance.items.iter().enumerate() {
            if worth[i] > W::NONE && most[i] > 0 {
                all.add(i, item.len as usize, worth[i], most[i].min(u32::from(u8::MAX)));
            }
        }
        all
    }

    fn add(&mut self, i: usize, len: usize, worth: W, most: u32) {
        for cap in (len..self.caps).rev() {
            let (mut best, mut count) = (self.best[cap], 0_u8);
            for n in 1..=most.min((cap / len) as u32) {
                let with = self.best[cap - len * n as usize] + worth.times(n);
                if with > best {
                    (best, count) = (with, n as u8);
                }
            }
            self.best[cap] = best;
            self.taken[i * self.caps + cap] = count;
        }
    }

    /// The most worth a stick of this capacity holds.
    pub fn worth(&self, cap: u32) -> W {
        self.best[cap as usize]
    }

    /// The filling that has it.
    pub fn pattern(&self, instance: &Instance, bin: usize) -> Pattern {
        let mut cap = instance.bins[bin].cap as usize;
        let mut cuts = vec![0; instance.items.len()];
        for i in (0..cuts.len()).rev() {
            let n = self.taken[i * self.caps + cap];
            cuts[i] = u32::from(n);
            cap -= usize::from(n) * instance.items[i].len as usize;
        }
        Pattern { bin, cuts }
    }
}
