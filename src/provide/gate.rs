//! The one gate of the job.

use crate::figure::Fig;
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{GateOpening, HingeGap, LatchGap, Leaf};
use crate::solve::Provider;
use crate::takeoff::leaf_in;

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: GateOpening, needs: &[], give: opening },
    Provider { gives: Leaf, needs: &[GateOpening, HingeGap, LatchGap], give: leaf_width },
];

/// The opening between the jambs of the one gate; none where there are several, which are asked for one by one.
fn opening(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    let bays: Vec<Fig> =
        placed.flat_map(|p| p.bays.iter().filter(|b| b.kind.is_gate()).map(|b| b.clear.clone())).collect();
    let [one] = &bays[..] else { return None };
    Some(one.clone())
}

/// One leaf of the one gate; of two leaves, half of what they share.
fn leaf_width(job: &Job) -> Option<Fig> {
    let mut gates = job.runs.iter().filter_map(|r| r.gate);
    let gate = gates.next().filter(|_| gates.next().is_none())?;
    leaf_in(gate, opening(job)?.as_length()?).map(|leaf| leaf.width)
}
