//! A plan made better a few sticks at a time: their pieces are cut anew, the rest is left.

use super::dive::dive;
use super::greedy::{Plan, tidy};
use super::instance::{Bin, Instance, Item, Pattern};
use super::luck::Luck;
use crate::takeoff::cutplan::Patience;

/// Few enough sticks to be cut anew at once, and enough to make a difference.
const FEWEST: u64 = 3;
const MOST: u64 = 12;

/// One try: the plan with some of its sticks cut anew, where that is cheaper.
pub fn polish(instance: &Instance, plan: &Plan, luck: &mut Luck, patience: &mut dyn Patience) -> Option<Plan> {
    let mut sticks: Vec<Pattern> = plan.iter().flat_map(|(p, n)| std::iter::repeat_n(p.clone(), *n as usize)).collect();
    let count = (FEWEST + luck.below(MOST - FEWEST + 1)).min(sticks.len() as u64);
    let chosen: Vec<Pattern> =
        (0..count).map(|_| sticks.swap_remove(luck.below(sticks.len() as u64) as usize)).collect();
    let part = Part::of(instance, &chosen, &sticks);
    let anew = tidy(&part.instance, &dive(&part.instance, &mut Vec::new(), luck.below(3), patience)?);
    let before: u64 = chosen.iter().map(|p| instance.bins[p.bin].cost).sum();
    if part.instance.cost(&anew) >= before {
        return None;
    }
    let rest = sticks.into_iter().map(|p| (p, 1));
    Some(rest.chain(anew.into_iter().map(|(p, n)| (part.whole(&p), n))).collect())
}

/// A few sticks' pieces as a problem of its own.
struct Part {
    instance: Instance,
    /// For each of its items, which of the whole's it is.
    of: Vec<usize>,
    items: usize,
}

impl Part {
    fn of(whole: &Instance, chosen: &[Pattern], kept: &[Pattern]) -> Part {
        let want = |i: usize| chosen.iter().map(|p| p.cuts[i]).sum::<u32>();
        let of: Vec<usize> = (0..whole.items.len()).filter(|i| want(*i) > 0).collect();
        let items = of.iter().map(|i| Item { len: whole.items[*i].len, want: want(*i) }).collect();
        let taken = |k: usize| kept.iter().filter(|p| p.bin == k).count() as u32;
        let left = |(k, bin): (usize, &Bin)| Bin { most: bin.most.map(|m| m.saturating_sub(taken(k))), ..*bin };
        let bins = whole.bins.iter().enumerate().map(left).collect();
        Part { instance: Instance { items, bins }, of, items: whole.items.len() }
    }

    fn whole(&self, pattern: &Pattern) -> Pattern {
        let mut cuts = vec![0; self.items];
        self.of.iter().zip(&pattern.cuts).for_each(|(i, n)| cuts[*i] = *n);
        Pattern { bin: pattern.bin, cuts }
    }
}
