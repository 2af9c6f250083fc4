//! A word item among the other items: its place, its neighbors and the words between.

use super::features::Sink;
use super::item::{Is, Item};
use super::line::Line;

/// Words before a place that say which end or part it is.
const LEADING: &[&str] = &[
    "from", "to", "at", "off", "between", "into", "of", "on", "by", "no", "not", "and", "along", "till", "until",
    "start", "begin", "end", "without", "with",
];

/// How far before the item such a word may stand.
const LED: usize = 4;

/// Adds what stands around a word item; nothing for a figure.
pub(super) fn among(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    if item.is_value() {
        return;
    }
    let words: Vec<&Item> = line.items.iter().filter(|i| matches!(i.is, Is::Word(_))).collect();
    let before = words.iter().rev().find(|i| i.at < item.at);
    let behind = words.iter().find(|i| i.at > item.at);
    let kind_of = |i: Option<&&Item>, none: &str| i.map_or(none.to_owned(), |i| i.kind(&line.tokens).into_owned());
    let (left, right) = (kind_of(before, "^"), kind_of(behind, "$"));
    let place = words.iter().filter(|i| i.at < item.at).count();
    sink.put(1.0, &["gp", &place.min(4).to_string(), &words.len().min(6).to_string()]);
    sink.put(1.0, &["gL", kind, &left]);
    sink.put(1.0, &["gR", kind, &right]);
    sink.put(1.0, &["gLR", kind, &left, &right]);
    if let Some(before) = before {
        between(line, before.end, item.at, ["gbL", kind, &left], sink);
    }
    if let Some(behind) = behind {
        between(line, item.end, behind.at, ["gbR", kind, &right], sink);
    }
    leading(line, item, kind, sink);
    again(line, item, kind, sink);
}

/// The words between it and a neighbor.
fn between(line: &Line, from: usize, to: usize, name: [&str; 3], sink: &mut Sink) {
    let stems: Vec<&str> = line.tokens[from..to].iter().take(3).map(|t| t.stem.as_str()).collect();
    sink.put(1.0, &[&name[..1], &stems].concat());
    sink.put(1.0, &[&name[..], &stems].concat());
}

/// The prepositions and denials not far before it, and where the figures stand.
fn leading(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    let near = &line.tokens[item.at.saturating_sub(LED)..item.at];
    for token in near.iter().filter(|t| LEADING.contains(&t.stem.as_str())) {
        sink.put(1.0, &["pr", &token.stem]);
        sink.put(1.0, &["prk", kind, &token.stem]);
    }
    let mut values = line.values();
    let first = values.next();
    let many = first.map_or(0, |_| 1 + values.count());
    sink.put(1.0, &["hv", kind, &many.min(3).to_string()]);
    sink.put(1.0, &["bv", kind, if first.is_some_and(|v| v < item.at) { "behind" } else { "before" }]);
}

/// Whether the same thing was named before in this line, or is named again.
fn again(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    let same = |i: &&Item| i.word().is_some() && i.word() == item.word();
    let nth = line.items.iter().filter(same).filter(|i| i.at < item.at).count();
    let all = line.items.iter().filter(same).count();
    sink.put(1.0, &["nth", kind, &nth.min(3).to_string(), &all.min(4).to_string()]);
}
