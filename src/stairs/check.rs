//! A flight against the published limits.

use super::{Flight, inches, worked};
use crate::figure::Fig;
use crate::limits::{self, Limit};
use crate::measure::Length;

/// What else is known of a flight, for the checks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Known {
    /// How far a nosing overhangs the riser below.
    pub nosing: Option<Length>,
    /// The stair's clear width.
    pub width: Option<Length>,
    /// The landing's depth at the foot.
    pub landing: Option<Length>,
    /// Open risers: the opening between two treads, plumb.
    pub open_riser: Option<Length>,
    /// Risers told open, with or without how much.
    pub open: bool,
}

/// A limit that is not kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Breach {
    /// The limit.
    pub limit: &'static Limit,
    /// What was found in its place.
    pub found: Fig,
}

fn breach(limit: &'static Limit, found: &Fig, fails: bool) -> Option<Breach> {
    fails.then(|| Breach { limit, found: found.clone() })
}

/// Every limit the flight does not keep.
pub fn check(flight: &Flight, known: &Known) -> Vec<Breach> {
    let over = |limit: &'static Limit, f: &Fig| breach(limit, f, inches(f) > limit.length());
    let mut found: Vec<Breach> = over(&limits::RISER_MOST, &flight.rise).into_iter().collect();
    found.extend(over(&limits::FLIGHT_RISE, &flight.total_rise));
    let tread = flight.going.as_ref().map(|g| g.tread.clone());
    found.extend(tread.as_ref().and_then(|t| under(&limits::TREAD_LEAST, t)));
    let told = |l: Option<Length>, what| l.map(|l| Fig::told(l, what));
    found.extend(told(known.nosing, "the nosing").iter().flat_map(|n| nosing(n, tread.as_ref(), known)));
    found.extend(told(known.width, "the stair's width").and_then(|w| under(&limits::STAIR_WIDTH, &w)));
    found.extend(told(known.landing, "the landing").and_then(|l| under(&limits::LANDING, &l)));
    found.extend(told(known.open_riser, "the opening between treads").and_then(|gap| open_riser(flight, &gap)));
    found
}

fn under(limit: &'static Limit, f: &Fig) -> Option<Breach> {
    breach(limit, f, inches(f) < limit.length())
}

/// A deep tread asks for no nosing; open risers let it be longer.
fn nosing(nosing: &Fig, tread: Option<&Fig>, known: &Known) -> Option<Breach> {
    let free = tread.is_some_and(|t| inches(t) >= limits::NOSING_FREE.length());
    let short = under(&limits::NOSING_LEAST, nosing).filter(|_| !free);
    let long = || breach(&limits::NOSING_MOST, nosing, inches(nosing) > limits::NOSING_MOST.length());
    short.or_else(|| long().filter(|_| known.open_riser.is_none() && !known.open))
}

/// An open riser counts where it is more than the guard's trigger above what is below: the
/// top one is a riser below the decking's height.
fn open_riser(flight: &Flight, gap: &Fig) -> Option<Breach> {
    let highest = inches(&flight.total_rise) - inches(&flight.rise);
    let high = highest > limits::GUARD_TRIGGER.length();
    breach(&limits::OPEN_RISER, gap, high && inches(gap) >= limits::OPEN_RISER.length())
}

/// The largest less the smallest of a flight's risers, treads or nosings as measured.
/// `None` for none.
pub fn spread(measured: &[Length], what: &'static str) -> Option<Fig> {
    let (most, least) = (measured.iter().max()?, measured.iter().min()?);
    let from = vec![("the largest", Fig::told(*most, what)), ("the smallest", Fig::told(*least, what))];
    Some(worked(*most - *least, "the largest less the smallest", from))
}

/// The spread as a breach of uniformity, where it is one.
pub fn uneven(measured: &[Length], what: &'static str) -> Option<Breach> {
    let found = spread(measured, what)?;
    breach(&limits::STAIR_SPREAD, &found, inches(&found) > limits::STAIR_SPREAD.length())
}

/// How many treads down, counted from the decking, stand more than the guard's trigger above
/// level ground: the guard is required along those.
pub fn guarded_treads(flight: &Flight) -> u16 {
    let (total, rise) = (inches(&flight.total_rise), inches(&flight.rise));
    let high = |k: &u16| total - rise * i64::from(*k) > limits::GUARD_TRIGGER.length();
    (1..=flight.riser_count().saturating_sub(1)).take_while(high).last().unwrap_or(0)
}
