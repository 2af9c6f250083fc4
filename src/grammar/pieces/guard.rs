//! Questions about the guard itself: whether one is needed, whether it is high enough.

use super::Say;
use super::atoms::{In, Out, det, length, part, sense, sep};
use super::phrase::{ends, said};
use crate::grammar::draft::{Clause, GuardDraft};
use crate::grammar::sense::{Cue, Part, Sense};
use crate::job::SlotId;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn asked(draft: GuardDraft) -> Say {
    Say::Clause(Clause::Guard(draft))
}

fn guard(input: In<'_>) -> Out<'_, ()> {
    let article = many0_count(said(&["a", "an", "any", "the", "my", "that", "this"]));
    value((), (article, opt(said(&["top"])), alt((part(Part::Guard), part(Part::Rail), part(Part::TopRail)))))
        .parse(input)
}

/// "do I need a rail", "is a guard required", "guard or no guard", "rail needed".
fn need(input: In<'_>) -> Out<'_, ()> {
    let lead = || many0_count(said(&["so", "then", "and", "now", "ok"]));
    let do_i = || {
        said(&[
            "do i need",
            "do we need",
            "do i still need",
            "do we still need",
            "do i even need",
            "do we even need",
            "do i really need",
            "do you need",
            "do they need",
            "does it need",
            "does this need",
            "does that need",
            "does the deck need",
            "does this deck need",
            "will i need",
            "will we need",
            "will it need",
            "would i need",
            "would it need",
            "do i have to have",
            "do we have to have",
            "do i have to put up",
            "does it have to have",
            "do i want",
            "dont i need",
            "don't i need",
            "does it call for",
            "does it require",
            "am i required to have",
            "do i gotta have",
        ])
    };
    let needed = || said(&["needed", "required", "necessary", "mandatory", "called for"]);
    let here = || opt(said(&["here", "there", "at all", "then", "on it", "up there", "by code"]));
    let i_need = value((), (do_i(), guard));
    let is_it = value((), (said(&["is", "are"]), guard, needed()));
    let or_not = value((), (guard, said(&["or"]), said(&["no", "not"]), opt(guard)));
    let bare = value((), (opt(said(&["need"])), guard, needed(), peek(sep("?"))));
    value((), (lead(), alt((i_need, is_it, or_not, bare)), here())).parse(input)
}

fn up(input: In<'_>) -> Out<'_, ()> {
    let word = alt((said(&["up", "up in the air", "high", "tall", "up there"]), sense(Sense::Cue(Cue::Above))));
    value((), many0_count(word)).parse(input)
}

/// "deck is exactly 30": the deck's height where no "up" makes it a fact of its own.
fn stands(input: In<'_>) -> Out<'_, Measure> {
    let so =
        many0_count(said(&["is", "'s", "are", "exactly", "only", "just", "right at", "sits", "stands", "at", "about"]));
    let deck = (det, alt((part(Part::Deck), said(&["it"]))), so);
    preceded(deck, length).parse(input)
}

/// "do I need a guard at 29 inches", "deck is exactly 30, guard or no guard".
pub fn needed(input: In<'_>) -> Out<'_, Say> {
    let signs = || many0_count(alt((sep(",-.;:"), said(&["-"]))));
    let first = (terminated(stands, (up, signs())), need).map(|(m, ())| Some(m));
    let drop = || {
        alt((preceded(said(&["at", "for", "if it 's", "if it is"]), length), preceded(said(&["if", "when"]), stands)))
    };
    let last = preceded(need, opt(terminated(drop(), up)));
    // "need a guard at 24?": without the mark it tells of one.
    let asks = terminated(preceded((said(&["need", "i need"]), guard), opt(terminated(drop(), up))), peek(sep("?")));
    let end = (opt(said(&["deck", "drop", "now"])), peek(ends));
    terminated(alt((first, last, asks)), end).map(|drop| asked(GuardDraft::Needed(drop))).parse(input)
}

/// "the rail's only 35 3/4, am I sunk", "is 35 1/2 high enough for a guard".
pub fn high_enough(input: In<'_>) -> Out<'_, Say> {
    let high = || opt(said(&["high", "tall", "now", "high now", "off the deck", "to the top"]));
    let after = opt((
        said(&["after", "since", "once", "now that", "now", "with"]),
        det,
        opt(said(&["new"])),
        alt((part(Part::Decking), part(Part::Deck))),
        many0_count(said(&["went", "is", "was", "on", "down", "in", "got", "laid"])),
        opt(sep(",")),
    ));
    let comes = many0_count(said(&[
        "is",
        "'s",
        "are",
        "only",
        "just",
        "now",
        "ends up",
        "ended up",
        "comes out",
        "came out",
        "comes out at",
        "came out at",
        "measures",
        "measured",
        "sits",
        "at",
        "comes",
        "came",
        "to",
        "out",
    ]));
    let fear = alt((
        said(&[
            "am i sunk",
            "am i screwed",
            "am i short",
            "am i in trouble",
            "am i ok",
            "am i good",
            "too low",
            "short",
        ]),
        value((), (said(&["is that", "is it", "will that", "does that", "will it", "does it", "that", "is this"]), ok)),
        value((), (said(&["am i", "are we"]), ok)),
        value((), (ok, peek(sep("?")))),
    ));
    let told = delimited((after, guard, comes), length, (high(), many0_count(sep(",-.;")), fear));
    let is = delimited(
        said(&["is", "will", "would", "does"]),
        length,
        (opt(said(&["be"])), enough, opt((said(&["for"]), guard))),
    );
    let is_a = delimited(
        said(&["is", "will", "would"]),
        preceded(det, length),
        (opt(sep("-")), opt(said(&["high", "tall"])), guard, opt(said(&["be"])), ok),
    );
    terminated(alt((told, is, is_a)), peek(ends)).map(|m| asked(GuardDraft::HighEnough(m))).parse(input)
}

fn enough(input: In<'_>) -> Out<'_, ()> {
    said(&["high enough", "tall enough"]).parse(input)
}

fn ok(input: In<'_>) -> Out<'_, ()> {
    let mut word = said(&[
        "ok",
        "okay",
        "short",
        "legal",
        "enough",
        "high enough",
        "tall enough",
        "too low",
        "too short",
        "fine",
        "good",
        "sunk",
        "screwed",
        "in trouble",
        "pass",
        "work",
        "fly",
        "to code",
        "good enough",
        "allowed",
        "alright",
        "a problem",
    ]);
    word.parse(input)
}

/// "what about where the hill drops, it's like 38 there", "ground's 28 below", "it falls off to 36".
pub fn drops_to(input: In<'_>) -> Out<'_, Say> {
    let lead = many0_count(said(&["what about", "how about", "but", "and", "where", "out where", "over where"]));
    let ground = (det, said(&["hill", "grade", "ground", "yard", "lawn", "grass", "slope", "it", "bank", "dirt"]));
    let falls = said(&[
        "drops",
        "drops off",
        "drops away",
        "falls",
        "falls off",
        "falls away",
        "slopes",
        "slopes off",
        "slopes down",
        "slopes away",
        "goes down",
        "drops down",
    ]);
    let link = many0_count(alt((
        said(&["to", "it 's", "it is", "thats", "that 's", "its", "like", "more like", "is"]),
        sep(","),
    )));
    let about = many0_count(said(&["about", "like"]));
    let there = || {
        opt(said(&[
            "there",
            "down there",
            "over there",
            "below",
            "on the far side",
            "at the far end",
            "on the far end",
            "at that end",
            "out there",
            "down",
            "on that side",
        ]))
    };
    // "ground falls 6 inches" says by how much and not how far out: no height of the deck. "falls to 36", "falls 36 there".
    let falling = (lead, ground, falls, link, about, length, there());
    let falling = verify(falling, |(_, _, _, linked, _, _, there)| *linked > 0 || there.is_some()).map(|f| f.5);
    let below = delimited(
        (
            det,
            said(&["ground", "grade", "grass", "yard", "lawn", "dirt"]),
            many0_count(said(&["is", "'s", "about", "only"])),
        ),
        length,
        (said(&["below", "down", "below the deck", "under", "below that", "lower", "below us"]), opt(said(&["there"]))),
    );
    terminated(alt((falling, below)), peek(ends))
        // "it's like 38": a drop is eyed, not cut to; the read-back shows what is taken.
        .map(|m| Say::Clause(Clause::Slot(SlotId::Grade, Measure { about: false, ..m })))
        .parse(input)
}
