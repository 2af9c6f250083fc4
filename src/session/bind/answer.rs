//! A short line that gives the last question what it still needed: "58", or "the bay is 58".

use super::About;
use super::value::{Premise, ways};
use crate::grammar::ask::RowAsk;
use crate::grammar::scores::{Is, Line};
use crate::grammar::{Act, Query};
use crate::provide;
use crate::quantity::RowId;
use crate::solve::Given;

/// Words that may stand beside the figure of such a line.
const LIGHT: &[&str] = &["it", "is", "'s", "its", "the", "a", "about", "that", ".", ","];

/// Sets of rows each of which the last question still needs; none where it was answered.
pub(super) fn lacking(about: &About<'_>) -> Vec<Vec<RowId>> {
    let Some((ask, want)) = about.asked.and_then(|a| Some((a, a.wants.first()?))) else { return Vec::new() };
    let Ok(job) = about.job.with_all(&ask.supposed) else { return Vec::new() };
    provide::ask(*want, &Given::of(ask.given.iter().copied()), &job).err().map(|lacks| lacks.0).unwrap_or_default()
}

/// The last question asked again with the line's only figure for a row it needed, one act for each row that would take it.
pub(super) fn filled(about: &About<'_>, line: &Line) -> Vec<Act> {
    let mut figures = line.items.iter().filter(|i| i.is == Is::Value);
    let (Some(item), None, Some(ask)) = (figures.next(), figures.next(), about.asked) else { return Vec::new() };
    if line.tokens.iter().any(|t| t.value.is_none() && !LIGHT.contains(&t.stem.as_str())) {
        return Vec::new();
    }
    let mut rows: Vec<RowId> = lacking(about).into_iter().filter(|set| set.len() == 1).flatten().collect();
    rows.dedup();
    let given = |row: RowId| match ways(row, line, item.at).into_iter().next()? {
        (_, Premise::Row(row, value)) => Some((row, value)),
        _ => None,
    };
    let again = |g| RowAsk { given: ask.given.iter().copied().chain([g]).collect(), ..ask.clone() };
    rows.into_iter().filter_map(given).map(|g| Act::Query(Query::Row(again(g)))).collect()
}
