//! A line looked at before it is sent: what it would be heard as, with nothing answered or changed.

use super::choose::{Choice, choose};
use super::state::Session;
use super::targets;
use crate::grammar::sense::Name;
use crate::grammar::slips::said_once;
use crate::grammar::words::words;
use crate::grammar::{Act, canon};

/// What a line would come to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Peek {
    /// One act, in its plain phrase.
    Heard(String),
    /// It would be asked about.
    Asks,
    /// Nothing is made of it yet.
    Nothing,
}

/// The most words looked at: a longer line is read when it is sent.
pub const MOST_WORDS: usize = 10;

/// What the line would be heard as, if it were sent now.
pub fn peek(session: &Session, line: &str) -> Peek {
    let words = said_once(words(line));
    if words.is_empty() || words.len() > MOST_WORDS {
        return Peek::Nothing;
    }
    if let Some(act) = canon::read(line) {
        return Peek::Heard(canon::write(&act));
    }
    match choose(session, &words) {
        Choice::Do { resolved, .. } => match &resolved.acts[..] {
            [act] if !matches!(act, Act::Talk(_)) => Peek::Heard(canon::write(act)),
            _ => Peek::Nothing,
        },
        Choice::Which { .. } => Peek::Asks,
        _ => Peek::Nothing,
    }
}

impl Session {
    /// The runs' own names, for showing a line in which they are known.
    pub fn names(&self) -> Vec<Name> {
        targets::names(self)
    }

    /// The phrases of the open question's numbered choices, in their order.
    pub fn open_choices(&self) -> Vec<String> {
        self.talk.pending.iter().flat_map(|p| &p.choices).map(canon::write).collect()
    }
}
