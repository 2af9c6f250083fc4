//! Runs a file of conversations, with what a careful hand on the crew makes of each, through
//! the JSON contract of README.md.
//!
//! `RAILHAND_PHRASES=FILE cargo test --test phrases_open -- --nocapture` prints a table by kind
//! and every phrase that is not met. The file holds a JSON object a line: `id`, `cat` (the kind),
//! `say` (the lines typed, in a fresh conversation) and `expect`. What a builder means by a
//! phrase is common practice, no source; the figures expected come with the file.
//!
//! - PASS: all that is expected came.
//! - PART: all that can be checked came, but some of it only a person can judge.
//! - SAFE: not met, but every line that failed asked or refused, and nothing wrong is in the
//!   job or the figures.
//! - WRONG: something else was told or answered: a silent misreading.

mod answer;
mod check;
mod figures;
mod judge;
mod record;
mod report;
mod runs;
mod said;
mod settings;
mod verdicts;

use judge::{Verdict, judge};
use record::{Phrase, talk};
use report::{Row, report};
use std::fs;

/// The kinds that must never be misread in silence.
const NEVER_WRONG: [&str; 8] =
    ["measure", "sum", "describe-run", "post", "correction", "ambiguous", "bad-input", "out-of-scope"];

#[test]
fn no_phrase_of_the_file_is_misread_in_silence() {
    let Some(path) = std::env::var_os("RAILHAND_PHRASES") else {
        println!("skipped");
        return;
    };
    let text = fs::read_to_string(&path).expect("RAILHAND_PHRASES names a file that can be read");
    let phrases = record::read(&text).unwrap_or_else(|e| panic!("{e}"));
    let rows: Vec<Row> = phrases.iter().map(row).collect();
    print!("{}", report(&rows));
    let misread: Vec<&str> = rows.iter().filter(|row| misread(row)).map(|(phrase, ..)| phrase.id.as_str()).collect();
    assert!(misread.is_empty(), "{} misread in silence: {}", misread.len(), misread.join(" "));
}

fn row(phrase: &Phrase) -> Row<'_> {
    let talk = talk(&phrase.say);
    let judged = judge(&phrase.expect, &talk);
    (phrase, talk, judged)
}

fn misread((phrase, _, judged): &Row) -> bool {
    judged.verdict == Verdict::Wrong && NEVER_WRONG.contains(&phrase.kind.as_str())
}
