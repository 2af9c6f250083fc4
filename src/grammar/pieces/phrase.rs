//! Phrases matched word for word, however the lexicon cuts them up.

use super::atoms::{In, Out};
use nom::{Input, Parser};

/// One of these phrases, spelled as a line is split ("what 's"). The longest that fits.
pub fn said<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    move |input: In<'a>| -> Out<'a, ()> {
        // Nearly every phrase differs in its first letter: no more of those is looked at.
        let first = input.first().and_then(|i| i.text.as_bytes().first());
        let likely = list.iter().filter(|phrase| phrase.as_bytes().first() == first);
        let ends = likely.filter_map(|phrase| after(input, phrase));
        match ends.min_by_key(In::len) {
            Some(rest) => Ok((rest, ())),
            None => Err(nom::Err::Error(())),
        }
    }
}

/// What is ahead behind the phrase, where it stands here in whole items.
fn after<'a>(input: In<'a>, phrase: &str) -> Option<In<'a>> {
    let (mut rest, mut left) = (input, phrase);
    while !left.is_empty() {
        let item = rest.first()?;
        left = left.strip_prefix(&*item.text)?;
        left = if left.is_empty() { left } else { left.strip_prefix(' ')? };
        rest = rest.take_from(1);
    }
    Some(rest)
}

/// The line's end, or a sign that ends a clause.
pub fn ends(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(super::Item::is_sep) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}
