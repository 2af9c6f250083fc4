//! How well an item of words says a fact that is no figure.

use crate::fact::{Fact, Said};
use railhand::grammar::scores::{Is, Item, Line, stem};
use railhand::quantity::ROWS;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// By row the stems of the words it goes by.
static NOUNS: LazyLock<BTreeMap<String, BTreeSet<String>>> = LazyLock::new(|| {
    let stems = |text: &str| text.split([',', ' ', '-']).filter(|w| w.len() > 2).map(stem).collect::<BTreeSet<_>>();
    let nouns = |row: &railhand::quantity::Row| stems(&format!("{},{},{}", kebab(row), row.nouns, row.name));
    ROWS.iter().map(|row| (kebab(row), nouns(row))).collect()
});

fn kebab(row: &railhand::quantity::Row) -> String {
    let mut out = String::new();
    for c in format!("{:?}", row.id).chars() {
        if c.is_ascii_uppercase() && !out.is_empty() {
            out.push('-');
        }
        out.push(c.to_ascii_lowercase());
    }
    out
}

/// Words that deny or take away (common practice, no source).
const DENYING: &[&str] = &[
    "no", "not", "without", "don't", "dont", "none", "drop", "lose", "skip", "remove", "scratch", "forget", "delete",
    "less", "out", "off", "won't", "wont", "isn't", "isnt", "never", "nothing", "ditch", "kill", "cut", "take",
    "neither", "any",
];

/// How far from the thing such a word may stand.
const NEAR: usize = 4;

/// The rank of a word that has only a part of the fact's words.
const PARTLY: usize = 10;

/// How good a place the item is for the fact, the least the best; `None` where it does not say it.
pub fn word_rank(line: &Line, item: &Item, fact: &Fact) -> Option<usize> {
    match &fact.said {
        Said::Words(words) => named(line, item, words),
        Said::Nothing => thing(line, item, fact).map(|rank| rank + if denied(line, item) { 0 } else { 2 }),
        _ => thing(line, item, fact),
    }
}

/// The item has these words for its own, or shares one of them.
fn named(line: &Line, item: &Item, words: &str) -> Option<usize> {
    let own: Vec<&str> = match &item.is {
        Is::Value => return None,
        Is::Word(own) => own.iter().map(String::as_str).collect(),
        Is::Name(name) => vec![name],
    };
    if let Some(rank) = own.iter().position(|w| *w == words) {
        return Some(rank);
    }
    let said: BTreeSet<String> = words.split([' ', '-']).filter(|w| w.len() > 2 || words.len() < 4).map(stem).collect();
    let mut has: BTreeSet<String> = own.iter().flat_map(|w| w.split(' ')).map(stem).collect();
    has.extend(line.tokens[item.at..item.end].iter().map(|t| t.stem.clone()));
    let short = || matches!(&item.is, Is::Name(name) if words.split(' ').any(|w| shortens(name, w)));
    let partly = has.intersection(&said).next().map(|_| PARTLY);
    partly.or_else(|| short().then_some(PARTLY * 2))
}

/// "cnr" is short for "corner", and "F" for "front": the same first letter, and the others in their order.
fn shortens(short: &str, word: &str) -> bool {
    let mut letters = word.chars();
    short.chars().next() == word.chars().next() && short != word && short.chars().all(|c| letters.any(|l| l == c))
}

/// The item is a noun of the fact's row.
fn thing(line: &Line, item: &Item, fact: &Fact) -> Option<usize> {
    let nouns = NOUNS.get(&fact.row)?;
    let tokens = &line.tokens[item.at..item.end];
    let own = tokens.iter().filter(|t| nouns.contains(&t.stem)).count();
    (own > 0).then(|| PARTLY + tokens.len() - own)
}

fn denied(line: &Line, item: &Item) -> bool {
    let near = &line.tokens[item.at.saturating_sub(NEAR)..item.at];
    near.iter().any(|t| t.word.as_deref().is_some_and(|w| DENYING.contains(&w)))
}
