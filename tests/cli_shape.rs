//! The command line whatever the answers are: exit statuses, one object a line, hostile input.

mod cli;

use cli::{assert_harmless, command, json_say, objects, railhand};
use std::fs::File;
use std::io::Read as _;
use std::process::Stdio;

#[test]
fn exit_statuses() {
    let rows: [(&[&str], i32); 9] = [
        (&["say", "hello"], 0),
        (&["say", "--json", ""], 0),
        (&["say", "-2 ft"], 0),
        (&["--help"], 0),
        (&["--version"], 0),
        (&["say"], 2),
        (&["say", "--sideways", "hello"], 2),
        (&["shout", "hello"], 2),
        (&["--jsn"], 2),
    ];
    for (args, status) in rows {
        assert_eq!(railhand(args, b"").status.code(), Some(status), "{args:?}");
    }
}

#[test]
fn what_cannot_be_read_or_written_is_told_and_ends_with_1() {
    let folder = File::open("/").expect("the root folder is there");
    let unread = command(&[]).stdin(folder).output().expect("the program starts");
    assert_eq!(unread.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&unread.stderr).starts_with("railhand: a line could not be read"));
}

/// Linux's /dev/full fails every write with "no space left".
#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_told_and_ends_with_1() {
    for args in [&["say", "--json", "hello"][..], &["--json"][..]] {
        let full = File::options().write(true).open("/dev/full").expect("Linux has it");
        let mut child = command(args).stdout(full).spawn().expect("the program starts");
        // `say` reads no standard input and may be gone before this is written.
        let _ = std::io::Write::write_all(&mut child.stdin.take().expect("a pipe"), b"hello\n");
        let out = child.wait_with_output().expect("the program ends");
        assert_eq!(out.status.code(), Some(1), "{args:?}");
        assert!(String::from_utf8_lossy(&out.stderr).contains("could not be written"));
    }
}

/// The far end closes after a few bytes while answers still come.
#[test]
fn a_closed_pipe_ends_quietly() {
    let mut child = command(&["--json"]).spawn().expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    let feeder = std::thread::spawn(move || while std::io::Write::write_all(&mut stdin, b"half of 8 ft\n").is_ok() {});
    let mut stdout = child.stdout.take().expect("a pipe");
    stdout.read_exact(&mut [0; 10]).expect("it answers");
    drop(stdout);
    let out = child.wait_with_output().expect("the program ends");
    feeder.join().expect("the feeder stops when nobody reads");
    assert_eq!((out.status.code(), out.stderr.as_slice()), (Some(0), &b""[..]));
}

#[test]
fn one_object_a_line_in_order() {
    let piped = objects(&railhand(&["--json"], b"one\n\ntwo\r\nthree").stdout);
    let lines: Vec<&str> = piped.iter().filter_map(|o| o["line"].as_str()).collect();
    assert_eq!(lines, ["one", "", "two", "three"]);
    let said = json_say(&["", "one", "two\nthree"]);
    let lines: Vec<&str> = said.iter().filter_map(|o| o["line"].as_str()).collect();
    assert_eq!(lines, ["", "one", "two", "three"]);
}

#[test]
fn the_flag_may_stand_before_or_behind() {
    let want = railhand(&["say", "--json", "half of 8 ft"], b"").stdout;
    assert_eq!(objects(&want).len(), 1);
    assert_eq!(railhand(&["--json", "say", "half of 8 ft"], b"").stdout, want);
    assert_eq!(railhand(&["say", "half of 8 ft", "--json"], b"").stdout, want);
    assert_eq!(railhand(&["--json"], b"half of 8 ft\n").stdout, want);
}

