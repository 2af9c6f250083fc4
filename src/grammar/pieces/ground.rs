//! The ground below the deck, told by what it falls to.

use super::Say;
use super::atoms::{In, Out, det, length, sep};
use super::phrase::{ends, said};
use crate::grammar::draft::Clause;
use crate::job::SlotId;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, verify};
use nom::multi::many0_count;
use nom::sequence::{delimited, terminated};

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
