//! Told lines taken in without an answer, as a job file holds them; and what the file's
//! keeper must know of a change.

use super::state::{Delta, Focus, Lack, Log, Pending, Session, Talk};
use crate::grammar::Act;
use crate::job::{DeckFact, Fact, Impossible, Job, NotchTold, PostRole, PostSize, RunPatch, Setting, SlotId};
use crate::measure::{Length, Said, exact_phrase};

/// How many facts are taken before the job is put by: what a line that fails costs to take back.
const PUT_BY: usize = 64;

/// A conversation told again, line by line, out of what was kept of it: in the time its facts
/// take. No answer is worked out, and the job is not copied for each line.
#[derive(Debug, Default)]
pub struct Retelling {
    session: Session,
    /// The job as it was some facts ago, and those facts.
    base: Job,
    since: Vec<Fact>,
}

impl Retelling {
    /// The conversation so far.
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// The conversation, told to its end.
    pub fn done(self) -> Session {
        self.session
    }

    /// Takes one told line in, as [`step`](super::step) and [`Session::apply`] would.
    ///
    /// # Errors
    /// Why the line cannot be; nothing of it was taken then.
    pub fn tell(&mut self, facts: Vec<Fact>) -> Result<(), Impossible> {
        let session = &mut self.session;
        if let Some(why) = facts.iter().find_map(|fact| session.job.take(fact).err()) {
            if facts.len() > 1 {
                session.job = again(&self.base, &self.since);
            }
            return Err(why);
        }
        self.since.extend_from_slice(&facts);
        if self.since.len() > PUT_BY {
            self.base = session.job.clone();
            self.since.clear();
        }
        session.talk = Talk { focus: focus_after(session.talk.focus.clone(), &facts), ..Talk::default() };
        session.told.push(facts);
        Ok(())
    }

    /// Makes one group of all told lines after the first `before` of them.
    pub fn join_after(&mut self, before: usize) {
        self.session.join_after(before);
    }
}

/// What is spoken of after facts were told as plain phrases: what "no, make it 12" changes next,
/// and in which unit.
pub(super) fn focus_after(focus: Focus, facts: &[Fact]) -> Focus {
    facts.iter().fold(focus, |focus, fact| match fact {
        Fact::Run(id, patch) => of_run(Focus { run: Some(*id), ..focus }, patch),
        Fact::Set(setting) => Focus { slot: slot(*setting), deck: false, bays: false, ..focus },
        Fact::StairWidth(_) => Focus { slot: Some(SlotId::StairWidth), deck: false, bays: false, ..focus },
        Fact::Deck(DeckFact::New | DeckFact::StartOver) => Focus { deck: true, ..Focus::default() },
        Fact::DeckAlong(_) | Fact::DeckOut(_) => Focus { deck: true, slot: None, bays: false, ..focus },
        Fact::DropRun(_) => Focus::default(),
        _ => focus,
    })
}

fn of_run(focus: Focus, patch: &RunPatch) -> Focus {
    let said = patch.length.map(|told| said_in_phrase(told.length)).or(focus.said);
    Focus { said, bays: patch.bays.is_some(), deck: false, slot: None, ..focus }
}

/// How a phrase says a run's length.
fn said_in_phrase(l: Length) -> Said {
    match exact_phrase(l) {
        phrase if phrase.ends_with("mm") => Said::Metric,
        phrase if phrase.contains('\'') => Said::FeetInches,
        _ => Said::Inches,
    }
}

/// The slot of a setting that is one length.
fn slot(setting: Setting) -> Option<SlotId> {
    match setting {
        Setting::Post(PostRole::All, PostSize::Width(_)) => Some(SlotId::PostWidth),
        Setting::HeightTop(_) => Some(SlotId::HeightTop),
        Setting::GapUnder(_) => Some(SlotId::GapUnder),
        Setting::Baluster(_) => Some(SlotId::BalusterWidth),
        Setting::GapMax(_) => Some(SlotId::GapMax),
        Setting::ClearMax(_) => Some(SlotId::ClearMax),
        Setting::CentreMax(_) => Some(SlotId::CentreMax),
        Setting::Grade(_) => Some(SlotId::Grade),
        Setting::Notch(NotchTold::Deep(_)) => Some(SlotId::NotchDepth),
        Setting::Overhang(_) => Some(SlotId::Overhang),
        Setting::Skirt(_) => Some(SlotId::Skirt),
        Setting::Rim(_) => Some(SlotId::Rim),
        Setting::Line(_) => Some(SlotId::Line),
        Setting::HoldBack(_) => Some(SlotId::HoldBack),
        Setting::Joists(_) => Some(SlotId::Joists),
        Setting::FirstJoist(_) => Some(SlotId::FirstJoist),
        _ => None,
    }
}

fn again(base: &Job, since: &[Fact]) -> Job {
    let mut job = base.clone();
    for fact in since {
        // Each was taken before, on the same job.
        let _ = job.take(fact);
    }
    job
}

impl Session {
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
        Fact::Run(_, patch) => patch.stairs.as_ref().is_some_and(|s| !s.is_empty()),
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
