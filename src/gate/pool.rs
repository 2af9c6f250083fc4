//! What a pool asks of a guard and gate that close it off.

use crate::figure::{Fig, Why};
use crate::job::{CapTold, Job, Member, Settings};
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{choice, in_force, limit_length, order, taken, told_length};

/// What is known of the barrier.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Barrier {
    /// Its top, above the ground on the side away from the pool.
    pub top: Length,
    /// What lies on the top rail, of that height.
    pub cap: Length,
    /// The gap under it, over decking or concrete.
    pub under: Option<Length>,
    /// The top of its bottom rail, above the same ground.
    pub bottom_rail_top: Option<Length>,
    /// The height of the latch's release, above the same ground.
    pub latch: Option<Length>,
}

impl Barrier {
    /// The barrier a job's guard makes; `None` where no pool was told.
    pub fn of(job: &Job) -> Option<Barrier> {
        choice::pool(job).then(|| Barrier::made_of(job))
    }

    /// The barrier a job's guard would make, its decking taken as the ground outside.
    pub fn made_of(job: &Job) -> Barrier {
        // A cap is no rail: the rails' tops are apart by what is below it.
        let cap = match job.cap() {
            CapTold::Thick(l) => l,
            CapTold::None | CapTold::Untold => Length::ZERO,
        };
        Barrier {
            cap,
            top: taken(job, RowId::HeightTop).as_length().unwrap_or(Length::ZERO),
            under: told_length(job, RowId::GapUnder),
            bottom_rail_top: bottom_rail_top(job),
            latch: job.runs.iter().find_map(|r| r.gate.and_then(|g| g.hung.latch_height)),
        }
    }

    /// The rails' tops, apart; `None` where the bottom rail's place was not told.
    pub fn rails_apart(&self) -> Option<Fig> {
        let rail = self.bottom_rail_top?;
        let from = vec![
            ("barrier's top", Fig::told(self.top, "the guard's height")),
            ("cap", Fig::told(self.cap, "the cap")),
            ("bottom rail's top", Fig::told(rail, "the gap under it and its depth")),
        ];
        let says = "the barrier's top less its cap and the bottom rail's top";
        Some(Fig::length(self.top - self.cap - rail, Why::Formula(says, from)))
    }

    /// True where the tight gap holds: the rails' tops are too close, or were not told.
    pub fn is_tight(&self, s: &Settings) -> bool {
        gap_limit(self, s).id == limits::POOL_TIGHT_GAP.id
    }
}

/// The gap under the bottom rail and what of the rail stands above it.
fn bottom_rail_top(job: &Job) -> Option<Length> {
    let size = order::member(job, Member::Bottom).flatten()?;
    Some(told_length(job, RowId::GapUnder)? + order::depth(job, Member::Bottom, size)?)
}

/// Every limit the barrier does not keep.
pub fn breaches(b: &Barrier, s: &Settings) -> Vec<&'static Limit> {
    let low = (b.top < limit_length(s, &limits::POOL_TOP)).then_some(&limits::POOL_TOP);
    let most = limit_length(s, &limits::POOL_GAP_DECK);
    let under = b.under.is_some_and(|l| l > most).then_some(&limits::POOL_GAP_DECK);
    low.into_iter().chain(under).collect()
}

/// The gap balusters of a pool barrier may have: tight where the rails' tops are close enough to
/// climb by, the plain limit where they are not.
pub fn gap_limit(b: &Barrier, s: &Settings) -> &'static Limit {
    match b.rails_apart().and_then(|f| f.as_length()) {
        Some(apart) if apart >= limit_length(s, &limits::POOL_RAILS_APART) => &limits::LEVEL_GAP,
        // Where the rails are was not told: the tighter limit holds.
        _ => &limits::POOL_TIGHT_GAP,
    }
}

/// How high the top must be for the plain gap, over a bottom rail whose top is so high.
pub fn top_for_plain_gap(bottom_rail_top: &Fig, cap: Length, s: &Settings) -> Fig {
    let (apart, cap) = (in_force(s, &limits::POOL_RAILS_APART), Fig::told(cap, "the cap"));
    let l = [bottom_rail_top, &apart, &cap].iter().filter_map(|f| f.as_length()).sum();
    let from = vec![("bottom rail's top", bottom_rail_top.clone()), ("rails apart", apart), ("cap", cap)];
    Fig::length(l, Why::Formula("the bottom rail's top + what the rails must be apart + the cap", from))
}

/// True where the latch must stand on the pool side, low on the gate.
pub fn latch_on_pool_side(b: &Barrier, s: &Settings) -> Option<bool> {
    b.latch.map(|l| l < limit_length(s, &limits::POOL_LATCH))
}
