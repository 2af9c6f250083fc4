//! Posts and bays of the job as laid out.

use crate::figure::{Fig, Why};
use crate::job::{Job, RunId};
use crate::layout::{Bay, Placed, clear_max, lay_out, line_inside};
use crate::measure::Length;
use crate::quantity::RowId::{
    self, BayCentre, BayClear, BayCount, CentreMax, ClearMax, Flank, GuardTotal, Line, Overhang, PostCount, PostWidth,
    PostsBetween, Rim, RunLength, Skirt,
};
use crate::solve::Provider;

const SPLIT: &[RowId] = &[CentreMax, ClearMax, PostWidth];

/// What a layout settles: how long a run is, in how many bays of what length.
const LAID: &[RowId] = &[
    RowId::RunLength,
    RowId::RunOverall,
    RowId::RunClear,
    RowId::RunCentre,
    RowId::Flank,
    RowId::BaysTold,
    PostsBetween,
    RowId::PostAt,
    RowId::PostMark,
    PostCount,
    BayCount,
    BayClear,
    BayCentre,
    RowId::PostMoved,
    RowId::PostOver,
    RowId::KeptSides,
];

/// What a layout settles of a bay, and a leaf's stile: beside it the bay asked for is what the leaf's balusters stand in.
const BAY: &[RowId] = &[BayCount, BayCentre, RowId::Stile];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: PostCount, needs: SPLIT, settles: LAID, give: posts },
    Provider { gives: BayCount, needs: SPLIT, settles: LAID, give: bays },
    Provider { gives: PostsBetween, needs: SPLIT, settles: LAID, give: between },
    Provider { gives: BayClear, needs: SPLIT, settles: BAY, give: longest_clear },
    Provider { gives: BayCentre, needs: SPLIT, settles: LAID, give: longest_centre },
    Provider { gives: ClearMax, needs: SPLIT, settles: &[], give: clear_max },
    Provider { gives: GuardTotal, needs: &[], settles: LAID, give: guard },
    Provider { gives: RunLength, needs: &[], settles: LAID, give: only_run },
    Provider { gives: Flank, needs: &[], settles: LAID, give: flank },
    Provider {
        gives: Line,
        needs: &[Overhang, Skirt, Rim, PostWidth],
        settles: &[],
        give: |job| line_inside(&job.settings).ok(),
    },
];

fn all_bays(job: &Job) -> Vec<Bay> {
    let layout = lay_out(job);
    let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    placed.flat_map(|p| p.rail_bays().cloned().collect::<Vec<_>>()).collect()
}

fn posts(job: &Job) -> Option<Fig> {
    let n = u64::try_from(lay_out(job).distinct_posts()).ok().filter(|n| *n > 0)?;
    Some(Fig::count(n, Why::Formula("posts as laid out, a shared one once", Vec::new())))
}

fn bays(job: &Job) -> Option<Fig> {
    let n = u64::try_from(all_bays(job).len()).ok().filter(|n| *n > 0)?;
    Some(Fig::count(n, Why::Formula("bays as laid out", Vec::new())))
}

/// The posts that part the bays of the one run, where nothing else parts it.
fn between(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let [run] = &layout.runs[..] else { return None };
    let placed = run.result.as_ref().ok().filter(|p| p.rail_bays().count() == p.bays.len())?;
    let n = u64::try_from(placed.bays.len()).ok()?.checked_sub(1)?;
    Some(Fig::count(n, Why::Formula("one less than the bays as laid out", Vec::new())))
}

fn longest_clear(job: &Job) -> Option<Fig> {
    lay_out(job).longest_bay().cloned()
}

fn longest_centre(job: &Job) -> Option<Fig> {
    all_bays(job).into_iter().filter_map(|b| b.centre).max_by_key(Fig::as_length)
}

/// All runs, what stairs and gates take of each left out.
fn guard(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let runs: Vec<(&'static str, Fig)> = layout
        .runs
        .iter()
        .filter_map(|r| Some((r.id, r.result.as_ref().ok()?)))
        .map(|(id, p)| ("run", opened(job, id, p)))
        .collect();
    let sum: Length = runs.iter().filter_map(|(_, f)| f.as_length()).sum();
    (!runs.is_empty()).then(|| Fig::length(sum, Why::Formula("all runs together, openings left out", runs)))
}

/// How long the one run is; none where there are several, which are asked for one by one.
fn only_run(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let mut placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    placed.next().filter(|_| placed.next().is_none()).map(|p| p.length.clone())
}

/// What the stairs and the gate of a run leave of it.
fn opened(job: &Job, id: RunId, placed: &Placed) -> Fig {
    let run = job.runs.iter().find(|r| r.id == id);
    let gate = run.and_then(|r| r.gate).filter(|_| placed.beyond.is_none()).and_then(|g| g.width);
    let stairs = run.iter().flat_map(|r| r.stairs.iter()).map(|s| s.width);
    let open: Length = stairs.chain(gate).sum();
    match placed.length.as_length() {
        Some(all) if open.is_positive() && all > open => {
            let from = vec![("run", placed.length.clone()), ("opening", Fig::told(open, "the openings"))];
            Fig::length(all - open, Why::Formula("the run less its openings", from))
        }
        _ => placed.length.clone(),
    }
}

/// What is left of the one run with an opening: on both sides alike, or on its one side.
fn flank(job: &Job) -> Option<Fig> {
    let pieces = flanks(job)?;
    let first = pieces.first()?;
    pieces.iter().all(|p| p.as_length() == first.as_length()).then(|| first.clone())
}

/// What is left of the one run with an opening, from its left end on; `None` where no run has one, or several have.
pub fn flanks(job: &Job) -> Option<Vec<Fig>> {
    let layout = lay_out(job);
    let mut all = layout.runs.iter().filter_map(|r| Some((r.id, r.result.as_ref().ok()?)));
    let mut open = all.by_ref().filter_map(|(id, p)| beside(job, id, p));
    open.next().filter(|_| open.next().is_none())
}

/// What is left of a run beside its opening, nothing long left out; `None` for a run without one.
fn beside(job: &Job, id: RunId, placed: &Placed) -> Option<Vec<Fig>> {
    if let Some(flanks) = &placed.flanks {
        return Some(flanks.iter().filter(|f| f.as_length().is_some_and(Length::is_positive)).cloned().collect());
    }
    let rest = opened(job, id, placed);
    (rest.as_length() != placed.length.as_length()).then(|| vec![rest])
}
