//! The linear relaxation over all patterns, patterns made as they are needed.

use super::fill::Fillings;
use super::instance::{Instance, Pattern};
use super::simplex::Program;
use crate::takeoff::cutplan::Patience;

/// More rounds than any instance here takes; a bound may still be had of what stands then.
const MOST_ROUNDS: usize = 3000;
/// A saving below this part of the dearest stick is rounding.
const TINY: f64 = 1e-9;

/// What the relaxation gives.
pub struct Relaxed {
    /// The price of each item.
    pub prices: Vec<f64>,
    /// The patterns in use and how often, as fractions.
    pub parts: Vec<(Pattern, f64)>,
}

/// Solves the relaxation for what is still wanted and left. `pool` holds patterns made so far,
/// and takes in the new ones. `None` where patience ran out.
pub fn relax(
    instance: &Instance,
    wants: &[u32],
    left: &[Option<u32>],
    pool: &mut Vec<Pattern>,
    patience: &mut dyn Patience,
) -> Option<Relaxed> {
    let mut program = Program::new(instance, wants, left);
    let dearest = instance.bins.iter().map(|b| b.cost).max().unwrap_or(1) as f64;
    let work = (instance.longest() as usize * wants.len().max(1)) as u64 / 64 + 1;
    let usable = |p: &Pattern| left[p.bin] != Some(0) && p.cuts.iter().zip(wants).all(|(n, want)| n <= want);
    let mut ready: Vec<Pattern> = pool.iter().filter(|p| usable(p)).cloned().collect();
    for _ in 0..MOST_ROUNDS {
        if patience.spent(work) {
            return None;
        }
        if !settle(&mut program, instance, &ready, dearest * TINY, patience) {
            return None;
        }
        let prices = program.prices();
        let fillings = Fillings::of(instance, &prices[..wants.len()], wants);
        let made = (0..instance.bins.len()).filter(|k| left[*k] != Some(0)).map(|k| fillings.pattern(instance, k));
        let better = |p: &Pattern| program.saves(&prices, p, instance.bins[p.bin].cost) > dearest * TINY;
        let made: Vec<Pattern> = made.filter(better).filter(|p| !ready.contains(p)).collect();
        if made.is_empty() {
            break;
        }
        pool.extend(made.iter().cloned());
        ready.extend(made);
    }
    let prices = program.prices().into_iter().take(wants.len()).map(|p| p.max(0.0)).collect();
    Some(Relaxed { prices, parts: program.solution().map(|(p, x)| (p.clone(), x)).collect() })
}

/// Brings in patterns at hand while any saves. False where patience ran out.
fn settle(
    program: &mut Program,
    instance: &Instance,
    ready: &[Pattern],
    tiny: f64,
    patience: &mut dyn Patience,
) -> bool {
    let rows = instance.items.len();
    let work = (rows * (rows + ready.len())) as u64 / 128 + 1;
    for _ in 0..MOST_ROUNDS {
        if patience.spent(work) {
            return false;
        }
        let prices = program.prices();
        let saving = |p: &Pattern| program.saves(&prices, p, instance.bins[p.bin].cost);
        let best = ready.iter().map(|p| (saving(p), p)).max_by(|a, b| a.0.total_cmp(&b.0));
        match best {
            Some((saved, p)) if saved > tiny && program.enter(p, instance.bins[p.bin].cost) => {}
            _ => break,
        }
    }
    true
}
