//! Whole conversations, line by line: `tests/talks/*.toml`.
//!
//! Each line has what is typed, what becomes of it, its read-back and how its first row begins.
//! What a builder means by a line is common practice, no source; the figures can be worked by hand.

use pretty_assertions::assert_eq;
use railhand::measure::Tape;
use railhand::reply::shown;
use railhand::session::{Session, step};
use serde::Deserialize;
use std::path::Path;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    talk: Vec<Talk>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Talk {
    about: String,
    line: Vec<Line>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    say: String,
    /// "told" where left out; else "answered", "asks" or "refused".
    is: Option<String>,
    /// The read-back, where it matters.
    read: Option<String>,
    /// What stands somewhere in the answer.
    holds: Option<String>,
}

fn files() -> Vec<(String, File)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/talks");
    let mut names: Vec<_> =
        std::fs::read_dir(folder).expect("the folder is there").map(|e| e.expect("an entry").path()).collect();
    names.sort();
    let read = |path: &std::path::PathBuf| {
        let text = std::fs::read_to_string(path).expect("the file is text");
        (path.display().to_string(), toml::from_str(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display())))
    };
    names.iter().map(read).collect()
}

#[test]
fn each_line_is_answered_as_it_is_written() {
    let mut wrong = 0;
    for (file, talks) in files() {
        for talk in &talks.talk {
            wrong += usize::from(!holds(&file, talk));
        }
    }
    assert_eq!(wrong, 0, "talks go another way; each is printed above");
}

fn holds(file: &str, talk: &Talk) -> bool {
    let mut session = Session::new();
    let mut well = true;
    for line in &talk.line {
        let (delta, reply) = step(&session, &line.say);
        session.apply(delta);
        let text: String = shown(&reply, 4_000, Tape::default()).into_iter().map(|s| s.text + "\n").collect();
        let status = line.is.as_deref().unwrap_or("told");
        let fits = reply.status.name() == status
            && line.read.as_ref().is_none_or(|r| reply.readback.as_ref() == Some(r))
            && line.holds.as_ref().is_none_or(|h| text.contains(h.as_str()));
        if !fits {
            println!(
                "{file}: {}\n  > {}\n  {} {:?}\n{text}",
                talk.about,
                line.say,
                reply.status.name(),
                reply.readback
            );
            well = false;
        }
    }
    well
}

#[test]
fn a_talk_has_lines_and_each_is_checked_by_something() {
    for (file, talks) in files() {
        for talk in &talks.talk {
            assert!(talk.line.len() > 1, "{file}: {}", talk.about);
            let checked = talk.line.iter().filter(|l| l.read.is_some() || l.holds.is_some()).count();
            assert!(checked > 0, "{file}: {}", talk.about);
        }
    }
}
