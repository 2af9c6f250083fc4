//! The README's worked talk is what the program says today.

use pretty_assertions::assert_eq;
use std::io::Write;
use std::process::{Command, Stdio};

/// The text of the first fenced block behind a heading.
fn block(heading: &str) -> String {
    let readme = include_str!("../README.md");
    let behind = readme.split_once(heading).expect("the heading stands").1;
    let fenced = behind.split_once("```text\n").expect("a block follows").1;
    fenced.split_once("```").expect("it ends").0.to_owned()
}

fn answers(lines: &[&str]) -> String {
    let mut program = Command::new(env!("CARGO_BIN_EXE_railhand"));
    let mut child = program.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().expect("it starts");
    let typed = format!("{}\n", lines.join("\n"));
    child.stdin.take().expect("a pipe").write_all(typed.as_bytes()).expect("it reads");
    let out = child.wait_with_output().expect("it ends");
    String::from_utf8(out.stdout).expect("plain text")
}

/// Lines without the blank ones between answers.
fn filled(text: &str) -> Vec<&str> {
    text.lines().filter(|l| !l.is_empty()).collect()
}

#[test]
fn the_worked_talk_is_what_is_said() {
    let shown = block("## A worked talk");
    let typed: Vec<&str> = shown.lines().filter_map(|l| l.strip_prefix("> ")).collect();
    assert!(typed.len() > 3, "{typed:?}");
    let said = answers(&typed);
    let printed: Vec<&str> = filled(&shown).into_iter().filter(|l| !l.starts_with("> ")).collect();
    assert_eq!(filled(&said), printed);
}
