//! Where posts are wanted and where not.
//!
//! ```text
//! post_at   = want* ["a" | "another"] ("post" | "one") ["to go"] "at" length *("and" length) [from] [on]
//!           | want* ["a"] "post" length from [on]
//! no_post   = ("no" | "lose" | "drop" ...) "post" "at" length [from] [on]
//! moved     = "move" "the" ["middle"] "post" ["at" length] "to" length [from] [on]
//! mirrored  = ["not"] "mirror" ["the posts"] ["about" "the stairs"] [on] | "posts" is "symmetrical" ...
//! keep_off  = deny "post" ["any"] "within" length "of" thing [on]
//!           | "keep" "posts" length ["away"] "from" thing [on] | "posts" "no closer than" length "to" thing [on]
//! from      = ("from" | "off" ...) (place | side | "the left end")
//! on        = ["on" | "in"] ("run" n | side)
//! ```

use super::Say;
use super::atoms::{In, Out, count, det, is, length, one, part, place, places, sense, sep, side, text};
use crate::grammar::choice::{ChoiceDraft, ChoiceOf, Off};
use crate::grammar::draft::{Clause, Mark, Which};
use crate::grammar::items::Item;
use crate::grammar::sense::{Cue, Part, Sense, Side, Spot, Verb};
use crate::job::{Basis, End};
use crate::measure::Measure;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{not, opt, peek, value, verify};
use nom::multi::{many0, many0_count, many1_count};
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
        (posts_or_it, is, opt(text(&["to be", "be"])), opt(sense(Sense::Not)), word(), opt(about_opening)).map(|_| ());
    let alone = (even, opt(about_opening)).map(|_| ());
    let (rest, ()) = alt((verb_about, it_same, sides_same, verb_first, posts_first, alone)).parse(rest)?;
    let (rest, run) = opt(on).parse(rest)?;
    Ok((rest, said(ChoiceDraft::Mirrored(denied.is_none()), run)))
}

