//! Lengths whose unit is said: a number and its unit, and what may follow inches.

use super::cursor::{At, Step, hyphen, is, maybe_preposition, miss, of_kind, stands, unit, unit_of};
use super::feet::{Feet, after_feet, foot_and_part};
use super::finish::{Found, in_unit, with_unit};
use super::number::{Heard, Shape, and, and_fraction, misheard, number, starts};
use super::role::{Role, Unit};
use super::whole::digits;
use crate::grammar::words::Kind;
use crate::measure::{Doubt, Length, Q, Said};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::opt;

/// Every length with a unit said that starts here.
pub(super) fn lengths(i: At<'_>) -> Vec<Found<'_>> {
    let mut found = Vec::new();
    for (rest, heard) in number(i) {
        if let Some((end, u)) = unit_after(rest, &heard) {
            found.extend(said(rest, end, &heard, u));
        }
        found.extend(ticks(rest, &heard));
    }
    for (rest, heard) in misheard(i) {
        if let Ok((end, Unit::Foot)) = unit(rest) {
            found.extend(said(rest, end, &heard, Unit::Foot).into_iter().map(|f| f.guessed(heard.guess)));
        }
    }
    found.extend(spaced_thousands(i).into_iter().map(|(_, f)| f));
    found.extend(named(i));
    found.extend(footer(i));
    found
}

/// A unit after a number: "inches"; after a fraction also "of an inch", "an inch".
fn unit_after<'a>(i: At<'a>, heard: &Heard<'_>) -> Option<(At<'a>, Unit)> {
    // "two sixty inch bays" are two, "one eighty-seven inches" one length.
    let several = hyphen(i).word().is_some_and(|w| w.is("inches"));
    if heard.shape == Shape::RunOn && !several || heard.plural {
        return None;
    }
    let share = alt(((opt(is(Role::Of)), is(Role::Article)).map(|_| ()), is(Role::Of)));
    let of_unit = |i| (share, unit).map(|((), u)| u).parse(i);
    let fraction = matches!(heard.shape, Shape::Fraction(_));
    unit(i).ok().or_else(|| of_unit(i).ok().filter(|_| fraction))
}

/// The number with the unit that ends at `rest`, and with what may follow it.
fn said<'a>(i: At<'a>, rest: At<'a>, heard: &Heard<'_>, u: Unit) -> Vec<Found<'a>> {
    let late = prefers_preposition(i, rest);
    let alone = with_unit(rest, heard, u).map(|f| if late { f.late() } else { f });
    let mut found: Vec<Found<'_>> = alone.into_iter().collect();
    match u {
        Unit::Foot if heard.is_whole() => found.extend(after_feet(rest, heard.value, Feet::Counted)),
        Unit::Inch if heard.is_whole() && !maybe_preposition(i) => found.extend(inch_and(rest, heard.value)),
        _ => {}
    }
    found
}

/// True for an "in" at `i` that is likelier a preposition: "3 in a row", "4 in 72".
pub(super) fn prefers_preposition(i: At<'_>, rest: At<'_>) -> bool {
    maybe_preposition(i) && (stands(rest, Role::AfterPreposition) || starts(rest) || unit(rest).is_ok())
}

/// "an inch and five eighths", "4 inches and 3/8".
fn inch_and<'a>(i: At<'a>, whole: Q) -> Vec<Found<'a>> {
    let ways = and_fraction(i).into_iter().filter(|(rest, _)| !stands(*rest, Role::Of));
    ways.filter_map(|(rest, f)| {
        Some(Found::length(rest, Length::from_q(whole + f.value)?, Said::Inches).shaded(f.shade))
    })
    .collect()
}

/// A unit that stands for one of it: "a foot", "an inch and a half", "inch and five eighths".
fn named(i: At<'_>) -> Vec<Found<'_>> {
    let Ok((from, article)) = opt(is(Role::Article)).parse(i) else { return Vec::new() };
    let is_word = from.word().is_some_and(|w| w.kind == Kind::Letters && !matches!(w.text.as_str(), "feet" | "inches"));
    let Ok((rest, u)) = unit(from) else { return Vec::new() };
    if !is_word || maybe_preposition(from) {
        return Vec::new();
    }
    let one = Q::from_integer(1);
    let mut found: Vec<Found<'_>> = match u {
        Unit::Foot if article.is_some() => after_feet(rest, one, Feet::Named),
        Unit::Foot => foot_and_part(rest, one, Feet::Named),
        Unit::Inch => inch_and(rest, one),
        _ => Vec::new(),
    };
    let said = if u == Unit::Foot { Said::Feet } else { Said::Inches };
    let alone = in_unit(one, u).filter(|_| article.is_some() && matches!(u, Unit::Foot | Unit::Inch));
    found.extend(alone.map(|l| Found::length(rest, l, said)));
    found
}

/// "a 14 footer", "one sixteen-footer".
fn footer(i: At<'_>) -> Vec<Found<'_>> {
    let counted = alt((is(Role::Article), is(Role::Small(1)))).parse(i).ok().map(|(rest, ())| rest);
    let mut found = Vec::new();
    for from in [i].into_iter().chain(counted) {
        for (rest, heard) in number(from) {
            let Ok((end, ())) = is(Role::Footer).parse(hyphen(rest)) else { continue };
            if heard.shape != Shape::RunOn {
                found.extend(with_unit(end, &heard, Unit::Foot));
            }
        }
    }
    found
}

/// `2 440 mm`: a space as the thousands mark.
fn spaced_thousands(i: At<'_>) -> Step<'_, Found<'_>> {
    let (rest, (thousands, text)) = (digits, of_kind(Kind::Digits)).parse(i)?;
    let (rest, ()) = unit_of(Unit::Millimetre).parse(rest)?;
    let hundreds = text.parse::<i128>().ok().filter(|_| text.len() == 3);
    // 30 metres of guard is past most runs: "140 140 mm" is a number said twice.
    let sum = hundreds.filter(|_| thousands.value < 30).map(|h| Q::from_integer(thousands.value * 1000 + h));
    let length = sum.and_then(|q| in_unit(q, Unit::Millimetre));
    length.map_or_else(miss, |l| Ok((rest, Found::length(rest, l, Said::Metric))))
}

/// "4 and 3 ticks", "3 ticks": eighths on one crew, sixteenths on another.
fn ticks<'a>(i: At<'a>, heard: &Heard<'_>) -> Option<Found<'a>> {
    if !heard.is_whole() {
        return None;
    }
    let after_whole = |i| {
        let (rest, _) = opt(unit_of(Unit::Inch)).parse(i)?;
        let (rest, ()) = and(rest)?;
        let (rest, n) =
            number(rest).into_iter().find(|(_, h)| h.is_whole()).ok_or(nom::Err::Error(super::cursor::Miss))?;
        is(Role::Ticks).parse(rest).map(|(rest, ())| (rest, n.value))
    };
    let (rest, whole, n) = match is(Role::Ticks).parse(i) {
        Ok((rest, ())) => (rest, Q::from_integer(0), heard.value),
        Err(_) => after_whole(i).ok().map(|(rest, n)| (rest, heard.value, n))?,
    };
    let calls = [8, 16].into_iter().filter_map(|den| Length::from_q(whole + n / Q::from_integer(den)));
    Found::doubt(rest, Doubt::CrewCall, calls.collect())
}
