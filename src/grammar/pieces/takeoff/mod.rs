//! Questions about balusters, parts, cuts and cost.
//!
//! - [`lists`]: cut list, what to buy, parts, cost.
//! - [`gaps`]: whether a gap passes.
//! - [`infill`](mod@infill): one opening's balusters, said in any order.
//! - [`settled`]: dried balusters, balusters of another width, rails with holes.

mod gaps;
mod infill;
mod lists;
mod settled;

use gaps::passing;
pub use gaps::{by_object, gap_ok, on_centre};
pub use infill::infill;
pub use lists::{buy, cost, cut_length, cut_short, cuts, how_many_in_all, parts, parts_for, splits};
pub use settled::{dried, measured, routed};

use super::Say;
use super::atoms::{In, Out};
use super::phrase::{ends, said};
use crate::grammar::draft::Clause;
use crate::grammar::goods::TakeoffDraft;
use crate::measure::{Length, Lumber, Meaning, Measure, Said};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{peek, value};
use nom::multi::many0_count;

pub(super) fn asked(draft: TakeoffDraft) -> Say {
    Say::Clause(Clause::Takeoff(draft))
}

/// Words that say nothing of what is asked about parts.
const IDLE: &[&str] = &[
    "what",
    "what 's",
    "whats",
    "what is",
    "what are",
    "i",
    "we",
    "you",
    "me",
    "us",
    "do",
    "does",
    "will",
    "would",
    "can",
    "could",
    "please",
    "just",
    "now",
    "then",
    "so",
    "ok",
    "okay",
    "and",
    "the",
    "a",
    "an",
    "my",
    "our",
    "this",
    "that",
    "it",
    "its",
    "'s",
    "is",
    "are",
    "be",
    "all",
    "for",
    "to",
    "of",
    "on",
    "need",
    "i need",
    "have",
    "get",
    "got",
    "give",
    "give me",
    "gimme",
    "show",
    "show me",
    "tell me",
    "want",
    "i want",
    "let",
    "see",
    "lets",
    "let 's",
    "make",
    "print",
    "read",
    "off",
    "out",
    "there",
    "whole",
    "everything",
    "job",
    "deck",
    "thing",
    "guard",
    "railing",
    "project",
    "in",
    "up",
    "going",
    "gonna",
    "from",
    "yard",
    "take",
    "saw",
    "buddy",
    "quick",
    "full",
    "again",
    "with",
    "lumberyard",
    "should",
    "must",
    "they",
    "them",
    "each",
    "total",
    "altogether",
    "in all",
    "all told",
];

/// Words round a question that ask nothing of their own.
pub(super) fn idle(input: In<'_>) -> Out<'_, ()> {
    value((), many0_count(said(IDLE))).parse(input)
}

/// A whole question in a few words, idle words about it, to the line's end or a sign.
pub(super) fn question<'a>(list: &'static [&'static str]) -> impl Parser<In<'a>, Output = (), Error = ()> {
    let ending = (idle, peek(ends));
    let plain = (said(list), ending);
    let led = (idle, said(list), idle, peek(ends));
    alt((value((), plain), value((), led)))
}

/// A spacing no post has.
pub(super) fn small(m: &Measure) -> bool {
    match m.meaning {
        Meaning::Bare(n) => n.value < 12.into(),
        Meaning::Length(l, _) => l < Length::inches(12),
        _ => false,
    }
}

/// The width of lumber balusters are made of: two inches thick at most, under four wide.
pub(super) fn dressed(l: Lumber) -> Option<Measure> {
    let (_, wide) = l.dressed().filter(|_| l.thick_quarters <= 8 && l.wide < 4)?;
    Some(Measure { meaning: Meaning::Length(wide, Said::Inches), shade: None, about: false, guess: None })
}

/// A width no opening has: under 4 in.
pub(super) fn fine(m: Measure) -> Option<Measure> {
    let thin = match m.meaning {
        Meaning::Bare(n) => n.value < 4.into() && !n.plural,
        Meaning::Length(l, _) => l < Length::inches(4),
        _ => false,
    };
    thin.then_some(m)
}

/// An opening: 4 in. and more.
pub(super) fn wide(m: Measure) -> Option<Measure> {
    let open = match m.meaning {
        Meaning::Bare(n) => n.value >= 4.into() && !n.plural,
        Meaning::Length(l, _) => l >= Length::inches(4),
        Meaning::Doubt(..) => true,
        Meaning::Lumber(_) | Meaning::By(..) => false,
    };
    open.then_some(m)
}
