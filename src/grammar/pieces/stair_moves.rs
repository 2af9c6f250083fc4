//! Stairs moved, several told at once, and stairs told of a side nobody told yet.
//!
//! ```text
//! flip   = ("flip" | "swap" | "move") stairs ["to"] "the other" ("end" | "side")
//! slide  = ("slide" | "move" ...) stairs ["over"] length ("to the" side | "left" | "right" | "toward" place)
//! moved  = ("move" | "put" ...) stairs ["to"] along
//! more   = ("another" | "second") stairs whole; several = ["two" "sets of"] stairs whole ("and" | ",") "one" whole ...
//! ```

use super::Say;
use super::atoms::{In, Out, det, length, part, place, sense, sep, side, text};
use super::flights::{said, they};
use super::stair_sides::{along, wide};
use crate::grammar::draft::{Along, Clause, Mark};
use crate::grammar::sense::{Part, Sense, Side, Spot, Verb};
use crate::grammar::stair_draft::{StairSaid, StairsWhole};
use crate::job::End;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::{many0_count, many1, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn verb(input: In<'_>) -> Out<'_, ()> {
    let word =
        text(&["flip", "swap", "switch", "slide", "bump", "scoot", "nudge", "push", "pull", "put", "kick", "mirror"]);
    value(
        (),
        (many0_count(text(&["and", "just", "lets", "can you", "now"])), alt((sense(Sense::Verb(Verb::Move)), word))),
    )
    .parse(input)
}

/// "flip the stairs to the other end".
pub fn flip(input: In<'_>) -> Out<'_, Say> {
    let other = (
        many0_count(text(&["over", "to", "on", "at", "onto", "around", "round"])),
        det,
        text(&["other", "opposite", "far", "other end", "other side"]),
        opt(alt((part(Part::End), sense(Sense::Side(Side::Side))))),
    );
    let other = alt((
        value((), other),
        value((), sense(Sense::Side(Side::Other))),
        value((), (text(&["to"]), det, sense(Sense::Spot(Spot::Other)), opt(part(Part::End)))),
    ));
    let flipped = text(&["flip", "mirror", "swap"]);
    let bare = (flipped, det, part(Part::Stairs), opt(text(&["over", "around", "round"])), line_end);
    let to = (verb, they, many0_count(text(&["over", "to", "on", "at"])), det, other);
    alt((value((), to), value((), bare))).map(|()| said(StairSaid::Flip)).parse(input)
}

fn line_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(crate::grammar::items::Item::is_sep) {
        Ok((input, ()))
    } else {
        Err(nom::Err::Error(()))
    }
}

/// Toward where: "to the left", "right", "toward the house".
fn toward(input: In<'_>) -> Out<'_, Mark> {
    let to =
        || many0_count(text(&["to", "toward", "towards", "over", "further", "closer to", "nearer", "more", "closer"]));
    let sided = verify(side, |s| matches!(s, Side::Left | Side::Right)).map(Mark::Side);
    let way = alt((
        value(Mark::Side(Side::Left), text(&["left", "to the left", "leftward"])),
        value(Mark::Side(Side::Right), text(&["right", "to the right", "rightward"])),
    ));
    preceded((to(), det), alt((sided, way, place.map(Mark::End)))).parse(input)
}

/// "slide them 2 ft left", "shift the stairs over a foot to the right".
pub fn slide(input: In<'_>) -> Out<'_, Say> {
    let over = || many0_count(text(&["over", "along", "by", "down", "back"]));
    let lead = (verb, they, over());
    let by = (lead, length, over(), toward).map(|(_, m, _, mark)| (m, mark));
    let other = (verb, they, over(), toward, over(), length).map(|(_, _, _, mark, _, m)| (m, mark));
    alt((by, other)).map(|(m, mark)| said(StairSaid::Slide(m, mark))).parse(input)
}

/// "move the stairs to 5' from the left", "put them in the middle".
pub fn moved(input: In<'_>) -> Out<'_, Say> {
    let to = || many0_count(text(&["over", "to", "so they 're", "so theyre", "back", "so", "they 're"]));
    let sided = delimited(det, verify(side, |s| matches!(s, Side::Left | Side::Right)), opt(part(Part::End)));
    let sided = sided.map(Along::AtSide);
    preceded((verb, they, to()), alt((along, sided))).map(|at| said(StairSaid::Move(at))).parse(input)
}

/// One whole stair: its width and place in either order.
fn whole(input: In<'_>) -> Out<'_, StairsWhole> {
    let on = preceded((text(&["on", "off", "in"]), det), verify(side, |s| !matches!(s, Side::Side | Side::Other)));
    enum Bit {
        Wide(Measure),
        At(Along),
        On(Side),
    }
    let bit = alt((along.map(Bit::At), wide.map(Bit::Wide), on.map(Bit::On)));
    let lead = || (opt(sep(",")), many0_count(text(&["is", "'s", "and", "at", "just", "right", "goes", "which"])));
    let (rest, bits) = many1(preceded(lead(), bit)).parse(input)?;
    let mut told = StairsWhole::default();
    for bit in bits {
        let twice = match bit {
            Bit::Wide(m) => told.width.replace(m).is_some(),
            Bit::At(a) => told.at.replace(a).is_some(),
            Bit::On(s) => told.on.replace(s).is_some(),
        };
        if twice {
            return Err(nom::Err::Error(()));
        }
    }
    if told.at.is_none() && told.on.is_none() { Err(nom::Err::Error(())) } else { Ok((rest, told)) }
}

fn widths(input: In<'_>) -> Out<'_, Option<Measure>> {
    let each = || many0_count(text(&["each", "both", "apiece", "of them"]));
    let lead = || (opt(sep(",")), many0_count(text(&["both", "each", "are", "all"])));
    opt(delimited(lead(), wide, each())).parse(input)
}

/// "two sets of stairs, one 3 ft from the left corner, one in the middle"; "stairs at both ends, 4 ft wide each".
pub fn several(input: In<'_>) -> Out<'_, Say> {
    let two = alt((
        value(
            (),
            (
                text(&["two", "2", "couple", "a couple", "pair", "2nd"]),
                opt(text(&["sets of", "sets", "flights of", "flights"])),
                opt(text(&["of"])),
                part(Part::Stairs),
            ),
        ),
        value(
            (),
            text(&[
                "two sets of stairs",
                "two sets of steps",
                "two stairs",
                "2 sets of stairs",
                "two flights",
                "two flights of stairs",
            ]),
        ),
    ));
    let lead = (many0_count(text(&["with", "and", "theres", "there 's", "put", "add"])), det);
    let (rest, _) = (lead, two, opt(sep(":"))).parse(input)?;
    let (rest, before) = widths(rest)?;
    let one = || {
        (
            opt(sep(",;")),
            many0_count(text(&["and"])),
            opt(text(&["the"])),
            text(&["one", "other", "the other", "another", "the one", "second"]),
            opt(text(&["one", "is"])),
        )
    };
    let (rest, each) = many1(preceded(one(), whole)).parse(rest)?;
    let (rest, after) = widths(rest)?;
    if each.len() < 2 {
        return Err(nom::Err::Error(()));
    }
    let width = before.or(after);
    let each = each.into_iter().map(|s| StairsWhole { width: s.width.or(width.clone()), ..s }).collect();
    Ok((rest, Say::Clause(Clause::MoreStairs { each, more: false })))
}

/// "stairs at both ends, 4 ft wide each": of the run spoken of.
pub fn both_ends(input: In<'_>) -> Out<'_, Say> {
    let mut lead = (many0_count(text(&["with", "and", "put", "add"])), det);
    let (rest, _) = lead.parse(input)?;
    let (rest, before) = opt(wide).parse(rest)?;
    let (rest, _) = (part(Part::Stairs), opt(text(&["at", "on"])), sense(Sense::Spot(Spot::BothEnds))).parse(rest)?;
    let (rest, after) = widths(rest)?;
    let Some(width) = before.or(after) else { return Err(nom::Err::Error(())) };
    let at = |side| StairsWhole { on: None, width: Some(width.clone()), at: Some(Along::AtSide(side)) };
    Ok((rest, Say::Clause(Clause::MoreStairs { each: vec![at(Side::Left), at(Side::Right)], more: false })))
}

/// "another set of stairs in the middle, 4 ft wide", "and another 4 ft stairs 2 ft from the right".
pub fn another(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(sep(",")), many0_count(text(&["and", "then", "plus", "with", "put", "add", "also"])));
    let more = text(&["another", "second", "one more", "a second", "more", "another one", "extra"]);
    let (rest, _) = (lead, det, more).parse(input)?;
    let (rest, before) = opt(wide).parse(rest)?;
    let (rest, _) =
        (many0_count(text(&["set", "of"])), part(Part::Stairs), many0_count(text(&["is", "are", "go", "goes"])))
            .parse(rest)?;
    let (rest, told) = whole(rest)?;
    let told = StairsWhole { width: told.width.or(before), ..told };
    Ok((rest, Say::Clause(Clause::MoreStairs { each: vec![told], more: true })))
}

/// "4 ft stairs 2 ft from the left and 4 ft stairs 2 ft from the right", in one breath.
pub fn one_and_one(input: In<'_>) -> Out<'_, Say> {
    let one = |input| {
        let (rest, _) =
            (many0_count(text(&["with", "and", "then", "plus", "another"])), det, many0_count(text(&["another"])))
                .parse(input)?;
        let (rest, before) = opt(wide).parse(rest)?;
        let (rest, _) = (part(Part::Stairs), many0_count(text(&["is", "are", "go", "goes"]))).parse(rest)?;
        let (rest, told) = whole(rest)?;
        Ok((rest, StairsWhole { width: told.width.or(before), ..told }))
    };
    let (rest, first) = one(input)?;
    let (rest, more) = many1(preceded((opt(sep(",;")), opt(text(&["and", "then", "plus"]))), one)).parse(rest)?;
    let each = std::iter::once(first).chain(more).collect();
    Ok((rest, Say::Clause(Clause::MoreStairs { each, more: false })))
}

/// "head of the stairs is at the right end, up against the house"; "stairs come off the side
/// by the front corner, 36 wide".
pub fn head_at(input: In<'_>) -> Out<'_, Say> {
    let head = alt((value((), sense(Sense::End(End::StairHead))), value((), (det, part(Part::Stairs)))));
    let come = many1_count(text(&[
        "is", "are", "'s", "sits", "sit", "come", "comes", "go", "goes", "down", "coming", "be", "off", "up", "at",
        "on",
    ]));
    let (rest, _) = (det, head, come, det).parse(input)?;
    let (rest, on) = terminated(side, (opt(text(&["hand", "side"])), opt(part(Part::End)))).parse(rest)?;
    let (rest, at) = opt(preceded((opt(sep(",")), many0_count(text(&["and", "up", "right"]))), along)).parse(rest)?;
    let at = at.or((on != Side::Side && on != Side::Other).then_some(Along::Untold));
    Ok((rest, said(StairSaid::Place(Some(on), at))))
}
