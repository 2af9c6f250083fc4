//! Sums.
//!
//! ```text
//! sum   = "sum: " expr | "pieces: " inches " out of " length | "sticks: " n " pieces at " n
//!       | "convert: " length " to " unit | "diagonal: " length " by " length | "bigger: " length " or " length
//! expr  = term *((" + " | " - ") term)
//! term  = atom *((" x " | " / ") atom)
//! atom  = "(" expr ")" | length | number
//! ```
//! Signs stand between blanks: `1/2` is a number, `1 / 2` a division, `-3"` a length below nothing.
//! Both levels group from the left; brackets are written only where that is not what is meant.

use super::Read;
use super::length::{read_length, read_number};
use super::words::{Table, one_of, read_count, whole, words_of, write_count};
use crate::measure::{exact_inches, exact_phrase, mixed_number};
use crate::sums::{Expr, Into, Sum};
use nom::Err::Error;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::map;
use nom::error::{Error as At, ErrorKind};
use nom::sequence::{delimited, preceded, separated_pair};

/// The longest expression read, in bytes. It bounds how deep a chain of signs can nest, so
/// that no typed line exhausts the stack (a limit of this program's own).
pub const MOST_SUM: usize = 4096;

/// The most brackets read inside one another (a limit of this program's own).
pub const MOST_BRACKETS: u8 = 32;

const UNITS: &Table<Into> = &[
    (Into::Inches, "inches"),
    (Into::FeetInches, "feet and inches"),
    (Into::Feet, "feet"),
    (Into::Millimetres, "mm"),
    (Into::Centimetres, "cm"),
    (Into::Metres, "m"),
];

/// Makes one of two, as `Expr::Plus` does.
type Join = fn(Box<Expr>, Box<Expr>) -> Expr;

const SUMS: &Table<Join> = &[(Expr::Plus, " + "), (Expr::Less, " - ")];
const PRODUCTS: &Table<Join> = &[(Expr::Times, " x "), (Expr::Over, " / ")];

/// The plain phrase of a sum.
pub(super) fn write_sum(sum: &Sum) -> String {
    match sum {
        Sum::Value(expr) => {
            let mut text = "sum: ".to_owned();
            put_expr(&mut text, expr, 0);
            text
        }
        Sum::Pieces { piece, from } => format!("pieces: {} out of {}", exact_inches(*piece), exact_phrase(*from)),
        Sum::Sticks { pieces, per } => format!("sticks: {} at {per}", write_count(*pieces, "piece")),
        Sum::Convert(l, unit) => format!("convert: {} to {}", exact_phrase(*l), words_of(UNITS, *unit)),
        Sum::Diagonal(a, b) => format!("diagonal: {} by {}", exact_phrase(*a), exact_phrase(*b)),
        Sum::Bigger(a, b) => format!("bigger: {} or {}", exact_phrase(*a), exact_phrase(*b)),
    }
}

/// Puts an expression down, in brackets when it binds looser than `least`.
fn put_expr(text: &mut String, expr: &Expr, least: u8) {
    let (binds, a, sign, b) = match expr {
        Expr::Length(l) => return text.push_str(&exact_phrase(*l)),
        Expr::Number(q) => return text.push_str(&mixed_number(*q)),
        Expr::Plus(a, b) => (1, a, " + ", b),
        Expr::Less(a, b) => (1, a, " - ", b),
        Expr::Times(a, b) => (2, a, " x ", b),
        Expr::Over(a, b) => (2, a, " / ", b),
    };
    let (open, close) = if binds < least { ("(", ")") } else { ("", "") };
    text.push_str(open);
    put_expr(text, a, binds);
    text.push_str(sign);
    // Signs group from the left: what stands on the right must bind tighter.
    put_expr(text, b, binds + 1);
    text.push_str(close);
}

/// Reads what [`write_sum`] writes.
pub(super) fn read_sum(i: &str) -> Read<'_, Sum> {
    let two = |name, between| preceded(tag(name), separated_pair(read_length, tag(between), read_length));
    let sticks = separated_pair(read_count("piece"), tag(" at "), whole);
    alt((
        map(preceded(tag("sum: "), read_whole_expr), Sum::Value),
        map(two("pieces: ", " out of "), |(piece, from)| Sum::Pieces { piece, from }),
        map(preceded(tag("sticks: "), sticks), |(pieces, per)| Sum::Sticks { pieces, per }),
        map(preceded(tag("convert: "), separated_pair(read_length, tag(" to "), one_of(UNITS))), |(l, unit)| {
            Sum::Convert(l, unit)
        }),
        map(two("diagonal: ", " by "), |(a, b)| Sum::Diagonal(a, b)),
        map(two("bigger: ", " or "), |(a, b)| Sum::Bigger(a, b)),
    ))
    .parse(i)
}

fn read_whole_expr(i: &str) -> Read<'_, Expr> {
    if i.len() > MOST_SUM {
        return Err(Error(At::new(i, ErrorKind::TooLarge)));
    }
    read_expr(i, MOST_BRACKETS)
}

/// An expression with at most `depth` brackets inside one another.
fn read_expr(i: &str, depth: u8) -> Read<'_, Expr> {
    chain(i, SUMS, |i| chain(i, PRODUCTS, |i| read_atom(i, depth)))
}

/// One or more, joined by the signs of a table, grouped from the left.
fn chain<'a>(i: &'a str, signs: &Table<Join>, part: impl Fn(&'a str) -> Read<'a, Expr>) -> Read<'a, Expr> {
    let (mut i, mut left) = part(i)?;
    while let Ok((after, join)) = one_of(signs)(i) {
        let (rest, right) = part(after)?;
        left = join(Box::new(left), Box::new(right));
        i = rest;
    }
    Ok((i, left))
}

fn read_atom(i: &str, depth: u8) -> Read<'_, Expr> {
    if i.starts_with('(') {
        let inner = depth.checked_sub(1).ok_or(Error(At::new(i, ErrorKind::TooLarge)))?;
        return delimited(tag("("), |i| read_expr(i, inner), tag(")")).parse(i);
    }
    alt((map(read_length, Expr::Length), map(read_number, Expr::Number))).parse(i)
}