/// What posts keep off.
fn thing(input: In<'_>) -> Out<'_, Off> {
    let mark = preceded(det, (length, opt(from))).map(|(m, mark)| Off::At(m, mark));
    let named = preceded(
        det,
        alt((
            value(Off::Stairs, (part(Part::Stairs), opt(part(Part::Opening)))),
            value(Off::Gate, (part(Part::Gate), opt(part(Part::Opening)))),
            value(Off::Door, text(&["door", "doors", "doorway", "slider", "patio door", "back door", "front door"])),
            value(Off::Door, (text(&["sliding", "patio", "back", "french"]), text(&["door", "doors"]))),
        )),
    );
    let ends = alt((
        places.map(Off::Ends),
        preceded((opt(text(&["either", "both", "each", "any"])), det), places).map(Off::Ends),
    ));
    alt((named, ends, end_mark.map(Off::End), mark)).parse(input)
}

/// "keep posts clear of the corner by 18".
fn clear_by(input: In<'_>) -> Out<'_, (Off, Measure)> {
    let mut keep = (want, text(&["keep", "hold", "leave", "stay"]), opt(text(&["all"])), det, a_named_post);
    let (rest, _) = keep.parse(input)?;
    let off = many1_count(text(&["back", "away", "clear", "well", "out"]));
    // "posts of the stairs" keeps off nothing; "clear of the stairs" does.
    let off = alt((value((), off), value((), not(peek(text(&["of", "to"]))))));
    let by = (text(&["by", "at least"]), opt(text(&["at least"])));
    (preceded(off, off_thing), preceded(by, length)).parse(rest)
}

/// "of the corner", "off the stairs", "off the house".
fn off_thing(input: In<'_>) -> Out<'_, Off> {
    let link = text(&["of", "to", "from", "off", "off of", "away from"]);
    let house = text(&["off the house", "out from the house", "out off the house"]);
    alt((value(Off::End(Mark::End(End::House)), house), preceded(link, thing))).parse(input)
}

/// Words that may stand about a denial without denying anything themselves.
const DENY_FILL: &[&str] = &["put", "want", "set", "have", "any", "i", "we", "lets", "place", "and", "need"];

/// One denial: a second one would take the first back.
fn deny(input: In<'_>) -> Out<'_, ()> {
    let fill = || many0_count(text(DENY_FILL));
    let word = text(&["no", "dont", "never", "do not", "not", "cant have", "without", "nothing", "aint"]);
    value((), (fill(), alt((sense(Sense::Not), word)), fill())).parse(input)
}

fn than(input: In<'_>) -> Out<'_, ()> {
    let listed = text(&["closer than", "nearer than", "less than"]);
    alt((listed, value((), (text(&["closer", "nearer"]), text(&["than"]))))).parse(input)
}

fn within(input: In<'_>) -> Out<'_, ()> {
    let listed = text(&["within", "inside", "any closer than", "any nearer than"]);
    alt((value((), (opt(text(&["any"])), than)), listed, text(&["nearer", "closer"]))).parse(input)
}

fn back(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(text(&["back", "away", "clear", "well", "off", "out"]))).parse(input)
}

fn least(input: In<'_>) -> Out<'_, ()> {
    alt((sense(Sense::Cue(Cue::Least)), text(&["at least", "a good", "min", "minimum"]))).parse(input)
}

/// "no post within 18 inches": a post must be named.
fn denied(input: In<'_>) -> Out<'_, Measure> {
    let any_post = (det, opt(text(&["any", "more"])), a_named_post);
    preceded((deny, any_post, within), length).parse(input)
}

fn a_named_post(input: In<'_>) -> Out<'_, ()> {
    let named = |i: &Item| i.may_be(Sense::Part(Part::Post)) || i.may_be(Sense::Part(Part::LinePost));
    let word = one(move |i: &Item| named(i).then_some(()));
    value((), (opt(text(&["line", "guard", "middle", "rail"])), word)).parse(input)
}

/// "keep the posts at least 18 inches".
fn kept(input: In<'_>) -> Out<'_, Measure> {
    let keep = text(&["keep", "hold", "leave", "stay", "kept", "keep the", "keep all"]);
    preceded((want, keep, opt(text(&["all"])), det, a_named_post, back, opt(least)), length).parse(input)
}

/// "posts should stay at least 2 ft", "posts no closer than 16".
fn stay(input: In<'_>) -> Out<'_, Measure> {
    let must = many0_count(text(&[
        "must",
        "have to",
        "should",
        "need to",
        "are to",
        "to",
        "stay",
        "be",
        "stand",
        "keep",
        "are",
        "is",
        "should be",
        "must be",
        "needs to be",
        "has to be",
        "need to be",
    ]));
    let no_closer = value((), (alt((sense(Sense::Not), text(&["no", "not", "never"]))), opt(text(&["any"])), than));
    let bound = alt((least, no_closer, text(&["no closer than", "no nearer than"])));
    preceded((want, det, a_named_post, must, back, bound), length).parse(input)
}

/// "no post between 4 and 6 ft from the house".
fn between(input: In<'_>) -> Out<'_, ChoiceDraft> {
    let and = text(&["and", "&", "to", "n"]);
    let lead = (deny, det, a_named_post, text(&["between", "from", "in between"]));
    (preceded(lead, length), preceded(and, length), opt(from))
        .map(|(a, b, from)| ChoiceDraft::Between(a, b, from))
        .parse(input)
}

/// "no post within 18 inches of the corner", "keep posts 2 ft off the stairs".
pub fn keep_off(input: In<'_>) -> Out<'_, Say> {
    let away = many0_count(text(&["back", "away", "clear", "well"]));
    let by_of = (alt((denied, kept, stay)), preceded(away, off_thing)).map(|(by, of)| ChoiceDraft::KeepOff { by, of });
    let of_by = clear_by.map(|(of, by)| ChoiceDraft::KeepOff { by, of });
    (alt((of_by, by_of, between)), opt(on)).map(|(choice, run)| said(choice, run)).parse(input)
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
