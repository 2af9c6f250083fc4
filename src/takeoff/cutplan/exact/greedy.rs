//! Plans made in one go: each stick filled as full as can be, the least waste for its cost first.

use super::fill::Fillings;
use super::instance::{Instance, Pattern};

/// A plan: patterns and how often each is cut.
pub type Plan = Vec<(Pattern, u32)>;

/// Cuts what is wanted, stick by stick, always the filling with the most worth for its cost.
/// `None` where what is left does not fit what there is.
pub fn fill_up(instance: &Instance, worth: &[f64], wants: &mut [u32], left: &mut [Option<u32>]) -> Option<Plan> {
    let mut plan = Plan::new();
    while wants.iter().any(|w| *w > 0) {
        let fillings = Fillings::of(instance, worth, wants);
        let best = best_stick(instance, &fillings, left)?;
        let pattern = fillings.pattern(instance, best);
        if pattern.cuts.iter().all(|n| *n == 0) {
            return None;
        }
        let times = repeats(&pattern, wants, left[best]);
        take(&pattern, times, wants, left);
        plan.push((pattern, times));
    }
    Some(plan)
}

/// The stick whose best filling is worth most for its cost; one on hand before any bought, the
/// cheaper of two that hold the same.
fn best_stick(instance: &Instance, fillings: &Fillings<f64>, left: &[Option<u32>]) -> Option<usize> {
    let rate = |k: &usize| {
        let bin = &instance.bins[*k];
        let worth = fillings.worth(bin.cap);
        if bin.most.is_some() { worth * 1e6 } else { worth / bin.cost.max(1) as f64 }
    };
    let usable = (0..instance.bins.len()).filter(|k| left[*k] != Some(0));
    usable.filter(|k| rate(k) > 0.0).max_by(|a, b| rate(a).total_cmp(&rate(b)))
}

/// How often a pattern can be cut before something runs out.
pub fn repeats(pattern: &Pattern, wants: &[u32], left: Option<u32>) -> u32 {
    let by_item = pattern.cuts.iter().zip(wants).filter(|(n, _)| **n > 0).map(|(n, want)| want / n).min().unwrap_or(0);
    by_item.min(left.unwrap_or(u32::MAX))
}

/// Takes a pattern out of what is wanted and what there is.
pub fn take(pattern: &Pattern, times: u32, wants: &mut [u32], left: &mut [Option<u32>]) {
    wants.iter_mut().zip(&pattern.cuts).for_each(|(want, n)| *want -= n * times);
    if let Some(most) = &mut left[pattern.bin] {
        *most -= times;
    }
}

/// The plan with each stick exchanged for the cheapest one its pieces fit, the same patterns
/// put together.
pub fn tidy(instance: &Instance, plan: &Plan) -> Plan {
    let mut tidy = Plan::new();
    let mut taken: Vec<u32> = vec![0; instance.bins.len()];
    let mut sticks: Vec<&Pattern> = plan.iter().flat_map(|(p, n)| std::iter::repeat_n(p, *n as usize)).collect();
    sticks.sort_by_key(|p| std::cmp::Reverse(instance.used(p)));
    for pattern in sticks {
        let used = instance.used(pattern);
        let free = |k: &usize| instance.bins[*k].most.is_none_or(|most| taken[*k] < most);
        let fits = (0..instance.bins.len()).filter(|k| u64::from(instance.bins[*k].cap) >= used).filter(free);
        let bin = fits.min_by_key(|k| (instance.bins[*k].cost, instance.bins[*k].cap)).unwrap_or(pattern.bin);
        taken[bin] += 1;
        let pattern = Pattern { bin, cuts: pattern.cuts.clone() };
        match tidy.iter_mut().find(|(p, _)| *p == pattern) {
            Some((_, n)) => *n += 1,
            None => tidy.push((pattern, 1)),
        }
    }
    tidy
}
