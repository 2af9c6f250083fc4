//! A flight against the published limits.

use super::{Flight, inches, worked};
use crate::figure::Fig;
use crate::job::Settings;
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::solve::limit_length;

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

/// Every limit the flight does not keep, each as it holds for the job.
pub fn check(flight: &Flight, known: &Known, s: &Settings) -> Vec<Breach> {
    let over = |limit: &'static Limit, f: &Fig| breach(limit, f, inches(f) > limit_length(s, limit));
    let under = |limit: &'static Limit, f: &Fig| under(limit, f, s);
    let mut found: Vec<Breach> = over(&limits::RISER_MOST, &flight.rise).into_iter().collect();
    found.extend(over(&limits::FLIGHT_RISE, &flight.total_rise));
    let tread = flight.going.as_ref().map(|g| g.tread.clone());
    found.extend(tread.as_ref().and_then(|t| under(&limits::TREAD_LEAST, t)));
    let told = |l: Option<Length>, what| l.map(|l| Fig::told(l, what));
    found.extend(told(known.nosing, "the nosing").iter().flat_map(|n| nosing(n, tread.as_ref(), known, s)));
    found.extend(told(known.width, "the stair's width").and_then(|w| under(&limits::STAIR_WIDTH, &w)));
    found.extend(told(known.landing, "the landing").and_then(|l| under(&limits::LANDING, &l)));
    found.extend(told(known.open_riser, "the opening between treads").and_then(|gap| open_riser(flight, &gap, s)));
    found
}

fn under(limit: &'static Limit, f: &Fig, s: &Settings) -> Option<Breach> {
    breach(limit, f, inches(f) < limit_length(s, limit))
}

/// A deep tread asks for no nosing; open risers let it be longer.
fn nosing(nosing: &Fig, tread: Option<&Fig>, known: &Known, s: &Settings) -> Option<Breach> {
    let free = tread.is_some_and(|t| inches(t) >= limit_length(s, &limits::NOSING_FREE));
    let short = under(&limits::NOSING_LEAST, nosing, s).filter(|_| !free);
    let long = || breach(&limits::NOSING_MOST, nosing, inches(nosing) > limit_length(s, &limits::NOSING_MOST));
    short.or_else(|| long().filter(|_| known.open_riser.is_none() && !known.open))
}

/// An open riser counts where it is more than the guard's trigger above what is below: the
/// top one is a riser below the decking's height.
fn open_riser(flight: &Flight, gap: &Fig, s: &Settings) -> Option<Breach> {
    let passes = inches(gap) >= limit_length(s, &limits::OPEN_RISER);
    breach(&limits::OPEN_RISER, gap, risers_are_high(flight, s) && passes)
}

/// True where the top riser starts so far above level ground that what is open in it counts.
pub fn risers_are_high(flight: &Flight, s: &Settings) -> bool {
    inches(&flight.total_rise) - inches(&flight.rise) > limit_length(s, &limits::GUARD_TRIGGER)
}

/// The largest less the smallest of a flight's risers, treads or nosings as measured.
/// `None` for none.
pub fn spread(measured: &[Length], what: &'static str) -> Option<Fig> {
    let (most, least) = (measured.iter().max()?, measured.iter().min()?);
    let from = vec![("the largest", Fig::told(*most, what)), ("the smallest", Fig::told(*least, what))];
    Some(worked(*most - *least, "the largest less the smallest", from))
}

/// The spread as a breach of uniformity, where it is one.
pub fn uneven(measured: &[Length], what: &'static str, s: &Settings) -> Option<Breach> {
    let found = spread(measured, what)?;
    breach(&limits::STAIR_SPREAD, &found, inches(&found) > limit_length(s, &limits::STAIR_SPREAD))
}

/// How many treads down, counted from the decking, stand more than the guard's trigger above
/// level ground: the guard is required along those.
pub fn guarded_treads(flight: &Flight, s: &Settings) -> u16 {
    let (total, rise, most) =
        (inches(&flight.total_rise), inches(&flight.rise), limit_length(s, &limits::GUARD_TRIGGER));
    let high = |k: &u16| total - rise * i64::from(*k) > most;
    (1..=flight.riser_count().saturating_sub(1)).take_while(high).last().unwrap_or(0)
}
