//! A deck at a house with both its outer corners cut off alike: five sides in place of three.

use super::readings::Reading;
use super::value::{Premise, corners_cut, ways};
use crate::figure::Value;
use crate::grammar::scores::{How, Line};
use crate::job::{Basis, Fact, Job, RunId, RunPatch, Told, Turn};
use crate::measure::Length;
use crate::quantity::RowId;

/// How far back each corner is cut, both ways alike; `None` where the line does not cut two corners so.
pub(super) fn clip(line: &Line, reading: &Reading<'_>) -> Option<Length> {
    let said = |row: RowId| reading.filled.iter().filter(move |f| f.row == Some(row) && f.how == How::Set);
    let value = |row: RowId, at: usize| match ways(row, line, at).into_iter().next()?.1 {
        Premise::Row(_, value) => Some(value),
        Premise::Fact(_) => None,
    };
    let square = |degrees: Value| matches!(degrees, Value::Quantity(q, _) if q == 45.into());
    let turns = said(RowId::Turn).all(|f| value(RowId::Turn, f.at).is_some_and(square));
    let two = corners_cut(line).is_some_and(|(_, n)| n == 2) && turns;
    let mut legs = said(RowId::CornerLeg);
    let leg = legs.next().filter(|_| two && legs.next().is_none())?;
    if let Value::Length(leg) = value(RowId::CornerLeg, leg.at)? { Some(leg) } else { None }
}

/// The rows that say no more than that both are cut so.
pub(super) fn is_of_clip(row: RowId) -> bool {
    matches!(row, RowId::CornerLeg | RowId::CutCorner | RowId::Turn)
}

/// The five sides of the deck told; `None` where the cuts take all of a side.
pub(super) fn sides(job: &Job, leg: Length) -> Option<Vec<Fact>> {
    let (along, out) = (job.deck_along?, job.deck_out?);
    let (front, side) = (along - leg * 2, out - leg);
    (front.is_positive() && side.is_positive() && job.runs.is_empty()).then_some(())?;
    // As exact as it is carried: what is told is written and read back.
    let cut = Length::diagonal(leg, leg).and_then(|l| Length::from_q(l.q()))?;
    let right = Turn::Right(45);
    let all = [
        (Some("left"), Turn::Start, side),
        (None, right, cut),
        (Some("front"), right, front),
        (None, right, cut),
        (Some("right"), right, side),
    ];
    let next = job.next_run().0;
    let fact = |(n, (name, turn, length)): (u32, (Option<&str>, Turn, Length))| {
        let (name, length) = (name.map(str::to_owned), Some(Told::plain(length)));
        Fact::Run(
            RunId(n),
            RunPatch { name, length, basis: Some(Basis::Edge), turn: Some(turn), ..RunPatch::default() },
        )
    };
    Some((next..).zip(all).map(fact).collect())
}
