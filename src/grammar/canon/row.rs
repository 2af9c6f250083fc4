//! Rows asked for.
//!
//! ```text
//! row  = want *2("; " want) *("; with " name " " value) *("; if " fact)      every want of one lead
//! want = ("figure: " | "judge: " | "fault: ") name
//! given = "given: " item *("; " item)              item = name " " value | "if " fact, the facts last
//! name = a row's name, the longest that fits      value = inches | n | number, by the row's kind
//! fact = the plain phrase of a fact, as in `fact`
//! ```
//!
//! No fact has "; " in it, but a note may end in "?": the question's own is the line's last.

use super::Read;
use super::fact::{read_fact, write_fact};
use super::length::{read_length, read_number};
use super::words::{Table, one_of, whole, words_of};
use crate::figure::{Unit, Value};
use crate::grammar::ask::{Mood, RowAsk};
use crate::job::Fact;
use crate::measure::{exact_phrase, mixed_number};
use crate::quantity::{Kind, ROWS, RowId};
use nom::Parser;
use nom::bytes::complete::tag;
use nom::combinator::{all_consuming, map, map_opt, map_parser, opt, rest};
use nom::multi::{fold_many_m_n, many0, separated_list0};
use nom::sequence::{pair, preceded};

const MOODS: &Table<Mood> =
    &[(Mood::Figure, "figure: "), (Mood::Judge, "judge: "), (Mood::Fault, "fault: "), (Mood::Without, "without: ")];

pub(super) fn write_row(ask: &RowAsk) -> String {
    let wants = ask.wants.iter().map(|want| format!("{}{}", words_of(MOODS, ask.mood), want.row().name));
    let given = ask.given.iter().map(|(row, value)| format!("with {} {}", row.row().name, write_value(*value)));
    let supposed = ask.supposed.iter().map(|fact| format!("if {}", write_fact(fact)));
    wants.chain(given).chain(supposed).collect::<Vec<_>>().join("; ")
}

/// The plain phrase of premises for what is asked next.
pub(super) fn write_premises(ask: &RowAsk) -> String {
    let given = ask.given.iter().map(|(row, value)| format!("{} {}", row.row().name, write_value(*value)));
    let supposed = ask.supposed.iter().map(|fact| format!("if {}", write_fact(fact)));
    format!("given: {}", given.chain(supposed).collect::<Vec<_>>().join("; "))
}

/// Reads what [`write_premises`] writes.
pub(super) fn read_premises(i: &str) -> Read<'_, RowAsk> {
    let (i, _) = tag("given: ").parse(i)?;
    let (i, given) = separated_list0(tag("; "), read_given).parse(i)?;
    let lead = if given.is_empty() { "if " } else { "; if " };
    let (i, first) = opt(preceded(tag(lead), read_fact)).parse(i)?;
    let (i, more) = many0(preceded(tag("; if "), read_fact)).parse(i)?;
    let supposed: Vec<Fact> = first.into_iter().chain(more).collect();
    let none = given.is_empty() && supposed.is_empty();
    let ask = RowAsk { wants: Vec::new(), mood: Mood::Figure, given, supposed };
    if none { Err(nom::Err::Error(nom::error::Error::new(i, nom::error::ErrorKind::Tag))) } else { Ok((i, ask)) }
}

pub(super) fn write_value(value: Value) -> String {
    match value {
        Value::Length(l) => exact_phrase(l),
        Value::Count(n) => n.to_string(),
        Value::Number(q) | Value::Quantity(q, _) => mixed_number(q),
        Value::Money(m) => mixed_number(crate::measure::q_from_decimal(m).unwrap_or_default()),
    }
}

/// Reads what [`write_row`] writes, and the "?" behind it.
pub(super) fn read_row(i: &str) -> Read<'_, RowAsk> {
    map_parser(map_opt(rest, |line: &str| line.strip_suffix('?')), all_consuming(read_ask)).parse(i)
}

fn read_ask(i: &str) -> Read<'_, RowAsk> {
    let (i, mood) = one_of(MOODS)(i)?;
    let (i, first) = read_name(i)?;
    let lead = words_of(MOODS, mood);
    let more = preceded(pair(tag("; "), tag(lead)), read_name);
    let push = |mut wants: Vec<RowId>, want| {
        wants.push(want);
        wants
    };
    let (i, wants) = fold_many_m_n(0, RowAsk::MOST - 1, more, move || vec![first], push).parse(i)?;
    let (i, given) = many0(preceded(tag("; with "), read_given)).parse(i)?;
    let (i, supposed) = many0(preceded(tag("; if "), read_fact)).parse(i)?;
    Ok((i, RowAsk { wants, mood, given, supposed }))
}

/// The row of the longest name the text begins with; "gap" is not the "gap under".
pub(super) fn read_name(i: &str) -> Read<'_, RowId> {
    let fits = ROWS.iter().filter(|r| i.starts_with(r.name)).max_by_key(|r| r.name.len());
    match fits {
        Some(row) => Ok((&i[row.name.len()..], row.id)),
        None => Err(nom::Err::Error(nom::error::Error::new(i, nom::error::ErrorKind::Tag))),
    }
}

/// A row's name and a value of its kind.
pub(super) fn read_given(i: &str) -> Read<'_, (RowId, Value)> {
    let (i, row) = read_name(i)?;
    let (i, _) = tag(" ").parse(i)?;
    let (i, value) = match row.row().kind {
        Kind::Length => map(read_length, Value::Length).parse(i)?,
        Kind::Count => map(whole, Value::Count).parse(i)?,
        Kind::Angle => map(read_number, |q| Value::Quantity(q, Unit::Degrees)).parse(i)?,
        Kind::Force => map(read_number, |q| Value::Quantity(q, Unit::Pounds)).parse(i)?,
        Kind::Money => map_opt(read_number, |q| crate::quantity::money(q).map(Value::Money)).parse(i)?,
        Kind::Number | Kind::Percent => map(read_number, Value::Number).parse(i)?,
        Kind::Lumber | Kind::Place | Kind::Choice | Kind::Text => {
            return Err(nom::Err::Error(nom::error::Error::new(i, nom::error::ErrorKind::Tag)));
        }
    };
    Ok((i, (row, value)))
}

#[cfg(test)]
mod tests {
    use crate::figure::Value;
    use crate::grammar::ask::RowAsk;
    use crate::grammar::canon::{read, write};
    use crate::grammar::{Act, Query};
    use crate::measure::Length;
    use crate::quantity::{Kind, ROWS};

    #[test]
    fn every_row_asked_for_is_read_again() {
        for want in ROWS {
            let given = ROWS.iter().filter_map(|r| match r.kind {
                Kind::Length => Some((r.id, Value::Length(Length::sixteenths(r.usual.0.max(3))))),
                Kind::Count => Some((r.id, Value::Count(7))),
                Kind::Percent => Some((r.id, Value::Number(5.into()))),
                _ => None,
            });
            for given in given.filter(|(r, _)| *r != want.id).map(|g| vec![g]).chain([Vec::new()]) {
                let act = Act::Query(Query::Row(RowAsk::figure(want.id, given)));
                let phrase = write(&act);
                assert_eq!(read(&phrase), Some(act), "{phrase}");
            }
        }
    }
}
