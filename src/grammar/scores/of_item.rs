//! The features of an item: for the row it fills.

use super::among::among;
use super::concept::owners;
use super::features::{Features, Sink, asking, bucket, is_common, pieces, stem_at};
use super::item::Item;
use super::line::{Line, Token};

/// The features the row of the item at token `at` is judged by, given the line's act and want.
pub fn row_features(line: &Line, at: usize, act: &str, want: &str) -> Features {
    let mut sink = Sink::default();
    let Some(item) = line.item(at) else { return sink.done() };
    let kind = &*item.kind(&line.tokens);
    sink.put(1.0, &["act", act]);
    sink.put(1.0, &["want", want]);
    sink.put(1.0, &["actk", act, kind]);
    sink.put(1.0, &["wantk", want, kind]);
    of_item(line, item, kind, &mut sink);
    sink.done()
}

/// All that does not hang on the act and the want.
pub(super) fn of_item(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    sink.put(1.0, &["bias"]);
    itself(line, item, kind, sink);
    window(&line.tokens, item, kind, sink);
    reach(&line.tokens, item, kind, Way::Left, sink);
    reach(&line.tokens, item, kind, Way::Right, sink);
    among(line, item, kind, sink);
    others(line, item, kind, sink);
    near_terms(line, item, kind, sink);
    whole(line, item, kind, sink);
}

/// Its kind and size, alone and with the words beside it.
fn itself(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    sink.put(1.0, &["kind", kind]);
    let Some(value) = line.tokens.get(item.at).and_then(|t| t.value.as_ref()) else {
        let stems: Vec<&str> = line.tokens[item.at..item.end].iter().map(|t| t.stem.as_str()).collect();
        sink.put(1.4, &["it", &stems.join("-")]);
        for owner in stems.iter().flat_map(|s| owners(s)) {
            sink.put(1.0, &["itof", owner]);
        }
        return;
    };
    let size = bucket(value);
    sink.put(1.4, &["ks", kind, &size]);
    sink.put(1.4, &["size", &size]);
    sink.put(1.0, &["exact", &format!("{:.3}", value.size())]);
    for (name, by) in [("sl", -1), ("sr", 1)] {
        sink.put(1.0, &[name, kind, &size, stem_at(&line.tokens, item.at, by)]);
    }
}

/// Stems and pairs within four tokens on each side.
fn window(tokens: &[Token], item: &Item, kind: &str, sink: &mut Sink) {
    let from = |n: isize| if n < 0 { item.at } else { item.end.saturating_sub(1) };
    let by = |n: isize| stem_at(tokens, from(n), n);
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
    let plural = |n: isize| from(n).checked_add_signed(n).and_then(|i| tokens.get(i)).and_then(|t| t.word.as_deref());
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

/// How far a side is looked along.
const REACH: usize = 8;

/// The words of one side: those of the value's own clause, those beyond a border or another value marked, and the first
/// three that name something.
fn reach(tokens: &[Token], item: &Item, kind: &str, way: Way, sink: &mut Sink) {
    let side = matches!(way, Way::Left);
    let mark = if side { "L" } else { "R" };
    let places: Vec<usize> = if side { (0..item.at).rev().collect() } else { (item.end..tokens.len()).collect() };
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
        let Some(word) = token.word.as_deref().filter(|w| !is_common(w)).filter(|_| named < 3) else { continue };
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
fn others(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    let all: Vec<usize> = line.values().collect();
    let Some(place) = all.iter().position(|i| *i == item.at) else { return };
    sink.put(1.0, &["pos", &place.to_string(), &all.len().min(5).to_string()]);
    sink.put(1.0, &["posk", kind, &place.to_string()]);
    for (n, i) in all.iter().enumerate().filter(|(n, _)| *n != place) {
        let Some((token, value)) = line.tokens.get(*i).and_then(|t| t.value.as_ref().map(|v| (t, v))) else { continue };
        let by = if n > place { (n - place).min(2).to_string() } else { format!("-{}", (place - n).min(2)) };
        sink.put(1.0, &["o", &by, &token.stem, &bucket(value)]);
        sink.put(1.0, &["ok", &token.stem]);
    }
}

/// What the nearest terms on each side mean.
fn near_terms(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    let left = line.items.iter().rev().filter(|i| i.at < item.at && i.is_word());
    let right = line.items.iter().filter(|i| i.at > item.at && i.is_word());
    for (side, all) in [("l", left.take(3).collect::<Vec<_>>()), ("r", right.take(3).collect())] {
        for (n, near) in all.into_iter().enumerate() {
            let what = near.kind(&line.tokens);
            sink.put(1.0, &["ni", side, &n.to_string(), &what]);
            sink.put(1.0, &["nik", side, kind, &what]);
        }
    }
}

/// The whole line, faintly, and what was said before it.
fn whole(line: &Line, item: &Item, kind: &str, sink: &mut Sink) {
    let tokens = &line.tokens;
    tokens
        .iter()
        .enumerate()
        .filter(|(i, _)| *i < item.at || *i >= item.end)
        .for_each(|(_, t)| sink.put(0.4, &["B", &t.stem]));
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
