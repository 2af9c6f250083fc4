//! How answers to questions of rows speak: what is wrong, what is required, what is enough, and in which unit.
//!
//! Each figure is worked by hand beside its row. Dressed sizes are PS 20's, an inch is 25.4 mm; limits and their sources are those of
//! `src/limits`.

#[path = "common/rows.rs"]
mod rows;
#[path = "common/talk.rs"]
mod talk;

use railhand::reply::Level;
use rows::{Case, first, holds};
use talk::told_then;

/// A guard, and a handrail, is required or it is not: the word says which.
#[test]
fn a_word_on_what_is_required_says_so() {
    let rows: &[Case] = &[
        (
            "judge: drop within 36 in. of the edge; with drop within 36 in. of the edge 2'-5\"?",
            "No: 29\" is not more than 30\", so no guard is required (IRC",
            &[("guard_needed", "false")],
        ),
        (
            "judge: drop within 36 in. of the edge; with drop within 36 in. of the edge 2'-6\"?",
            "No, by a hair: 30\" is not more than 30\", so no guard is required (IRC",
            &[("guard_needed", "false")],
        ),
        (
            "judge: drop within 36 in. of the edge; with drop within 36 in. of the edge 2'-7\"?",
            "Yes: 31\" is more than 30\", so a guard is required (IRC",
            &[("guard_needed", "true")],
        ),
        // Four risers or more: IRC R311.7.8.
        (
            "judge: risers for a handrail; with risers 3?",
            "No: 3 risers are fewer than 4, so no handrail is required (IRC R311.7.8",
            &[("limit", "4"), ("risers", "3")],
        ),
        (
            "judge: risers for a handrail; with risers 4?",
            "Yes: 4 risers are at least 4, so a handrail is required (IRC R311.7.8",
            &[],
        ),
        ("judge: risers for a handrail; with risers 1?", "No: 1 riser is fewer than 4, so no handrail", &[]),
        // 22 1/2 / 7 1/2 = 3
        (
            "judge: risers for a handrail; with total rise 1'-10 1/2\"; with riser 7 1/2\"?",
            "No: 3 risers are fewer than 4",
            &[],
        ),
        // Five treads hang between six risers.
        ("judge: risers for a handrail; with treads 5?", "Yes: 6 risers are at least 4", &[]),
    ];
    rows.iter().for_each(|case| holds(&[], case));
    // A riser count for itself is still judged by its riser: 48 / 6 = 8.
    holds(&[], &("judge: risers; with risers 6; with total rise 4'-0\"?", "No: with 6 risers, 8\"", &[]));
    // The job's own flight: 52 1/2 / 7.
    let told = ["stairs: total rise 4'-4 1/2\"", "stairs: 7 risers"];
    holds(&told, &("judge: risers for a handrail?", "Yes: 7 risers are at least 4", &[]));
}

