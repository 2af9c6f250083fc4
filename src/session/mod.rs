//! The conversation: one line in, a change and a reply out. Pure.

use crate::job::Job;
use crate::reply::{Reply, Status};

/// A conversation so far: the job, and what was said about it.
#[derive(Clone, Debug, Default)]
pub struct Session {
    job: Job,
}

/// What one line changes: apply it with [`Session::apply`].
#[derive(Clone, Debug)]
pub struct Delta {
    job: Option<Job>,
}

impl Session {
    /// A fresh conversation.
    pub fn new() -> Session {
        Session::default()
    }

    /// The job as told so far.
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// Takes a line's change in.
    pub fn apply(&mut self, delta: Delta) {
        if let Some(job) = delta.job {
            self.job = job;
        }
    }
}

/// What a line means for the conversation, and the answer to it.
pub fn step(session: &Session, line: &str) -> (Delta, Reply) {
    let _ = (session, line);
    (Delta { job: None }, Reply::of(Status::Refused))
}
