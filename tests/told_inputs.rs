//! What was told reaches every answer about stairs, gates, infill and take-off that depends on it.
//!
//! Figures are worked by hand beside each talk: plane geometry; the IRC's R311.7 and R312.1; the
//! ISPSC's 305.2.5 for pools; dressed sizes by PS 20.

use railhand::job::Job;
use railhand::reply::{Reply, Status, job_json, reply_json};
use railhand::session::{Session, step};
use serde_json::{Value, json};

/// Says the lines; the last reply, its JSON and the job after it.
fn said(lines: &[&str]) -> (Reply, Value, Job) {
    let mut session = Session::new();
    let (last, before) = lines.split_last().expect("a talk says something");
    for line in before {
        let (delta, reply) = step(&session, line);
        assert_eq!(reply.status, Status::Told, "{line}");
        session.apply(delta);
    }
    let (delta, reply) = step(&session, last);
    session.apply(delta);
    let json = reply_json(last, &reply, session.job());
    (reply, json, session.job().clone())
}

fn text(lines: &[&str]) -> String {
    said(lines).1["text"].as_str().expect("text").to_owned()
}

fn value(lines: &[&str], name: &str) -> String {
    said(lines).1["values"][name]["in"].as_str().unwrap_or("none").to_owned()
}

fn holds(lines: &[&str], wanted: &[&str]) {
    let text = text(lines);
    wanted.iter().for_each(|w| assert!(text.contains(w), "{lines:?}\nno {w:?} in: {text}"));
}

/// 7 on 11, the rail on the nosing line: a = 7, b = 11, c = root(170) = 13.0384, the ball 4.9616. For 6 the lift
/// is 7 x (6/4.9616 - 1) = 1.4650: 1 7/16 short of it. Square to the slope 1.4650 x 11/13.0384 = 1.2360: the
/// nearest mark, 1 1/4, is past it and lets the ball through; 1 3/16 is short of it.
#[test]
fn a_distance_that_keeps_a_ball_out_is_never_rounded_past_it() {
    let lines = ["7 risers, rise is 7, 11 inch treads", "triangle under the stair rail?"];
    assert_eq!(value(&lines, "most_lift"), "1.4375");
    holds(&lines, &["lift it no more than 1 7/16\"", "square to the slope it is 1 3/16\"", "rules ask for none there"]);
}

/// 7 on 11 again, lifted 1 7/16: the ball grows with the upright side, 4.9616 x 8.4375/7 = 5.9805, which a tape reads 6.
#[test]
fn a_ball_just_under_its_limit_is_not_said_to_be_it() {
    holds(
        &["7 risers, rise is 7, 11 inch treads", "triangle at the steps with the rail 1 7/16 off the nosing?"],
        &["just under 6\""],
    );
}

/// Under treads of less than 11 a nosing stands out 3/4 to 1 1/4 over closed risers (IRC R311.7.5.3): none told, the
/// most is taken, since the triangle grows with it. 7 3/4 on 10 with 1 1/4: a = 0.775 x 11.25 = 8.71875, b = 11.25,
/// c = 14.2330, the ball 5.7357; the lift 8.71875 x (6/5.7357 - 1) = 0.4017: 3/8. With 1 told: 0.5955: 9/16. Over
/// open risers none is asked for: 1.3705: 1 5/16.
#[test]
fn a_nosing_not_told_is_not_nothing_where_the_rule_wants_one() {
    let flight = "7 risers, rise is 7 3/4, 10 inch treads";
    let lift = |told: &[&str]| value(&[&[flight], told, &["triangle under the stair rail?"]].concat(), "most_lift");
    assert_eq!(lift(&[]), "0.375");
    assert_eq!(lift(&["nosing is 1 inch"]), "0.5625");
    assert_eq!(lift(&["open risers"]), "1.3125");
    holds(&[flight, "triangle under the stair rail?"], &["No nosing was told: taken as 1 1/4\""]);
}

