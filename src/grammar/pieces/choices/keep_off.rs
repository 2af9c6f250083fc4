//! Posts kept off an end, the stairs, a gate, a place.

use super::{end_mark, from, on, said, want};
use crate::grammar::choice::{ChoiceDraft, Off};
use crate::grammar::draft::Mark;
use crate::grammar::items::Item;
use crate::grammar::pieces::Say;
use crate::grammar::pieces::atoms::{In, Out, det, length, one, part, places, sense, text};
use crate::grammar::sense::{Cue, Part, Sense};
use crate::job::End;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value};
use nom::multi::{many0_count, many1_count};
use nom::sequence::preceded;

/// What posts keep off.
fn thing(input: In<'_>) -> Out<'_, Off> {
    let mark = preceded(det, (length, opt(from))).map(|(m, mark)| Off::At(m, mark));
    let named = preceded(
        det,
        alt((
            value(Off::Stairs, (part(Part::Stairs), opt(part(Part::Opening)))),
            value(Off::Gate, (part(Part::Gate), opt(part(Part::Opening)))),
            value(Off::Door, text(&["door", "doors", "doorway", "slider", "patio door", "back door", "front door"])),
            value(Off::Door, (text(&["sliding", "patio", "back", "french"]), text(&["door", "doors"]))),
        )),
    );
    let ends = alt((
        places.map(Off::Ends),
        preceded((opt(text(&["either", "both", "each", "any"])), det), places).map(Off::Ends),
    ));
    alt((named, ends, end_mark.map(Off::End), mark)).parse(input)
}

/// "keep posts clear of the corner by 18".
fn clear_by(input: In<'_>) -> Out<'_, (Off, Measure)> {
    let mut keep = (want, text(&["keep", "hold", "leave", "stay"]), opt(text(&["all"])), det, a_named_post);
    let (rest, _) = keep.parse(input)?;
    let off = many1_count(text(&["back", "away", "clear", "well", "out"]));
    // "posts of the stairs" keeps off nothing; "clear of the stairs" does.
    let off = alt((value((), off), value((), not(peek(text(&["of", "to"]))))));
    let by = (text(&["by", "at least"]), opt(text(&["at least"])));
    (preceded(off, off_thing), preceded(by, length)).parse(rest)
}

/// "of the corner", "off the stairs", "off the house".
fn off_thing(input: In<'_>) -> Out<'_, Off> {
    let link = text(&["of", "to", "from", "off", "off of", "away from"]);
    let house = text(&["off the house", "out from the house", "out off the house"]);
    alt((value(Off::End(Mark::End(End::House)), house), preceded(link, thing))).parse(input)
}

/// Words that may stand about a denial without denying anything themselves.
const DENY_FILL: &[&str] = &["put", "want", "set", "have", "any", "i", "we", "lets", "place", "and", "need"];

/// One denial: a second one would take the first back.
fn deny(input: In<'_>) -> Out<'_, ()> {
    let fill = || many0_count(text(DENY_FILL));
    let word = text(&["no", "dont", "never", "do not", "not", "cant have", "without", "nothing", "aint"]);
    value((), (fill(), alt((sense(Sense::Not), word)), fill())).parse(input)
}

fn than(input: In<'_>) -> Out<'_, ()> {
    let listed = text(&["closer than", "nearer than", "less than"]);
    alt((listed, value((), (text(&["closer", "nearer"]), text(&["than"]))))).parse(input)
}

fn within(input: In<'_>) -> Out<'_, ()> {
    let listed = text(&["within", "inside", "any closer than", "any nearer than"]);
    alt((value((), (opt(text(&["any"])), than)), listed, text(&["nearer", "closer"]))).parse(input)
}

fn back(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(text(&["back", "away", "clear", "well", "off", "out"]))).parse(input)
}

fn least(input: In<'_>) -> Out<'_, ()> {
    alt((sense(Sense::Cue(Cue::Least)), text(&["at least", "a good", "min", "minimum"]))).parse(input)
}

/// "no post within 18 inches": a post must be named.
fn denied(input: In<'_>) -> Out<'_, Measure> {
    let any_post = (det, opt(text(&["any", "more"])), a_named_post);
    preceded((deny, any_post, within), length).parse(input)
}

fn a_named_post(input: In<'_>) -> Out<'_, ()> {
    let named = |i: &Item| i.may_be(Sense::Part(Part::Post)) || i.may_be(Sense::Part(Part::LinePost));
    let word = one(move |i: &Item| named(i).then_some(()));
    value((), (opt(text(&["line", "guard", "middle", "rail"])), word)).parse(input)
}

/// "keep the posts at least 18 inches".
fn kept(input: In<'_>) -> Out<'_, Measure> {
    let keep = text(&["keep", "hold", "leave", "stay", "kept", "keep the", "keep all"]);
    preceded((want, keep, opt(text(&["all"])), det, a_named_post, back, opt(least)), length).parse(input)
}

/// "posts should stay at least 2 ft", "posts no closer than 16".
fn stay(input: In<'_>) -> Out<'_, Measure> {
    let must = many0_count(text(&[
        "must",
        "have to",
        "should",
        "need to",
        "are to",
        "to",
        "stay",
        "be",
        "stand",
        "keep",
        "are",
        "is",
        "should be",
        "must be",
        "needs to be",
        "has to be",
        "need to be",
    ]));
    let no_closer = value((), (alt((sense(Sense::Not), text(&["no", "not", "never"]))), opt(text(&["any"])), than));
    let bound = alt((least, no_closer, text(&["no closer than", "no nearer than"])));
    preceded((want, det, a_named_post, must, back, bound), length).parse(input)
}

/// "no post between 4 and 6 ft from the house".
fn between(input: In<'_>) -> Out<'_, ChoiceDraft> {
    let and = text(&["and", "&", "to", "n"]);
    let lead = (deny, det, a_named_post, text(&["between", "from", "in between"]));
    (preceded(lead, length), preceded(and, length), opt(from))
        .map(|(a, b, from)| ChoiceDraft::Between(a, b, from))
        .parse(input)
}

/// "no post within 18 inches of the corner", "keep posts 2 ft off the stairs".
pub fn keep_off(input: In<'_>) -> Out<'_, Say> {
    let away = many0_count(text(&["back", "away", "clear", "well"]));
    let by_of = (alt((denied, kept, stay)), preceded(away, off_thing)).map(|(by, of)| ChoiceDraft::KeepOff { by, of });
    let of_by = clear_by.map(|(of, by)| ChoiceDraft::KeepOff { by, of });
    (alt((of_by, by_of, between)), opt(on)).map(|(choice, run)| said(choice, run)).parse(input)
}
