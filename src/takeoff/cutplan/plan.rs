//! A cut plan in lengths, and how far it is proved.

use super::exact::{self, Pattern};
use super::order::{CannotCut, CutOrder, Supply};
use super::patience::Patience;
use super::ticks::{InTicks, as_money, in_ticks};
use crate::measure::{Length, Q};
use num_rational::Ratio;
use rust_decimal::Decimal;

/// Sticks cut alike.
#[derive(Clone, Debug, PartialEq)]
pub struct CutStick {
    /// The stick.
    pub stock: Length,
    /// True where it was on hand.
    pub on_hand: bool,
    /// How many are cut so.
    pub times: u32,
    /// What comes out of each, longest first.
    pub cuts: Vec<(Length, u32)>,
    /// What is left of each, the kerfs between pieces taken off.
    pub left: Length,
}

/// How far a plan is proved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Proved {
    /// No plan buys less.
    Least,
    /// No plan buys less length than this.
    NoLessThan(Length),
    /// No plan costs less than this.
    NoCheaperThan(Decimal),
}

/// A cut plan.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPlan {
    /// The sticks, those on hand first, then the longest first.
    pub sticks: Vec<CutStick>,
    /// The length bought.
    pub bought: Length,
    /// What it costs, where every stick has a price.
    pub price: Option<Decimal>,
    /// How far it is proved.
    pub proved: Proved,
}

/// The plan that buys least, or the best found by the time patience ran out.
pub fn plan(order: &CutOrder, patience: &mut dyn Patience) -> Result<CutPlan, CannotCut> {
    order.check()?;
    let ticks = in_ticks(order)?;
    let solved = exact::solve(&ticks.instance, ticks.big, patience).ok_or(CannotCut::NotEnough)?;
    let mut sticks: Vec<CutStick> = solved.plan.iter().map(|(p, n)| stick(order, &ticks, p, *n)).collect();
    sticks.sort_by(|a, b| {
        let first = |s: &CutStick| (!s.on_hand, std::cmp::Reverse(s.stock), s.left);
        first(a).cmp(&first(b)).then_with(|| b.cuts.cmp(&a.cuts))
    });
    let bought: Length = sticks.iter().filter(|s| !s.on_hand).map(|s| s.stock * i64::from(s.times)).sum();
    let money = |cost: u64| Ratio::from_integer(i128::from(cost / ticks.big)) * ticks.unit;
    let price = as_money(money(solved.cost)).filter(|_| order.priced());
    let proved = proved(order, money(solved.cost), money(solved.bound));
    Ok(CutPlan { sticks, bought, price, proved })
}

fn proved(order: &CutOrder, cost: Q, bound: Q) -> Proved {
    let less = if bound >= cost {
        None
    } else if order.priced() {
        as_money(bound).map(Proved::NoCheaperThan)
    } else {
        Length::from_q(bound).map(Proved::NoLessThan)
    };
    less.unwrap_or(Proved::Least)
}

fn stick(order: &CutOrder, ticks: &InTicks, pattern: &Pattern, times: u32) -> CutStick {
    let from = &order.sticks[pattern.bin];
    let cuts: Vec<(Length, u32)> =
        ticks.lengths.iter().zip(&pattern.cuts).filter(|(_, n)| **n > 0).map(|(l, n)| (*l, *n)).collect();
    let pieces: i64 = cuts.iter().map(|(_, n)| i64::from(*n)).sum();
    let cut: Length = cuts.iter().map(|(l, n)| *l * i64::from(*n)).sum();
    let left = from.length - cut - order.kerf * (pieces - 1).max(0);
    CutStick { stock: from.length, on_hand: matches!(from.supply, Supply::OnHand(_)), times, cuts, left }
}

impl CutPlan {
    /// How many sticks are bought.
    pub fn bought_count(&self) -> u32 {
        self.sticks.iter().filter(|s| !s.on_hand).map(|s| s.times).sum()
    }

    /// What is bought: each length once, longest first, and how many.
    pub fn buy(&self) -> Vec<(Length, u32)> {
        let mut list: Vec<(Length, u32)> = Vec::new();
        for s in self.sticks.iter().filter(|s| !s.on_hand) {
            match list.iter_mut().find(|(l, _)| *l == s.stock) {
                Some((_, n)) => *n += s.times,
                None => list.push((s.stock, s.times)),
            }
        }
        list
    }

    /// What is left over of all sticks cut.
    pub fn left_over(&self) -> Length {
        self.sticks.iter().map(|s| s.left * i64::from(s.times)).sum()
    }
}
