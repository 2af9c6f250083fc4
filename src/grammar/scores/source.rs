//! What weights were learned from.

use super::features::hashed;

/// Raised whenever the features or the reading of lines change: the same corpus then teaches other weights.
pub const FEATURES: u64 = 5;

/// One number for a corpus, by the names and the texts of its files in the order of their names.
pub fn source_of<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> u64 {
    let files = files.into_iter().flat_map(|(name, text)| name.bytes().chain([0]).chain(text.bytes()).chain([0]));
    hashed(FEATURES.to_le_bytes().into_iter().chain(files))
}
