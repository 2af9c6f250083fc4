//! Facts of the deck as a whole.
//!
//! ```text
//! deck = "new deck" | "start over" | "deck: " length " wide"
//! ```

use super::Read;
use super::length::read_length;
use crate::job::DeckFact;
use crate::measure::exact_phrase;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, value};
use nom::sequence::delimited;

/// The plain phrase of a fact of the deck.
pub(super) fn write_deck(fact: DeckFact) -> String {
    match fact {
        DeckFact::New => "new deck".to_owned(),
        DeckFact::StartOver => "start over".to_owned(),
        DeckFact::Wide(l) => format!("deck: {} wide", exact_phrase(l)),
    }
}

/// Reads what [`write_deck`] writes.
pub(super) fn read_deck(i: &str) -> Read<'_, DeckFact> {
    alt((
        value(DeckFact::New, tag("new deck")),
        value(DeckFact::StartOver, tag("start over")),
        map(delimited(tag("deck: "), read_length, tag(" wide")), DeckFact::Wide),
    ))
    .parse(i)
}
