//! Two numbers with no unit that may be feet and inches: `7-9`, `10:06`, "nine two", `10 6`.

use super::cursor::{At, Ways, glued_sign, hyphen, is, one, unit};
use super::finish::{Found, in_unit, leaves_side, may_end};
use super::lengths::prefers_preposition;
use super::number::{Heard, Shape, and, homophone, number};
use super::role::{Role, Unit};
use super::whole::{Whole, small, whole};
use crate::grammar::words::Kind;
use crate::measure::{Doubt, Guess, Length, Q, Said};
use nom::Parser;

/// Every pair that starts here.
pub(super) fn pairs(i: At<'_>) -> Vec<Found<'_>> {
    let mut found = Vec::new();
    for (rest, first) in whole(i) {
        // Past two figures no builder counts feet: "a hundred and four".
        if first.run_on || first.value > 99 {
            continue;
        }
        let dash = glued_sign(&["-"]).parse(rest).ok();
        match dash {
            Some((from, ())) if first.digits.is_some() || is_typed(from) => found.extend(dashed(from, first)),
            _ => found.extend(spaced(hyphen(rest), first)),
        }
        found.extend(clock(rest, first));
        found.extend(and_pair(rest, first));
        found.extend(misheard(rest, first));
    }
    found
}

fn is_typed(i: At<'_>) -> bool {
    i.word().is_some_and(|w| w.kind == Kind::Digits)
}

/// The second number of a pair: whole, or whole with a fraction, and nothing in doubt.
fn second(i: At<'_>) -> Ways<'_, Heard<'_>> {
    let fits = |h: &Heard<'_>| h.is_whole() || matches!(h.shape, Shape::Mixed { .. });
    number(i).into_iter().filter(|(_, h)| fits(h) && h.doubt.is_none() && h.guess.is_none()).collect()
}

fn feet_inches(feet: i128, inches: Q) -> Option<Length> {
    Length::from_q(Q::from_integer(feet * 12) + inches)
}

fn told<'a>(rest: At<'a>, feet: i128, inches: &Heard<'_>, guess: Guess) -> Option<Found<'a>> {
    let length = feet_inches(feet, inches.value)?;
    Some(Found::length(rest, length, Said::FeetInches).guessed(Some(guess)).shaded(inches.shade))
}

/// `7-9`, `10-6-3/4`: feet and inches when the second is under 12, and perhaps a range.
fn dashed<'a>(i: At<'a>, first: Whole<'_>) -> Vec<Found<'a>> {
    let mut found = Vec::new();
    for (rest, heard) in second(i) {
        match unit(rest) {
            Ok((end, _)) if prefers_preposition(rest, end) => {
                // "14-2 in inches": the unit comes after, and is what is asked for.
                found.extend(
                    told(rest, first.value, &heard, Guess::DashPair).filter(|_| heard.value < Q::from_integer(12)),
                );
            }
            Ok((end, u @ (Unit::Inch | Unit::Foot))) => {
                found.extend(range(end, first, &heard, Some(u)));
                let pair = (u == Unit::Inch && heard.value < Q::from_integer(12))
                    .then(|| told(end, first.value, &heard, Guess::DashPair));
                found.extend(pair.flatten());
            }
            _ if !may_end(rest, &heard) => {}
            _ if heard.value < Q::from_integer(12) => {
                found.extend(told(rest, first.value, &heard, Guess::DashPair));
                found.extend(range(rest, first, &heard, None));
            }
            _ => found.extend(sixteenths(rest, first, &heard).or_else(|| range(rest, first, &heard, Some(Unit::Inch)))),
        }
    }
    found
}

/// "6-8 apart": from one to the other.
fn range<'a>(rest: At<'a>, first: Whole<'_>, last: &Heard<'_>, said: Option<Unit>) -> Option<Found<'a>> {
    let from = Q::from_integer(first.value);
    if from >= last.value || last.value > Q::from_integer(100) {
        return None;
    }
    let may_pair = said != Some(Unit::Foot) && last.value < Q::from_integer(12);
    let pair = may_pair.then(|| feet_inches(first.value, last.value)).flatten();
    let u = said.unwrap_or(Unit::Foot);
    let ends = [in_unit(from, u), in_unit(last.value, u)];
    Found::doubt(rest, Doubt::Range, pair.into_iter().chain(ends.into_iter().flatten()).collect())
}

