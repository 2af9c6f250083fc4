//! Lines no reading may break on: measures that are no length, lines that would take more work than any line said by
//! a person, lengths worked out with a root in them, and counts that stand where a size might.

#[path = "common/talk.rs"]
mod talk;

use pretty_assertions::assert_eq;
use railhand::grammar::canon;
use railhand::grammar::effort::{Effort, MOST};
use railhand::grammar::kinds::kinds;
use railhand::grammar::reading::readings_within;
use railhand::grammar::slips::said_once;
use railhand::grammar::words::words;
use railhand::reply::{Reply, Role, Status, plain};
use railhand::session::{LONGEST, MOST_WORDS, Peek, Session, peek, step};
use railhand::store::session_of;

fn told(lines: &[&str]) -> (Session, Reply) {
    let last = talk::talk(lines);
    (last.session, last.reply)
}

fn readback(line: &str) -> Option<String> {
    told(&[line]).1.readback
}

/// Pieces counted ("16s") are no length: the line is asked about, and the answer points at them.
#[test]
fn a_measure_that_is_no_length_is_pointed_at() {
    for (before, line, named) in [
        (None, "16s along the house", "16s"),
        (None, "deck is 12s out", "12s"),
        (None, "out 38s", "38s"),
        (None, "deck 16 along the house, 12s out", "12s"),
        (Some("deck 16 along the house 12 out"), "30s deep", "30s"),
        (Some("front 14 ft corner to stair head"), "keep posts 16s off the corner", "16s"),
    ] {
        let mut session = before.map_or_else(Session::new, |line| told(&[line]).0);
        let job = session.job().clone();
        let (delta, reply) = step(&session, line);
        session.apply(delta);
        assert_ne!(reply.status, Status::Told, "{line}");
        assert_eq!(session.job(), &job, "{line}");
        if before.is_none() {
            assert_eq!(reply.unused.iter().map(|t| t.as_str().to_owned()).collect::<Vec<_>>(), [named], "{line}");
            assert!(reply.lines.iter().any(|l| l.role == Role::Pointer), "{line}");
        }
        assert!(!matches!(peek(&session, line), Peek::Heard(_)), "{line}");
        let _ = kinds(line, &session.names());
    }
}

#[test]
fn lumber_where_a_length_is_wanted_is_no_length() {
    let (session, reply) = told(&["Let's space the four-by-fours out at five feet apart."]);
    // The size is the posts', and the one length the bays'.
    assert_eq!(reply.status, Status::Told);
    assert_eq!(session.told_phrases(), ["posts: 4x4; told: bay, on center 5'-0\""]);
}

fn tangles() -> Vec<String> {
    let whole = |piece: &str| piece.chars().cycle().take(LONGEST).collect::<String>();
    let pieces = [
        "(",
        "(1+",
        "(1 + ",
        "1/2 ",
        "12 ",
        "10 ft ",
        "4x4 ",
        "5'-3 ",
        "16s ",
        "and 4 and ",
        "half of ",
        "3/4 of ",
        "2x",
        "post ",
        "run 10 ft, ",
        "add 3 ",
        "not 12 ",
        "-",
        "5-3-",
        "twenty five ",
        "gate stairs ",
        "no 12 it ",
        "? ",
        "/",
        "9 risers 10 treads ",
        "4 at 3 7/8 and ",
        "about 5 strong ",
        "zork 12 ",
        "one ",
        "\"'",
        "a dozen ",
        "why ",
    ];
    pieces.into_iter().map(whole).chain(["(".repeat(26), "(".repeat(33)]).collect()
}

/// However a line is made, it costs no more work than is given it, and changes nothing that it does not read back.
#[test]
fn no_line_takes_more_work_than_it_is_given() {
    for line in tangles() {
        let short: String = line.chars().take(30).collect();
        let effort = Effort::new(MOST);
        let list = said_once(words(&line));
        let read = readings_within(&list, &[], &effort);
        assert!(read.is_err() || !effort.is_over(), "{short}");
        // The work is looked at between one piece and the next: no piece looks over the line many times.
        assert!(effort.spent() < MOST + MOST / 4, "{short}: {}", effort.spent());
        let (session, reply) = told(&[&line]);
        assert_ne!(reply.status, Status::Told, "{short}");
        assert_eq!(session.told_phrases().len(), 0, "{short}");
        if read.is_err() {
            assert_eq!(reply.status, Status::Refused, "{short}");
            assert!(plain(&reply, 72, Default::default()).contains("smaller pieces"), "{short}");
        }
        assert!(list.len() <= MOST_WORDS || peek(&session, &line) == Peek::Nothing, "{short}");
        let _ = kinds(&line, &[]);
    }
}

