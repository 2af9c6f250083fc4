//! "why" with words of its own.
//!
//! ```text
//! why = "why not bays of " length [" clear" | " on centre"] | "why not " n " bays in run " n
//!     | "why a post at " length " in run " n | "why the line posts in run " n
//!     | "why the figure " (length | number) | "why " n (" posts" | " bays" | " balusters")
//! ```

use super::Read;
use super::length::{read_length, read_number};
use super::words::{Table, one_of, whole, words_of};
use crate::grammar::ask::{Apart, Counted, WhyAsk};
use crate::job::RunId;
use crate::measure::{exact_phrase, mixed_number};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt};
use nom::sequence::{pair, preceded};

const APART: &Table<Apart> = &[(Apart::Clear, " clear"), (Apart::Centre, " on centre")];

const COUNTED: &Table<Counted> =
    &[(Counted::Posts, " posts"), (Counted::Bays, " bays"), (Counted::Balusters, " balusters")];

/// The plain phrase of a "why", its mark left off.
pub(super) fn write_why(ask: WhyAsk) -> String {
    match ask {
        WhyAsk::NotBay(l, Apart::Unsaid) => format!("why not bays of {}", exact_phrase(l)),
        WhyAsk::NotBay(l, apart) => format!("why not bays of {}{}", exact_phrase(l), words_of(APART, apart)),
        WhyAsk::NotBays(run, n) => format!("why not {n} bays in run {}", run.0),
        WhyAsk::PostAt(run, l) => format!("why a post at {} in run {}", exact_phrase(l), run.0),
        WhyAsk::LinePosts(run) => format!("why the line posts in run {}", run.0),
        WhyAsk::Length(l) => format!("why the figure {}", exact_phrase(l)),
        WhyAsk::Number(q) => format!("why the figure {}", mixed_number(q)),
        WhyAsk::Counted(what, n) => format!("why {n}{}", words_of(COUNTED, what)),
    }
}

/// Reads what [`write_why`] writes.
pub(super) fn read_why(i: &str) -> Read<'_, WhyAsk> {
    let in_run = || map(preceded(tag(" in run "), whole), RunId);
    let not_bay = preceded(tag("why not bays of "), pair(read_length, opt(one_of(APART))));
    let not_bays = preceded(tag("why not "), pair(whole, preceded(tag(" bays"), in_run())));
    let post_at = preceded(tag("why a post at "), pair(read_length, in_run()));
    let figure = alt((map(read_length, WhyAsk::Length), map(read_number, WhyAsk::Number)));
    alt((
        map(not_bay, |(l, apart)| WhyAsk::NotBay(l, apart.unwrap_or(Apart::Unsaid))),
        map(not_bays, |(n, run)| WhyAsk::NotBays(run, n)),
        map(post_at, |(l, run)| WhyAsk::PostAt(run, l)),
        map(preceded(tag("why the line posts"), in_run()), WhyAsk::LinePosts),
        preceded(tag("why the figure "), figure),
        map(preceded(tag("why "), pair(whole, one_of(COUNTED))), |(n, what)| WhyAsk::Counted(what, n)),
    ))
    .parse(i)
}
