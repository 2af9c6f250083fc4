//! The job file of each version, kept for good: it must open to the same job in every later program.
//! The talk is one of our own; `v1.json` is the job it gave when it was written.

mod cli;

use cli::{objects, railhand};
use serde_json::Value;

const FILE: &str = include_str!("golden/v1.job");
const JOB: &str = include_str!("golden/v1.json");

/// True where everything in `was` is in `now`; names may have been added since.
fn holds(now: &Value, was: &Value) -> bool {
    match (now, was) {
        (Value::Object(now), Value::Object(was)) => was.iter().all(|(k, v)| now.get(k).is_some_and(|n| holds(n, v))),
        (Value::Array(now), Value::Array(was)) => {
            now.len() == was.len() && now.iter().zip(was).all(|(n, w)| holds(n, w))
        }
        _ => now == was,
    }
}

fn was() -> Value {
    serde_json::from_str(JOB).expect("the golden job is JSON")
}

#[test]
fn the_file_of_version_1_opens_to_its_job_and_is_left_as_it_is() {
    let folder = cli::Folder::new("golden");
    let file = folder.write("deck.job", FILE.as_bytes());
    let out = railhand(&["say", "--json", "--job", &file, "half of 8 ft"], b"");
    let answer = &objects(&out.stdout)[0];
    assert!(holds(&answer["job"], &was()), "{}", answer["job"]);
    assert_eq!(answer["kept"], true);
    assert_eq!(String::from_utf8_lossy(&out.stderr), "");
    assert_eq!(folder.text("deck.job"), FILE);
}

/// The three groups of the file, taken back one after the other: told line by line before the paste,
/// the paste in one.
#[test]
fn an_undo_takes_the_paste_of_the_file_back_in_one() {
    let folder = cli::Folder::new("golden-undo");
    let file = folder.write("deck.job", FILE.as_bytes());
    // After the paste stand "note", "note", "drop note" and the line of four settings.
    let out = railhand(&["say", "--json", "--job", &file, "undo", "undo", "undo", "undo", "undo"], b"");
    let job = &objects(&out.stdout)[4]["job"];
    assert_eq!(job["runs"].as_array().map(Vec::len), Some(3), "run 5 came in the paste");
    assert_eq!((&job["runs"][1]["name"], &job["settings"]["notch"]), (&Value::Null, &Value::Null));
    assert_eq!(job["settings"]["clear_max"]["in"], "48");
}

#[test]
fn the_file_pasted_back_gives_the_same_job() {
    for args in [vec!["--json"], vec!["say", "--json", "--", FILE]] {
        let answers = objects(&railhand(&args, FILE.as_bytes()).stdout);
        assert_eq!(answers.len(), FILE.lines().count());
        for answer in &answers {
            let status = answer["status"].as_str().expect("a word");
            assert!(["told", "answered"].contains(&status), "{answer}");
        }
        let job = &answers.last().expect("there are lines")["job"];
        assert!(holds(job, &was()), "{job}");
    }
}

#[test]
fn the_file_pasted_into_another_job_keeps_the_words_it_was_told_in() {
    let folder = cli::Folder::new("golden-paste");
    let file = folder.path("copy.job");
    railhand(&[&file], FILE.as_bytes());
    let told = |text: &str| -> Vec<String> {
        let kept = |l: &&str| !l.starts_with("? ") && !l.starts_with("//") && !l.is_empty();
        text.lines().filter(kept).map(|l| l.trim().to_owned()).collect()
    };
    assert_eq!(told(&folder.text("copy.job")), told(FILE));
}
