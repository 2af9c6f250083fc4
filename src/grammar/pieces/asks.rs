//! Questions about the layout.

use super::Say;
use super::atoms::{In, Out, count, det, lumber, one, part, place, sense, sep, side, text};
use crate::grammar::draft::{AskDraft, Clause, Which};
use crate::grammar::items::Item;
use crate::grammar::sense::{Ask, Cue, Part, Sense, Side, Verb};
use crate::grammar::{Query, Talk};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn posts(item: &Item) -> Option<bool> {
    item.may_be(Sense::Part(Part::Post)).then(|| item.text.ends_with('s'))
}

fn ask<'a>(a: Ask) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Ask(a))
}

fn asked(a: AskDraft) -> Say {
    Say::Clause(Clause::Ask(a))
}

/// "... on the front", "for the left side".
fn on_side(input: In<'_>) -> Out<'_, Which> {
    let lead = (opt(text(&["on", "for", "in", "of", "along", "across", "up", "down", "with"])), det);
    let sided = terminated(side, opt(alt((part(Part::Run), part(Part::Guard))))).map(Which::Side);
    let numbered = preceded(text(&["run", "section", "leg"]), count).map(|n| Which::Number(u32::from(n)));
    preceded(lead, alt((numbered, sided))).parse(input)
}

/// "on the whole deck", "for all of it".
fn on_all(input: In<'_>) -> Out<'_, ()> {
    let whole = alt((part(Part::Deck), text(&["lot", "thing", "job", "way", "all of it", "it all", "everything"])));
    value(
        (),
        (
            text(&["on", "for", "in", "of", "round", "around", "across"]),
            many0_count(text(&["the", "whole", "all", "of", "entire", "this"])),
            whole,
        ),
    )
    .parse(input)
}

fn tail(input: In<'_>) -> Out<'_, ()> {
    let word = text(&[
        "do",
        "i",
        "need",
        "we",
        "have",
        "there",
        "are",
        "it",
        "go",
        "goes",
        "is",
        "be",
        "that",
        "then",
        "does",
        "will",
        "in",
        "all",
        "total",
        "altogether",
        "now",
        "get",
        "take",
        "gonna",
        "would",
        "with",
        "got",
        "should",
        "they",
        "set",
        "you",
        "me",
        "give",
        "want",
        "gets",
        "in all",
        "all together",
        "in total",
        "all told",
        "overall",
    ]);
    value((), many0_count(word)).parse(input)
}

/// "how's that look", "show me", "where do the posts go".
pub fn layout(input: In<'_>) -> Out<'_, Say> {
    let show =
        (ask(Ask::Show), det, opt(alt((part(Part::Layout), part(Part::Post), part(Part::Run), part(Part::Guard)))));
    let where_posts = (
        ask(Ask::Where),
        tail,
        opt(text(&["put", "set", "place", "stand", "stick"])),
        det,
        opt(text(&["line", "all"])),
        alt((part(Part::Post), part(Part::Layout), part(Part::LinePost))),
        tail,
    );
    let where_they = (
        ask(Ask::Where),
        text(&["do", "should", "would", "will"]),
        text(&["they", "these", "those"]),
        text(&["go", "land", "stand", "fall"]),
    );
    let need = (
        text(&["need", "i need", "want", "i want", "give me", "gimme"]),
        det,
        opt(text(&["ones"])),
        // "i need a post" wants one more.
        alt((part(Part::LinePost), part(Part::Layout), verify(one(posts), |s| *s).map(|_| ()))),
        // "i need a post at 7 ft" tells where one goes.
        not(peek(alt((text(&["at", "@"]), value((), super::atoms::length))))),
    );
    let marks = (opt(ask(Ask::What)), det, part(Part::Layout));
    let lead = alt((value((), show), value((), where_posts), value((), where_they), value((), marks), value((), need)));
    preceded(lead, opt(on_side)).map(|s| asked(AskDraft::Layout(s))).parse(input)
}

/// "give me the marks from the corner end", "marks from the other end".
pub fn marks_from(input: In<'_>) -> Out<'_, Say> {
    let lead = many0_count(text(&[
        "give",
        "give me",
        "gimme",
        "me",
        "show",
        "show me",
        "what",
        "what 's",
        "whats",
        "are",
        "is",
        "i need",
        "need",
        "and",
        "read",
        "want",
        "i want",
        "can i get",
        "get",
    ]));
    let marks = (det, text(&["marks", "mark list", "layout", "numbers", "post marks"]));
    let from = (text(&["from", "off", "pulling from", "pulled from", "starting at", "starting from"]), det);
    let other = value(
        None,
        text(&["other end", "far end", "opposite end", "other side", "other way", "back end", "the other end"]),
    );
    let other = alt((other, value(None, (text(&["other", "far", "opposite"]), text(&["end", "side", "way"])))));
    let named = terminated(place, opt(text(&["end", "side"]))).map(Some);
    let end = alt((other, named));
    delimited((lead, marks, from), end, opt(text(&["instead", "please", "too"])))
        .map(|end| asked(AskDraft::MarksFrom(end)))
        .parse(input)
}

/// "figure the posts for", "work out a layout on", before a run told in the same line.
pub fn figure(input: In<'_>) -> Out<'_, Say> {
    let can = many0_count(text(&[
        "can you",
        "could you",
        "can",
        "could",
        "you",
        "please",
        "just",
        "lets",
        "me",
        "i need to",
    ]));
    let verb =
        text(&["figure", "figure out", "work out", "calc", "calculate", "space", "set out", "lay out", "place", "do"]);
    let what = (det, alt((part(Part::Post), part(Part::Layout), part(Part::Bay))), opt(text(&["out"])));
    let for_it = opt((text(&["for", "on", "along", "in"]), opt(text(&["a", "the", "my"]))));
    let posts = || alt((part(Part::Post), part(Part::Layout)));
    let need =
        (ask(Ask::What), text(&["i", "we"]), text(&["need", "i need", "want"]), opt((text(&["for"]), det, posts())));
    let need = (need, text(&["for", "on"]));
    alt((value((), (can, verb, what, for_it)), value((), need))).map(|()| asked(AskDraft::Layout(None))).parse(input)
}

/// "how many posts", "how many bays on the front".
pub fn how_many(input: In<'_>) -> Out<'_, Say> {
    let posts = value(true, alt((part(Part::Post), part(Part::LinePost))));
    let bays = value(false, part(Part::Bay));
    let kind = preceded((ask(Ask::HowMany), opt(text(&["line", "guard", "more"]))), alt((posts, bays)));
    // "how many on the front", "total posts?".
    let bare = value(true, (ask(Ask::HowMany), peek(on_side)));
    let total = value(true, (text(&["total", "total number of", "all the"]), part(Part::Post), peek(sep("?"))));
    let kind = alt((kind, bare, total));
    (terminated(terminated(kind, tail), opt((on_all, tail))), opt(terminated(on_side, tail)))
        .map(|(posts, s)| asked(if posts { AskDraft::Posts(s) } else { AskDraft::Bays(s) }))
        .parse(input)
}

/// "how far between", "how far apart are the posts", "what's the clear".
pub fn how_far(input: In<'_>) -> Out<'_, Say> {
    let between = many0_count(alt((
        text(&[
            "between",
            "apart",
            "far",
            "far apart",
            "from",
            "are",
            "the",
            "do",
            "they",
            "is",
            "each",
            "to",
            "one",
            "post",
            "set",
            "go",
            "first",
            "last",
        ]),
        part(Part::Post),
        sense(Sense::Cue(Cue::Apart)),
        part(Part::Bay),
    )));
    let far = value((), (ask(Ask::HowFar), between));
    let bay = value(
        (),
        (
            alt((ask(Ask::What), ask(Ask::HowLong), ask(Ask::HowWide))),
            text_opt(&["are", "is", "the", "'s"]),
            det,
            alt((part(Part::Bay), sense(Sense::Basis(crate::job::Basis::Clear)))),
            opt(text(&["size", "sizes", "width", "widths", "length", "lengths"])),
            tail,
        ),
    );
    // "what size are the bays".
    let size = (
        alt((ask(Ask::What), text(&["whats", "what"]))),
        text(&["size", "width", "length"]),
        text(&["are", "is"]),
        det,
        part(Part::Bay),
        tail,
    );
    let bay = alt((bay, value((), size)));
    let mine = (
        alt((ask(Ask::What), text(&["whats", "what 's"]))),
        opt(text(&["is", "'s"])),
        text(&["my", "our"]),
        opt(part(Part::Post)),
        text(&["spacing", "spacings"]),
    );
    let mine = value((), (mine, tail));
    // "what's the spacing on the right side": the job's, where a side is named.
    let there = (
        alt((ask(Ask::What), text(&["whats", "what 's"]))),
        opt(text(&["is", "'s"])),
        opt(text(&["the", "post"])),
        opt(part(Part::Post)),
        text(&["spacing", "spacings"]),
        peek(on_side),
    );
    let there = value((), there);
    preceded(alt((far, bay, mine, there)), opt(on_side)).map(|s| asked(AskDraft::Bays(s))).parse(input)
}

fn text_opt<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    value((), many0_count(text(list)))
}

/// "how long is the front", "what's left on the right".
pub fn how_long(input: In<'_>) -> Out<'_, Say> {
    let what_length = value((), (ask(Ask::What), text_opt(&["is", "'s", "the"]), text(&["length", "length of"])));
    let long = alt((value((), (ask(Ask::HowLong), text_opt(&["is", "'s", "are", "was"]))), what_length));
    let left =
        value((), (ask(Ask::What), text_opt(&["is", "'s"]), text(&["left", "the rest", "left over", "remaining"])));
    let side_of = (alt((long, left)), opt(on_side), opt(part(Part::Run)));
    side_of.map(|(_, s, _)| asked(AskDraft::Length(s))).parse(input)
}

/// "how wide is a 4x4 actually", "what does a 2x6 really measure".
pub fn actual(input: In<'_>) -> Out<'_, Say> {
    // "actually 6x6" puts right; "actual size of a 6x6" asks.
    let size = text(&["actual", "true size", "real size", "actual size", "dressed", "true"]);
    let lead = alt((ask(Ask::HowWide), ask(Ask::What), size, sense(Sense::Ask(Ask::HowMuch))));
    let words = || {
        many0_count(alt((
            text(&[
                "is",
                "'s",
                "the",
                "a",
                "an",
                "does",
                "do",
                "of",
                "are",
                "size",
                "width",
                "dimensions",
                "measure",
                "come",
                "out",
                "to",
                "at",
            ]),
            ask(Ask::Actual),
        )))
    };
    preceded((lead, words()), terminated(lumber, words()))
        .map(|l| Say::Clause(Clause::Query(Query::Actual(l))))
        .parse(input)
}

/// "why?", "says who".
pub fn why(input: In<'_>) -> Out<'_, Say> {
    let says = value(Query::Sources, ask(Ask::SaysWho));
    let why = value(
        Query::Why,
        (
            ask(Ask::Why),
            opt(text(&["is", "that", "so", "'s"])),
            opt(text(&["that", "that from", "from", "it", "it from"])),
        ),
    );
    terminated(alt((says, why)), opt(sep("?"))).map(|q| Say::Clause(Clause::Query(q))).parse(input)
}

/// "what have I told you".
pub fn told(input: In<'_>) -> Out<'_, Say> {
    value(Say::Clause(Clause::Query(Query::Job)), ask(Ask::Told)).parse(input)
}

/// Words of talk kept near the questions they answer.
pub fn help(input: In<'_>) -> Out<'_, Say> {
    value(Say::Clause(Clause::Talk(Talk::Help)), sense(Sense::Verb(Verb::Help))).parse(input)
}

/// "how much guard is left of the stairs": the guard beside them, on that side.
pub fn beside(input: In<'_>) -> Out<'_, Say> {
    let how = alt((ask(Ask::HowMuch), ask(Ask::HowLong)));
    let guard = || {
        many0_count(alt((
            part(Part::Guard),
            part(Part::Rail),
            text(&["is", "'s", "do", "i", "have", "there", "to", "on", "got", "the"]),
        )))
    };
    let sided = terminated(side, (text(&["of", "from"]), det, part(Part::Stairs)));
    let sided = verify(sided, |s| matches!(s, Side::Left | Side::Right));
    preceded((how, guard()), sided).map(|s| asked(AskDraft::Length(Some(Which::Side(s))))).parse(input)
}
