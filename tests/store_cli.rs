//! The job file as the command line uses it: what is kept, what is refused, what is said when nothing can be kept.

mod cli;

use cli::{Folder, assert_harmless, command, objects, railhand};
use serde_json::Value;
use std::process::Output;

const HEAD: &str = "railhand job, version 1, defaults 1\n";

fn say(file: &str, lines: &[&str]) -> Output {
    let args: Vec<&str> = ["say", "--json", "--job", file, "--"].into_iter().chain(lines.iter().copied()).collect();
    railhand(&args, b"")
}

fn kept(out: &Output) -> Vec<Value> {
    objects(&out.stdout).iter().map(|o| o["kept"].clone()).collect()
}

fn errors(out: &Output) -> String {
    // Rows are wrapped for a screen; here a row is as long as it likes.
    String::from_utf8_lossy(&out.stderr).split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_talk_goes_on_where_it_was_left() {
    let folder = Folder::new("goes-on");
    let file = folder.path("deck.job");
    let first = say(&file, &["run 10 ft between corner and stair head"]);
    assert_eq!(kept(&first), [true]);
    let piped = railhand(&["--json", &file], b"no, make it eleven and a half\n");
    assert_eq!(objects(&piped.stdout)[0]["job"]["runs"][0]["length"]["in"], "138");
    let undone = &objects(&say(&file, &["undo"]).stdout)[0];
    assert_eq!(undone["job"]["runs"][0]["length"]["in"], "120");
    assert_eq!(folder.names(), ["deck.job"], "nothing is left lying about");
}

/// What is said, and the lines of the file after it.
#[test]
fn what_is_kept_and_how() {
    let phrase = "run 1: 12'-0\" out to out, from house, to corner";
    let told = format!("{phrase}  // run 12 ft between house and corner");
    let rows: [(&[&str], &[&str]); 7] = [
        (&["run 12 ft between house and corner"], &[&told]),
        (&[phrase], &[phrase]),
        (
            &["half of 9-7 1/4", "why?", "hello", "what if max is 5 ft clear", "undo", "redo", "keep it", "help"],
            &["most clear: 5'-0\"  // keep it"],
        ),
        (&["wibble the wobble 7"], &["? wibble the wobble 7"]),
        (&["note: a\u{1b}[31m b  ;  c"], &["note: a [31m b , c  // note: a\u{fffd}[31m b ; c"]),
        (&["note: a", "note: b", "undo", "undo", "redo"], &["note: a"]),
        (&["drop note 9"], &["? drop note 9"]),
    ];
    for (said, want) in rows {
        let folder = Folder::new("what");
        say(&folder.path("deck.job"), said);
        let text = folder.text("deck.job");
        let lines: Vec<&str> = text.strip_prefix(HEAD).expect("a head").lines().collect();
        assert_eq!(lines, want, "{said:?}");
    }
}

/// A bare 44 inches or feet is asked about; the answer takes the question's place.
#[test]
fn an_open_question_stands_in_the_file_until_it_is_answered() {
    let folder = Folder::new("question");
    let file = folder.path("deck.job");
    let asked = &objects(&say(&file, &["run 44 between house and corner"]).stdout)[0];
    assert_eq!(asked["status"], "asks");
    assert_eq!(folder.text("deck.job"), format!("{HEAD}? run 44 between house and corner\n"));
    let answers = objects(&say(&folder.path("b.job"), &["run 44 between house and corner", "1"]).stdout);
    assert_eq!(answers[1]["status"], "told");
    let text = folder.text("b.job");
    assert!(!text.contains("\n? "), "{text}");
    assert!(text.ends_with("  // run 44 between house and corner / 1\n"), "{text}");
}

#[test]
fn a_file_that_is_no_job_file_is_refused_and_left_as_it_is() {
    let huge = format!("{HEAD}{}", "x".repeat(4 << 20));
    let many = format!("{HEAD}{}", "\n".repeat(20_001));
    let rows: [(&[u8], &str); 7] = [
        (b"dear diary\n", "is not a job file of railhand"),
        (b"\x7fELF\0\0\x1b[2J", "is not a job file of railhand"),
        (b"railhand job", "is not a job file of railhand"),
        (b"railhand job, version 2, defaults 1\nrun 1: 10'-0\" long\n", "was written by a later railhand"),
        (b"railhand job, version 1, defaults 9\n", "was written by a later railhand"),
        (huge.as_bytes(), "is larger than a job file may be"),
        (many.as_bytes(), "is larger than a job file may be"),
    ];
    for (bytes, says) in rows {
        let folder = Folder::new("foreign");
        let file = folder.write("deck.job", bytes);
        for out in [say(&file, &["run 10 ft"]), railhand(&[&file], b"run 10 ft\n")] {
            assert_eq!((out.status.code(), out.stdout.as_slice()), (Some(1), &b""[..]), "{says}");
            assert!(errors(&out).contains(says), "{}", errors(&out));
            assert!(!errors(&out).contains('\u{1b}'));
        }
        assert_eq!(std::fs::read(&file).expect("it is there"), bytes);
    }
}

#[test]
fn a_name_that_is_no_new_job_s_is_a_bad_argument() {
    let folder = Folder::new("name");
    for args in [vec![folder.path("deck")], vec!["say".into(), "--job".into(), folder.path("deck.txt"), "a".into()]] {
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        assert_eq!(railhand(&args, b"").status.code(), Some(2), "{args:?}");
    }
    assert!(folder.names().is_empty());
}

#[test]
fn a_torn_last_line_is_set_aside_and_told_of() {
    let folder = Folder::new("torn");
    let file = folder.write("deck.job", format!("{HEAD}note: a\nnote: b cut sho").as_bytes());
    let out = say(&file, &["note: c"]);
    assert!(errors(&out).contains("deck.job line 3: the last line is cut short"), "{}", errors(&out));
    assert_eq!(objects(&out.stdout)[0]["job"]["notes"], serde_json::json!(["a", "c"]));
    assert_eq!(folder.text("deck.job"), format!("{HEAD}note: a\n? note: b cut sho\nnote: c\n"));
    assert_eq!(errors(&say(&file, &["hello"])), "", "told of once");
}

#[test]
fn nothing_in_a_file_is_shown_raw() {
    let folder = Folder::new("raw");
    let lines = "note: \u{1b}]0;x\u{7}\n\u{1b}[2J wibble\n? \u{202e}x\nrun 1: \0\n";
    let mut bytes = format!("{HEAD}{lines}").into_bytes();
    bytes.extend_from_slice(b"note: \xff\xfe\x9b\n");
    let file = folder.write("deck.job", &bytes);
    let out = railhand(&["say", "--job", &file, "what do I have so far?"], b"");
    let said = errors(&out);
    assert!(said.contains("line 2: ") && said.contains("line 6: this is no text"), "{said}");
    assert!(!said.chars().any(char::is_control), "{said:?}");
    assert_harmless(&Output { stderr: Vec::new(), ..out });
}

/// The second is told, answers, keeps nothing; and the first loses nothing by it.
#[test]
fn two_consoles_on_one_file() {
    use std::io::{BufRead as _, BufReader, Write as _};
    let folder = Folder::new("two");
    let file = folder.path("deck.job");
    let mut first = command(&["--json", &file]).spawn().expect("the program starts");
    let mut stdin = first.stdin.take().expect("a pipe");
    let mut answers = BufReader::new(first.stdout.take().expect("a pipe"));
    let mut tell = |line: &str| {
        writeln!(stdin, "{line}").expect("it reads");
        let mut answer = String::new();
        answers.read_line(&mut answer).expect("it answers");
        objects(answer.as_bytes()).remove(0)
    };
    assert_eq!(tell("note: a")["kept"], true);
    // An undo puts another file in the place of the first: the lock must go with it.
    tell("undo");
    tell("note: b");
    let second = say(&file, &["note: c", "half of 8 ft", "note: d"]);
    assert_eq!(kept(&second), [false, false, false]);
    let told: Vec<usize> = objects(&second.stdout)
        .iter()
        .map(|o| o["text"].as_str().unwrap_or_default().matches("another railhand has it open").count())
        .collect();
    assert_eq!(told, [1, 0, 1], "each told line says so, once");
    assert_eq!(objects(&second.stdout)[0]["job"]["notes"], serde_json::json!(["b", "c"]));
    assert_eq!(second.status.code(), Some(1), "what was told is not in the file");
    assert_eq!(say(&file, &["half of 8 ft"]).status.code(), Some(0), "nothing was told");
    assert_eq!(tell("note: e")["kept"], true);
    drop(stdin);
    first.wait().expect("it ends");
    assert_eq!(folder.text("deck.job"), format!("{HEAD}note: b\nnote: e\n"));
    assert_eq!(kept(&say(&file, &["note: f"])), [true], "the lock is gone with its holder");
}

/// Somebody's editor saved the file in between: neither's lines are lost without a word.
#[test]
fn a_file_changed_by_something_else_is_not_written_over() {
    use std::io::{BufRead as _, BufReader, Write as _};
    type Change = fn(&Folder);
    let edited: Change = |folder| drop(folder.write("deck.job", format!("{HEAD}note: by hand\n").as_bytes()));
    let swapped: Change = |folder| {
        let other = folder.write("other", format!("{HEAD}note: by hand\n").as_bytes());
        std::fs::rename(other, folder.path("deck.job")).expect("the folder is writable");
    };
    let taken: Change = |folder| std::fs::remove_file(folder.path("deck.job")).expect("it is there");
    let rows: [(Change, bool, &str); 3] =
        [(edited, false, "note: by hand\n"), (swapped, false, "note: by hand\n"), (taken, true, "note: a\nnote: b\n")];
    for (change, want, lines) in rows {
        let folder = Folder::new("changed");
        let file = folder.path("deck.job");
        let mut child = command(&["--json", &file]).spawn().expect("the program starts");
        let mut stdin = child.stdin.take().expect("a pipe");
        let mut answers = BufReader::new(child.stdout.take().expect("a pipe"));
        let mut answer = String::new();
        writeln!(stdin, "note: a").expect("it reads");
        answers.read_line(&mut answer).expect("it answers");
        change(&folder);
        answer.clear();
        writeln!(stdin, "note: b").expect("it reads");
        answers.read_line(&mut answer).expect("it answers");
        let answer = objects(answer.as_bytes()).remove(0);
        assert_eq!((&answer["kept"], answer["status"].as_str()), (&want.into(), Some("told")), "{answer}");
        drop(stdin);
        assert_eq!(child.wait().expect("it ends").code(), Some(i32::from(!want)));
        assert_eq!(folder.text("deck.job"), format!("{HEAD}{lines}"));
    }
}

#[cfg(unix)]
mod unix {
    use super::*;
    use std::os::unix::fs::{FileTypeExt as _, symlink};
    use std::process::Command;

    #[test]
    fn only_plain_files_are_opened() {
        let folder = Folder::new("kinds");
        let pipe = folder.path("pipe.job");
        let made = Command::new("mkfifo").arg(&pipe).status().expect("POSIX has mkfifo");
        assert!(made.success());
        symlink("/dev/zero", folder.path("zero.job")).expect("links can be made");
        symlink("nowhere", folder.path("dead.job")).expect("links can be made");
        std::fs::create_dir(folder.path("folder.job")).expect("the folder is writable");
        let rows = [
            ("pipe.job", "is a folder or a device"),
            ("zero.job", "is a folder or a device"),
            ("folder.job", "is a folder or a device"),
            ("dead.job", "is a link to a file that is not there"),
        ];
        for (name, says) in rows {
            let out = say(&folder.path(name), &["note: a"]);
            assert_eq!(out.status.code(), Some(1), "{name}");
            assert!(errors(&out).contains(says), "{}", errors(&out));
        }
        assert!(std::fs::metadata(&pipe).expect("it is there").file_type().is_fifo());
        assert!(!std::path::Path::new(&folder.path("nowhere")).exists());
    }

    /// The file a link leads to is written, by an undo too, and the link stays a link.
    #[test]
    fn a_link_is_written_through() {
        let folder = Folder::new("link");
        folder.write("real.job", b"");
        symlink("real.job", folder.path("deck.job")).expect("links can be made");
        say(&folder.path("deck.job"), &["note: a", "note: b", "undo", "note: c"]);
        assert_eq!(folder.text("real.job"), format!("{HEAD}note: a\nnote: c\n"));
        let link = std::fs::symlink_metadata(folder.path("deck.job")).expect("it is there");
        assert!(link.file_type().is_symlink());
    }

    #[test]
    fn a_link_at_the_temporary_name_is_not_followed() {
        let folder = Folder::new("trap");
        folder.write("victim", b"precious\n");
        let file = folder.write("deck.job", HEAD.as_bytes());
        symlink("victim", folder.path(".deck.job.railhand-new")).expect("links can be made");
        assert_eq!(kept(&say(&file, &["note: a", "undo", "note: b"])), [true, true, true]);
        assert_eq!(folder.text("victim"), "precious\n");
        assert_eq!(folder.text("deck.job"), format!("{HEAD}note: b\n"));
        assert_eq!(folder.names(), ["deck.job", "victim"]);
    }

    #[test]
    fn who_may_read_a_file_stays_as_it_was() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = Folder::new("mode");
        let file = folder.write("deck.job", format!("{HEAD}note: a\n").as_bytes());
        let mode = |m| std::fs::set_permissions(&file, std::fs::Permissions::from_mode(m));
        mode(0o600).expect("the file is ours");
        say(&file, &["undo"]);
        let now = std::fs::metadata(&file).expect("it is there").permissions().mode() & 0o777;
        assert_eq!((now, folder.text("deck.job").as_str()), (0o600, HEAD));
    }

    /// Nobody makes files in Linux's /sys, root neither.
    #[cfg(target_os = "linux")]
    #[test]
    fn a_folder_that_takes_no_file_is_told_of_with_every_told_line() {
        let out = say("/sys/deck.job", &["note: a", "half of 8 ft", "note: b"]);
        assert_eq!(kept(&out), [false, false, false]);
        let answers = objects(&out.stdout);
        let says = |n: usize| answers[n]["text"].as_str().is_some_and(|t| t.contains("not kept in /sys/deck.job: "));
        assert_eq!([says(0), says(1), says(2)], [true, false, true]);
        assert_eq!(answers[2]["job"]["notes"], serde_json::json!(["a", "b"]), "the talk goes on in memory");
        assert_eq!(out.status.code(), Some(1));
        assert!(errors(&out).contains("/sys/deck.job"), "{}", errors(&out));
        assert_eq!(say("/nowhere/at/all.job", &["note: a"]).status.code(), Some(1));
    }

    /// A disk that fills up, played by the shell's limit on a file's size (POSIX ulimit -f, in
    /// blocks of 512 bytes), its signal ignored so that the write fails as on a full disk.
    #[test]
    fn a_full_disk_is_told_of_and_no_half_line_stays() {
        let folder = Folder::new("full");
        let file = folder.write("deck.job", HEAD.as_bytes());
        let words = format!("note: {}", "word ".repeat(40).trim_end());
        let lines = [words.as_str(); 6];
        let mut shell = Command::new("sh");
        shell.args(["-c", "trap '' XFSZ; ulimit -f 1; exec \"$@\"", "sh", env!("CARGO_BIN_EXE_railhand")]);
        let out = shell.args(["say", "--json", "--job", &file]).args(lines).output().expect("the shell starts");
        assert_eq!(kept(&out), [true, true, false, false, false, false], "{}", errors(&out));
        let answers = objects(&out.stdout);
        let text = answers[5]["text"].as_str().unwrap_or_default();
        assert!(text.contains("deck.job: the disk is full. I go on in memory."), "{text}");
        assert_eq!(answers[5]["job"]["notes"].as_array().map(Vec::len), Some(6));
        assert_eq!((out.status.code(), folder.text("deck.job")), (Some(1), format!("{HEAD}{words}\n{words}\n")));
        let shell_undo = "trap '' XFSZ; ulimit -f 0; exec \"$@\"";
        let mut shell = Command::new("sh");
        shell.args(["-c", shell_undo, "sh", env!("CARGO_BIN_EXE_railhand"), "say", "--job", &file, "undo"]);
        let out = shell.output().expect("the shell starts");
        assert_eq!(folder.names(), ["deck.job"], "{}", errors(&out));
        assert_eq!(folder.text("deck.job"), format!("{HEAD}{words}\n{words}\n"), "an undo that fails leaves the file");
    }

    /// Held up for a while, everything is kept in the end: here the folder appears in the middle of the talk.
    #[test]
    fn what_could_not_be_kept_is_kept_once_it_can() {
        use std::io::{BufRead as _, BufReader, Write as _};
        let folder = Folder::new("again");
        let file = folder.path("later/deck.job");
        let mut child = command(&["--json", &file]).spawn().expect("the program starts");
        let mut stdin = child.stdin.take().expect("a pipe");
        let mut answers = BufReader::new(child.stdout.take().expect("a pipe"));
        let mut tell = |line: &str| {
            writeln!(stdin, "{line}").expect("it reads");
            let mut answer = String::new();
            answers.read_line(&mut answer).expect("it answers");
            objects(answer.as_bytes()).remove(0)
        };
        assert_eq!(tell("note: a")["kept"], false);
        std::fs::create_dir(folder.path("later")).expect("the folder is writable");
        let answer = tell("note: b");
        assert_eq!(answer["kept"], true);
        assert!(answer["text"].as_str().is_some_and(|t| t.contains("holds everything told again")), "{answer}");
        drop(stdin);
        assert_eq!(child.wait().expect("it ends").code(), Some(0));
        assert_eq!(folder.text("later/deck.job"), format!("{HEAD}note: a\nnote: b\n"));
    }
}
