//! The one gate of the job.

use crate::figure::Fig;
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{self, GateOpening, GateWidth, HingeGap, LatchGap, Leaf, LeafGap, Leaves, MiddleGap};
use crate::solve::{Provider, told_length};
use crate::takeoff::leaf_in;

/// What a gate's place in its run settles.
const LEAF: &[RowId] = &[GateWidth, GateOpening, Leaf, LeafGap, Leaves, HingeGap, LatchGap, MiddleGap];

pub(super) const PROVIDERS: &[Provider] = &[
    Provider { gives: GateOpening, needs: &[RowId::PostWidth], settles: LEAF, give: opening },
    Provider { gives: Leaf, needs: &[GateOpening, HingeGap, LatchGap], settles: LEAF, give: leaf_width },
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

/// One leaf of the one gate, in the opening told of gates, else the one laid out, else, where its run cannot be laid out yet, as wide as it was told; of two leaves, half of what they share.
fn leaf_width(job: &Job) -> Option<Fig> {
    let mut gates = job.runs.iter().filter_map(|r| r.gate);
    let gate = gates.next().filter(|_| gates.next().is_none())?;
    let wide = told_length(job, GateOpening).or_else(|| opening(job)?.as_length()).or(gate.width)?;
    leaf_in(job, gate, wide).map(|leaf| leaf.width)
}
