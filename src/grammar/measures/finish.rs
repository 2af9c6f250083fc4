//! A heard number and a unit to a measure.

use super::cursor::{At, hyphen, is, leaves_unit, stands};
use super::fraction::{Form, leaves_part};
use super::number::{Heard, Shape, starts};
use super::role::{Role, Unit};
use crate::measure::{Doubt, Guess, Length, Meaning, Measure, Number, Q, Said, Shade};
use nom::Parser;

/// A measure found, and where it ends.
#[derive(Clone, Debug)]
pub(super) struct Found<'a> {
    pub rest: At<'a>,
    pub measure: Measure,
    /// Less likely than shorter ones, though it takes more words.
    pub late: bool,
}

impl<'a> Found<'a> {
    pub fn new(rest: At<'a>, meaning: Meaning) -> Found<'a> {
        Found { rest, measure: Measure { meaning, shade: None, about: false, guess: None }, late: false }
    }

    pub fn length(rest: At<'a>, length: Length, said: Said) -> Found<'a> {
        Found::new(rest, Meaning::Length(length, said))
    }

    pub fn doubt(rest: At<'a>, doubt: Doubt, choices: Vec<Length>) -> Option<Found<'a>> {
        (!choices.is_empty()).then(|| Found::new(rest, Meaning::Doubt(doubt, choices)))
    }

    pub fn guessed(mut self, guess: Option<Guess>) -> Found<'a> {
        self.measure.guess = self.measure.guess.or(guess);
        self
    }

    pub fn shaded(mut self, shade: Option<Shade>) -> Found<'a> {
        self.measure.shade = self.measure.shade.or(shade);
        self
    }

    pub fn late(self) -> Found<'a> {
        Found { late: true, ..self }
    }
}

/// So many of a unit, as a length.
pub(super) fn in_unit(q: Q, unit: Unit) -> Option<Length> {
    // A number heard is inside the bound, so these products stay far inside 128 bits.
    match unit {
        Unit::Foot => Length::from_q(q * Q::from_integer(12)),
        Unit::Inch => Length::from_q(q),
        Unit::Millimetre => Length::from_mm(q),
        Unit::Centimetre => Length::from_mm(q * Q::from_integer(10)),
        Unit::Metre => Length::from_mm(q * Q::from_integer(1000)),
    }
}

fn said(unit: Unit) -> Said {
    match unit {
        Unit::Foot => Said::Feet,
        Unit::Inch => Said::Inches,
        Unit::Millimetre | Unit::Centimetre | Unit::Metre => Said::Metric,
    }
}

/// The number in this unit, said with it.
pub(super) fn with_unit<'a>(rest: At<'a>, heard: &Heard<'_>, unit: Unit) -> Option<Found<'a>> {
    let found = match &heard.doubt {
        // "1.8 m" said as "one point eight metres" is a plain decimal.
        Some((doubt, values)) if *doubt != Doubt::CrewCall || unit == Unit::Inch => {
            Found::doubt(rest, *doubt, values.iter().filter_map(|q| in_unit(*q, unit)).collect())?
        }
        _ => Found::length(rest, in_unit(heard.value, unit)?, said(unit)),
    };
    let halved = (unit == Unit::Foot && matches!(heard.shape, Shape::Mixed { .. })).then_some(Guess::MixedFeet);
    Some(found.guessed(heard.guess.or(halved)).shaded(heard.shade))
}

/// The number with no unit after it; nothing where that would leave a part of it behind.
pub(super) fn bare<'a>(rest: At<'a>, heard: &Heard<'_>) -> Vec<Found<'a>> {
    // "0 9/16" with no feet before it is no way to say a fraction: something went missing.
    if matches!(heard.shape, Shape::Mixed { .. }) && heard.value < Q::from_integer(1) {
        return Vec::new();
    }
    if !may_end(rest, heard) {
        return Vec::new();
    }
    let number = Number { value: heard.value, fraction: heard.has_fraction(), plural: heard.plural };
    let meaning = match (heard.shape, in_unit(heard.value, Unit::Inch)) {
        (Shape::Mixed { dashed: true }, Some(l)) => Meaning::Length(l, Said::Inches),
        _ => Meaning::Bare(number),
    };
    let plain = Found::new(rest, meaning).guessed(heard.guess).shaded(heard.shade);
    let asked = match &heard.doubt {
        Some((doubt, values)) => {
            Found::doubt(rest, *doubt, values.iter().filter_map(|q| in_unit(*q, Unit::Inch)).collect())
        }
        None if heard.shape == Shape::Decimal => return decimal(rest, heard, plain),
        None => packed(rest, heard),
    };
    vec![asked.map_or(plain, |a| a.shaded(heard.shade))]
}

