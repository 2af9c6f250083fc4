//! Which totals sticks can have: a bound between two of them is the next one up.
//!
//! A cost here is `money * big + sticks`: the money, then the fewest sticks.

use super::instance::Instance;

/// What sticks can add up to.
pub struct Totals {
    big: u64,
    /// For each sum of money, the fewest sticks bought and the most; `None` where no sticks make it.
    sums: Vec<Option<(u64, u64)>>,
    on_hand: u64,
}

/// Sums past this are not listed: the bound is then left where it is.
const MOST_SUMS: u64 = 400_000;

impl Totals {
    /// The totals up to and with `most`.
    pub fn of(instance: &Instance, big: u64, most: u64) -> Totals {
        let money: Vec<u64> = instance.bins.iter().filter(|b| b.most.is_none()).map(|b| b.cost / big).collect();
        let on_hand = instance.bins.iter().filter_map(|b| b.most).map(u64::from).sum();
        let top = most / big;
        if top > MOST_SUMS || money.contains(&0) {
            return Totals { big, sums: Vec::new(), on_hand };
        }
        let mut sums: Vec<Option<(u64, u64)>> = vec![None; top as usize + 1];
        sums[0] = Some((0, 0));
        for sum in 1..sums.len() {
            let ways = money.iter().filter_map(|m| sums[sum.checked_sub(*m as usize)?]);
            let range = ways.fold(None, |all: Option<(u64, u64)>, (lo, hi)| {
                Some(all.map_or((lo, hi), |(a, b)| (a.min(lo), b.max(hi))))
            });
            sums[sum] = range.map(|(lo, hi)| (lo + 1, hi + 1));
        }
        Totals { big, sums, on_hand }
    }

    /// The least total that is `bound` or more.
    pub fn at_least(&self, bound: u64) -> u64 {
        let (money, sticks) = (bound / self.big, bound % self.big);
        if self.sums.is_empty() {
            return bound;
        }
        if let Some(Some((fewest, most))) = self.sums.get(money as usize)
            && sticks <= most + self.on_hand
        {
            return money * self.big + sticks.max(*fewest);
        }
        let next = (money as usize + 1..self.sums.len()).find_map(|m| self.sums[m].map(|(fewest, _)| (m, fewest)));
        next.map_or(bound, |(m, fewest)| m as u64 * self.big + fewest)
    }
}
