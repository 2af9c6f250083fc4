//! Which run a question is about.

use super::{Problem, Resolver};
use crate::grammar::ask::TakeoffAsk;
use crate::grammar::draft::{AskDraft, Which};
use crate::grammar::sense::Side;
use crate::grammar::{Act, Query};
use crate::job::{End, Flank, Job, RunId};
use crate::layout::lay_out;
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
            AskDraft::MarksFrom(end) => self.marks_from(end, job)?,
            AskDraft::Posts(s) => Query::Posts(run(s)?),
            AskDraft::Bays(s) => Query::Bays(run(s)?),
            AskDraft::Gaps => self.gaps(job),
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

    /// "what's the gap": of the opening asked about last, of the job's bays, or what the rule asks.
    fn gaps(&self, job: &Job) -> Query {
        match &self.session.talk.filling {
            Some(infill) => Query::Takeoff(TakeoffAsk::Infill(*infill)),
            None if !super::takeoff::job_bays(job).is_empty() => Query::Takeoff(TakeoffAsk::Balusters(None)),
            None => crate::limits::find("level-gap").map_or(Query::Rules, |limit| Query::Rule(limit.into())),
        }
    }

    /// "the marks from the corner": from the end of the run spoken of that is one.
    fn marks_from(&self, end: Option<End>, job: &Job) -> Result<Query, Problem> {
        let Some(run) = targets::focus(self.session, job) else {
            return Err(Problem::Ask("There is no layout yet: no run has been told. Marks of what?", Vec::new()));
        };
        let layout = lay_out(job);
        let ends = layout.runs.iter().find(|r| r.id == run.id).and_then(|r| r.result.as_ref().ok()).map(|p| p.ends);
        match (end, ends.unwrap_or([run.from.unwrap_or(End::OpenEnd), run.to.unwrap_or(End::OpenEnd)])) {
            (None, _) => Ok(Query::MarksBack(Some(run.id))),
            (Some(end), [from, to]) if end == from && end != to => Ok(Query::Layout(Some(run.id))),
            (Some(end), [from, to]) if end == to && end != from => Ok(Query::MarksBack(Some(run.id))),
            (Some(end), [from, _]) if end == from => {
                let acts = [Query::Layout(Some(run.id)), Query::MarksBack(Some(run.id))].map(Act::Query);
                Err(Problem::Ask("It has one at both ends. From the near one, or the far one?", acts.into()))
            }
            _ => Err(Problem::Ask("That run has no such end. Which end of it do you pull from?", Vec::new())),
        }
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
