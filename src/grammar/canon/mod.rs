//! The plain phrase of an act: written, and read back to exactly the same act.
//!
//! Job files are made of these phrases, so this grammar is small and frozen. It needs no
//! context: runs go by number, every length carries its unit. Each file holds one subject's
//! writer beside its reader, and both share one table of words.
//!
//! ```text
//! act    = facts ["; " given] | "suppose: " facts | query | sum | talk                see row.rs for given
//! facts  = fact *("; " fact)
//! fact   = run | "drop run " n | setting | deck | "stairs: " length " wide" | "note: " words | "drop note " n | done
//! run    = "run " n [": " item *(", " item)]                                          see run.rs
//! setting, deck                                                                       see fact.rs, foot.rs
//! query  = "layout?" | "posts of run 1?" | "rule post-spacing?" ...                   see query.rs
//! flight questions: see flight.rs
//! sum    = "sum: " expression | "pieces: " ... | "diagonal: " ...                     see sum.rs
//! talk   = "undo" | "redo" | "keep it" | "leave it" | "hello" | "help"
//! length = ["-"] feet "'-" inches '"' | ["-"] inches '"' | ["-"] decimal " mm"        see length.rs
//! ```
//!
//! `read(write(act)) == act` holds for every act that keeps these laws, which the
//! resolver must see to:
//!
//! - `Tell` and `Suppose` hold at least one fact;
//! - a run's name is what [`clean_name`] gives, a note what [`clean_note`] gives;
//! - numerators and denominators stay within [`Length::BOUND`](crate::measure::Length::BOUND);
//! - tape parts are a power of two from 2 to 64;
//! - a sum is written in at most [`MOST_SUM`] bytes with brackets at most [`MOST_BRACKETS`] deep.

mod choice;
mod clean;
mod deck;
mod fact;
mod flight;
mod foot;
mod gate;
mod law;
mod length;
mod notch;
mod order;
mod query;
mod row;
mod run;
mod stairs;
mod strength;
mod sum;
mod takeoff;
mod talk;
mod timber;
mod why;
mod words;
mod work;

pub use clean::{clean_name, clean_note};
pub use fact::write_fact;
pub use sum::{MOST_BRACKETS, MOST_SUM};

use super::Act;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{all_consuming, map};
use nom::sequence::{preceded, separated_pair};
use nom::{IResult, Parser};

/// What every reader here gives: the rest of the line, and what was read.
type Read<'a, T> = IResult<&'a str, T>;

/// The plain phrase of an act.
pub fn write(act: &Act) -> String {
    match act {
        Act::Tell(facts) => fact::write_facts(facts),
        Act::TellWith(facts, given) => format!("{}; {}", fact::write_facts(facts), row::write_premises(given)),
        Act::Suppose(facts) => format!("suppose: {}", fact::write_facts(facts)),
        Act::Query(query) => query::write_query(query),
        Act::Sum(sum) => sum::write_sum(sum),
        Act::Talk(talk) => talk::write_talk(*talk).to_owned(),
    }
}

/// The act of a plain phrase; `None` unless the whole line is one, blanks around it aside.
///
/// Nothing but what [`write()`] writes is read: `run 01`, items out of order or `6/8"` are
/// left to the loose grammar, so one act has one phrase and one phrase one act.
pub fn read(line: &str) -> Option<Act> {
    let line = line.trim();
    let (_, act) = all_consuming(read_act).parse(line).ok()?;
    (write(&act) == line).then_some(act)
}

fn read_act(i: &str) -> Read<'_, Act> {
    alt((
        map(preceded(tag("suppose: "), fact::read_facts), Act::Suppose),
        map(separated_pair(fact::read_facts, tag("; "), row::read_premises), |(told, given)| {
            Act::TellWith(told, given)
        }),
        map(fact::read_facts, Act::Tell),
        map(query::read_query, Act::Query),
        map(sum::read_sum, Act::Sum),
        map(talk::read_talk, Act::Talk),
    ))
    .parse(i)
}
