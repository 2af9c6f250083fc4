//! The corpus of talk: every block is written in the form, names rows and topics that exist, and keeps to what its lines say.
//!
//! What the lines mean was labeled by hand (common practice, no source). These checks find slips of the pen, not wrong judgement.

use railhand::grammar::scores::{Scores, source_of};
use railhand::quantity::{Kind, ROWS, Row};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

#[path = "talk_corpus/form.rs"]
mod form;
#[path = "talk_corpus/spoken.rs"]
mod spoken;
use form::{ACTS, Block, Meaning, Q, Said, Value, block};

/// "GapUnder" is written "gap-under".
fn kebab(name: &str) -> String {
    let dashed = |(at, c): (usize, char)| match c.is_ascii_uppercase() && at > 0 {
        true => format!("-{}", c.to_ascii_lowercase()),
        false => c.to_ascii_lowercase().to_string(),
    };
    name.char_indices().map(dashed).collect()
}

/// The names a block may use.
struct Names {
    rows: BTreeMap<String, &'static Row>,
    asked: BTreeSet<String>,
}

fn names() -> Names {
    let text = read("topics.txt");
    let asked = text.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with(['#', '['])).map(str::to_owned);
    Names { rows: ROWS.iter().map(|r| (kebab(&format!("{:?}", r.id)), r)).collect(), asked: asked.collect() }
}

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/talk")
}

fn read(file: &str) -> String {
    std::fs::read_to_string(folder().join(file)).unwrap_or_else(|e| panic!("{file}: {e}"))
}

/// Every block of every file, or what is wrong with how it is written.
fn corpus() -> Vec<Result<Block, String>> {
    let entries = std::fs::read_dir(folder()).expect("the corpus is here");
    let mut files: Vec<String> =
        entries.map(|e| e.expect("an entry").file_name().to_string_lossy().into_owned()).collect();
    files.sort();
    let texts = files.iter().filter(|f| f.ends_with(".txt") && *f != "topics.txt").map(|f| (f, read(f)));
    texts.flat_map(|(f, text)| blocks(f, &text)).collect()
}

fn blocks(file: &str, text: &str) -> Vec<Result<Block, String>> {
    let parts = text.split("\n\n").filter(|b| b.lines().any(|l| !l.trim().is_empty() && !l.starts_with('#')));
    parts.map(|b| block(file, b)).collect()
}

fn good() -> Vec<Block> {
    corpus().into_iter().filter_map(Result::ok).collect()
}

/// What is wrong with a fact: a row that is not in the table, a value its kind does not take, a size out of its range.
fn fault(said: &Said, names: &Names) -> Option<String> {
    let Some(row) = names.rows.get(&said.row) else { return Some(format!("no row {}", said.row)) };
    let within = |q: &Q| *q >= Q::from_integer(row.sane.0.into()) && *q <= Q::from_integer(row.sane.1.into());
    let wrong = match (&said.value, row.kind) {
        (Value::Bare | Value::Words | Value::Relative, _) => return None,
        (Value::Length(q), Kind::Length) | (Value::Number(q), Kind::Count) => !within(q),
        // A thickness of five quarters is a nominal size.
        (Value::Lumber, kind) => kind != Kind::Lumber,
        (Value::Number(q), Kind::Lumber) => *q != Q::new(5, 4),
        (Value::Number(_), Kind::Length) | (Value::Length(_), _) => true,
        (Value::Number(_), _) => false,
    };
    wrong.then(|| format!("{} does not take {:?}", said.row, said.value))
}

fn faults(meaning: &Meaning, names: &Names) -> Vec<String> {
    let act = (!ACTS.contains(&meaning.act.as_str())).then(|| format!("no act {}", meaning.act));
    let known = |w: &&String| !names.rows.contains_key(*w) && !names.asked.contains(*w);
    let wants = meaning.wants.iter().filter(known).map(|w| format!("no row, topic or list {w}"));
    act.into_iter().chain(wants).chain(meaning.facts.iter().filter_map(|f| fault(f, names))).collect()
}

#[test]
fn every_block_is_written_in_the_form() {
    let wrong: Vec<String> = corpus().into_iter().filter_map(Result::err).collect();
    assert!(wrong.is_empty(), "{} blocks\n{}", wrong.len(), wrong.join("\n"));
    assert!(good().len() > 1900, "{} blocks", good().len());
}

#[test]
fn every_name_is_a_row_or_listed_and_every_value_is_in_its_range() {
    let names = names();
    let said = |b: &Block| {
        b.meanings.iter().flat_map(|m| faults(m, &names)).map(|f| format!("{}: {f}", b.name)).collect::<Vec<_>>()
    };
    let wrong: Vec<String> = good().iter().flat_map(said).collect();
    assert!(wrong.is_empty(), "{} faults\n{}", wrong.len(), wrong.join("\n"));
}

