//! The leaves: a place in the words of a line, and nom parsers for one word there.

use super::role::{Role, Unit, rows};
use crate::grammar::words::{Kind, Word};
use nom::error::{ErrorKind, ParseError};
use nom::{Err, IResult, Parser};

/// A place in the words of a line.
#[derive(Clone, Copy, Debug)]
pub(super) struct At<'a> {
    words: &'a [Word],
    /// The place: words before it are read.
    pub at: usize,
}

/// Nothing of the kind here. Every miss is tried another way, so it says no more.
#[derive(Debug, PartialEq)]
pub(super) struct Miss;

impl ParseError<At<'_>> for Miss {
    fn from_error_kind(_: At<'_>, _: ErrorKind) -> Miss {
        Miss
    }

    fn append(_: At<'_>, _: ErrorKind, _: Miss) -> Miss {
        Miss
    }
}

/// What one parser gives: where it ended, and what it read.
pub(super) type Step<'a, T> = IResult<At<'a>, T, Miss>;

/// Every way to read something at one place: where each ends, and what it is.
pub(super) type Ways<'a, T> = Vec<(At<'a>, T)>;

impl<'a> At<'a> {
    pub fn new(words: &'a [Word], at: usize) -> At<'a> {
        At { words, at }
    }

    /// The word here.
    pub fn word(self) -> Option<&'a Word> {
        self.words.get(self.at)
    }

    /// True when the word here is written onto the one before.
    pub fn is_joined(self) -> bool {
        self.word().is_some_and(|w| w.joined)
    }

    /// True when the word just read is "in" standing alone.
    pub fn is_after_in(self) -> bool {
        let before = self.at.checked_sub(1).and_then(|b| self.words.get(b));
        before.is_some_and(|w| w.is("in") && !w.joined)
    }

    fn skip(self, n: usize) -> At<'a> {
        At { at: self.at + n, ..self }
    }

    /// True when the word here begins where the one before ends, separator or not.
    fn is_adjacent(self) -> bool {
        let before = self.at.checked_sub(1).and_then(|b| self.words.get(b));
        matches!((before, self.word()), (Some(b), Some(w)) if b.span.end == w.span.start)
    }
}

pub(super) fn miss<'a, T>() -> Step<'a, T> {
    Err(Err::Error(Miss))
}

/// The ways of a parser that reads one way or not at all.
pub(super) fn one<T>(step: Step<'_, T>) -> Ways<'_, T> {
    step.into_iter().collect()
}

/// The word here, of this kind.
pub(super) fn of_kind<'a>(kind: Kind) -> impl Parser<At<'a>, Output = &'a str, Error = Miss> {
    move |i: At<'a>| match i.word() {
        Some(w) if w.kind == kind => Ok((i.skip(1), w.text.as_str())),
        _ => miss(),
    }
}

/// A sign written onto what stands before it, with something written onto it.
pub(super) fn glued_sign<'a>(signs: &'static [&'static str]) -> impl Parser<At<'a>, Output = (), Error = Miss> {
    move |i: At<'a>| match i.word() {
        Some(w) if w.kind == Kind::Sign && w.joined && signs.contains(&w.text.as_str()) && i.skip(1).is_joined() => {
            Ok((i.skip(1), ()))
        }
        _ => miss(),
    }
}

/// A sign, spaced as it may be.
pub(super) fn sign<'a>(text: &'static str) -> impl Parser<At<'a>, Output = (), Error = Miss> {
    move |i: At<'a>| match i.word() {
        Some(w) if w.kind == Kind::Sign && w.is(text) => Ok((i.skip(1), ())),
        _ => miss(),
    }
}

/// The longest word or phrase here with a role that `pick` wants.
pub(super) fn role<'a, T>(pick: impl Fn(Role) -> Option<T>) -> impl Parser<At<'a>, Output = T, Error = Miss> {
    move |i: At<'a>| {
        let Some(first) = i.word() else { return miss() };
        let found = rows(&first.text).iter().find_map(|(words, role)| Some((phrase(i, words)?, pick(*role)?)));
        found.map_or_else(miss, Ok)
    }
}

/// A word or phrase with exactly this role.
pub(super) fn is<'a>(wanted: Role) -> impl Parser<At<'a>, Output = (), Error = Miss> {
    role(move |r| (r == wanted).then_some(()))
}

/// True when a word or phrase with this role stands here.
pub(super) fn stands(i: At<'_>, wanted: Role) -> bool {
    is(wanted).parse(i).is_ok()
}

/// Where the phrase ends; a hyphen may stand between its words.
fn phrase<'a>(i: At<'a>, words: &[&str]) -> Option<At<'a>> {
    let mut at = i.skip(1);
    for word in &words[1..] {
        at = hyphen(at);
        at.word().filter(|w| w.is(word))?;
        at = at.skip(1);
    }
    Some(at)
}

/// Past a hyphen that ties two words, if there is one.
pub(super) fn hyphen(i: At<'_>) -> At<'_> {
    glued_sign(&["-"]).parse(i).map_or(i, |(rest, ())| rest)
}

/// A unit of length, with the full stop of its abbreviation: "ft.", "-foot", `"`.
pub(super) fn unit(i: At<'_>) -> Step<'_, Unit> {
    let (rest, unit) = role(|r| if let Role::Unit(u) = r { Some(u) } else { None }).parse(hyphen(i))?;
    Ok((full_stop(i, rest), unit))
}

/// This unit.
pub(super) fn unit_of<'a>(wanted: Unit) -> impl Parser<At<'a>, Output = (), Error = Miss> {
    move |i: At<'a>| unit(i).and_then(|(rest, u)| if u == wanted { Ok((rest, ())) } else { miss() })
}

fn full_stop<'a>(from: At<'a>, rest: At<'a>) -> At<'a> {
    let is_mark = hyphen(from).word().is_some_and(|w| w.kind == Kind::Mark);
    let stop = rest.word().is_some_and(|w| w.is(".")) && rest.is_adjacent();
    if stop && !is_mark { rest.skip(1) } else { rest }
}

/// True when the word here is "in" standing alone: a unit or a preposition.
pub(super) fn maybe_preposition(i: At<'_>) -> bool {
    i.word().is_some_and(|w| w.is("in") && !w.joined) && full_stop(i, i.skip(1)).at == i.at + 1
}

/// True when a number ending here would leave its unit behind.
pub(super) fn leaves_unit(i: At<'_>) -> bool {
    let named = unit(i).is_ok() && !maybe_preposition(i);
    named || stands(hyphen(i), Role::Footer) || stands(i, Role::Ticks)
}
