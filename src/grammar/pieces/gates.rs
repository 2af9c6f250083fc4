//! Gates and stairs.
//!
//! ```text
//! gate   = ["with"] [det] [length ["wide"]] "gate" [is] [length ["wide"]] [where]
//! stairs = ["with"] [det] [length ["wide"]] "stairs" [is] [length ["wide"]] [where]
//! where  = ["at" | "in" | "on"] [det] (spot | side | place)
//! ```

use super::Say;
use super::atoms::{In, Out, any, det, is, length, measure, one, part, place, sense, sep, side, text};
use super::flights::counted_word;
use super::phrase::ends;
use crate::grammar::draft::{Clause, GateDraft, SpotDraft, StairDraft, StairSpot};
use crate::grammar::items::Item;
use crate::grammar::sense::{Cue, Part, Sense, Side, Spot, Verb};
use crate::job::{End, SlotId};
use crate::measure::{Length, Meaning, Measure};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn with(input: In<'_>) -> Out<'_, ()> {
    let put = opt(sense(Sense::Verb(Verb::Put)));
    value((), (many0_count(text(&["with", "and", "plus", "w / ", "including", "has", "got"])), put, det)).parse(input)
}

fn wide(input: In<'_>) -> Out<'_, Measure> {
    delimited(
        (opt((text(&["to", "at", "of"]), is)), opt(text(&["just"]))),
        length,
        (opt(sep("-")), opt(sense(Sense::Cue(Cue::Wide)))),
    )
    .parse(input)
}

/// A spot, a side or a place: "in the middle", "at the left end", "at the stair head".
pub fn spot(input: In<'_>) -> Out<'_, SpotDraft> {
    let at_end = terminated(place, opt(part(Part::End))).map(SpotDraft::End);
    let an_end = value(SpotDraft::Spot(Spot::End), part(Part::End));
    alt((plain_spot, at_end, an_end)).parse(input)
}

/// A spot that needs no "at" before it: "middle", "left end".
fn plain_spot(input: In<'_>) -> Out<'_, SpotDraft> {
    let listed = any(|s| match s {
        Sense::Spot(spot) => Some(SpotDraft::Spot(spot)),
        _ => None,
    });
    let sided = map_opt(side, |s| matches!(s, Side::Left | Side::Right).then_some(SpotDraft::Side(s)));
    let there = value(SpotDraft::End(End::StairHead), text(&["there"]));
    alt((there, terminated(alt((listed, sided)), opt(part(Part::End))))).parse(input)
}

/// Words that place a gate or stairs.
const AT: &[&str] = &[
    "at",
    "in",
    "on",
    "by",
    "to",
    "across",
    "near",
    "over",
    "@",
    "next to",
    "against",
    "beside",
    "up against",
    "tight to",
    "hard against",
    "right by",
    "over by",
    "close to",
    "alongside",
    "towards",
    "toward",
    "beside of",
];

fn at_spot(input: In<'_>) -> Out<'_, SpotDraft> {
    let goes =
        many0_count(text(&["goes", "going", "is", "'s", "right", "up", "its", "it 's", "there", "just", "dead"]));
    let link = many1_count(text(AT));
    // "on centre" is no place, though "centre" is.
    let on_centre = (text(&["on"]), text(&["center", "centre", "ctr"]));
    let linked = preceded((goes, not(peek(on_centre)), link, det), spot);
    let bare = preceded((opt(text(&["right", "dead"])), det), plain_spot);
    alt((linked, bare)).parse(input)
}

/// "gate at top", "with a 3 ft gate right in the middle", "3' gate", "gate 36 wide".
pub fn gate(input: In<'_>) -> Out<'_, Say> {
    let word = || (det, part(Part::Gate));
    let before = (preceded(with, wide), word(), is).map(|(w, ..)| Some(w));
    let after = preceded((with, word(), is), opt(wide));
    let (rest, (width, at)) = (alt((before, after)), opt(at_spot_of)).parse(input)?;
    let (rest, behind) = match (&width, &at) {
        (None, Some(_)) => opt(wide_behind).parse(rest)?,
        _ => (rest, None),
    };
    Ok((rest, Say::Gate(Some(GateDraft { width: width.or(behind), at }))))
}

/// "in the middle, 3 ft": no run is so short, and with its unit said it is the gate's width.
fn wide_behind(input: In<'_>) -> Out<'_, Measure> {
    let gate_wide = |m: &Measure| matches!(m.meaning, Meaning::Length(l, _) if SlotId::GateWidth.takes(l) && l <= Length::inches(72));
    let lead = (opt(sep(",")), many0_count(text(&["like", "about", "its", "it 's", "is", "maybe"])));
    let wide = (opt(sep("-")), opt(sense(Sense::Cue(Cue::Wide))));
    terminated(delimited(lead, verify(length, gate_wide), wide), peek(ends)).parse(input)
}

/// "in the middle of" what is told next.
fn at_spot_of(input: In<'_>) -> Out<'_, SpotDraft> {
    terminated(at_spot, opt(text(&["of"]))).parse(input)
}

/// "at the house", behind a gate told without its place.
pub fn at(input: In<'_>) -> Out<'_, Say> {
    preceded((text(AT), det), spot).map(Say::At).parse(input)
}

/// "move the gate to the corner", "move it"; "shift the stairs to 5' from the left".
pub fn moved(input: In<'_>) -> Out<'_, Say> {
    let (rest, _) = (many0_count(text(&["and", "just", "lets"])), sense(Sense::Verb(Verb::Move)), det).parse(input)?;
    let over = || many0_count(text(&["over", "on", "back", "along", "down", "up"]));
    let gate = preceded((alt((part(Part::Gate), text(&["it"]))), over()), opt(at_spot)).map(|at| match at {
        Some(at) => Say::Gate(Some(GateDraft { width: None, at: Some(at) })),
        None => Say::Clause(Clause::Move),
    });
    let to = opt(text(&["to", "at", "so they 're", "over to"]));
    let stairs = preceded((part(Part::Stairs), over(), to), measured_spot);
    let stairs = stairs.map(|at| Say::Stairs(Some(StairDraft { width: None, at: Some(at) })));
    alt((stairs, gate)).parse(rest)
}

/// "no gate", "without a gate".
pub fn no_gate(input: In<'_>) -> Out<'_, Say> {
    let no = (sense(Sense::Not), opt(text(&["want", "need"])), det, opt(text(&["any"])), part(Part::Gate));
    let nah = text(&["nah", "no", "nope", "none"]);
    let again = opt((opt(text(&["no"])), part(Part::Gate)));
    let asked = (det, part(Part::Gate), sep("?"), nah, opt(sep(",")), again);
    let gone = (
        det,
        part(Part::Gate),
        text(&["is", "'s"]),
        text(&["gone", "out", "off", "scrapped", "cancelled", "canceled", "history"]),
    );
    value(Say::Gate(None), alt((value((), no), value((), asked), value((), gone)))).parse(input)
}

/// "gate? yeah gate".
pub fn gate_question(input: In<'_>) -> Out<'_, Say> {
    let asked = (
        det,
        part(Part::Gate),
        sep("?"),
        text(&["yeah", "yes", "yep", "yup", "sure"]),
        opt(sep(",")),
        det,
        opt(part(Part::Gate)),
    );
    (asked, opt(at_spot)).map(|(_, at)| Say::Gate(Some(GateDraft { width: None, at }))).parse(input)
}

/// "the gate's fine".
pub fn fine(input: In<'_>) -> Out<'_, Say> {
    let what = alt((part(Part::Gate), part(Part::Stairs), part(Part::Run), part(Part::Post), value((), side)));
    let praise = text(&["fine", "good", "ok", "okay", "great", "right", "perfect", "cool", "alright"]);
    value(Say::Clause(Clause::Fine), (det, what, text(&["'s", "is", "are"]), praise)).parse(input)
}

/// "stairs 4' wide in the middle", "4 ft stairs", "stairs r 4 foot".
pub fn stairs(input: In<'_>) -> Out<'_, Say> {
    let theyre = text(&["is", "are", "'s", "r", "go", "goes", "come", "of", "at", "they 're", "theyre"]);
    let are = many0_count(alt((theyre, sep(":"))));
    let mut word = (det, part(Part::Stairs), opt(part(Part::Opening)), are).map(|_| ());
    let (rest, ()) = with(input)?;
    if counts_steps(rest) {
        return Err(nom::Err::Error(()));
    }
    let before = wide(rest).and_then(|(rest, w)| word.parse(rest).map(|(rest, ())| (rest, Some(w))));
    // "stairs: 9 risers" counts them.
    let behind = |rest| opt(terminated(wide, peek(not(counted_word)))).parse(rest);
    let (rest, width) = before.or_else(|_| word.parse(rest).and_then(|(rest, ())| behind(rest)))?;
    // "stairs 10" may count them: a width so great is said with its unit, or "wide".
    let much = |m: &Measure| matches!(&m.meaning, Meaning::Bare(n) if n.value.is_integer() && n.value > 6.into() && n.value < 24.into());
    let wide_said = input.iter().take(input.len() - rest.len()).any(|i| i.may_be(Sense::Cue(Cue::Wide)));
    if width.as_ref().is_some_and(much) && !wide_said {
        return Ok((rest, Say::Clause(Clause::StepsCounted)));
    }
    // Behind a comma only what can be nothing but the stairs' place: "stairs 4' wide, 5' from the left".
    let near = alt((preceded(sep(","), measured_spot), stair_spot));
    let (rest, at) = opt(near).parse(rest)?;
    // "stairs" alone says nothing: it is an end of a run, or a question's word.
    if width.is_none() && at.is_none() {
        Err(nom::Err::Error(()))
    } else {
        Ok((rest, Say::Stairs(Some(StairDraft { width, at }))))
    }
}

/// "4 steps": a bare number before the word counts them, and is no width.
pub(super) fn counts_steps(input: In<'_>) -> bool {
    let few = |m: &Measure| matches!(&m.meaning, Meaning::Bare(n) if !n.fraction && n.value < 24.into());
    (det, verify(measure, few), text(&["steps", "stairs", "step"])).parse(input).is_ok()
}

/// "4 steps down in the middle of the front": a count and a place, to the end of what is said of them.
pub fn counted_steps(input: In<'_>) -> Out<'_, Say> {
    let place = text(&["down", "off", "in", "at", "on", "in the middle", "off of", "from", "by", "to"]);
    let spot = alt((value((), place), value((), at_spot_of)));
    let counted = verify(measure, |m| matches!(&m.meaning, Meaning::Bare(n) if !n.fraction && n.value < 24.into()));
    let lead = (opt(text(&["with", "and", "theres", "there 's", "has", "have"])), det, counted);
    let words = (lead, text(&["steps", "stairs", "step"]), spot);
    let rest = many0_count(one(|i: &Item| (!i.is_sep()).then_some(())));
    value(Say::Clause(Clause::StepsCounted), (words, rest)).parse(input)
}

fn stair_spot(input: In<'_>) -> Out<'_, StairSpot> {
    let between = preceded(opt(text(&["in"])), text(&["between"]));
    let between = value(StairSpot::Between, (between, opt(text(&["them", "the two", "those", "em"]))));
    let between_in = value(StairSpot::Between, (text(&["in", "between"]), text(&["between", "them"])));
    alt((
        measured_spot,
        between,
        between_in,
        verify(at_spot_of, |s| *s != SpotDraft::End(End::StairHead)).map(StairSpot::At),
    ))
    .parse(input)
}

/// "5' from the left corner", "in the middle".
fn measured_spot(input: In<'_>) -> Out<'_, StairSpot> {
    let from = text(&["from", "off", "in from", "over from", "along from", "out from", "in", "over"]);
    let off = (length, preceded((many1_count(from), det), left_right));
    let from_off = terminated(off, opt(alt((value((), corner), part(Part::End))))).map(|(m, s)| StairSpot::Off(m, s));
    let middle = value(StairSpot::Middle, verify(at_spot_of, |s| *s == SpotDraft::Spot(Spot::Middle)));
    alt((from_off, middle)).parse(input)
}

fn corner(input: In<'_>) -> Out<'_, End> {
    verify(place, |e| *e == End::Corner).parse(input)
}

fn left_right(input: In<'_>) -> Out<'_, Side> {
    verify(side, |s| matches!(s, Side::Left | Side::Right)).parse(input)
}

/// "no stairs".
pub fn no_stairs(input: In<'_>) -> Out<'_, Say> {
    value(Say::Stairs(None), (sense(Sense::Not), det, part(Part::Stairs))).parse(input)
}
