//! A deck's outline walked side by side.
//!
//! ```text
//! walk  = *then [leg] ([way] length [way] | turn [","] length) [on side]
//! way   = "out" | "off the house" | "across" | "to the right" | "back" | "toward the house" ...
//! turn  = ("turn" | "hang" ...) ["a"] side [degrees] | degrees side
//! home  = "home" | "then" "back to the house"
//! shape = "it's an L" | "wraparound"
//! ```

use super::Say;
use super::atoms::{In, Out, any, count, det, is, length, part, place, run_word, sense, sep, side, text};
use crate::grammar::draft::{Clause, Way};
use crate::grammar::items::Item;
use crate::grammar::sense::{Part, Sense, Side, Verb};
use crate::job::End;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{preceded, terminated};

fn house(input: In<'_>) -> Out<'_, ()> {
    value((), (verify(place, |e| *e == End::House), opt(text(&["wall"])))).parse(input)
}

/// A way said of the ground, not of the walker: "out", "to the right", "toward the house".
fn way(input: In<'_>) -> Out<'_, Way> {
    let to_side = map_opt(preceded((text(&["to", "toward", "towards"]), det), side), side_way);
    let back_in =
        (opt(text(&["back", "in", "back in"])), text(&["to", "toward", "towards", "up to", "in to", "into"]), house);
    let home_to = value(Way::In, back_in);
    let straight = preceded(opt(text(&["straight", "right", "dead"])), listed_way);
    alt((off_house, home_to, to_side, straight)).parse(input)
}

/// "off the house", "straight out from the house": the first side of a walk.
fn off_house(input: In<'_>) -> Out<'_, Way> {
    let lead = || opt(text(&["straight", "straight out", "right", "square"]));
    let spelled =
        (opt(text(&["out", "straight out"])), text(&["off", "from", "away from", "out from", "out of"]), house);
    let listed = text(&[
        "off the house",
        "out from the house",
        "out off the house",
        "out from the wall",
        "off the wall",
        "out of the house",
    ]);
    value(Way::Start, (lead(), alt((value((), spelled), listed)))).parse(input)
}

fn side_way(s: Side) -> Option<Way> {
    match s {
        Side::Right => Some(Way::Right),
        Side::Left => Some(Way::Left),
        _ => None,
    }
}

/// A side word alone: a way, or a run's name.
fn bare_way(s: Side) -> Option<Way> {
    right_hand(s).map(|right| Way::Side { right })
}

fn listed_way(input: In<'_>) -> Out<'_, Way> {
    let bump = value(Way::Out, sense(Sense::Verb(Verb::Bump)));
    let listed = any(|s| if let Sense::Way(w) = s { Some(w) } else { None });
    alt((bump, listed)).parse(input)
}

/// "hang a right", "turn 45 degrees right", "45 right": a turn of the walker.
fn turned(input: In<'_>) -> Out<'_, Way> {
    let verb = || {
        text(&[
            "turn",
            "turns",
            "turning",
            "hang",
            "hangs",
            "take",
            "hook",
            "bend",
            "bends",
            "angle",
            "angles",
            "swing",
            "goes",
            "go",
            "then turns",
        ])
    };
    let lead = || (many1_count(verb()), opt(text(&["a", "to the", "it", "to", "off"])), det);
    let at = || many0_count(text(&["at", "by", "to", "the", "a", "about"]));
    let sign = || opt(text(&["degrees", "degree", "deg", "degs"]));
    let degrees = || terminated(verify(count, |n| (1..=170).contains(n)), sign());
    let sure = || terminated(verify(count, |n| (1..=170).contains(n)), text(&["degrees", "degree", "deg", "degs"]));
    let hand = || terminated(map_opt(side, right_hand), opt(text(&["turn", "hand"])));
    let said_first = (preceded(lead(), hand()), opt(preceded(at(), degrees()))).map(|(r, d)| (r, d.unwrap_or(90)));
    let said_last = (preceded((lead(), at()), degrees()), preceded(at(), hand())).map(|(d, r)| (r, d));
    let in_degrees = (sure(), preceded(at(), hand())).map(|(d, r)| (r, d));
    // "45 right 6'": a number that is no length of a side, and a length after it.
    let angle = |n: &u16| matches!(n, 15 | 22 | 30 | 45 | 60 | 75);
    let bare =
        (verify(count, angle), terminated(hand(), peek((opt(text(&["for", ","])), length)))).map(|(d, r)| (r, d));
    alt((said_first, said_last, in_degrees, bare)).map(|(right, degrees)| Way::Turn { right, degrees }).parse(input)
}

fn right_hand(s: Side) -> Option<bool> {
    match s {
        Side::Right => Some(true),
        Side::Left => Some(false),
        _ => None,
    }
}

/// "and then it goes", "deck goes", "first leg is", "left side is".
fn lead(input: In<'_>) -> Out<'_, (Option<Side>, bool)> {
    let then = || {
        many0_count(alt((
            text(&["then", "and", "and then", "it", "goes", "comes", "runs", "next", "another", "go", "come", "with"]),
            preceded(peek(not(turned)), sense(Sense::Verb(Verb::Goes))),
            sep(","),
        )))
    };
    let adjective = text(&["long", "short", "first", "next", "last"]);
    let leg = (
        det,
        opt(adjective),
        alt((run_word, part(Part::Deck), value((), any(nth)))),
        many0_count(alt((text(&["is", "'s", "goes", "runs"]), sense(Sense::Verb(Verb::Goes))))),
    );
    let of_side = (det, verify(side, |s| !matches!(s, Side::Other | Side::Side)), opt(run_word), is);
    let of_side = of_side.map(|(_, s, ..)| s);
    let begins = (
        opt(text(&["it"])),
        alt((sense(Sense::Verb(Verb::Starts)), text(&["begin"]))),
        many0_count(text(&["off", "at", "from", "on", "it"])),
        house,
        opt((text(&["on", "at"]), det, side)),
        opt(sep(",")),
    );
    let (rest, (_, begun, _, _)) = (then(), opt(begins), opt(leg), then()).parse(input)?;
    let begun = begun.is_some();
    // "right 10'" goes that way; "right side is 10 out" names the side.
    let named = |i: In<'_>| i.iter().take(3).any(|x| matches!(&*x.text, "is" | "'s" | ":") || x.text.ends_with("side"));
    if named(rest) { opt(of_side).map(|s| (s, begun)).parse(rest) } else { Ok((rest, (None, begun))) }
}

fn nth(s: Sense) -> Option<()> {
    matches!(s, Sense::Nth(_)).then_some(())
}

/// "then 10' across", "back 8' toward the house", "long leg is 20' off the house",
/// "hang a right, 10 foot".
pub fn walk(input: In<'_>) -> Out<'_, Say> {
    if let Ok(first) = side_off_house(input) {
        return Ok(first);
    }
    let jog = opt(preceded(peek(not(turned)), alt((sense(Sense::Verb(Verb::Jog)), part(Part::Corner)))));
    let (rest, ((lead_side, begun), _)) = (lead, jog).parse(input)?;
    let link = || {
        many0_count(alt((
            sep(","),
            text(&["for", "and", "then", "goes", "go", "another", "then goes", "about"]),
            sense(Sense::Verb(Verb::Goes)),
        )))
    };
    let by_turn = (turned, preceded(link(), length)).map(|(w, m)| (m, w));
    let (rest, (m, way)) = alt((by_turn, by_way)).parse(rest)?;
    let on_side = (many0_count(text(&["on", "along", "for", "down", "of", "up"])), det, side, opt(run_word));
    let (rest, on) = opt(on_side.map(|(_, _, s, _)| s)).parse(rest)?;
    // "back 8' toward the house on the left": the side it is on; a way already said is not said again.
    // "start at the house, 16 out": the first side.
    let way = if begun && way == Way::Out { Way::Start } else { way };
    Ok((rest, Say::Clause(Clause::Walk { way, length: Some(m), on: on.or(lead_side) })))
}

/// "left 12 off the house": the first side and its name.
fn side_off_house(input: In<'_>) -> Out<'_, Say> {
    let named = verify(side, |s| !matches!(s, Side::Other | Side::Side));
    let told = (preceded(det, named), preceded((opt(run_word), is), length), off_house);
    told.map(|(s, m, way)| Say::Clause(Clause::Walk { way, length: Some(m), on: Some(s) })).parse(input)
}

/// "right 10'", "then left another 6'": a way, unless a run goes by that name.
pub fn by_side(input: In<'_>) -> Out<'_, Say> {
    let then = many0_count(alt((text(&["then", "and", "and then"]), sep(","))));
    let before =
        (map_opt(side, bare_way), preceded(opt(text(&["another", "for", "about"])), length)).map(|(w, m)| (m, w));
    let after = (length, map_opt(side, bare_way)).map(|(m, w)| (m, w));
    let (rest, (m, way)) = preceded(then, alt((before, after))).parse(input)?;
    Ok((rest, Say::Clause(Clause::Walk { way, length: Some(m), on: None })))
}

/// A length with its way before or behind it; where both stand, the later says it more plainly.
fn by_way(input: In<'_>) -> Out<'_, (crate::measure::Measure, Way)> {
    let first = alt((off_house, preceded(opt(text(&["straight"])), listed_way)));
    let (rest, before) = opt(terminated(first, opt(text(&["another", "for", "about"])))).parse(input)?;
    let (rest, m) = length(rest)?;
    let (rest, after) = opt(preceded(opt(text(&["long"])), way)).parse(rest)?;
    match after.or(before) {
        Some(way) => Ok((rest, (m, way))),
        None => Err(nom::Err::Error(())),
    }
}

/// "then home", "and back to the house", "home" behind a stop, "turn right 90, home".
pub fn home(input: In<'_>) -> Out<'_, Say> {
    let then =
        || many0_count(text(&["then", "and", "and then", "back", "straight", "goes", "go", "comes", "runs", "it"]));
    let named = || text(&["home", "back home"]);
    let house = (text(&["to", "in to", "into", "up to"]), verify(place, |e| *e == End::House));
    let plain = preceded(
        peek(text(&["then", "and then", "and", "back", "straight"])),
        preceded(then(), alt((named(), value((), house)))),
    );
    let alone = terminated(named(), peek(closes));
    // The turn says no more than the way home does.
    let after_turn = preceded((turned, opt(sep(",")), then()), named());
    let (rest, ()) = terminated(alt((plain, alone, after_turn)), opt(text(&["again"]))).parse(input)?;
    Ok((rest, Say::Clause(Clause::Walk { way: Way::In, length: None, on: None })))
}

/// The end or a sign.
fn closes(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(Item::is_sep) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
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
    value(Say::Clause(Clause::Shape), (lead, deck, many0_count(text(&["is", "'s", "an", "a"])), word, opt(sep(":,."))))
        .parse(input)
}
