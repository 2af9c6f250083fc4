//! The balusters of the whole job, bay by bay.

use super::bays::{RailBay, Where, rail_bays};
use crate::figure::Fig;
use crate::gate::gap;
use crate::infill::{NoSpread, Opening, Spread, Start, fewest, matched};
use crate::job::{Job, RunId, StartWith};
use crate::layout::Layout;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{order, taken};

/// A bay with its balusters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilledBay {
    /// Where it is.
    pub at: Where,
    /// Its balusters as built.
    pub spread: Spread,
    /// The fewest it needs by itself: fewer than built where it is matched to its neighbours.
    pub fewest: u32,
    /// The fewest by exact gaps: fewer still where only the tape asks for one more.
    pub exact: u32,
}

/// A bay that cannot be filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CannotFill {
    /// Where it is.
    pub at: Where,
    /// Why.
    pub why: NoSpread,
}

/// One baluster's width: as told, or a 2x2's.
pub fn baluster_fig(job: &Job) -> Fig {
    taken(job, RowId::BalusterWidth)
}

/// The limit on gaps that holds for the job.
pub fn gap_limit_fig(job: &Job) -> Fig {
    gap::level(job).most
}

/// What stands against the posts: as told, or a gap.
pub fn start(job: &Job) -> Start {
    match order::start_with(job) {
        StartWith::Baluster => Start::Baluster,
        StartWith::Gap => Start::Gap,
    }
}

/// An opening with the job's balusters, limit and tape.
pub fn opening(job: &Job, clear: Length, built: Length) -> Opening {
    let length = |f: &Fig| f.as_length().unwrap_or(Length::ZERO);
    let limit = gap::level(job).limit();
    let tape = crate::solve::choice::tape(job);
    Opening { clear, built, baluster: length(&baluster_fig(job)), limit, start: start(job), tape }
}

/// Every bay filled, bays of one side matched; of one run only where `which` names it. A bay
/// that cannot be filled is given with why.
pub fn fill(job: &Job, layout: &Layout, which: Option<RunId>) -> Result<Vec<FilledBay>, CannotFill> {
    let bays: Vec<RailBay> = rail_bays(job, layout);
    let bays = bays.into_iter().filter(|b| which.is_none_or(|id| b.at.run() == Some(id)));
    let mut filled = Vec::new();
    for bay in bays {
        let found = fewest(opening(job, bay.clear, bay.built)).map_err(|why| CannotFill { at: bay.at, why })?;
        let (taped, exact) = (found.taped, found.exact.count());
        filled.push(FilledBay { at: bay.at, spread: taped, fewest: taped.count(), exact });
    }
    Ok(match_sides(filled))
}

/// Bays of one run get one count where they differ by fractions.
fn match_sides(filled: Vec<FilledBay>) -> Vec<FilledBay> {
    let sides: Vec<Option<RunId>> = filled.iter().map(|b| b.at.run()).collect();
    let of_side = |side: Option<RunId>| {
        let own = filled.iter().filter(|b| b.at.run() == side);
        matched(&own.map(|b| (b.spread.opening().clear, b.fewest)).collect::<Vec<_>>())
    };
    let mut seen: Vec<Option<RunId>> = Vec::new();
    let mut counts = Vec::new();
    for side in sides {
        if !seen.contains(&side) {
            seen.push(side);
            counts.extend(of_side(side));
        }
    }
    let built = |(bay, n): (&FilledBay, u32)| {
        // One more where it has to match: its gaps are smaller, and on the tape still under.
        let more = Spread::of(*bay.spread.opening(), n).ok().filter(Spread::passes);
        FilledBay { spread: more.unwrap_or(bay.spread), ..*bay }
    };
    filled.iter().zip(counts).map(built).collect()
}
