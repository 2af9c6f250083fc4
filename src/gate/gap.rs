//! The gap limit in force: the one value that everything which spaces balusters, or judges a
//! gap, keeps to.

use super::pool::Barrier;
use crate::figure::{Fig, Why};
use crate::infill::HeldGap;
use crate::job::Job;
use crate::limits;
use crate::quantity::RowId;
use crate::solve::{Source, choice, in_force};

/// Between balusters on the level and in a gate's leaf: what was told for the job, else what the
/// building department, the place or the code asks; at a pool what its barrier asks, where that is
/// tighter.
pub fn level(job: &Job) -> HeldGap {
    let tight = Barrier::of(job).is_some_and(|b| b.is_tight(&job.settings));
    if tight { plain(job).tighter(pool(job)) } else { plain(job) }
}

/// Under a rail, where a pool's tight gap between balusters does not hold: as told for the job, else
/// what the building department, the place or the code asks.
pub fn plain(job: &Job) -> HeldGap {
    HeldGap::under(Source::told(job, RowId::GapMax).unwrap_or_else(|| in_force(job, &limits::LEVEL_GAP)))
}

/// Down the stairs: the stair's own, or a tighter one told for the job. At a pool the guard
/// down the stairs is taken as part of its barrier, the rails of it under what they must be apart.
pub fn stairs(job: &Job) -> HeldGap {
    let own = HeldGap::under(in_force(job, &limits::STAIR_GAP));
    let told = Source::told(job, RowId::GapMax).map(HeldGap::under);
    let tight = choice::pool(job).then(|| pool(job));
    told.into_iter().chain(tight).fold(own, HeldGap::tighter)
}

/// True where the pool's own gap is what holds.
pub fn by_pool(held: &HeldGap) -> bool {
    is_pools(&held.most)
}

/// A limit's figure as what gaps keep to: at a pool's own a gap of just that passes, at any other a ball of that size does.
pub fn held(most: Fig) -> HeldGap {
    if is_pools(&most) { HeldGap::up_to(most) } else { HeldGap::under(most) }
}

fn is_pools(most: &Fig) -> bool {
    matches!(most.why(), Why::Limit(l) if l.id == limits::POOL_TIGHT_GAP.id)
}

/// Where what holds is published, or whose it is.
pub fn source(job: &Job, held: &HeldGap) -> &'static str {
    match held.most.why() {
        Why::Limit(l) => job.settings.law.source(l),
        Why::Table(_, source) => source,
        _ => "as told",
    }
}

fn pool(job: &Job) -> HeldGap {
    HeldGap::up_to(in_force(job, &limits::POOL_TIGHT_GAP))
}
