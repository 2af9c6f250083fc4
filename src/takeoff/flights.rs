//! The guard down the stairs, as parts: its posts, its rails cut on the rake, its balusters.

use super::balusters::baluster_fig;
use super::bays::Where;
use super::lengths::{depth, rake_rail};
use super::parts::{Lack, RAIL, What, baluster_size};
use crate::figure::{Fig, Why};
use crate::job::{Flight, Head, Job, Lie, Member, OpenSides, PostRole, PostSize};
use crate::layout::{Limits, line_inside, post_width};
use crate::limits;
use crate::measure::{Length, Lumber, Tape};
use crate::stairs::Told;
use crate::stairs::flight::work_out;
use crate::stairs::guard::{Laid, Most, RakeGuard, Site, lay_out};
use crate::stairs::infill::infill;

/// One kind of part of a stair guard: what, from what, how long, how many, where.
pub type StairPart = (What, Option<Lumber>, Option<Length>, u32, Where);

/// Every flight of the job: those in runs, else the one told alone.
pub fn flights(job: &Job) -> Vec<Flight> {
    let in_runs: Vec<Flight> = job.runs.iter().flat_map(|r| r.stairs.iter().map(|s| job.flight(s))).collect();
    let alone = (in_runs.is_empty() && job.flight != Flight::default()).then_some(job.flight);
    in_runs.into_iter().chain(alone).collect()
}

/// How many sides of it have a guard; `None` where that was not told.
fn open_sides(flight: &Flight) -> Option<u32> {
    Some(match flight.open? {
        OpenSides::Both => 2,
        OpenSides::One | OpenSides::Left | OpenSides::Right => 1,
        OpenSides::Neither => 0,
    })
}

/// What its guard is laid out from.
fn site(job: &Job, told: &Flight) -> Option<Site> {
    // A flush top tread is decking to the guard, and where the top post then stands is not told.
    if told.head == Some(Head::Flush) {
        return None;
    }
    let flight = work_out(&Told::of(told, job.settings.grade)).ok()?;
    let default = &limits::STAIR_GUARD_HEIGHT;
    let untold = || Fig::length(default.length(), Why::Default(default));
    let width = |roles: &[PostRole]| post_width(&job.settings, roles);
    let limits = Limits::in_force(&job.settings);
    Some(Site {
        rake: flight.rake()?,
        nosings: flight.riser_count().saturating_sub(1),
        height: told.height.map_or_else(untold, |l| Fig::told(l, "the stair rail's height")),
        top_back: line_inside(&job.settings).ok()?,
        foot_back: Fig::length(limits::NEWEL_PLACE.length(), Why::Default(&limits::NEWEL_PLACE)),
        widths: [width(&[]), width(&[PostRole::Line]), width(&[PostRole::End])],
        most: Most { centre: limits.centre, clear: limits.clear },
    })
}

/// A flight's guard and what it is laid out from; `None` where a fact for it is untold.
pub fn rake_guard(job: &Job, told: &Flight, tape: Tape) -> Option<(Site, RakeGuard)> {
    let site = site(job, told)?;
    let guard = lay_out(&site, Laid::Slope, tape)?;
    Some((site, guard))
}

/// The parts of every stair guard, and what is untold of them. The top posts are the level
/// guard's, where there is one.
pub fn stair_parts(job: &Job, tape: Tape) -> (Vec<StairPart>, Vec<Lack>) {
    let (mut parts, mut lacks) = (Vec::new(), Vec::new());
    for (k, flight) in (1..).zip(flights(job)) {
        let Some(sides) = open_sides(&flight) else {
            lacks.push(Lack::OpenSides);
            continue;
        };
        let laid = site(job, &flight).and_then(|site| Some((lay_out(&site, Laid::Slope, tape)?, site)));
        match laid {
            Some((guard, site)) => parts.extend(of_one(job, &site, &guard, sides, Where::Stairs(k), tape)),
            None => lacks.extend((sides > 0).then_some(Lack::Flight)),
        }
    }
    (parts, lacks)
}

fn of_one(job: &Job, site: &Site, guard: &RakeGuard, sides: u32, at: Where, tape: Tape) -> Vec<StairPart> {
    let shared = usize::from(!job.runs.is_empty());
    let posts = u32::try_from(guard.posts.len() - shared).unwrap_or(0);
    let mut parts = vec![(What::StairPost, post_size(job), None, posts * sides, at)];
    for (what, member) in [(What::StairTopRail, Member::Top), (What::StairBottomRail, Member::Bottom)] {
        let Some(size) = job.order.rail(member).unwrap_or(Some(RAIL)) else { continue };
        let lie = job.order.lay(member).unwrap_or(Lie::Edge);
        for bay in &guard.bays {
            let (clear, deep) = (bay.clear.as_length(), depth(size, lie));
            let cut = clear.zip(deep).and_then(|(clear, deep)| rake_rail(&site.rake, clear, deep));
            parts.push((what, Some(size), cut.map(|l| tape.round(l)), sides, at));
        }
    }
    let balusters: u32 = guard.bays.iter().map(|bay| count(job, site, &bay.clear, tape)).sum();
    parts.push((What::StairBaluster, baluster_size(job), None, balusters * sides, at));
    parts
}

/// A bay's balusters, under the stair's limit or a tighter one told.
fn count(job: &Job, site: &Site, clear: &Fig, tape: Tape) -> u32 {
    let most = job.settings.stair_gap();
    let found = infill(&site.rake, clear, &baluster_fig(job), &most, tape);
    found.map_or(0, |i| u32::try_from(i.count.as_q().to_integer()).unwrap_or(0))
}

fn post_size(job: &Job) -> Option<Lumber> {
    match job.settings.post(PostRole::Stair) {
        Some(PostSize::Lumber(l)) => Some(l),
        Some(PostSize::Width(_)) => None,
        None => Some(Lumber::FOUR_BY_FOUR),
    }
}
