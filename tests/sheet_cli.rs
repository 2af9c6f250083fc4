//! `railhand sheet`, and what leaves the talk: notes and copies.

use pretty_assertions::assert_eq;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

#[cfg(unix)]
mod pty;

/// A folder of this test's own, with a job file in it.
struct Yard(PathBuf);

impl Yard {
    fn new(name: &str) -> Yard {
        let folder = std::env::temp_dir().join(format!("railhand-sheet-{}-{name}", std::process::id()));
        std::fs::create_dir_all(&folder).expect("the temporary folder is writable");
        let yard = Yard(folder);
        let told =
            yard.run(&["say", "--job", "deck.job", "run 10 ft house to corner", "36 high, gap under 3", "note: =1+1"]);
        assert!(told.status.success());
        yard
    }

    fn run(&self, args: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_railhand")).args(args).current_dir(&self.0).output().expect("it starts")
    }

    fn file(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }
}

impl Drop for Yard {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).expect("it is text")
}

fn bytes(path: &Path) -> Vec<u8> {
    std::fs::read(path).expect("it was written")
}

#[test]
fn a_sheet_is_written_by_its_ending() {
    let yard = Yard::new("endings");
    let before = bytes(&yard.file("deck.job"));
    for (name, begins) in [
        ("deck.html", &b"<!doctype html>"[..]),
        ("deck.PDF", b"%PDF-"),
        ("deck.svg", b"<svg "),
        ("deck.png", b"\x89PNG"),
        ("deck.md", b"# Guard layout notes"),
    ] {
        let made = yard.run(&["sheet", "deck.job", "-o", name, "--paper", "a4"]);
        assert!(made.status.success(), "{name}: {made:?}");
        assert!(bytes(&yard.file(name)).starts_with(begins), "{name}");
    }
    assert_eq!(bytes(&yard.file("deck.job")), before, "a sheet leaves its job file as it is");
}

#[test]
fn what_cannot_be_made_is_said_and_not_made() {
    let yard = Yard::new("amiss");
    let rows: [(&[&str], &str); 4] = [
        (&["sheet", "deck.job", "-o", "deck.doc"], "ends in .html, .pdf, .svg, .png or .md"),
        (&["sheet", "none.job", "-o", "deck.pdf"], "none.job"),
        (&["sheet", "deck.job", "-o", "no/such/deck.pdf"], "no/such/deck.pdf"),
        (&["sheet", "deck.job", "-o", "deck.pdf", "--paper", "foolscap"], "foolscap"),
    ];
    for (args, says) in rows {
        let made = yard.run(args);
        assert!(!made.status.success(), "{args:?}");
        let why = String::from_utf8_lossy(&made.stderr).into_owned();
        assert!(why.contains(says), "{args:?}: {why}");
    }
    assert!(!yard.file("none.job").exists() && !yard.file("deck.pdf").exists() && !yard.file("deck.doc").exists());
}

#[test]
fn notes_are_shown_and_pasted_back() {
    let yard = Yard::new("notes");
    let notes = out(&yard.run(&["say", "--job", "deck.job", "notes"]));
    assert!(notes.starts_with("# Guard layout notes\n"), "{notes}");
    let again = yard.run(&["say", "--job", "again.job", &notes]);
    assert!(again.status.success());
    assert_eq!(out(&yard.run(&["say", "--job", "again.job", "notes"])), notes);
    let cut = notes.split("```railhand").next().expect("there is a first part");
    let refused = out(&yard.run(&["say", cut]));
    assert!(refused.starts_with("Those are notes without the job at their end"), "{refused}");
}

#[test]
fn copies_are_plain_text() {
    let yard = Yard::new("copies");
    let copied = out(&yard.run(&["say", "--job", "deck.job", "how many posts", "copy that"]));
    let (first, second) = copied.split_once("\n\n").expect("two answers");
    assert!(first.starts_with("3 posts"));
    assert_eq!(second.lines().next(), Some("3 posts"));
    assert!(copied.lines().all(|l| l.chars().count() <= 80) && !copied.contains('\u{1b}'));
    assert!(out(&yard.run(&["say", "copy that"])).starts_with("There is no answer to copy yet."));
    assert!(out(&yard.run(&["say", "--json", "--job", "deck.job", "notes"])).contains("# Guard layout notes"));
}

/// OSC 52 hands a terminal text for its clipboard, in base 64 (xterm's control sequences, from memory).
#[cfg(unix)]
#[test]
fn a_terminal_is_handed_the_clipboard_s_text() {
    let mut term = pty::Terminal::open("clipboard", 80, &[]);
    term.wait_for_prompt();
    term.enter("run 10 ft house to corner");
    let before = term.raw().len();
    term.press("copy the layout\r");
    term.wait("the text itself", |rows| rows.iter().any(|r| r.starts_with("On the clipboard, where")));
    term.wait_for_prompt();
    let wrote = String::from_utf8_lossy(&term.raw()[before..]).into_owned();
    // "3 posts" in base 64 is "MyBwb3N0cw", its last sign shared with what follows.
    assert!(wrote.contains("\u{1b}]52;c;MyBwb3N0c"), "{wrote:?}");
    assert_eq!(term.leave(), 0);
}