/// Brackets in brackets: each is read once, so one more pair costs what the pair before it cost.
#[test]
fn work_grows_with_the_brackets_and_does_not_double() {
    let spent = |line: &str| {
        let effort = Effort::new(u64::MAX);
        readings_within(&words(line), &[], &effort).map(|_| effort.spent()).expect("no limit")
    };
    for (open, inner, close) in [("(", "", ""), ("(1 + ", "1", ")"), ("(1 + ", "", "")] {
        let nested = |n: usize| format!("{}{inner}{}", open.repeat(n), close.repeat(n));
        let (eight, sixteen) = (spent(&nested(8)), spent(&nested(16)));
        // Twice the items, each looked at from each place before it, in more ways to cut the line: less than eight times
        // the looks. Read twice for each pair of brackets, eight pairs more would take 256 times the work.
        assert!(sixteen < eight * 8, "{open}: {eight}, then {sixteen}");
    }
}

/// (10 - 2) / 2 = 4; ((1 + 2) + 3) + 4 = 10: a chain is summed as before.
#[test]
fn chains_and_brackets_are_summed() {
    for (line, sum) in [
        ("(10' - 3 1/2\") / 2", "sum: (10'-0\" - 3 1/2\") / 2"),
        ("(((1\" + 2\") + 3\") + 4\")", "sum: 1\" + 2\" + 3\" + 4\""),
        ("add 3 1/2 and 4 1/4", "sum: 3 1/2\" + 4 1/4\""),
        ("3 1/2 and 4 1/4 and 5 1/8 total", "sum: 3 1/2\" + 4 1/4\" + 5 1/8\""),
        ("4 at 3 7/8 and 5 at 1 1/2", "sum: 4 x 3 7/8\" + 5 x 1 1/2\""),
        ("12' minus 7 inches, then divide by 2", "sum: (12'-0\" - 7\") / 2"),
        ("take 3/8 off 40 1/4", "sum: 3'-4 1/4\" - 3/8\""),
    ] {
        assert_eq!(readback(line).as_deref(), Some(sum), "{line}");
    }
}

/// What people say is far from the limit.
#[test]
fn the_phrase_book_takes_an_eighth_of_the_work_at_most() {
    let mut most = (0, String::new());
    for entry in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/phrases")).expect("the book") {
        let text = std::fs::read_to_string(entry.expect("a file").path()).expect("text");
        let book: toml::Table = toml::from_str(&text).expect("TOML");
        let phrases = book.get("phrase").and_then(|p| p.as_array()).into_iter().flatten();
        let lines = phrases.filter_map(|p| p.get("say")?.as_array()).flatten().filter_map(|l| l.as_str());
        for line in lines {
            let effort = Effort::new(u64::MAX);
            let _ = readings_within(&said_once(words(line)), &[], &effort);
            if effort.spent() > most.0 {
                most = (effort.spent(), line.to_owned());
            }
        }
    }
    assert!(most.0 < MOST / 8, "{most:?}");
}

/// A file with such lines opens: they are set aside, and what stands before and behind them holds.
#[test]
fn a_job_file_with_such_lines_opens() {
    let mut file = String::from("railhand job, version 1, defaults 1\nheight: 38\" to the top\n");
    let odd = ["16s along the house", "deck is 12s out", "? out 38s", "out 38s", "? 16s along the house"];
    for line in odd.iter().map(|l| (*l).to_owned()).chain(tangles().into_iter().take(6)) {
        file.push_str(&line);
        file.push('\n');
    }
    file.push_str("gap under: 3\"\n");
    let session = session_of(file.as_bytes()).expect("it opens");
    let inches = |l: Option<railhand::measure::Length>| l.map(railhand::measure::exact_inches);
    assert_eq!(inches(session.job().settings.height_top).as_deref(), Some("38\""));
    assert_eq!(inches(session.job().settings.gap_under).as_deref(), Some("3\""));
    assert!(session.job().deck_along.is_none() && session.job().deck_out.is_none() && session.job().runs.is_empty());
}

