//! Questions about stair openings and gates.

use super::Say;
use super::atoms::{In, Out, det, length, part, sense, sep, side, text};
use super::hung::{swings, way};
use crate::grammar::draft::{AskDraft, Clause, Which};
use crate::grammar::sense::{Ask, Cue, Part, Sense, Side, Verb};
use crate::grammar::stair_draft::StairAsked;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn ask_word<'a>(a: Ask) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Ask(a))
}

/// Any of the questions.
pub fn ask(input: In<'_>) -> Out<'_, Say> {
    let asked = alt((height, leaf, swing, one_leaf, told)).map(Clause::AskStairs);
    alt((asked, beside)).map(Say::Clause).parse(input)
}

/// "how high's the deck", "what's the total rise": by the stairs told.
fn height(input: In<'_>) -> Out<'_, StairAsked> {
    let is = || many0_count(text(&["is", "'s", "the", "a", "does", "that", "make", "would", "put"]));
    let high =
        alt((ask_word(Ask::HowHigh), value((), (text(&["how"]), text(&["high", "tall", "far off the ground"])))));
    let deck = (
        high,
        is(),
        det,
        alt((part(Part::Deck), text(&["it", "that"]))),
        many0_count(text(&["up", "off the ground", "then"])),
    );
    let what = (opt(sep(",")), opt(text(&["so"])), alt((ask_word(Ask::What), text(&["whats"]))), is());
    let total = (
        what,
        det,
        alt((
            text(&["total rise", "rise in all", "height of the stairs", "deck height", "total height"]),
            value((), (text(&["total", "whole"]), text(&["rise"]))),
        )),
    );
    let height = (
        alt((ask_word(Ask::What), text(&["whats"]))),
        text(&["height"]),
        is(),
        det,
        part(Part::Deck),
        opt(text(&["at"])),
    );
    alt((value((), deck), value((), total), value((), height))).map(|()| StairAsked::Height).parse(input)
}

fn gaps(input: In<'_>) -> Out<'_, (Option<Measure>, Option<Measure>)> {
    let with = || many0_count(text(&["with", "and", "leaving", "less", "allowing", "i", "want", "a", "for"]));
    let each = (text(&["each", "either", "both", "per"]), text(&["side", "sides", "end", "ends"]));
    let word = || opt(text(&["gap", "gaps", "clearance", "space", "on", "at", "of"]));
    let both = delimited((opt(sep(",")), with()), length, (word(), word(), each)).map(|m| (Some(m.clone()), Some(m)));
    let hinge = || (word(), word(), det, text(&["hinge", "hinges", "hinge side"]));
    let latch = || (word(), word(), det, text(&["latch", "latch side"]));
    let one = delimited((opt(sep(",")), with()), length, hinge());
    let other = delimited((opt(sep(",")), with()), length, latch());
    alt((both, (one, opt(other)).map(|(h, l)| (Some(h), l)))).parse(input)
}

/// "how wide do I build the gate for a 41 1/2 opening with half inch each side".
fn leaf(input: In<'_>) -> Out<'_, StairAsked> {
    let wide = alt((
        ask_word(Ask::HowWide),
        ask_word(Ask::HowMuch),
        value((), (alt((ask_word(Ask::What), text(&["whats"]))), text(&["width", "size", "width of"]))),
    ));
    let verb = || {
        many0_count(alt((
            ask_word(Ask::May),
            sense(Sense::Verb(Verb::Change)),
            text(&[
                "do", "should", "does", "can", "i", "we", "build", "make", "cut", "is", "'s", "to", "would", "be",
                "need",
            ]),
        )))
    };
    let gate = || {
        (
            det,
            alt((value((), (part(Part::Gate), opt(text(&["leaf"])))), text(&["leaf", "gate leaf"]))),
            many0_count(text(&["be", "need", "to be", "do i need", "then"])),
        )
    };
    let opening = || {
        let word = (opt(sense(Sense::Cue(Cue::Wide))), opt(part(Part::Opening)));
        delimited((many0_count(text(&["for", "in", "across", "to", "fit", "fill"])), det), length, word)
    };
    let asked_first = (wide, verb(), gate(), opening(), opt(gaps));
    let asked_first = asked_first.map(|(.., opening, gaps)| (opening, gaps));
    let wide = || alt((ask_word(Ask::HowWide), value((), (ask_word(Ask::What), text(&["width", "size"])))));
    let is = || many0_count(text(&["is", "'s", "of", "at"]));
    let first = (det, part(Part::Opening), is(), length);
    let asked_last = (first, opt(gaps), opt(sep(",")), wide(), verb(), gate());
    let asked_last = asked_last.map(|((.., opening), gaps, ..)| (opening, gaps));
    alt((asked_first, asked_last))
        .map(|(opening, gaps)| {
            let (hinge, latch) = gaps.unwrap_or_default();
            StairAsked::Leaf(opening, hinge, latch)
        })
        .parse(input)
}

/// "does the gate have to swing away from the stairs", "which way should the gate swing".
fn swing(input: In<'_>) -> Out<'_, StairAsked> {
    let which = (
        alt((ask_word(Ask::Which), ask_word(Ask::What))),
        text(&["way", "direction"]),
        many0_count(text(&["does", "should", "do", "must", "the", "a", "my", "is"])),
        part(Part::Gate),
        many0_count(text(&["have", "to", "supposed", "go", "need", "be", "has", "have to"])),
        opt(swings),
    );
    // Nothing but a gate swings, so "it" that does is one.
    let which_it = (
        alt((ask_word(Ask::Which), ask_word(Ask::What))),
        text(&["way", "direction"]),
        many0_count(text(&["does", "should", "do", "must", "will", "can"])),
        text(&["it"]),
        many0_count(text(&["have", "to", "need", "be", "has", "have to"])),
        swings,
    );
    let may =
        || alt((ask_word(Ask::May), text(&["does", "do", "can", "can the", "could", "should", "must", "is", "will"])));
    let gate = || {
        (
            many1_count(may()),
            det,
            many0_count(text(&["i"])),
            alt((part(Part::Gate), text(&["it"]))),
            many0_count(alt((
                may(),
                text(&["have", "need", "to", "it", "ok", "allowed", "required", "if", "for", "be", "have to"]),
            ))),
        )
    };
    let yes_no = (gate(), swings, way, opt(text(&["or"])), opt(way));
    let ought = (
        part(Part::Gate),
        text(&["swing"]),
        alt((text(&["direction", "rule", "rules", "which way"]), value((), sep("?")))),
    );
    alt((value((), which), value((), which_it), value((), yes_no), value((), ought)))
        .map(|()| StairAsked::Swing)
        .parse(input)
}

/// "is a single 5 foot gate too wide", "will a 5' gate sag".
fn one_leaf(input: In<'_>) -> Out<'_, StairAsked> {
    let may = many1_count(alt((
        ask_word(Ask::May),
        text(&[
            "is", "will", "would", "can", "could", "do", "i", "does", "get", "away", "with", "have", "make", "build",
            "a",
        ]),
    )));
    let one = || many0_count(text(&["a", "an", "single", "one", "the", "one - piece", "as"]));
    let gate = || (opt(sense(Sense::Cue(Cue::Wide))), alt((part(Part::Gate), text(&["leaf"]))));
    let sags = text(&["sag", "sags", "droop", "droops", "work", "hold", "be ok"]);
    let wide = || alt((value((), sense(Sense::Cue(Cue::Wide))), text(&["wide", "big", "heavy", "much", "large"])));
    let as_one = (text(&["as", "for"]), opt(text(&["a"])), text(&["single", "one", "one leaf"]), opt(text(&["leaf"])));
    let doubt = alt((value((), sags), value((), (text(&["too"]), wide())), value((), as_one)));
    let tail = alt((value((), doubt), value((), sense(Sense::Cue(Cue::Wide)))));
    let wide = many0_count(alt((
        value((), sense(Sense::Cue(Cue::Wide))),
        text(&["too", "for", "one", "leaf", "a", "single"]),
    )));
    delimited((may, one()), length, (gate(), tail, wide)).map(StairAsked::OneLeaf).parse(input)
}

/// "where are the stairs", "how wide are the stairs", "how many risers".
fn told(input: In<'_>) -> Out<'_, StairAsked> {
    let is = || {
        many0_count(text(&["are", "is", "do", "did", "does", "the", "i", "have", "say", "my", "tell", "you", "got"]))
    };
    let head = alt((ask_word(Ask::Where), ask_word(Ask::HowWide)));
    let stairs = terminated(
        (head, is(), part(Part::Stairs)),
        many0_count(text(&["sit", "go", "at", "now", "stand", "start", "come", "be"])),
    );
    let risers = preceded((ask_word(Ask::HowMany), text(&["riser", "risers"])), is());
    alt((value((), stairs), value((), risers))).map(|()| StairAsked::Told).parse(input)
}

/// "how much guard is left of the stairs": the guard beside them, on that side.
fn beside(input: In<'_>) -> Out<'_, Clause> {
    let how = alt((ask_word(Ask::HowMuch), ask_word(Ask::HowLong)));
    let guard = || {
        many0_count(alt((
            part(Part::Guard),
            part(Part::Rail),
            text(&["is", "'s", "do", "i", "have", "there", "to", "on", "got", "the"]),
        )))
    };
    let sided = terminated(side, (text(&["of", "from"]), det, part(Part::Stairs)));
    let sided = verify(sided, |s| matches!(s, Side::Left | Side::Right));
    preceded((how, guard()), sided).map(|s| Clause::Ask(AskDraft::Length(Some(Which::Side(s))))).parse(input)
}
