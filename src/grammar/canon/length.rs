//! Lengths, plain numbers, and lengths as told.
//!
//! ```text
//! told   = ["about "] length [" strong" | " shy"]
//! length = ["-"] (feet "'-" mixed '"' | mixed '"' | decimal " mm")
//! number = ["-"] mixed
//! mixed  = whole | whole " " part | part         part = whole "/" whole
//! ```
//! A number never ends in a mark and a length always does, so neither is taken for the other.

use super::Read;
use super::words::{Table, one_of, whole, words_of};
use crate::job::Told;
use crate::measure::{Length, Lumber, Q, Shade, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::character::complete::{char, digit1};
use nom::combinator::{map, map_opt, opt, verify};
use nom::sequence::{preceded, separated_pair, terminated};
use num_rational::Ratio;

const SHADES: &Table<Shade> = &[(Shade::Strong, " strong"), (Shade::Shy, " shy")];

/// A length with its manner: `about 22'-0" shy`.
pub(super) fn write_told(told: Told) -> String {
    let about = if told.about { "about " } else { "" };
    let shade = told.shade.map_or("", |s| words_of(SHADES, s));
    format!("{about}{}{shade}", exact_phrase(told.length))
}

/// Reads what [`write_told`] writes.
pub(super) fn read_told(i: &str) -> Read<'_, Told> {
    let parts = (opt(tag("about ")), read_length, opt(one_of(SHADES)));
    map(parts, |(about, length, shade)| Told { length, shade, about: about.is_some() }).parse(i)
}

/// A length in any form the printer has.
pub(super) fn read_length(i: &str) -> Read<'_, Length> {
    let inches = terminated(mixed, char('"'));
    let feet = (terminated(bounded, tag("'-")), terminated(mixed, char('"')));
    let feet = map(feet, |(feet, inches)| Ratio::from_integer(feet * 12) + inches);
    let imperial = map_opt(alt((feet, inches)), Length::from_q);
    let metric = map_opt(terminated(decimal, tag(" mm")), Length::from_mm);
    let (i, (minus, length)) = (opt(char('-')), alt((imperial, metric))).parse(i)?;
    Ok((i, if minus.is_some() { -length } else { length }))
}

/// A plain number.
pub(super) fn read_number(i: &str) -> Read<'_, Q> {
    let within = |q: &Q| *q.numer() <= Length::BOUND && *q.denom() <= Length::BOUND;
    let (i, (minus, q)) = (opt(char('-')), verify(mixed, within)).parse(i)?;
    Ok((i, if minus.is_some() { -q } else { q }))
}

/// Named lumber: `4x4`, `5/4x6`.
pub(super) fn read_lumber(i: &str) -> Read<'_, Lumber> {
    let quarters = terminated(whole, tag("/4"));
    let inches = map_opt(whole, |n: u16| n.checked_mul(4));
    let sides = separated_pair(alt((quarters, inches)), char('x'), whole);
    map(sides, |(thick_quarters, wide)| Lumber { thick_quarters, wide }).parse(i)
}

/// A whole number small enough that no step here can overflow.
fn bounded(i: &str) -> Read<'_, i128> {
    verify(whole, |n: &i128| *n <= Length::BOUND).parse(i)
}

fn mixed(i: &str) -> Read<'_, Q> {
    let both = (bounded, opt(preceded(char(' '), part)));
    let both = map(both, |(n, part)| Ratio::from_integer(n) + part.unwrap_or(Ratio::ZERO));
    alt((part, both)).parse(i)
}

fn part(i: &str) -> Read<'_, Q> {
    let pair = separated_pair(bounded, char('/'), verify(bounded, |den| *den != 0));
    map(pair, |(num, den)| Ratio::new(num, den)).parse(i)
}

fn decimal(i: &str) -> Read<'_, Q> {
    let places = verify(digit1, |digits: &str| digits.len() <= 12);
    map_opt((bounded, opt(preceded(char('.'), places))), |(n, places)| {
        let places: &str = places.unwrap_or("0");
        let scale = 10_i128.checked_pow(u32::try_from(places.len()).ok()?)?;
        Some(Ratio::from_integer(n) + Ratio::new(places.parse().ok()?, scale))
    })
    .parse(i)
}
