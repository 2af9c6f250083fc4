//! A question that was not read is offered as figures with every value of the line in them; an offer taken answers and keeps nothing.

use railhand::grammar::canon;
use railhand::job::Job;
use railhand::measure::Length;
use railhand::reply::{Reply, Status};
use railhand::session::{Session, step};

/// Says the lines; the last reply and the job behind it.
fn said(lines: &[&str]) -> (Reply, Job) {
    let mut session = Session::new();
    let mut last = Reply::of(Status::Answered);
    for line in lines {
        let (delta, reply) = step(&session, line);
        session.apply(delta);
        last = reply;
    }
    (last, session.job().clone())
}

/// (62 - 11 x 1 1/2) / 12 = 45 1/2 / 12 = 3 19/24; (60 - 9 x 1 1/2) / 10 = 4 13/20.
#[test]
fn an_offer_taken_gives_its_figure() {
    let rows = [
        ("11 pickets at 1 1/2 in 62, what gap", (91, 24)),
        ("nine spindles in a five foot bay inch and a half each whats the space", (93, 20)),
    ];
    for (line, (num, den)) in rows {
        let (asked, _) = said(&[line]);
        assert_eq!(asked.status, Status::Asks, "{line}");
        let (reply, job) = said(&[line, "1"]);
        assert_eq!(reply.values.result.and_then(|f| f.as_length()), Length::new(num, den), "{line}");
        assert_eq!(job, Job::default(), "{line}");
    }
}

/// Over lines of strangers: what is offered is a plain phrase, answers when it is taken, and changes nothing.
#[test]
fn offers_are_plain_phrases_that_answer_and_keep_nothing() {
    let rows =
        include_str!("cold/1.jsonl").lines().map(|l| serde_json::from_str::<serde_json::Value>(l).expect("a row"));
    let mut offered = 0;
    for row in rows {
        let lines: Vec<String> =
            row["say"].as_array().expect("lines").iter().map(|l| l.as_str().unwrap_or("").to_owned()).collect();
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        let (reply, before) = said(&lines);
        for (n, choice) in reply.choices.iter().enumerate().filter(|(_, c)| c.starts_with("figure: ")) {
            assert!(canon::read(choice).is_some(), "{choice}");
            let number = (n + 1).to_string();
            let (taken, after) = said(&[&lines[..], &[number.as_str()]].concat());
            assert_eq!((taken.status, &after), (Status::Answered, &before), "{lines:?} {choice}");
            offered += 1;
        }
    }
    assert!(offered > 5, "{offered}");
}

/// What tells, greets or notes is offered no figure.
#[test]
fn what_asks_nothing_is_offered_nothing() {
    for line in ["morning boss", "front rail is 14-6 blorft", "note the yard opens at 7", "posts 6x6 wimmel"] {
        let (reply, _) = said(&[line]);
        assert!(!reply.choices.iter().any(|c| c.starts_with("figure: ")), "{line}: {:?}", reply.choices);
    }
}
