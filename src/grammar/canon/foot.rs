//! Facts of the posts' feet.
//!
//! ```text
//! foot = "nosing: " words | "decking: " inches " thick" | "rim: " inches " tall" | "cap: " inches " on the posts"
//!      | "posts above the rail: " inches | "blade: " inches | "bolts: " inches | "angled posts: " words
//!      | "notch at the rail: " inches " deep" | "notched anyway: " words
//! ```

use super::Read;
use super::length::read_length;
use super::words::{Table, one_of, words_of};
use crate::job::{Anyway, Foot, Nosing, Turned};
use crate::measure::exact_inches;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::map;
use nom::sequence::{delimited, preceded};

const NOSINGS: &Table<Nosing> = &[(Nosing::CutBack, "cut back at the posts"), (Nosing::Whole, "whole at the posts")];

const TURNS: &Table<Turned> = &[
    (Turned::First, "square to the first side"),
    (Turned::Next, "square to the next side"),
    (Turned::Split, "splitting the turn"),
];

const ANYWAYS: &Table<Anyway> = &[(Anyway::Sleeve, "a sleeve that carries nothing"), (Anyway::Told, "told so")];

/// The plain phrase of a fact of the feet.
pub(super) fn write_foot(foot: Foot) -> String {
    match foot {
        Foot::Nosing(n) => format!("nosing: {}", words_of(NOSINGS, n)),
        Foot::Decking(l) => format!("decking: {} thick", exact_inches(l)),
        Foot::RimTall(l) => format!("rim: {} tall", exact_inches(l)),
        Foot::Cap(l) => format!("cap: {} on the posts", exact_inches(l)),
        Foot::Above(l) => format!("posts above the rail: {}", exact_inches(l)),
        Foot::Blade(l) => format!("blade: {}", exact_inches(l)),
        Foot::Bolt(l) => format!("bolts: {}", exact_inches(l)),
        Foot::Turned(t) => format!("angled posts: {}", words_of(TURNS, t)),
        Foot::RailNotch(l) => format!("notch at the rail: {} deep", exact_inches(l)),
        Foot::Anyway(a) => format!("notched anyway: {}", words_of(ANYWAYS, a)),
    }
}

/// Reads what [`write_foot`] writes.
pub(super) fn read_foot(i: &str) -> Read<'_, Foot> {
    let between = |before, after| delimited(tag(before), read_length, tag(after));
    alt((
        map(preceded(tag("nosing: "), one_of(NOSINGS)), Foot::Nosing),
        map(between("decking: ", " thick"), Foot::Decking),
        map(between("rim: ", " tall"), Foot::RimTall),
        map(between("cap: ", " on the posts"), Foot::Cap),
        map(between("posts above the rail: ", ""), Foot::Above),
        map(between("blade: ", ""), Foot::Blade),
        map(between("bolts: ", ""), Foot::Bolt),
        map(preceded(tag("angled posts: "), one_of(TURNS)), Foot::Turned),
        map(between("notch at the rail: ", " deep"), Foot::RailNotch),
        map(preceded(tag("notched anyway: "), one_of(ANYWAYS)), Foot::Anyway),
    ))
    .parse(i)
}
