//! Vulgar fractions, typed or said: `7/16`, `½`, "five eighths", "a heavy sixteenth".

use super::cursor::{At, Step, Ways, glued_sign, hyphen, is, miss, of_kind, one, role, unit};
use super::role::Role;
use super::whole::{Whole, below_hundred, digits};
use crate::grammar::words::Kind;
use crate::measure::{Q, Shade};
use nom::Parser;
use nom::combinator::opt;

/// A fraction as it was written or said.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fraction {
    pub value: Q,
    /// "a heavy sixteenth": a shade said inside.
    pub shade: Option<Shade>,
    /// How it was written.
    pub form: Form,
    /// Its readings when a space between whole and fraction may have been lost; else none.
    pub lost: Vec<Q>,
}

/// How a fraction was written or said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// `3/4`, `¾`.
    Digits,
    /// "three quarters".
    Counted,
    /// "a quarter".
    Article,
    /// "quarter", with nothing before it.
    Lone,
}

/// The fraction that starts here, if one does.
pub(super) fn fraction(i: At<'_>) -> Ways<'_, Fraction> {
    let mut ways = one(typed(i));
    ways.extend(one(glyph(i)));
    ways.extend(one(counted(i)));
    ways.extend(one(article(i)));
    ways
}

fn plain(value: Q, form: Form) -> Fraction {
    Fraction { value, shade: None, form, lost: Vec::new() }
}

/// `num / den`; nothing over nothing is no fraction.
fn over(num: i128, den: i128) -> Option<Q> {
    (den != 0).then(|| Q::new(num, den))
}

fn typed(i: At<'_>) -> Step<'_, Fraction> {
    let (rest, (num, (), den)) = (digits, glued_sign(&["/"]), digits).parse(i)?;
    let (rest, _) = opt(joined_ending).parse(rest)?;
    let Some(value) = over(num.value, den.value) else { return miss() };
    Ok((rest, Fraction { lost: lost_space(num, den), ..plain(value, Form::Digits) }))
}

/// "31/2" may have been `3 1/2`: the readings, likeliest first. "5/4" is what it says.
fn lost_space(num: Whole<'_>, den: Whole<'_>) -> Vec<Q> {
    let tape = [2, 4, 8, 16, 32, 64].contains(&den.value);
    let improper = num.value >= den.value;
    let text = num.digits.filter(|_| tape && improper).unwrap_or_default();
    let splits = (1..text.len()).filter_map(|k| {
        let (whole, top) = text.split_at(k);
        let top = top.parse::<i128>().ok().filter(|t| !text[k..].starts_with('0') && *t < den.value)?;
        Some(Q::new(whole.parse::<i128>().ok()?.checked_mul(den.value)?.checked_add(top)?, den.value))
    });
    let mut readings: Vec<Q> = splits.collect();
    if !readings.is_empty() {
        readings.push(Q::new(num.value, den.value));
    }
    readings
}

/// "th", "ths" written onto digits: "7/8ths", "16ths".
fn joined_ending(i: At<'_>) -> Step<'_, ()> {
    if i.is_joined() { is(Role::PartEnding).parse(i) } else { miss() }
}

fn glyph(i: At<'_>) -> Step<'_, Fraction> {
    let (rest, text) = of_kind(Kind::Glyph).parse(i)?;
    let parts = text.split_once('/').and_then(|(n, d)| over(n.parse().ok()?, d.parse().ok()?));
    parts.map_or_else(miss, |q| Ok((rest, plain(q, Form::Digits))))
}

/// The under number: "eighths", "sixteenth", "16ths".
fn part(i: At<'_>) -> Step<'_, i128> {
    let named = role(|r| if let Role::Part(n) = r { Some(n) } else { None }).parse(i);
    named.or_else(|_| (digits, joined_ending).map(|(d, ())| d.value).parse(i))
}

/// "three quarters", "5 eighths", "fifteen-sixteenths".
fn counted(i: At<'_>) -> Step<'_, Fraction> {
    let (rest, num) = digits(i).map(|(r, w)| (r, w.value)).or_else(|_| below_hundred(i))?;
    let (rest, den) = part(hyphen(rest))?;
    // "twenty-third" is an ordinal; "five quarter" is the decking.
    if num >= den && (num, den) != (5, 4) {
        return miss();
    }
    over(num, den).map_or_else(miss, |q| Ok((rest, plain(q, Form::Counted))))
}

/// "a quarter", "a heavy sixteenth", "heavy sixteenth", "half".
fn article(i: At<'_>) -> Step<'_, Fraction> {
    let (rest, article) = opt(is(Role::Article)).parse(i)?;
    let (rest, shade) = opt(shade).parse(rest)?;
    // "11 and sixteenths" has lost its count.
    let several = rest.word().is_some_and(|w| w.text.ends_with('s'));
    let (rest, den) = part(rest)?;
    if several && article.is_none() {
        return miss();
    }
    let form = if article.is_some() { Form::Article } else { Form::Lone };
    over(1, den).map_or_else(miss, |q| Ok((rest, Fraction { shade, ..plain(q, form) })))
}

/// "heavy", "shy" ...
pub(super) fn shade(i: At<'_>) -> Step<'_, Shade> {
    role(|r| if let Role::Shade(s) = r { Some(s) } else { None }).parse(i)
}

/// True when the under number of a fraction stands here, which a whole number
/// before it belongs to. "four half inch gaps" may be four of half an inch.
pub(super) fn leaves_part(i: At<'_>) -> bool {
    part(hyphen(i)).is_ok_and(|(rest, den)| den != 2 && den != 4 || unit(rest).is_err())
}

/// Digits with their slash lost, `58` for 5/8, or the two numbers "5 8".
pub(super) fn lost_slash(i: At<'_>) -> Step<'_, Q> {
    let (rest, top) = digits(i)?;
    if let Some(q) = top.digits.and_then(unslashed) {
        return Ok((rest, q));
    }
    let (rest, under) = digits(rest)?;
    if rest.word().is_some_and(|w| w.joined) {
        return miss();
    }
    tape_fraction(top.value, under.value).map_or_else(miss, |q| Ok((rest, q)))
}

fn unslashed(text: &str) -> Option<Q> {
    (1..text.len()).map(|k| text.split_at(k)).find_map(|(top, den)| tape_fraction(top.parse().ok()?, den.parse().ok()?))
}

/// A proper fraction in lowest terms, as tapes have them.
fn tape_fraction(top: i128, den: i128) -> Option<Q> {
    ([2, 4, 8, 16, 32, 64].contains(&den) && top % 2 == 1 && top < den).then(|| Q::new(top, den))
}
