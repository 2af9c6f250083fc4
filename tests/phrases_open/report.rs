//! The table by kind, and the phrases that are not met.

use super::judge::{Judged, Verdict};
use super::record::{Phrase, Talk};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// A phrase, what came of it, and the verdict.
pub type Row<'a> = (&'a Phrase, Talk, Judged);

const NAMES: [(&str, Verdict); 4] =
    [("pass", Verdict::Pass), ("part", Verdict::Part), ("safe", Verdict::Safe), ("wrong", Verdict::Wrong)];

/// The whole report.
pub fn report(rows: &[Row]) -> String {
    let mut out = table(rows);
    for (name, verdict) in NAMES.iter().rev().filter(|(_, v)| *v != Verdict::Pass) {
        for row in rows.iter().filter(|row| row.2.verdict == *verdict) {
            let _ = writeln!(out, "{} {}", name.to_uppercase(), line(row));
        }
    }
    for row in rows.iter().filter(|row| asked(row)) {
        let how = if unread(row) { "ASKED, WORDS NOT READ" } else { "ASKED" };
        let _ = writeln!(out, "{how} {} wants {}: {}", row.0.id, row.0.expect["must_ask"], short(text(row), 160));
    }
    out
}

fn table(rows: &[Row]) -> String {
    let mut kinds: BTreeMap<&str, Vec<Verdict>> = BTreeMap::new();
    for (phrase, _, judged) in rows {
        kinds.entry(&phrase.kind).or_default().push(judged.verdict);
        kinds.entry("~ all").or_default().push(judged.verdict);
    }
    let mut out = format!("{:16}{:>6}{:>6}{:>6}{:>6}{:>6}\n", "kind", "pass", "part", "safe", "wrong", "total");
    for (kind, verdicts) in kinds {
        let counts = NAMES.map(|(_, verdict)| verdicts.iter().filter(|v| **v == verdict).count());
        let [pass, part, safe, wrong] = counts;
        let _ = writeln!(out, "{kind:16}{pass:>6}{part:>6}{safe:>6}{wrong:>6}{:>6}", verdicts.len());
    }
    let unchecked: usize = rows.iter().map(|(_, _, judged)| judged.unchecked.len()).sum();
    let _ = writeln!(out, "{unchecked} expected things are unchecked: a person must judge them");
    out
}

/// True where a question was due and one came: whether it is the right one, a person judges.
fn asked((phrase, talk, _): &Row) -> bool {
    phrase.expect.contains_key("must_ask") && talk.lines.last().is_some_and(|line| line.status() == "asks")
}

/// True where it asked because it could not read some words, and offered nothing.
fn unread((_, talk, _): &Row) -> bool {
    let empty = |name: &str, line: &Value| line[name].as_array().is_none_or(Vec::is_empty);
    talk.lines.last().is_some_and(|line| empty("choices", &line.json) && !empty("unused", &line.json))
}

fn text((_, talk, _): &Row) -> String {
    let last = talk.lines.last();
    last.and_then(|line| line.json["text"].as_str()).unwrap_or("").replace('\n', " / ")
}

/// A phrase in one line: what was said, expected, and came.
fn line(row: &Row) -> String {
    let (phrase, talk, judged) = row;
    let statuses: Vec<&str> = talk.lines.iter().map(|line| line.status()).collect();
    let last = talk.lines.last().map_or(&Value::Null, |line| &line.json);
    let mut expect = phrase.expect.clone();
    expect.shift_remove("calc");
    let unused = match last["unused"].as_array() {
        Some(words) if !words.is_empty() => format!(" | unused {}", last["unused"]),
        _ => String::new(),
    };
    let mut why = judged.fails.clone();
    why.extend(judged.unchecked.iter().map(|key| format!("{key}: unchecked")));
    format!(
        "{} {} {:?} | expect {} | {} | read {} | {}{} | {}",
        phrase.id,
        phrase.kind,
        phrase.say,
        Value::Object(expect),
        statuses.join(","),
        last["readback"],
        short(text(row), 110),
        unused,
        why.join(", ")
    )
}

fn short(text: String, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((at, _)) => format!("{}...", &text[..at]),
        None => text,
    }
}
