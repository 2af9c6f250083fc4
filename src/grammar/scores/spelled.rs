//! Terms of the lexicon among the tokens, and the words the corpus has for them.

use super::line::Token;
use super::stem::stem;
use crate::grammar::draft::Way;
use crate::grammar::sense::{Op, Sense, Side, Spot, Strong, Unit, terms_beginning_as, terms_from};
use crate::job::{End, Fixing, JoistsRun, Mount};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// The longest term that begins at the token and has a word in the corpus: where it ends, and the words it may be.
pub(super) fn longest(tokens: &[Token], at: usize) -> Option<(usize, Vec<String>)> {
    let token = tokens.get(at)?;
    let first = text(token)?;
    let spelled = terms_from(first).iter().filter(|(spelling, _)| {
        let here = tokens.get(at..at + spelling.len());
        here.is_some_and(|t| t.iter().zip(*spelling).all(|(t, s)| text(t) == Some(*s)))
    });
    let mut found: Option<(usize, Vec<String>)> = None;
    for (spelling, sense) in spelled {
        let Some(word) = written(*sense) else { continue };
        let (end, word) = (at + spelling.len(), if word.is_empty() { spelling.join(" ") } else { word });
        match &mut found {
            Some((far, words)) if *far == end => words.push(word),
            Some((far, _)) if *far > end => {}
            _ => found = Some((end, vec![word])),
        }
    }
    // "centered" is a form of "center".
    let formed = || Some((at + 1, FORMS.get(token.word.as_ref().map(|_| &token.stem)?)?.clone()));
    let (end, mut words) = found.or_else(formed)?;
    words.push(tokens[at..end].iter().filter_map(text).collect::<Vec<_>>().join(" "));
    let mut seen = BTreeSet::new();
    words.retain(|w| seen.insert(w.clone()));
    Some((end, words))
}

/// By stem, the words of the corpus for each spelling of one word.
static FORMS: LazyLock<BTreeMap<String, Vec<String>>> = LazyLock::new(|| {
    let mut forms: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (word, sense) in singles() {
        if let Some(written) = written(sense).filter(|w| !w.is_empty()) {
            forms.entry(stem(word)).or_default().push(written);
        }
    }
    forms
});

/// The spellings of one word.
fn singles() -> impl Iterator<Item = (&'static str, Sense)> {
    let all = (b'a'..=b'z').flat_map(|c| terms_beginning_as(&char::from(c).to_string()));
    all.filter_map(|(words, sense)| Some((*words.first().filter(|_| words.len() == 1)?, *sense)))
}

/// A token's text as the lexicon spells it; none for a value.
fn text(token: &Token) -> Option<&str> {
    match &token.value {
        Some(_) => None,
        None => Some(token.word.as_deref().unwrap_or(&token.stem)),
    }
}

/// Every spelling of one word.
static LISTED: LazyLock<BTreeSet<&'static str>> = LazyLock::new(|| singles().map(|(word, _)| word).collect());

/// True for a word that is a spelling of the lexicon by itself.
pub(super) fn is_listed(word: &str) -> bool {
    LISTED.contains(word)
}

/// The word the corpus has for what a term means; empty where it has the term's own words.
fn written(sense: Sense) -> Option<String> {
    let word = match sense {
        Sense::End(end) | Sense::Ends(end) => place(end),
        Sense::Side(side) => of_side(side),
        Sense::Spot(spot) => of_spot(spot),
        Sense::Mount(Mount::OverEdge) => "over the edge",
        Sense::Mount(Mount::Inside) => "inside",
        Sense::Mount(Mount::Outside) => "outside",
        Sense::Mount(Mount::Surface) => "surface",
        Sense::Fixing(Fixing::ThroughBolts) => "through bolts",
        Sense::Fixing(Fixing::Lags) => "lags",
        Sense::Fixing(Fixing::Screws) => "screws",
        Sense::Strong(Strong::Flat) | Sense::Strong(Strong::OnTop) => "flat",
        Sense::Strong(Strong::Edge) => "edge",
        Sense::Way(Way::Out) => "out",
        Sense::Way(Way::In) => "in",
        Sense::Way(Way::Right) => "across",
        Sense::Joists(JoistsRun::Along) => "parallel",
        Sense::Joists(JoistsRun::Out) => "out",
        Sense::Op(Op::Half) => "half",
        Sense::Op(Op::Third) => "third",
        Sense::Op(Op::Quarter) => "quarter",
        Sense::Unit(unit) => of_unit(unit),
        Sense::Wood(wood) => return Some(parted(&format!("{wood:?}"))),
        Sense::Part(part) => return Some(parted(&format!("{part:?}"))),
        Sense::Strong(_) | Sense::Basis(_) | Sense::Shape | Sense::Free | Sense::Foreign(_) => "",
        _ => return None,
    };
    Some(word.to_owned())
}

/// "GatePost" as "gate post".
fn parted(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_ascii_uppercase() && !out.is_empty() {
            out.push(' ');
        }
        out.push(c.to_ascii_lowercase());
    }
    out
}

fn place(end: End) -> &'static str {
    match end {
        End::AngledCorner => "clipped corner",
        end => end.name(),
    }
}

fn of_side(side: Side) -> &'static str {
    match side {
        Side::Front => "front",
        Side::Back => "back",
        Side::Left => "left",
        Side::Right => "right",
        Side::North => "north",
        Side::South => "south",
        Side::East => "east",
        Side::West => "west",
        Side::Yard => "yard",
        Side::Pool => "pool",
        Side::Street => "street side",
        Side::Side => "side",
        Side::Other => "other",
        Side::Longest => "long side",
        Side::Shortest => "short side",
        Side::Named(_) => "",
    }
}

fn of_spot(spot: Spot) -> &'static str {
    match spot {
        Spot::Middle => "middle",
        Spot::Top => "top",
        Spot::Bottom => "bottom",
        Spot::End => "end",
        Spot::BothEnds => "both ends",
        Spot::Far => "far end",
        Spot::Near => "near end",
        Spot::Other => "other end",
    }
}

fn of_unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Inches => "in",
        Unit::Feet => "ft",
        Unit::Millimetres => "mm",
        Unit::Centimetres => "cm",
        Unit::Metres => "m",
    }
}
