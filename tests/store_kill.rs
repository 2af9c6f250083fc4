//! Killed at any moment (POSIX SIGKILL: no handler runs), the program has lost no answered line
//! and left no torn file.

mod cli;

use cli::{Folder, command};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use railhand::store::Store;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::Path;
use std::time::Duration;

/// Notes with an undo now and then, so that both ways of writing are met; and the notes that
/// stand after each line.
fn talk(lines: usize) -> (Vec<String>, Vec<Vec<String>>) {
    let mut notes: Vec<String> = Vec::new();
    let (mut said, mut after) = (Vec::new(), vec![Vec::new()]);
    for n in 0..lines {
        if n % 5 == 3 {
            notes.pop();
            said.push("undo".to_owned());
        } else {
            notes.push(format!("number {n}"));
            said.push(format!("note: number {n}"));
        }
        after.push(notes.clone());
    }
    (said, after)
}

/// Holds a talk, kills it some moment after so many answers, and gives how many were read. The
/// answers set the pace, so that a fast machine and a busy one are both killed in the middle.
fn killed(file: &str, said: &[String], answers: usize, after: Duration) -> usize {
    let mut child = command(&["--json", file]).spawn().expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    let text = said.join("\n") + "\n";
    // It ends when the program is killed: nobody reads any more.
    let feeder = std::thread::spawn(move || {
        let _ = stdin.write_all(text.as_bytes());
        std::thread::sleep(Duration::from_millis(200));
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
    feeder.join().expect("it does not panic");
    reader.join().expect("it does not panic")
}

#[test]
fn killed_fifty_times_it_loses_no_answered_line() {
    let (said, after) = talk(400);
    let (mut outside, mut inside) = (0, 0);
    let mut runner = TestRunner::new(Config { cases: 50, failure_persistence: None, ..Config::default() });
    let seen = std::cell::RefCell::new((&mut outside, &mut inside));
    let result = runner.run(&(0_usize..300, 0_u64..4_000), |(answers, micros)| {
        let folder = Folder::new(&format!("kill-{answers}-{micros}"));
        let file = folder.path("deck.job");
        let answered = killed(&file, &said, answers, Duration::from_micros(micros));
        let mut seen = seen.borrow_mut();
        *(if (1..said.len()).contains(&answered) { &mut *seen.1 } else { &mut *seen.0 }) += 1;
        if !Path::new(&file).exists() {
            prop_assert_eq!(answered, 0);
            return Ok(());
        }
        let text = folder.text("deck.job");
        prop_assert!(text.is_empty() || text.ends_with('\n'), "torn: {:?}", text);
        let opened = Store::open(Path::new(&file)).expect("the file is ours");
        prop_assert!(opened.odd.is_empty(), "{:?}", opened.odd);
        let notes: Vec<String> = opened.session.job().notes.iter().map(|n| n.text.clone()).collect();
        let states = &after[answered..];
        prop_assert!(states.contains(&notes), "{} answered, but the file holds {:?}", answered, notes);
        Ok(())
    });
    assert!(result.is_ok(), "{result:?}");
    assert!(
        inside >= 10,
        "too few were killed in the middle of the talk to show anything: {inside}; {outside} outside it"
    );
    eprintln!("killed in the middle of the talk {inside} times, before or after it {outside} times");
}
