//! Questions about the rules themselves, known by what they are about.

use crate::grammar::items::{Is, Item, senses_in};
use crate::grammar::sense::{Ask, Sense};
use crate::grammar::words::Word;
use crate::limits::{self, Limit};

/// The limit a question is about: an asking line with a word of its topic. A topic
/// said in more words outweighs one said in fewer.
pub(super) fn topic(words: &[Word], items: &[Item]) -> Option<&'static Limit> {
    let opens = senses_in(words).any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)));
    (opens || asks(items)).then_some(())?;
    let ids: Vec<&str> = senses_in(words).filter_map(|s| if let Sense::Topic(id) = s { Some(id) } else { None }).collect();
    let count = |id: &&str| ids.iter().filter(|i| *i == id).count();
    let first = ids.iter().rev().max_by_key(|id| count(id))?;
    limits::find(first)
}

/// True for a line that asks: by its opening or its mark.
pub(super) fn asks(items: &[Item]) -> bool {
    let asking = |i: &Item| {
        i.senses().iter().any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)))
            || matches!(i.is, Is::Sep('?'))
    };
    items.iter().any(asking)
}
