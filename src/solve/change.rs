//! A row as it becomes when another changes and all else stays: "the pickets are 31 at 36 high; and at 42?"

use super::{Given, Solved, Source, known};
use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::measure::Q;
use crate::quantity::{Owner, RowId, relations, value};
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul};

/// Sums are followed so far from the row that changes to the one asked.
const STEPS: usize = 4;

/// What was told of the row asked, and by how much it moves with what is said anew. `None` where nobody told it, it is no sum of what
/// changes nor so many times it, or it would come out below nothing.
pub(super) fn changed(want: RowId, given: &Given, job: &Job) -> Option<Solved> {
    let stood = given.get(want).cloned().or_else(|| Source::told(job, want))?;
    let (mut now, mut named, mut used) = (stood.as_q(), vec![(want.row().name, stood.clone())], Vec::new());
    let mut defaults = Vec::new();
    for row in given.rows().filter(|row| *row != want) {
        let before = given.before(row).cloned().or_else(|| Source::told(job, row));
        // What was told before stood with what is usual, where nobody said otherwise.
        let usual = || known::default(job, row).filter(|_| given.get(want).is_none());
        let Some((was, is)) = before.clone().or_else(usual).zip(given.get(row)) else { continue };
        let Some(then) = moved(want, row, now, &was, is, given).filter(|_| was.as_q() != is.as_q()) else { continue };
        now = then;
        defaults.extend(before.is_none().then_some(row));
        named.extend([(row.row().name, was), (row.row().name, is.clone())]);
        used.push(row);
    }
    let value = value(want, now, stood.as_length().is_some_and(|l| !l.is_exact()))?;
    let why =
        Why::Formula("what it was, and what changed of what it is made up of, all else the same: was, then is", named);
    used.extend(given.get(want).map(|_| want));
    let moves = used.iter().any(|row| *row != want);
    moves.then(|| Solved { used, defaults, ..Solved::plain(Fig::new(value, why)) })
}

/// True where a row is a sum of another, at however many steps.
pub fn hangs_on(want: RowId, of: RowId) -> bool {
    want != of && slope(want, of).is_some()
}

/// By how much a length moves with another that it is a sum of, all else the same, whatever it is itself; `None` where it is no sum of it.
pub fn moves_by(want: RowId, of: RowId, was: &Fig, is: &Fig) -> Option<Fig> {
    was.as_length().zip(is.as_length())?;
    let by = (is.as_q() - was.as_q()).checked_mul(&slope(want, of)?)?;
    let by = crate::measure::Length::from_q(by).filter(|l| !l.is_zero())?;
    let name = of.row().name;
    let why = Why::Formula(
        "what changed of what it is made up of: was, then is",
        vec![(name, was.clone()), (name, is.clone())],
    );
    Some(Fig::length(by, why))
}

/// What a row comes to when one it hangs on changes.
fn moved(want: RowId, row: RowId, now: Q, was: &Fig, is: &Fig, given: &Given) -> Option<Q> {
    if let Some(slope) = slope(want, row) {
        return now.checked_add(&(is.as_q() - was.as_q()).checked_mul(&slope)?);
    }
    // So many times the row: it stays in step with it, unless what it is times is said too.
    let other = relations().find_map(|r| r.other_factor(want, row))?;
    given.get(other).is_none().then_some(())?;
    now.checked_mul(&is.as_q())?.checked_div(&was.as_q())
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
