//! The features of a value: for the row it fills.

use super::concept::owners;
use super::features::{Features, Sink, asking, bucket, pieces, stem_at};
use super::line::{Line, Token};

/// The features the row of the value at token `at` is judged by, given the line's act and want.
pub fn row_features(line: &Line, at: usize, act: &str, want: &str) -> Features {
    let mut sink = Sink::default();
    let kind = line.tokens.get(at).map_or("", |t| t.stem.as_str());
    sink.put(1.0, &["bias"]);
    sink.put(1.0, &["act", act]);
    sink.put(1.0, &["want", want]);
    sink.put(1.0, &["actk", act, kind]);
    sink.put(1.0, &["wantk", want, kind]);
    itself(line, at, kind, &mut sink);
    window(&line.tokens, at, kind, &mut sink);
    reach(&line.tokens, at, kind, Way::Left, &mut sink);
    reach(&line.tokens, at, kind, Way::Right, &mut sink);
    others(line, at, kind, &mut sink);
    whole(line, at, kind, &mut sink);
    sink.done()
}

/// Its kind and size, alone and with the words beside it.
fn itself(line: &Line, at: usize, kind: &str, sink: &mut Sink) {
    let Some(value) = line.tokens.get(at).and_then(|t| t.value.as_ref()) else { return };
    let size = bucket(value);
    sink.put(1.0, &["kind", kind]);
    sink.put(1.4, &["ks", kind, &size]);
    sink.put(1.4, &["size", &size]);
    sink.put(1.0, &["exact", &format!("{:.3}", value.size())]);
    for (name, by) in [("sl", -1), ("sr", 1)] {
        sink.put(1.0, &[name, kind, &size, stem_at(&line.tokens, at, by)]);
    }
}

/// Stems and pairs within four tokens on each side.
fn window(tokens: &[Token], at: usize, kind: &str, sink: &mut Sink) {
    let by = |n: isize| stem_at(tokens, at, n);
    for (name, n) in [("w-4", -4), ("w-3", -3), ("w-2", -2), ("w-1", -1), ("w1", 1), ("w2", 2), ("w3", 3), ("w4", 4)] {
        sink.put(if n == 1 || n == -1 { 1.4 } else { 1.0 }, &[name, by(n)]);
    }
    for (name, strength, a, b) in
        [("b-2", 1.4, -2, -1), ("b2", 1.4, 1, 2), ("b0", 1.4, -1, 1), ("b-3", 1.0, -3, -2), ("b3", 1.0, 2, 3)]
    {
        sink.put(strength, &[name, by(a), by(b)]);
    }
    sink.put(1.0, &["t-", by(-3), by(-2), by(-1)]);
    sink.put(1.0, &["t+", by(1), by(2), by(3)]);
    sink.put(1.4, &["k-", kind, by(-1)]);
    sink.put(1.4, &["k+", kind, by(1)]);
    let plural = |n: isize| at.checked_add_signed(n).and_then(|i| tokens.get(i)).and_then(|t| t.word.as_deref());
    for (name, n) in [("p1", 1), ("p2", 2)] {
        if plural(n).is_some_and(|w| w.len() > 3 && w.ends_with('s') && !w.ends_with("ss")) {
            sink.put(1.0, &[name, kind]);
        }
    }
}

/// Which side of the value.
#[derive(Clone, Copy)]
enum Way {
    Left,
    Right,
}

/// Words too common to be what a value is of.
const COMMON: &[&str] = &[
    "a", "an", "the", "is", "are", "was", "be", "of", "it", "its", "i", "im", "my", "we", "our", "you", "your", "and",
    "so", "that", "this", "uh", "um", "ok", "okay", "just", "have", "got", "get", "to", "in", "on", "at", "for",
    "with", "from", "'s",
];

/// How far a side is looked along.
const REACH: usize = 8;

/// The words of one side: those of the value's own clause, those beyond a border or another value marked, and the first
/// three that name something.
fn reach(tokens: &[Token], at: usize, kind: &str, way: Way, sink: &mut Sink) {
    let side = matches!(way, Way::Left);
    let mark = if side { "L" } else { "R" };
    let places: Vec<usize> = if side { (0..at).rev().collect() } else { (at + 1..tokens.len()).collect() };
    let (mut beyond, mut named) = (false, 0);
    for (steps, token) in places.into_iter().filter_map(|i| tokens.get(i)).enumerate() {
        let border = matches!(token.stem.as_str(), "," | ";" | "." | ":" | "=" | "?" | "/" | "(" | ")" | ">");
        if (border || token.value.is_some()) && !beyond {
            let name = if border { "stop" } else { "next" };
            sink.put(1.0, &[mark, name, &token.stem, &steps.min(3).to_string()]);
            beyond = true;
        }
        let far = if beyond { "x" } else { "" };
        if steps < REACH {
            sink.put(1.0, &[mark, far, &token.stem]);
        }
        let Some(word) = token.word.as_deref().filter(|w| !COMMON.contains(w)).filter(|_| named < 3) else { continue };
        let nth = named.to_string();
        let strength = if named == 0 { 1.4 } else { 1.0 };
        sink.put(strength, &[mark, "n", &nth, far, &token.stem]);
        sink.put(strength, &[mark, "nk", &nth, far, kind, &token.stem]);
        for owner in owners(&token.stem) {
            sink.put(strength, &[mark, "of", &nth, far, owner]);
            sink.put(strength, &[mark, "ofk", far, kind, owner]);
        }
        pieces(word).iter().for_each(|p| sink.put(1.0, &[mark, "c", p]));
        named += 1;
    }
}

/// The other values of the line, by kind and size, and this one's place among them.
fn others(line: &Line, at: usize, kind: &str, sink: &mut Sink) {
    let all: Vec<usize> = line.values().collect();
    let Some(place) = all.iter().position(|i| *i == at) else { return };
    sink.put(1.0, &["pos", &place.to_string(), &all.len().min(5).to_string()]);
    sink.put(1.0, &["posk", kind, &place.to_string()]);
    for (n, i) in all.iter().enumerate().filter(|(n, _)| *n != place) {
        let Some((token, value)) = line.tokens.get(*i).and_then(|t| t.value.as_ref().map(|v| (t, v))) else { continue };
        let by = if n > place { (n - place).min(2).to_string() } else { format!("-{}", (place - n).min(2)) };
        sink.put(1.0, &["o", &by, &token.stem, &bucket(value)]);
        sink.put(1.0, &["ok", &token.stem]);
    }
}

/// The whole line, faintly, and what was said before it.
fn whole(line: &Line, at: usize, kind: &str, sink: &mut Sink) {
    let tokens = &line.tokens;
    tokens.iter().enumerate().filter(|(i, _)| *i != at).for_each(|(_, t)| sink.put(0.4, &["B", &t.stem]));
    tokens.windows(2).for_each(|w| sink.put(0.3, &["BB", &w[0].stem, &w[1].stem]));
    if let Some((first, _)) = asking(line) {
        sink.put(1.0, &["q", first, kind]);
    }
    if tokens.iter().any(|t| t.stem == "?") {
        sink.put(1.0, &["q?"]);
    }
    for token in line.before.iter().flatten() {
        sink.put(0.3, &["P", &token.stem]);
        if let Some(value) = &token.value {
            sink.put(0.4, &["Pv", &token.stem, &bucket(value)]);
        }
    }
}
