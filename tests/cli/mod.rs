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

/// A folder of one test's own, gone with it.
pub struct Folder(std::path::PathBuf);

impl Folder {
    pub fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("railhand-cli-{}-{name}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).expect("the temporary folder is writable");
        Folder(path)
    }

    /// A name in the folder.
    pub fn path(&self, name: &str) -> String {
        self.0.join(name).to_str().expect("the temporary folder's name is text").to_owned()
    }

    /// Writes a file and gives its name.
    pub fn write(&self, name: &str, bytes: &[u8]) -> String {
        std::fs::write(self.0.join(name), bytes).expect("the folder is writable");
        self.path(name)
    }

    /// What a file holds.
    pub fn text(&self, name: &str) -> String {
        std::fs::read_to_string(self.0.join(name)).expect("the file is there and is text")
    }

    /// The names in the folder, sorted.
    pub fn names(&self) -> Vec<String> {
        let entries = std::fs::read_dir(&self.0).expect("the folder is there");
        let name = |e: std::fs::DirEntry| e.file_name().to_string_lossy().into_owned();
        let mut names: Vec<String> = entries.filter_map(Result::ok).map(name).collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}
