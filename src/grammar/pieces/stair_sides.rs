//! Stairs off a side of the deck, and where along it.
//!
//! ```text
//! stairs_on = ["with"] [length ["wide"]] "stairs" ["come"] (["in the"] "middle of" | "off" | "on" | "in") side
//!             *([","] (length ["wide"] | where))
//! where     = ("tight to" | "by" | "against" ...) place | "in the middle" | length ("from" | "off") (place | side)
//! ```

use super::Say;
use super::atoms::{In, Out, det, length, part, place, sense, sep, side, text};
use crate::grammar::draft::{Along, Clause, Mark};
use crate::grammar::sense::{Cue, Part, Sense, Side, Spot};
use crate::job::End;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::{many0, many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

/// What is said of stairs behind their side.
#[derive(Clone)]
enum More {
    Wide(Measure),
    At(Along),
}

pub(super) fn wide(input: In<'_>) -> Out<'_, Measure> {
    if super::gates::counts_steps(input) {
        return Err(nom::Err::Error(()));
    }
    terminated(length, (opt(sep("-")), opt(sense(Sense::Cue(Cue::Wide))))).parse(input)
}

/// What an end of a side is: "the front corner", "the house end", "the front" of a left or right side.
fn at_place(input: In<'_>) -> Out<'_, End> {
    let coloured = preceded(opt(verify(side, |s| *s == Side::Front)), place);
    let front = value(End::Corner, verify(side, |s| *s == Side::Front));
    alt((terminated(coloured, opt(part(Part::End))), front)).parse(input)
}

pub(super) fn along(input: In<'_>) -> Out<'_, Along> {
    let by = text(&[
        "tight to",
        "by",
        "against",
        "up against",
        "hard against",
        "right by",
        "next to",
        "at",
        "near",
        "right at",
        "close to",
    ]);
    let at_end = preceded((opt(text(&["right", "up"])), by, det), at_place).map(Along::AtEnd);
    let middle = (many0_count(text(&["in", "at", "right", "the", "dead"])), sense(Sense::Spot(Spot::Middle)));
    let middle = value(Along::Middle, middle);
    let of_side = opt(alt((value((), place), part(Part::End))));
    // "the left corner" is which end, and that it is a corner.
    let by_hand = alt((
        value(Side::Left, text(&["left corner", "left hand corner", "left end", "left hand end"])),
        value(Side::Right, text(&["right corner", "right hand corner", "right end", "right hand end"])),
    ));
    let mark = alt((by_hand.map(Mark::Side), terminated(side, of_side).map(Mark::Side), place.map(Mark::End)));
    let off = (
        length,
        preceded(
            (many1_count(text(&["from", "off", "in", "out", "in from", "out from", "along from", "back from"])), det),
            mark,
        ),
    );
    let tight = text(&["at", "tight to", "against", "hard against", "right at", "up against", "on"]);
    let sided = terminated(
        verify(side, |s| matches!(s, Side::Left | Side::Right)),
        opt(alt((value((), place), part(Part::End)))),
    );
    let at_side = preceded((opt(text(&["right", "up"])), tight, det), sided).map(Along::AtSide);
    alt((off.map(|(m, mark)| Along::Off(m, mark)), at_end, middle, at_side)).parse(input)
}

/// "stairs off the left side, 4 foot, tight to the house".
pub fn stairs_on(input: In<'_>) -> Out<'_, Say> {
    let mut with = (many0_count(text(&["with", "and", "add", "put", "theres", "there 's"])), det);
    let (rest, _) = with.parse(input)?;
    let (rest, before) = opt(wide).parse(rest)?;
    let come =
        many0_count(text(&["is", "are", "'s", "come", "comes", "go", "goes", "down", "coming", "going", "wide"]));
    let off = alt((text(&["off", "on", "in", "out of", "from", "at", "along", "off of"]), value((), text(&["to"]))));
    let named = verify(side, |s| !matches!(s, Side::Side | Side::Other));
    let middle =
        (many0_count(text(&["in", "at", "the", "dead"])), sense(Sense::Spot(Spot::Middle)), text(&["of", "on"]));
    let off = alt((value(Some(Along::Middle), middle), value(None, off)));
    let (rest, (first, on)) = preceded((part(Part::Stairs), come), (terminated(off, det), named)).parse(rest)?;
    let more = alt((along.map(More::At), wide.map(More::Wide)));
    let (rest, more) =
        many0(preceded((opt(sep(",")), many0_count(text(&["and", "thats", "its", "it 's"]))), more)).parse(rest)?;
    // "five 4 foot": of two widths neither is taken.
    let widths = more.iter().filter(|m| matches!(m, More::Wide(_))).count() + usize::from(before.is_some());
    if widths > 1 {
        return Err(nom::Err::Error(()));
    }
    let width = before.or_else(|| more.iter().find_map(|m| if let More::Wide(w) = m { Some(w.clone()) } else { None }));
    let at = first.or_else(|| more.iter().find_map(|m| if let More::At(a) = m { Some(a.clone()) } else { None }));
    Ok((rest, Say::Clause(Clause::StairsOn { on, width, at })))
}

/// "stairs are tight to the house": of the run spoken of.
pub fn stairs_along(input: In<'_>) -> Out<'_, Say> {
    let are = many0_count(text(&["is", "are", "'s", "go", "goes", "they", "theyre", "sit"]));
    let lead = (det, part(Part::Stairs), are);
    delimited(lead, verify(along, |a| matches!(a, Along::AtEnd(_))), opt(sep(",")))
        .map(|at| Say::Clause(Clause::StairsAlong(at)))
        .parse(input)
}
