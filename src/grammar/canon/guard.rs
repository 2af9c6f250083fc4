//! Questions about the guard itself.
//!
//! ```text
//! ask = "guard needed" [" at " inches " up"] | "guard " inches " high enough"
//! ```

use super::Read;
use super::length::read_length;
use crate::grammar::ask::GuardAsk;
use crate::measure::exact_inches;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt};
use nom::sequence::{delimited, preceded};

/// The plain phrase of a question, its "?" aside.
pub(super) fn write_guard(ask: GuardAsk) -> String {
    match ask {
        GuardAsk::Needed(drop) => {
            format!("guard needed{}", drop.map_or(String::new(), |l| format!(" at {} up", exact_inches(l))))
        }
        GuardAsk::HighEnough(l) => format!("guard {} high enough", exact_inches(l)),
    }
}

/// Reads what [`write_guard`] writes.
pub(super) fn read_guard(i: &str) -> Read<'_, GuardAsk> {
    let drop = delimited(tag(" at "), read_length, tag(" up"));
    alt((
        map(preceded(tag("guard needed"), opt(drop)), GuardAsk::Needed),
        map(delimited(tag("guard "), read_length, tag(" high enough")), GuardAsk::HighEnough),
    ))
    .parse(i)
}
