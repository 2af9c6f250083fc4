//! Noise is known by its grammar, not by a list: a preposition with nouns nobody
//! knows, or a reason. It carries no measure and nothing of the layout.

use super::{PIECE, Say};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::Sense;

const PREPOSITIONS: &[&str] = &[
    "by",
    "near",
    "beside",
    "behind",
    "next to",
    "along",
    "for",
    "at",
    "with",
    "on",
    "toward",
    "towards",
    "over by",
    "in front of",
    "facing",
    "over",
    "from",
    "of",
    "like",
];

/// "by the hot tub", "for my brother in law", "because the dog gets out".
pub fn noise(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    tail(items, at).or_else(|| reason(items, at)).or_else(|| out_of_true(items, at)).map(|end| (end, Say::Noise, PIECE))
}

fn tail(items: &[Item], at: usize) -> Option<usize> {
    PREPOSITIONS.contains(&&*items[at].text).then_some(())?;
    let mut end = at + 1;
    let mut nouns = 0;
    while let Some(item) = items.get(end) {
        let noun = matches!(item.is, Is::Unknown) && !item.torn || is_foreign(item);
        if !noun && !item.is_light() || nouns >= 3 {
            break;
        }
        // A light word after the nouns belongs to what follows, unless a noun comes again.
        if !noun && nouns > 0 && !items.get(end + 1).is_some_and(|i| matches!(i.is, Is::Unknown)) {
            break;
        }
        nouns += usize::from(noun);
        end += 1;
    }
    (nouns > 0).then_some(end)
}

/// "wall's out", "the house is out of square": why a figure changed, not what it is.
fn out_of_true(items: &[Item], at: usize) -> Option<usize> {
    let mut rest =
        items[at..].iter().map(|i| &*i.text).enumerate().skip_while(|(_, t)| matches!(*t, "the" | "that" | "my"));
    let of = rest.next().filter(|(_, t)| matches!(*t, "wall" | "house" | "siding" | "deck" | "framing" | "frame"));
    of?;
    let (_, "'s" | "is" | "s" | "was") = rest.next()? else { return None };
    let (end, _) = rest.next().filter(|(_, t)| matches!(*t, "out" | "out of" | "off" | "crooked"))?;
    let what = items.get(at + end + 1).filter(|i| matches!(&*i.text, "square" | "plumb" | "true"));
    Some(at + end + 1 + usize::from(what.is_some()))
}

fn is_foreign(item: &Item) -> bool {
    item.senses().iter().any(|s| matches!(s, Sense::Foreign(_)))
}

/// A reason runs to the end of the line or the next break, if it holds no measure.
fn reason(items: &[Item], at: usize) -> Option<usize> {
    items[at].may_be(Sense::Reason).then_some(())?;
    let length = items[at + 1..].iter().position(Item::is_sep).unwrap_or(items.len() - at - 1);
    let said = &items[at + 1..at + 1 + length];
    let plain = said.iter().all(|i| !matches!(i.is, Is::Measure(_) | Is::Unread)) && !said.is_empty();
    plain.then_some(at + 1 + length)
}
