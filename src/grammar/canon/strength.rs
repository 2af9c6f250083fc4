//! Questions about span and strength.
//!
//! ```text
//! strength = "strength of " about [": " item *(", " item)]
//! item     = length " clear" | inches " high" | lumber " posts" | lumber " rail" | "flat" | "on edge"
//!          | lumber " cap" | lumber " rim" | species                                  in this order
//! ```

use super::Read;
use super::length::{read_length, read_lumber};
use super::timber::{LIES, SPECIES};
use super::words::{Table, one_of, words_of};
use crate::grammar::ask::{About, StrengthAsk};
use crate::measure::{Lumber, exact_inches, exact_phrase};
use nom::Parser;
use nom::bytes::complete::tag;
use nom::combinator::opt;
use nom::sequence::{preceded, terminated};
use std::cell::Cell;

const ABOUT: &Table<About> = &[
    (About::Bay, "a bay"),
    (About::Reach, "a bay stretched"),
    (About::Longest, "the longest bay"),
    (About::Stiffer, "one rail beside another"),
    (About::Post, "a post"),
    (About::Left, "a notched post"),
    (About::Bolt, "the upper bolt"),
];

/// The plain phrase of a strength question, its mark left off.
pub(super) fn write_strength(ask: &StrengthAsk) -> String {
    let of = |l: Option<Lumber>, what: &str| l.map(|l| format!("{l} {what}"));
    let items = [
        ask.span.map(|l| format!("{} clear", exact_phrase(l))),
        ask.height.map(|l| format!("{} high", exact_inches(l))),
        of(ask.post, "posts"),
        of(ask.rail, "rail"),
        ask.lie.map(|l| words_of(LIES, l).to_owned()),
        of(ask.cap, "cap"),
        of(ask.rim, "rim"),
        ask.species.map(|s| words_of(SPECIES, s).to_owned()),
    ];
    let items: Vec<String> = items.into_iter().flatten().collect();
    let about = words_of(ABOUT, ask.about);
    if items.is_empty() { format!("strength of {about}") } else { format!("strength of {about}: {}", items.join(", ")) }
}

/// Reads what [`write_strength`] writes.
pub(super) fn read_strength(i: &str) -> Read<'_, StrengthAsk> {
    let (i, about) = preceded(tag("strength of "), one_of(ABOUT)).parse(i)?;
    let first = Cell::new(true);
    let length = |what| item(&first, terminated(read_length, tag(what)));
    let lumber = |what| item(&first, terminated(read_lumber, tag(what)));
    let (i, (span, height)) = (length(" clear"), length(" high")).parse(i)?;
    let (i, (post, rail)) = (lumber(" posts"), lumber(" rail")).parse(i)?;
    let (i, lie) = item(&first, one_of(LIES)).parse(i)?;
    let (i, (cap, rim)) = (lumber(" cap"), lumber(" rim")).parse(i)?;
    let (i, species) = item(&first, one_of(SPECIES)).parse(i)?;
    Ok((i, StrengthAsk { about, span, height, post, rail, lie, cap, rim, species }))
}

/// An item that may be missing, behind a colon where it is the first and a comma where not.
fn item<'a, T>(
    first: &Cell<bool>,
    mut inner: impl Parser<&'a str, Output = T, Error = nom::error::Error<&'a str>>,
) -> impl FnMut(&'a str) -> Read<'a, Option<T>> {
    move |i| {
        let lead = if first.get() { ": " } else { ", " };
        let (i, found) = opt(preceded(tag(lead), |i| inner.parse(i))).parse(i)?;
        first.set(first.get() && found.is_none());
        Ok((i, found))
    }
}
