//! A bound in whole numbers from prices in floating point.
//!
//! For any prices `y` at which no pattern is worth more than its stick costs, no plan costs
//! less than the pieces are worth (weak duality). The prices are made whole numbers of a fine
//! unit, scaled down until that holds for the best filling of every stick, and added up.

use super::fill::Fillings;
use super::instance::Instance;

/// Parts of one unit of cost that prices are counted in.
pub const FINE: i64 = 1 << 20;

/// Whole prices that prove a bound.
#[derive(Clone, Debug)]
pub struct Proof {
    /// The price of each item, in 1/[`FINE`].
    pub prices: Vec<i64>,
    /// What a limited stick is worth beyond its cost, in 1/[`FINE`]: nothing or more.
    pub rents: Vec<i64>,
    /// No plan costs less than this, in 1/[`FINE`].
    pub least: i128,
}

/// The bound these prices prove.
pub fn proof(instance: &Instance, prices: &[f64]) -> Proof {
    let wants = instance.wants();
    // Prices are bounded by a thousand of the dearest stick: far inside 63 bits.
    let whole: Vec<i64> = prices.iter().map(|p| (p * FINE as f64).floor().max(0.0) as i64).collect();
    let fillings = Fillings::of(instance, &whole, &wants);
    let (mut num, mut den) = (1_i128, 1_i128);
    for bin in instance.bins.iter().filter(|b| b.most.is_none()) {
        let (holds, costs) = (i128::from(fillings.worth(bin.cap)), i128::from(bin.cost) * i128::from(FINE));
        if holds * num > costs * den {
            (num, den) = (costs, holds);
        }
    }
    let scaled: Vec<i64> = whole.iter().map(|y| (i128::from(*y) * num / den) as i64).collect();
    let fillings = Fillings::of(instance, &scaled, &wants);
    let rent = |cap, cost: u64| (fillings.worth(cap) - cost as i64 * FINE).max(0);
    let rents = instance.bins.iter().map(|b| if b.most.is_none() { 0 } else { rent(b.cap, b.cost) }).collect();
    let worth: i128 = scaled.iter().zip(&wants).map(|(y, want)| i128::from(*y) * i128::from(*want)).sum();
    let proof = Proof { prices: scaled, rents, least: 0 };
    let paid: i128 =
        proof.rents.iter().zip(&instance.bins).map(|(r, b)| i128::from(*r) * i128::from(b.most.unwrap_or(0))).sum();
    Proof { least: worth - paid, ..proof }
}

impl Proof {
    /// The bound as a whole cost, rounded up.
    pub fn least_cost(&self) -> u64 {
        let fine = i128::from(FINE);
        u64::try_from((self.least + fine - 1).div_euclid(fine).max(0)).unwrap_or(0)
    }
}
