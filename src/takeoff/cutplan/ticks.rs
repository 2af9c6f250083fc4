//! Lengths and money as whole numbers, and back.

use super::exact::{Bin, Instance, Item};
use super::order::{CannotCut, CutOrder, Supply};
use crate::measure::{Length, Q};
use num_rational::Ratio;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The finest grid pieces are reckoned on, in parts of an inch. Lengths off it are taken long
/// and sticks short, so that a plan always goes.
const FINEST: i128 = 64;
/// Longer sticks than this many ticks are not reckoned with.
const MOST_TICKS: i128 = 200_000;
/// More pieces than this are not reckoned with.
const MOST_PIECES: u64 = 20_000;
/// What one stick counts for beside the least money there is: fewer sticks never cost more money.
const STEPS: u64 = 100;

/// An order in whole numbers.
pub struct InTicks {
    /// The problem.
    pub instance: Instance,
    /// What one unit of money counts for beside one stick.
    pub big: u64,
    /// Money, or length, in one unit.
    pub unit: Q,
    /// The pieces' lengths as told, in the order of the problem's items.
    pub lengths: Vec<Length>,
}

/// The order in ticks.
pub fn in_ticks(order: &CutOrder) -> Result<InTicks, CannotCut> {
    let wanted = merged(order);
    let pieces: u64 = wanted.iter().map(|(_, n)| u64::from(*n)).sum();
    if pieces > MOST_PIECES {
        return Err(CannotCut::TooMuch);
    }
    let grid = Grid::of(order);
    let items = wanted.iter().map(|(l, n)| Some(Item { len: grid.up(*l + order.kerf)?, want: *n }));
    let items = items.collect::<Option<Vec<Item>>>().ok_or(CannotCut::TooMuch)?;
    let (money, unit) = money(order).ok_or(CannotCut::TooMuch)?;
    let big = STEPS * (pieces + 1);
    let bin = |(s, money): (&super::Stick, u64)| {
        let most = if let Supply::OnHand(n) = s.supply { Some(n) } else { None };
        Some(Bin { cap: grid.down(s.length + order.kerf)?, cost: money.checked_mul(big)?.checked_add(1)?, most })
    };
    let bins = order.sticks.iter().zip(money).map(bin).collect::<Option<Vec<Bin>>>().ok_or(CannotCut::TooMuch)?;
    Ok(InTicks { instance: Instance { items, bins }, big, unit, lengths: wanted.into_iter().map(|(l, _)| l).collect() })
}

/// Each length once, longest first.
fn merged(order: &CutOrder) -> Vec<(Length, u32)> {
    let mut all: Vec<(Length, u32)> = Vec::new();
    for w in order.wanted.iter().filter(|w| w.count > 0) {
        match all.iter_mut().find(|(l, _)| *l == w.length) {
            Some((_, n)) => *n = n.saturating_add(w.count),
            None => all.push((w.length, w.count)),
        }
    }
    all.sort_by_key(|(l, _)| std::cmp::Reverse(*l));
    all
}

/// The coarsest grid all lengths lie on, no finer than [`FINEST`].
struct Grid(Q);

impl Grid {
    fn of(order: &CutOrder) -> Grid {
        let lengths = order.wanted.iter().map(|w| w.length + order.kerf);
        let lengths: Vec<Q> =
            lengths.chain(order.sticks.iter().map(|s| s.length + order.kerf)).map(Length::q).collect();
        let parts = lengths.iter().fold(1, |parts, q| num_lcm(parts, *q.denom()).min(FINEST));
        let parts = if lengths.iter().all(|q| parts % q.denom() == 0) { parts } else { FINEST };
        let whole = lengths.iter().map(|q| (q * Ratio::from_integer(parts)).ceil().to_integer());
        let step = if parts == FINEST { 1 } else { whole.fold(0, gcd).max(1) };
        Grid(Ratio::new(parts, step))
    }

    fn up(&self, l: Length) -> Option<u32> {
        Grid::ticks((l.q() * self.0).ceil().to_integer())
    }

    fn down(&self, l: Length) -> Option<u32> {
        Grid::ticks((l.q() * self.0).floor().to_integer())
    }

    fn ticks(n: i128) -> Option<u32> {
        u32::try_from(n.min(MOST_TICKS + 1)).ok().filter(|n| i128::from(*n) <= MOST_TICKS)
    }
}

fn gcd(a: i128, b: i128) -> i128 {
    if b == 0 { a } else { gcd(b, a % b) }
}

fn num_lcm(a: i128, b: i128) -> i128 {
    (a / gcd(a, b)).saturating_mul(b)
}

/// What each stick costs in whole units, and the unit: money where all have a price, else inches.
fn money(order: &CutOrder) -> Option<(Vec<u64>, Q)> {
    let priced = order.priced();
    let cost = |s: &super::Stick| match s.supply {
        Supply::OnHand(_) => Some(Ratio::from_integer(0)),
        Supply::Yard(Some(price)) if priced => as_q(price),
        Supply::Yard(_) => Some(s.length.q()),
    };
    let costs: Vec<Q> = order.sticks.iter().map(cost).collect::<Option<_>>()?;
    let parts = costs.iter().fold(1, |parts, q| num_lcm(parts, *q.denom()));
    let whole: Vec<i128> = costs.iter().map(|q| (q * Ratio::from_integer(parts)).to_integer()).collect();
    let step = whole.iter().copied().fold(0, gcd).max(1);
    // A price of nothing is no price: it is refused before it gets here.
    let units = whole.iter().map(|n| u64::try_from(n / step).ok().filter(|n| *n < 1 << 30));
    Some((units.collect::<Option<_>>()?, Ratio::new(step, parts)))
}

/// A price as an exact rational.
fn as_q(price: Decimal) -> Option<Q> {
    crate::measure::q_from_decimal(price)
}

/// A rational that is a decimal with few places, as money.
pub fn as_money(q: Q) -> Option<Decimal> {
    let scaled = q * Ratio::from_integer(10_000);
    let n = scaled.is_integer().then(|| scaled.to_integer().to_i64())??;
    Some(Decimal::new(n, 4).normalize())
}
