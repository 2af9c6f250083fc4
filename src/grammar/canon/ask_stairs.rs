//! Questions about stairs as told: `ask = "stairs"`.

use super::Read;
use crate::grammar::ask::StairAsk;
use nom::Parser;
use nom::bytes::complete::tag;
use nom::combinator::value;

/// The plain phrase, without its question mark.
pub(super) fn write_ask(ask: StairAsk) -> String {
    match ask {
        StairAsk::Told => "stairs".to_owned(),
    }
}

/// Reads what [`write_ask`] writes.
pub(super) fn read_ask(i: &str) -> Read<'_, StairAsk> {
    value(StairAsk::Told, tag("stairs")).parse(i)
}
