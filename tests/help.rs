//! Whatever help says can be said, can be said.

use railhand::measure::Tape;
use railhand::reply::{Status, shown};
use railhand::session::{Session, step};

/// What a person has told by the time help is asked for.
const TOLD: [&str; 7] = [
    "overhang 0, skirt 3/4, rim 2x10",
    "front 16 ft corner to corner, 4x4 posts",
    "guard height 36, gap under 3",
    "stairs 4 ft wide in the middle of the front",
    "7 risers 7 1/2 on 10",
    "open both sides",
    "creek side 12 ft corner to house, 36 inch gate in the middle",
];

fn told() -> Session {
    let mut session = Session::new();
    for line in TOLD {
        let (delta, reply) = step(&session, line);
        assert_eq!(reply.status, Status::Told, "{line}");
        session.apply(delta);
    }
    session
}

fn text(session: &Session, line: &str) -> String {
    let (_, reply) = step(session, line);
    assert_eq!(reply.status, Status::Answered, "{line}");
    shown(&reply, 4_000, Tape::default()).into_iter().map(|s| s.text + "\n").collect()
}

fn quoted(text: &str) -> Vec<String> {
    text.split('"').skip(1).step_by(2).map(str::to_owned).collect()
}

const TASKS: [&str; 10] =
    ["layout", "posts", "notches", "balusters", "stairs", "gate", "strength", "order", "code", "notes"];

/// Each example, on the job told and in the order it stands in: a later one may go on from one before it.
#[test]
fn every_example_is_understood() {
    let pages = std::iter::once("help".to_owned()).chain(TASKS.map(|t| format!("help with {t}")));
    let mut tried = 0;
    let mut wrong = Vec::new();
    for page in pages {
        let mut session = told();
        for example in quoted(&text(&session, &page)) {
            let (delta, reply) = step(&session, &example);
            tried += 1;
            // A question back is an answer where a fact is still untold; words left over are not.
            let lost = reply.lines.iter().any(|l| l.role == railhand::reply::Role::Pointer);
            if lost || reply.status == Status::Refused || !reply.unused.is_empty() {
                wrong.push(format!("{page}: {example:?} is {} {:?}", reply.status.name(), reply.unused));
            }
            session.apply(delta);
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(tried > 60, "{tried} examples");
}

#[test]
fn help_begins_with_what_is_wanted_next() {
    let first = |session: &Session| text(session, "help").lines().next().map(str::to_owned);
    assert!(first(&Session::new()).is_some_and(|l| l.contains("Begin with a run")));
    let mut session = Session::new();
    let (delta, _) = step(&session, "run 10 ft house to corner");
    session.apply(delta);
    assert!(first(&session).is_some_and(|l| l.contains("guard height 36")));
}

#[test]
fn help_is_short() {
    for page in std::iter::once("help".to_owned()).chain(TASKS.map(|t| format!("help {t}"))) {
        let rows = text(&told(), &page).lines().count();
        assert!(rows <= 10, "{page} has {rows} rows");
    }
}
