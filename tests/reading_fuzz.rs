//! Lines of random words: nothing panics, and the job never changes but by what is read back.

use proptest::prelude::*;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use railhand::grammar::{Act, canon};
use railhand::job::Job;
use railhand::reply::Status;
use railhand::session::{Session, step};
use std::cell::Cell;
use std::sync::LazyLock;

/// Every word and phrase of the lexicon, measures said in many ways, and junk.
static WORDS: LazyLock<Vec<String>> = LazyLock::new(|| {
    let lexicon: toml::Table = toml::from_str(include_str!("../grammar/words.toml")).expect("the lexicon is TOML");
    let mut words = Vec::new();
    gather(&toml::Value::Table(lexicon), &mut words);
    let measures = [
        "10",
        "10 ft",
        "12'",
        "9-8",
        "3/4",
        "36 inches",
        "4x4",
        "6x6",
        "2x6",
        "three",
        "one half",
        "16 oc",
        "5'-3 1/2\"",
        "0",
        "1/0",
        "99999999999999999999",
        "3 foot 6",
        "-4",
        "1.5",
        "a dozen",
        "7/8ths",
        "2400 mm",
        "16s",
        "12s",
        "38s",
        "2x4s",
        "5'6s",
        "four by fours",
        "thirty eights",
        "twelve",
        "(",
        "(1+",
        "'",
        "\"",
    ];
    let junk =
        ["zork", "the", ",", ";", "?", "!", ":", "-", "(", "\u{202e}", "\u{0}", "é", "🔨", "a\u{301}", "//", "   "];
    words.extend(measures.into_iter().chain(junk).map(str::to_owned));
    words
});

fn gather(value: &toml::Value, into: &mut Vec<String>) {
    match value {
        toml::Value::Array(all) => all.iter().for_each(|v| gather(v, into)),
        toml::Value::Table(table) => {
            let kept = table.iter().filter(|(key, _)| *key != "sense" && *key != "part");
            kept.for_each(|(_, v)| gather(v, into));
        }
        toml::Value::String(word) => into.push(word.clone()),
        _ => {}
    }
}

fn line() -> impl Strategy<Value = String> {
    prop::collection::vec(0..WORDS.len(), 1..9).prop_map(|at| {
        let words: Vec<&str> = at.into_iter().map(|i| WORDS[i].as_str()).collect();
        words.join(" ")
    })
}

/// What a job becomes by the line read back.
fn by_its_readback(job: &Job, readback: &str) -> Option<Job> {
    match canon::read(readback)? {
        Act::Tell(facts) => job.with_all(&facts).ok(),
        _ => None,
    }
}

/// After two lines of a plain job, any third, fourth and fifth.
#[test]
fn the_job_changes_only_by_what_is_read_back() {
    let told = Cell::new(0_u32);
    let config = ProptestConfig { cases: 1_500, failure_persistence: None, ..ProptestConfig::default() };
    // The same lines every time: how many of them tell something is counted below.
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let outcome = runner.run(&prop::collection::vec(line(), 1..4), |lines| {
        let mut session = Session::new();
        for told in ["front 14 ft corner to stair head", "36 high, 4x4 posts"] {
            let (delta, _) = step(&session, told);
            session.apply(delta);
        }
        for line in lines {
            let before = session.job().clone();
            let (delta, reply) = step(&session, &line);
            session.apply(delta);
            if session.job() == &before {
                continue;
            }
            told.set(told.get() + 1);
            prop_assert_eq!(reply.status, Status::Told, "{:?}", line);
            let readback = reply.readback.clone().unwrap_or_default();
            if !matches!(readback.as_str(), "undo" | "redo") {
                let again = by_its_readback(&before, &readback);
                prop_assert_eq!(again.as_ref(), Some(session.job()), "{:?}", line);
            }
        }
        Ok(())
    });
    assert!(outcome.is_ok(), "{outcome:?}");
    assert!(told.get() > 50, "only {} lines of random words told something", told.get());
}
