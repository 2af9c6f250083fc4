//! Whose rules hold.
//!
//! ```text
//! law = "code: " year " IRC" | "place: " id | "department asks: " ("height" | "gaps under" | "drop over") " " inches
//! ```

use super::Read;
use super::length::read_length;
use super::words::{Table, one_of, words_of};
use crate::job::{LawTold, Local};
use crate::limits::{Edition, Place};
use crate::measure::exact_inches;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_while1};
use nom::combinator::{map, map_opt};
use nom::sequence::{delimited, preceded, separated_pair};

const EDITIONS: &Table<Edition> = &[(Edition::Irc2018, "2018"), (Edition::Irc2021, "2021"), (Edition::Irc2024, "2024")];
const LOCAL: &Table<Local> = &[(Local::Height, "height"), (Local::Gap, "gaps under"), (Local::Drop, "drop over")];

/// The plain phrase of what was told.
pub(super) fn write_law(told: &LawTold) -> String {
    match told {
        LawTold::Edition(edition) => format!("code: {} IRC", words_of(EDITIONS, *edition)),
        LawTold::Place(place) => format!("place: {}", place.id),
        LawTold::Local(of, l) => format!("department asks: {} {}", words_of(LOCAL, *of), exact_inches(*l)),
    }
}

/// Reads what [`write_law`] writes.
pub(super) fn read_law(i: &str) -> Read<'_, LawTold> {
    let place = map_opt(take_while1(|c: char| c.is_ascii_lowercase() || c == '-'), Place::find);
    let local = separated_pair(one_of(LOCAL), tag(" "), read_length);
    alt((
        map(delimited(tag("code: "), one_of(EDITIONS), tag(" IRC")), LawTold::Edition),
        map(preceded(tag("place: "), place), LawTold::Place),
        map(preceded(tag("department asks: "), local), |(of, l)| LawTold::Local(of, l)),
    ))
    .parse(i)
}