/// True where the number may end with no unit: nothing of it is left behind.
pub(super) fn may_end(rest: At<'_>, heard: &Heard<'_>) -> bool {
    !leaves_unit(rest) && !leaves_number(rest) && stands_alone(rest, heard)
}

/// True when more of the number follows: "two" of "two hundred", "36" of "36-twelve".
fn leaves_number(rest: At<'_>) -> bool {
    let next = hyphen(rest);
    stands(next, Role::Hundred)
        || stands(next, Role::Thousand)
        || next.at != rest.at && (starts(next) || stands(next, Role::Oh))
}

/// True when "by" and a number follow: what ends here may be a side of them.
pub(super) fn leaves_side(rest: At<'_>) -> bool {
    is(Role::By).parse(hyphen(rest)).is_ok_and(|(next, ())| starts(next))
}

/// False for a fraction word that is a share of something ("a quarter of 21-2"), an
/// ordinal ("a third post"), or cut off from its under number.
fn stands_alone(rest: At<'_>, heard: &Heard<'_>) -> bool {
    let share = stands(rest, Role::Of);
    match heard.shape {
        Shape::Fraction(Form::Lone) => heard.shade.is_some() && !share,
        Shape::Fraction(Form::Article) => !share && [2, 4, 8, 16, 32, 64].contains(heard.value.denom()),
        // "three quarters of 8'" is a share: the sums take it.
        Shape::Fraction(Form::Counted) => true,
        // "nine twelve" may count sixteenths: the pairs ask.
        Shape::RunOn => !leaves_part(rest) && heard.value.numer() % 100 >= 16,
        Shape::Whole => !leaves_part(rest),
        Shape::Fraction(Form::Digits) | Shape::Mixed { .. } | Shape::Decimal => true,
    }
}

/// "10.6": what follows the point could be inches. The plain number comes second,
/// for a slot that only takes inches.
fn decimal<'a>(rest: At<'a>, heard: &Heard<'_>, plain: Found<'a>) -> Vec<Found<'a>> {
    let asked = decimal_choices(heard).and_then(|choices| Found::doubt(rest, Doubt::Decimal, choices));
    asked.into_iter().chain([plain]).collect()
}

fn decimal_choices(heard: &Heard<'_>) -> Option<Vec<Length>> {
    let (whole, part) = heard.typed?.split_once('.')?;
    let (feet, inches) = (whole.parse::<i128>().ok()?, part.parse::<i128>().ok()?);
    if part.len() > 2 || !(1..=11).contains(&inches) || !(1..=60).contains(&feet) {
        return None;
    }
    let mut choices = vec![Length::new(feet * 12 + inches, 1)?, in_unit(heard.value, Unit::Foot)?];
    if inches == 5 && part.len() == 1 {
        choices.reverse();
    }
    Some(choices)
}

/// "1510": four figures run together.
fn packed<'a>(rest: At<'a>, heard: &Heard<'_>) -> Option<Found<'a>> {
    let text = heard.typed.filter(|t| t.len() == 4 && !t.starts_with('0') && heard.is_whole())?;
    let n = text.parse::<i128>().ok()?;
    let feet = (n % 100 < 12).then(|| Length::new(n / 100 * 12 + n % 100, 1)).flatten();
    let plain = [in_unit(heard.value, Unit::Millimetre), in_unit(heard.value, Unit::Inch)];
    Found::doubt(rest, Doubt::Packed, feet.into_iter().chain(plain.into_iter().flatten()).collect())
}
