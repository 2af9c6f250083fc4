//! A row as it becomes when another changes and all else stays: "the pickets are 31 at 36 high; and at 42?"

use super::{Given, Solved, Source};
use crate::figure::{Fig, Value, Why};
use crate::job::Job;
use crate::measure::{Length, Q};
use crate::quantity::{Owner, RowId, relations};
use num_traits::{CheckedAdd, CheckedMul};

/// Sums are followed so far from the row that changes to the one asked.
const STEPS: usize = 4;

/// What was told of the row asked, and by how much it moves with what is said anew. `None` where nobody told it, nothing it is a sum
/// of changes, or it would come out below nothing.
pub(super) fn changed(want: RowId, given: &Given, job: &Job) -> Option<Solved> {
    let stood = given.get(want).cloned().or_else(|| Source::told(job, want))?;
    let (mut now, mut named, mut used) = (stood.as_q(), vec![(want.row().name, stood.clone())], Vec::new());
    for row in given.rows().filter(|row| *row != want) {
        let (Some(was), Some(is)) = (given.before(row).cloned().or_else(|| Source::told(job, row)), given.get(row))
        else {
            continue;
        };
        let Some(slope) = slope(want, row).filter(|_| was.as_q() != is.as_q()) else { continue };
        now = now.checked_add(&(is.as_q() - was.as_q()).checked_mul(&slope)?)?;
        named.extend([(row.row().name, was), (row.row().name, is.clone())]);
        used.push(row);
    }
    let value = Value::Length(Length::from_q(now)?);
    let why =
        Why::Formula("what it was, and what changed of what it is a sum of, all else the same: was, then is", named);
    used.extend(given.get(want).map(|_| want));
    (used.iter().any(|row| *row != want) && now >= Q::from_integer(0)).then(|| Solved {
        engines: Vec::new(),
        fig: Fig::new(value, why),
        used,
        defaults: Vec::new(),
    })
}

/// How the row asked moves with another, through at most [`STEPS`] sums, the fewest first.
fn slope(want: RowId, of: RowId) -> Option<Q> {
    let mut seen = vec![(want, Q::from_integer(1))];
    let mut last = 0;
    for _ in 0..STEPS {
        let from = std::mem::replace(&mut last, seen.len());
        let edge: Vec<(RowId, Q)> = seen[from..].to_vec();
        for (row, slope) in edge {
            for (next, step) in steps(row) {
                if next == of {
                    return slope.checked_mul(&step);
                }
                if !seen.iter().any(|(r, _)| *r == next) {
                    seen.push((next, slope.checked_mul(&step)?));
                }
            }
        }
    }
    None
}

/// The rows one is a sum of. A post's width, a run and a bay hang together in more than one way: what else would stay is not said.
fn steps(row: RowId) -> Vec<(RowId, Q)> {
    let stays = |r: RowId| r != RowId::PostWidth && !matches!(r.row().owner, Owner::Run | Owner::Bay);
    if !stays(row) {
        return Vec::new();
    }
    let rows = relations().flat_map(|r| r.ways().into_iter().filter(move |w| w.gives == row));
    let others = rows.flat_map(|w| w.from.clone().into_iter().map(move |i| (w.relation, i.row())));
    others.filter(|(_, r)| stays(*r)).filter_map(|(relation, r)| Some((r, relation.slope(row, r)?))).collect()
}
