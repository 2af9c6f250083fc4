//! Questions about the rules themselves, known by what they are about.

use crate::grammar::items::Item;
use crate::grammar::sense::{Ask, Sense};
use crate::limits::{self, Limit};

/// The limit a question is about: an asking line with a word of its topic.
pub(super) fn topic(items: &[Item]) -> Option<&'static Limit> {
    asks(items).then_some(())?;
    let topics = items.iter().flat_map(|i| i.senses());
    topics.filter_map(|s| if let Sense::Topic(id) = s { limits::find(id) } else { None }).next()
}

/// True for a line that asks: by its opening or its mark.
pub(super) fn asks(items: &[Item]) -> bool {
    let asking = |i: &Item| {
        i.senses().iter().any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)))
            || matches!(i.is, crate::grammar::items::Is::Sep('?'))
    };
    items.iter().any(asking)
}
