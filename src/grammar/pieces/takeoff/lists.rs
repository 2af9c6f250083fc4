//! The lists asked for: cuts, what to buy, parts, cost; and one kind's cut length.

use super::super::Say;
use super::super::atoms::{In, Out, det, length, lumber, part, sense, sep};
use super::super::phrase::{ends, said};
use super::{asked, idle, question};
use crate::grammar::goods::TakeoffDraft;
use crate::grammar::sense::{Ask, Part, Sense};
use crate::job::LongPart;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

/// "cut list", "say it so I can cut it".
pub fn cuts(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "cut list",
        "cutting list",
        "cutlist",
        "cut sheet",
        "cuts",
        "saw list",
        "cut lengths",
        "what do i cut",
        "what am i cutting",
        "what to cut",
        "say it so i can cut it",
        "so i can cut it",
        "so i can cut",
        "say it so i can cut",
        "list of cuts",
        "what lengths do i cut",
        "what do i cut them at",
        "cut them list",
        "cut plan",
        "cutting plan",
    ]);
    value(asked(TakeoffDraft::Cuts), words).parse(input)
}

/// "what do I buy", "order list".
pub fn buy(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "what do i buy",
        "what do i need to buy",
        "what do we buy",
        "what should i buy",
        "what to buy",
        "buy list",
        "buying list",
        "shopping list",
        "lumber list",
        "order list",
        "lumber order",
        "what do i order",
        "what to order",
        "what should i order",
        "what do i pick up",
        "what do i need from the yard",
        "how much lumber",
        "how many sticks",
        "how many boards",
        "what stock",
        "what lumber",
        "what wood",
        "what do i get at the yard",
        "what do i haul",
    ]);
    // "how many 2x4s": of what size is on the list; all of it is said.
    let many = (sense(Sense::Ask(Ask::HowMany)), verify(lumber, |l| l.thick_quarters < 16), idle, peek(ends));
    // "how many 6x6s": posts, of which the parts say how many of each size.
    let posts = (sense(Sense::Ask(Ask::HowMany)), verify(lumber, |l| l.thick_quarters >= 16), idle, peek(ends));
    let list = alt((value((), many), words)).map(|()| TakeoffDraft::Buy);
    alt((list, value(TakeoffDraft::Parts, posts))).map(asked).parse(input)
}

/// "how many total": of what was told last.
pub fn how_many_in_all(input: In<'_>) -> Out<'_, Say> {
    let all = said(&[
        "total",
        "in total",
        "in all",
        "altogether",
        "all told",
        "all together",
        "is that in all",
        "is that total",
    ]);
    let said = (opt(said(&["so", "and"])), sense(Sense::Ask(Ask::HowMany)), all, peek(ends));
    value(asked(TakeoffDraft::InAll), said).parse(input)
}

/// "take-off", "material list", "what do I need".
pub fn parts(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "take off",
        "takeoff",
        "take - off",
        "take off list",
        "takeoff list",
        "material list",
        "materials list",
        "materials",
        "parts list",
        "list of parts",
        "parts",
        "bill of materials",
        "what do i need",
        "what all do i need",
        "what do we need",
        "what goes in it",
        "count it up",
        "count the parts",
        "list of materials",
        "material takeoff",
    ]);
    value(asked(TakeoffDraft::Parts), words).parse(input)
}

/// "what does it cost", "price it".
pub fn cost(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "what does it cost",
        "what 's it cost",
        "what will it cost",
        "how much does it cost",
        "how much will it cost",
        "how much is it",
        "how much is it all",
        "how much money",
        "cost",
        "costs",
        "total cost",
        "price it",
        "price it up",
        "what does it come to",
        "what 's it come to",
        "what 's it run me",
        "what will it run me",
        "what 's the damage",
        "what does that come to",
        "what 's that come to",
        "what is the cost",
        "what 's the cost",
        "cost it",
        "bill",
        "what 's the bill",
        "what 's it going to cost",
        "what 's this going to cost",
        "how much is all that",
        "how much for the lumber",
        "how much for the lot",
    ]);
    let lead = alt((sense(Sense::Ask(Ask::What)), sense(Sense::Ask(Ask::HowMuch))));
    let going = (lead, idle, said(&["cost", "run", "run me", "set me back"]), idle, peek(ends));
    value(asked(TakeoffDraft::Cost), alt((words, value((), going)))).parse(input)
}

