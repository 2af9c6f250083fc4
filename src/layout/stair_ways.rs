//! What each way to mean a stair's width would leave: the guard beside the stairs, and the
//! clear between the posts there.

use super::ground::Ground;
use super::opening::built;
use super::recess::head_clear;
use super::{Limits, lay_out};
use crate::figure::Fig;
use crate::job::{Flight, Job, Newels, RunId, StairAt, StairMeasure, StairOpening};
use crate::measure::{Length, Tape};

/// What stairs leave of their run.
#[derive(Clone, Debug, PartialEq)]
pub struct Beside {
    /// The guard left of the first stairs and right of the last; `None` until it can be told.
    pub flanks: Option<[Fig; 2]>,
    /// The clear between the posts at recessed stairs, by run and stairs from the left.
    pub heads: Vec<Fig>,
}

/// What the stairs of a run leave, where anything can be told of it.
pub fn beside(job: &Job, run: RunId) -> Option<Beside> {
    let layout = lay_out(job).only(Some(run));
    let placed: Vec<_> = layout.runs.iter().filter_map(|r| r.result.as_ref().ok()).collect();
    let flanks = placed.iter().find_map(|p| p.flanks.clone());
    let heads: Vec<Fig> = layout
        .runs
        .iter()
        .filter(|r| matches!(r.part, super::Part::InLeft(_)))
        .filter_map(|r| r.result.as_ref().ok()?.head.clone())
        .collect();
    (flanks.is_some() || !heads.is_empty()).then_some(Beside { flanks, heads })
}

/// For stairs at the deck's edge whose width was told plainly: the clear it would leave were
/// it the treads with the newels on them, and were it a hole from decking to decking.
pub fn other_ways(job: &Job, stairs: &StairOpening) -> [Option<Fig>; 2] {
    let limits = Limits::in_force(&job.settings);
    let ground = Ground::of(job, &limits, Tape::default());
    let on_treads = Flight { newels: Some(Newels::OnTreads), ..stairs.flight };
    let treads = StairOpening { measure: Some(StairMeasure::Treads), flight: on_treads, ..*stairs };
    // How deep the hole goes changes nothing of the clear at its head.
    let hole = StairOpening {
        measure: Some(StairMeasure::Decking),
        recess: Some(stairs.width),
        at: StairAt::Middle,
        ..*stairs
    };
    let clear = |f: Fig| f.as_length().is_some_and(Length::is_positive).then_some(f);
    let head = built(&hole, &ground).and_then(|b| head_clear(&b, false, &ground)).ok();
    [built(&treads, &ground).ok().and_then(|b| clear(b.width)), head]
}
