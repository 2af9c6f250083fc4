//! The rule registry: id, what it says, its source, its level, its check.
//!
//! A rule is one row of [`RULES`]. It looks at the job and its layout, and says what it
//! found in spans whose numbers are figures. Each row carries an example that trips it
//! and one that does not; a test sweeps the table.

mod about;
mod bays;
mod deck;
mod examples;
mod framing;
mod guard;
mod notch;
mod rails;
mod registry;
mod report;
mod runs;
mod say;
mod stairs;
mod strength;

pub use about::{Matter, matter, matter_of, stops_on};
pub use registry::RULES;
pub use report::{Report, cautions, check, report, report_on};

use crate::job::{Fact, Job};
use crate::layout::Layout;
use crate::limits::{self, Limit};
use crate::reply::{Finding, Level, Span};

/// One rule.
#[derive(Debug)]
pub struct Rule {
    /// Its name: kebab-case, naming the fault, not the cure.
    pub id: &'static str,
    /// The fault in a few words.
    pub title: &'static str,
    /// What it says, in a sentence or two.
    pub says: &'static str,
    /// The limit it holds the job to; its source is the rule's.
    pub limit: &'static Limit,
    /// How much a finding of it matters.
    pub level: Level,
    /// What it finds: one entry for each fault.
    pub check: fn(&Job, &Layout) -> Vec<Vec<Span>>,
    /// An example job that trips it.
    pub trips: fn() -> Vec<Fact>,
    /// A near one that does not.
    pub passes: fn() -> Vec<Fact>,
}

impl Rule {
    /// Where what the rule holds the job to comes from: published, or told for the job.
    pub fn source(&self) -> &'static str {
        if self.limit.id == limits::TOLD_SPACING.id { "as told, for this job" } else { self.limit.source }
    }

    /// What this rule finds in the job as laid out.
    pub fn findings(&self, job: &Job, layout: &Layout) -> Vec<Finding> {
        let finding = |spans| Finding { rule: self.id, level: self.level, spans, source: self.source() };
        (self.check)(job, layout).into_iter().map(finding).collect()
    }
}

/// The rule of that id, if there is one.
pub fn find(id: &str) -> Option<&'static Rule> {
    RULES.iter().find(|r| r.id == id)
}
