//! A small linear program over patterns, solved by the revised simplex method.
//!
//! Rows: one for each item (cut exactly as many as wanted), then one for each stick of which
//! there are only so many. The basis starts with made-up columns that cost far too much, and
//! with the sticks not taken; patterns drive the made-up ones out.

use super::instance::{Instance, Pattern};

/// Less than this is nothing.
const TINY: f64 = 1e-9;

/// A column of the program.
#[derive(Clone, Debug)]
enum Column {
    /// A made-up column for a row, or the slack of one.
    Spare,
    /// A pattern.
    Pattern(Pattern),
}

/// The program with its present basis.
pub struct Program {
    /// For each limited stick, its row.
    limit_row: Vec<Option<usize>>,
    basis: Vec<Column>,
    cost: Vec<f64>,
    inverse: Vec<Vec<f64>>,
    value: Vec<f64>,
}

impl Program {
    /// The program for these wants, with no pattern in it yet.
    pub fn new(instance: &Instance, wants: &[u32], left: &[Option<u32>]) -> Program {
        let dearest = instance.bins.iter().map(|b| b.cost).max().unwrap_or(1).max(1) as f64;
        let mut value: Vec<f64> = wants.iter().map(|w| f64::from(*w)).collect();
        let mut cost = vec![dearest * 1e3; wants.len()];
        let mut limit_row = Vec::new();
        for most in left {
            limit_row.push(most.map(|_| value.len()));
            value.extend(most.map(f64::from));
            cost.extend(most.map(|_| 0.0));
        }
        let rows = value.len();
        let unit = |r: usize| (0..rows).map(|c| if c == r { 1.0 } else { 0.0 }).collect();
        Program { limit_row, basis: vec![Column::Spare; rows], cost, inverse: (0..rows).map(unit).collect(), value }
    }

    /// The price of every row: what one more of it would cost.
    pub fn prices(&self) -> Vec<f64> {
        let rows = self.cost.len();
        let mut prices = vec![0.0; rows];
        for (row, cost) in self.inverse.iter().zip(&self.cost).filter(|(_, cost)| **cost != 0.0) {
            prices.iter_mut().zip(row).for_each(|(p, x)| *p += cost * x);
        }
        prices
    }

    /// What a pattern would save at these prices; more than nothing is worth entering.
    pub fn saves(&self, prices: &[f64], pattern: &Pattern, cost: u64) -> f64 {
        let items = prices.iter().zip(&pattern.cuts).map(|(p, n)| p * f64::from(*n)).sum::<f64>();
        items + self.limit_row[pattern.bin].map_or(0.0, |r| prices[r]) - cost as f64
    }

    /// Brings a pattern into the basis. False where nothing gives way to it.
    pub fn enter(&mut self, pattern: &Pattern, cost: u64) -> bool {
        let column = self.column(pattern);
        let Some(out) = self.leaving(&column) else { return false };
        self.pivot(out, &column);
        self.basis[out] = Column::Pattern(pattern.clone());
        self.cost[out] = cost as f64;
        true
    }

    /// The pattern's column in terms of the basis.
    fn column(&self, pattern: &Pattern) -> Vec<f64> {
        let limit = self.limit_row[pattern.bin];
        let entries = pattern.cuts.iter().enumerate().filter(|(_, n)| **n > 0).map(|(i, n)| (i, f64::from(*n)));
        let entries: Vec<(usize, f64)> = entries.chain(limit.map(|r| (r, 1.0))).collect();
        self.inverse.iter().map(|row| entries.iter().map(|(i, x)| row[*i] * x).sum()).collect()
    }

    /// The row that gives way: the first to run out; of those that tie, the surest pivot.
    fn leaving(&self, column: &[f64]) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (r, x) in column.iter().enumerate().filter(|(_, x)| **x > TINY) {
            let ratio = self.value[r].max(0.0) / x;
            let better = best.is_none_or(|(b, least)| ratio < least - TINY || (ratio < least + TINY && *x > column[b]));
            if better {
                best = Some((r, ratio));
            }
        }
        best.map(|(r, _)| r)
    }

    fn pivot(&mut self, out: usize, column: &[f64]) {
        let by = column[out];
        self.inverse[out].iter_mut().for_each(|x| *x /= by);
        self.value[out] = self.value[out].max(0.0) / by;
        let (row, value) = (self.inverse[out].clone(), self.value[out]);
        for (r, x) in column.iter().enumerate().filter(|(r, x)| *r != out && **x != 0.0) {
            self.inverse[r].iter_mut().zip(&row).for_each(|(a, b)| *a -= x * b);
            self.value[r] -= x * value;
        }
    }

    /// The patterns in use and how often, as fractions.
    pub fn solution(&self) -> impl Iterator<Item = (&Pattern, f64)> {
        self.basis.iter().zip(&self.value).filter_map(|(column, value)| match column {
            Column::Pattern(p) if *value > TINY => Some((p, *value)),
            _ => None,
        })
    }
}
