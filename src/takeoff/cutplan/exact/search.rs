//! Looks through every plan of one total cost, or shows there is none.
//!
//! At the proof's prices every stick is paid for by its pieces but for its *waste*: what it
//! costs less what its pieces are worth, and for one on hand what the bound counts on it for.
//! A plan's waste adds up to its cost less the bound, so
//! only patterns wasting no more than that need be looked at, and a branch is left as soon as
//! its waste is more. Sticks are in no order: the longest piece still wanted is cut next, and
//! what was wanted where a branch ended dead is remembered, so that no other order is tried.

use super::bound::{FINE, Proof};
use super::dominance::undominated;
use super::greedy::Plan;
use super::instance::{Instance, Pattern};
use crate::takeoff::cutplan::Patience;
use std::collections::HashMap;

/// More patterns than this are not looked through.
const MOST_PATTERNS: usize = 60_000;
/// More dead ends than this are not remembered.
const MOST_REMEMBERED: usize = 400_000;

/// What a search found.
pub enum Found {
    /// A plan of that cost or less.
    Plan(Plan),
    /// There is none.
    None,
    /// It was left before all was looked at.
    Left,
}

/// Looks for a plan that costs `target` or less.
pub fn search(instance: &Instance, proof: &Proof, target: u64, patience: &mut dyn Patience) -> Found {
    let slack = i128::from(target) * i128::from(FINE) - proof.least;
    let Ok(slack) = i64::try_from(slack) else { return Found::Left };
    if slack < 0 {
        return Found::None;
    }
    let Some(patterns) = Patterns::wasting(instance, proof, slack, patience) else { return Found::Left };
    let mut look = Look {
        instance,
        proof,
        patterns: &patterns,
        patience,
        wants: instance.wants(),
        left: instance.bins.iter().map(|b| b.most).collect(),
        plan: Vec::new(),
        dead: HashMap::new(),
        stopped: false,
    };
    match (look.from(slack), look.stopped) {
        (true, _) => Found::Plan(look.plan.into_iter().map(|p| (p, 1)).collect()),
        (false, true) => Found::Left,
        (false, false) => Found::None,
    }
}

/// The patterns no further piece fits.
struct Patterns {
    all: Vec<Pattern>,
    /// For each item, the patterns that hold it with their waste, the least first.
    with: Vec<Vec<(i64, usize)>>,
}

struct Making<'a> {
    instance: &'a Instance,
    proof: &'a Proof,
    wants: Vec<u32>,
    /// `most_worth[i][c]`: the most that items from `i` on are worth in `c` ticks.
    most_worth: Vec<Vec<i64>>,
    made: Vec<(i64, Pattern)>,
}

impl Patterns {
    /// `None` where there are too many.
    fn wasting(instance: &Instance, proof: &Proof, slack: i64, patience: &mut dyn Patience) -> Option<Patterns> {
        let wants = instance.wants();
        let most_worth = most_worth(instance, &proof.prices, &wants);
        let mut making = Making { instance, proof, wants, most_worth, made: Vec::new() };
        for bin in 0..instance.bins.len() {
            let costs = i64::try_from(instance.bins[bin].cost).ok()?.checked_mul(FINE)?;
            let mut cuts = vec![0; making.wants.len()];
            let (cap, owed) = (instance.bins[bin].cap, costs + proof.rents[bin]);
            if !making.go(bin, 0, cap, owed, slack, &mut cuts, patience) {
                return None;
            }
        }
        making.made.sort();
        let holding = |i: usize| {
            let made = making.made.iter().enumerate();
            made.filter(|(_, (_, p))| p.cuts[i] > 0).map(|(k, (waste, _))| (*waste, k)).collect()
        };
        let with = (0..making.wants.len()).map(holding).collect();
        Some(Patterns { with, all: making.made.into_iter().map(|(_, p)| p).collect() })
    }
}

/// For each item, the most that it and the shorter ones are worth in every capacity.
fn most_worth(instance: &Instance, prices: &[i64], wants: &[u32]) -> Vec<Vec<i64>> {
    let caps = instance.longest() as usize + 1;
    let mut rows = vec![vec![0_i64; caps]];
    for i in (0..wants.len()).rev() {
        let (len, shorter) = (instance.items[i].len as usize, &rows[rows.len() - 1]);
        let best = |cap: usize| {
            let most = (cap / len).min(wants[i] as usize);
            (0..=most).map(|n| shorter[cap - n * len] + prices[i] * n as i64).max().unwrap_or(0)
        };
        let row = (0..caps).map(best).collect();
        rows.push(row);
    }
    rows.reverse();
    rows
}

