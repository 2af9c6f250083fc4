//! Dropping, swapping, copying, and spots said in reply.

use super::atoms::{In, Out, any, count, det, one, part, run_word, sense, side, text};
use super::gates;
use super::phrase::said;
use super::{PIECE, Say};
use crate::grammar::ahead::Ahead;
use crate::grammar::draft::{Clause, DropDraft};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Part, Sense, Side, Verb};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// "scratch the gate", "drop the side", "skip the middle posts", "delete that note".
pub fn drop_it(input: In<'_>) -> Out<'_, Say> {
    let last = (text(&["last", "latest"]), opt(alt((run_word, text(&["one", "line"])))));
    let what = alt((
        value(DropDraft::Last, alt((value((), last), text(&["last one"])))),
        any(|s| if let Sense::Nth(n) = s { Some(DropDraft::Run(n)) } else { None }),
        value(DropDraft::Gate, part(Part::Gate)),
        value(DropDraft::LinePosts, part(Part::LinePost)),
        preceded(text(&["note"]), opt(preceded(opt(text(&["number", "no"])), count)))
            .map(|n| DropDraft::Note(n.map(u32::from))),
        preceded(part(Part::Run), count).map(|n| DropDraft::Run(u32::from(n))),
        terminated(side, opt(part(Part::Run))).map(DropDraft::Side),
        value(DropDraft::Stairs, part(Part::Stairs)),
        value(DropDraft::It, preceded(text(&["that", "this"]), part(Part::Run))),
        value(DropDraft::SomeRun, part(Part::Run)),
        value(DropDraft::It, text(&["it", "that", "that one", "this one", "this"])),
    ));
    let lead = || opt(text(&["and", "just", "then", "lets", "we", "i"]));
    let tail = || many0_count(text(&["please", "then", "altogether", "idea", "whole", "there", "after all", "out"]));
    let it = text(&["it", "that", "that one", "this one", "this"]);
    // "no rail on the left", "left side doesn't need a rail": the guard is left out there.
    let guard = || alt((part(Part::Guard), part(Part::Rail)));
    let none = || {
        said(&[
            "no",
            "without",
            "dont need",
            "dont need a",
            "we dont need",
            "without a",
            "no need for",
            "skip the",
            "not",
        ])
    };
    let on_side = preceded((text(&["on", "along", "at", "for"]), det), side);
    let no_guard = preceded((lead(), none(), opt(text(&["any", "a", "the"])), guard()), on_side).map(DropDraft::Side);
    let needs_none = said(&[
        "doesnt need",
        "doesn't need",
        "does not need",
        "needs no",
        "gets no",
        "has no",
        "wont need",
        "won't need",
        "doesnt get",
        "dont need",
        "doesnt have",
        "doesn't get",
        "won't have",
    ]);
    let side_none =
        delimited((lead(), det), side, (opt(text(&["side"])), needs_none, opt(text(&["any", "a", "the"])), guard()));
    let side_none = side_none.map(DropDraft::Side);
    let (rest, what) = alt((
        terminated(no_guard, (tail(), peek(line_end))),
        terminated(side_none, (tail(), peek(line_end))),
        delimited((lead(), sense(Sense::Verb(Verb::Drop))), value(DropDraft::It, it), (tail(), peek(line_end))),
        delimited((lead(), sense(Sense::Verb(Verb::Drop)), opt_that, det), what, tail()),
        delimited((lead(), out_verb, det), gate_or_stairs, (text(&["out", "off", "away", "out of there"]), tail())),
    ))
    .parse(input)?;
    Ok((rest, Say::Clause(Clause::Drop(what))))
}

/// The line's end or a sign.
fn line_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(Item::is_sep) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}

/// "that" before what is dropped, but not when it is all that is dropped.
fn opt_that(input: In<'_>) -> Out<'_, ()> {
    let more = |i: &Item| !i.is_sep() && !matches!(&*i.text, "please" | "then" | "run");
    let that = text(&["that", "this"]).parse(input);
    match that {
        Ok((rest, ())) if rest.first().is_some_and(more) => Ok((rest, ())),
        _ => Ok((input, ())),
    }
}

/// "take ... out", "pull ... off".
fn out_verb(input: In<'_>) -> Out<'_, ()> {
    text(&["take", "pull", "leave", "get", "yank", "cut"]).parse(input)
}

fn gate_or_stairs(input: In<'_>) -> Out<'_, DropDraft> {
    alt((value(DropDraft::Gate, part(Part::Gate)), value(DropDraft::Stairs, part(Part::Stairs)))).parse(input)
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
    let it = || opt(text(&["it", "that", "before", "as before", "this"]));
    let do_it = (opt(text(&["and", "now", "then"])), opt(text(&["do", "make", "make it", "its", "it 's", "it"])));
    let after = delimited((do_it, verb()), opt(named()), it()).map(|what| (what, None::<Side>));
    alt((like, after)).map(|(what, like)| Say::Clause(Clause::Same { what, like })).parse(input)
}

/// "add a post", "one more post".
pub fn add_post(input: In<'_>) -> Out<'_, Say> {
    let more = || {
        text(&[
            "another",
            "one more",
            "extra",
            "more",
            "another one",
            "couple",
            "one",
            "two",
            "a couple",
            "in",
            "a few",
        ])
    };
    let lumber = || opt(one(|i: &Item| matches!(i.is, Is::Measure(_)).then_some(())));
    let put = value((), (sense(Sense::Verb(Verb::Put)), many0_count(more()), det, many0_count(more())));
    // "one more": the "one" is no article there.
    let one_more = value((), (said(&["one more", "just one more"]), many0_count(more())));
    let other = value((), (det, text(&["another", "extra", "an extra"]), many0_count(more())));
    let alone = alt((one_more, other));
    value(Say::Clause(Clause::AddPost), (alt((put, alone)), lumber(), part(Part::Post), opt(text(&["in"]))))
        .parse(input)
}

/// "right", "the middle", "at the stair head": a reply or a correction's new spot, and
/// nothing else in the line but what opens or closes it.
pub fn spot(items: &[Item], at: usize) -> Option<(usize, Say, u32)> {
    let idle = |i: &Item| i.is_sep() || i.is_light() || i.may_be(Sense::Verb(Verb::Repair));
    let before = items[..at].iter().all(|i| idle(i) || i.may_be(Sense::Verb(Verb::Change)));
    let lead = (many0_count(text(&["at", "in", "on", "to", "it", "the", "its", "is", "@"])), det);
    let (rest, spot) = preceded(lead, gates::spot).parse(Ahead::new(&items[at..])).ok()?;
    let alone = before && rest.iter().all(idle);
    alone.then(|| (items.len() - rest.len(), Say::Clause(Clause::Spot(spot)), PIECE + 3))
}
