//! Features: what is looked at in a line and around a value, each a name hashed to 24 bits with a strength.
//!
//! The names are made anew from the line whenever it is scored, so the weights need only keep the hashes.

use super::line::{Line, Token};
use super::value::Value;

/// The features of one line or value: hash and strength, in the order of the hashes, scaled to one length.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Features(pub Vec<(u32, f32)>);

/// The length every list of features is scaled to, so that long lines do not shout.
const LENGTH: f32 = 4.0;

/// Gathers features by name.
#[derive(Default)]
pub(super) struct Sink {
    found: Vec<(u32, f32)>,
}

impl Sink {
    /// Adds a feature: the parts of its name, parted by a space.
    pub(super) fn put(&mut self, strength: f32, parts: &[&str]) {
        self.found.push((name(parts), strength));
    }

    /// Each feature once, all scaled together.
    pub(super) fn done(mut self) -> Features {
        self.found.sort_by_key(|f| f.0);
        self.found.dedup_by_key(|f| f.0);
        let square: f32 = self.found.iter().map(|(_, s)| s * s).sum();
        let scale = LENGTH / square.sqrt().max(1.0);
        self.found.iter_mut().for_each(|f| f.1 *= scale);
        Features(self.found)
    }
}

/// The parts with a space behind each, 64 bits folded to [`BITS`]: what one name's hash is beyond the last is kept in two bytes mostly.
pub(super) fn name(parts: &[&str]) -> u32 {
    let hash = hashed(parts.iter().flat_map(|p| p.bytes().chain([b' '])));
    ((hash >> 32) as u32 ^ hash as u32) & ((1 << BITS) - 1)
}

/// How wide a name's hash is.
const BITS: u32 = 24;

/// FNV-1a.
pub(super) fn hashed(bytes: impl Iterator<Item = u8>) -> u64 {
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

/// Upper ends of the size buckets, in inches or units.
const SIZES: [f64; 29] = [
    0.01, 0.3, 0.6, 0.9, 1.01, 1.6, 2.1, 3.1, 3.6, 4.1, 5.1, 6.1, 8.1, 10.1, 12.1, 16.1, 24.1, 33.0, 37.0, 43.0, 50.0,
    65.0, 75.0, 100.0, 130.0, 200.0, 300.0, 500.0, 1000.0,
];

/// A value's size bucket, as a name.
pub(super) fn bucket(value: &Value) -> String {
    let size = value.size().abs();
    SIZES.iter().position(|end| size <= *end).unwrap_or(SIZES.len()).to_string()
}

/// Words too common to be what a value is of.
const COMMON: &[&str] = &[
    "a", "an", "the", "is", "are", "was", "be", "of", "it", "its", "i", "im", "my", "we", "our", "you", "your", "and",
    "so", "that", "this", "uh", "um", "ok", "okay", "just", "have", "got", "get", "to", "in", "on", "at", "for",
    "with", "from", "'s",
];

/// True for a word too common to be what a value is of.
pub(super) fn is_common(word: &str) -> bool {
    COMMON.contains(&word)
}

/// Words that ask.
const ASKING: &[&str] = &[
    "what", "how", "why", "can", "do", "does", "is", "will", "should", "could", "if", "when", "where", "which",
    "would", "may", "must", "whats",
];

/// True for a word that asks.
pub(super) fn asks(token: &Token) -> bool {
    token.word.as_deref().is_some_and(|w| ASKING.contains(&w))
}

/// The question words of the line, first and last.
pub(super) fn asking(line: &Line) -> Option<(&str, &str)> {
    let mut found = line.tokens.iter().filter(|t| asks(t)).filter_map(|t| t.word.as_deref());
    let first = found.next()?;
    Some((first, found.next_back().unwrap_or(first)))
}

/// The four-letter pieces of a word, its edges marked: what is left of it when it is misspelled.
pub(super) fn pieces(word: &str) -> Vec<String> {
    let marked: Vec<char> = format!("^{word}$").chars().collect();
    marked.windows(4).map(|w| w.iter().collect()).collect()
}

/// The stem at a place that may lie before or behind the line.
pub(super) fn stem_at(tokens: &[Token], at: usize, by: isize) -> &str {
    match at.checked_add_signed(by) {
        None => "^",
        Some(i) => tokens.get(i).map_or("$", |t| t.stem.as_str()),
    }
}