/// 4 ft off both sides: the cut is 48 x root 2 = 67.882 in., 67 7/8 on the tape. A cut of 4 ft takes
/// 48 / root 2 = 33.941 in. off each, 33 15/16: 12 ft less that is 110 1/16, 16 ft less that 158 1/16.
#[test]
fn a_length_with_a_root_in_it_is_offered_as_the_tape_reads_it() {
    let (session, reply) = told(&["deck 16 along the house 12 out", "clip the front left corner 4 ft"]);
    assert_eq!(reply.status, Status::Asks);
    assert_eq!(reply.choices.len(), 2, "{:?}", reply.choices);
    for (choice, holds) in reply.choices.iter().zip(["5'-7 7/8\"", "13'-2 1/16\""]) {
        assert!(choice.contains(holds), "{choice}");
        assert!(!choice.contains("000"), "{choice}");
        let act = canon::read(choice).expect("a choice is a plain phrase");
        assert_eq!(&canon::write(&act), choice);
        // Typed back it is told, word for word, and the walk still comes home.
        let mut session = session.clone();
        let (delta, told) = step(&session, choice);
        assert_eq!((told.status, told.readback.as_ref()), (Status::Told, Some(choice)));
        assert!(told.findings.iter().all(|f| f.rule != "outline-open"), "{:?}", told.findings);
        session.apply(delta);
        let (_, by_number) = step(&session, "undo");
        assert_eq!(by_number.status, Status::Told);
    }
    let (_, first) = step(&session, "1");
    assert_eq!((first.status, first.readback.as_ref()), (Status::Told, reply.choices.first()));
}

/// A bare whole number of "risers" counts them, whatever stands beside it.
#[test]
fn risers_with_no_unit_are_counted() {
    for n in 3..=9 {
        let line = format!("{n} risers, 10 1/2 inch treads");
        let expected = format!("stairs: {n} risers; stairs: tread 10 1/2\"");
        assert_eq!(readback(&line).as_deref(), Some(&*expected), "{line}");
    }
    for (line, expected) in [
        ("9 risers", "stairs: 9 risers"),
        ("7 risers and 10 inch treads", "stairs: 7 risers; stairs: tread 10\""),
        ("36 high, 7 risers, 10 1/2 inch treads", "height: 36\" to the top; stairs: 7 risers; stairs: tread 10 1/2\""),
        ("7 risers, 10 1/4 treads, 4x4 posts", "stairs: 7 risers; stairs: tread 10 1/4\"; posts: 4x4"),
        ("five risers and 11 inch treads", "stairs: 5 risers; stairs: tread 11\""),
        ("rise is 7", "stairs: rise 7\""),
        ("7 inch risers", "stairs: rise 7\""),
        ("risers 7 1/4", "stairs: rise 7 1/4\""),
        ("7 inch risers, 10 inch treads", "stairs: rise 7\"; stairs: tread 10\""),
        ("7 1/2 risers and 10 treads", "stairs: rise 7 1/2\"; stairs: tread 10\""),
        ("7 rise 10 run", "stairs: rise 7\"; stairs: tread 10\""),
        ("4 risers 7 1/2 on 10", "stairs: 4 risers; stairs: rise 7 1/2\"; stairs: tread 10\""),
    ] {
        assert_eq!(readback(line).as_deref(), Some(expected), "{line}");
    }
}

/// "7 risers, 11 treads": seven of them, or 7 in. high; both are built, so it is asked.
#[test]
fn risers_and_treads_both_bare_are_asked_about() {
    let (session, reply) = told(&["7 risers, 11 treads"]);
    assert_eq!(reply.choices, ["stairs: 7 risers; stairs: tread 11\"", "stairs: rise 7\"; stairs: tread 11\""]);
    assert_eq!(session.told_phrases().len(), 0);
}
