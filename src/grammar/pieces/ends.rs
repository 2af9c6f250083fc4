//! The ends of a run.
//!
//! ```text
//! from_to  = ["from"] place ("to" | ">" | "-" | "through" ...) place
//! between  = "between" (place "and" place | places)
//! stops    = ["and"] ("stops" | "dies" ...) ["at" | "into"] place
//! on_a_side = place ("on" | "at") ("the left" | "one end" ...)
//! lone     = place, standing between separators or beside a measure
//! ```

use super::atoms::{In, Out, any, det, is, part, place, place_or_gate, places, sense, sep, side, text};
use super::{PIECE, Say};
use crate::grammar::ahead::Ahead;
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Cue, Part, Sense, Side, Spot, Verb};
use crate::job::End;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn to(input: In<'_>) -> Out<'_, ()> {
    let over = opt(text(&[
        "over",
        "up",
        "down",
        "across",
        "out",
        "along",
        "back",
        "on",
        "all the way",
        "in",
        "through",
        "thru",
        "round",
        "around",
    ]));
    let word = text(&[
        "to", "too", "through", "thru", "til", "till", "until", "up to", "and to", "into", "onto", "over", "and",
    ]);
    let verb = opt(alt((sense(Sense::Verb(Verb::Goes)), text(&["meets", "hits", "joins"]))));
    let dash = || opt(alt((sep("-"), text(&["-"]))));
    let said = (opt(sep(",")), dash(), verb, over, word, dash());
    alt((value((), said), sign)).parse(input)
}

/// "house > corner", "house-corner", "house--corner", "corner/house", "house...corner".
fn sign(input: In<'_>) -> Out<'_, ()> {
    let dots = value((), (sep("."), many1_count(sep("."))));
    alt((value((), many1_count(alt((sep(">-~"), text(&["-", "/"]))))), dots)).parse(input)
}

/// "house to corner", "from the house over to the stair head", "brick to brick".
pub fn from_to(input: In<'_>) -> Out<'_, Say> {
    let goes = || opt(alt((sense(Sense::Verb(Verb::Goes)), sense(Sense::Verb(Verb::Starts)))));
    let from = opt(text(&["from", "frm", "off", "at"]));
    let opening = (goes(), from, opt(text(&["from", "of"])));
    let said = "and";
    (preceded(opening, place_or_gate), to_not(said), place_or_gate).map(|(a, (), b)| Say::Both(a, b)).parse(input)
}

/// The link "to" and its like, but not a bare "and", which ties only after "between".
fn to_not<'a>(bare: &'static str) -> impl nom::Parser<In<'a>, Output = (), Error = ()> {
    move |input: In<'a>| {
        if input.first().is_some_and(|i| &*i.text == bare) {
            return Err(nom::Err::Error(()));
        }
        to(input)
    }
}

