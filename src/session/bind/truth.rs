//! The labels of lines of the corpus in place of the scores: what is still not understood then is no matter of reading.
//!
//! For measuring alone: `RAILHAND_TRUTH` names the file that `railhand-train labels` prints.

use super::readings::{Filled, Reading};
use super::value::row_of;
use crate::grammar::scores::{How, Line};
use std::collections::BTreeMap;
use std::sync::LazyLock;

static LABELS: LazyLock<BTreeMap<String, [String; 3]>> = LazyLock::new(|| {
    let text = std::env::var_os("RAILHAND_TRUTH").and_then(|f| std::fs::read_to_string(f).ok()).unwrap_or_default();
    let row = |l: &str| match l.split('\t').collect::<Vec<_>>()[..] {
        [said, act, wants, items] => Some((said.to_owned(), [act, wants, items].map(str::to_owned))),
        _ => None,
    };
    text.lines().filter_map(row).collect()
});

/// True where the line has labels.
pub(super) fn is_known(line: &str) -> bool {
    LABELS.contains_key(line)
}

/// The reading a line's labels are.
pub(super) fn of<'a>(said: &str, line: &'a Line) -> Option<Reading<'a>> {
    let [act, wants, items] = LABELS.get(said)?;
    let filled = items.split('\u{1e}').filter_map(|item| match item.split('\u{1f}').collect::<Vec<_>>()[..] {
        [at, rows, how] => Some((at.parse::<usize>().ok()?, rows, how)),
        _ => None,
    });
    let filled = filled.flat_map(|(at, rows, how)| {
        let word = line.item(at).and_then(|i| i.word());
        rows.split('+').map(move |row| Filled { at, word, row: row_of(row), how: How::of(how) })
    });
    let wants = wants.split(',').filter(|w| !w.is_empty()).collect();
    Some(Reading { act, wants, filled: filled.collect(), log: 0.0 })
}
