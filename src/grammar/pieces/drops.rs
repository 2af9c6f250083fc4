//! Dropping, swapping, copying, and spots said in reply.

use super::Say;
use super::atoms::{In, Out, count, det, one, part, sense, side, text};
use super::gates;
use crate::grammar::draft::{Clause, DropDraft};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Part, Sense, Side, Verb};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// "scratch the gate", "drop the side", "skip the middle posts", "delete that note".
pub fn drop_it(input: In<'_>) -> Out<'_, Say> {
    let what = alt((
        value(DropDraft::Gate, part(Part::Gate)),
        value(DropDraft::LinePosts, part(Part::LinePost)),
        preceded((text(&["note"]), opt(text(&["number", "no"]))), opt(count))
            .map(|n| DropDraft::Note(n.map(u32::from))),
        preceded(part(Part::Run), count).map(|n| DropDraft::Run(u32::from(n))),
        terminated(side, opt(part(Part::Run))).map(DropDraft::Side),
        value(DropDraft::Stairs, part(Part::Stairs)),
        value(DropDraft::It, text(&["it", "that", "run", "that run", "last one", "that one", "this one", "this"])),
    ));
    let verb = (opt(text(&["and", "just", "then", "lets"])), sense(Sense::Verb(Verb::Drop)));
    delimited((verb, det), what, many0_count(text(&["please", "then", "altogether", "idea", "whole"])))
        .map(|d| Say::Clause(Clause::Drop(d)))
        .parse(input)
}

/// "swap those", "other way round".
pub fn swap(input: In<'_>) -> Out<'_, Say> {
    let what = alt((
        text(&["those", "them", "the two", "it", "em", "around", "round", "ends"]),
        value((), (det, text(&["ends", "two"]))),
    ));
    value(Say::Clause(Clause::Swap), (sense(Sense::Verb(Verb::Swap)), opt(what))).parse(input)
}

/// "right side matches the left", "do the other side the same", "same on the right".
pub fn same(input: In<'_>) -> Out<'_, Say> {
    let named = || preceded((opt(text(&["on", "for", "as"])), det), terminated(side, opt(part(Part::Run))));
    let verb = || (opt(text(&["is", "'s"])), det, sense(Sense::Verb(Verb::Same)), opt(text(&["as", "again", "thing"])));
    let like = preceded((opt(text(&["do", "make"])), opt(text(&["and"]))), (terminated(named(), verb()), opt(named())));
    let like = like.map(|(what, like)| (Some(what), like));
    let after = preceded(verb(), (opt(named()),)).map(|(what,)| (what, None::<Side>));
    alt((like, after)).map(|(what, like)| Say::Clause(Clause::Same { what, like })).parse(input)
}

/// "add a post".
pub fn add_post(input: In<'_>) -> Out<'_, Say> {
    let more = text(&["another", "one more", "a", "an", "extra", "more", "one", "another one", "two", "couple"]);
    let lumber = opt(one(|i: &Item| matches!(i.is, Is::Measure(_)).then_some(())));
    value(Say::Clause(Clause::AddPost), (sense(Sense::Verb(Verb::Put)), opt(more), det, lumber, part(Part::Post)))
        .parse(input)
}

/// "right", "the middle", "at the stair head": a reply or a correction's new spot.
pub fn spot(input: In<'_>) -> Out<'_, Say> {
    let lead = (many0_count(text(&["at", "in", "on", "to", "it", "the", "its", "is"])), det);
    preceded(lead, gates::spot).map(|s| Say::Clause(Clause::Spot(s))).parse(input)
}
