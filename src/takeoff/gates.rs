//! What a gate adds to the parts: the balusters of its leaf.

use super::balusters::{baluster_fig, gap_limit_fig};
use super::bays::Where;
use crate::gate::{LeafTold, leaf};
use crate::job::{Gate, Job};
use crate::layout::{BayKind, Layout, Placed};
use crate::measure::{Length, Tape};

/// The balusters of every single leaf, and where it hangs. Two leaves are left out: how their middle
/// gap is made was not told.
pub fn leaf_balusters(job: &Job, layout: &Layout) -> Vec<(u32, Where)> {
    let laid = layout.runs.iter().filter_map(|run| {
        let gate = job.run(run.id)?.gate.filter(|g| g.hung.leaves != Some(2))?;
        let opening = opening(run.result.as_ref().ok()?)?;
        Some((count(job, gate, opening, layout.tape)?, Where::Run(run.id, run.part)))
    });
    laid.collect()
}

/// The opening a gate hangs in, in this stretch.
fn opening(placed: &Placed) -> Option<Length> {
    let bay = placed.bays.iter().find(|b| matches!(b.kind, BayKind::Gate | BayKind::GatedStairs));
    placed.beyond.as_ref().and_then(|f| f.as_length()).or(bay.map(|b| b.clear_length()))
}

fn count(job: &Job, gate: Gate, opening: Length, tape: Tape) -> Option<u32> {
    let told = LeafTold {
        openings: vec![opening],
        hinge_gap: gate.hung.hinge_gap,
        latch_gap: gate.hung.latch_gap,
        stile: None,
        leaf: gate.hung.leaf,
    };
    let (count, _) = leaf(&told).ok()?.balusters(&baluster_fig(job), &gap_limit_fig(job), tape)?;
    u32::try_from(count.as_q().to_integer()).ok()
}
