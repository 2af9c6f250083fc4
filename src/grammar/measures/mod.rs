//! Islands of measure: lengths, numbers and lumber, as typed or as said.
//!
//! ```text
//! island   = [about] [a] [shade] core [shade] [about]
//! core     = length | pair | bare number | side by side
//! length   = feet [link inches] | inches | metric | "a foot and a half" | "a 14 footer"
//! pair     = A-B | A:B | "nine two" | A B        feet and inches with no unit: a guess or a doubt
//! side     = number | length                     `16x12`, "10 by 14"; lumber where a size has that name
//! number   = whole | whole [-|and] fraction | fraction | decimal
//! ```
//!
//! Each part gives every way it may be read. An island may only begin and end where
//! [`parts_before`] says so: a glued cluster of digits and marks is one island or unread.

mod around;
mod cursor;
mod feet;
mod finish;
mod fraction;
mod lengths;
mod number;
mod pairs;
mod role;
mod sides;
mod whole;

use super::words::{Word, parts_before};
use crate::measure::{Measure, Q};
use cursor::{At, is};
use finish::Found;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::opt;
use role::Role;
use std::cmp::Reverse;

pub(super) use role::is_tail;

/// A measure read from words `at..end`.
#[derive(Clone, Debug, PartialEq)]
pub struct Island {
    /// One past the last word of it.
    pub end: usize,
    /// What it may mean.
    pub measure: Measure,
}

/// The most ways one place is read; further ones are the least likely.
const MOST: usize = 16;

/// Every measure that starts at word `at`, likeliest (longest) first.
pub fn measures_at(words: &[Word], at: usize) -> Vec<Island> {
    if at >= words.len() || !parts_before(words, at) {
        return Vec::new();
    }
    let mut found = around::around(At::new(words, at), core);
    found.retain(|f| parts_before(words, f.rest.at) && !(f.rest.at == at + 1 && stands_for_a_thing(words, at)));
    found.sort_by_key(|f| (f.late, Reverse(f.rest.at)));
    let mut islands: Vec<Island> = Vec::new();
    for f in found {
        let island = Island { end: f.rest.at, measure: f.measure };
        if islands.len() < MOST && !islands.contains(&island) {
            islands.push(island);
        }
    }
    islands
}

/// Words behind which "one" stands for a thing spoken of.
const POINTING: &[&str] = &["every", "each", "this", "that", "which", "any", "another", "other", "no"];

/// True for the "one" of "every one", "this one": it stands for a thing, and measures and counts nothing by itself.
pub(super) fn stands_for_a_thing(words: &[Word], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|b| words.get(b));
    words.get(at).is_some_and(|w| w.is("one")) && before.is_some_and(|b| POINTING.contains(&b.text.as_str()))
}

/// A measure with nothing around it.
fn core(i: At<'_>) -> Vec<Found<'_>> {
    let one_side = one_side(i);
    let mut found = sides::by(&one_side, one_side_of);
    found.extend(one_side);
    found
}

fn one_side_of(i: At<'_>) -> Vec<Found<'_>> {
    one_side(i)
}

/// A measure that is not two sides.
fn one_side(i: At<'_>) -> Vec<Found<'_>> {
    let mut found = lengths::lengths(i);
    found.extend(pairs::pairs(i));
    for (rest, heard) in number::number(i) {
        found.extend(finish::bare(rest, &heard));
    }
    found
}

/// A whole count at word `at`: where it ends, and how many. "13", "thirteen", "one",
/// "a dozen", "a couple of". Not a number that a fraction or a unit belongs to.
pub fn count_at(words: &[Word], at: usize) -> Option<(usize, u64)> {
    if at >= words.len() || !parts_before(words, at) {
        return None;
    }
    let i = At::new(words, at);
    let numbers = number::number(i).into_iter().filter(|(rest, h)| h.is_whole() && finish::may_end(*rest, h));
    let counted = numbers.filter_map(|(rest, h)| Some((rest.at, u64::try_from(h.value.to_integer()).ok()?)));
    counted.chain(lot(i)).filter(|(end, _)| parts_before(words, *end)).max_by_key(|(end, _)| *end)
}

/// "a dozen", "half a dozen", "two dozen", "a couple of".
fn lot(i: At<'_>) -> Option<(usize, u64)> {
    let half = is(Role::Part(2)).parse(i).ok();
    let (from, _) = opt(is(Role::Article)).parse(half.map_or(i, |(rest, ())| rest)).ok()?;
    let dozens = whole::below_hundred(from).ok();
    let size = alt((is(Role::Dozen).map(|()| 12), is(Role::Couple).map(|()| 2)));
    let (rest, size) = { size }.parse(dozens.map_or(from, |(rest, _)| rest)).ok()?;
    let times = dozens.map_or(1, |(_, n)| n);
    let n = u64::try_from(times * size).ok()?;
    Some((rest.at, if half.is_some() { n / 2 } else { n }))
}

/// A share at word `at`: where it ends, and how much. "half", "a third", "two thirds", `3/4`.
pub fn share_at(words: &[Word], at: usize) -> Option<(usize, Q)> {
    if at >= words.len() || !parts_before(words, at) {
        return None;
    }
    let ways = fraction::fraction(At::new(words, at)).into_iter();
    ways.map(|(rest, f)| (rest.at, f.value)).find(|(end, _)| parts_before(words, *end))
}
