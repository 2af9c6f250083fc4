//! A deck's outline walked side by side.
//!
//! ```text
//! walk  = ["then"] [way] length [way] | ["then"] "home"
//! way   = "out" | "off the house" | "across" | "to the right" | "back" | "toward the house" ...
//! shape = "it's an L" | "wraparound"
//! ```

use super::Say;
use super::atoms::{In, Out, any, det, length, part, run_word, sense, sep, text};
use crate::grammar::draft::{Clause, Way};
use crate::grammar::sense::{Part, Sense, Side, Verb};
use crate::job::End;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::many0_count;
use nom::sequence::{preceded, terminated};

fn way(input: In<'_>) -> Out<'_, Way> {
    let listed = any(|s| if let Sense::Way(w) = s { Some(w) } else { None });
    let to_side = preceded((text(&["to", "toward", "towards"]), det), super::atoms::side);
    let to_side = nom::combinator::map_opt(to_side, |s| match s {
        Side::Right => Some(Way::Right),
        Side::Left => Some(Way::Left),
        _ => None,
    });
    // "off the house": the first side of a walk.
    let house = verify(super::atoms::place, |e| *e == End::House);
    let off = value(
        Way::Start,
        (opt(text(&["out"])), text(&["off", "from", "away from", "out from"]), house, opt(text(&["wall"]))),
    );
    let home_to = value(
        Way::In,
        (
            opt(text(&["back", "in"])),
            text(&["to", "toward", "towards"]),
            verify(super::atoms::place, |e| *e == End::House),
        ),
    );
    alt((off, home_to, to_side, listed)).parse(input)
}

/// "then 10' across", "back 8' toward the house", "long leg is 20' off the house".
pub fn walk(input: In<'_>) -> Out<'_, Say> {
    let then = many0_count(alt((
        text(&["then", "and", "and then", "it", "goes", "comes", "runs", "next"]),
        sense(Sense::Verb(Verb::Goes)),
        sep(","),
    )));
    let leg = opt((
        det,
        opt(text(&["long", "short", "first", "next"])),
        run_word,
        many0_count(text(&["is", "'s", "goes", "runs"])),
    ));
    let jog = opt(alt((sense(Sense::Verb(Verb::Jog)), part(Part::Corner))));
    let (rest, _) = (then, leg, jog).parse(input)?;
    let (rest, before) = opt(listed_way).parse(rest)?;
    let (rest, m) = length(rest)?;
    let (rest, after) = opt(way).parse(rest)?;
    let (rest, on) = opt(preceded((opt(text(&["on", "along", "for"])), det), super::atoms::side)).parse(rest)?;
    // "back 8' toward the house": both say the way, the later more plainly.
    match after.or(before) {
        Some(way) => Ok((rest, Say::Clause(Clause::Walk { way, length: Some(m), on }))),
        None => Err(nom::Err::Error(())),
    }
}

fn listed_way(input: In<'_>) -> Out<'_, Way> {
    any(|s| if let Sense::Way(w) = s { Some(w) } else { None }).parse(input)
}

/// "then home", "and back to the house".
pub fn home(input: In<'_>) -> Out<'_, Say> {
    let then = many0_count(text(&["then", "and", "and then", "back", "straight"]));
    let word =
        alt((text(&["home"]), value((), (text(&["to", "in to"]), verify(super::atoms::place, |e| *e == End::House)))));
    let needs_then = preceded(text(&["then", "and then", "and", "back"]), preceded(then, word));
    terminated(needs_then, opt(text(&["again"])))
        .map(|()| Say::Clause(Clause::Walk { way: Way::In, length: None, on: None }))
        .parse(input)
}

/// "it's an L", "wraparound:".
pub fn shape(input: In<'_>) -> Out<'_, Say> {
    let lead = many0_count(text(&["it", "its", "it 's", "the", "a", "an", "thats", "that", "this", "is", "'s"]));
    let deck = opt(part(Part::Deck));
    let word = (
        sense(Sense::Shape),
        opt(text(&["shape", "shaped", "-"])),
        opt(text(&["shape", "shaped"])),
        opt(part(Part::Deck)),
    );
    value(Say::Clause(Clause::Shape), (lead, deck, many0_count(text(&["is", "'s", "an", "a"])), word, opt(sep(":,"))))
        .parse(input)
}

/// "10 deep", "16 wide": of the deck last spoken of.
pub fn deck_more(input: In<'_>) -> Out<'_, Say> {
    use crate::grammar::sense::Cue;
    let out = (length, alt((sense(Sense::Cue(Cue::Deep)), text(&["deep"])))).map(|(m, ())| (None, Some(m)));
    let along = (length, sense(Sense::Cue(Cue::Wide))).map(|(m, ())| (Some(m), None));
    alt((out, along)).map(|(along, out)| Say::Clause(Clause::DeckMore(along, out))).parse(input)
}
