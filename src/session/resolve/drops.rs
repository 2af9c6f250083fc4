//! Dropping and swapping.

use super::{Branch, Problem, Resolver, gates};
use crate::grammar::draft::DropDraft;
use crate::grammar::{Act, Talk};
use crate::job::{Fact, Flight, Job, RunId, RunPatch, Stairs};
use crate::session::targets;

impl Resolver<'_> {
    pub(super) fn drop(&self, branch: Branch, drop: DropDraft) -> Result<Branch, Problem> {
        let job = &branch.job;
        let focus = targets::focus(self.session, job).map(|r| r.id);
        let fact = match drop {
            DropDraft::Gate => self.drop_gate(job)?,
            DropDraft::Stairs => return self.drop_stairs(branch),
            DropDraft::LinePosts => match focus {
                Some(id) => Fact::Run(id, RunPatch { bays: Some(Some(1)), ..RunPatch::default() }),
                None => return Err(Problem::Refuse("No run has been told yet, so there are no line posts to drop.")),
            },
            DropDraft::Side(side) => match targets::named(job, side) {
                Some(run) => Fact::DropRun(run.id),
                None => return Err(Problem::Refuse("No run goes by that name, so nothing was dropped.")),
            },
            DropDraft::SomeRun => match &job.runs[..] {
                [one] => Fact::DropRun(one.id),
                [] => return Err(Problem::Refuse("Nothing has been told yet, so there is nothing to drop.")),
                many => {
                    let acts = many.iter().map(|r| Act::Tell(vec![Fact::DropRun(r.id)])).collect();
                    return Err(Problem::Ask("Which run?", acts));
                }
            },
            DropDraft::Last => self.drop_last(job)?,
            DropDraft::Run(n) => Fact::DropRun(RunId(n)),
            DropDraft::It => {
                Fact::DropRun(focus.ok_or(Problem::Refuse("Nothing has been told yet, so there is nothing to drop."))?)
            }
            DropDraft::Note(n) => {
                let last = job.notes.last().map(|note| note.id);
                Fact::DropNote(n.or(last).ok_or(Problem::Refuse("There are no notes to drop."))?)
            }
        };
        branch.with(fact)
    }

    /// The stairs of the only run that has some, else all that was told of any.
    fn drop_stairs(&self, branch: Branch) -> Result<Branch, Problem> {
        let none = |id| Fact::Run(id, RunPatch { stairs: Some(Stairs::NONE), ..RunPatch::default() });
        let held: Vec<RunId> = branch.job.runs.iter().filter(|r| !r.stairs.is_empty()).map(|r| r.id).collect();
        let job = &branch.job;
        let loose = job.stair_width.is_some() || job.stair_place.is_some() || job.flight != Flight::default();
        match held[..] {
            [one] => branch.with(none(one)),
            [] if loose => branch.with(Fact::NoStairs),
            [] => Err(Problem::Refuse("There are no stairs to drop.")),
            _ => Err(Problem::Ask("Which stairs?", held.iter().map(|id| Act::Tell(vec![none(*id)])).collect())),
        }
    }

    /// "forget the last one": the run told last, if the last line told of it.
    fn drop_last(&self, job: &Job) -> Result<Fact, Problem> {
        let Some(last) = job.runs.last().map(|r| r.id) else {
            return Err(Problem::Refuse("Nothing has been told yet, so there is nothing to drop."));
        };
        let told = |facts: &Vec<Fact>| facts.iter().any(|f| matches!(f, Fact::Run(id, _) if *id == last));
        if self.session.told.last().is_some_and(told) {
            return Ok(Fact::DropRun(last));
        }
        let acts = vec![Act::Talk(Talk::Undo), Act::Tell(vec![Fact::DropRun(last)])];
        Err(Problem::Ask("The last what: the line you told last, or the last run?", acts))
    }

    pub(super) fn drop_gate(&self, job: &Job) -> Result<Fact, Problem> {
        let gone = |id| Fact::Run(id, RunPatch { gate: Some(None), ..RunPatch::default() });
        let focus = targets::focus(self.session, job).filter(|r| r.gate.is_some());
        let gated: Vec<_> = job.runs.iter().filter(|r| r.gate.is_some()).collect();
        match (focus, &gated[..]) {
            (Some(run), _) => Ok(gone(run.id)),
            (None, [one]) => Ok(gone(one.id)),
            (None, []) => Err(Problem::Refuse("There is no gate to drop.")),
            (None, many) => {
                Err(Problem::Ask("Which gate?", many.iter().map(|r| Act::Tell(vec![gone(r.id)])).collect()))
            }
        }
    }

    pub(super) fn swap(&self, branch: Branch) -> Result<Branch, Problem> {
        if branch.focus.deck
            && let (Some(along), Some(out)) = (branch.job.deck_along, branch.job.deck_out)
        {
            return branch.with(Fact::DeckAlong(out))?.with(Fact::DeckOut(along));
        }
        let Some(run) = targets::focus(self.session, &branch.job).cloned() else {
            return Err(Problem::Ask("Swap what? Nothing has been told yet that has two sides.", Vec::new()));
        };
        let (Some(from), Some(to)) = (run.from, run.to) else {
            return Err(Problem::Ask("Swap what? The run's two ends have not both been told.", Vec::new()));
        };
        let patch = RunPatch { from: Some(to), to: Some(from), gate: gates::flipped(&run), ..RunPatch::default() };
        branch.with(Fact::Run(run.id, patch))
    }
}
