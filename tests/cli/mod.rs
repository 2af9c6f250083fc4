//! Runs the program as a person's shell would.

#![allow(dead_code)] // each test file uses its part of these

use serde_json::Value;
use std::io::Write as _;
use std::process::{Command, Output, Stdio};

/// The program, with none of the caller's settings.
pub fn command(args: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_railhand"));
    command.args(args).env_remove("RAILHAND_LOG").stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs the program with `typed` on its standard input.
pub fn railhand(args: &[&str], typed: &[u8]) -> Output {
    let mut child = command(args).spawn().expect("the program starts");
    let mut stdin = child.stdin.take().expect("its input is a pipe");
    let typed = typed.to_vec();
    let writer = std::thread::spawn(move || {
        // A program that takes no input closes the pipe: that is its right.
        let _ = stdin.write_all(&typed);
    });
    let out = child.wait_with_output().expect("the program ends");
    writer.join().expect("the writer does not panic");
    out
}

/// The objects of a JSON answer, one a line.
pub fn objects(stdout: &[u8]) -> Vec<Value> {
    let text = std::str::from_utf8(stdout).expect("JSON is UTF-8");
    text.lines().map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}"))).collect()
}

/// `say --json` of some lines.
pub fn json_say(lines: &[&str]) -> Vec<Value> {
    let args: Vec<&str> = ["say", "--json", "--"].into_iter().chain(lines.iter().copied()).collect();
    let out = railhand(&args, b"");
    assert_eq!(out.status.code(), Some(0), "{}", String::from_utf8_lossy(&out.stderr));
    objects(&out.stdout)
}

/// Fails on any byte that a terminal would act on, or on the traces of a panic.
pub fn assert_harmless(out: &Output) {
    let text = String::from_utf8(out.stdout.clone()).expect("answers are UTF-8");
    let raw = text.chars().find(|c| (c.is_control() && *c != '\n') || ('\u{202a}'..='\u{202e}').contains(c));
    assert_eq!(raw, None, "in {text:?}");
    let errors = String::from_utf8_lossy(&out.stderr);
    assert!(errors.is_empty(), "{errors}");
}