impl Making<'_> {
    /// Adds items from `i` on to `cuts`; `owed` is what the stick still has to be worth. False
    /// where there are too many patterns.
    #[allow(clippy::too_many_arguments)]
    fn go(
        &mut self,
        bin: usize,
        i: usize,
        cap: u32,
        owed: i64,
        slack: i64,
        cuts: &mut Vec<u32>,
        patience: &mut dyn Patience,
    ) -> bool {
        if owed - self.most_worth[i][cap as usize] > slack {
            return true;
        }
        let Some(item) = self.instance.items.get(i) else {
            return self.keep(bin, cap, owed, cuts, patience);
        };
        let most = (cap / item.len).min(self.wants[i]);
        for n in (0..=most).rev() {
            cuts[i] = n;
            let paid = self.proof.prices[i] * i64::from(n);
            if !self.go(bin, i + 1, cap - n * item.len, owed - paid, slack, cuts, patience) {
                return false;
            }
        }
        cuts[i] = 0;
        true
    }

    /// Keeps a pattern that no further piece fits.
    fn keep(&mut self, bin: usize, cap: u32, waste: i64, cuts: &[u32], patience: &mut dyn Patience) -> bool {
        let items = self.instance.items.iter();
        let fits = items.zip(cuts).zip(&self.wants).any(|((item, n), want)| item.len <= cap && n < want);
        if !fits && cuts.iter().any(|n| *n > 0) {
            self.made.push((waste, Pattern { bin, cuts: cuts.to_vec() }));
        }
        self.made.len() <= MOST_PATTERNS && !patience.spent(1)
    }
}

struct Look<'a> {
    instance: &'a Instance,
    proof: &'a Proof,
    patterns: &'a Patterns,
    patience: &'a mut dyn Patience,
    wants: Vec<u32>,
    left: Vec<Option<u32>>,
    plan: Vec<Pattern>,
    /// What was wanted and left where no plan was found, and with how much waste to spare.
    dead: HashMap<(Vec<u32>, Vec<Option<u32>>), i64>,
    stopped: bool,
}

impl Look<'_> {
    /// True once a plan is found that wastes no more than `slack` from here on.
    fn from(&mut self, slack: i64) -> bool {
        let Some(next) = self.wants.iter().position(|w| *w > 0) else { return self.unused() <= slack };
        let key = (self.wants.clone(), self.left.clone());
        if self.dead.get(&key).is_some_and(|tried| *tried >= slack) {
            return false;
        }
        for (waste, pattern) in self.ways(next, slack) {
            if self.stopped {
                return false;
            }
            if self.take(pattern, slack - waste) {
                return true;
            }
        }
        if self.stopped {
            return false;
        }
        if self.dead.len() < MOST_REMEMBERED {
            self.dead.insert(key, slack);
        }
        false
    }

    /// What sticks on hand that were not taken are worth: the bound counted on them.
    fn unused(&self) -> i64 {
        self.left.iter().zip(&self.proof.rents).map(|(n, rent)| i64::from(n.unwrap_or(0)) * rent).sum()
    }

    /// The ways to cut a stick with this item in it, with their waste, the least first; what is
    /// no longer wanted left out, and what another way does as well.
    fn ways(&mut self, next: usize, slack: i64) -> Vec<(i64, Pattern)> {
        let mut ways: Vec<(i64, Pattern)> = Vec::new();
        let patterns = self.patterns;
        // With something left out a pattern wastes more, never less.
        for (_, k) in patterns.with[next].iter().take_while(|(waste, _)| *waste <= slack) {
            self.stopped |= self.patience.spent(1);
            let Pattern { bin, cuts } = &patterns.all[*k];
            if self.left[*bin] == Some(0) {
                continue;
            }
            let cuts: Vec<u32> = cuts.iter().zip(&self.wants).map(|(n, want)| *n.min(want)).collect();
            let worth: i64 = cuts.iter().zip(&self.proof.prices).map(|(n, y)| i64::from(*n) * y).sum();
            let waste = self.instance.bins[*bin].cost as i64 * FINE + self.proof.rents[*bin] - worth;
            if waste <= slack {
                ways.push((waste, Pattern { bin: *bin, cuts }));
            }
        }
        ways.sort();
        ways.dedup();
        undominated(self.instance, ways)
    }

    /// Cuts one stick and goes on.
    fn take(&mut self, pattern: Pattern, slack: i64) -> bool {
        let (bin, cuts) = (pattern.bin, pattern.cuts.clone());
        self.wants.iter_mut().zip(&cuts).for_each(|(want, n)| *want -= n);
        self.left[bin] = self.left[bin].map(|n| n - 1);
        self.plan.push(pattern);
        if self.from(slack) {
            return true;
        }
        self.plan.pop();
        self.left[bin] = self.left[bin].map(|n| n + 1);
        self.wants.iter_mut().zip(&cuts).for_each(|(want, n)| *want += n);
        false
    }
}
