//! What is said of stairs beyond their width and place.
//!
//! ```text
//! measured = [length "is"] ["that's" | "clear" ...] ("the treads" | "the framed hole" | "decking to decking" | "clear between the posts")
//! recess   = ("recessed" | "let" | "set" | "cut") [length] ["back" | "in"] ["into the deck"]
//! flight   = count ("risers" | "steps") [("of" | "at") length] | "rise" [is] length | "treads" [are] length | length ("rise" | "treads")
//! lands    = "lands on" ("a slab" | "the ground" ...)
//! ```

use super::Say;
use super::atoms::{In, Out, count, det, is, length, part, sense, sep, text};
use crate::grammar::draft::Clause;
use crate::grammar::sense::{Cue, Part, Sense};
use crate::grammar::stair_draft::StairSaid;
use crate::job::{End, Lands, Newels, OpenSides, StairMeasure};
use crate::measure::Meaning;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, value, verify};
use nom::multi::{many0_count, many1_count};
use nom::sequence::{delimited, preceded, terminated};

pub(super) fn said(s: StairSaid) -> Say {
    Say::Clause(Clause::Stair(s))
}

/// Stairs named, or a word that stands for them where they were spoken of.
pub(super) fn they(input: In<'_>) -> Out<'_, ()> {
    let word =
        text(&["they", "they 're", "theyre", "them", "em", "it", "it 's", "its", "that", "that 's", "thats", "those"]);
    alt((value((), (det, part(Part::Stairs))), word)).parse(input)
}

fn link(input: In<'_>) -> Out<'_, ()> {
    value(
        (),
        many0_count(text(&[
            "and", "with", "has", "have", "got", "w", "there 's", "theres", "there", "is", "are", "'s", "at",
        ])),
    )
    .parse(input)
}

fn what_measured(input: In<'_>) -> Out<'_, StairMeasure> {
    use StairMeasure::{Decking, Framing, Posts, Treads};
    let tread = || text(&["tread", "treads"]);
    let treads = (opt(text(&["on", "across", "over", "of"])), det, tread());
    let framed = text(&["framed", "rough", "framing"]);
    let hole = || alt((text(&["hole"]), part(Part::Opening)));
    let framing = alt((
        value((), (det, framed, hole())),
        value((), (text(&["in", "at"]), det, text(&["framing"]))),
        value((), (text(&["framing"]), text(&["to"]), text(&["framing"]))),
        value((), (text(&["between"]), det, text(&["trimmers"]))),
    ));
    let decking = || text(&["decking", "boards", "deck boards"]);
    let decking = alt((
        value((), (decking(), text(&["to"]), decking())),
        value((), (det, hole(), text(&["in"]), det, alt((decking(), part(Part::Deck))))),
        value((), (text(&["deck"]), text(&["to"]), text(&["deck"]))),
    ));
    let posts = text(&[
        "between posts",
        "between the posts",
        "between newels",
        "between the newels",
        "post to post",
        "newel to newel",
        "post to post inside",
        "between post faces",
    ]);
    let clear = (opt(text(&["in", "the"])), text(&["clear", "in the clear"]));
    let between = (text(&["between"]), det, alt((part(Part::Post), text(&["newels"]))));
    let posts = (opt(clear), alt((value((), posts), value((), between))));
    alt((value(Treads, treads), value(Framing, framing), value(Decking, decking), value(Posts, posts))).parse(input)
}

/// "that's the treads", "48 is the framed hole", "the 4 ft is clear between the posts".
pub fn measured(input: In<'_>) -> Out<'_, Say> {
    let that = text(&["that 's", "thats", "that", "it 's", "its", "it", "they 're", "theyre", "measured", "this"]);
    let is_it = || many0_count(text(&["is", "'s", "are", "was", "the", "wide", "measured", "from", "for", "of"]));
    let wide = (det, length, opt(sense(Sense::Cue(Cue::Wide))), text(&["is", "'s", "are", "was"]), is_it());
    let first = wide.map(|(_, m, ..)| Some(m));
    let alone = value(None, (that, is_it(), opt(text(&["wide"]))));
    (alt((first, alone)), what_measured).map(|(m, what)| said(StairSaid::Measured(m, what))).parse(input)
}

/// "4 ft stairs, decking to decking": behind the stairs, what their width is.
pub fn measured_behind(input: In<'_>) -> Out<'_, Say> {
    what_measured.map(|what| said(StairSaid::Measured(None, what))).parse(input)
}

/// "stair opening is 44 1/2 clear between the posts", "stair hole is framed at 48".
pub fn hole(input: In<'_>) -> Out<'_, Say> {
    let hole = || alt((text(&["hole"]), part(Part::Opening)));
    let opening = alt((
        value((), (det, part(Part::Stairs), hole())),
        value((), (det, text(&["stair opening", "opening for the stairs"]))),
        value((), (det, hole(), text(&["for"]), det, part(Part::Stairs))),
    ));
    let framed = (is, opt(text(&["framed", "roughed"])), opt(text(&["at", "to", "out"])), length);
    let (rest, (_, (_, framed, _, m), _)) = (opening, framed, opt(sense(Sense::Cue(Cue::Wide)))).parse(input)?;
    let (rest, what) = match framed {
        Some(()) => (rest, StairMeasure::Framing),
        None => preceded(opt(text(&["wide"])), what_measured).parse(rest)?,
    };
    Ok((rest, said(StairSaid::Measured(Some(m), what))))
}

/// "what if they were 5' wide", "the steps are gonna be 5 foot", "make em 42".
pub fn were(input: In<'_>) -> Out<'_, Say> {
    let be = || {
        many1_count(text(&[
            "were",
            "was",
            "are",
            "'re",
            "is",
            "went",
            "go",
            "gonna",
            "gonna be",
            "be",
            "going",
            "to be",
            "will be",
            "'ll be",
            "should be",
        ]))
    };
    let they = alt((
        value((), (text(&["they"]), be())),
        value((), text(&["they 're", "theyre"])),
        value((), (text(&["make"]), text(&["em", "them"]))),
    ));
    let stairs = alt((
        value((), (det, part(Part::Stairs), be())),
        value((), (text(&["make"]), det, part(Part::Stairs))),
        value((), (text(&["make the"]), part(Part::Stairs))),
    ));
    let only = opt(many1_count(text(&["only", "just", "made", "built", "to", "at"])));
    let lead = alt((value(true, stairs), value(false, they)));
    let wide = (terminated(lead, only), length, opt(sense(Sense::Cue(Cue::Wide))));
    wide.map(|(named, width, _)| said(StairSaid::Wide { width, named })).parse(input)
}

/// "recessed 3 ft", "let 36 inches into the deck", "set back 3' into the deck".
pub fn recess(input: In<'_>) -> Out<'_, Say> {
    let into = || (text(&["into", "in to", "in", "back into"]), det, alt((part(Part::Deck), text(&["decking"]))));
    let lead = || (opt(they), many0_count(text(&["is", "are", "'re", "and"])));
    let recessed = text(&["recessed", "inset", "notched"]);
    let recessed = (lead(), recessed, many0_count(text(&["in", "by", "back"]))).map(|_| ());
    let recessed = delimited(recessed, length, opt(into()));
    let verb =
        text(&["let", "set", "cut", "go", "goes", "come", "comes", "run", "runs", "sunk", "pushed", "bite", "bites"]);
    let back = || many0_count(text(&["back", "in", "deep", "by", "cue"]));
    let deep = || opt(sense(Sense::Cue(Cue::Deep)));
    let let_in = delimited((lead(), verb, back()), length, (deep(), back(), into()));
    let depth = terminated(length, (deep(), back(), into()));
    let named = preceded((det, text(&["recess"]), is), terminated(length, deep()));
    alt((recessed, let_in, depth, named)).map(|m| said(StairSaid::Recess(m))).parse(input)
}

/// "stairs: 9 risers", "the stairs have 9 risers": the word that brings a flight's own figures in.
pub(super) fn of_stairs(input: In<'_>) -> Out<'_, ()> {
    let has = many0_count(alt((text(&["has", "have", "with", "is", "are", "got", "get"]), sep(":"))));
    value((), (link, opt((det, part(Part::Stairs), has)))).parse(input)
}

pub(super) fn riser_word(input: In<'_>) -> Out<'_, ()> {
    text(&["riser", "risers"]).parse(input)
}

/// What is counted of stairs: a number before it is no width of theirs.
pub(super) fn counted_word(input: In<'_>) -> Out<'_, ()> {
    text(&["riser", "risers", "step", "steps", "rise", "tread", "treads"]).parse(input)
}

/// "5 risers", "five risers at 7 3/4": the count; the height is [`rise`].
pub fn risers(input: In<'_>) -> Out<'_, Say> {
    let up = || opt(text(&["up", "high", "total", "in all", "down", "there", "of them"]));
    let risers = delimited(of_stairs, count, (riser_word, up())).map(StairSaid::Risers);
    let steps = delimited(of_stairs, count, text(&["steps", "step"]));
    let steps = verify(steps, |n| *n <= 30).map(StairSaid::Steps);
    let tail = many0_count(alt((
        text(&["up", "down", "high", "to grade", "to the ground", "to"]),
        text(&["grade", "ground", "the ground"]),
    )));
    alt((risers, terminated(steps, tail))).map(said).parse(input)
}

/// "rise is 7 3/4", "7 3/4 rise", "of 7 5/8 each" behind a count of risers.
pub fn rise(input: In<'_>) -> Out<'_, Say> {
    let word = || alt((text(&["rise"]), value((), (text(&["riser", "each riser"]), opt(text(&["height"]))))));
    let each = || opt(text(&["each", "apiece", "high", "per step"]));
    let before = delimited((link, det, word(), is, opt(text(&["were"]))), length, each());
    let plural =
        delimited((link, det, riser_word, text(&["are", "is", "at", "of", "run", "=", "were"])), length, each());
    let after = delimited(link, length, (opt(sep("-")), text(&["rise", "riser", "risers"])));
    let after = verify(after, |m| !matches!(m.meaning, Meaning::Bare(n) if n.value.is_integer()));
    alt((before, plural, after)).map(|m| said(StairSaid::Rise(m))).parse(input)
}

/// "risers 7": how many there are, or how high each is.
pub fn risers_bare(input: In<'_>) -> Out<'_, Say> {
    preceded((link, riser_word, opt(text(&[":", "="]))), length).map(|m| said(StairSaid::RisersBare(m))).parse(input)
}

/// "six risers at 7 1/4": the height behind the count.
pub fn count_of(input: In<'_>) -> Out<'_, Say> {
    let (rest, n) = delimited(of_stairs, count, riser_word).parse(input)?;
    let linked = preceded(text(&["at", "of", "@", "by", "x"]), length);
    // "5 risers 7 3/4": no link, and what can be nothing but a riser.
    let part = verify(length, |m| match m.meaning {
        Meaning::Bare(n) => n.fraction && n.value < 12.into(),
        Meaning::Length(l, _) => l.q() < 12.into(),
        _ => false,
    });
    let (rest, m) = terminated(alt((linked, part)), opt(text(&["each", "apiece"]))).parse(rest)?;
    Ok((rest, said(StairSaid::RisersOf(n, m))))
}

/// "treads are 11", "10 1/4 treads", "10 inch tread".
pub fn tread(input: In<'_>) -> Out<'_, Say> {
    let word = || text(&["tread", "treads", "tread depth"]);
    let tail = || opt(alt((sense(Sense::Cue(Cue::Deep)), text(&["each"]))));
    let before = delimited((link, det, word(), is, opt(text(&["were"]))), length, tail());
    let after = delimited((link, opt(part(Part::Stairs)), link), length, (opt(sep("-")), word()));
    alt((before, after)).map(|m| said(StairSaid::Tread(m))).parse(input)
}

/// "open on one side", "open both sides".
pub fn open(input: In<'_>) -> Out<'_, Say> {
    let lead = (opt(they), many0_count(text(&["is", "are", "and"])), text(&["open"]), opt(text(&["on", "to"])), det);
    let wall = (opt(sep(",")), text(&["wall", "house", "the wall"]), text(&["on"]), det, text(&["other"]));
    let sides = alt((
        value(OpenSides::Both, (text(&["both", "two"]), opt(text(&["sides", "of them"])))),
        value(OpenSides::One, (text(&["one"]), opt(text(&["side"])))),
        value(OpenSides::One, text(&["one side"])),
        value(OpenSides::Both, text(&["both sides"])),
        value(OpenSides::Neither, (text(&["neither", "no"]), text(&["side", "sides"]))),
        value(OpenSides::Left, (text(&["left", "left side", "left hand side"]), opt(text(&["side"])))),
        value(OpenSides::Right, (text(&["right", "right side", "right hand side"]), opt(text(&["side"])))),
    ));
    delimited(lead, sides, opt(wall)).map(|s| said(StairSaid::Open(s))).parse(input)
}

/// "newels on the treads", "newels outside the stringers".
pub fn newels(input: In<'_>) -> Out<'_, Say> {
    let word = (
        det,
        text(&["newel", "newels", "stair posts", "posts"]),
        many0_count(text(&["are", "go", "stand", "set", "sit", "is"])),
    );
    let on = (text(&["on", "on top of"]), det, text(&["tread", "treads"]));
    let beside = (
        text(&["outside", "beside", "outside of", "alongside"]),
        det,
        text(&["stringer", "stringers", "tread", "treads"]),
    );
    let place = alt((value(Newels::OnTreads, on), value(Newels::Beside, beside)));
    preceded(word, place).map(|n| said(StairSaid::Newels(n))).parse(input)
}

/// "lands on a slab", "bottom of the stairs sits on a concrete pad".
pub fn lands(input: In<'_>) -> Out<'_, Say> {
    let foot = alt((value((), sense(Sense::End(End::BottomNewel))), value((), (det, part(Part::Stairs)))));
    let verb =
        text(&["lands", "land", "landing", "sits", "sit", "lies", "comes down", "rests", "bears", "hits", "lands out"]);
    let lead = (
        opt((det, foot)),
        many0_count(text(&["and", "it", "that", "they"])),
        verb,
        many0_count(text(&["down", "out"])),
        text(&["on", "at"]),
        det,
    );
    let made = many0_count(text(&["concrete", "poured", "small", "existing"]));
    let on = alt((
        value(Lands::Slab, text(&["slab", "pad", "concrete", "patio", "concrete pad", "concrete slab", "landing pad"])),
        value(Lands::Pavers, text(&["pavers", "paver", "patio stones", "flagstone", "stone"])),
        value(Lands::Gravel, text(&["gravel", "crushed stone"])),
        value(Lands::Ground, text(&["ground", "grade", "dirt", "grass", "lawn", "yard"])),
        value(Lands::Landing, alt((part(Part::Landing), text(&["lower deck"])))),
    ));
    preceded((lead, made), on).map(|l| said(StairSaid::Lands(l))).parse(input)
}

/// "rail stops at a newel there", "runs down to a newel at the bottom": the foot of a guard
/// down the stairs.
pub fn down_to(input: In<'_>) -> Out<'_, Say> {
    let rail = (
        opt(part(Part::Stairs)),
        det,
        opt(part(Part::Stairs)),
        alt((part(Part::Rail), part(Part::Guard), part(Part::Handrail))),
    );
    let verb = text(&["stops", "ends", "finishes", "dies", "runs", "goes", "runs down", "goes down", "runs out"]);
    let newel = alt((
        value((), (text(&["newel", "newal", "post"]), opt(text(&["there", "down there"])))),
        sense(Sense::End(End::BottomNewel)),
    ));
    let tail = opt((text(&["at"]), det, text(&["bottom", "the bottom", "foot"])));
    (rail, verb, opt(text(&["down"])), text(&["at", "to", "on", "into"]), det, newel, tail)
        .map(|_| said(StairSaid::DownTo))
        .parse(input)
}
