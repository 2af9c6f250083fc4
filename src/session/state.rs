//! What a conversation remembers, and what one line changes in it.

use crate::figure::Fig;
use crate::grammar::ask::{Infill, RowAsk, StrengthAsk};
use crate::grammar::draft::Reading;
use crate::grammar::{Act, canon};
use crate::job::{Fact, Job, PostRole, RunId, SlotId};
use crate::measure::{Length, Said};
use crate::reply::Finding;

/// A conversation so far: the job, and what was said about it.
#[derive(Clone, Debug)]
pub struct Session {
    pub(super) job: Job,
    /// The facts of every told line, for undo.
    pub(super) told: Vec<Vec<Fact>>,
    /// Lines taken back, newest last.
    pub(super) undone: Vec<Vec<Fact>>,
    pub(super) talk: Talk,
    /// How many columns a drawing may take.
    pub(super) width: usize,
}

/// The part of a conversation that every line renews.
#[derive(Clone, Debug, Default)]
pub(super) struct Talk {
    /// What "it" means.
    pub focus: Focus,
    /// A question still open.
    pub pending: Option<Pending>,
    /// Facts supposed, waiting for "keep it".
    pub supposed: Vec<Fact>,
    /// The figures of the last answer, for "why?".
    pub last: Vec<(&'static str, Fig)>,
    /// Every figure the last answer said, for "where'd you get 58 from".
    pub said: Vec<Fig>,
    /// What the rules found in it, for "says who".
    pub found: Vec<Finding>,
    /// The balusters in an opening that the last line asked about.
    pub filling: Option<Infill>,
    /// The question about strength that the last line asked.
    pub weighed: Option<StrengthAsk>,
    /// The rows the last question was about, with what it gave: "and with 14?" asks it again with that changed.
    pub asked: Option<RowAsk>,
    /// The last lines said, the last one last: no more than [`Talk::LINES`].
    pub lines: Vec<String>,
    /// A line that was likely to tell something, and was not taken: an answer that stands without it says so.
    pub lost: Option<String>,
    /// The job as it was last listed: cut list, parts, buying list or cost.
    pub listed: Option<Job>,
}

impl Talk {
    /// How many lines back a line may lean on.
    const LINES: usize = 2;

    /// A longer line, in characters, is no line to lean on.
    pub const LONG: usize = 600;

    /// Keeps a line for those after it.
    pub fn heard(&mut self, line: &str) {
        if line.chars().nth(Talk::LONG).is_none() {
            self.lines.push(line.to_owned());
        }
        let over = self.lines.len().saturating_sub(Talk::LINES);
        self.lines.drain(..over);
    }
}

/// What was spoken of last.
#[derive(Clone, Debug, Default)]
pub(super) struct Focus {
    /// The run.
    pub run: Option<RunId>,
    /// How the last length's unit was said: a bare correction inherits it.
    pub said: Option<Said>,
    /// The last line told the deck's sides.
    pub deck: bool,
    /// The last line told a bay count.
    pub bays: bool,
    /// The slot last set, where it was not a run.
    pub slot: Option<SlotId>,
    /// Whose posts' size was told last.
    pub role: Option<PostRole>,
    /// The clear opening asked about or told last.
    pub opening: Option<Length>,
}

/// An open question.
#[derive(Clone, Debug)]
pub(super) struct Pending {
    /// What each numbered choice does.
    pub choices: Vec<Act>,
    /// A reading that lacks one measure, which the next line may give.
    pub lacks: Option<(Reading, Lack)>,
    /// What the line likely told: it is taken so where the talk goes on without an answer.
    pub likely: Option<Likely>,
}

/// A telling that was likely, and offered.
#[derive(Clone, Debug)]
pub(super) struct Likely {
    /// What it tells, or gives for what is asked next.
    pub act: Act,
    /// Words of the line that have no part in it, as typed.
    pub spare: Vec<String>,
}

/// The measure a reading lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lack {
    /// How wide the stairs are.
    StairWidth,
}

/// What one line changes: apply it with [`Session::apply`].
#[derive(Clone, Debug)]
pub struct Delta {
    pub(super) job: Option<Job>,
    pub(super) log: Log,
    pub(super) talk: Talk,
}

/// What a line does to the told lines.
#[derive(Clone, Debug)]
pub enum Log {
    /// Nothing.
    Same,
    /// One more told line.
    Told(Vec<Fact>),
    /// The last told line taken back.
    Undo,
    /// The last line taken back, told again.
    Redo,
}

impl Default for Session {
    fn default() -> Session {
        Session { job: Job::default(), told: Vec::new(), undone: Vec::new(), talk: Talk::default(), width: 72 }
    }
}

impl Session {
    /// A fresh conversation, its drawings for 72 columns.
    pub fn new() -> Session {
        Session::default()
    }

    /// Sets how many columns a drawing may take; never fewer than 30.
    pub fn set_width(&mut self, columns: usize) {
        self.width = columns.clamp(30, 100);
    }

    /// Every told line that stands, as a plain phrase, in the order told.
    pub fn told_phrases(&self) -> Vec<String> {
        self.told.iter().map(|facts| canon::write(&Act::Tell(facts.clone()))).collect()
    }

    /// The job as told so far.
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// Takes a line's change in.
    pub fn apply(&mut self, delta: Delta) {
        match delta.log {
            Log::Same => {}
            Log::Told(facts) => {
                self.told.push(facts);
                self.undone.clear();
            }
            Log::Undo => self.undone.extend(self.told.pop()),
            Log::Redo => self.told.extend(self.undone.pop()),
        }
        if let Some(job) = delta.job {
            self.job = job;
        }
        self.talk = delta.talk;
    }
}
