//! The judge itself is held to made-up answers: each way of being wrong is called wrong.
//!
//! The answers are in the form of the JSON contract in README.md; what each deserves follows
//! from the verdicts' own definitions.

use super::judge::{Verdict, judge};
use super::record::{Line, Talk};
use Verdict::{Part, Pass, Safe, Wrong};
use serde_json::{Map, Value, json};

/// An answer: its status, what it says in full, and the job after it (`null`: as before).
type Answer = (&'static str, Value, Value);

fn talk(answers: &[Answer]) -> Talk {
    let mut job = json!({ "runs": [], "stairs": [], "gates": [], "settings": {}, "notes": [], "deck": null });
    let mut talk = Talk::default();
    for (status, said, after) in answers {
        let before = job.clone();
        if let Value::Object(fields) = after {
            fields.iter().for_each(|(name, value)| job[name] = value.clone());
        }
        let mut json = json!({ "status": status, "text": "", "readback": "", "values": {}, "job": job });
        said.as_object().into_iter().flatten().for_each(|(name, value)| json[name] = value.clone());
        talk.lines.push(Line { json, before });
    }
    talk
}

fn verdict(expect: &Value, answers: &[Answer]) -> Verdict {
    let expect: Map<String, Value> = expect.as_object().cloned().expect("an expectation is an object");
    judge(&expect, &talk(answers)).verdict
}

fn hold(rows: Vec<(&str, Value, Vec<Answer>, Verdict)>) {
    for (name, expect, answers, want) in rows {
        assert_eq!(verdict(&expect, &answers), want, "{name}: {expect}");
    }
}

fn run(length: &str, from: &str, to: &str, gate: &str) -> Value {
    json!({ "runs": [{ "length": { "in": length }, "basis": "overall", "from": from, "to": to, "gate": gate }] })
}

fn result(inches: &str) -> Value {
    json!({ "values": { "result": { "in": inches, "text": "" } } })
}

const NOTHING: Value = Value::Null;

#[test]
fn runs_are_held_to_length_ends_and_gate() {
    let expect = json!({ "run_in": 120, "from": "corner", "to": "stair head", "gate": "at to-end" });
    let told = |after: Value| vec![("told", NOTHING, after)];
    let of = |length, from, to, gate| told(run(length, from, to, gate));
    hold(vec![
        ("as told", expect.clone(), of("120", "corner", "stair head", "at to-end"), Pass),
        ("swapped, and the gate with it", expect.clone(), of("120", "stair head", "corner", "at from-end"), Pass),
        ("the gate named by the stairs", expect.clone(), of("120", "corner", "stair head", "at stair head"), Pass),
        ("swapped, the gate left", expect.clone(), of("120", "stair head", "corner", "at to-end"), Wrong),
        ("another length", expect.clone(), of("121", "corner", "stair head", "at to-end"), Wrong),
        ("a sixteenth off", expect.clone(), of("120.0625", "corner", "stair head", "at to-end"), Wrong),
        ("another end", expect.clone(), of("120", "corner", "house", "at to-end"), Wrong),
        ("the gate dropped", expect.clone(), of("120", "corner", "stair head", "none"), Wrong),
        ("the wrong basis", json!({ "cc_in": 120 }), of("120", "corner", "corner", "none"), Wrong),
        ("nothing told", expect.clone(), told(NOTHING), Wrong),
        ("asked", expect.clone(), vec![("asks", NOTHING, NOTHING)], Safe),
        ("refused", expect, vec![("refused", NOTHING, NOTHING)], Safe),
    ]);
}

#[test]
fn a_correction_that_asks_is_safe_and_one_that_misreads_is_not() {
    let expect = json!({ "run_in": 138 });
    let first = ("told", NOTHING, run("144", "corner", "house", "none"));
    let then = |next: Answer| vec![first.clone(), next];
    let three = |next: Answer| vec![first.clone(), ("asks", NOTHING, NOTHING), next];
    hold(vec![
        ("taken", expect.clone(), then(("told", NOTHING, run("138", "corner", "house", "none"))), Pass),
        ("asked", expect.clone(), then(("asks", NOTHING, NOTHING)), Safe),
        ("misread", expect.clone(), then(("told", NOTHING, run("11.5", "corner", "house", "none"))), Wrong),
        ("taken as a sum", expect.clone(), then(("answered", result("138"), NOTHING)), Wrong),
        (
            "misread after asking",
            expect.clone(),
            three(("told", NOTHING, run("11.5", "house", "house", "none"))),
            Wrong,
        ),
        ("answered after asking", expect, three(("answered", NOTHING, NOTHING)), Wrong),
    ]);
}

#[test]
fn several_runs_are_held_to_their_order() {
    let runs = |lengths: &[&str]| {
        let runs: Vec<Value> = lengths.iter().map(|l| json!({ "length": { "in": l } })).collect();
        vec![("told", NOTHING, json!({ "runs": runs }))]
    };
    let expect = json!({ "runs_in": [96, 192, 144] });
    hold(vec![
        ("as walked", expect.clone(), runs(&["96", "192", "144"]), Pass),
        ("another order", expect.clone(), runs(&["192", "96", "144"]), Wrong),
        ("one lost", expect.clone(), runs(&["96", "192"]), Wrong),
        ("one too many", expect, runs(&["96", "192", "144", "48"]), Wrong),
    ]);
}

#[test]
fn figures_are_held_to_the_result() {
    let expect = json!({ "number_in": 16.4375, "nearest_16": "16 7/16" });
    let got = |inches: &str, text: &str| json!({ "values": { "result": { "in": inches, "text": text } } });
    let count = |n: u64, left: &str| json!({ "values": { "result": n, "left": { "in": left } } });
    let answered = |said: Value| vec![("answered", said, NOTHING)];
    hold(vec![
        ("right", expect.clone(), answered(got("16.4375", "1'-4 7/16\"")), Pass),
        ("wrong", expect.clone(), answered(got("16.5", "1'-4 1/2\"")), Wrong),
        ("right, read off the tape wrong", expect.clone(), answered(got("16.4375", "1'-4 1/2\"")), Wrong),
        ("wrong while it asks", expect.clone(), vec![("asks", got("16.5", ""), NOTHING)], Wrong),
        ("no figure", expect, answered(NOTHING), Wrong),
        ("a plain number for a length", json!({ "number_in": 5 }), answered(count(5, "2")), Wrong),
        ("count and rest", json!({ "number": 5, "left_in": 2 }), answered(count(5, "2")), Pass),
        ("wrong rest", json!({ "number": 5, "left_in": 2 }), answered(count(5, "3")), Wrong),
        ("a length for a count", json!({ "number": 5 }), answered(result("5")), Wrong),
        ("within its tolerance", json!({ "number_in": 206.455806, "tol_in": 0.01 }), answered(result("206.46")), Pass),
        ("past its tolerance", json!({ "number_in": 206.455806, "tol_in": 0.01 }), answered(result("206.47")), Wrong),
        ("millimetres", json!({ "length_mm": 254 }), answered(result("10")), Pass),
    ]);
}

#[test]
fn asking_and_refusing_are_told_apart() {
    let line = |status| vec![(status, NOTHING, NOTHING)];
    let told = vec![("told", NOTHING, run("144", "corner", "corner", "none"))];
    let or = json!({ "no_crash": true, "or": [{ "run_in": 120 }, { "must_ask": "confirm" }] });
    let or_ask = json!({ "run_in": 120, "or_ask": true });
    hold(vec![
        ("asks", json!({ "must_ask": "which" }), line("asks"), Pass),
        ("refuses in place of asking", json!({ "must_ask": "which" }), line("refused"), Safe),
        ("answers in place of asking", json!({ "must_ask": "which" }), line("answered"), Wrong),
        ("refuses", json!({ "must_refuse": true }), line("refused"), Pass),
        ("asks in place of refusing", json!({ "must_refuse": true }), line("asks"), Safe),
        ("answers in place of refusing", json!({ "must_refuse": true }), line("answered"), Wrong),
        ("may ask, asks", or_ask.clone(), line("asks"), Pass),
        ("may ask, refuses", or_ask.clone(), line("refused"), Safe),
        ("may ask, misreads", or_ask, told.clone(), Wrong),
        ("the second reading", or.clone(), line("asks"), Pass),
        ("no reading", or, told.clone(), Wrong),
        ("asks, the figure still to come", json!({ "must_ask": "side", "stairs_in": 36 }), line("asks"), Pass),
        ("asks without the words", json!({ "must_ask": "gap", "must_mention": ["4"] }), line("asks"), Safe),
        ("told and kept", json!({ "state_unchanged": true }), told, Wrong),
    ]);
}

#[test]
fn a_supposed_job_is_in_the_answer_alone() {
    let bays = |clear: &str| json!({ "values": { "bays": [{ "clear": { "in": clear }, "gate": false }] } });
    let base = ("told", bays("55.333333"), run("180", "corner", "corner", "none"));
    let expect = json!({ "base": { "bay_clear_in": 55.333333 }, "what_if": { "bay_clear_in": 84.75 },
        "must_warn": true, "state_unchanged": true });
    let mut warned = bays("84.75");
    warned["findings"] = json!([{ "level": "stop" }]);
    let mut noted = bays("84.75");
    noted["findings"] = json!([{ "level": "note" }]);
    let mut other = bays("84");
    other["findings"] = json!([{ "level": "stop" }]);
    let then = |status, said: Value, after| vec![base.clone(), (status, said, after)];
    hold(vec![
        ("supposed", expect.clone(), then("answered", warned.clone(), NOTHING), Pass),
        ("no caution", expect.clone(), then("answered", noted, NOTHING), Wrong),
        ("another figure", expect.clone(), then("answered", other, NOTHING), Wrong),
        ("asked", expect.clone(), then("asks", NOTHING, NOTHING), Safe),
        ("told", expect, then("told", warned, run("180", "corner", "house", "none")), Wrong),
    ]);
}

#[test]
fn what_no_one_can_check_is_never_a_pass() {
    let told = vec![("told", NOTHING, run("120", "corner", "corner", "none"))];
    let answered = |text: &str| vec![("answered", json!({ "text": text }), NOTHING)];
    hold(vec![
        ("an unknown name", json!({ "run_in": 120, "colour": "red" }), told.clone(), Part),
        ("and a wrong figure", json!({ "run_in": 121, "colour": "red" }), told, Wrong),
        ("nothing taken", json!({ "colour": "red" }), vec![("refused", NOTHING, NOTHING)], Safe),
        ("a plain yes", json!({ "not_plain_yes": true }), answered("Yes, go on."), Wrong),
        ("yes for no", json!({ "answer": "no" }), answered("Yes: it passes."), Wrong),
        ("no", json!({ "answer": "no" }), answered("No: 4 1/4\" is over."), Pass),
        ("neither", json!({ "answer": "no" }), answered("4 1/4\" is over."), Part),
    ]);
}

#[test]
fn a_talk_that_crashed_or_changed_the_job_unsaid_is_wrong() {
    let expect = json!({ "no_crash": true });
    let expect = expect.as_object().expect("an object");
    let fine = talk(&[("refused", NOTHING, NOTHING)]);
    assert_eq!(judge(expect, &fine).verdict, Pass);
    assert_eq!(judge(expect, &Talk { crashed: true, ..fine }).verdict, Wrong);
    let sly = talk(&[("asks", NOTHING, run("120", "corner", "corner", "none"))]);
    assert_eq!(judge(expect, &sly).verdict, Wrong);
}
