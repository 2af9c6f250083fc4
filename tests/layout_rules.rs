//! A sweep over the rule registry, and the wording of findings.

mod common;

use common::{bays, inches, run, text};
use pretty_assertions::assert_eq;
use railhand::job::{End, Job, Setting};
use railhand::layout::lay_out;
use railhand::limits;
use railhand::rules::{RULES, cautions, check};

fn job(facts: &[railhand::job::Fact]) -> Job {
    Job::default().with_all(facts).expect("an example is a possible job")
}

#[test]
fn every_rule_trips_on_its_example_and_not_on_the_other() {
    for rule in RULES {
        let found = |facts: Vec<_>| {
            let job = job(&facts);
            rule.findings(&job, &lay_out(&job))
        };
        let tripped = found((rule.trips)());
        assert_eq!(tripped.len(), 1, "{} finds its fault once", rule.id);
        assert!(!tripped[0].spans.is_empty() && !tripped[0].source.is_empty(), "{}", rule.id);
        assert_eq!(found((rule.passes)()), [], "{} passes its other example", rule.id);
    }
}

#[test]
fn every_rule_is_named_and_sourced_by_the_convention() {
    let mut ids: Vec<_> = RULES.iter().map(|r| r.id).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), RULES.len(), "ids are unique");
    for rule in RULES {
        let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        assert!(rule.id.chars().all(kebab) && !rule.id.starts_with(['-']) && !rule.id.ends_with('-'), "{}", rule.id);
        // The fault is named, not the cure.
        let cures = ["use-", "add-", "no-", "must-", "keep-", "check-"];
        assert!(!cures.iter().any(|c| rule.id.starts_with(c)), "{}", rule.id);
        assert!(!rule.title.is_empty() && rule.says.ends_with('.'), "{}", rule.id);
        assert!(!rule.limit.source.is_empty(), "{}", rule.id);
        assert_eq!(limits::find(rule.limit.id), Some(rule.limit), "{}", rule.id);
    }
}

#[test]
fn the_department_is_named_once_and_only_where_a_published_rule_speaks() {
    let lines = |job: &Job| cautions(&check(job, &lay_out(job))).iter().map(text).collect::<Vec<_>>();
    let low = [Setting::HeightTop(inches(34)), Setting::GapMax(inches(5))];
    let told = lines(&common::job(&low, bays(run(inches(180), End::Corner, End::Corner), 2)));
    assert_eq!(told.iter().filter(|l| l.contains("department")).count(), 1, "{told:#?}");
    let house = lines(&common::job(&[], run(inches(120), End::House, End::Corner)));
    assert_eq!(house.len(), 1, "a note of common practice stands alone: {house:#?}");
}

/// A told limit wider than the published one governs the split; a bay built so is stopped as any other, and the
/// limit alone is called out. 79 leaves 72 clear, 75 1/2 on center; 75 leaves 68, 71 1/2; 72 clear and a post
/// would be 75 1/2.
#[test]
fn a_told_limit_does_not_silence_the_published_one() {
    let found = |settings: &[Setting], length: i64| {
        let job = common::job(settings, run(inches(length), End::Corner, End::Corner));
        check(&job, &lay_out(&job)).iter().map(|f| f.rule).collect::<Vec<_>>()
    };
    assert_eq!(found(&[Setting::ClearMax(inches(72))], 79), ["post-spacing-over-published"]);
    assert_eq!(found(&[Setting::ClearMax(inches(72))], 75), ["post-spacing-told-wide"]);
    assert_eq!(found(&[Setting::CentreMax(inches(60))], 188), [""; 0]);
}
