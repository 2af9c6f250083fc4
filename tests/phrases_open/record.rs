//! A phrase of the file, and the talk that comes of it.

use railhand::reply::{job_json, reply_json};
use railhand::session::{Session, step};
use serde::Deserialize;
use serde_json::{Map, Value};
use std::panic::{AssertUnwindSafe, catch_unwind};

/// One conversation of the file.
#[derive(Debug, Deserialize)]
pub struct Phrase {
    /// Its name.
    pub id: String,
    /// Its kind.
    #[serde(rename = "cat")]
    pub kind: String,
    /// The lines typed, in order.
    pub say: Vec<String>,
    /// What is expected of it.
    pub expect: Map<String, Value>,
}

/// The phrases of a file of JSON lines.
///
/// # Errors
/// Which line is no phrase, and why; a file of no phrases, a phrase of no lines, or one that
/// expects nothing.
pub fn read(text: &str) -> Result<Vec<Phrase>, String> {
    let rows = text.lines().enumerate().filter(|(_, row)| !row.trim().is_empty());
    let phrases: Vec<Phrase> = rows
        .map(|(i, row)| serde_json::from_str(row).map_err(|e| format!("line {}: {e}", i + 1)))
        .collect::<Result<_, _>>()?;
    match phrases.iter().find(|p| p.say.is_empty() || p.expect.is_empty()) {
        Some(p) => Err(format!("{} says nothing or expects nothing", p.id)),
        None if phrases.is_empty() => Err("no phrases".to_owned()),
        None => Ok(phrases),
    }
}

/// One line of a talk.
#[derive(Clone, Debug)]
pub struct Line {
    /// The JSON object of the answer.
    pub json: Value,
    /// The job before the line.
    pub before: Value,
}

impl Line {
    /// `told`, `answered`, `asks` or `refused`.
    pub fn status(&self) -> &str {
        self.json["status"].as_str().unwrap_or("")
    }

    /// True where the line was not taken: it asked or refused.
    pub fn stuck(&self) -> bool {
        matches!(self.status(), "asks" | "refused")
    }

    /// True where the line left the job another one.
    pub fn changed(&self) -> bool {
        self.json["job"] != self.before
    }
}

/// A whole talk; it ends early where a line panicked.
#[derive(Clone, Debug, Default)]
pub struct Talk {
    /// The lines answered.
    pub lines: Vec<Line>,
    /// True where the program panicked.
    pub crashed: bool,
}

/// Talks `say` through in a fresh conversation.
pub fn talk(say: &[String]) -> Talk {
    let mut session = Session::new();
    let mut talk = Talk::default();
    // A line break inside a line starts the next, as it does for `railhand say`.
    for line in say.iter().flat_map(|line| line.split('\n')) {
        let before = job_json(session.job());
        let Ok((delta, reply)) = catch_unwind(AssertUnwindSafe(|| step(&session, line))) else {
            talk.crashed = true;
            break;
        };
        session.apply(delta);
        talk.lines.push(Line { json: reply_json(line, &reply, session.job()), before });
    }
    talk
}
