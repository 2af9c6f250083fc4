//! The features of a whole line: for its act, and for what is wanted.

use super::concept::owners;
use super::features::{Features, Sink, asking, asks, bucket, pieces};
use super::item::Is;
use super::line::{Line, Token};

/// The features its act is judged by.
pub fn act_features(line: &Line) -> Features {
    let mut sink = Sink::default();
    whole(line, &mut sink);
    sink.done()
}

/// The features of what is wanted, given the act.
pub fn want_features(line: &Line, act: &str) -> Features {
    let mut sink = Sink::default();
    whole(line, &mut sink);
    sink.put(2.0, &["act", act]);
    sink.done()
}

/// The features of what is wanted besides, given the act and what is wanted first.
pub fn more_features(line: &Line, act: &str, want: &str) -> Features {
    let mut sink = Sink::default();
    whole(line, &mut sink);
    sink.put(2.0, &["act", act]);
    sink.put(2.0, &["want", want]);
    sink.done()
}

fn whole(line: &Line, sink: &mut Sink) {
    sink.put(1.0, &["bias"]);
    words(&line.tokens, sink);
    edges(&line.tokens, sink);
    counts(line, sink);
    question(line, sink);
    earlier(line, sink);
    terms(line, sink);
}

/// What its terms mean, alone, in pairs, and behind the last question word.
fn terms(line: &Line, sink: &mut Sink) {
    let kinds: Vec<_> =
        line.items.iter().filter(|i| !matches!(i.is, Is::Name(_))).map(|i| i.kind(&line.tokens)).collect();
    kinds.iter().for_each(|k| sink.put(1.0, &["i", k]));
    kinds.windows(2).for_each(|w| sink.put(1.0, &["ii", &w[0], &w[1]]));
    kinds.windows(3).for_each(|w| sink.put(0.7, &["iii", &w[0], &w[1], &w[2]]));
    if let Some(from) = line.tokens.iter().rposition(asks) {
        let asked = line.items.iter().filter(|i| i.at > from && i.is_word());
        asked.for_each(|i| sink.put(1.0, &["Qi", &i.kind(&line.tokens)]));
    }
}

/// Stems, pairs, triples, pairs over a gap, and pieces of words.
fn words(tokens: &[Token], sink: &mut Sink) {
    let stems: Vec<&str> = tokens.iter().map(|t| t.stem.as_str()).collect();
    stems.iter().for_each(|s| sink.put(1.0, &["u", s]));
    stems.iter().flat_map(|s| owners(s)).for_each(|o| sink.put(1.0, &["of", o]));
    stems.windows(2).for_each(|w| sink.put(1.0, &["b", w[0], w[1]]));
    for w in stems.windows(3) {
        sink.put(0.7, &["t", w[0], w[1], w[2]]);
        sink.put(0.5, &["k", w[0], w[2]]);
    }
    for word in tokens.iter().filter_map(|t| t.word.as_deref()).filter(|w| w.len() > 3) {
        pieces(word).iter().for_each(|p| sink.put(0.4, &["c", p]));
    }
}

/// How it begins and how it ends.
fn edges(tokens: &[Token], sink: &mut Sink) {
    let stems: Vec<&str> = tokens.iter().map(|t| t.stem.as_str()).collect();
    for (n, [first, last]) in [(1, ["h1", "e1"]), (2, ["h2", "e2"]), (3, ["h3", "e3"])] {
        let n: usize = n;
        sink.put(1.0, &[&[first], &stems[..n.min(stems.len())]].concat());
        sink.put(1.0, &[&[last], &stems[stems.len().saturating_sub(n)..]].concat());
    }
}

fn counts(line: &Line, sink: &mut Sink) {
    let values = line.values().count();
    sink.put(1.0, &["values", &values.min(5).to_string()]);
    sink.put(1.0, &["long", &(line.tokens.len() / 4).min(8).to_string()]);
    sink.put(1.0, &["number", &line.number.min(3).to_string()]);
    for (token, value) in line.tokens.iter().filter_map(|t| t.value.as_ref().map(|v| (t, v))) {
        sink.put(1.0, &["v", &token.stem, &bucket(value)]);
    }
}

/// The question mark, the question words, and the words from the last of them on.
fn question(line: &Line, sink: &mut Sink) {
    let tokens = &line.tokens;
    let ends = tokens.last().is_some_and(|t| t.stem == "?");
    if tokens.iter().any(|t| t.stem == "?") {
        sink.put(1.0, &[if ends { "q?" } else { "qm" }]);
    }
    if let Some((first, last)) = asking(line) {
        sink.put(1.0, &["qw", first]);
        sink.put(1.0, &["ql", last]);
    }
    let Some(from) = tokens.iter().rposition(asks) else { return };
    let asked: Vec<&str> = tokens[from..].iter().take(8).map(|t| t.stem.as_str()).collect();
    asked.iter().for_each(|s| sink.put(1.0, &["Q", s]));
    asked.iter().flat_map(|s| owners(s)).for_each(|o| sink.put(1.0, &["Qof", o]));
    asked.windows(2).for_each(|w| sink.put(1.0, &["QB", w[0], w[1]]));
}

/// The stems of the lines before, faintly.
fn earlier(line: &Line, sink: &mut Sink) {
    if line.before.is_empty() {
        sink.put(1.0, &["first"]);
    }
    line.before.iter().flatten().for_each(|t| sink.put(0.35, &["P", &t.stem]));
}
