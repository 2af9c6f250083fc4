//! The guard down the stairs, as parts: its posts, its rails cut on the rake, its balusters.

use super::balusters::{baluster_fig, start};
use super::bays::Where;
use super::lengths::{depth, rake_rail};
use super::parts::{Lack, What, baluster_size};
use crate::figure::{Fig, Why};
use crate::gate::gap;
use crate::infill::HeldGap;
use crate::job::{Flight, Head, Job, Lie, Member, OpenSides, PostRole, PostSize};
use crate::layout::{Limits, line_inside, post_width};
use crate::limits;
use crate::measure::{Length, Lumber, Tape};
use crate::quantity::RowId;
use crate::solve::{default_of, order, told_length};
use crate::stairs::flight::work_out;
use crate::stairs::guard::{Laid, Most, RakeGuard, Site, lay_out};
use crate::stairs::infill::{Bay, infill};
use crate::stairs::{Rake, Told};

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
    let flight = work_out(&Told::of(told, told_length(job, RowId::Grade))).ok()?;
    site_of(job, flight.rake()?, flight.riser_count(), told.height)
}

/// What a guard down so many risers of that slope is laid out from, its rail as high as told or
/// taken; `None` where the top post's line is not told.
pub fn site_of(job: &Job, rake: Rake, risers: u16, height: Option<Length>) -> Option<Site> {
    let taken = |limit| default_of(job, limit);
    let width = |roles: &[PostRole]| post_width(&job.settings, roles);
    let most = Limits::in_force(&job.settings);
    Some(Site {
        rake,
        nosings: risers.saturating_sub(1),
        height: height.map_or_else(|| taken(&limits::STAIR_GUARD_HEIGHT), |l| Fig::told(l, "the stair rail's height")),
        top_back: line_inside(&job.settings).ok()?,
        foot_back: taken(&limits::NEWEL_PLACE),
        widths: [width(&[]), width(&[PostRole::Line]), width(&[PostRole::End])],
        most: Most { centre: most.centre, clear: most.clear },
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
        let Some(size) = order::rail(job, member) else { continue };
        let lie = order::lies(job, member).unwrap_or(Lie::Edge);
        for bay in &guard.bays {
            let (clear, deep) = (bay.clear.as_length(), depth(size, lie));
            let cut = clear.zip(deep).and_then(|(clear, deep)| rake_rail(&site.rake, clear, deep));
            parts.push((what, Some(size), cut.map(|l| tape.round(l)), sides, at));
        }
    }
    let bay = down_the_stairs(job, guard, &baluster_fig(job), gap::stairs(job), tape);
    let each = infill(&site.rake, &bay).map_or(0, |i| u32::try_from(i.count.as_q().to_integer()).unwrap_or(0));
    let bays = u32::try_from(guard.bays.len()).unwrap_or(0);
    parts.push((What::StairBaluster, baluster_size(job), None, each * bays * sides, at));
    parts
}

/// A bay of a stair guard to fill: its bays are equal, and the one built widest decides for all.
pub fn down_the_stairs(job: &Job, guard: &RakeGuard, baluster: &Fig, held: HeldGap, tape: Tape) -> Bay {
    let nothing = || Fig::length(Length::ZERO, Why::Formula("no bay", Vec::new()));
    Bay {
        clear: guard.bays.first().map_or_else(nothing, |b| b.clear.clone()),
        built: guard.bays.iter().map(|b| b.built).max().unwrap_or(Length::ZERO),
        baluster: baluster.clone(),
        held,
        start: start(job),
        tape,
    }
}

fn post_size(job: &Job) -> Option<Lumber> {
    match crate::solve::post_size(job, PostRole::Stair) {
        Some(PostSize::Lumber(l)) => Some(l),
        Some(PostSize::Width(_)) => None,
        None => Some(Lumber::FOUR_BY_FOUR),
    }
}
