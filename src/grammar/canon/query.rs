//! Questions: each ends in "?".
//!
//! ```text
//! query = ("layout" | "posts" | "bays" | "marks from the far end") [" of run " n] "?" | "length " [("left" | "right") " of the stairs"] " of run " n "?"
//!       | stairs and gates, as in `flight`, strength, takeoff or notch, and "?" | "job?" | "rule " id "?"
//!       | "actual size of " lumber "?" | "length " told "?" | "why?" | why, and "?" | "sources?"
//!       | "rules" [" found"] "?" | a row of the table, as in `row`, and "?"
//! ```

use super::Read;
use super::flight::{read_flight_ask, write_flight_ask};
use super::length::{read_lumber, read_told, write_told};
use super::notch::{read_notch, write_notch};
use super::row::{read_premises, read_row, write_premises, write_row};
use super::strength::{read_strength, write_strength};
use super::takeoff::{read_takeoff, write_takeoff};
use super::why::{read_why, write_why};
use super::words::whole;
use super::work::{read_work, write_work};
use crate::grammar::Query;
use crate::grammar::ask::RuleAsk;
use crate::job::{Flank, RunId, Told};
use crate::limits::find;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_till1};
use nom::combinator::{map, map_opt, opt, value};
use nom::sequence::{preceded, terminated};

/// The plain phrase of a question.
pub(super) fn write_query(query: &Query) -> String {
    match query {
        Query::Layout(run) => format!("layout{}?", of_run(*run)),
        Query::MarksBack(run) => format!("marks from the far end{}?", of_run(*run)),
        Query::Posts(run) => format!("posts{}?", of_run(*run)),
        Query::Bays(run) => format!("bays{}?", of_run(*run)),
        Query::RunLength(run) => format!("length{}?", of_run(Some(*run))),
        Query::Flank(run, Flank::Left) => format!("length left of the stairs{}?", of_run(Some(*run))),
        Query::Flank(run, Flank::Right) => format!("length right of the stairs{}?", of_run(Some(*run))),
        Query::Job => "job?".to_owned(),
        Query::Rule(ask) => format!("rule {}{}?", ask.limit.id, word(ask.says)),
        Query::Actual(lumber) => format!("actual size of {lumber}?"),
        Query::Measure { length, shade, about } => {
            format!("length {}?", write_told(Told { length: *length, shade: *shade, about: *about }))
        }
        Query::Strength(ask) => format!("{}?", write_strength(ask)),
        Query::Why => "why?".to_owned(),
        Query::WhyOf(ask) => format!("{}?", write_why(*ask)),
        Query::Rules => "rules?".to_owned(),
        Query::RulesFound => "rules found?".to_owned(),
        Query::Sources => "sources?".to_owned(),
        Query::Takeoff(ask) => format!("{}?", write_takeoff(ask)),
        Query::Law => "code?".to_owned(),
        Query::Work(ask) => format!("{}?", write_work(*ask)),
        Query::Notch(ask) => format!("{}?", write_notch(*ask)),
        Query::Flight(ask) => format!("{}?", write_flight_ask(ask)),
        Query::Row(ask) => format!("{}?", write_row(ask)),
        Query::Given(ask) => write_premises(ask),
    }
}

fn of_run(run: Option<RunId>) -> String {
    run.map_or(String::new(), |id| format!(" of run {}", id.0))
}

/// Reads what [`write_query`] writes.
pub(super) fn read_query(i: &str) -> Read<'_, Query> {
    let query = alt((
        // Before "posts" and its like, which begin some of its phrases.
        map(read_flight_ask, Query::Flight),
        read_of_layout,
        map(preceded(tag("length"), read_of_run), Query::RunLength),
        map(preceded(tag("length left of the stairs"), read_of_run), |id| Query::Flank(id, Flank::Left)),
        map(preceded(tag("length right of the stairs"), read_of_run), |id| Query::Flank(id, Flank::Right)),
        value(Query::Job, tag("job")),
        map(preceded(tag("rule "), read_rule), Query::Rule),
        map(preceded(tag("actual size of "), read_lumber), Query::Actual),
        map(preceded(tag("length "), read_told), |t| Query::Measure {
            length: t.length,
            shade: t.shade,
            about: t.about,
        }),
        map(read_strength, Query::Strength),
        // Before a bare "why".
        map(read_why, Query::WhyOf),
        value(Query::Why, tag("why")),
        value(Query::RulesFound, tag("rules found")),
        value(Query::Rules, tag("rules")),
        value(Query::Sources, tag("sources")),
        map(read_work, Query::Work),
        value(Query::Law, tag("code")),
        map(read_takeoff, Query::Takeoff),
        map(read_notch, Query::Notch),
    ));
    // A row's question may hold a note, and a note a "?".
    alt((map(read_row, Query::Row), map(read_premises, Query::Given), terminated(query, tag("?")))).parse(i)
}

fn read_of_layout(i: &str) -> Read<'_, Query> {
    alt((
        map(preceded(tag("layout"), opt(read_of_run)), Query::Layout),
        map(preceded(tag("marks from the far end"), opt(read_of_run)), Query::MarksBack),
        map(preceded(tag("posts"), opt(read_of_run)), Query::Posts),
        map(preceded(tag("bays"), opt(read_of_run)), Query::Bays),
    ))
    .parse(i)
}

fn read_of_run(i: &str) -> Read<'_, RunId> {
    map(preceded(tag(" of run "), whole), RunId).parse(i)
}

fn read_rule(i: &str) -> Read<'_, RuleAsk> {
    let limit = map_opt(take_till1(|c| c == '?' || c == ':'), find);
    let says = opt(alt((value(true, tag(": yes")), value(false, tag(": no")))));
    map((limit, says), |(limit, says)| RuleAsk { limit, says }).parse(i)
}

/// The word a rule is on what was asked.
fn word(says: Option<bool>) -> &'static str {
    says.map_or("", |yes| if yes { ": yes" } else { ": no" })
}
