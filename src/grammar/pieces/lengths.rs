//! A run's length, its basis, its name, its bays.
//!
//! ```text
//! run_is   = [det] run-word ["is" | "of" | ":"] length [basis] ["long"]
//! run_of   = [det] length [basis] ["of"] run-word
//! bare     = length [basis] ["long"]
//! name     = [det] side [run-word] ["is" | ":"]
//! ```

use super::Say;
use super::atoms::{In, Out, any, count, det, is, length, part, place, run_word, sense, sep, side, text, tie};
use crate::grammar::sense::{Cue, Op, Part, Sense, Side, Verb};
use crate::job::Basis;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn basis(input: In<'_>) -> Out<'_, Basis> {
    let word = any(|s| match s {
        Sense::Basis(b) => Some(b),
        _ => None,
    });
    delimited(opt(text(&["measured", "taken", "all"])), word, opt(text(&["measured", "taken"]))).parse(input)
}

fn long(input: In<'_>) -> Out<'_, ()> {
    value((), opt(sense(Sense::Cue(Cue::Long)))).parse(input)
}

fn measured(input: In<'_>) -> Out<'_, (Measure, Option<Basis>)> {
    let after = preceded((long, opt(text(&["in", "of"]))), opt(basis));
    (length, after, long).map(|(m, b, ())| (m, b)).parse(input)
}

fn said(run: bool, it: bool) -> impl Fn((Measure, Option<Basis>)) -> Say {
    move |(measure, basis)| Say::Length { measure, basis, run, it }
}

/// "run 10 ft", "the guard is 12'-6", "run of 10 ft", "rail goes 14'".
pub fn run_is(input: In<'_>) -> Out<'_, Say> {
    let goes = opt(sense(Sense::Verb(Verb::Goes)));
    let word = alt((run_word, part(Part::Rail)));
    preceded((det, word, opt(text(&["length"])), goes, is_or_of), measured).map(said(true, false)).parse(input)
}

fn is_or_of(input: In<'_>) -> Out<'_, ()> {
    value(
        (),
        many0_count(alt((text(&["is", "are", "'s", "of", "=", "was", "it 's", "its", "be", "for", "at"]), sep(":")))),
    )
    .parse(input)
}

/// "7 ft section", "a 12 foot run", "12 ft of railing".
pub fn run_of(input: In<'_>) -> Out<'_, Say> {
    let of = (opt(sep("-")), opt(text(&["of"])), det);
    // "42 inch rails": a height as like as a length; `rail_is` has that.
    let word = alt((run_word, part(Part::Rail), part(Part::Landing), part(Part::Opening)));
    preceded(det, terminated(measured, (of, word))).map(said(true, false)).parse(input)
}

/// "10'-6", "88 in the clear", "14' long".
pub fn bare(input: In<'_>) -> Out<'_, Say> {
    terminated(measured, peek(not(unit_of_something))).map(said(false, false)).parse(input)
}

/// A part right after a length makes the length that part's.
fn unit_of_something(input: In<'_>) -> Out<'_, ()> {
    alt((part(Part::Gate), part(Part::Bay), part(Part::Baluster), part(Part::Riser))).parse(input)
}

/// "it's 11'-4", "that's like 8 and a quarter".
pub fn it_is(input: In<'_>) -> Out<'_, Say> {
    let goes = || alt((sense(Sense::Verb(Verb::Goes)), text(&["is", "'s", "was", "like", "just"])));
    let it = (opt(text(&["but"])), text(&["it", "its", "it 's", "thats", "that", "this"]), many0_count(goes()));
    preceded(it, measured).map(said(false, true)).parse(input)
}

/// "overall 15'", "clear 88".
pub fn basis_first(input: In<'_>) -> Out<'_, Say> {
    (terminated(basis, tie), length, long)
        .map(|(b, measure, ())| Say::Length { measure, basis: Some(b), run: false, it: false })
        .parse(input)
}

/// "... out to out".
pub fn basis_alone(input: In<'_>) -> Out<'_, Say> {
    preceded((opt(text(&["it", "thats", "that"])), is), basis).map(Say::Basis).parse(input)
}

/// "a run", "run 2".
pub fn run_word_alone(input: In<'_>) -> Out<'_, Say> {
    let counted = preceded((text(&["one"]), det), run_word).map(|()| Say::RunWord(None));
    let plain = preceded(det, terminated(alt((run_word, part(Part::Rail))), is)).map(|()| Say::RunWord(None));
    alt((counted, plain)).parse(input)
}

/// "run 2".
pub fn run_number(input: In<'_>) -> Out<'_, Say> {
    delimited((det, text(&["run", "section", "leg"])), terminated(count, peek(not(unit))), is)
        .map(|n| Say::RunWord(Some(u32::from(n))))
        .parse(input)
}

fn unit(input: In<'_>) -> Out<'_, ()> {
    any(|s| matches!(s, Sense::Unit(_)).then_some(())).parse(input)
}

/// "two runs".
pub fn runs_alone(input: In<'_>) -> Out<'_, Say> {
    let several = value((), (det, opt(count), part(Part::Runs)));
    // "landing at the head of the stairs:" opens its sides.
    let at = opt((text(&["at", "by", "off", "of"]), place));
    let landing = value((), (det, part(Part::Landing), at, sep(":,-")));
    alt((several, landing)).map(|()| Say::Runs).parse(input)
}

fn named(input: In<'_>) -> Out<'_, Side> {
    map_opt(side, |s| (s != Side::Other).then_some(s)).parse(input)
}

/// "front", "the left side is", "right side's".
pub fn name(input: In<'_>) -> Out<'_, Say> {
    delimited((opt(text(&["on"])), det), named, (opt(run_word), is)).map(Say::Name).parse(input)
}

/// "down the north side", "across the front".
pub fn along_side(input: In<'_>) -> Out<'_, Say> {
    let way = || text(&["down", "across", "along", "up", "on", "for", "at", "is", "over"]);
    let other = preceded((many1_count(way()), det), side);
    let lead = (many0_count(way()), det);
    alt((preceded(lead, named), other)).map(Say::Name).parse(input)
}

/// "not 12".
pub fn not_length(input: In<'_>) -> Out<'_, Say> {
    preceded((opt(sep(",")), text(&["not", "instead of"])), length).map(Say::NotLength).parse(input)
}

/// "did I say 10-10?".
pub fn did_i_say(input: In<'_>) -> Out<'_, Say> {
    let lead = (text(&["did"]), text(&["i"]), text(&["say"]));
    let lead2 = (text(&["i"]), text(&["said"]));
    terminated(preceded(alt((value((), lead), value((), lead2))), length), opt(sep("?,.")))
        .map(Say::NotLength)
        .parse(input)
}

/// "3 bays", "in four bays".
pub fn bays(input: In<'_>) -> Out<'_, Say> {
    let split = opt((sense(Sense::Op(Op::Split)), opt(text(&["it", "that", "this", "them"]))));
    let lead = (split, many0_count(text(&["in", "into", "with", "as", "split into", "do", "for", "use", "up"])));
    let kind = opt(text(&["equal", "even", "same"]));
    terminated(preceded(lead, count), (kind, part(Part::Bay))).map(|n| Say::Bays(Some(n))).parse(input)
}

/// "go back to the fewest bays".
pub fn fewest_bays(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        opt(sense(Sense::Verb(Verb::Undo))),
        many0_count(text(&["go", "back", "to", "use", "with", "the", "as", "do"])),
    );
    let few = text(&["fewest", "least", "minimum", "as few"]);
    value(Say::Bays(None), (lead, few, opt(text(&["number of", "number", "of"])), part(Part::Bay))).parse(input)
}
