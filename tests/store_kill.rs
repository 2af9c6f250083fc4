//! Killed at any moment (POSIX SIGKILL: no handler runs), the program has lost no answered line
//! and left no torn file.

mod cli;
#[cfg(unix)]
mod pty;

use cli::{Folder, command};
use pretty_assertions::assert_eq;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use railhand::grammar::{Act, canon};
use railhand::job::{Job, retold};
use railhand::session::{Session, step};
use railhand::store::Store;
use serde::Deserialize;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::Path;
use std::time::Duration;

#[derive(Deserialize)]
struct Book {
    talk: Vec<Talk>,
}

#[derive(Deserialize)]
struct Talk {
    line: Vec<Said>,
}

#[derive(Deserialize)]
struct Said {
    say: String,
}

/// All lines of all our talks, one talk after the other: layout, corrections, what-ifs, questions, undo, notes.
fn lines_of_all_kinds() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/talks");
    let mut files: Vec<_> =
        std::fs::read_dir(folder).expect("the talks are there").map(|e| e.expect("an entry").path()).collect();
    files.sort();
    let read = |path: &std::path::PathBuf| -> Book {
        toml::from_str(&std::fs::read_to_string(path).expect("a talk is text")).expect("a talk is TOML")
    };
    files
        .iter()
        .flat_map(|f| read(f).talk)
        .flat_map(|t| t.line)
        .map(|l| l.say)
        .filter(|l| !l.trim().is_empty())
        .collect()
}

/// A job in plain phrases.
fn phrases(job: &Job) -> Vec<String> {
    retold(job).into_iter().map(|fact| canon::write(&Act::Tell(vec![fact]))).collect()
}

/// What stands after each line, the first of them before any.
fn states(said: &[String]) -> Vec<Vec<String>> {
    let mut session = Session::new();
    let mut after = vec![Vec::new()];
    for line in said {
        let (delta, _) = step(&session, line);
        session.apply(delta);
        after.push(phrases(session.job()));
    }
    after
}

/// What the file holds, once it is certain that it is whole.
fn held(folder: &Folder) -> Vec<String> {
    let text = folder.text("deck.job");
    assert!(text.is_empty() || text.ends_with('\n'), "torn: {text:?}");
    let opened = Store::open(Path::new(&folder.path("deck.job"))).expect("the file is ours");
    assert_eq!(opened.odd.len(), 0, "{:?}", opened.odd);
    phrases(opened.session.job())
}

/// Holds a talk, kills it some moment after so many answers, and gives how many were read. The
/// answers set the pace, so that a fast machine and a busy one are both killed in the middle.
fn killed(file: &str, said: &[String], answers: usize, after: Duration) -> usize {
    let mut child = command(&["--json", file]).spawn().expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    let text = said.join("\n") + "\n";
    // The pipe stays open until the program is killed, and writing ends when nobody reads any more.
    let (dead, until) = std::sync::mpsc::channel::<()>();
    let feeder = std::thread::spawn(move || {
        let _ = stdin.write_all(text.as_bytes());
        let _ = until.recv();
    });
    let stdout = child.stdout.take().expect("a pipe");
    let (told, reached) = std::sync::mpsc::channel();
    let reader = std::thread::spawn(move || {
        // Only a whole line is an answer.
        let lines = BufReader::new(stdout).split(b'\n').map_while(Result::ok).filter(|l| l.ends_with(b"}"));
        let tell = |n: usize| {
            if n == answers {
                // Nobody listens any more only where the test has failed already.
                let _ = told.send(());
            }
        };
        tell(0);
        lines.zip(1..).inspect(|(_, n)| tell(*n)).count()
    });
    // A talk that ends before that many answers drops its end of the channel.
    let _ = reached.recv();
    std::thread::sleep(after);
    child.kill().expect("it runs, or has ended");
    child.wait().expect("it is ours to wait for");
    drop(dead);
    feeder.join().expect("it does not panic");
    reader.join().expect("it does not panic")
}

#[test]
fn killed_a_hundred_and_fifty_times_it_loses_no_answered_line() {
    let all = lines_of_all_kinds();
    let talks: Vec<(Vec<String>, Vec<Vec<String>>)> =
        all.chunks(40).map(|said| (said.to_vec(), states(said))).collect();
    let (mut outside, mut inside) = (0, 0);
    let mut runner = TestRunner::new(Config { cases: 150, failure_persistence: None, ..Config::default() });
    let seen = std::cell::RefCell::new((&mut outside, &mut inside));
    let result = runner.run(&(0..talks.len(), 0_usize..38, 0_u64..4_000), |(talk, answers, micros)| {
        let (said, after) = &talks[talk];
        let answers = answers.min(said.len().saturating_sub(2));
        let folder = Folder::new(&format!("kill-{talk}-{answers}-{micros}"));
        let file = folder.path("deck.job");
        let answered = killed(&file, said, answers, Duration::from_micros(micros));
        let mut seen = seen.borrow_mut();
        *(if (1..said.len()).contains(&answered) { &mut *seen.1 } else { &mut *seen.0 }) += 1;
        if !Path::new(&file).exists() {
            prop_assert_eq!(answered, 0);
            return Ok(());
        }
        let stands = held(&folder);
        prop_assert!(after[answered..].contains(&stands), "{} answered, but the file holds {:?}", answered, stands);
        Ok(())
    });
    assert!(result.is_ok(), "{result:?}");
    assert!(
        inside >= 50,
        "too few were killed in the middle of the talk to show anything: {inside}; {outside} outside it"
    );
    eprintln!("killed in the middle of the talk {inside} times, before or after it {outside} times");
}

/// At a terminal, key by key: what was heard on the screen before the kill is in the file after it.
#[cfg(unix)]
#[test]
fn killed_fifty_times_while_lines_are_typed_it_loses_no_answered_line() {
    let mut runner = TestRunner::new(Config { cases: 50, failure_persistence: None, ..Config::default() });
    let mut typing = 0;
    let seen = std::cell::RefCell::new(&mut typing);
    let result = runner.run(&(0_usize..160, 0_u64..3_000), |(keys, micros)| {
        let folder = Folder::new(&format!("typed-{keys}-{micros}"));
        let file = folder.path("deck.job");
        let mut term = pty::Terminal::open_with(&pty::fresh_home("typed"), 90, &[], &[&file]);
        term.wait_for_prompt();
        let typed: String = (0..20).map(|n| format!("note: number {n}\r")).collect();
        // A burst of keys, and more while they are answered: the kill falls anywhere in a line.
        for key in typed.chars().take(keys) {
            term.press(&key.to_string());
        }
        std::thread::sleep(Duration::from_micros(micros * 10));
        let wrote = String::from_utf8_lossy(&term.kill()).into_owned();
        let heard = (0..20).filter(|n| wrote.contains(&format!("heard: note: number {n}\r\n"))).count();
        **seen.borrow_mut() += usize::from(keys % 15 != 0);
        if !Path::new(&file).exists() {
            prop_assert_eq!(heard, 0);
            return Ok(());
        }
        let stands = held(&folder);
        let whole: Vec<String> = (0..stands.len()).map(|n| format!("note: number {n}")).collect();
        prop_assert_eq!(&stands, &whole);
        prop_assert!(stands.len() >= heard, "{} heard, but the file holds {:?}", heard, stands);
        prop_assert!(stands.len() <= keys / 15 + 1, "{} keys typed, but the file holds {:?}", keys, stands);
        Ok(())
    });
    assert!(result.is_ok(), "{result:?}");
    assert!(typing >= 20, "only {typing} were killed in the middle of a line");
}
