//! What was told reaches every answer about caps, parts and the order, and every limit set here the answers that cite it.
//!
//! Figures are worked by hand beside each talk: plane geometry; dressed sizes by PS 20.

#[path = "common/talk.rs"]
mod talk;

use railhand::job::Job;
use railhand::reply::job_json;
use serde_json::Value;
use talk::{holds, text, told_then, value};

const POST: [&str; 3] = ["36 high", "decking is 1 inch thick", "the rim is a 2x10"];

/// A 2x6 cap is 1 1/2 thick: shoulder 36 - 1 1/2 = 34 1/2; leg 1 + 9 1/4 = 10 1/4; 44 3/4. Without one 36 + 10 1/4 =
/// 46 1/4; 4 above the rail 40 + 10 1/4 = 50 1/4, whichever is told first; on the posts again 44 3/4.
#[test]
fn a_cap_is_one_fact_however_it_is_told() {
    let length = |told: &[&str]| value(&[&POST[..], told, &["how long are the posts"]].concat(), "result");
    assert_eq!(length(&["2x6 cap"]), "44.75");
    assert_eq!(length(&["2x6 cap on the posts"]), "44.75");
    assert_eq!(length(&["2x6 cap", "no cap"]), "46.25");
    assert_eq!(length(&["2x6 cap", "posts stand 4 above the rail"]), "50.25");
    assert_eq!(length(&["posts stand 4 above the rail", "2x6 cap"]), "50.25");
    assert_eq!(length(&["posts stand 4 above the rail", "2x6 cap on the posts"]), "44.75");
    assert_eq!(told_then(&["2x6 cap"]).job(), told_then(&["2x6 cap on the posts"]).job());
    assert!(text(&[&POST[..], &["2x6 cap", "how long are the posts"]].concat()).contains("34 1/2\""));
}

/// The cap of a 12 ft run is as long: 144, in one stick.
#[test]
fn a_cap_on_the_posts_is_cut_and_bought() {
    let lines = ["2x6 cap on the posts", "12 ft run", "cut list"];
    holds(&lines, &["1 at 12'-0\", cap: run 1"]);
    assert!(!text(&lines).contains("No cap"), "{}", text(&lines));
    let thick = ["cap: 1\" on the posts", "12 ft run", "cut list"];
    holds(&thick, &["The cap is not in this: only how thick it is was told."]);
    // Told thicker than its size, the size no longer holds.
    let again = told_then(&["2x6 cap", "cap: 1\" on the posts"]).job();
    assert_eq!(job_json(&again)["order"]["cap"], Value::Null);
}

/// The facts of a job make it again, the cap's thickness following from its size.
#[test]
fn a_cap_told_again_is_the_same() {
    for told in [
        &["2x6 cap"][..],
        &["2x6 cap", "posts stand 4 above the rail"],
        &["posts stand 4 above the rail", "2x6 cap on the posts"],
        &["cap: 1\" on the posts"],
        &["cap: 1\" on the posts", "no cap"],
        &["no cap", "cap: 1\" on the posts"],
    ] {
        let job = told_then(told).job();
        let again = railhand::job::retold(&job).iter().try_fold(Job::default(), |j, f| j.with(f)).expect("facts hold");
        assert_eq!(again, job, "{told:?}");
    }
}

/// Posts worked out from what was told are cut so too: 44 3/4 is 3'-8 3/4".
#[test]
fn the_cut_list_takes_the_posts_length_that_is_answered() {
    let lines = [&POST[..], &["2x6 cap", "12 ft run", "cut list"]].concat();
    holds(&lines, &["3 at 3'-8 3/4\", posts"]);
}