/// Every object has every key of the contract, in its order.
#[test]
fn the_contract_s_keys_are_always_there() {
    for answer in json_say(&["", "run 12 ft", "why?", "\u{1b}[2J"]) {
        let keys = |v: &serde_json::Value| -> Vec<String> {
            v.as_object().map(|o| o.keys().cloned().collect()).unwrap_or_default()
        };
        let top = [
            "line", "status", "readback", "unused", "choices", "text", "values", "job", "findings", "bound", "readings",
        ];
        assert_eq!(keys(&answer), top);
        assert_eq!(keys(&answer["job"]), ["runs", "deck", "stairs", "gates", "settings", "notes"]);
        let status = answer["status"].as_str().expect("a word");
        assert!(["told", "answered", "asks", "refused"].contains(&status), "{status}");
    }
}

const HOSTILE: [&[u8]; 8] = [
    b"\x1b[2J\x1b]0;title\x07 run 10 ft",
    b"run \x00 10 ft \x08\x08\x7f",
    b"run 10\xff\xfe ft \xc3",
    "note \u{202e}tf 01\u{202c} \u{9b}31m".as_bytes(),
    b"\r\rrun 10 ft\x0b\x0c",
    b"note \x1b[31mred\x1b[0m",
    b"call it \xf0\x9f\xa6\xb7 \xe2\x80\x8b\xef\xbb\xbf",
    b"\t\t\x1b",
];

#[test]
fn nothing_typed_reaches_the_output_raw() {
    let mut typed = HOSTILE.join(&b'\n');
    typed.extend_from_slice(b"\nwhat do I have so far?\n");
    for args in [&[][..], &["--json"]] {
        let out = railhand(args, &typed);
        assert_eq!(out.status.code(), Some(0));
        assert_harmless(&out);
    }
    assert_eq!(objects(&railhand(&["--json"], &typed).stdout).len(), HOSTILE.len() + 1);
}

#[test]
fn bytes_that_are_no_utf8_are_marked_and_the_talk_goes_on() {
    let answers = objects(&railhand(&["--json"], b"run 10\xff ft\nnext\n").stdout);
    assert_eq!(answers[0]["line"], "run 10\u{fffd} ft");
    assert_eq!(answers[1]["line"], "next");
}

#[cfg(unix)]
#[test]
fn an_argument_that_is_no_utf8_is_marked() {
    use std::os::unix::ffi::OsStrExt as _;
    let mut command = command(&["say", "--json"]);
    let out = command.arg(std::ffi::OsStr::from_bytes(b"10\xff ft")).output().expect("the program starts");
    assert_eq!(objects(&out.stdout)[0]["line"], "10\u{fffd} ft");
}

#[test]
fn a_line_of_a_megabyte_is_answered_shortly() {
    for typed in [vec![b'x'; 1 << 20], b"10 ft ".repeat(1 << 18), "½".repeat(1 << 19).into_bytes()] {
        let out = railhand(&[], &[&typed[..], b"\nnext\n"].concat());
        assert_eq!(out.status.code(), Some(0));
        assert_harmless(&out);
        assert!(out.stdout.len() < 20_000, "{}", out.stdout.len());
    }
}

/// Each answer comes before the next line is asked for: a program may hold a talk.
#[test]
fn an_answer_does_not_wait_for_the_end_of_the_input() {
    use std::io::{BufRead as _, BufReader, Write as _};
    let mut child = command(&["--json"]).spawn().expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    let mut answers = BufReader::new(child.stdout.take().expect("a pipe"));
    for typed in ["one", "two"] {
        writeln!(stdin, "{typed}").expect("it reads");
        let mut answer = String::new();
        answers.read_line(&mut answer).expect("it answers");
        assert_eq!(objects(answer.as_bytes())[0]["line"], typed);
    }
    drop(stdin);
    assert_eq!(child.wait().expect("it ends").code(), Some(0));
}

#[test]
fn a_log_nobody_understands_is_no_reason_to_stop() {
    let out = command(&["say", "hello"])
        .env("RAILHAND_LOG", "railhand=loud")
        .stdin(Stdio::null())
        .output()
        .expect("it starts");
    assert_eq!(out.status.code(), Some(0));
    assert!(String::from_utf8_lossy(&out.stderr).contains("RAILHAND_LOG"));
}
