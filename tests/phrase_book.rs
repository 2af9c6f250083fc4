//! The phrase book: what is typed, and what a careful hand on the crew makes of it.
//!
//! The rows stand in `grammar/phrases/*.toml`, a file for each kind. What a builder means by a
//! phrase is common practice, no source; the arithmetic in a row can be done by hand.

use railhand::grammar::{Act, Talk, canon};
use railhand::job::Job;
use railhand::reply::Status;
use railhand::session::{Session, step};

#[path = "common/book.rs"]
mod book;
use book::{Phrase, book};

/// What comes of a row's last line.
#[derive(Clone, Debug, PartialEq)]
struct Outcome {
    status: Status,
    /// `None` where nothing was understood well enough to read back.
    readback: Option<String>,
}

/// The status that goes with an act, as the contract in README.md has it.
fn status_of(act: &Act) -> Status {
    match act {
        Act::Tell(_) | Act::TellWith(..) | Act::Talk(Talk::Undo | Talk::Redo | Talk::Keep) => Status::Told,
        Act::Suppose(_) | Act::Query(_) | Act::Sum(_) | Act::Talk(_) => Status::Answered,
    }
}

fn expected(phrase: &Phrase) -> Outcome {
    match (&phrase.read, phrase.asks, phrase.refused) {
        (Some(read), false, false) => {
            let act = canon::read(read).unwrap_or_else(|| panic!("{read:?} is no plain phrase"));
            Outcome { status: status_of(&act), readback: Some(read.clone()) }
        }
        (None, true, false) => Outcome { status: Status::Asks, readback: None },
        (None, false, true) => Outcome { status: Status::Refused, readback: None },
        _ => panic!("{:?}: one of read, asks and refused, and only one", phrase.say),
    }
}

/// Talks a row through; also tells whether the last line changed the job.
fn talked(phrase: &Phrase) -> (Outcome, bool) {
    let mut session = Session::new();
    let (last, before) = phrase.say.split_last().expect("a row says something");
    for line in before {
        let (delta, _) = step(&session, line);
        session.apply(delta);
    }
    let was = session.job().clone();
    let (delta, reply) = step(&session, last);
    session.apply(delta);
    (Outcome { status: reply.status, readback: reply.readback }, *session.job() != was)
}

/// What is wrong with a row, in a line; `None` when nothing is.
fn mismatch(phrase: &Phrase) -> Option<String> {
    let (want, (got, changed)) = (expected(phrase), talked(phrase));
    // What is asked about or refused may be read back or not: it is the status that counts.
    let same = got.status == want.status && (want.readback.is_none() || got.readback == want.readback);
    let kept = want.status == Status::Told || !changed;
    let why = match (same, kept) {
        (true, true) => return None,
        (true, false) => "the job changed".to_owned(),
        (false, _) => format!("wanted {want:?}\n    got    {got:?}"),
    };
    Some(format!("{:?}\n    {why}", phrase.say))
}

#[test]
fn every_row_says_something_once_and_means_one_thing() {
    let book = book();
    let rows: Vec<&Phrase> = book.values().flatten().collect();
    assert!(rows.len() >= 170, "{} rows", rows.len());
    assert!(book.len() >= 12, "{:?}", book.keys());
    let mut said = Vec::new();
    for row in rows {
        assert!(!row.say.is_empty(), "a row says nothing");
        assert!(!said.contains(&&row.say), "{:?} stands twice", row.say);
        said.push(&row.say);
        expected(row);
    }
}

#[test]
fn every_read_back_is_itself_a_plain_phrase() {
    for row in book().values().flatten() {
        let Some(read) = &row.read else { continue };
        let act = canon::read(read).unwrap_or_else(|| panic!("{:?}: {read:?} is no plain phrase", row.say));
        assert_eq!(&canon::write(&act), read);
    }
}

/// A row of one line is told to an empty job, which must have room for it: else the row asks
/// the reader for something the job then refuses.
#[test]
fn every_row_of_one_line_fits_an_empty_job() {
    let mut told = 0;
    for row in book().values().flatten().filter(|row| row.say.len() == 1) {
        if let Some(Act::Tell(facts)) = row.read.as_deref().and_then(canon::read) {
            told += 1;
            let job = Job::default().with_all(&facts);
            assert!(job.is_ok_and(|job| job != Job::default()), "{:?}", row.say);
        }
    }
    assert!(told > 60, "{told} rows of one line tell something");
}

/// Every conversation of the book, through the same step the console takes.
#[test]
fn the_book_is_read_as_it_is_written() {
    let mut wrong = 0;
    for (kind, rows) in book() {
        let bad: Vec<String> = rows.iter().filter_map(mismatch).collect();
        println!("{kind}: {} of {}", rows.len() - bad.len(), rows.len());
        bad.iter().for_each(|line| println!("  {line}"));
        wrong += bad.len();
    }
    assert_eq!(wrong, 0, "rows read another way; each is printed above");
}
