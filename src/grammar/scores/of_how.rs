//! The features of how an item fills its row: set, changed by so much, not there, only named.

use super::features::{Features, Sink, stem_at};
use super::line::Line;
use super::of_item::of_item;

/// The features it is judged by that the item at token `at` fills this row by being set, or by some other way.
pub fn how_features(line: &Line, at: usize, act: &str, row: &str) -> Features {
    let mut sink = Sink::default();
    let Some(item) = line.item(at) else { return sink.done() };
    let kind = &*item.kind(&line.tokens);
    let word = item.word().unwrap_or("");
    let beside = stem_at(&line.tokens, at, -1);
    sink.put(2.0, &["row", row]);
    sink.put(2.0, &["rowk", row, kind]);
    sink.put(2.0, &["roww", row, word]);
    sink.put(2.0, &["rowb", row, beside]);
    sink.put(1.0, &["rowa", row, act]);
    of_item(line, item, kind, &mut sink);
    sink.done()
}
