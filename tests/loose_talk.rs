//! Loose talk: several facts and a question in one line, in any order, and the lines that go on from it.
//!
//! The lines here are none of the corpus the scores were learned from; the figures are worked by hand.

use railhand::grammar::canon;
use railhand::job::Job;
use railhand::measure::Length;
use railhand::reply::{Reply, Status};
use railhand::session::{Session, step};

#[path = "talk_corpus/form.rs"]
#[allow(dead_code, reason = "the corpus's test uses the rest")]
mod form;

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

/// Over lines of strangers: what is offered is a plain phrase; a question that is taken keeps nothing.
#[test]
fn what_is_offered_is_a_plain_phrase_and_a_question_taken_keeps_nothing() {
    let rows =
        include_str!("cold/1.jsonl").lines().map(|l| serde_json::from_str::<serde_json::Value>(l).expect("a row"));
    let mut offered = 0;
    for row in rows {
        let lines: Vec<String> =
            row["say"].as_array().expect("lines").iter().map(|l| l.as_str().unwrap_or("").to_owned()).collect();
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        let (reply, before) = said(&lines);
        for (n, choice) in reply.choices.iter().enumerate() {
            assert!(canon::read(choice).is_some(), "{choice}");
            if !["figure: ", "judge: ", "fault: "].iter().any(|lead| choice.starts_with(lead)) {
                continue;
            }
            let number = (n + 1).to_string();
            let (_, after) = said(&[&lines[..], &[number.as_str()]].concat());
            assert_eq!(after, before, "{lines:?} {choice}");
            offered += 1;
        }
    }
    assert!(offered > 5, "{offered}");
}

/// Every line of the corpus that asks, judges or supposes, where it is bound: it changes nothing told, whatever it was taken for.
#[test]
fn premises_are_never_kept() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/talk");
    let text = std::fs::read_to_string(folder.join("balusters.txt")).expect("the corpus is here");
    let parts = text.split("\n\n").filter(|b| b.lines().any(|l| !l.trim().is_empty() && !l.starts_with('#')));
    let blocks = parts.filter_map(|b| form::block("balusters", b).ok());
    let asks =
        |b: &form::Block| b.meanings.len() == 1 && ["ask", "judge", "suppose"].contains(&b.meanings[0].act.as_str());
    let (mut bound, mut kept) = (0, Vec::new());
    for line in blocks.filter(asks).flat_map(|b| b.says).filter_map(|talk| talk.into_iter().next()).step_by(4) {
        let (reply, job) = said(&[&line]);
        if reply.readings.is_empty() {
            continue;
        }
        bound += 1;
        if job != Job::default() {
            kept.push(format!("{line}: {:?}", reply.readback));
        }
    }
    // A line may be taken for a telling; one in a hundred is what the odds allow.
    assert!(bound > 60, "{bound}");
    assert!(kept.len() * 100 <= bound, "{} of {bound}\n{}", kept.len(), kept.join("\n"));
}

/// Several facts and the question in one breath, and what goes on from it. What is asked keeps nothing.
#[test]
fn a_question_takes_its_premises_in_any_order_and_keeps_none() {
    let rows: &[(&[&str], (i128, i128))] = &[
        // (62 - 11 x 1 1/2) / 12 = 45 1/2 / 12
        (&["so i got 11 of the inch and a half pickets in a 62 inch hole whats my gap"], (91, 24)),
        // (62 - 12 x 1 1/2) / 13 = 44 / 13
        (&["so i got 11 of the inch and a half pickets in a 62 inch hole whats my gap", "and with 12?"], (44, 13)),
        // 44 1/2 / 6
        (&["deck is 44 1/2 off the ground, six risers, how tall is each one"], (89, 12)),
    ];
    for (lines, (num, den)) in rows {
        let (reply, job) = said(lines);
        assert_eq!(reply.status, Status::Answered, "{lines:?}");
        assert_eq!(reply.values.result.and_then(|f| f.as_length()), Length::new(*num, *den), "{lines:?}");
        assert_eq!(job, Job::default(), "{lines:?}");
    }
}

/// IRC R312.1.3: a 4 in. ball must not pass, so 4 1/8 is over.
#[test]
fn a_judgement_opens_with_its_word() {
    let (reply, job) = said(&["is 4 1/8 gap ok"]);
    let first: String = reply.lines[0].spans.iter().map(|s| format!("{s:?}")).collect();
    assert!(first.contains("No"), "{first}");
    assert_eq!(job, Job::default());
}

/// What is asked is read with its way: that something is amiss, that it is all right; a topic is judged by what is given for it.
#[test]
fn a_word_is_asked_for_the_way_the_line_asks() {
    let rows: &[(&[&str], &str)] = &[
        (
            &["handrail came out 39 1/4 over the nosings, is that too high"],
            "fault: handrail; with handrail 3'-3 1/4\"?",
        ),
        (&["bottom rail's 4 3/8 off the deck, too much?"], "fault: gap under; with gap under 4 3/8\"?"),
        (
            &["post is 4 3/4 off the siding, will that fail"],
            "fault: post off the wall; with post off the wall 4 3/4\"?",
        ),
        (&["post's 3 3/4 off the siding, does that pass"], "judge: post off the wall; with post off the wall 3 3/4\"?"),
        (&["only three risers here, do I need a handrail"], "judge: risers for a handrail; with risers 3?"),
        // A word goes on as a word.
        (
            &["judge: balusters; with balusters 9; with bay 4'-10\"?", "and with 10?"],
            "judge: balusters; with bay 4'-10\"; with balusters 10?",
        ),
    ];
    for (lines, phrase) in rows {
        let (reply, job) = said(lines);
        assert_eq!(reply.readback.as_deref(), Some(*phrase), "{lines:?}");
        assert!(reply.unused.iter().all(|w| w.as_str() != "too"), "{lines:?}: {:?}", reply.unused);
        assert_eq!(job, Job::default(), "{lines:?}");
    }
}

/// What may bend, part or double a figure is not passed over: nothing is told.
#[test]
fn a_telling_that_may_be_another_is_asked_about() {
    for line in [
        "either 12' or 13' corner to house",
        "at least 10 foot house to corner",
        "house to corner 10' 12'",
        "just over 12 foot corner to corner",
        "kitchen cabinets 36 high",
        "3 posts on the front, 12 ft",
    ] {
        let (reply, job) = said(&[line]);
        assert_ne!(reply.status, Status::Told, "{line}");
        assert_eq!(job, Job::default(), "{line}");
    }
}

/// A figure no part of the job keeps stands for the question after it: (60 - 9 x 1 1/2) / 10.
#[test]
fn a_figure_told_by_itself_stands_for_the_questions_after_it() {
    let (reply, _) = said(&["told: bay 5'-0\"", "told: balusters 9", "figure: gap?"]);
    assert_eq!(reply.values.result.and_then(|f| f.as_length()), Length::new(93, 20));
    let (_, job) = said(&["told: bay 5'-0\"", "drop told: bay"]);
    assert_eq!(job, Job::default());
}

/// The one figure a question lacked completes it: (58 - 9 x 1 1/2) / 10.
#[test]
fn a_figure_alone_completes_the_question_before() {
    let (asked, _) = said(&["figure: gap; with balusters 9?"]);
    assert_eq!(asked.status, Status::Asks);
    let (reply, job) = said(&["figure: gap; with balusters 9?", "58"]);
    assert_eq!(reply.values.result.and_then(|f| f.as_length()), Length::new(89, 20));
    assert_eq!(job, Job::default());
}