const POOL: [&str; 4] = ["there's a pool", "48 high, gap under 2", "bottom rail 2x4 on edge", "12 ft run"];

/// 12 ft out to out, three 4x4s: (144 - 10 1/2)/2 = 66 3/4 to a bay. The rails' tops are 48 - 2 - 3 1/2 = 42 1/2
/// apart, under 45: no more than 1 3/4. 66 3/4 - 1 1/2 n <= 1 3/4 (n + 1): n >= 65/3 1/4 = 20, 36 3/4 / 21 = 1 3/4
/// itself, which passes. Two bays: 40. At 51 they are 45 1/2 apart: under 4, (66 3/4 - 4)/5 1/2 = 11.4, 12 and 24.
#[test]
fn a_pools_gap_is_the_one_in_force() {
    let ask = |line| [&POOL[..], &[line]].concat();
    let (_, json, _) = said(&ask("how many balusters"));
    assert_eq!((&json["values"]["balusters"], &json["values"]["gap"]["in"]), (&json!(40), &json!("1.75")), "{json}");
    assert_eq!(json["values"]["gap_max"]["in"], json!("1.75"));
    holds(&ask("how many balusters"), &["42 1/2\" apart, under 45\"", "no more than the pool barrier's 1 3/4\""]);
    holds(&ask("parts list"), &["40 balusters"]);
    holds(&ask("is a 2 inch gap ok"), &["No: 2\" must be no more than 1 3/4\""]);
    holds(&ask("is a 1 3/4 inch gap ok"), &["Yes: 1 3/4\" is no more than 1 3/4\""]);
    let high = ["there's a pool", "51 high, gap under 2", "bottom rail 2x4 on edge", "12 ft run", "how many balusters"];
    assert_eq!(said(&high).1["values"]["balusters"], json!(24));
    // A cap is no rail: under 1 1/2 of it the tops are 44 apart.
    assert_eq!(said(&[&["2x6 cap"], &high[..]].concat()).1["values"]["balusters"], json!(40));
    // A wider limit told does not open the barrier: it is named, and the tighter kept to.
    let told = [&POOL[..], &["gaps under 3 3/4"]].concat();
    assert!(said(&told).0.findings.iter().any(|f| f.rule == "pool-gaps"));
    let (_, json, _) = said(&[&told[..], &["how many balusters"]].concat());
    assert_eq!(json["values"]["balusters"], json!(40));
}

/// The same value in the gate's leaf and down the stairs. The leaf of a 48 opening is 47, 40 between its stiles:
/// 40 - 1 1/2 n <= 1 3/4 (n + 1): n >= 38.25/3.25 = 11.8, 12. Down 9 risers of 7 1/4 a bay is 36 1/2 clear:
/// n >= 34.75/3.25 = 10.7, 11 at 20/12 = 1 2/3.
#[test]
fn a_pools_gap_holds_in_gates_and_down_stairs() {
    let gate = [&POOL[..], &["4 ft gate in the middle of the run"]].concat();
    let (_, json, _) = said(&[&gate[..], &["how many balusters in the gate"]].concat());
    assert_eq!(json["values"]["balusters"], json!(12), "{json}");
    let stairs = [&POOL[..], &["9 risers, rise is 7 1/4", "10 inch treads"]].concat();
    let (_, json, _) = said(&[&stairs[..], &["how many balusters on the stairs"]].concat());
    assert_eq!(json["values"]["balusters"], json!(11), "{json}");
    assert!(json["text"].as_str().expect("text").contains("part of its barrier"), "{json}");
    holds(&[&stairs[..], &["stairs open both sides", "parts list"]].concat(), &["44 stair balusters"]);
}

