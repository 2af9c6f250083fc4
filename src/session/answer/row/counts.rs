//! A count of bays or posts as a premise, where the job has runs: what is laid out stands on another count, and the two never mix.

use crate::figure::Value;
use crate::grammar::ask::RowAsk;
use crate::job::{Fact, Gate, Job, Run, RunPatch, StairOpening};
use crate::quantity::RowId;

/// Counts a layout stands on.
const COUNTS: [RowId; 3] = [RowId::BayCount, RowId::PostCount, RowId::PostsBetween];

/// How long a run is, as a premise.
const RUNS: [RowId; 4] = [RowId::RunLength, RowId::RunOverall, RowId::RunClear, RowId::RunCentre];

/// The job and the question to answer from: bays given for the one run there is are laid out in it; beside any other count the solver
/// leaves the layout's figures out.
pub(in crate::session) fn settled(job: Job, ask: &RowAsk) -> (Job, RowAsk) {
    let (job, ask) = opened(job, ask);
    let ask = &ask;
    let given = |rows: &[RowId]| ask.given.iter().filter(|(row, _)| rows.contains(row)).count();
    // Posts that a word is asked on are held beside those of the run as it stands.
    let own = ask.given.iter().any(|(row, _)| *row != RowId::BayCount && ask.wants.contains(row));
    let alone = !own && given(&COUNTS) == 1 && given(&RUNS) == 0;
    let Some(laid) = laid_out(&job, ask).filter(|_| alone) else { return (job, ask.clone()) };
    let rest = ask.given.iter().copied().filter(|(row, _)| !COUNTS.contains(row)).collect();
    (laid, RowAsk { given: rest, ..ask.clone() })
}

/// The one opening of the one run as wide as the question gives it; a run given in the question has openings of its own.
fn opened(job: Job, ask: &RowAsk) -> (Job, RowAsk) {
    let own = ask.given.iter().any(|(row, _)| RUNS.contains(row) || *row == RowId::DeckAlong);
    let fact = |(row, value): &(RowId, Value)| opening(&job, *row, *value).filter(|_| !own).map(|fact| (*row, fact));
    let all: Vec<(RowId, Fact)> = ask.given.iter().filter_map(fact).collect();
    let [(row, fact)] = &all[..] else { return (job, ask.clone()) };
    let Ok(laid) = job.with(fact) else { return (job, ask.clone()) };
    let rest = ask.given.iter().copied().filter(|(r, _)| r != row).collect();
    (laid, RowAsk { given: rest, ..ask.clone() })
}

/// The one run with its stairs or its gate so wide; `None` where it has none or several.
fn opening(job: &Job, row: RowId, value: Value) -> Option<Fact> {
    let ([run], Value::Length(width)) = (&job.runs[..], value) else { return None };
    let patch = match row {
        RowId::StairWidth => {
            let one = *run.stairs.only().filter(|s| s.measure.is_none())?;
            let mut stairs = run.stairs.clone();
            stairs.put(0, StairOpening { width, ..one });
            RunPatch { stairs: Some(stairs), ..RunPatch::default() }
        }
        RowId::GateWidth | RowId::GateOpening => {
            let gate = Gate { width: Some(width), ..run.gate? };
            RunPatch { gate: Some(Some(gate)), ..RunPatch::default() }
        }
        _ => return None,
    };
    Some(Fact::Run(run.id, patch))
}

/// The one run in so many bays.
fn laid_out(job: &Job, ask: &RowAsk) -> Option<Job> {
    let [run] = &job.runs[..] else { return None };
    let facts = ask.given.iter().filter_map(|(row, value)| bays_of(run, *row, *value)).next()?;
    job.with(&facts).ok()
}

/// A count of bays, or of posts in a plain run, as so many bays of it.
fn bays_of(run: &Run, row: RowId, value: Value) -> Option<Fact> {
    let Value::Count(n) = value else { return None };
    let plain = run.gate.is_none() && run.stairs.is_empty();
    let bays = match row {
        RowId::BayCount => n,
        RowId::PostCount if plain => n.checked_sub(1).filter(|n| *n > 0)?,
        RowId::PostsBetween if plain => n.checked_add(1)?,
        _ => return None,
    };
    let patch = RunPatch { bays: Some(Some(u16::try_from(bays).ok()?)), ..RunPatch::default() };
    Some(Fact::Run(run.id, patch))
}

/// What "keep it" tells of what a question gave: bays and posts are told of the one run there is, where it was that run's.
pub(in crate::session) fn to_keep(job: &Job, ask: &RowAsk) -> Vec<Fact> {
    let own = ask.given.iter().any(|(row, _)| RUNS.contains(row));
    let run = if let [run] = &job.runs[..] { Some(run).filter(|_| !own) } else { None };
    let fact = |(row, value): &(RowId, Value)| {
        run.and_then(|run| bays_of(run, *row, *value)).or_else(|| Fact::of(*row, *value))
    };
    ask.given.iter().filter_map(fact).chain(ask.supposed.iter().cloned()).collect()
}
