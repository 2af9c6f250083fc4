//! Told lines taken in without an answer, as a job file holds them; and what the file's
//! keeper must know of a change.

use super::state::{Delta, Lack, Log, Pending, Session};
use super::step::told_focus;
use crate::grammar::Act;
use crate::job::{Fact, Impossible, Job};

impl Session {
    /// Takes one told line in as [`step`](super::step) and [`Session::apply`] would, in the
    /// time its facts take: no answer is worked out, and the job is not copied.
    ///
    /// # Errors
    /// Why the line cannot be; nothing of it was taken then.
    pub fn tell(&mut self, facts: Vec<Fact>) -> Result<(), Impossible> {
        if let Some(why) = facts.iter().find_map(|fact| self.job.take(fact).err()) {
            if facts.len() > 1 {
                self.job = self.retold();
            }
            return Err(why);
        }
        let act = Act::Tell(facts);
        self.talk = super::state::Talk { focus: told_focus(self, &act), ..Default::default() };
        let Act::Tell(facts) = act else { return Ok(()) };
        self.told.push(facts);
        self.undone.clear();
        Ok(())
    }

    /// The job by the lines told before; numbers given out by a line that failed are free again.
    fn retold(&self) -> Job {
        let mut job = Job::default();
        for fact in self.told.iter().flatten() {
            // Every one of these was taken before, in this order.
            let _ = job.take(fact);
        }
        job
    }

    /// How many told lines, or groups of them, could be taken back one after the other.
    pub fn told_count(&self) -> usize {
        self.told.len()
    }

    /// Makes one group of all told lines after the first `before` of them: one undo takes them back.
    pub fn join_after(&mut self, before: usize) {
        if self.told.len() > before + 1 {
            let group = self.told.split_off(before).concat();
            self.told.push(group);
        }
    }

    /// True where a change answers the question that stands open.
    pub fn answered_by(&self, delta: &Delta) -> bool {
        let (Some(open), Log::Told(facts)) = (&self.talk.pending, &delta.log) else { return false };
        let chosen = |act: &Act| matches!(act, Act::Tell(told) if told == facts);
        open.choices.iter().any(chosen) || gives_the_lacking(open, facts)
    }
}

fn gives_the_lacking(open: &Pending, facts: &[Fact]) -> bool {
    let given = |fact: &Fact| match fact {
        Fact::StairWidth(_) => true,
        Fact::Run(_, patch) => matches!(patch.stairs, Some(Some(_))),
        _ => false,
    };
    open.lacks.as_ref().is_some_and(|(_, lack)| match lack {
        Lack::StairWidth => facts.iter().any(given),
    })
}

impl Delta {
    /// What it does to the told lines.
    pub fn log(&self) -> &Log {
        &self.log
    }

    /// True where it leaves a question open.
    pub fn asks(&self) -> bool {
        self.talk.pending.is_some()
    }
}
