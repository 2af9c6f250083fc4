//! Which run a question is about.

use super::{Problem, Resolver};
use crate::grammar::Query;
use crate::grammar::draft::{AskDraft, Which};
use crate::grammar::sense::Side;
use crate::job::{Flank, Job, RunId};
use crate::session::targets;

impl Resolver<'_> {
    pub(super) fn asked(&self, ask: AskDraft, job: &Job) -> Result<Query, Problem> {
        let run = |which: Option<Which>| match which {
            None => Ok(None),
            Some(Which::Number(n)) => match job.run(RunId(n)) {
                Some(run) => Ok(Some(run.id)),
                None => Err(Problem::Ask("There is no run of that number. Which run?", Vec::new())),
            },
            Some(Which::Side(s)) => match targets::named(job, s) {
                Some(run) => Ok(Some(run.id)),
                None if s == Side::Left || s == Side::Right => Ok(targets::focus(self.session, job).map(|r| r.id)),
                None => Err(Problem::Ask("No run goes by that name. Which run?", Vec::new())),
            },
        };
        Ok(match ask {
            AskDraft::Layout(s) => Query::Layout(run(s)?),
            AskDraft::Posts(s) => Query::Posts(run(s)?),
            AskDraft::Bays(s) => Query::Bays(run(s)?),
            AskDraft::Length(Some(Which::Side(s))) if self.flank(job, s).is_some() => match self.flank(job, s) {
                Some((id, flank)) => Query::Flank(id, flank),
                None => return Err(Problem::Refuse("There are no stairs in that run.")),
            },
            AskDraft::Length(s) => match run(s)?.or_else(|| targets::focus(self.session, job).map(|r| r.id)) {
                Some(id) => Query::RunLength(id),
                None => return Err(Problem::Ask("No run has been told yet. How long is what?", Vec::new())),
            },
        })
    }

    /// "what's left on the right": of the stairs in the run spoken of, unless a run goes
    /// by that name.
    pub(super) fn flank(&self, job: &Job, side: Side) -> Option<(RunId, Flank)> {
        let run = targets::focus(self.session, job)
            .filter(|r| !r.stairs.is_empty() && targets::named(job, side).is_none())?;
        match side {
            Side::Left => Some((run.id, Flank::Left)),
            Side::Right => Some((run.id, Flank::Right)),
            _ => None,
        }
    }
}
