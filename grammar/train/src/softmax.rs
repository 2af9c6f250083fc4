//! Multinomial logistic regression by Adagrad on sparse features. Nothing but sums, products, quotients and roots, in a
//! fixed order: the same corpus gives the same weights everywhere.

use railhand::grammar::scores::Features;
use std::collections::BTreeMap;

/// A list of examples: features and the label that is right.
pub type Examples = [(Features, String)];

/// What a model learned: labels, and by feature hash a weight for each label.
pub struct Learned {
    /// The labels, in the order of the alphabet.
    pub labels: Vec<String>,
    /// The hashes of the features, rising.
    pub hashes: Vec<u32>,
    /// For each feature a weight for each label, one row after the other.
    pub weights: Vec<f32>,
}

/// How a model is trained.
#[derive(Clone, Copy)]
pub struct Recipe {
    /// How often all examples are gone through.
    pub rounds: usize,
    /// The step.
    pub step: f32,
    /// How hard weights are pulled to nought.
    pub pull: f32,
    /// How often a feature, and a label, must occur.
    pub least: usize,
}

impl Default for Recipe {
    fn default() -> Recipe {
        Recipe { rounds: 10, step: 0.25, pull: 3e-4, least: 2 }
    }
}

/// Learns a model. The weights are the mean over the second half of the rounds.
pub fn learn(examples: &Examples, recipe: Recipe) -> Learned {
    let mut labels: BTreeMap<&str, usize> = BTreeMap::new();
    examples.iter().for_each(|(_, label)| *labels.entry(label).or_default() += 1);
    labels.retain(|_, n| *n >= recipe.least);
    let labels: Vec<String> = labels.into_keys().map(str::to_owned).collect();
    let hashes = frequent(examples, recipe.least);
    let indexed = index(examples, &labels, &hashes);
    let wide = labels.len();
    let mut weights = vec![0.0_f32; hashes.len() * wide];
    let mut squares = vec![1e-2_f32; weights.len()];
    let mut sum = vec![0.0_f32; weights.len()];
    let mut order: Vec<usize> = (0..indexed.len()).collect();
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    for round in 0..recipe.rounds {
        dice.shuffle(&mut order);
        for i in &order {
            step(&indexed[*i], wide, recipe, &mut weights, &mut squares);
        }
        if round >= recipe.rounds / 2 {
            sum.iter_mut().zip(&weights).for_each(|(s, w)| *s += w);
        }
    }
    let halves = (recipe.rounds - recipe.rounds / 2).max(1) as f32;
    sum.iter_mut().for_each(|s| *s /= halves);
    Learned { labels, hashes, weights: sum }
}

struct Indexed {
    features: Vec<(usize, f32)>,
    label: usize,
}

fn frequent(examples: &Examples, least: usize) -> Vec<u32> {
    let mut all: Vec<u32> = examples.iter().flat_map(|(f, _)| f.0.iter().map(|(h, _)| *h)).collect();
    all.sort_unstable();
    all.chunk_by(|a, b| a == b).filter(|c| c.len() >= least).map(|c| c[0]).collect()
}

fn index(examples: &Examples, labels: &[String], hashes: &[u32]) -> Vec<Indexed> {
    let known = |(features, label): &(Features, String)| {
        let label = labels.binary_search(label).ok()?;
        let features = features.0.iter().filter_map(|(h, s)| Some((hashes.binary_search(h).ok()?, *s))).collect();
        Some(Indexed { features, label })
    };
    examples.iter().filter_map(known).collect()
}

/// A slope too small to step down.
const FLAT: f32 = 1e-3;

/// One example's step down the slope.
fn step(one: &Indexed, wide: usize, recipe: Recipe, weights: &mut [f32], squares: &mut [f32]) {
    let mut slope = vec![0.0_f32; wide];
    for (f, strength) in &one.features {
        let row = &weights[f * wide..(f + 1) * wide];
        slope.iter_mut().zip(row).for_each(|(s, w)| *s += w * strength);
    }
    softmax(&mut slope);
    slope[one.label] -= 1.0;
    // Most labels are out of the question for most examples: those stay as they are.
    let steep: Vec<(usize, f32)> = slope.into_iter().enumerate().filter(|(_, s)| s.abs() > FLAT).collect();
    for (f, strength) in &one.features {
        for (label, s) in &steep {
            let (w, square) = (&mut weights[f * wide + label], &mut squares[f * wide + label]);
            let g = s * strength + recipe.pull * w.signum();
            *square += g * g;
            *w -= recipe.step * g / square.sqrt();
        }
    }
}

fn softmax(sums: &mut [f32]) {
    let most = sums.iter().copied().fold(f32::NEG_INFINITY, f32::max);
    sums.iter_mut().for_each(|s| *s = exp(*s - most));
    let total: f32 = sums.iter().sum();
    sums.iter_mut().for_each(|s| *s /= total);
}

/// e to a power of nought or less, to about six figures. The library's own differs from one system to the next.
pub(crate) fn exp(x: f32) -> f32 {
    if x < -80.0 {
        return 0.0;
    }
    // 2^(n + r): the whole part is a shift of the exponent, the rest a short series.
    let twos = x * std::f32::consts::LOG2_E;
    let whole = twos.floor();
    let r = (twos - whole) * std::f32::consts::LN_2;
    let terms = [1.0 / 720.0, 1.0 / 120.0, 1.0 / 24.0, 1.0 / 6.0, 0.5, 1.0, 1.0];
    let series = terms.iter().fold(0.0, |sum, term| sum * r + term);
    f32::from_bits(((whole as i32 + 127) as u32) << 23) * series
}

/// A plain generator (xorshift64*), so that the order of the examples is the same every time.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    fn shuffle(&mut self, list: &mut [usize]) {
        for i in (1..list.len()).rev() {
            list.swap(i, (self.next() % (i as u64 + 1)) as usize);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_power_of_e_is_near_enough() {
        for x in [0.0_f32, -0.1, -1.0, -2.5, -10.0, -40.0, -79.0] {
            let right = x.exp();
            assert!((exp(x) - right).abs() <= right * 2e-5, "{x}");
        }
        assert_eq!(exp(-100.0), 0.0);
    }
}
