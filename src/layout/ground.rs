//! What all runs of a job stand on, and what each has at its ends.

use super::Lack;
use super::corner::{Meet, meet};
use super::limits::Limits;
use super::line::line_inside;
use crate::figure::Fig;
use crate::job::{End, Flight, GateAt, Job, Run, RunId, Settings, StairOpening, Turn};
use crate::measure::{Length, Tape};

/// What all runs share.
pub(super) struct Ground<'a> {
    pub settings: &'a Settings,
    /// What was told of all stairs.
    pub flight: Flight,
    pub limits: &'a Limits,
    pub tape: Tape,
    /// The baluster line inside the decking's edge, or the facts it wants.
    pub line: Result<Fig, Vec<Lack>>,
}

impl<'a> Ground<'a> {
    pub fn of(job: &'a Job, limits: &'a Limits, tape: Tape) -> Ground<'a> {
        let settings = &job.settings;
        Ground { settings, flight: job.flight, limits, tape, line: line_inside(settings) }
    }
}

/// Which end of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Start,
    Finish,
}

impl Side {
    /// What the run has there, and where a gate at it is told.
    pub fn of(self, run: &Run) -> (Option<End>, GateAt) {
        match self {
            Side::Start => (run.from, GateAt::From),
            Side::Finish => (run.to, GateAt::To),
        }
    }
}

/// What a run has at one end.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Neighbour {
    /// How the decking's edge turns there.
    pub turn: Option<Turn>,
    /// The run beyond the corner, where its post or posts stand in both.
    pub run: Option<RunId>,
    /// The side beyond the corner ends on a post there, where this one has stairs.
    pub post_beyond: bool,
    /// A gate hangs on the corner's post from the other run.
    pub gate: bool,
    /// The other run was told before this one.
    pub later: bool,
    /// That they meet is taken from how they were told, not walked.
    pub taken: bool,
}

impl Neighbour {
    pub fn meet(self, settings: &Settings) -> Option<Meet> {
        meet(self, settings)
    }
}

/// True where the run's guard reaches a corner at that end.
pub(super) fn has_corner(run: &Run, side: Side) -> bool {
    side.of(run).0.is_some_and(End::is_corner) && !stairs_reach(run, side)
}

/// True where a gate of the run hangs on the post at that end.
pub(super) fn gated(run: &Run, side: Side) -> bool {
    run.gate.is_some_and(|g| g.at.place() == side.of(run).1)
}

/// The stairs that begin at the run's very end.
pub(super) fn stairs_at(run: &Run, side: Side) -> Option<StairOpening> {
    let at_end = |s: &&StairOpening| {
        let (left, right) = s.flanks(run.length.map(|t| t.length));
        let flank = if side == Side::Start { left } else { right };
        flank.is_some_and(Length::is_zero)
    };
    run.stairs.iter().find(at_end).copied()
}

/// True where a stair opening begins at the run's very end: no guard, no post there.
pub(super) fn stairs_reach(run: &Run, side: Side) -> bool {
    stairs_at(run, side).is_some()
}
