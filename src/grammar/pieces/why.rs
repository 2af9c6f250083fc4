//! "why" with words of its own.
//!
//! ```text
//! not_so  = why not [go] (length [basis] ["bays"] ["between posts"] | count "bays")   "why not 10 ft", "why can't it be 2 bays"
//! post    = why det post ("at" length | "there")                                       "why a post at 5 ft 2"
//! figure  = why det measure | "where does" det measure "come from"                     "where'd you get 58 from"
//! counted = why [not] det count (posts | bays | balusters) ["and not" count]            "why 13 balusters"
//! notch   = why not [i] "notch it"                                                     "why can't i notch it"
//! ```

use super::Say;
use super::atoms::{In, Out, any, count, det, length, part, sense, sep, text};
use super::phrase::said as said_as;
use crate::grammar::ask::{Apart, Counted};
use crate::grammar::draft::{Clause, WhyDraft};
use crate::grammar::sense::{Ask, Cue, Part, Sense};
use crate::job::Basis;
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map, opt, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};

fn said(draft: WhyDraft) -> Say {
    Say::Clause(Clause::Why(draft))
}

fn why(input: In<'_>) -> Out<'_, ()> {
    let is = opt(text(&["is", "'s", "is it", "it 's", "its", "do i need", "do we need", "did you put", "put", "are"]));
    let you = opt(said_as(&[
        "you give me",
        "did you give me",
        "you put in",
        "you put",
        "you say",
        "did you say",
        "did you go with",
        "you go with",
        "there",
        "are there",
        "is there",
        "does it need",
        "does it take",
        "does it say",
        "do we have",
        "do i have",
        "do you want",
        "am i getting",
        "do i get",
    ]));
    value((), (sense(Sense::Ask(Ask::Why)), is, opt(text(&["it"])), you)).parse(input)
}

/// "anyway", "max", "the limit": said behind the figure, asking nothing more.
fn aside(input: In<'_>) -> Out<'_, ()> {
    let words = said_as(&[
        "anyway",
        "anyhow",
        "though",
        "max",
        "maximum",
        "minimum",
        "min",
        "the limit",
        "the max",
        "the rule",
        "at all",
        "again",
        "on centre",
        "on center",
        "and not more",
        "and not less",
    ]);
    value((), many0_count(words)).parse(input)
}

/// The line's end, a mark on it or not.
fn end(input: In<'_>) -> Out<'_, ()> {
    let (rest, _) = opt(sep("?.")).parse(input)?;
    if rest.first().is_none() { Ok((rest, ())) } else { Err(nom::Err::Error(())) }
}

/// "why not just", "why can't i go".
fn why_not(input: In<'_>) -> Out<'_, ()> {
    let not = alt((text(&["can 't", "couldn 't", "can't", "couldn't", "couldnt"]), sense(Sense::Not)));
    let who = opt(text(&["i", "we", "it", "they", "you"]));
    let go =
        text(&["just", "go", "do", "have", "use", "run", "make", "make it", "be", "it", "them", "to", "with", "at"]);
    value((), (sense(Sense::Ask(Ask::Why)), not, who, many0_count(go), det)).parse(input)
}

/// "why not 10 ft", "why not 2 bays".
pub fn not_so(input: In<'_>) -> Out<'_, Say> {
    let bays = map(terminated(count, part(Part::Bay)), WhyDraft::NotBays);
    let posts = map(terminated(count, part(Part::Post)), |n| WhyDraft::Counted(Counted::Posts, n));
    let apart = any(|s| match s {
        Sense::Basis(Basis::Clear) => Some(Apart::Clear),
        Sense::Basis(Basis::Centre) => Some(Apart::Centre),
        _ => None,
    });
    let between = alt((
        value((), part(Part::Bay)),
        value((), sense(Sense::Cue(Cue::Apart))),
        text(&["between posts", "between the posts", "apart", "long"]),
        value((), (text(&["between"]), det, part(Part::Post))),
    ));
    let bay = (length, opt(between), opt(apart));
    let bay = map(bay, |(m, _, apart)| WhyDraft::NotBay(m, apart.unwrap_or(Apart::Unsaid)));
    delimited(why_not, alt((bays, posts, bay)), end).map(said).parse(input)
}

/// "why a post at 5 ft 2", "why is there a post there".
pub fn post(input: In<'_>) -> Out<'_, Say> {
    let lead = (why, opt(text(&["there", "is there"])), det);
    let post = alt((part(Part::Post), part(Part::LinePost)));
    let at = map(preceded(text(&["at", "@"]), length), WhyDraft::PostAt);
    let there = value(WhyDraft::LinePosts, text(&["there", "here", "right there", "in there"]));
    delimited((lead, post), alt((at, there)), end).map(said).parse(input)
}

/// "why 58", "where'd you get the 58 from", "where does 58 come from".
pub fn figure(input: In<'_>) -> Out<'_, Say> {
    let from = || opt(text(&["from", "come from", "comes from", "coming from"]));
    let why = delimited((why, det), length, from());
    let lead = (
        alt((sense(Sense::Ask(Ask::Where)), text(&["where", "wheres"]))),
        opt(text(&["does", "did", "do", "'s", "is"])),
        det,
    );
    let come = text(&["from", "come from", "comes from", "coming from"]);
    let come = alt((come, value((), (text(&["come", "comes", "coming"]), text(&["from"])))));
    let where_from = delimited(lead, length, come);
    terminated(alt((why, where_from)), (aside, end)).map(WhyDraft::Figure).map(said).parse(input)
}

/// "why 13 balusters", "why 3 posts".
pub fn counted(input: In<'_>) -> Out<'_, Say> {
    let what = alt((
        value(Counted::Posts, alt((part(Part::Post), part(Part::LinePost)))),
        value(Counted::Bays, part(Part::Bay)),
        value(Counted::Balusters, part(Part::Baluster)),
    ));
    let lead = (why, opt(text(&["only", "just"])), det);
    let and_not = (said_as(&["and not", "not", "instead of", "rather than", "and not just", "when"]), det, count);
    let tail = (opt((and_not, opt(part(Part::Post)))), aside, end);
    delimited(lead, (count, what), tail).map(|(n, what)| said(WhyDraft::Counted(what, n))).parse(input)
}

/// "why can't i notch it", "why not notch the post".
pub fn notch(input: In<'_>) -> Out<'_, Say> {
    let post = (det, alt((part(Part::Post), value((), (super::atoms::lumber, opt(part(Part::Post)))))));
    let it = opt(alt((value((), post), text(&["it", "them", "that"]))));
    let verb = (text(&["notch", "notch it", "notch them", "notch the"]), it);
    value(said(WhyDraft::Notch), (why_not, verb, end)).parse(input)
}
