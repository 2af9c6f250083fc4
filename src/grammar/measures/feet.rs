//! Feet and inches, once the feet are read: `10'-6 3/4"`, "seven foot one and a half".

use super::cursor::{At, Ways, glued_sign, is, leaves_unit, one, sign, stands, unit};
use super::finish::{Found, in_unit, leaves_side, may_end};
use super::fraction::Form;
use super::lengths::prefers_preposition;
use super::number::{Heard, Shape, and, and_fraction, homophone, number};
use super::role::{Role, Unit};
use crate::measure::{Guess, Length, Q, Said};
use nom::Parser;
use nom::branch::alt;

/// Whether the feet were counted or only named, "a foot".
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Feet {
    Counted,
    Named,
}

/// What stands between feet and inches.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Link {
    /// Nothing at all, or a dash with no space: `10'6`, `10'-6`.
    Glued,
    Space,
    And,
    /// A spaced dash or a comma: feet and inches only when the inches say so.
    Loose,
}

/// Everything that may follow whole feet and belong to them.
pub(super) fn after_feet(i: At<'_>, feet: Q, kind: Feet) -> Vec<Found<'_>> {
    let mut found = foot_and_part(i, feet, kind);
    for (from, link) in links(i) {
        for (rest, heard) in number(from) {
            found.extend(feet_and(rest, feet, &heard, link));
        }
    }
    for (rest, heard) in homophone(i) {
        found.extend(feet_and(rest, feet, &heard, Link::Space).into_iter().map(Found::late));
    }
    found.extend(level(i, feet));
    found
}

/// "eight foot even": no inches.
fn level(i: At<'_>, feet: Q) -> Option<Found<'_>> {
    let (rest, ()) = is(Role::Level).parse(i).ok()?;
    Some(Found::length(rest, in_unit(feet, Unit::Foot)?, Said::Feet))
}

fn links(i: At<'_>) -> Ways<'_, Link> {
    if let Ok((rest, ())) = glued_sign(&["-"]).parse(i) {
        return vec![(rest, Link::Glued)];
    }
    if i.is_joined() {
        return vec![(i, Link::Glued)];
    }
    let mut links = vec![(i, Link::Space)];
    links.extend(one(and(i)).into_iter().map(|(rest, ())| (rest, Link::And)));
    links.extend(one(alt((sign("-"), sign(","))).map(|()| Link::Loose).parse(i)));
    links
}

/// Feet with these inches after them, their unit said or left out.
fn feet_and<'a>(i: At<'a>, feet: Q, heard: &Heard<'_>, link: Link) -> Vec<Found<'a>> {
    // Of a fraction with no count, "a half", the feet may be the whole: see `foot_and_part`.
    let uncounted = matches!(heard.shape, Shape::Fraction(Form::Article | Form::Lone));
    // "4' 15\"" may carry; two feet of inches and more behind feet are a slip, or a height ("10' 36\" high").
    let slip = heard.value >= Q::from_integer(24);
    if heard.plural || slip || heard.shape == Shape::RunOn || uncounted && link != Link::And {
        return Vec::new();
    }
    let mut found = Vec::new();
    if let Ok((rest, Unit::Inch)) = unit(i) {
        let late = prefers_preposition(i, rest);
        found.extend(feet_inches(rest, feet, heard).map(|f| if late { f.late() } else { f }));
        found.extend(inches_and_part(rest, feet, heard));
    }
    let unsaid = link != Link::Loose && !uncounted && heard.shape != Shape::Decimal;
    let small = heard.value < Q::from_integer(12) || link == Link::Glued;
    if unsaid && small && may_end(i, heard) {
        found.extend(feet_inches(i, feet, heard).map(|f| if leaves_side(i) { f.late() } else { f }));
    }
    found
}

/// "twelve foot six inches and a quarter".
fn inches_and_part<'a>(i: At<'a>, feet: Q, heard: &Heard<'_>) -> Vec<Found<'a>> {
    if !heard.is_whole() || heard.doubt.is_some() {
        return Vec::new();
    }
    let ways = and_fraction(i).into_iter().filter(|(rest, _)| !stands(*rest, Role::Of) && !leaves_unit(*rest));
    let inches = ways.filter_map(|(rest, f)| {
        let length = Length::from_q(feet * Q::from_integer(12) + heard.value + f.value)?;
        Some(Found::length(rest, length, Said::FeetInches).shaded(f.shade))
    });
    inches.collect()
}

fn feet_inches<'a>(rest: At<'a>, feet: Q, heard: &Heard<'_>) -> Option<Found<'a>> {
    let total = |inches: Q| Length::from_q(feet * Q::from_integer(12) + inches);
    let carried = (heard.value >= Q::from_integer(12)).then_some(Guess::CarriedOver);
    let found = match &heard.doubt {
        Some((doubt, values)) => Found::doubt(rest, *doubt, values.iter().filter_map(|q| total(*q)).collect())?,
        None => Found::length(rest, total(heard.value)?, Said::FeetInches).guessed(carried),
    };
    Some(found.guessed(heard.guess).shaded(heard.shade))
}

/// "three foot and a half": half of a foot, though some mean half an inch. A quarter
/// is likelier of an inch, any finer part is always.
pub(super) fn foot_and_part(i: At<'_>, feet: Q, kind: Feet) -> Vec<Found<'_>> {
    let mut found = Vec::new();
    for (rest, f) in and_fraction(i) {
        if !matches!(f.form, Form::Article | Form::Lone) || leaves_unit(rest) || stands(rest, Role::Of) {
            continue;
        }
        let certain = kind == Feet::Named && *f.value.denom() == 2;
        let guess = (!certain).then_some(Guess::HalfFoot);
        let of_foot = in_unit(feet + f.value, Unit::Foot).map(|l| Found::length(rest, l, Said::Feet).guessed(guess));
        let of_inch = Length::from_q(feet * Q::from_integer(12) + f.value);
        let of_inch = of_inch.map(|l| Found::length(rest, l, Said::FeetInches).shaded(f.shade));
        match *f.value.denom() {
            2 => found.extend(of_foot.into_iter().chain(of_inch.filter(|_| !certain))),
            4 => found.extend(of_inch.into_iter().chain(of_foot)),
            _ => found.extend(of_inch),
        }
    }
    found
}
