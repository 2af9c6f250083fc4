//! What thing a word belongs to, by the nouns of the table's rows: "picket" and "spindle" are both of the balusters.

use super::stem::stem;
use crate::quantity::ROWS;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

static OWNERS: LazyLock<BTreeMap<String, BTreeSet<String>>> = LazyLock::new(|| {
    let mut owners: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for row in ROWS {
        // A noun of several words is known by each of them only together: those are left to the pairs of stems.
        for noun in row.nouns.split(',').map(str::trim).filter(|n| !n.is_empty() && !n.contains(' ')) {
            owners.entry(stem(noun)).or_default().insert(format!("{:?}", row.owner));
        }
    }
    owners
});

/// The things the word with this stem may belong to.
pub(super) fn owners(stem: &str) -> impl Iterator<Item = &'static str> {
    OWNERS.get(stem).into_iter().flatten().map(String::as_str)
}
