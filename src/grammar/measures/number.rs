//! Numbers with no unit yet: whole, decimal, a fraction, or a whole with a fraction.

use super::cursor::{At, Step, Ways, glued_sign, is, miss, of_kind, one, role, stands};
use super::fraction::{Form, Fraction, fraction, lost_slash};
use super::role::Role;
use super::whole::{Whole, digits, small, whole};
use crate::grammar::words::Kind;
use crate::measure::{Doubt, Guess, Length, Q, Shade, q_from_decimal};
use nom::Parser;
use nom::branch::alt;
use rust_decimal::Decimal;

/// A number as it was written or said, before any unit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Heard<'a> {
    pub value: Q,
    pub shape: Shape,
    /// Digits as typed, with their decimal point; `None` for words and fractions.
    pub typed: Option<&'a str>,
    pub plural: bool,
    pub shade: Option<Shade>,
    pub guess: Option<Guess>,
    /// What it may be, likeliest first, when it is always asked.
    pub doubt: Option<(Doubt, Vec<Q>)>,
}

/// The shape a number was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shape {
    Whole,
    /// "one eighteen": sound only where no unit follows.
    RunOn,
    Decimal,
    /// A fraction alone.
    Fraction(Form),
    /// A whole number and a fraction.
    Mixed {
        /// "9-1/2": inches, by the dash.
        dashed: bool,
    },
}

impl Heard<'_> {
    pub fn has_fraction(&self) -> bool {
        matches!(self.shape, Shape::Fraction(_) | Shape::Mixed { .. })
    }

    pub fn is_whole(&self) -> bool {
        self.shape == Shape::Whole && !self.plural
    }
}

/// Every number that starts here.
pub(super) fn number(i: At<'_>) -> Ways<'_, Heard<'_>> {
    let mut ways = Vec::new();
    for (rest, w) in whole(i) {
        let parts = mixed(rest, w);
        ways.extend(parts.iter().filter_map(|(rest, h)| plural_part(*rest, h)));
        ways.extend(parts);
        ways.push((rest, plain(w)));
        ways.extend(plural_digits(rest, w));
    }
    ways.extend(fraction(i).into_iter().map(|(rest, f)| (rest, alone(f))));
    ways.extend(one(plural_word(i)));
    ways.extend(one(decimal(i)));
    ways.extend(one(spoken_decimal(i)));
    ways
}

fn heard<'a>(value: Q, shape: Shape) -> Heard<'a> {
    Heard { value, shape, typed: None, plural: false, shade: None, guess: None, doubt: None }
}

fn plain(w: Whole<'_>) -> Heard<'_> {
    let shape = if w.run_on { Shape::RunOn } else { Shape::Whole };
    Heard { typed: w.digits, ..heard(Q::from_integer(w.value), shape) }
}

fn alone<'a>(f: Fraction) -> Heard<'a> {
    let doubt = (!f.lost.is_empty()).then_some((Doubt::Lost, f.lost));
    Heard { shade: f.shade, doubt, ..heard(f.value, Shape::Fraction(f.form)) }
}

/// "38s", "38's".
fn plural_digits<'a>(i: At<'a>, w: Whole<'a>) -> Option<(At<'a>, Heard<'a>)> {
    w.digits.filter(|_| i.is_joined())?;
    let (rest, text) = of_kind(Kind::Letters).parse(i).ok()?;
    matches!(text, "s" | "'s").then(|| (rest, Heard { plural: true, ..plain(w) }))
}

/// "34 1/2s": pieces of that length.
fn plural_part<'a>(i: At<'a>, heard: &Heard<'a>) -> Option<(At<'a>, Heard<'a>)> {
    let (rest, text) = of_kind(Kind::Letters).parse(i).ok().filter(|_| i.is_joined())?;
    matches!(text, "s" | "'s").then(|| (rest, Heard { plural: true, ..heard.clone() }))
}

/// "sixteens".
fn plural_word(i: At<'_>) -> Step<'_, Heard<'_>> {
    let (rest, n) = role(|r| if let Role::Plural(n) = r { Some(n) } else { None }).parse(i)?;
    Ok((rest, Heard { plural: true, ..heard(Q::from_integer(n), Shape::Whole) }))
}

/// The whole number `w` with each fraction that may follow it.
fn mixed<'a>(i: At<'a>, w: Whole<'a>) -> Ways<'a, Heard<'a>> {
    let dash = w.digits.and_then(|_| glued_sign(&["-"]).parse(i).ok());
    let link: Ways<'a, bool> = match dash {
        Some((rest, ())) => vec![(rest, true)],
        None => [(i, false)].into_iter().chain(one(and(i)).into_iter().map(|(r, ())| (r, false))).collect(),
    };
    let mut ways = Vec::new();
    for (from, dashed) in link {
        let linked = from.at != i.at;
        for (rest, f) in fraction(from) {
            if linked || matches!(f.form, Form::Digits | Form::Counted) {
                ways.extend(together(w, f, dashed).map(|h| (rest, h)));
            }
        }
        ways.extend(slash_lost(from, w, linked && !dashed));
    }
    ways
}

