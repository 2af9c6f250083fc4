//! Words, status and cautions of the last answer.

use super::check::{Found, Seen};
use super::record::Line;
use serde_json::Value;

/// Checks what is expected of the words; `None` where `key` is none of that.
pub fn look(key: &str, want: &Value, seen: &Seen) -> Option<Found> {
    let status = seen.status();
    Some(match key {
        "must_ask" => Found::has(status == "asks", format!("status {status}")),
        // What may be asked need not be.
        "or_ask" => Found::Met,
        "must_ask_or_default" if status == "asks" => Found::Met,
        "must_refuse" | "out_of_scope" => Found::has(status == "refused", format!("status {status}")),
        "must_mention" => mentions(want, seen, true),
        "must_mention_any" => mentions(want, seen, false),
        "must_warn" => Found::has(warns(seen), "no caution"),
        "not_plain_yes" => Found::has(first_word(&seen.text()) != "yes", "a plain yes"),
        "answer" => answers(want, seen),
        "guard_needed" => needed(want, seen),
        "nominal" => Found::has(want.as_str().is_some_and(|w| seen.text().contains(w)), "not named"),
        "shade" => shade(want, seen),
        "approx" => Found::has(seen.text().contains("about"), "not called about"),
        "state_unchanged" => unchanged(seen.lines),
        // A talk that crashed is judged wrong before anything is looked at.
        "no_crash" => Found::Met,
        _ => return None,
    })
}

fn mentions(want: &Value, seen: &Seen, every: bool) -> Found {
    let text = seen.text();
    let Some(words) = want.as_array() else { return Found::Unchecked };
    let has = |word: &Value| word.as_str().is_some_and(|w| text.contains(&w.to_lowercase()));
    let met = if every { words.iter().all(has) } else { words.iter().any(has) };
    Found::has(met, format!("no mention of {want}"))
}

/// A finding that stops or wants a check, or a caution in the answer.
fn warns(seen: &Seen) -> bool {
    let findings = seen.last["findings"].as_array().into_iter().flatten();
    let grave = findings.filter_map(|f| f["level"].as_str()).any(|level| matches!(level, "stop" | "check"));
    grave || seen.text().lines().any(|line| line.starts_with("careful: "))
}

fn first_word(text: &str) -> &str {
    text.split(|c: char| !c.is_alphanumeric()).find(|word| !word.is_empty()).unwrap_or("")
}

/// A yes or no must be the first word to be sure of; other answers must stand in the text.
fn answers(want: &Value, seen: &Seen) -> Found {
    let (text, Some(want)) = (seen.text(), want.as_str()) else { return Found::Unchecked };
    match (want, first_word(&text)) {
        _ if matches!(seen.status(), "asks" | "refused") => Found::Missing("not answered".to_owned()),
        ("yes", "no") | ("no", "yes") => Found::Missing(format!("the answer is not {want}")),
        ("yes" | "no", first) if first == want => Found::Met,
        ("yes" | "no", _) => Found::Unchecked,
        _ => Found::has(text.contains(want), format!("the answer is not {want}")),
    }
}

fn needed(want: &Value, seen: &Seen) -> Found {
    match (want.as_bool(), seen.values()["guard_needed"].as_bool()) {
        (Some(want), Some(got)) => Found::has(want == got, format!("guard needed: {got}")),
        (Some(want), None) => answers(&if want { "yes".into() } else { "no".into() }, seen),
        _ => Found::Unchecked,
    }
}

fn shade(want: &Value, seen: &Seen) -> Found {
    let word = match want.as_str() {
        Some("+") => "strong",
        Some("-") => "shy",
        _ => return Found::Unchecked,
    };
    Found::has(seen.readback().contains(word), format!("not read back as {word}"))
}

/// The job before the first line that supposes, or else before the last line, is the job
/// after the talk.
fn unchanged(lines: &[Line]) -> Found {
    let supposes = |line: &Line| line.json["readback"].as_str().is_some_and(|r| r.starts_with("suppose"));
    let from = lines.iter().find(|line| supposes(line)).or(lines.last());
    let (Some(from), Some(last)) = (from, lines.last()) else { return Found::Unchecked };
    Found::is(from.before == last.json["job"], "the job changed")
}
