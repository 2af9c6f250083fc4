//! Where posts are wanted and where not.
//!
//! ```text
//! post_at   = want* ["a" | "another"] ("post" | "one") ["to go"] "at" length *("and" length) [from] [on]
//!           | want* ["a"] "post" length from [on]
//! no_post   = ("no" | "lose" | "drop" ...) "post" "at" length [from] [on]
//! landed    = "post" n "landed" "at" length [from] [on]
//! moved     = "move" "the" ["middle"] "post" ["at" length] "to" length [from] [on]
//! mirrored  = ["not"] "mirror" ["the posts"] ["about" "the stairs"] [on] | "posts" is "symmetrical" ...
//! keep_off  = deny "post" ["any"] "within" length "of" thing [on]
//!           | "keep" "posts" length ["away"] "from" thing [on] | "posts" "no closer than" length "to" thing [on]
//! from      = ("from" | "off" ...) (place | side | "the left end")
//! on        = ["on" | "in"] ("run" n | side)
//! ```

mod keep_off;
mod mirror;
mod posts;

pub use keep_off::keep_off;
pub use mirror::mirrored;
pub use posts::{landed, moved, no_post, post_at};

use super::Say;
use super::atoms::{In, Out, count, det, length, one, part, place, sense, side, text};
use crate::grammar::choice::{ChoiceDraft, ChoiceOf};
use crate::grammar::draft::{Clause, Mark, Which};
use crate::grammar::items::Item;
use crate::grammar::sense::{Part, Sense, Side, Spot};
use crate::job::End;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

fn said(choice: ChoiceDraft, on: Option<Which>) -> Say {
    Say::Clause(Clause::Choice(ChoiceOf { choice, on }))
}

/// "on the front", "in run 2", "of the left side".
fn on(input: In<'_>) -> Out<'_, Which> {
    let lead = (text(&["on", "in", "of", "for", "along", "across"]), det);
    let number = preceded(part(Part::Run), count).map(|n| Which::Number(u32::from(n)));
    let named = verify(side, |s| !matches!(s, Side::Other | Side::Side));
    let named = terminated(named, opt(alt((part(Part::Run), part(Part::Guard)))));
    preceded(lead, alt((number, named.map(Which::Side)))).parse(input)
}

/// An end a mark is from: "the house", "the left", "that end".
fn end_mark(input: In<'_>) -> Out<'_, Mark> {
    let sided = verify(side, |s| matches!(s, Side::Left | Side::Right));
    let sided = terminated(sided, opt(alt((part(Part::End), sense(Sense::Spot(Spot::End)))))).map(Mark::Side);
    let spot = alt((
        value(Mark::Side(Side::Left), sense(Sense::Spot(Spot::Near))),
        value(Mark::Side(Side::Right), sense(Sense::Spot(Spot::Far))),
    ));
    preceded(det, alt((place.map(Mark::End), sided, spot))).parse(input)
}

/// "from the house", "off the corner", "in from the left".
fn from(input: In<'_>) -> Out<'_, Mark> {
    let link = text(&[
        "from", "off", "in", "out", "of", "off of", "along", "back", "up", "over", "down", "in from", "out from",
    ]);
    let house = value(
        Mark::End(End::House),
        (text(&["out from the house", "off the house", "out off the house"]), opt(text(&["wall"]))),
    );
    alt((house, preceded(many1_count(link), end_mark))).parse(input)
}

/// Words that open a wish: "put", "I want", "lets have".
fn want(input: In<'_>) -> Out<'_, ()> {
    let word = text(&[
        "i", "we", "want", "i want", "need", "i need", "wants", "needs", "put", "add", "set", "stick", "have", "lets",
        "let 's", "also", "and", "id", "i 'd", "like", "gotta", "got to", "got", "theres", "there 's", "there is",
        "place", "throw", "give me", "gimme", "to", "must", "has to", "should", "there", "be", "go", "can you",
        "please", "make", "just", "in", "add in", "plant", "land", "me", "would", "needs to", "then", "use", "so",
    ]);
    value((), many0_count(word)).parse(input)
}

fn more(input: In<'_>) -> Out<'_, ()> {
    value(
        (),
        (
            det,
            opt(text(&["another", "one more", "extra", "more", "two", "one", "single", "middle", "mid", "a couple"])),
            det,
        ),
    )
    .parse(input)
}

/// One post, or several; true where the word is of several.
fn post(input: In<'_>) -> Out<'_, bool> {
    let word = one(|i: &Item| {
        (i.may_be(Sense::Part(Part::Post)) || i.may_be(Sense::Part(Part::LinePost))).then(|| i.text.ends_with('s'))
    });
    alt((
        preceded(opt(text(&["line", "guard", "middle", "rail"])), word),
        value(false, text(&["one", "another one"])),
        value(true, text(&["ones", "them"])),
    ))
    .parse(input)
}

/// A post with what may stand before it: "the middle post", "another one".
fn a_post(input: In<'_>) -> Out<'_, bool> {
    alt((preceded(more, post), preceded(text(&["a", "the", "an"]), post), post)).parse(input)
}

/// "posts can go anywhere", "even bays again", "space them evenly".
pub fn back_to_even(input: In<'_>) -> Out<'_, Say> {
    let anywhere = (
        want,
        det,
        post,
        text(&["can", "may", "could"]),
        text(&["go", "stand", "be"]),
        text(&["anywhere", "wherever"]),
    );
    let anywhere = value(ChoiceDraft::Anywhere, anywhere);
    let lead = || {
        (
            want,
            many0_count(text(&[
                "go", "back", "to", "back to", "just", "plain", "the", "do", "run", "all", "again", "split", "space",
            ])),
        )
    };
    let bays = (lead(), text(&["even bays", "equal bays", "even spacing", "equal spacing"]), opt(text(&["again"])));
    let out = (
        lead(),
        text(&["even", "space", "spread"]),
        text(&["it", "them", "em", "the posts", "the bays", "posts"]),
        text(&["out", "out evenly", "evenly", "even", "out even", "equally"]),
        opt(text(&["evenly", "again"])),
    );
    let even = alt((value((), bays), value((), out)));
    terminated(alt((anywhere, value(ChoiceDraft::Even, even))), peek(line_end)).map(|c| said(c, None)).parse(input)
}

/// "go 7 foot" behind a what-if: how far what goes is not said.
pub fn go(input: In<'_>) -> Out<'_, Say> {
    let lead = text(&["go", "went", "stretch", "stretch it", "going"]);
    let to = opt(text(&["to", "with", "for", "out to", "up to"]));
    delimited((lead, to), length, peek(line_end)).map(|m| said(ChoiceDraft::Go(m), None)).parse(input)
}

/// The line's end or a sign.
fn line_end(input: In<'_>) -> Out<'_, ()> {
    if input.first().is_none_or(Item::is_sep) { Ok((input, ())) } else { Err(nom::Err::Error(())) }
}
