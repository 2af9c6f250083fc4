//! Questions about the rules themselves, known by what they are about.

use crate::grammar::items::{Is, Item, senses_in};
use crate::grammar::sense::{Ask, Sense};
use crate::grammar::words::Word;
use crate::limits::{self, Limit};

/// The limit a question is about: an asking line with a word of its topic. A topic
/// said in more words outweighs one said in fewer.
pub(super) fn topic(words: &[Word], items: &[Item]) -> Option<&'static Limit> {
    let opens =
        senses_in(words).any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)));
    (opens || asks(items)).then_some(())?;
    let ids: Vec<&str> =
        senses_in(words).filter_map(|s| if let Sense::Topic(id) = s { Some(id) } else { None }).collect();
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

/// True for a line that opens with "why".
pub(super) fn asks_why(items: &[Item]) -> bool {
    items.iter().find(|i| !i.is_sep() && !i.is_light()).is_some_and(|i| i.may_be(Sense::Ask(Ask::Why)))
}

/// True for "why" about what was answered, not about the rules at large.
pub(super) fn of_the_answer(words: &[Word]) -> bool {
    words.iter().any(|w| matches!(w.text.as_str(), "you" | "give" | "gave" | "get" | "got" | "there" | "put"))
}

/// True for a question that wants a count or a cut length worked out.
pub(super) fn counts(items: &[Item]) -> bool {
    let worked = [Ask::HowMany, Ask::HowLong, Ask::Where];
    items.iter().flat_map(Item::senses).any(|s| matches!(s, Sense::Ask(a) if worked.contains(a)))
}

/// True for a word an answer about this limit takes in: what asks, what names the topic, a
/// light word. Any other is named beside the answer.
pub(super) fn belongs(item: &Item, limit: &Limit) -> bool {
    let own = |s: &Sense| match s {
        Sense::Topic(id) => *id == limit.id,
        Sense::Ask(_) => true,
        _ => false,
    };
    item.is_sep() || item.senses().iter().any(own) || item.is_light() && !item.may_be(Sense::Not) && !weighs(item)
}

/// A word that is light only where it stands beside nothing: a qualifier, a unit, a verb.
fn weighs(item: &Item) -> bool {
    let heavy = |s: &Sense| matches!(s, Sense::Qualifier | Sense::Unit(_) | Sense::Verb(_) | Sense::Part(_));
    item.senses().iter().any(heavy)
}
