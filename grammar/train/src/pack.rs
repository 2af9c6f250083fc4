//! Learned weights to bytes: the small ones dropped, the rest rounded to a few sizes. The form stands in
//! `src/grammar/scores/weights.rs`.

use crate::softmax::Learned;
use railhand::grammar::scores::{MODELS, MOST_ONES, sizes};

/// The most weights each model keeps: act, want, what besides, row of a figure, row of
/// a word, how. A byte and a half each, and under 1 MB with the hashes.
pub const KEPT: [usize; MODELS] = [51_000, 128_000, 7_400, 220_000, 82_000, 14_500];

/// The bytes of the models: act, want, what besides, row of a figure, row of a word, how.
pub fn pack(models: [&Learned; MODELS], source: u64) -> Vec<u8> {
    let mut out = b"RHS5".to_vec();
    out.extend(source.to_le_bytes());
    models.into_iter().zip(KEPT).for_each(|(model, most)| pack_one(model, most, &mut out));
    out
}

fn pack_one(model: &Learned, most: usize, out: &mut Vec<u8>) {
    count(model.labels.len(), out);
    for label in &model.labels {
        count(label.len(), out);
        out.extend(label.bytes());
    }
    let mut large: Vec<f32> = model.weights.iter().map(|w| w.abs()).filter(|w| *w > 0.0).collect();
    large.sort_by(|a, b| b.total_cmp(a));
    large.truncate(most);
    let (most, least) = (large.first().copied().unwrap_or(1.0), large.last().copied().unwrap_or(1.0));
    let sizes = sizes(least, most);
    let rows: Vec<(u32, Vec<(usize, i8)>)> = model
        .hashes
        .iter()
        .zip(model.weights.chunks(model.labels.len().max(1)))
        .map(|(hash, row)| (*hash, kept(row, least, &sizes)))
        .filter(|(_, row)| !row.is_empty())
        .collect();
    out.extend(least.to_le_bytes());
    out.extend(most.to_le_bytes());
    let [gaps, many, apart, levels] = numbers(&rows);
    let low = [&gaps, &many, &apart, &levels].map(|numbers| low_bits(numbers));
    out.extend(low.map(|bits| bits as u8));
    count(rows.len(), out);
    let bits = coded(&rows, low);
    count(bits.len(), out);
    out.extend(bits);
}

/// The numbers of a model by their kind: gaps of hashes, how many weights, gaps of labels, levels from nought.
fn numbers(rows: &[(u32, Vec<(usize, i8)>)]) -> [Vec<u32>; 4] {
    let mut all = [const { Vec::new() }; 4];
    in_order(rows, |kind, number, _| all[kind].push(number));
    all
}

/// The bits of a model, each kind of number with so many low bits.
fn coded(rows: &[(u32, Vec<(usize, i8)>)], low: [u32; 4]) -> Vec<u8> {
    let mut bits = Bits::default();
    in_order(rows, |kind, number, below| {
        bits.number(number, low[kind]);
        if let Some(below) = below {
            bits.put(u32::from(below), 1);
        }
    });
    bits.bytes
}

/// Every number of a model as it is written, with its kind; behind a level whether the weight is below nothing.
fn in_order(rows: &[(u32, Vec<(usize, i8)>)], mut write: impl FnMut(usize, u32, Option<bool>)) {
    let mut before = 0;
    for (hash, row) in rows {
        write(0, hash - before, None);
        before = *hash;
        write(1, row.len() as u32, None);
        let mut last = 0;
        for (label, level) in row {
            write(2, (label - last) as u32, None);
            last = *label;
            write(3, u32::from(level.unsigned_abs()) - 1, Some(*level < 0));
        }
    }
}

/// The low bits by which the numbers take the fewest bits in all.
fn low_bits(numbers: &[u32]) -> u32 {
    let most = numbers.iter().copied().max().unwrap_or(0);
    let cost = |low: &u32| numbers.iter().map(|n| u64::from((n >> low) + 1 + low)).sum::<u64>();
    (0..=24).filter(|low| most >> low <= MOST_ONES).min_by_key(cost).unwrap_or(24)
}

/// The weights that are large enough, each as the level nearest to it.
fn kept(row: &[f32], least: f32, sizes: &[f32]) -> Vec<(usize, i8)> {
    let level = |w: f32| {
        let far = |size: f32| if size > w.abs() { size / w.abs() } else { w.abs() / size };
        let nearest = (0..sizes.len()).min_by(|a, b| far(sizes[*a]).total_cmp(&far(sizes[*b]))).unwrap_or(0);
        if w < 0.0 { -(nearest as i8 + 1) } else { nearest as i8 + 1 }
    };
    let large = row.iter().enumerate().filter(|(_, w)| **w != 0.0 && w.abs() >= least);
    large.map(|(label, w)| (label, level(*w))).collect()
}

/// Bits as they are written.
#[derive(Default)]
struct Bits {
    bytes: Vec<u8>,
    /// How many bits of the last byte are written.
    full: u32,
}

impl Bits {
    fn bit(&mut self, one: bool) {
        if self.full == 0 {
            self.bytes.push(0);
        }
        if let Some(last) = self.bytes.last_mut().filter(|_| one) {
            *last |= 0x80 >> self.full;
        }
        self.full = (self.full + 1) % 8;
    }

    fn put(&mut self, value: u32, bits: u32) {
        (0..bits).rev().for_each(|n| self.bit(value >> n & 1 == 1));
    }

    fn number(&mut self, value: u32, low: u32) {
        (0..value >> low).for_each(|_| self.bit(true));
        self.bit(false);
        self.put(value & ((1 << low) - 1), low);
    }
}

/// LEB128.
fn count(mut n: usize, out: &mut Vec<u8>) {
    while n >= 0x80 {
        out.push(n as u8 | 0x80);
        n >>= 7;
    }
    out.push(n as u8);
}