/// 13 risers of 6 5/8 on 10: 60 on the level to a bay, 56 1/2 clear; (56.5 - 4.375)/5.875 = 8.9: 9, gaps of 43/10 = 4.3,
/// centers 5.8. Along the slope everything is root(6.625^2 + 100)/10 = 1.199544 longer: (4.3 + 5.8 i) x 1.199544 =
/// 5.158, 12.115, 19.073, 26.030, 32.987, 39.945, 46.902, 53.860, 60.817, each rounded once. A center of 6.957355
/// stepped off as 6 15/16 is 0.019855 short, 8 times: 0.159, 3/16.
#[test]
fn stair_balusters_are_running_marks() {
    let lines = ["13 risers, rise is 6 5/8, 10 inch treads", "stair balusters"];
    let marks = "5 3/16\", 12 1/8\", 19 1/16\", 26\", 33\", 39 15/16\", 46 7/8\", 53 7/8\", 60 13/16\".";
    holds(&lines, &["9 to a bay", marks, "comes 3/16\" off: pull the marks"]);
}

/// Rounded marks may not open a gap to the limit: each mark's place on the level, back from the slope, leaves less than
/// 4 3/8 to the one before it, for flights of every riser a tape can read.
#[test]
fn no_gap_down_the_stairs_reaches_the_limit_as_built() {
    for sixteenths in 96..=124 {
        let flight = format!("13 risers, rise is {} {}/16", sixteenths / 16, sixteenths % 16).replace(" 0/16", "");
        let (_, json, _) = said(&[&flight, "10 inch treads", "stair balusters"]);
        let marks = json["values"]["marks"].as_array().expect("marks");
        let stretch = (f64::from(sixteenths) / 160.0).hypot(1.0);
        let at = |v: &Value| v["in"].as_str().and_then(|s| s.parse::<f64>().ok()).expect("a mark") / stretch;
        let mut end = 0.0;
        for mark in marks {
            assert!(at(mark) - end < 4.375, "{flight}: {json}");
            end = at(mark) + 1.5;
        }
        let clear = json["values"]["stair_bay_clear"]["in"].as_str().and_then(|s| s.parse::<f64>().ok());
        assert!(clear.expect("a clear") - end < 4.375, "{flight}: {json}");
    }
}

/// 7 risers of 7 on 10: two bays of 30 down each side: a mid post and a newel each, (26.5 - 4.375)/5.875 = 3.8, 4 to a bay.
/// The leaf of 48 is 47, 40 between stiles: (40 - 4)/5.5 = 6.5, 7. None of those has a length that was told.
#[test]
fn what_a_buying_list_leaves_out_is_named() {
    let lines = [
        "16 ft run",
        "4 ft gate in the middle of the run",
        "7 risers, rise is 7, 10 inch treads",
        "stairs open both sides",
        "36 high, gap under 3",
        "what do I buy",
    ];
    holds(&lines, &["Not in this list: ", "4 stair posts (", "16 stair balusters (", "7 gate balusters ("]);
}

/// Two leaves in 72: hinged on both jambs, the latch's gap between: (72 - 1/2 - 1/2 - 1/2)/2 = 35 1/4 each; 28 1/4 between
/// stiles: (28.25 - 4)/5.5 = 4.4, 5 in each, 10 in all.
#[test]
fn a_double_gates_leaves_are_made_and_filled() {
    let told = ["16 ft run", "6 ft gate in the middle of the run", "double gate"];
    let ask = |line| [&told[..], &[line]].concat();
    assert_eq!(value(&ask("how wide do I build the gate"), "result"), "35.25");
    assert_eq!(said(&ask("how many balusters in the gate")).1["values"]["balusters"], json!(5));
    holds(&ask("parts list"), &["10 gate balusters"]);
}

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
    assert_eq!(said(&["2x6 cap"]).2, said(&["2x6 cap on the posts"]).2);
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
    let again = said(&["2x6 cap", "cap: 1\" on the posts"]).2;
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
        let job = said(told).2;
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
    let finds = |lines: &[&str], rule: &str| said(lines).0.findings.iter().any(|f| f.rule == rule);
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
