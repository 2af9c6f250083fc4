//! A count of bays or posts as a premise, where the job has runs: what is laid out stands on another count, and the two never mix.

use crate::figure::Value;
use crate::grammar::ask::RowAsk;
use crate::job::{Fact, Job, RunPatch};
use crate::quantity::RowId;

/// Counts a layout stands on.
const COUNTS: [RowId; 3] = [RowId::BayCount, RowId::PostCount, RowId::PostsBetween];

/// How long a run is, as a premise.
const RUNS: [RowId; 4] = [RowId::RunLength, RowId::RunOverall, RowId::RunClear, RowId::RunCentre];

/// The job and the question to answer from: bays given for the one run there is are laid out in it; beside any other count the solver
/// leaves the layout's figures out.
pub(super) fn settled(job: Job, ask: &RowAsk) -> (Job, RowAsk) {
    let given = |rows: &[RowId]| ask.given.iter().filter(|(row, _)| rows.contains(row)).count();
    let alone = given(&COUNTS) == 1 && given(&RUNS) == 0;
    let Some(laid) = laid_out(&job, ask).filter(|_| alone) else { return (job, ask.clone()) };
    let rest = ask.given.iter().copied().filter(|(row, _)| *row != RowId::BayCount).collect();
    (laid, RowAsk { given: rest, ..ask.clone() })
}

/// The one run in so many bays.
fn laid_out(job: &Job, ask: &RowAsk) -> Option<Job> {
    let [run] = &job.runs[..] else { return None };
    let bays = ask.given.iter().find(|(row, _)| *row == RowId::BayCount).map(|(_, value)| *value);
    let Some(Value::Count(n)) = bays else { return None };
    let patch = RunPatch { bays: Some(Some(u16::try_from(n).ok()?)), ..RunPatch::default() };
    job.with(&Fact::Run(run.id, patch)).ok()
}
