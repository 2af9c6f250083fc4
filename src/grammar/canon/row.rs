//! A row asked for.
//!
//! ```text
//! row  = "figure: " name *("; with " name " " value)
//! name = a row's name, the longest that fits      value = inches | n | number, by the row's kind
//! ```

use super::Read;
use super::length::{read_length, read_number};
use super::words::whole;
use crate::figure::{Unit, Value};
use crate::grammar::ask::RowAsk;
use crate::measure::{exact_phrase, mixed_number};
use crate::quantity::{Kind, ROWS, RowId};
use nom::Parser;
use nom::bytes::complete::tag;
use nom::combinator::{map, map_opt};
use nom::multi::many0;
use nom::sequence::preceded;

pub(super) fn write_row(ask: &RowAsk) -> String {
    let given = ask.given.iter().map(|(row, value)| format!("; with {} {}", row.row().name, write_value(*value)));
    format!("figure: {}{}", ask.want.row().name, given.collect::<String>())
}

fn write_value(value: Value) -> String {
    match value {
        Value::Length(l) => exact_phrase(l),
        Value::Count(n) => n.to_string(),
        Value::Number(q) | Value::Quantity(q, _) => mixed_number(q),
        Value::Money(m) => mixed_number(crate::measure::q_from_decimal(m).unwrap_or_default()),
    }
}

/// Reads what [`write_row`] writes.
pub(super) fn read_row(i: &str) -> Read<'_, RowAsk> {
    let given = many0(preceded(tag("; with "), read_given));
    map((preceded(tag("figure: "), read_name), given), |(want, given)| RowAsk { want, given }).parse(i)
}

/// The row of the longest name the text begins with; "gap" is not the "gap under".
fn read_name(i: &str) -> Read<'_, RowId> {
    let fits = ROWS.iter().filter(|r| i.starts_with(r.name)).max_by_key(|r| r.name.len());
    match fits {
        Some(row) => Ok((&i[row.name.len()..], row.id)),
        None => Err(nom::Err::Error(nom::error::Error::new(i, nom::error::ErrorKind::Tag))),
    }
}

fn read_given(i: &str) -> Read<'_, (RowId, Value)> {
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
                let act = Act::Query(Query::Row(RowAsk { want: want.id, given }));
                let phrase = write(&act);
                assert_eq!(read(&phrase), Some(act), "{phrase}");
            }
        }
    }
}