/// "between the corner and the stair head", "between corners".
pub fn between(input: In<'_>) -> Out<'_, Say> {
    let word = || text(&["between", "betwen", "btw", "in between", "from between"]);
    let and = alt((text(&["and", "n", "&", "to"]), sep(",")));
    let pair = (preceded(word(), place_or_gate), and, place_or_gate).map(|(a, (), b)| Say::Both(a, b));
    let twins = preceded(word(), places).map(|e| Say::Both(e, e));
    alt((pair, twins)).parse(input)
}

/// "house at both ends", "stairs both ends", "corners each end".
pub fn at_both_ends(input: In<'_>) -> Out<'_, Say> {
    let both = (opt(text(&["at", "on", "@"])), det, sense(Sense::Spot(Spot::BothEnds)));
    let dies =
        opt((it(), sense(Sense::Verb(Verb::Stops)), many0_count(text(&["at", "into", "in", "on", "against", "to"]))));
    preceded(dies, terminated(alt((place, places)), (is, both))).map(|e| Say::Both(e, e)).parse(input)
}

/// "the house at one end and the corner at the other", "ties into the brick one end".
pub fn one_and_other(input: In<'_>) -> Out<'_, Say> {
    let at = || (opt(text(&["at", "on", "@"])), det);
    let dies = || opt((it(), sense(Sense::Verb(Verb::Stops)), opt(text(&["at", "into", "in", "to", "on"]))));
    let other = alt((sense(Sense::Spot(Spot::Other)), sense(Sense::Spot(Spot::Far)), text(&["other"])));
    let and = (opt(sep(",")), opt(text(&["and", "&", "n"])));
    let first = delimited(dies(), place, (at(), sense(Sense::Spot(Spot::Near)), and));
    let second = delimited(dies(), place, (at(), other));
    (first, second).map(|(a, b)| Say::Both(a, b)).parse(input)
}

/// "ends are corner and house", "ends: corner, house".
pub fn ends_are(input: In<'_>) -> Out<'_, Say> {
    let and = alt((text(&["and", "&", "n"]), sep(",/")));
    let lead = (det, opt(text(&["two", "with"])), text(&["ends", "end posts"]), is);
    preceded(lead, (place, preceded(and, place))).map(|(a, b)| Say::Both(a, b)).parse(input)
}

/// "the corner is really the stairs", "the house is wrong, it's the stairs", "make the
/// corner a stair head": one end in another's place.
pub fn really(input: In<'_>) -> Out<'_, Say> {
    let truly = || opt(text(&["really", "actually", "now", "meant to be", "supposed to be", "meant"]));
    let is_must = text(&["is", "'s", "should be", "needs to be", "was", "should have been", "is now", "is actually"]);
    let said = (place, preceded((is_must, truly()), place));
    let its = (opt(sep(",.;-")), opt(text(&["it 's", "its", "thats", "it", "that 's"])), is);
    let wrong = (is, text(&["wrong", "not right", "isnt right", "a mistake"]), its);
    let denied = (place, preceded(wrong, place));
    let verb = text(&["make", "make the", "change", "change the", "turn", "swap", "switch"]);
    let link = text(&["a", "an", "the", "into", "to", "for", "with", "into a", "be", "into the"]);
    let made = preceded((verb, det), (place, preceded((link, det), place)));
    // "make that the stair head not the corner": the right one first.
    let verb = || {
        text(&[
            "make",
            "make it",
            "make that",
            "make that end",
            "thats",
            "that 's",
            "its",
            "it 's",
            "should be",
            "it should be",
        ])
    };
    let not = (opt(sep(",")), opt(text(&["and", "but"])), text(&["not", "instead of", "rather than"]), det);
    let swapped = (preceded((verb(), opt(text(&["that", "it"])), det), place), preceded(not, place))
        .map(|(right, wrong)| (wrong, right));
    let swapped = terminated(swapped, peek(super::phrase::ends));
    alt((said, denied, made, swapped)).map(|(wrong, right)| Say::Instead(wrong, right)).parse(input)
}

/// "the stairs, not the corner": the second half, an end said to be wrong. What follows
/// must let it stand: "12' not house to corner" says no such thing.
pub fn not_end(input: In<'_>) -> Out<'_, Say> {
    let denied = text(&["not", "instead of", "rather than", "isnt", "and not", "not at", "aint"]);
    let link = opt(text(&["at", "on", "to", "into", "in"]));
    let lead = (opt(sep(",")), opt(text(&["and", "but", "its", "it 's"])), denied, link);
    let stands = |i: &Item| i.is_sep() || matches!(&*i.text, "but" | "and" | "its" | "it 's" | "it");
    let (rest, end) = preceded(lead, place).parse(input)?;
    if rest.first().is_none_or(stands) { Ok((rest, Say::NotEnd(end))) } else { Err(nom::Err::Error(())) }
}

/// "both ends at the house", "both ends die into brick".
pub fn both_ends_at(input: In<'_>) -> Out<'_, Say> {
    let dies = opt(sense(Sense::Verb(Verb::Stops)));
    let link = opt(text(&["at", "on", "in", "into", "to"]));
    preceded((sense(Sense::Spot(Spot::BothEnds)), is, dies, link), alt((place, places)))
        .map(|e| Say::Both(e, e))
        .parse(input)
}

/// "starts at the house", "picks up at the stair head", "off the house".
pub fn starts(input: In<'_>) -> Out<'_, Say> {
    let verb = (it(), sense(Sense::Verb(Verb::Starts)), opt(text(&["at", "on", "from", "by", "off", "of", "right"])));
    let lead = alt((value((), verb), text(&["from", "frm", "off"])));
    // "out from the house 12'": of a run as like as of the deck.
    let out = (
        it(),
        opt(sense(Sense::Verb(Verb::Goes))),
        text(&["out from the house", "off the house", "out off the house"]),
    );
    alt((preceded(lead, place), value(End::House, out))).map(Say::From).parse(input)
}

fn it<'a>() -> impl Parser<In<'a>, Output = (), Error = ()> {
    value(
        (),
        (
            opt(text(&["and"])),
            opt(text(&["it", "that", "which"])),
            many0_count(text(&["just", "then", "right", "dead"])),
        ),
    )
}

/// "and quits at the chimney", "dies into the wall", "to the corner", "just stops".
pub fn stops(input: In<'_>) -> Out<'_, Say> {
    let verb = || (it(), sense(Sense::Verb(Verb::Stops)));
    let link = || opt(text(&["at", "on", "in", "into", "to", "against", "by", "off", "dead", "up", "short"]));
    let meets = (it(), text(&["meets", "hits", "joins"]));
    let to_place = (
        opt((it(), sense(Sense::Verb(Verb::Goes)))),
        many0_count(text(&["over", "up", "down", "across", "on", "then", "out"])),
        text(&["to", "til", "till", "into", "up to"]),
    );
    let lead = alt((value((), (verb(), link(), link())), value((), meets), value((), to_place)));
    let at_place = preceded(lead, place).map(Say::To);
    let again = not(peek(sense(Sense::Verb(Verb::Stops))));
    // "butts" is against something: what, must be said.
    let against = not(peek((it(), text(&["butts", "butt", "butting", "butts up", "ties", "tie", "ties in", "tied"]))));
    let in_mid_air = value(Say::To(End::OpenEnd), (against, verb(), opt(text(&["there", "short", "dead"])), again));
    alt((at_place, in_mid_air)).parse(input)
}

/// "corner on the left", "stairs at the other end".
pub fn on_a_side(input: In<'_>) -> Out<'_, Say> {
    let at = || text(&["on", "at", "to", "@"]);
    let link = alt((value((), (is_said, opt(at()), det)), value((), (at(), det))));
    // Stairs on a side may be an opening in it: `gates::stairs` has them.
    (peek(not((det, part(Part::Stairs)))), place, alt((preceded((is, det), end_spot), preceded(link, from_or_to))))
        .map(|(_, end, first)| placed(end, first))
        .parse(input)
}

/// "one end is the house", "left end corner".
pub fn spot_is(input: In<'_>) -> Out<'_, Say> {
    let at = || opt(text(&["at", "on", "in", "into", "to"]));
    let dies = || opt((sense(Sense::Verb(Verb::Stops)), opt(text(&["at", "into", "in"]))));
    let the = || opt(text(&["the", "a", "and", "my"]));
    let end_first = (preceded(the(), end_spot), preceded((opt(text(&["end"])), is, at(), dies()), place));
    // "left: house 10'" names a side; "left is the house" places an end.
    let side_first = (preceded(det, from_or_to), preceded((opt(text(&["end"])), is_said, at(), dies()), place));
    alt((end_first, side_first)).map(|(first, end)| placed(end, first)).parse(input)
}

/// "is", said: a colon is not enough.
fn is_said(input: In<'_>) -> Out<'_, ()> {
    text(&["is", "'s", "are", "will be", "dies"]).parse(input)
}

/// "one end", "far end", "left end": an end of the run, by a word that says so.
fn end_spot(input: In<'_>) -> Out<'_, bool> {
    let ends = input.first().is_some_and(|i| i.text.ends_with("end") || &*i.text == "the other");
    if ends { from_or_to(input) } else { Err(nom::Err::Error(())) }
}

fn placed(end: End, first: bool) -> Say {
    if first { Say::From(end) } else { Say::To(end) }
}

/// True for the from-end: the left, the near end, one end.
fn from_or_to(input: In<'_>) -> Out<'_, bool> {
    let spot = any(|s| match s {
        Sense::Spot(Spot::Near) => Some(true),
        Sense::Spot(Spot::Far | Spot::Other) => Some(false),
        _ => None,
    });
    let sides = side.map_opt_side();
    alt((spot, sides)).parse(input)
}

/// Turns a side parser into one for left (true) and right (false) only.
trait LeftRight<'a> {
    fn map_opt_side(self) -> impl Parser<In<'a>, Output = bool, Error = ()>;
}

impl<'a, P: Parser<In<'a>, Output = Side, Error = ()>> LeftRight<'a> for P {
    fn map_opt_side(self) -> impl Parser<In<'a>, Output = bool, Error = ()> {
        nom::combinator::map_opt(self, |s| match s {
            Side::Left => Some(true),
            Side::Right => Some(false),
            _ => None,
        })
    }
}

/// "posts already set at both corners".
pub fn already_set(input: In<'_>) -> Out<'_, Say> {
    let posts = opt((det, part(Part::Post), is));
    let set = (sense(Sense::Cue(Cue::Already)), opt(text(&["at", "on", "in"])));
    let of = alt((
        places,
        delimited(opt(sense(Sense::Spot(Spot::BothEnds))), place, opt(sense(Sense::Spot(Spot::BothEnds)))),
    ));
    // "at both ends", of what is not said: posts stand there.
    let ends = value(End::EndPost, sense(Sense::Spot(Spot::BothEnds)));
    preceded((posts, set, det), alt((of, ends))).map(|e| Say::Both(e, e)).parse(input)
}

/// A place that stands alone: a break, a measure or the line's edge on both sides.
pub fn lone(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    let stands = |i: Option<&Item>| i.is_none_or(|i| i.is_sep() || matches!(i.is, Is::Measure(_)) || lets_stand(i));
    let before = at.checked_sub(1).and_then(|b| items.get(b));
    let (rest, end) = place(Ahead::new(&items[at..])).ok()?;
    // "stairs" alone is the stairs, not an end of a run, unless a run is being walked or
    // an end put right.
    let walked = items.iter().any(|i| matches!(i.is, Is::Measure(_)) || i.may_be(Sense::Not));
    (stands(before) && stands(rest.first()) && walked).then(|| (items.len() - rest.len(), Say::Lone(end), PIECE + 3))
}

/// "from the house out 12' to the corner": between a run's two ends its length, and no side
/// of an outline.
pub fn length_between(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    let from = at
        .checked_sub(1)
        .and_then(|b| items.get(b))
        .is_some_and(|i| i.senses().iter().any(|s| matches!(s, Sense::End(_))));
    let way = text(&["out", "over", "across", "along", "down", "back", "on out", "on over"]);
    let (rest, measure) = preceded(way, super::atoms::length).parse(Ahead::new(&items[at..])).ok()?;
    let to = preceded(to_not("and"), place).parse(rest).is_ok();
    let say = Say::Length { measure, basis: None, run: false, it: false };
    (from && to).then(|| (items.len() - rest.len(), say, PIECE))
}

/// A word beside which a place may stand alone: a link of a walk, a word that puts right.
fn lets_stand(item: &Item) -> bool {
    matches!(&*item.text, "then" | "and" | "its" | "it 's" | "thats" | "not" | "but" | "instead of" | "rather than")
        || item.may_be(Sense::Verb(Verb::Repair))
}
