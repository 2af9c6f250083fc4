//! Posts and bays of the job as laid out.

use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::layout::{Bay, clear_max, lay_out, line_inside};
use crate::measure::Length;
use crate::quantity::RowId::{
    self, BayCentre, BayClear, BayCount, CentreMax, ClearMax, GuardTotal, Line, Overhang, PostCount, PostWidth, Rim,
    Skirt,
};
use crate::solve::Provider;

const SPLIT: &[RowId] = &[CentreMax, ClearMax, PostWidth];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: PostCount, needs: SPLIT, give: posts },
    Provider { gives: BayCount, needs: SPLIT, give: bays },
    Provider { gives: BayClear, needs: SPLIT, give: longest_clear },
    Provider { gives: BayCentre, needs: SPLIT, give: longest_centre },
    Provider { gives: ClearMax, needs: SPLIT, give: clear_max },
    Provider { gives: GuardTotal, needs: &[], give: guard },
    Provider { gives: Line, needs: &[Overhang, Skirt, Rim, PostWidth], give: |job| line_inside(&job.settings).ok() },
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

fn longest_clear(job: &Job) -> Option<Fig> {
    lay_out(job).longest_bay().cloned()
}

fn longest_centre(job: &Job) -> Option<Fig> {
    all_bays(job).into_iter().filter_map(|b| b.centre).max_by_key(Fig::as_length)
}

fn guard(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let runs: Vec<(&'static str, Fig)> =
        layout.runs.iter().filter_map(|r| r.result.as_ref().ok().map(|p| ("run", p.length.clone()))).collect();
    let sum: Length = runs.iter().filter_map(|(_, f)| f.as_length()).sum();
    (!runs.is_empty()).then(|| Fig::length(sum, Why::Formula("all runs together", runs)))
}
