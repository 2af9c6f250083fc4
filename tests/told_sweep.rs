//! What is told reaches every answer that hangs on it: pairs of told facts, and a question that has to know one
//! from the other (`tests/told_sweep/rows.toml`).
//!
//! Each row is asked twice over one job that has everything told, once with each fact. That an answer hangs on a
//! fact is common practice, no source: a longer post for a higher guard, fewer balusters of a wider kind.

use railhand::reply::{Reply, Role, Status, reply_json};
use railhand::session::{Session, step};
use serde::Deserialize;
use serde_json::Value;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    /// The job all rows stand on.
    base: Vec<String>,
    row: Vec<Row>,
    /// Facts that rightly change nothing of an answer.
    known_unaffected: Vec<Unaffected>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    one: String,
    other: String,
    ask: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unaffected {
    one: String,
    other: String,
    ask: String,
    because: String,
}

fn file() -> File {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/told_sweep/rows.toml");
    toml::from_str(&std::fs::read_to_string(path).expect("the rows are there")).expect("the rows can be read")
}

fn tell(session: &mut Session, line: &str) -> Result<(), String> {
    let (delta, reply) = step(session, line);
    session.apply(delta);
    (reply.status == Status::Told).then_some(()).ok_or(format!("{line} is not told: {}", shown(line, &reply, session)))
}

/// What is said to a question: its figures, findings and words, without the question itself.
fn shown(line: &str, reply: &Reply, session: &Session) -> String {
    let mut answer = reply.clone();
    answer.lines.retain(|l| l.role != Role::Heard);
    let json = reply_json(line, &answer, session.job());
    let part = |name: &str| json.get(name).cloned().unwrap_or(Value::Null);
    format!("{}\n{}\n{}", part("text"), part("values"), part("findings"))
}

fn answer(base: &Session, fact: &str, ask: &str) -> Result<String, String> {
    let mut session = base.clone();
    tell(&mut session, fact)?;
    let (_, reply) = step(&session, ask);
    let said = shown(ask, &reply, &session);
    let answered = reply.status == Status::Answered;
    answered.then(|| said.clone()).ok_or(format!("{ask} is not answered after {fact}: {said}"))
}

fn differ(base: &Session, one: &str, other: &str, ask: &str) -> Result<bool, String> {
    Ok(answer(base, one, ask)? != answer(base, other, ask)?)
}

fn base(file: &File) -> Session {
    let mut session = Session::new();
    file.base.iter().for_each(|line| tell(&mut session, line).expect("the job all rows stand on"));
    session
}

#[test]
fn what_is_told_reaches_every_answer_that_hangs_on_it() {
    let file = file();
    let job = base(&file);
    let rows = || file.row.iter().flat_map(|r| r.ask.iter().map(move |ask| (r, ask)));
    let deaf = rows().filter_map(|(r, ask)| match differ(&job, &r.one, &r.other, ask) {
        Ok(true) => None,
        Ok(false) => Some(format!("{ask} says the same after {} and after {}", r.one, r.other)),
        Err(says) => Some(says),
    });
    let deaf: Vec<String> = deaf.collect();
    assert!(deaf.is_empty(), "{} of {}\n{}", deaf.len(), rows().count(), deaf.join("\n"));
    assert!(rows().count() >= 60);
}

#[test]
fn what_rightly_changes_nothing_is_listed_with_its_reason() {
    let file = file();
    let job = base(&file);
    for row in &file.known_unaffected {
        assert!(!row.because.is_empty());
        assert_eq!(differ(&job, &row.one, &row.other, &row.ask), Ok(false), "{} {} {}", row.one, row.other, row.ask);
    }
}