/// What asks whether something is amiss is answered yes where it is.
#[test]
fn a_word_on_what_is_amiss_says_yes_where_it_is() {
    let rows: &[Case] = &[
        (
            "fault: handrail; with handrail 3'-3\"?",
            "Yes, 39\" is over the 38\" handrail limit (IRC R311.7.8.1",
            &[("limit", "38")],
        ),
        ("fault: handrail; with handrail 3'-0\"?", "No: 36\" is", &[]),
        ("fault: gap; with gap 4\"?", "Yes, 4\" is just the 4\" gap limit, and it must stay under it (IRC", &[]),
        ("fault: gap; with gap 3 15/16\"?", "No: 3 15/16\" is under the 4\" gap limit (IRC", &[]),
        ("fault: stair rail; with stair rail 2'-9\"?", "Yes, 33\" is under the 34\"", &[]),
        // 60 + 3 1/2
        ("fault: bay; with bay 5'-0\"?", "No: with the bay 5'-0\" = 60\", 5'-3 1/2\" = 63 1/2\" is under", &[]),
        // (58 - 9 x 1 1/2) / 10 = 4.45
        (
            "fault: balusters; with balusters 9; with bay 4'-10\"?",
            "Yes, with 9 balusters, 4 7/16\" (exactly 4 9/20\") is over",
            &[("gap", "4.45")],
        ),
        // What is required is asked one way alone.
        (
            "fault: drop within 36 in. of the edge; with drop within 36 in. of the edge 2'-7\"?",
            "Yes: 31\" is more than 30\", so a guard is required",
            &[],
        ),
        // 3 of 30 a stick of 96: 10 are 4 sticks.
        (
            "fault: sticks; with sticks 3; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "Yes, it takes 4 sticks, 1 more than 3.",
            &[("needed", "4")],
        ),
        (
            "fault: sticks; with sticks 4; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "No: it takes just 4 sticks.",
            &[],
        ),
        ("fault: riser; with riser 7 1/2\"; with riser 7\"?", "Yes, 1/2\" between 7 1/2\" and 7\" is over", &[]),
        (
            "fault: riser; with riser 7 1/2\"; with riser 7 1/4\"?",
            "No: 1/4\" between 7 1/2\" and 7 1/4\" is under",
            &[],
        ),
        (
            "fault: leaf's diagonal; with leaf's diagonal 4'-4\"; with leaf's diagonal 4'-4 1/4\"?",
            "Yes, out of square, 4'-4 1/4\"",
            &[],
        ),
        (
            "fault: leaf's diagonal; with leaf's diagonal 4'-4\"; with leaf's diagonal 4'-4\"?",
            "No: square, both 4'-4\"",
            &[],
        ),
        ("fault: notch; with notch 1 1/2\"?", "Yes, a notch of 1 1/2\" in a post of 3 1/2\": notched 4x4", &[]),
        // Nothing held to it: neither.
        ("fault: kerf; with kerf 1/8\"?", "The kerf is 1/8\": no rule I know limits it.", &[]),
        ("fault: gap?", "To judge the gap I need its figure, or the bay.", &[]),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

/// What fails brings the limit it fails, once, with its source: a check, or the rule's own stop.
#[test]
fn a_figure_that_fails_brings_its_limit_as_a_finding() {
    let rows: &[(&str, &str, Level, &str)] = &[
        ("judge: gap; with gap 4 1/8\"?", "level-gap", Level::Check, "IRC R312.1.3"),
        ("fault: handrail; with handrail 3'-3\"?", "handrail-high", Level::Check, "IRC R311.7.8.1"),
        ("fault: handrail; with handrail 2'-9\"?", "handrail-low", Level::Check, "IRC R311.7.8.1"),
        // The job with it would have the stop itself.
        ("judge: height to the top; with height to the top 2'-10\"?", "guard-too-low", Level::Stop, "IRC R312.1.2"),
        ("judge: gap under; with gap under 4 1/8\"?", "gap-under-too-wide", Level::Stop, "IRC R312.1.3"),
        ("judge: notch; with notch 1 1/2\"?", "notch-in-4x4", Level::Stop, "IRC R507.10.2"),
        // A limit told for the job.
        ("judge: gap; with gap 3 7/8\"; with gap limit 3 1/2\"?", "limit-as-told", Level::Check, "as told"),
        ("judge: riser; with riser 7 1/2\"; with riser 7\"?", "stair-spread", Level::Check, "IRC R311.7.5.1"),
    ];
    for (phrase, rule, level, source) in rows {
        let last = told_then(&[phrase]);
        let [found] = &last.reply.findings[..] else { panic!("{phrase}: {:?}", last.reply.findings) };
        assert_eq!((found.rule, found.level), (*rule, *level), "{phrase}");
        assert!(found.source.starts_with(source), "{phrase}: {}", found.source);
        let json = last.json();
        assert_eq!(json["findings"][0]["rule"], *rule, "{phrase}");
        // No sentence of it stands twice.
        let text = last.text();
        let mut lines: Vec<&str> = text.lines().map(|l| l.trim().trim_start_matches("check: ").trim_start()).collect();
        lines.sort_unstable();
        let all = lines.len();
        lines.dedup();
        assert_eq!(lines.len(), all, "{phrase}\n{text}");
    }
    let says = |phrase: &str, words: &str| told_then(&[phrase]).text().matches(words).count();
    assert_eq!(says("judge: gap; with gap 4 1/8\"?", "ball"), 1);
    assert_eq!(says("judge: notch; with notch 1 1/2\"?", "notched 4x4 guard posts are barred"), 1);
    // What keeps to its limit, or only asks for a guard, brings none.
    let rows = [
        "judge: gap; with gap 3 7/8\"?",
        "fault: handrail; with handrail 3'-0\"?",
        "judge: kerf; with kerf 1/8\"?",
        "judge: drop within 36 in. of the edge; with drop within 36 in. of the edge 2'-7\"?",
    ];
    for phrase in rows {
        assert!(told_then(&[phrase]).reply.findings.is_empty(), "{phrase}");
    }
    // A stop that stands in the job already is not found twice.
    let last = told_then(&["34 high", "judge: height to the top; with height to the top 2'-11\"?"]);
    assert!(first(&last).starts_with("Stop: a guard 34\" high"), "{}", last.text());
    let stops = last.reply.findings.iter().filter(|f| f.rule == "guard-too-low").count();
    assert_eq!(stops, 1, "{}", last.text());
}

/// Where what is worked out has no limit, a count that had no part in it is what is needed.
#[test]
fn a_count_without_a_part_is_what_is_needed() {
    let rows: &[Case] = &[
        // 10 ft less a kerf between: 2 x 47 1/8 + 1/8 = 94 3/8, 3 are too long; 2 a stick, 12 of six.
        (
            "judge: pieces the sticks give; with sticks 6; with stick 10'-0\"; with piece 3'-11 1/8\"; with posts 11?",
            "Yes: 12 pieces the sticks give, 11 needed.",
            &[("needed", "11")],
        ),
        (
            "judge: pieces the sticks give; with sticks 6; with stick 10'-0\"; with piece 3'-11 1/8\"; with posts 12?",
            "Yes: 12 pieces the sticks give, just what is needed.",
            &[],
        ),
        (
            "judge: pieces the sticks give; with sticks 6; with stick 10'-0\"; with piece 3'-11 1/8\"; with posts 13?",
            "No: 12 pieces the sticks give, 13 needed.",
            &[],
        ),
        // 3 x 39 + 2 x 1/8 = 117 1/4 of 120
        (
            "judge: pieces a stick; with stick 10'-0\"; with piece 3'-3\"; with posts 3?",
            "Yes: 3 pieces a stick, just what is needed.",
            &[],
        ),
        (
            "fault: pieces a stick; with stick 10'-0\"; with piece 3'-3\"; with posts 4?",
            "Yes, 3 pieces a stick, 4 needed.",
            &[],
        ),
        // Two counts without a part: which is needed?
        (
            "judge: pieces a stick; with stick 10'-0\"; with piece 3'-3\"; with posts 4; with balusters 3?",
            "3 pieces a stick: no rule I know limits it.",
            &[],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

/// A length that is worked out, beside a stick that had no part in it.
#[test]
fn a_length_is_to_come_out_of_the_stick_given() {
    let rows: &[Case] = &[
        // 2 x 93 1/2 + 3 1/2 = 190 1/2 of 192
        (
            "judge: run, clear between its end posts; with stick 16'-0\"; with bays 2; with bay 7'-9 1/2\"; if posts: 4x4?",
            "Yes: it takes 15'-10 1/2\" = 190 1/2\", 1 1/2\" less than 16'-0\" = 192\", with posts 4x4.",
            &[("needed", "190.5")],
        ),
        // 36 + 10 1/4 = 46 1/4
        (
            "fault: posts' length; with stick 3'-10\"; with height to the top 3'-0\"; with leg 10 1/4\"?",
            "Yes, it takes 46 1/4\", 1/4\" more than 46\".",
            &[],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

/// What is usual is no answer to one who gives what it should follow from.
#[test]
fn what_is_usual_stands_for_no_figure_that_was_to_follow() {
    let rows: &[Case] = &[
        (
            "figure: height to the top; with gap under 3\"; with balusters' length 2'-1 1/4\"; with cap on the posts 1\"?",
            "I can't work out the height to the top from that.",
            &[],
        ),
        ("figure: kerf?", "The kerf is 1/8\".", &[("kerf", "0.125")]),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

/// What is tried on is named in the answer.
#[test]
fn what_is_tried_on_is_named() {
    let rows: &[Case] = &[
        // 5 1/2 - 3 1/2
        (
            "figure: left of the post at its notch; with notch 3 1/2\"; if posts: 6x6?",
            "2\" left of the post at its notch, with posts 6x6.",
            &[("left", "2")],
        ),
        (
            "judge: gap; with gap 2\"; if pool: closed off by the guard?",
            "No: 2\" is over the 1 3/4\" gap limit (ISPSC",
            &[],
        ),
        (
            "judge: notch; with notch 1 1/2\"; if posts: 6x6?",
            "Check: a notch of 1 1/2\" in a post of 5 1/2\": not barred by name",
            // 5 1/2 - 1 1/2
            &[("left", "4")],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
    for (phrase, ..) in rows {
        let tried = if phrase.contains("6x6") { ", with posts 6x6." } else { "), with pool closed off by the guard." };
        let said = first(&told_then(&[phrase]));
        assert!(said.ends_with(tried), "{said}");
    }
    // A run tried on is what the question is about, not named again.
    let run = "figure: posts; if run 1: 16'-0\" out to out, from end post, to end post?";
    assert!(first(&told_then(&[run])).ends_with("on center."), "{}", told_then(&[run]).text());
}

/// Who gives millimetres is answered in them first.
#[test]
fn what_is_given_in_millimetres_is_answered_in_them() {
    let rows: &[(&str, &str, &str, f64)] = &[
        // 1200 + 90
        (
            "figure: bay, on center; with bay 1200 mm; with post width 90 mm?",
            "1290 mm (50 13/16\") on center, the bay 1200 mm (47 1/4\").",
            "centre",
            1290.0,
        ),
        // 110 is over 101.6.
        ("judge: gap; with gap 110 mm?", "No: 110 mm (4 5/16\") is over the 4\" gap limit (IRC", "gap", 110.0),
        // (1000 - 9 x 38) / 10 = 65.8
        (
            "figure: gap; with bay 1000 mm; with balusters 9; with baluster 38 mm?",
            "The gap is 65.8 mm (2 9/16\").",
            "gap",
            65.8,
        ),
        // (1000 - 9 x 40) / 11 does not end: eight leave (1000 - 320) / 9 = 75.5555
        (
            "figure: gap; with bay 1000 mm; with balusters 8; with baluster 40 mm?",
            "The gap is 75.6 mm (3\").",
            "gap",
            75.555_556,
        ),
    ];
    for (phrase, begins, name, mm) in rows {
        let last = told_then(&[phrase]);
        assert!(first(&last).starts_with(begins), "{phrase}\n{}", last.text());
        let values = &last.json()["values"];
        let said = values[name]["mm"].as_str().and_then(|s| s.parse::<f64>().ok());
        assert_eq!(said, Some(*mm), "{phrase}: {values}");
    }
    // Inches are inches.
    let last = told_then(&["judge: gap; with gap 5\"?"]);
    assert!(first(&last).starts_with("No: 5\" is over"), "{}", last.text());
    assert!(last.json()["values"]["gap"]["mm"].is_null(), "{}", last.json()["values"]);
}
