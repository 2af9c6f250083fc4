//! Plans from the relaxation: whole parts taken, one pattern rounded up, what is left relaxed again.

use super::columns::relax;
use super::greedy::{Plan, fill_up, repeats, take};
use super::instance::{Instance, Pattern};
use super::luck::Luck;
use crate::takeoff::cutplan::Patience;

/// A part this near its next whole number is rounded up along with the nearest one.
const NEARLY: f64 = 0.75;

/// One dive. `turn` 0 rounds up what is nearest its next whole number; later turns choose
/// among the nearest few, so that no two dives go the same way. `None` where patience ran out.
pub fn dive(instance: &Instance, pool: &mut Vec<Pattern>, turn: u64, patience: &mut dyn Patience) -> Option<Plan> {
    let mut wants = instance.wants();
    let mut left: Vec<Option<u32>> = instance.bins.iter().map(|b| b.most).collect();
    let mut plan = Plan::new();
    let mut luck = Luck::of(turn);
    while wants.iter().any(|w| *w > 0) {
        let mut relaxed = relax(instance, &wants, &left, pool, patience)?;
        let before = plan.len();
        for (pattern, times) in &relaxed.parts {
            cut(pattern, (times + 1e-6).floor() as u32, &mut plan, &mut wants, &mut left);
        }
        if plan.len() > before {
            continue;
        }
        relaxed.parts.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
        let pick = if turn == 0 { 0 } else { luck.below(3.min(relaxed.parts.len() as u64)) as usize };
        let nearly = relaxed.parts.iter().enumerate().filter(|(i, (_, x))| *i == pick || *x > NEARLY);
        for (_, (pattern, _)) in nearly {
            cut(pattern, 1, &mut plan, &mut wants, &mut left);
        }
        if plan.len() == before {
            plan.extend(fill_up(instance, &relaxed.prices, &mut wants, &mut left)?);
        }
    }
    Some(plan)
}

fn cut(pattern: &Pattern, times: u32, plan: &mut Plan, wants: &mut [u32], left: &mut [Option<u32>]) {
    let times = times.min(repeats(pattern, wants, left[pattern.bin]));
    if times > 0 {
        take(pattern, times, wants, left);
        plan.push((pattern.clone(), times));
    }
}
