//! Which run a clause speaks of.

use super::state::Session;
use crate::grammar::draft::{RunDraft, SpotDraft};
use crate::grammar::sense::{Name, Sense, Side, TERMS};
use crate::job::{End, Job, Run, RunId};

/// The run a draft is about: one that stands, or the next new one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Target {
    /// One that stands.
    Old(RunId),
    /// A new one.
    New(RunId),
    /// A change to a run, and there is none.
    Missing,
    /// It may be any of several.
    Which,
}

/// Finds the run. `job` is the job as the line's earlier clauses left it.
pub(super) fn target(session: &Session, job: &Job, draft: &RunDraft, corrects: bool) -> Target {
    if let Some(n) = draft.number {
        let id = RunId(n);
        let told = draft.length.is_some() || draft.from.is_some() && draft.to.is_some();
        return match job.run(id) {
            Some(_) => Target::Old(id),
            None if id == job.next_run() && told && !corrects => Target::New(id),
            None => Target::Missing,
        };
    }
    if let Some(run) = draft.name.and_then(|s| named(job, s)) {
        return Target::Old(run.id);
    }
    if matches!(draft.name, Some(Side::Longest | Side::Shortest)) {
        return Target::Which;
    }
    let focus = focus(session, job);
    let told = draft.length.is_some() || draft.from.is_some() || draft.to.is_some();
    if !told && draft.name.is_none() {
        return in_focus(job, draft, focus);
    }
    let renames = draft.name.is_some() && draft.length.is_none();
    let one_end = draft.length.is_none() && draft.from.is_some() != draft.to.is_some() && draft.name.is_none();
    if one_end && let Some(run) = focus {
        return Target::Old(run.id);
    }
    let whole = draft.run_word && draft.length.is_some() && draft.from.is_some() && draft.to.is_some();
    let renames_it = draft.length.is_none() && draft.from.is_none() && draft.to.is_none();
    let changes = corrects && (draft.name.is_none() || renames_it) && !whole;
    let it = draft.it && !draft.run_word && (focus.is_some() || draft.from.is_none());
    // "it's 13 on the side", of a run that goes by another name.
    let renamed = |run: &Run| draft.it && draft.name.is_some() && draft.length.is_some() && run.name.is_some();
    if focus.is_some_and(renamed) {
        return Target::Which;
    }
    if changes || it || draft.not.is_some() || draft.not_end.is_some() {
        return focus.map_or(Target::Missing, |r| Target::Old(r.id));
    }
    match focus {
        Some(run) if is_a_stub(run) && !renames && draft.to == Some(End::StairHead) => Target::Old(run.id),
        Some(run) if fills_a_hole(run, draft) && !renames => Target::Old(run.id),
        _ => Target::New(job.next_run()),
    }
}

/// The run last spoken of, if it still stands.
pub(super) fn focus<'a>(session: &Session, job: &'a Job) -> Option<&'a Run> {
    session.talk.focus.run.and_then(|id| job.run(id)).or_else(|| job.runs.last())
}

/// The names runs were given that are no side's.
pub(super) fn names(session: &Session) -> Vec<Name> {
    let own = |name: &&str| !TERMS.iter().any(|(spelled, s)| matches!(s, Sense::Side(_)) && *spelled == [*name]);
    session.job.runs.iter().filter_map(|r| Name::from(r.name.as_deref().filter(own)?).ok()).collect()
}

/// The run called by that side, or the one run longer or shorter than all others.
pub(super) fn named(job: &Job, side: Side) -> Option<&Run> {
    let by_length = |longer: bool| {
        let told = |r: &Run| r.length.as_ref().map(|l| l.length);
        let beats = |a: &Run, b: &Run| match (told(a), told(b)) {
            (Some(a), Some(b)) if longer => a > b,
            (Some(a), Some(b)) => a < b,
            _ => false,
        };
        let best = |r: &&Run| job.runs.len() > 1 && job.runs.iter().all(|o| o.id == r.id || beats(r, o));
        job.runs.iter().find(best)
    };
    match side {
        Side::Longest => by_length(true),
        Side::Shortest => by_length(false),
        side => job.named(side.name()),
    }
}

/// A run of which only its end at the stairs is known, with a gate there.
fn is_a_stub(run: &Run) -> bool {
    let bare = run.length.is_none() && run.from.is_none() && run.name.is_none();
    bare && run.to == Some(End::StairHead) && run.gate.is_some()
}

/// Only ends, or only a length, told of a run that has none yet.
fn fills_a_hole(run: &Run, draft: &RunDraft) -> bool {
    let ends = draft.from.is_some() || draft.to.is_some();
    let no_ends = run.from.is_none() && run.to.is_none();
    let fills_ends = ends && draft.length.is_none() && no_ends && !draft.run_word;
    let fills_length =
        draft.length.is_some() && !ends && run.length.is_none() && !draft.run_word && draft.name.is_none();
    fills_ends || fills_length
}

/// A gate, stairs or a bay count alone: of the run in focus, or of the only run it fits.
fn in_focus(job: &Job, draft: &RunDraft, focus: Option<&Run>) -> Target {
    let at_stairs =
        draft.gate.as_ref().is_some_and(|g| g.as_ref().is_some_and(|g| g.at == Some(SpotDraft::End(End::StairHead))));
    let gone = draft.gate == Some(None);
    let fits = |r: &&Run| (!at_stairs || has_stair_head(r)) && (!gone || r.gate.is_some());
    let Some(focus) = focus else { return Target::Missing };
    if !at_stairs && !gone || fits(&focus) {
        return Target::Old(focus.id);
    }
    let fitting: Vec<&Run> = job.runs.iter().filter(fits).collect();
    match fitting[..] {
        [one] => Target::Old(one.id),
        [] => Target::Old(focus.id),
        _ => Target::Which,
    }
}

/// True where stairs open off the run or at one of its ends.
pub(super) fn has_stair_head(run: &Run) -> bool {
    !run.stairs.is_empty() || run.from == Some(End::StairHead) || run.to == Some(End::StairHead)
}
