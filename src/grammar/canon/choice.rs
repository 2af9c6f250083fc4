//! Where posts are wanted or not wanted: items of a run.
//!
//! ```text
//! choice = ("post at " | "no post at ") spot | "no told posts" | "posts mirrored" | "posts not mirrored"
//!        | "no post within " length " of " ("the from-end" | "the to-end" | "the stairs" | "the gate" | spot)
//!        | "posts kept off nothing"
//! spot   = length " from " ("the from-end" | "the to-end")
//! ```

use super::Read;
use super::length::read_length;
use super::words::{Table, one_of, words_of};
use crate::job::{Choice, EndOf, KeepOff, Spot, Thing};
use crate::measure::exact_phrase;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, value};
use nom::sequence::{preceded, separated_pair};

const ENDS: &Table<EndOf> = &[(EndOf::From, "the from-end"), (EndOf::To, "the to-end")];

/// The plain phrase of a choice.
pub(super) fn write_choice(choice: Choice) -> String {
    match choice {
        Choice::Post(spot) => format!("post at {}", write_spot(spot)),
        Choice::NoPost(spot) => format!("no post at {}", write_spot(spot)),
        Choice::NoPosts => "no told posts".to_owned(),
        Choice::Mirrored(true) => "posts mirrored".to_owned(),
        Choice::Mirrored(false) => "posts not mirrored".to_owned(),
        Choice::KeepOff(KeepOff { by, of }) => format!("no post within {} of {}", exact_phrase(by), write_thing(of)),
        Choice::NoKeepOff => "posts kept off nothing".to_owned(),
    }
}

fn write_spot(spot: Spot) -> String {
    format!("{} from {}", exact_phrase(spot.at), words_of(ENDS, spot.end))
}

fn write_thing(thing: Thing) -> String {
    match thing {
        Thing::End(end) => words_of(ENDS, end).to_owned(),
        Thing::Stairs => "the stairs".to_owned(),
        Thing::Gate => "the gate".to_owned(),
        Thing::Spot(spot) => write_spot(spot),
    }
}

/// Reads what [`write_choice`] writes.
pub(super) fn read_choice(i: &str) -> Read<'_, Choice> {
    let keep = separated_pair(read_length, tag(" of "), read_thing);
    alt((
        map(preceded(tag("no post within "), keep), |(by, of)| Choice::KeepOff(KeepOff { by, of })),
        map(preceded(tag("post at "), read_spot), Choice::Post),
        map(preceded(tag("no post at "), read_spot), Choice::NoPost),
        value(Choice::NoPosts, tag("no told posts")),
        value(Choice::Mirrored(true), tag("posts mirrored")),
        value(Choice::Mirrored(false), tag("posts not mirrored")),
        value(Choice::NoKeepOff, tag("posts kept off nothing")),
    ))
    .parse(i)
}

fn read_spot(i: &str) -> Read<'_, Spot> {
    map(separated_pair(read_length, tag(" from "), one_of(ENDS)), |(at, end)| Spot { at, end }).parse(i)
}

fn read_thing(i: &str) -> Read<'_, Thing> {
    alt((
        map(one_of(ENDS), Thing::End),
        value(Thing::Stairs, tag("the stairs")),
        value(Thing::Gate, tag("the gate")),
        map(read_spot, Thing::Spot),
    ))
    .parse(i)
}
