//! A conversation from its beginning, and what came of its last line.
#![allow(dead_code)] // each test crate uses its own part of this

use railhand::job::Job;
use railhand::measure::Tape;
use railhand::reply::{Reply, Status, plain, reply_json};
use railhand::session::{Session, step};
use serde_json::Value;

/// What came of the last line said.
pub struct Last {
    /// Its reply.
    pub reply: Reply,
    /// The job before it.
    pub was: Job,
    /// The session after it.
    pub session: Session,
    line: String,
}

impl Last {
    /// The reply as JSON.
    pub fn json(&self) -> Value {
        reply_json(&self.line, &self.reply, self.session.job())
    }

    /// The reply as text, its lines not wrapped.
    pub fn text(&self) -> String {
        plain(&self.reply, usize::MAX, Tape::SIXTEENTHS)
    }

    /// The job after it.
    pub fn job(&self) -> Job {
        self.session.job().clone()
    }
}

/// Says the lines, whatever becomes of them.
pub fn talk(lines: &[&str]) -> Last {
    let (last, before) = lines.split_last().expect("a talk says something");
    say(before, last, |_, _| ())
}

/// Says the lines; all before the last tell something.
pub fn told_then(lines: &[&str]) -> Last {
    let (last, before) = lines.split_last().expect("a talk says something");
    say(before, last, |line, reply| assert_eq!(reply.status, Status::Told, "{line}"))
}

fn say(before: &[&str], last: &str, holds: fn(&str, &Reply)) -> Last {
    let mut session = Session::new();
    for line in before {
        let (delta, reply) = step(&session, line);
        holds(line, &reply);
        session.apply(delta);
    }
    let was = session.job().clone();
    let (delta, reply) = step(&session, last);
    session.apply(delta);
    Last { reply, was, session, line: last.to_owned() }
}

/// The text of what came of the last line; all before it tell something.
pub fn text(lines: &[&str]) -> String {
    told_then(lines).json()["text"].as_str().expect("text").to_owned()
}

/// A length among the values that came of the last line, in inches; "none" where it is not there.
pub fn value(lines: &[&str], name: &str) -> String {
    told_then(lines).json()["values"][name]["in"].as_str().unwrap_or("none").to_owned()
}

/// The text of what came of the last line has each of these in it.
#[track_caller]
pub fn holds(lines: &[&str], wanted: &[&str]) {
    let text = text(lines);
    wanted.iter().for_each(|w| assert!(text.contains(w), "{lines:?}\nno {w:?} in: {text}"));
}
