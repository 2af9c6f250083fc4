//! A telling that was offered, and that the talk goes on from without an answer: it is taken as meant, and named.
//!
//! Who is asked "did you mean this?" and goes on talking of it has answered. Without this a talk of several lines stops at its first loose one.

use super::choose::pending;
use super::resolve::Resolved;
use super::retell::focus_after;
use super::state::{Delta, Likely, Log, Session};
use super::step::{perform, stepped};
use crate::grammar::items::likeliest;
use crate::grammar::sense::{Sense, Verb};
use crate::grammar::words::{Word, words};
use crate::grammar::{Act, canon};
use crate::job::Fact;
use crate::reply::{Line, Reply, Role, Span, Status, Typed};

/// What is taken as meant, before the line that went on from it.
#[derive(Clone, Debug)]
pub struct Meant {
    /// The change: to be taken in before the line.
    pub delta: Delta,
    /// The answer to the telling by itself.
    pub reply: Reply,
    /// The plain phrase that tells it.
    pub phrase: String,
    spare: Vec<Typed>,
}

/// What this line takes as meant of the line before it; `None` where nothing was offered, where the line answers the offer, takes it back or
/// says the same another way.
pub fn meant(session: &Session, line: &str) -> Option<Meant> {
    let likely = session.talk.pending.as_ref()?.likely.as_ref()?;
    let words = words(line);
    if words.is_empty() || takes_back(&words) || pending(session, &words).is_some() {
        return None;
    }
    let told = likely.act.told();
    if matches!(canon::read(line), Some(Act::Talk(_))) || says_again(session, line, told) {
        return None;
    }
    let Likely { act, spare } = likely.clone();
    let phrase = canon::write(&act);
    let focus = focus_after(session.talk.focus.clone(), told);
    let (mut delta, reply) = perform(session, Resolved { acts: vec![act], ask: false, focus, then: None });
    delta.talk.lost = None;
    let spare = spare.iter().map(|s| Typed::new(s)).collect();
    (reply.status != Status::Refused).then_some(Meant { delta, reply, phrase, spare })
}

impl Meant {
    /// Names it in the answer to the line that went on from it.
    pub fn named_in(self, mut reply: Reply) -> Reply {
        // What was only given is no told line that undo could take back.
        let told = matches!(self.delta.log, Log::Told(_));
        let ends = if told { ". Say \"undo\" if it was not so." } else { "." };
        let says = [Span::Say("Took that as: "), Span::Phrase(self.phrase), Span::Say(ends)];
        let at = reply.lines.iter().position(|l| l.role == Role::Heard).unwrap_or(reply.lines.len());
        reply.lines.insert(at, Line::new(Role::Detail, says));
        reply.unused.extend(self.spare);
        reply
    }
}

/// True for a line that begins by denying or taking back.
fn takes_back(words: &[Word]) -> bool {
    let back = |s: &Sense| matches!(s, Sense::Not | Sense::Verb(Verb::Repair));
    likeliest(words, &[]).first().is_some_and(|item| item.senses().iter().any(back))
}

/// True where the line by itself tells, or may tell, one of these facts, or a run of the same length: it was said again.
fn says_again(session: &Session, line: &str, facts: &[Fact]) -> bool {
    let (delta, _) = stepped(session, line);
    let told = if let Log::Told(facts) = &delta.log { facts.as_slice() } else { &[] };
    let offered = delta.talk.pending.iter().flat_map(|p| &p.choices);
    let offered = offered.map(Act::told);
    let length = |fact: &Fact| if let Fact::Run(_, patch) = fact { patch.length } else { None };
    let same = |a: &Fact, b: &Fact| a == b || length(a).is_some() && length(a) == length(b);
    told.iter().chain(offered.flatten()).any(|again| facts.iter().any(|fact| same(again, fact)))
}
