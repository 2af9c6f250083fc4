//! What is bought: a cut plan for every size of lumber, junk on top, and the bill.

use super::cost::{Bill, OnTop, Priced, bill};
use super::cutplan::{CannotCut, CutOrder, CutPlan, Patience, Stick, Supply, Wanted, plan};
use super::parts::{Part, Parts};
use crate::job::{Job, Percent, StickOf};
use crate::measure::{Length, Lumber};
use crate::quantity::RowId;
use crate::solve::{order as told, taken};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// Lengths a size is taken to be sold in where none was told, in feet: whole feet in steps of
/// two (PS 20-05); which of them a yard keeps is common practice, no source.
pub use crate::solve::order::SOLD;

/// One size of lumber on the buying list.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// The size.
    pub size: Lumber,
    /// The plan, or why there is none.
    pub plan: Result<CutPlan, CannotCut>,
    /// What is bought: length, how many with junk on top.
    pub list: Vec<(Length, u32)>,
    /// True where the lengths it is sold in were told.
    pub told: bool,
}

/// The kerf: as told, or the usual saw's.
pub fn kerf(job: &Job) -> Length {
    taken(job, RowId::Kerf).as_length().unwrap_or(Length::ZERO)
}

/// The longest stick a size can be had in.
pub fn longest(job: &Job, size: Lumber) -> Option<Length> {
    order(job, size, Vec::new()).longest()
}

/// The sticks of a size: at the yard with their prices, and on hand.
pub fn order(job: &Job, size: Lumber, wanted: Vec<Wanted>) -> CutOrder {
    let (feet, _) = told::sold(job, size);
    let yard = feet.iter().map(|f| Stick {
        length: Length::inches(i64::from(*f) * 12),
        supply: Supply::Yard(told::price(job, StickOf { size, feet: *f })),
    });
    let on_hand = told::on_hand(job, size);
    let on_hand = on_hand.map(|(length, n)| Stick { length, supply: Supply::OnHand(u32::from(n)) });
    CutOrder { wanted, sticks: yard.chain(on_hand).collect(), kerf: kerf(job) }
}

/// A plan for every size there are cut lengths of, in the order of the parts.
pub fn buy(job: &Job, parts: &Parts, patience: &mut dyn Patience) -> Vec<Bought> {
    let mut sizes: Vec<Lumber> = Vec::new();
    for size in parts.list.iter().filter(|p| p.cut.is_some()).filter_map(|p| p.size) {
        if !sizes.contains(&size) {
            sizes.push(size);
        }
    }
    sizes.into_iter().map(|size| bought(job, parts, size, patience)).collect()
}

fn bought(job: &Job, parts: &Parts, size: Lumber, patience: &mut dyn Patience) -> Bought {
    let wanted = |p: &Part| Some(Wanted { length: p.cut.filter(|_| p.size == Some(size))?, count: p.count });
    let plan = plan(&order(job, size, parts.list.iter().filter_map(wanted).collect()), patience);
    let list = plan.as_ref().map(|p| p.buy()).unwrap_or_default();
    let list = list.into_iter().map(|(l, n)| (l, n + junk(job, n))).collect();
    Bought { size, plan, list, told: told::sold(job, size).1 }
}

/// How many of `n` sticks are bought on top for junk, rounded up.
fn junk(job: &Job, n: u32) -> u32 {
    let percent = told::percent(job, Percent::Waste).unwrap_or_default();
    let extra = (Decimal::from(n) * percent / Decimal::ONE_HUNDRED).ceil();
    extra.to_u32().unwrap_or(0)
}

/// The bill of a buying list, or the sticks it has no price for.
pub fn bill_of(job: &Job, list: &[Bought]) -> Result<Bill, Vec<StickOf>> {
    let mut lines = Vec::new();
    let mut unpriced = Vec::new();
    for b in list {
        for (length, count) in &b.list {
            let feet = (length.q() / num_rational::Ratio::from_integer(12)).to_integer();
            let stick = StickOf { size: b.size, feet: u16::try_from(feet).unwrap_or(0) };
            match told::price(job, stick) {
                Some(each) => lines.push(Priced { count: *count, each }),
                None => unpriced.push(stick),
            }
        }
    }
    if !unpriced.is_empty() {
        return Err(unpriced);
    }
    let percent = |of| told::percent(job, of);
    let on_top = OnTop { markup: percent(Percent::Markup), tax: percent(Percent::Tax), labour: told::labor(job) };
    bill(&lines, on_top).ok_or(unpriced)
}
