//! The command line with the whole engine behind it.

mod cli;

use cli::{json_say, railhand};

/// The phrase of the README; 10 ft is 120 in. (NIST Handbook 44, appendix C: 12 inches to the foot).
const PHRASE: &str = "run 10 ft between corner and stair head, gate at top";

#[test]
fn a_run_told_is_in_the_job_with_its_gate() {
    let answer = &json_say(&[PHRASE])[0];
    let run = &answer["job"]["runs"][0];
    assert_eq!(answer["status"], "told");
    assert_eq!(run["length"]["in"], "120");
    assert_eq!((&run["from"], &run["to"]), (&"corner".into(), &"stair head".into()));
    assert_eq!(answer["job"]["gates"][0]["at"], "at stair head");
    assert!(answer["values"]["posts"].as_array().is_some_and(|posts| posts.len() >= 2), "{answer}");
}

#[test]
fn what_was_read_back_means_the_same_when_typed() {
    let told = &json_say(&[PHRASE])[0];
    let readback = told["readback"].as_str().expect("a told line is read back");
    assert_eq!(json_say(&[readback])[0]["job"], told["job"]);
}

#[test]
fn lines_of_one_call_are_one_conversation() {
    let answers = json_say(&[PHRASE, "no, make it eleven and a half"]);
    assert_eq!(answers[1]["job"]["runs"][0]["length"]["in"], "138");
    assert_eq!(answers[1]["job"]["runs"].as_array().map(Vec::len), Some(1));
}

#[test]
fn a_sum_is_answered_and_leaves_the_job() {
    let answer = &json_say(&["10 ft 6 in + 3.5 in"])[0];
    assert_eq!((&answer["status"], &answer["values"]["result"]["in"]), (&"answered".into(), &"129.5".into()));
    assert_eq!(answer["job"], json_say(&[""])[0]["job"]);
}

#[test]
fn the_plain_answer_gives_the_figures() {
    let out = railhand(&["say", PHRASE], b"");
    let text = String::from_utf8(out.stdout).expect("text is UTF-8");
    assert_eq!(out.status.code(), Some(0));
    assert!(text.contains("10'-0\"") && text.contains("heard: "), "{text}");
}

#[test]
fn a_line_that_is_too_long_is_refused_and_the_talk_goes_on() {
    let mut typed = b"run 10 ft ".repeat(100_000);
    typed.extend_from_slice(b"\nhalf of 8 ft\n");
    let answers = cli::objects(&railhand(&["--json"], &typed).stdout);
    assert_eq!(answers[0]["status"], "refused");
    assert_eq!(answers[1]["values"]["result"]["in"], "48");
}
