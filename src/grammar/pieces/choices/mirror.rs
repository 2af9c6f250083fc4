//! Posts mirrored about the stairs or the middle.

use super::{on, post, said, want};
use crate::grammar::choice::ChoiceDraft;
use crate::grammar::pieces::Say;
use crate::grammar::pieces::atoms::{In, Out, det, is, part, sense, text};
use crate::grammar::sense::{Part, Sense, Spot};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::many0_count;
use nom::sequence::preceded;

fn about_opening(input: In<'_>) -> Out<'_, ()> {
    let sides = text(&[
        "about",
        "around",
        "round",
        "across",
        "over",
        "both sides of",
        "either side of",
        "each side of",
        "on both sides of",
        "on either side of",
        "on each side of",
        "about the",
        "both sides",
        "each side",
        "either side",
    ]);
    let link = (many0_count(text(&["on", "to", "the same", "same"])), sides, opt(text(&["of"])));
    let middle = alt((sense(Sense::Spot(Spot::Middle)), text(&["center", "centre", "stair opening", "centerline"])));
    let thing = alt((part(Part::Stairs), part(Part::Gate), part(Part::Opening), middle));
    value((), (link, preceded(det, thing), opt(part(Part::Opening)))).parse(input)
}

/// "both sides of the stairs".
fn sides_of_opening(input: In<'_>) -> Out<'_, ()> {
    let sides = text(&[
        "both sides",
        "each side",
        "either side",
        "both sides of",
        "each side of",
        "either side of",
        "two sides",
    ]);
    let opening = alt((part(Part::Stairs), part(Part::Gate), part(Part::Opening)));
    value((), (sides, opt(text(&["of", "of the"])), det, opening)).parse(input)
}

fn posts_or_it(input: In<'_>) -> Out<'_, ()> {
    value(
        (),
        (
            det,
            alt((
                value((), post),
                part(Part::Layout),
                part(Part::Bay),
                text(&["it", "that", "them", "everything", "both sides", "the sides", "sides"]),
            )),
        ),
    )
    .parse(input)
}

/// "mirror the posts about the stairs", "make it symmetrical", "not mirrored".
pub fn mirrored(input: In<'_>) -> Out<'_, Say> {
    let (rest, ()) = want(input)?;
    let (rest, denied) = opt(alt((sense(Sense::Not), text(&["dont", "no", "not", "stop"])))).parse(rest)?;
    let word = || {
        text(&[
            "mirror",
            "mirrored",
            "mirroring",
            "a mirror image",
            "mirror image",
            "symmetrical",
            "symmetric",
            "symmetrically",
            "balanced",
            "balance",
        ])
    };
    let even = text(&["symmetrical", "symmetric", "symmetrically", "balanced"]);
    // A bare "mirror" or "mirrored" copies a side: it wants posts or an opening with it.
    let verb_first = (word(), posts_or_it, opt(about_opening)).map(|_| ());
    let same = || text(&["the same", "same", "match", "matching", "alike", "matches", "even"]);
    let verb_about = (alt((word(), same())), opt(posts_or_it), about_opening).map(|_| ());
    let it_same = (posts_or_it, is, same(), about_opening).map(|_| ());
    let sides_same = (opt(text(&["both", "the"])), sides_of_opening, is, same()).map(|_| ());
    let posts_first =
        (posts_or_it, is, opt(text(&["to be", "be"])), opt(sense(Sense::Not)), word(), opt(about_opening))
            .map(|(_, (), _, not, ..)| not.is_some());
    let alone = (even, opt(about_opening)).map(|_| ());
    let plain = alt((verb_about, it_same, sides_same, verb_first));
    let said_not = alt((value(false, plain), posts_first, value(false, alone)));
    let (rest, said_not) = verify(said_not, |not| !(*not && denied.is_some())).parse(rest)?;
    let (rest, run) = opt(on).parse(rest)?;
    Ok((rest, said(ChoiceDraft::Mirrored(denied.is_none() && !said_not), run)))
}