/// "36-twelve", `10-14`: no feet and inches, so the second may count sixteenths.
fn sixteenths<'a>(rest: At<'a>, first: Whole<'_>, heard: &Heard<'_>) -> Option<Found<'a>> {
    let n = heard.value.is_integer().then(|| heard.value.to_integer()).filter(|n| (1..16).contains(n))?;
    let marks = Length::new(first.value * 16 + n, 16);
    let feet = feet_inches(first.value, heard.value);
    // "one twelve" is first of all a hundred and twelve.
    let run_on = (first.value < 10 && n >= 12 && first.digits.is_none()).then(|| Length::new(first.value * 100 + n, 1));
    Found::doubt(rest, Doubt::Sixteenths, [run_on.flatten(), marks, feet].into_iter().flatten().collect())
}

/// "nine two", `10 6`, "ten oh six".
fn spaced<'a>(i: At<'a>, first: Whole<'_>) -> Vec<Found<'a>> {
    let nought = is(Role::Oh).parse(i).ok().filter(|_| first.value >= 10 && first.digits.is_none());
    let from = nought.filter(|(rest, ())| small(hyphen(*rest)).is_ok()).map_or(i, |(rest, ())| hyphen(rest));
    if i.is_joined() && first.digits.is_some() {
        return Vec::new();
    }
    let said = [first.digits.is_none(), !is_typed(from)];
    let mut found = Vec::new();
    for (rest, heard) in second(from) {
        let inch = unit(rest).ok().filter(|(_, u)| *u == Unit::Inch && said == [true; 2]).map(|(end, _)| end);
        let bare = (may_end(rest, &heard) && !leaves_side(rest)).then_some(rest);
        for end in inch.into_iter().chain(bare) {
            found.extend(spaced_pair(end, first, &heard, said));
        }
    }
    found
}

/// Two numbers apart; `said` tells which of them are words. Digits apart are asked about.
fn spaced_pair<'a>(end: At<'a>, first: Whole<'_>, heard: &Heard<'_>, said: [bool; 2]) -> Option<Found<'a>> {
    let inches = heard.value;
    if inches >= Q::from_integer(12) {
        return if said.contains(&true) { sixteenths(end, first, heard) } else { None };
    }
    let pair = feet_inches(first.value, inches)?;
    if said != [true; 2] {
        return Found::doubt(end, Doubt::SpacedPair, vec![pair]);
    }
    // "one ten": a hundred and ten inches, or one foot ten.
    if first.value <= 3 && inches >= Q::from_integer(10) {
        let mut choices = vec![pair, Length::from_q(Q::from_integer(first.value * 100) + inches)?];
        if first.value == 1 {
            choices.reverse();
        }
        return Found::doubt(end, Doubt::SpacedPair, choices);
    }
    told(end, first.value, heard, Guess::SpokenPair)
}

/// `10:06`, `10;6`: dictation's clock times. A colon wants two figures, as a clock has.
fn clock<'a>(i: At<'a>, first: Whole<'_>) -> Vec<Found<'a>> {
    let colon = one(glued_sign(&[":"]).parse(i)).into_iter().map(|(rest, ())| (rest, 2));
    let semicolon = one(glued_sign(&[";"]).parse(i)).into_iter().map(|(rest, ())| (rest, 1));
    let mut found = Vec::new();
    for (from, figures) in colon.chain(semicolon).filter(|_| first.digits.is_some()) {
        if from.word().is_none_or(|w| w.text.len() < figures) {
            continue;
        }
        let inches = second(from).into_iter().filter(|(rest, h)| h.value < Q::from_integer(12) && may_end(*rest, h));
        found.extend(inches.filter_map(|(rest, h)| told(rest, first.value, &h, Guess::ClockPair)));
    }
    found
}

/// `4 and 8`: two numbers, unless a crew calls sixteenths.
fn and_pair<'a>(i: At<'a>, first: Whole<'_>) -> Vec<Found<'a>> {
    let from = one(and(i)).into_iter().filter(|_| first.digits.is_some());
    let ways = from.flat_map(|(rest, ())| second(rest)).filter(|(rest, h)| h.is_whole() && may_end(*rest, h));
    ways.filter_map(|(rest, h)| sixteenths(rest, first, &h).map(Found::late)).collect()
}

/// "eleven too and a half": dictation wrote the inches as another word.
fn misheard<'a>(i: At<'a>, first: Whole<'_>) -> Vec<Found<'a>> {
    let ways = homophone(i).into_iter().filter(|(rest, h)| may_end(*rest, h));
    ways.filter_map(|(rest, h)| told(rest, first.value, &h, Guess::Homophone).map(Found::late)).collect()
}