/// What was told, one fact more, the line, what it says without that fact, what with it.
type Row<'a> = (&'a [&'a str], &'a str, &'a str, &'a str, &'a str);

/// Each limit a building department or a place can set: the answers and rules that cite it change with it.
/// (What was told, what holds, the line, what it says by the IRC, what it says here.)
#[test]
fn a_limit_set_here_changes_every_answer_that_cites_it() {
    const DROP: &str = "department asks: drop over 24\"";
    const GAP: &str = "department asks: gaps under 3\"";
    const HEIGHT: &str = "department asks: height 42\"";
    const CANADA: &str = "place: canada";
    // 5 risers of 7: the top one starts 28 up, over 24 and not over 30.
    const FLIGHT: &[&str] = &["5 risers, rise is 7", "10 inch treads"];
    const OPEN: &[&str] = &["5 risers, rise is 7", "10 inch treads", "open risers 4 inch"];
    // 36 1/2 to a bay: 6 by 4 3/8; under 3: (36.5 - 3)/4.5 = 7.4, 8. 100 mm is 3.94: (36.5 - 3.94)/5.44 = 5.99, 6; 9 risers of
    // 10 in. treads.
    const STAIRS: &[&str] = &["9 risers, rise is 7 1/4", "10 inch treads"];
    const GATE: &[&str] = &["16 ft run", "4 ft gate in the middle of the run"];
    let rows: &[Row] = &[
        (FLIGHT, DROP, "do I need closed risers", "none of yours is that high", "it counts, and so does each below it"),
        (FLIGHT, DROP, "do I need closed risers", "one more than 30\" above", "one more than 24\" above"),
        (FLIGHT, DROP, "stair posts", "No tread is more than 30\" above", "along the top tread, more than 24\""),
        (FLIGHT, DROP, "do I need a handrail", "more than 30\".", "more than 24\"."),
        (FLIGHT, CANADA, "do I need a handrail", "more than 30\".", "more than 600 mm"),
        (OPEN, DROP, "are my stairs ok", "Nothing I check speaks against", "breaks this"),
        (STAIRS, GAP, "stair balusters", "6 to a bay", "8 to a bay"),
        (STAIRS, GAP, "is 3 1/2 ok between balusters on the stairs", "Yes: 3 1/2\"", "No: 3 1/2\""),
        (STAIRS, CANADA, "is 4 ok between balusters on the stairs", "Yes: 4\"", "No: 4\""),
        (
            STAIRS,
            HEIGHT,
            "why won't the stair rail meet the deck rail",
            "the level rail's 36\"",
            "the level rail's 42\"",
        ),
        (GATE, GAP, "how many balusters in the gate", "7 in the leaf", "9 in the leaf"),
        (GATE, GAP, "how high is the gate", "less than 4\"", "less than 3\""),
        (GATE, HEIGHT, "how high is the gate", "guard's, 36\"", "guard's, 42\""),
        (&["16 ft run"], GAP, "how many balusters", "the level guard's 4\"", "3\""),
        (&["16 ft run"], GAP, "is a 3 1/2 inch gap ok", "Yes: 3 1/2\"", "No: 3 1/2\""),
        (&["16 ft run"], GAP, "how far can I lift the bottom rail", "less than 4\"", "less than 3\""),
    ];
    for (told, here, line, plain, own) in rows {
        holds(&[told, &[*line][..]].concat(), &[plain]);
        holds(&[told, &[*here, *line][..]].concat(), &[own]);
    }
}

/// The rules too: what is open 28 up breaks none by 30 and one by 24; a corner's 3.54 gap passes 4 and not 3.
#[test]
fn a_limit_set_here_changes_the_rules() {
    let finds = |lines: &[&str], rule: &str| told_then(lines).reply.findings.iter().any(|f| f.rule == rule);
    let open = ["5 risers, rise is 7", "10 inch treads", "open risers 4 inch"];
    assert!(!finds(&open, "open-risers"));
    assert!(finds(&[&["department asks: drop over 24\""], &open[..]].concat(), "open-risers"));
    let untold = ["5 risers, rise is 7", "10 inch treads", "open risers"];
    assert!(!finds(&untold, "open-risers-untold"));
    assert!(finds(&[&["department asks: drop over 24\""], &untold[..]].concat(), "open-risers-untold"));
    // 865 mm is 34.06: 34 is under it, and keeps to the IRC's 34.
    assert!(!finds(&["stairs: rail 34\" above the nosings"], "stair-rail-too-low"));
    assert!(finds(&["place: australia", "stairs: rail 34\" above the nosings"], "stair-rail-too-low"));
}

/// Each fact told of the order changes the answer that depends on it. (Before, the fact, the line, what it says
/// without, what it says with it.)
#[test]
fn every_fact_of_the_order_is_used() {
    // Two bays of 66 3/4: four rails of 5'-6 3/4"; two of 144 with a saw cut of 1/8 take 2 x 66.75 + 0.125 = 133.625 each.
    const RUN: &[&str] = &["12 ft run"];
    const PRICED: &[&str] = &["12 ft run", "2x4s come in 12", "price: 2x4x12 at 10"];
    let rows: &[Row] = &[
        // 144 - 133.5 - 1/8 = 10 3/8 left of a 12 ft stick; with 1/4, 10 1/4.
        (&["12 ft run", "2x4s come in 12"], "kerf: 1/4\"", "what do I buy", "10 3/8\" left", "10 1/4\" left"),
        // 2 sticks, and a tenth of 2 rounded up is one more.
        (PRICED, "waste: 10 %", "what do I buy", "Buy 2 2x4x12", "Buy 3 2x4x12"),
        (PRICED, "waste: 10 %", "what does it cost", "20.00 in all", "30.00 in all"),
        (PRICED, "tax: 10 %", "what does it cost", "20.00 in all", "22.00 in all"),
        (PRICED, "markup: 25 %", "what does it cost", "20.00 in all", "25.00 in all"),
        (PRICED, "labour: 100", "what does it cost", "20.00 in all", "120.00 in all"),
        (PRICED, "price: 2x4x12 at 11", "what does it cost", "20.00 in all", "22.00 in all"),
        // Four of 66 3/4 from 8 and 12: two 12s. From 16s: 2 x 66.75 = 133.5 in 192, two.
        (RUN, "stock: 2x4 in 16 ft", "what do I buy", "Buy 2 2x4x12", "Buy 2 2x4x16"),
        (RUN, "on hand: 2 2x4 at 12'-0\"", "what do I buy", "Buy 2 2x4x12", "Nothing to buy"),
        // 66 3/4 less 1/4 at each end.
        (RUN, "bracket: 1/4\" each end", "cut list", "5'-6 3/4\", top rails", "5'-6 1/4\", top rails"),
        (RUN, "bracket: 1/4\" each end", "how long are the rails", "5'-6 3/4\"", "5'-6 1/4\""),
        // 12 to a bay; with one tight to each post (66.75 - 1.5 n)/(n - 1) < 4: n > 70.75/5.5 = 12.9: 13.
        (RUN, "start: with a baluster", "how many balusters", "24 balusters", "26 balusters"),
        (RUN, "spares: 3", "parts list", "24 balusters", "27 balusters"),
        (RUN, "top rail: none", "parts list", "2 top rails", "2 bottom rails, 24"),
        (RUN, "cap: 2x6", "parts list", "No cap is in this", "1 cap, "),
        (RUN, "posts cut: 52\"", "cut list", "how long the posts are cut", "3 at 4'-4\", posts"),
        (RUN, "balusters cut: 30\"", "cut list", "4 pieces to cut", "24 at 2'-6\", balusters"),
        // Down the stairs: 36 1/2 to a bay, one tight to each post: n > 40.875/5.875 = 6.96; 7 are 5.8333 apart, and on the
        // tape 5 13/16 and 11 11/16 leave 4 3/8 itself: 8.
        (
            &["9 risers, rise is 7 1/4", "10 inch treads"],
            "start: with a baluster",
            "stair balusters",
            "6 to a bay",
            "8 to a bay",
        ),
    ];
    for (told, fact, line, plain, with) in rows {
        holds(&[told, &[*line][..]].concat(), &[plain]);
        holds(&[told, &[*fact, *line][..]].concat(), &[with]);
    }
}
