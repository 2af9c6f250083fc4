//! The weights as they stand in `grammar/talk/weights.bin`, and how they are read.
//!
//! ```text
//! file    = "RHS5" source model*6                          the models: act, want, what besides, row of a figure, row of a word,
//!                                                          how
//! source  = eight bytes, little-endian                     what they were learned from: `source_of` the corpus
//! model   = count label* least most low*4 count size bits  how many features, and how many bytes of bits
//! label   = count byte*                                    UTF-8
//! least, most = four bytes, an f32, little-endian          the sizes of the first and of the last level of a weight
//! low     = one byte                                       the low bits of a gap of hashes, of how many weights, of a gap of labels
//!                                                          and of a level, in Rice's code
//! bits    = (gap many (gap level sign)*)*                  the hash less the one before it; then for each label that has a weight:
//!                                                          its number less the one before it, the level, and a bit for below nothing
//! count, size = LEB128: seven bits a byte, the least first, the top bit set on all but the last
//! ```

use super::MODELS;
use super::bits::Bits;
use super::features::Features;

/// One log-linear model: labels, and the weights of each feature for some of them.
#[derive(Clone, Debug, Default)]
pub struct Model {
    labels: Vec<String>,
    /// How much a weight of each level is, from the first level on.
    sizes: Vec<f32>,
    hashes: Vec<u32>,
    /// Where each feature's weights end.
    ends: Vec<u32>,
    weights: Vec<(u16, i8)>,
}

impl Model {
    /// Its labels, in the order of their numbers.
    pub fn labels(&self) -> &[String] {
        &self.labels
    }

    /// How many weights it holds.
    pub fn size(&self) -> usize {
        self.weights.len()
    }

    /// The log-probability of each label, likeliest first; equal ones in the order of their numbers.
    pub fn score(&self, features: &Features) -> Vec<(&str, f32)> {
        let mut sums = vec![0.0_f32; self.labels.len()];
        for (hash, strength) in &features.0 {
            for (label, level) in self.weights_of(*hash) {
                if let Some(sum) = sums.get_mut(usize::from(*label)) {
                    *sum += self.size_of(*level) * strength;
                }
            }
        }
        let most = sums.iter().copied().fold(f32::NEG_INFINITY, f32::max);
        let total: f32 = sums.iter().map(|s| (s - most).exp()).sum();
        let all = most + total.ln();
        let mut scored: Vec<(&str, f32)> =
            self.labels.iter().map(String::as_str).zip(sums.iter().map(|s| s - all)).collect();
        scored.sort_by(|a, b| b.1.total_cmp(&a.1));
        scored
    }

    fn size_of(&self, level: i8) -> f32 {
        self.sizes.get(usize::from(level.unsigned_abs()).wrapping_sub(1)).map_or(0.0, |s| s * f32::from(level.signum()))
    }

    fn weights_of(&self, hash: u32) -> &[(u16, i8)] {
        let Ok(at) = self.hashes.binary_search(&hash) else { return &[] };
        let end = |i: usize| self.ends.get(i).map_or(0, |e| *e as usize);
        let start = at.checked_sub(1).map_or(0, end);
        self.weights.get(start..end(at)).unwrap_or(&[])
    }
}

/// How many sizes a weight may have. They grow by one factor, so that small ones are told apart as well as large ones.
const LEVELS: u8 = 16;

/// The sizes of the levels, between the size of the first and of the last.
pub fn sizes(least: f32, most: f32) -> Vec<f32> {
    // By products alone, so that they are the same everywhere: each is as much more than the one before.
    let factor = root(most / least.max(f32::MIN_POSITIVE), LEVELS - 1);
    std::iter::successors(Some(least), |s| Some(s * factor)).take(usize::from(LEVELS)).collect()
}

/// The nth root of a number that is one or more, by halving.
fn root(of: f32, n: u8) -> f32 {
    let (mut low, mut high) = (1.0_f64, f64::from(of).max(1.0));
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        let power = (0..n).fold(1.0, |p, _| p * middle);
        if power > f64::from(of) { high = middle } else { low = middle }
    }
    low as f32
}

/// What the bytes hold.
pub(super) struct Read {
    /// What they were learned from.
    pub source: u64,
    /// The models.
    pub models: [Model; MODELS],
}

/// Reads the weights; `None` where the bytes are not in this form.
pub(super) fn read(bytes: &[u8]) -> Option<Read> {
    let mut bytes = Bytes(bytes.strip_prefix(b"RHS5")?);
    let source = u64::from_le_bytes(bytes.take(8)?.try_into().ok()?);
    let models = [(); MODELS].map(|()| bytes.model());
    let [Some(a), Some(b), Some(c), Some(d), Some(e), Some(f)] = models else { return None };
    bytes.0.is_empty().then_some(Read { source, models: [a, b, c, d, e, f] })
}

struct Bytes<'a>(&'a [u8]);

impl<'a> Bytes<'a> {
    fn take(&mut self, n: usize) -> Option<&'a [u8]> {
        let (head, rest) = self.0.split_at_checked(n)?;
        self.0 = rest;
        Some(head)
    }

    fn count(&mut self) -> Option<u32> {
        let mut value = 0_u32;
        for shift in (0..32).step_by(7) {
            let byte = *self.take(1)?.first()?;
            let part = u32::from(byte & 0x7f);
            value |= part.checked_shl(shift).filter(|v| v >> shift == part)?;
            if byte & 0x80 == 0 {
                return Some(value);
            }
        }
        None
    }

    fn float(&mut self) -> Option<f32> {
        Some(f32::from_le_bytes(self.take(4)?.try_into().ok()?))
    }

    fn model(&mut self) -> Option<Model> {
        let mut model = Model::default();
        for _ in 0..self.count()? {
            let long = self.count()? as usize;
            model.labels.push(std::str::from_utf8(self.take(long)?).ok()?.to_owned());
        }
        model.sizes = sizes(self.float()?, self.float()?);
        let [gap, many, apart, level] = *self.take(4)? else { return None };
        let features = self.count()?;
        let size = self.count()? as usize;
        let mut bits = Bits::new(self.take(size)?);
        let mut hash = 0_u32;
        for _ in 0..features {
            hash = hash.checked_add(bits.number(gap.into())?)?;
            let mut label = 0_u16;
            for _ in 0..bits.number(many.into())? {
                label = label.checked_add(u16::try_from(bits.number(apart.into())?).ok()?)?;
                let level = i8::try_from(1 + bits.number(level.into())?).ok()?;
                let below = bits.take(1)? == 1;
                model.weights.push((label, if below { -level } else { level }));
            }
            model.hashes.push(hash);
            model.ends.push(u32::try_from(model.weights.len()).ok()?);
        }
        bits.is_done().then_some(())?;
        Some(model)
    }
}
