//! Posts told by their marks, taken back and moved.

use super::{a_post, from, line_end, on, said, want};
use crate::grammar::choice::ChoiceDraft;
use crate::grammar::items::Item;
use crate::grammar::pieces::Say;
use crate::grammar::pieces::atoms::{In, Out, any, count, det, length, one, part, sense, sep, text};
use crate::grammar::sense::{Cue, Part, Sense, Spot, Verb};
use crate::job::Basis;
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value};
use nom::multi::{many0, many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

/// "in the middle", "dead centre".
fn middle(input: In<'_>) -> Out<'_, ()> {
    let lead =
        many0_count(text(&["in", "at", "dead", "right", "smack", "on", "the", "goes", "exactly", "to go", "go"]));
    let end = preceded(
        opt((text(&["of"]), det, alt((part(Part::Run), part(Part::Guard), text(&["it"]))))),
        peek(line_end_or_on),
    );
    value((), (lead, alt((sense(Sense::Spot(Spot::Middle)), text(&["centre", "center", "halfway"]))), end)).parse(input)
}

fn line_end_or_on(input: In<'_>) -> Out<'_, ()> {
    alt((line_end, value((), on))).parse(input)
}

/// Words a post may stand by before its mark.
const STANDS: &[&str] = &[
    "to go",
    "goes",
    "go",
    "to be",
    "to",
    "standing",
    "right",
    "centered",
    "centred",
    "centre",
    "center",
    "sitting",
    "lands",
    "landing",
    "set",
    "dead",
    "in",
    "is",
    "wants",
    "stands",
    "falling",
    "on centre",
    "be",
    "out",
    "should",
    "sits",
];

/// "at", "to go at", "centred at", "right on".
fn at(input: In<'_>) -> Out<'_, ()> {
    let at = text(&["at", "@", "on", "centered on", "centred on", "centered at"]);
    value((), (many0_count(text(STANDS)), many1_count(at), opt(text(&["the", "my"])))).parse(input)
}

fn marks(input: In<'_>) -> Out<'_, Vec<Measure>> {
    let and = many1_count(alt((text(&["and", "&", "n", "then", "another at", "one at", "at"]), sep(",&"))));
    let mark = || terminated(length, opt(text(&["mark", "marks"])));
    (mark(), many0(preceded(and, mark())))
        .map(|(first, rest)| std::iter::once(first).chain(rest).collect())
        .parse(input)
}

/// What would make the length a spacing: "on centre", "apart", "max".
fn no_spacing(input: In<'_>) -> Out<'_, ()> {
    let spacing = |i: &Item| {
        i.senses().iter().any(|s| {
            matches!(
                s,
                Sense::Basis(Basis::Centre | Basis::Clear)
                    | Sense::Cue(Cue::Apart | Cue::Most | Cue::Least | Cue::Every | Cue::High | Cue::Long | Cue::Wide)
            )
        })
    };
    not(peek(one(move |i: &Item| spacing(i).then_some(())))).parse(input)
}

/// "put a post at 7 ft from the house", "want one at 61 1/4", "posts at 4' and 8'".
pub fn post_at(input: In<'_>) -> Out<'_, Say> {
    let (rest, ()) = want(input)?;
    let opened = rest.len() < input.len();
    // "one at 61": of a post only behind a wish.
    let bare_one = rest.first().is_some_and(|i| matches!(&*i.text, "one" | "another one" | "ones" | "them"));
    let (rest, several) = a_post(rest)?;
    if let Ok((rest, ())) = middle(rest) {
        let (rest, run) = opt(on).parse(rest)?;
        return Ok((rest, said(ChoiceDraft::Middle, run)));
    }
    let placed = preceded(at, marks).map(|m| (m, false));
    let apart = (preceded(opt(text(&["about"])), length), peek(from)).map(|(m, _)| (vec![m], true));
    let (rest, (marks, by_from)) = alt((placed, apart)).parse(rest)?;
    let (rest, ()) = no_spacing(rest)?;
    let (rest, mark) = opt(from).parse(rest)?;
    let (rest, run) = opt(preceded(opt(sep(",")), on)).parse(rest)?;
    // "posts at 5 ft" is how far apart as like as where; "one 7 ft" of nothing named is no post.
    let vague =
        several && marks.len() == 1 && mark.is_none() || bare_one && !opened || by_from && (several || mark.is_none());
    if vague {
        Err(nom::Err::Error(()))
    } else {
        Ok((rest, said(ChoiceDraft::Posts { at: marks, from: mark, gone: false }, run)))
    }
}

/// "a post that was told": "no post at 7 ft", "lose the one at 61", "pull the post at 5'".
pub fn no_post(input: In<'_>) -> Out<'_, Say> {
    let deny = alt((
        sense(Sense::Not),
        sense(Sense::Verb(Verb::Drop)),
        text(&["no", "dont want", "dont need", "pull", "remove", "get rid of", "take out", "lose"]),
    ));
    let lead = (opt(text(&["and", "just", "we", "i"])), deny, many0_count(text(&["want", "need", "put", "have"])));
    let (rest, _) = (lead, a_post).parse(input)?;
    let (rest, marks) = preceded((opt(text(&["i had", "we had", "that was", "thats"])), at), marks).parse(rest)?;
    let (rest, ()) = no_spacing(rest)?;
    let (rest, (mark, run)) = (opt(from), opt(on)).parse(rest)?;
    let (rest, _) = opt(text(&["out", "after all", "any more", "anymore"])).parse(rest)?;
    Ok((rest, said(ChoiceDraft::Posts { at: marks, from: mark, gone: true }, run)))
}

/// "move the middle post to 6 ft", "shift the post at 5'-11 over to 6'".
pub fn moved(input: In<'_>) -> Out<'_, Say> {
    let verb = alt((sense(Sense::Verb(Verb::Move)), text(&["move", "shift", "slide", "bump", "scoot"])));
    let which = opt(preceded(at, length));
    let to = (
        many0_count(text(&["over", "up", "down", "back", "out", "in"])),
        text(&["to", "so its at", "to be at"]),
        opt(text(&["the", "at"])),
    );
    let (rest, (which, m)) = (preceded((verb, a_post), which), preceded(to, length)).parse(input)?;
    let (rest, (mark, run)) = (opt(from), opt(on)).parse(rest)?;
    Ok((rest, said(ChoiceDraft::Move { which, to: m, from: mark }, run)))
}

/// "post 2 landed at 61 1/4", "post 3 ended up at 9'-2 from the corner".
pub fn landed(input: In<'_>) -> Out<'_, Say> {
    let in_place = text(&[
        "landed",
        "ended up",
        "came out",
        "went in",
        "got set",
        "is set",
        "sits",
        "stands",
        "fell",
        "wound up",
        "is",
        "is in",
        "is really",
        "is actually",
        "set",
        "lands",
        "hit",
    ]);
    let verb = (many1_count(in_place), opt(text(&["at", "@", "on", "in at"])));
    let post = || text(&["post"]);
    let nth = || any(|s| if let Sense::Nth(n) = s { u16::try_from(n).ok() } else { None });
    let numbered = || preceded((det, post(), opt(text(&["number", "no", "#"]))), count);
    let which = || alt((numbered(), delimited(det, alt((nth(), count)), post())));
    // "move post 2 to 62" puts it where it is to be.
    let go = alt((sense(Sense::Verb(Verb::Move)), text(&["move", "shift", "slide", "put", "set"])));
    let to = (opt(text(&["over", "up", "down", "back"])), text(&["to", "at", "over to"]), opt(text(&["the"])));
    let (rest, number) = alt((terminated(which(), verb), delimited(go, which(), to))).parse(input)?;
    let (rest, m) = length(rest)?;
    let (rest, ()) = no_spacing(rest)?;
    let (rest, (mark, run)) = (opt(from), opt(on)).parse(rest)?;
    let (rest, _) = opt(text(&["instead", "not where it should", "now", "already"])).parse(rest)?;
    Ok((rest, said(ChoiceDraft::Landed { number, at: m, from: mark }, run)))
}
