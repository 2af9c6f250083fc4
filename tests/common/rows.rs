//! Questions of rows as tables: the phrase, how its answer begins, figures among its values.
#![allow(dead_code)] // each test crate uses its own part of this

use super::talk::{Last, told_then};
use railhand::reply::Role;
use serde_json::Value;

/// The question, how its answer's first line begins, and figures among the values.
pub type Case = (&'static str, &'static str, &'static [(&'static str, &'static str)]);

fn shown(v: &Value) -> String {
    let one = |v: &Value| v.as_str().map_or_else(|| v.to_string(), str::to_owned);
    if v.is_object() { one(&v["in"]) } else { one(v) }
}

/// The first line of the answer.
pub fn first(last: &Last) -> String {
    last.text().lines().next().unwrap_or_default().trim().to_owned()
}

/// Asks it behind what is told: read back as it is, its first line and figures as said, little beside them, and nothing kept.
pub fn holds(told: &[&str], (phrase, begins, values): &Case) {
    let lines: Vec<&str> = told.iter().copied().chain([*phrase]).collect();
    let last = told_then(&lines);
    assert_eq!(last.reply.readback.as_deref(), Some(*phrase), "{phrase}");
    assert!(first(&last).starts_with(begins), "{phrase}\n{}", last.text());
    let details = last.reply.lines.iter().filter(|line| line.role == Role::Detail).count();
    assert!(details <= 2, "{phrase}: a line of working and one of what was taken are enough\n{}", last.text());
    let json = last.json();
    for (name, figure) in *values {
        assert_eq!(shown(&json["values"][name]), *figure, "{phrase}: {name} of {}", json["values"]);
    }
    assert_eq!(last.job(), last.was, "{phrase}: nothing is kept");
}
