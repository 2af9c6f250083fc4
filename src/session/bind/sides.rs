//! The sides of a deck that are told to have a guard, and those told to have none.

use super::readings::{Filled, Reading};
use crate::grammar::scores::How;
use crate::job::{Fact, Job};
use crate::quantity::RowId;

/// Sides by name, and the items that name them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Sides {
    /// Those with a guard.
    pub kept: Vec<String>,
    /// Those without.
    pub open: Vec<String>,
    /// The items with a part in it.
    pub items: Vec<usize>,
}

/// "Guard the front and the left, no rail on the right".
pub(super) fn sides(reading: &Reading<'_>) -> Sides {
    let mut sides = Sides::default();
    let mut guarded: Option<(usize, bool)> = None;
    for (n, filled) in reading.filled.iter().enumerate() {
        match (filled.row, guarded) {
            (Some(RowId::Guarded), _) => {
                let none = filled.how == How::Nothing;
                let before = n.checked_sub(1).filter(|b| none && !sides.items.contains(b));
                // "the right has none": the side stands before it.
                match before.and_then(|b| Some((b, name(&reading.filled[b])?))) {
                    Some((b, side)) if reading.filled.get(n + 1).is_none_or(|f| name(f).is_none()) => {
                        sides.open.push(side);
                        sides.items.extend([b, n]);
                    }
                    _ => guarded = Some((n, !none)),
                }
            }
            (Some(RowId::RunName), Some((at, has))) => {
                let Some(side) = name(filled) else { continue };
                if has { &mut sides.kept } else { &mut sides.open }.push(side);
                sides.items.extend([at, n]);
            }
            _ => guarded = None,
        }
    }
    // "... right's against a garage": why a side is not among those kept, and the guard named again.
    if !sides.kept.is_empty() {
        let again = |f: &Filled<'_>| match f.row {
            Some(RowId::Guarded) => f.how == How::Named,
            _ => name(f).is_some_and(|side| !sides.kept.contains(&side)),
        };
        let again: Vec<usize> = (0..reading.filled.len()).filter(|n| again(&reading.filled[*n])).collect();
        sides.items.extend(again);
    }
    sides
}

fn name(filled: &Filled<'_>) -> Option<String> {
    filled.row.filter(|r| *r == RowId::RunName)?;
    match filled.how {
        How::Words(words) => Some(words.to_owned()),
        How::Set => filled.word.map(str::to_owned),
        _ => None,
    }
}

/// The sides told to have no guard go; `None` where one of them is not there.
pub(super) fn without(job: &Job, open: &[String]) -> Option<Vec<Fact>> {
    open.iter().map(|name| job.named(name).map(|run| Fact::DropRun(run.id))).collect()
}
