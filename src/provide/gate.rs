//! The one gate of the job.

use crate::figure::Fig;
use crate::gate::leaf::{LeafTold, leaf};
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::RowId::{GateOpening, HingeGap, LatchGap, Leaf};
use crate::solve::Provider;

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

fn leaf_width(job: &Job) -> Option<Fig> {
    let opening = opening(job)?.as_length()?;
    let mut gates = job.runs.iter().filter_map(|r| r.gate);
    let hung = gates.next().filter(|_| gates.next().is_none())?.hung;
    if hung.leaves == Some(2) {
        return None;
    }
    let told = LeafTold {
        openings: vec![opening],
        hinge_gap: hung.hinge_gap,
        latch_gap: hung.latch_gap,
        stile: None,
        leaf: None,
    };
    leaf(&told).ok().map(|l| l.width)
}
