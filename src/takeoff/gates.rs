//! What a gate adds to the parts: the balusters of its leaves.

use super::balusters::baluster_fig;
use super::bays::Where;
use crate::gate::{Leaf, LeafTold, gap, leaf};
use crate::job::{Gate, Hung, Job};
use crate::layout::{BayKind, Layout, Placed};
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::solve::told_length;

/// The balusters of every gate's leaves, and where they hang; a gate whose leaves cannot be made or
/// filled is given with none.
pub fn leaf_balusters(job: &Job, layout: &Layout) -> Vec<(Option<u32>, Where)> {
    let mut all = Vec::new();
    for run in &layout.runs {
        let (Some(gate), Ok(placed)) = (job.run(run.id).and_then(|r| r.gate), &run.result) else { continue };
        let at = Where::Run(run.id, run.part);
        all.extend(openings(placed).into_iter().map(|opening| (count(job, gate, opening, layout.tape), at)));
    }
    all
}

/// The openings leaves hang in, in this stretch.
fn openings(placed: &Placed) -> Vec<Length> {
    if let Some(beyond) = placed.beyond.as_ref().and_then(|f| f.as_length()) {
        return vec![beyond];
    }
    let gates = placed.bays.iter().filter(|b| matches!(b.kind, BayKind::Gate | BayKind::GatedStairs));
    gates.map(|b| b.clear_length()).collect()
}

/// A gate's leaf as told, in an opening so wide; `None` where it does not go.
pub fn leaf_in(job: &Job, gate: Gate, opening: Length) -> Option<Leaf> {
    leaf(&leaf_told(job, gate.hung, vec![opening])).ok()
}

/// What is told of a gate's leaf, for openings so wide: its own gaps, else those told of gates by themselves.
pub fn leaf_told(job: &Job, hung: Hung, openings: Vec<Length>) -> LeafTold {
    LeafTold {
        openings,
        hinge_gap: hung.hinge_gap.or_else(|| told_length(job, RowId::HingeGap)),
        latch_gap: hung.latch_gap.or_else(|| told_length(job, RowId::LatchGap)),
        stile: None,
        leaf: hung.leaf,
        leaves: hung.leaves,
    }
}

fn count(job: &Job, gate: Gate, opening: Length, tape: Tape) -> Option<u32> {
    let leaf = leaf_in(job, gate, opening)?;
    let (each, _) = leaf.balusters(&baluster_fig(job), &gap::level(job), tape)?;
    Some(u32::try_from(each.as_q().to_integer()).ok()? * u32::from(leaf.leaves))
}
