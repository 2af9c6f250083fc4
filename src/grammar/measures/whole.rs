//! Whole numbers, typed or said: `14`, "ninety-four", "a hundred and three", "one-oh-four".

use super::cursor::{At, Miss, Step, Ways, hyphen, is, miss, of_kind, one, role};
use super::role::Role;
use crate::grammar::words::Kind;
use crate::measure::Length;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::opt;

/// A whole number as it was written or said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Whole<'a> {
    pub value: i128,
    /// The digits as typed; `None` when it was said in words.
    pub digits: Option<&'a str>,
    /// "one eighteen": a hundred left unsaid. Only sound where no unit follows.
    pub run_on: bool,
}

/// Every whole number that starts here, longest first.
pub(super) fn whole(i: At<'_>) -> Ways<'_, Whole<'_>> {
    if let Ok((rest, w)) = digits(i) {
        return vec![(rest, w)];
    }
    let said = |(rest, value)| (rest, Whole { value, digits: None, run_on: false });
    let mut ways: Ways<'_, Whole<'_>> = large(i).into_iter().map(said).collect();
    ways.extend(one(nought_between(i)).into_iter().map(said));
    ways.extend(one(run_on(i)).into_iter().map(|(rest, value)| (rest, Whole { value, digits: None, run_on: true })));
    ways.extend(one(below_hundred(i)).into_iter().map(said));
    ways
}

/// Digits with no decimal point.
pub(super) fn digits(i: At<'_>) -> Step<'_, Whole<'_>> {
    let (rest, text) = of_kind(Kind::Digits).parse(i)?;
    match text.parse::<i128>() {
        Ok(value) if value <= Length::BOUND => Ok((rest, Whole { value, digits: Some(text), run_on: false })),
        _ => miss(),
    }
}

/// 0 to 19.
pub(super) fn small(i: At<'_>) -> Step<'_, i128> {
    role(|r| if let Role::Small(n) = r { Some(n) } else { None }).parse(i)
}

fn digit<'a>(from: i128) -> impl Parser<At<'a>, Output = i128, Error = Miss> {
    move |i: At<'a>| small(i).and_then(|(rest, n)| if (from..10).contains(&n) { Ok((rest, n)) } else { miss() })
}

/// "ninety-four", "ninety", "fourteen", "four".
pub(super) fn below_hundred(i: At<'_>) -> Step<'_, i128> {
    alt((tens, small)).parse(i)
}

fn tens(i: At<'_>) -> Step<'_, i128> {
    let (rest, tens) = role(|r| if let Role::Tens(n) = r { Some(n) } else { None }).parse(i)?;
    match digit(1).parse(hyphen(rest)) {
        Ok((end, ones)) => Ok((end, tens + ones)),
        Err(_) => Ok((rest, tens)),
    }
}

/// "a hundred", "two hundred and three", "two thousand four hundred": with the tail
/// and without, since its "and" may tie something else on.
fn large(i: At<'_>) -> Ways<'_, i128> {
    let mut ways = Vec::new();
    for (rest, thousands) in one(scaled(i, Role::Thousand)) {
        for (end, tail) in hundreds(rest).into_iter().chain(tail(rest)) {
            ways.push((end, thousands * 1000 + tail));
        }
        ways.push((rest, thousands * 1000));
    }
    ways.extend(hundreds(i));
    ways
}

fn hundreds(i: At<'_>) -> Ways<'_, i128> {
    let mut ways = Vec::new();
    for (rest, hundreds) in one(scaled(i, Role::Hundred)) {
        ways.extend(tail(rest).map(|(end, tail)| (end, hundreds * 100 + tail)));
        ways.push((rest, hundreds * 100));
    }
    ways
}

/// So many hundreds or thousands: "a hundred", "two hundred", "twelve hundred", "hundred
/// and four".
fn scaled(i: At<'_>, scale: Role) -> Step<'_, i128> {
    let count = alt((is(Role::Article).map(|()| 1), below_hundred));
    let counted = (count, is(scale)).map(|(n, ())| n);
    alt((counted, is(scale).map(|()| 1))).parse(i)
}

fn tail(i: At<'_>) -> Option<(At<'_>, i128)> {
    (opt(is(Role::And)), below_hundred).map(|(_, n)| n).parse(hyphen(i)).ok()
}

/// "one oh four", "one-oh-four".
fn nought_between(i: At<'_>) -> Step<'_, i128> {
    let (rest, hundreds) = digit(1).parse(i)?;
    let (rest, ()) = is(Role::Oh).parse(hyphen(rest))?;
    let (rest, ones) = digit(1).parse(hyphen(rest))?;
    Ok((rest, hundreds * 100 + ones))
}

/// "one eighteen": from twelve up, since "nine two" may be feet and inches.
fn run_on(i: At<'_>) -> Step<'_, i128> {
    let (rest, hundreds) = digit(1).parse(i)?;
    let (rest, tail) = below_hundred(hyphen(rest))?;
    if tail >= 12 { Ok((rest, hundreds * 100 + tail)) } else { miss() }
}
