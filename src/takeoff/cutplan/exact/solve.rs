//! The whole way: a plan, a bound, and more work while they differ.

use super::bound::{Proof, proof};
use super::columns::relax;
use super::dive::dive;
use super::greedy::{Plan, fill_up, tidy};
use super::instance::Instance;
use super::luck::Luck;
use super::polish::polish;
use super::search::{Found, search};
use super::totals::Totals;
use crate::takeoff::cutplan::Patience;

/// Rounds of work, cheap ones first: patterns looked at by the search, then tries at bettering
/// the plan.
const ROUNDS: [(u64, u64); 5] = [(100_000, 0), (200_000, 10), (500_000, 40), (2_000_000, 100), (u64::MAX, 400)];
/// Work spent on fewer sticks for the same money.
const FOR_STICKS: u64 = 200_000;

/// A share of another's patience.
struct Share<'a> {
    left: u64,
    of: &'a mut dyn Patience,
}

impl Patience for Share<'_> {
    fn spent(&mut self, work: u64) -> bool {
        self.left = self.left.saturating_sub(work);
        self.of.spent(work) || self.left == 0
    }
}

/// The best plan found and how far it is proved.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The plan.
    pub plan: Plan,
    /// What it costs.
    pub cost: u64,
    /// No plan costs less.
    pub bound: u64,
}

/// Cuts everything for the least cost. `big` is what one unit of money counts for beside one
/// stick (see [`Totals`]). `None` where the pieces do not fit what there is.
pub fn solve(instance: &Instance, big: u64, patience: &mut dyn Patience) -> Option<Solved> {
    let mut solved = first(instance)?;
    let Some(relaxed) = relax(instance, &instance.wants(), &limits(instance), &mut Vec::new(), patience) else {
        return Some(solved);
    };
    let proof = proof(instance, &relaxed.prices);
    let totals = Totals::of(instance, big, solved.cost);
    solved.bound = totals.at_least(solved.bound.max(proof.least_cost())).min(solved.cost);
    let mut pool = relaxed.parts.iter().map(|(p, _)| p.clone()).collect();
    let mut luck = Luck::of(0);
    let mut work = Work { instance, proof: &proof, totals: &totals, big, patience };
    for (turn, (nodes, tries)) in (0..).zip(ROUNDS) {
        if solved.money_proved(big) || work.patience.spent(1) {
            break;
        }
        if let Some(plan) = dive(instance, &mut pool, turn, work.patience) {
            solved.take(instance, &plan);
        }
        work.close(&mut solved, nodes);
        solved.better(instance, big, &mut luck, tries, work.patience);
    }
    work.fewer_sticks(&mut solved);
    Some(solved)
}

struct Work<'a> {
    instance: &'a Instance,
    proof: &'a Proof,
    totals: &'a Totals,
    big: u64,
    patience: &'a mut dyn Patience,
}

impl Work<'_> {
    /// Searches one sum of money after the other, from the bound up, until plan and bound meet
    /// or so much work is done.
    fn close(&mut self, solved: &mut Solved, nodes: u64) {
        let mut some = Share { left: nodes, of: self.patience };
        while !solved.money_proved(self.big) {
            // Any number of sticks will do for this money.
            let most = (solved.bound / self.big + 1) * self.big - 1;
            match search(self.instance, self.proof, most, &mut some) {
                Found::Plan(plan) => {
                    solved.take(self.instance, &plan);
                    // Its money is the bound's: anything else would be a fault, and must not loop.
                    return;
                }
                Found::None => solved.bound = self.totals.at_least(most + 1).min(solved.cost),
                Found::Left => return,
            }
        }
    }

    /// With the money proved, fewer sticks for it are worth a little work and no more.
    fn fewer_sticks(&mut self, solved: &mut Solved) {
        let mut some = Share { left: FOR_STICKS, of: self.patience };
        while solved.money_proved(self.big) && solved.bound < solved.cost {
            match search(self.instance, self.proof, solved.bound, &mut some) {
                Found::Plan(plan) => {
                    solved.take(self.instance, &plan);
                    return;
                }
                Found::None => solved.bound = self.totals.at_least(solved.bound + 1).min(solved.cost),
                Found::Left => return,
            }
        }
    }
}

impl Solved {
    /// True once no plan can cost less money.
    fn money_proved(&self, big: u64) -> bool {
        self.bound / big >= self.cost / big
    }

    /// Tries to better the plan, until it meets the bound.
    fn better(&mut self, instance: &Instance, big: u64, luck: &mut Luck, tries: u64, patience: &mut dyn Patience) {
        for _ in 0..tries {
            if self.money_proved(big) || patience.spent(1) {
                return;
            }
            if let Some(plan) = polish(instance, &self.plan, luck, patience) {
                self.take(instance, &plan);
            }
        }
    }

    /// Keeps a plan that is better than the one at hand and holds.
    fn take(&mut self, instance: &Instance, plan: &Plan) {
        let plan = tidy(instance, plan);
        let cost = instance.cost(&plan);
        if cost < self.cost && instance.holds(&plan) {
            (self.plan, self.cost) = (plan, cost);
        }
    }
}

fn limits(instance: &Instance) -> Vec<Option<u32>> {
    instance.bins.iter().map(|b| b.most).collect()
}

/// A first plan, the best of a few fillings, with the bound its lengths alone prove.
fn first(instance: &Instance) -> Option<Solved> {
    let lengths = |power: f64| instance.items.iter().map(|i| f64::from(i.len).powf(power)).collect::<Vec<f64>>();
    let plans = [1.0, 1.05, 1.3, 2.0].map(|power| {
        let (mut wants, mut left) = (instance.wants(), limits(instance));
        fill_up(instance, &lengths(power), &mut wants, &mut left)
    });
    let tidied = plans.into_iter().flatten().map(|p| tidy(instance, &p)).filter(|p| instance.holds(p));
    let plan = tidied.min_by_key(|p| instance.cost(p))?;
    let cost = instance.cost(&plan);
    let bought = instance.bins.iter().filter(|b| b.most.is_none());
    let rate = bought.map(|b| b.cost as f64 / f64::from(b.cap)).fold(f64::INFINITY, f64::min);
    let prices: Vec<f64> =
        instance.items.iter().map(|i| if rate.is_finite() { f64::from(i.len) * rate } else { 0.0 }).collect();
    let bound = proof(instance, &prices).least_cost().min(cost);
    Some(Solved { plan, cost, bound })
}