/// Numbers of the facts: how many, and those no line of their block says.
fn unsaid(blocks: &[Block]) -> (usize, Vec<String>) {
    let (mut all, mut missing) = (0, Vec::new());
    for block in blocks {
        for (at, meaning) in block.meanings.iter().enumerate() {
            let heard: BTreeSet<i128> = block.says.iter().flat_map(|s| spoken::numbers(&s[at])).collect();
            for fact in &meaning.facts {
                let Some(said) = spoken::says(&heard, &fact.value) else { continue };
                all += 1;
                if !said {
                    missing.push(format!("{}: {} {:?}", block.name, fact.row, fact.value));
                }
            }
        }
    }
    (all, missing)
}

#[test]
fn the_numbers_of_a_meaning_are_said_in_its_lines() {
    let (all, missing) = unsaid(&good());
    let share = format!("{} of {all} numbers are said; not said:\n{}", all - missing.len(), missing.join("\n"));
    println!("{share}");
    assert!(all > 3500 && missing.len() * 20 <= all, "{share}");
}

/// The weights say which corpus and which features they come from: whoever adds a line trains anew.
#[test]
fn the_committed_weights_come_from_this_corpus() {
    let entries = std::fs::read_dir(folder()).expect("the corpus is here");
    let all = entries.map(|e| e.expect("an entry").file_name().to_string_lossy().into_owned());
    let mut files: Vec<String> = all.filter(|f| f.ends_with(".txt") && f != "topics.txt").collect();
    files.sort();
    let texts: Vec<(String, String)> = files.into_iter().map(|f| (f.clone(), read(&f))).collect();
    let corpus = || texts.iter().map(|(name, text)| (name.as_str(), text.as_str()));
    let weights = std::fs::read(folder().join("weights.bin")).expect("the weights are here");
    let scores = Scores::read(&weights).expect("in their form");
    assert_eq!(scores.source(), source_of(corpus()), "train: cd grammar/train && cargo run --release");
    assert_ne!(source_of(corpus()), source_of(corpus().skip(1)), "another corpus has another number");
    assert!(weights.len() < 1_000_000, "{} bytes", weights.len());
}

/// Lines that stand in two blocks of different meaning, but where every one of them says so.
fn doubles(blocks: &[Block]) -> Vec<String> {
    let mut seen: BTreeMap<String, Vec<&Block>> = BTreeMap::new();
    for block in blocks {
        block.says.iter().for_each(|s| seen.entry(s.join(" || ").to_lowercase()).or_default().push(block));
    }
    let apart = |b: &[&Block]| b.iter().any(|x| x.written != b[0].written) && b.iter().any(|x| !x.ambiguous);
    seen.iter().filter(|(_, b)| apart(b)).map(|(line, b)| format!("{line:?} in {} blocks", b.len())).collect()
}

#[test]
fn no_line_means_two_things() {
    let wrong = doubles(&good());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Each check finds what it is there to find.
#[test]
fn what_is_wrong_with_a_block_is_found() {
    let names = names();
    let of = |text: &str| block("here", text);
    let found = |text: &str| of(text).expect("in the form").meanings.iter().flat_map(|m| faults(m, &names)).count();
    assert!(of("ask gap |").is_err(), "nothing said");
    assert!(of("ask gap\n> gap").is_err(), "no bar");
    assert!(of("ask gap | bay-clear 5 8\"\n> gap").is_err(), "a number in two");
    assert!(of("tell | bay-clear 58\"\nask gap |\n> 58 clear").is_err(), "one line for two meanings");
    assert_eq!(found("ask gap | bay-clear 58\"; post-size 4x4; bay-count +1; run#2.run-name left\n> gap"), 0);
    for wrong in
        ["say gap | gap 4\"", "ask gapp |", "ask gap | bay-clear 58", "ask gap | bay-clear 500\"", "ask gap | bays 3"]
    {
        assert_eq!(found(&format!("{wrong}\n> gap")), 1, "{wrong}");
    }
    // 58 is 4 ft 10: both are said.
    let good = "tell | bay-clear 58\"; baluster-width 1 1/2\"; price 2.35\n> four ten clear, inch and a half, 2.35";
    assert_eq!(unsaid(&of(good).into_iter().collect::<Vec<_>>()), (3, Vec::new()));
    // 59 is 4 ft 11, and nobody said 11.
    let off = of("tell | bay-clear 59\"\n> four ten clear");
    assert_eq!(unsaid(&off.into_iter().collect::<Vec<_>>()).1.len(), 1);
    let twice = "ask gap |\n> gap?\n\nask pitch |\n> Gap?";
    let two: Vec<Block> = blocks("here", twice).into_iter().flatten().collect();
    assert_eq!(doubles(&two).len(), 1);
}
