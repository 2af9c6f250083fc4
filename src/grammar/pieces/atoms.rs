//! The smallest parsers over items, shared by all pieces.

use crate::grammar::ahead::Ahead;
pub use crate::grammar::ahead::one;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Part, Sense, Side};
use crate::job::End;
use crate::measure::{Lumber, Meaning, Measure};
use nom::branch::alt;
use nom::combinator::{opt, value};
use nom::multi::many0_count;
use nom::sequence::preceded;
use nom::{IResult, Input as _, Parser};

/// The input of every piece: the items still ahead.
pub type In<'a> = Ahead<'a, Item>;
/// What a piece gives.
pub type Out<'a, T> = IResult<In<'a>, T, ()>;

/// An item spelled like one of these.
pub fn text<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    one(move |item: &Item| listed(list, &item.text).then_some(()))
}

/// True for a text of the list. Most differ in their length or their first letter: no more of those is looked at.
fn listed(list: &[&str], text: &str) -> bool {
    let (long, first) = (text.len(), text.as_bytes().first());
    list.iter().any(|word| word.len() == long && word.as_bytes().first() == first && *word == text)
}

/// An item that may mean this.
pub fn sense<'a>(sense: Sense) -> impl Parser<In<'a>, Output = (), Error = ()> {
    one(move |item: &Item| item.may_be(sense).then_some(()))
}

/// A part.
pub fn part<'a>(part: Part) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Part(part))
}

/// Any sense a function picks out.
pub fn any<'a, T>(pick: fn(Sense) -> Option<T>) -> impl Parser<In<'a>, Output = T, Error = ()> {
    one(move |item: &Item| item.senses().iter().find_map(|s| pick(*s)))
}

/// A separating sign.
pub fn sep<'a>(signs: &'static str) -> impl Parser<In<'a>, Output = (), Error = ()> {
    one(move |item: &Item| matches!(item.is, Is::Sep(c) if signs.contains(c)).then_some(()))
}

/// A measure of any kind.
pub fn measure(input: In<'_>) -> Out<'_, Measure> {
    one(|item: &Item| match &item.is {
        Is::Measure(m) => Some(m.clone()),
        _ => None,
    })
    .parse(input)
}

/// A measure that may be a length: not lumber, not two sides.
pub fn length(input: In<'_>) -> Out<'_, Measure> {
    one(|item: &Item| match &item.is {
        Is::Measure(m) if !matches!(m.meaning, Meaning::Lumber(_) | Meaning::By(..)) => Some(m.clone()),
        _ => None,
    })
    .parse(input)
}

/// Named lumber.
pub fn lumber(input: In<'_>) -> Out<'_, Lumber> {
    one(|item: &Item| match &item.is {
        // "about 6x6", "a strong 4x4": a name has no more or less.
        Is::Measure(Measure { meaning: Meaning::Lumber(l), about: false, shade: None, .. }) => Some(*l),
        _ => None,
    })
    .parse(input)
}

/// A whole number used as a count.
pub fn count(input: In<'_>) -> Out<'_, u16> {
    one(|item: &Item| match &item.is {
        Is::Measure(Measure { meaning: Meaning::Bare(n), shade: None, about: false, guess: None })
            if n.value.is_integer() && !n.fraction && !n.plural =>
        {
            u16::try_from(n.value.to_integer()).ok()
        }
        _ => None,
    })
    .parse(input)
}

/// What stands behind words that may stand before a noun.
fn after_determiners(mut input: In<'_>) -> In<'_> {
    while input.first().is_some_and(|i| i.determiner) {
        input = input.take_from(1);
    }
    input
}

/// Any number of determiners.
pub fn det(input: In<'_>) -> Out<'_, ()> {
    let mut rest = after_determiners(input);
    if rest.first().is_some_and(|i| &*i.text == "one") {
        rest = after_determiners(rest.take_from(1));
    }
    Ok((rest, ()))
}

/// Words that may tie a cue to its value: "is", "of", "=", "at".
const TIES: &[&str] = &[
    "is",
    "are",
    "'s",
    "of",
    "=",
    "at",
    "to",
    "be",
    "was",
    "it 's",
    "its",
    "for",
    "with",
    "as",
    "will be",
    "on",
    "r",
    "should be",
    "needs to be",
    "has to be",
    "must be",
    "'ll be",
    "gonna be",
    "get",
    "gets",
    "take",
    "takes",
    "getting",
];

/// Any number of ties, a colon among them.
pub fn tie(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(alt((text(TIES), sep(":-"))))).parse(input)
}

/// Exactly "is" or a colon, or nothing: closer than [`tie`].
pub fn is(input: In<'_>) -> Out<'_, ()> {
    let word = text(&[
        "is",
        "are",
        "'s",
        "=",
        "was",
        "will be",
        "it 's",
        "its",
        "r",
        "should be",
        "should have been",
        "needs to be",
        "has to be",
        "must be",
        "wants to be",
        "is now",
        "gonna be",
    ]);
    value((), many0_count(alt((word, sep(":"))))).parse(input)
}

/// A place and the words around it: "the far corner", "corner newel". Words that
/// colour the place without changing the job are given back as idle.
pub fn place(input: In<'_>) -> Out<'_, End> {
    let adjective = value((), text(&["far", "near", "outer", "other", "first", "next", "second", "last"]));
    preceded((det, opt(adjective), det), (any(as_end), opt(text(&["post", "newel", "newal", "column", "end"]))))
        .map(|(end, _)| end)
        .parse(input)
}

/// A place at one end of "from ... to ...", where a gate may stand for its post.
pub fn place_or_gate(input: In<'_>) -> Out<'_, End> {
    alt((place, value(End::GatePost, (det, part(Part::Gate))))).parse(input)
}

fn as_end(s: Sense) -> Option<End> {
    match s {
        Sense::End(e) => Some(e),
        _ => None,
    }
}

/// Two of a place in one word: "corners".
pub fn places(input: In<'_>) -> Out<'_, End> {
    preceded(
        det,
        any(|s| match s {
            Sense::Ends(e) => Some(e),
            _ => None,
        }),
    )
    .parse(input)
}

/// A named side.
pub fn side(input: In<'_>) -> Out<'_, Side> {
    // "three sides" counts them: no side has that name.
    one(|item: &Item| {
        let side = item.senses().iter().find_map(|s| if let Sense::Side(side) = s { Some(*side) } else { None });
        side.filter(|_| &*item.text != "sides")
    })
    .parse(input)
}

/// A word for a run or guard.
pub fn run_word(input: In<'_>) -> Out<'_, ()> {
    alt((part(Part::Run), part(Part::Guard))).parse(input)
}
