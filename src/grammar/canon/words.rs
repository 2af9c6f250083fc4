//! Tables of words, used in both directions: the writer looks a value up, the reader a word.

use super::Read;
use nom::Err::Error;
use nom::bytes::complete::tag;
use nom::character::complete::digit1;
use nom::combinator::map_opt;
use nom::error::{Error as At, ErrorKind};
use nom::{Parser, sequence::terminated};

/// A value and the words it is written in.
pub(super) type Table<T> = [(T, &'static str)];

/// The words of a value.
pub(super) fn words_of<T: PartialEq>(table: &Table<T>, value: T) -> &'static str {
    // Every table has a row for each value of its type; the golden phrases go through all of them.
    table.iter().find(|(v, _)| *v == value).map_or("", |(_, words)| words)
}

/// The value whose words come next. The longest wins, so that "feet and inches" is not "feet".
pub(super) fn one_of<T: Copy>(table: &Table<T>) -> impl Fn(&str) -> Read<'_, T> {
    move |i| {
        let fits = table.iter().filter(|(_, words)| i.starts_with(words));
        let (value, words) = fits.max_by_key(|(_, words)| words.len()).ok_or(Error(At::new(i, ErrorKind::Alt)))?;
        Ok((&i[words.len()..], *value))
    }
}

/// A whole number that fits its type.
pub(super) fn whole<N: std::str::FromStr>(i: &str) -> Read<'_, N> {
    map_opt(digit1, |digits: &str| digits.parse().ok()).parse(i)
}

/// `3 bays`, `1 bay`.
pub(super) fn write_count(n: u64, thing: &str) -> String {
    format!("{n} {thing}{}", if n == 1 { "" } else { "s" })
}

/// Reads what [`write_count`] writes.
pub(super) fn read_count<N: std::str::FromStr>(thing: &'static str) -> impl Fn(&str) -> Read<'_, N> {
    move |i| {
        let (i, n) = terminated(whole, (tag(" "), tag(thing))).parse(i)?;
        Ok((i.strip_prefix('s').unwrap_or(i), n))
    }
}