/// "and", "n", "&".
pub(super) fn and(i: At<'_>) -> Step<'_, ()> {
    is(Role::And).parse(i)
}

fn together<'a>(w: Whole<'a>, f: Fraction, dashed: bool) -> Option<Heard<'a>> {
    let value = Q::from_integer(w.value) + f.value;
    let carried = f.value >= Q::from_integer(1);
    // "0 5/4" is no number: two stand side by side.
    if carried && w.value == 0 {
        return None;
    }
    let guess = carried.then_some(Guess::CarriedOver);
    Length::from_q(value)?;
    // "9-71/4": a space went missing, rather than so many quarters carried over.
    let doubt = (f.value >= Q::from_integer(2)).then(|| (Doubt::Lost, vec![value]));
    Some(Heard { shade: f.shade, guess, doubt, ..heard(value, Shape::Mixed { dashed }) })
}

/// "4 38", "62 and 5 8": the slash may be lost. After an "and" nothing but a
/// fraction makes sense, so it is also read as one.
fn slash_lost<'a>(i: At<'a>, w: Whole<'a>, after_and: bool) -> Ways<'a, Heard<'a>> {
    let Ok((rest, f)) = lost_slash(i) else { return Vec::new() };
    let Some(digits) = w.digits else { return Vec::new() };
    let one_word = rest.at == i.at + 1;
    // "12 - 14" and "4 and 38" are two numbers; "5 8" after a whole has lost its slash.
    if digits.len() > 3 || i.is_joined() || after_and && one_word {
        return Vec::new();
    }
    let value = Q::from_integer(w.value) + f;
    let shape = Shape::Mixed { dashed: false };
    let asked = Heard { doubt: Some((Doubt::Lost, vec![value])), ..heard(value, shape) };
    let read = Heard { guess: Some(Guess::LostSlash), ..heard(value, shape) };
    if after_and { vec![(rest, read), (rest, asked)] } else { vec![(rest, asked)] }
}

/// `13.25`, exactly.
fn decimal(i: At<'_>) -> Step<'_, Heard<'_>> {
    let (rest, text) = of_kind(Kind::Digits).parse(i)?;
    let value = text.contains('.').then(|| exact_decimal(text)).flatten();
    value.map_or_else(miss, |q| Ok((rest, Heard { typed: Some(text), ..heard(q, Shape::Decimal) })))
}

fn exact_decimal(text: &str) -> Option<Q> {
    let q = q_from_decimal(Decimal::from_str_exact(text).ok()?)?;
    Length::from_q(q).map(|_| q)
}

/// "one point eight three". One figure after the point may be a crew's call of marks.
fn spoken_decimal(i: At<'_>) -> Step<'_, Heard<'_>> {
    let (rest, whole) = alt((digits.map(|w| w.value), small)).parse(i)?;
    let (rest, ()) = is(Role::Point).parse(rest)?;
    let (mut rest, first) = figure(rest)?;
    let (mut value, mut step) = (Q::from_integer(whole) + Q::new(first, 10), 10);
    for _ in 0..3 {
        let Ok((next, n)) = figure(rest) else { break };
        step *= 10;
        value += Q::new(n, step);
        rest = next;
    }
    let marks = [16, 8].map(|den| Q::from_integer(whole) + Q::new(first, den));
    let doubt = (step == 10).then(|| (Doubt::CrewCall, vec![marks[0], marks[1], value]));
    Ok((rest, Heard { doubt, ..heard(value, Shape::Decimal) }))
}

/// One figure after the point.
fn figure(i: At<'_>) -> Step<'_, i128> {
    let oh = is(Role::Oh).map(|()| 0);
    let (rest, n) = alt((small, digits.map(|w| w.value), oh)).parse(i)?;
    if (0..10).contains(&n) { Ok((rest, n)) } else { miss() }
}

/// "too and a half": what dictation wrote for a number, with the fraction that shows it.
pub(super) fn homophone(i: At<'_>) -> Ways<'_, Heard<'_>> {
    let heard_as = role(|r| if let Role::Homophone(n) = r { Some(n) } else { None }).parse(i);
    let Ok((rest, n)) = heard_as else { return Vec::new() };
    let Ok((rest, ())) = and(rest) else { return Vec::new() };
    let w = Whole { value: n, digits: None, run_on: false };
    let guessed = |h| Heard { guess: Some(Guess::Homophone), ..h };
    let ways = fraction(rest).into_iter();
    ways.filter_map(|(end, f)| Some((end, guessed(together(w, f, false)?)))).collect()
}

/// "ate" before its unit: eight, as a guess. "to" and "for" are too often themselves there.
pub(super) fn misheard(i: At<'_>) -> Ways<'_, Heard<'_>> {
    let heard_as = role(|r| if let Role::Homophone(n) = r { Some(n) } else { None }).parse(i);
    let eight = heard_as.ok().filter(|(_, n)| *n == 8);
    let guessed = |n| Heard { guess: Some(Guess::Homophone), ..heard(Q::from_integer(n), Shape::Whole) };
    eight.into_iter().map(|(rest, n)| (rest, guessed(n))).collect()
}

/// A fraction after the "and" of "a foot and a half".
pub(super) fn and_fraction(i: At<'_>) -> Ways<'_, Fraction> {
    one(and(i)).into_iter().flat_map(|(rest, ())| fraction(rest)).collect()
}

/// True where a number starts: a digit, a number word.
pub(super) fn starts(i: At<'_>) -> bool {
    !stands(i, Role::Article) && !number(i).is_empty()
}
