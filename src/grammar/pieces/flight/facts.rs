//! Facts of a flight by name.
//!
//! ```text
//! total   = [det] ("total rise" | "total run" ...) [is] length | length "total" ("rise" | "run")
//! nosing  = [det] "nosing" [is] length | length "nosing"
//! rail    = [det] "stair" ("rail" | "guard") ("at" | is) length ["above the nosings"]
//! ```

use crate::grammar::draft::Clause;
use crate::grammar::pieces::Say;
use crate::grammar::pieces::atoms::{In, Out, det, is, length, part, text};
use crate::grammar::sense::Part;
use crate::job::SlotId;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn slot(slot: SlotId) -> impl Fn(Measure) -> Say {
    move |m| Say::Clause(Clause::Slot(slot, m))
}

fn link(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(text(&["and", "with", "has", "have", "got", "there 's", "theres", "at", "of"]))).parse(input)
}

fn total<'a>(
    word: &'static [&'static str],
    joined: &'static [&'static str],
) -> impl Parser<In<'a>, Output = (), Error = ()> {
    let whole = || text(&["total", "overall", "whole"]);
    let parted = (whole(), text(word));
    alt((value((), text(joined)), value((), parted)))
}

/// "total rise is 65 1/4", "38 3/4 total rise".
pub fn total_rise(input: In<'_>) -> Out<'_, Say> {
    let word = || total(&["rise"], &["total rise", "rise in all", "overall rise"]);
    named(word, input).map(|(rest, m)| (rest, slot(SlotId::TotalRise)(m)))
}

/// "total run is 84".
pub fn total_run(input: In<'_>) -> Out<'_, Say> {
    let word = || total(&["run"], &["total run", "run in all", "overall run"]);
    named(word, input).map(|(rest, m)| (rest, slot(SlotId::TotalRun)(m)))
}

/// "nosing is 1", "1 inch nosings".
pub fn nosing(input: In<'_>) -> Out<'_, Say> {
    let word = || value((), (text(&["nosing", "nosings"]), opt(text(&["overhang"]))));
    let of = (det, alt((text(&["tread", "treads"]), part(Part::Stairs))), text(&["have", "has", "with", "get", "got"]));
    let (input, _) = opt(of).parse(input)?;
    named(word, input).map(|(rest, m)| (rest, slot(SlotId::Nosing)(m)))
}

fn named<'a, P: Parser<In<'a>, Output = (), Error = ()>>(word: impl Fn() -> P, input: In<'a>) -> Out<'a, Measure> {
    let before = preceded((link, det, word(), is, opt(text(&["at", "of"]))), length);
    let after = delimited((link, det), length, word());
    alt((before, after)).parse(input)
}

/// "stair rail at 36", "stair guard is 37 above the nosings".
pub fn rail(input: In<'_>) -> Out<'_, Say> {
    let rail = (det, part(Part::Stairs), alt((part(Part::Rail), part(Part::Guard), part(Part::Handrail))));
    let at = (is, opt(text(&["at", "goes at", "set at"])));
    let above =
        opt((text(&["above", "over", "off", "up off", "up from"]), det, text(&["nosing", "nosings", "nosing line"])));
    let high = opt(text(&["high", "tall"]));
    let said = preceded((rail, at), terminated(length, (high, above)));
    said.map(slot(SlotId::StairHeight)).parse(input)
}