/// "what do I need for a 16 foot rail".
pub fn parts_for(input: In<'_>) -> Out<'_, Say> {
    let lead = (
        said(&[
            "what do i need",
            "what do we need",
            "what all do i need",
            "what do i buy",
            "materials",
            "parts",
            "material list",
            "takeoff",
            "take off",
            "what would i need",
        ]),
        said(&["for"]),
        det,
    );
    let rail = (opt(said(&["long", "of"])), alt((part(Part::Rail), part(Part::Guard), part(Part::Run))), peek(ends));
    delimited(lead, length, rail).map(|m| asked(TakeoffDraft::PartsFor(m))).parse(input)
}

/// "I cut one short, 46 5/8", "cut a post short by mistake, it's 46 5/8".
pub fn cut_short(input: In<'_>) -> Out<'_, Say> {
    let who = opt(said(&["i", "we", "he", "the kid", "my guy", "my helper", "someone"]));
    let named =
        alt((part(Part::Post), part(Part::Rail), part(Part::Baluster), part(Part::TopRail), said(&["piece", "stick"])));
    let named = (det, named).map(|_| ());
    let thing = alt((named, said(&["one", "one of them", "it", "that one"])));
    let sorry = many0_count(said(&["by mistake", "dammit", "again", "now", "damn it", "on me", "too", "by accident"]));
    let cut = (
        who,
        said(&["cut", "went and cut", "just cut", "cut me"]),
        thing,
        said(&["short", "too short", "a bit short", "a little short", "one short"]),
        sorry,
    );
    let its = (
        opt(sep(",.;-:")),
        many0_count(said(&[
            "its",
            "it 's",
            "it is",
            "at",
            "came out",
            "came out at",
            "measures",
            "its at",
            "now",
            "only",
        ])),
    );
    delimited((cut, its), length, (many0_count(said(&["now", "long", "even", "instead"])), peek(ends)))
        .map(|m| asked(TakeoffDraft::CutShort(m)))
        .parse(input)
}

/// "how long do I cut the pickets", "picket length", "how long are the rails".
pub fn cut_length(input: In<'_>) -> Out<'_, Say> {
    let what = || {
        alt((
            value(TakeoffDraft::CutLength(LongPart::Baluster), part(Part::Baluster)),
            value(
                TakeoffDraft::RailLength,
                alt((part(Part::Rail), part(Part::TopRail), part(Part::BottomRail), said(&["rails"]))),
            ),
        ))
    };
    let lead = (
        alt((sense(Sense::Ask(Ask::HowLong)), said(&["what length", "what lengths"]))),
        many0_count(said(&[
            "do", "i", "we", "should", "to", "are", "is", "the", "my", "cut", "make", "must", "can", "need", "will",
        ])),
    );
    let tail = (
        many0_count(said(&[
            "be", "to", "need", "cut", "have", "get", "cut at", "at", "do", "i", "should", "must", "for", "this",
            "them", "long",
        ])),
        peek(ends),
    );
    let first = delimited(lead, what(), tail);
    let lengths = || said(&["length", "lengths", "cut length", "cut lengths"]);
    let named = terminated(what(), (lengths(), idle, peek(ends)));
    let of = delimited(
        (opt(sense(Sense::Ask(Ask::What))), idle, lengths(), said(&["of", "for"]), det),
        what(),
        (idle, peek(ends)),
    );
    alt((first, preceded((opt(sense(Sense::Ask(Ask::What))), idle), named), of)).map(asked).parse(input)
}

/// "lay it out to suit the 8s", "which split wastes least".
pub fn splits(input: In<'_>) -> Out<'_, Say> {
    let words = question(&[
        "which split wastes least",
        "what split wastes least",
        "least waste",
        "waste least",
        "wastes least",
        "waste the least",
        "wastes the least",
        "lay it out to suit the stock",
        "suit the stock",
        "suit the sticks",
        "lay it out for the stock",
        "least waste layout",
        "layout with least waste",
        "split for least waste",
        "bays to suit the stock",
        "what wastes least",
        "lay it out with the least waste",
        "lay it out to waste least",
        "less waste",
        "which layout wastes least",
    ]);
    value(asked(TakeoffDraft::Splits(None)), words).parse(input)
}
