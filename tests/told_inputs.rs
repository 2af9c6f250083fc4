//! What was told reaches every answer about stairs, gates, infill and take-off that depends on it.
//!
//! Figures are worked by hand beside each talk: plane geometry; the IRC's R311.7 and R312.1; the
//! ISPSC's 305.2.5 for pools; dressed sizes by PS 20.

#[path = "common/talk.rs"]
mod talk;

use serde_json::{Value, json};
use talk::{holds, told_then, value};

fn said(lines: &[&str]) -> Value {
    told_then(lines).json()
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
    let json = said(&ask("how many balusters"));
    assert_eq!((&json["values"]["balusters"], &json["values"]["gap"]["in"]), (&json!(40), &json!("1.75")), "{json}");
    assert_eq!(json["values"]["gap_max"]["in"], json!("1.75"));
    holds(&ask("how many balusters"), &["42 1/2\" apart, under 45\"", "no more than the pool barrier's 1 3/4\""]);
    holds(&ask("parts list"), &["40 balusters"]);
    holds(&ask("is a 2 inch gap ok"), &["No: 2\" must be no more than 1 3/4\""]);
    holds(&ask("is a 1 3/4 inch gap ok"), &["Yes: 1 3/4\" is no more than 1 3/4\""]);
    let high = ["there's a pool", "51 high, gap under 2", "bottom rail 2x4 on edge", "12 ft run", "how many balusters"];
    assert_eq!(said(&high)["values"]["balusters"], json!(24));
    // A cap is no rail: under 1 1/2 of it the tops are 44 apart.
    assert_eq!(said(&[&["2x6 cap"], &high[..]].concat())["values"]["balusters"], json!(40));
    // A wider limit told does not open the barrier: it is named, and the tighter kept to.
    let told = [&POOL[..], &["gaps under 3 3/4"]].concat();
    assert!(told_then(&told).reply.findings.iter().any(|f| f.rule == "pool-gaps"));
    let json = said(&[&told[..], &["how many balusters"]].concat());
    assert_eq!(json["values"]["balusters"], json!(40));
}

/// The same value in the gate's leaf and down the stairs. The leaf of a 48 opening is 47, 40 between its stiles:
/// 40 - 1 1/2 n <= 1 3/4 (n + 1): n >= 38.25/3.25 = 11.8, 12. Down 9 risers of 7 1/4 a bay is 36 1/2 clear:
/// n >= 34.75/3.25 = 10.7, 11 at 20/12 = 1 2/3.
#[test]
fn a_pools_gap_holds_in_gates_and_down_stairs() {
    let gate = [&POOL[..], &["4 ft gate in the middle of the run"]].concat();
    let json = said(&[&gate[..], &["how many balusters in the gate"]].concat());
    assert_eq!(json["values"]["balusters"], json!(12), "{json}");
    let stairs = [&POOL[..], &["9 risers, rise is 7 1/4", "10 inch treads"]].concat();
    let json = said(&[&stairs[..], &["how many balusters on the stairs"]].concat());
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
        let json = said(&[&flight, "10 inch treads", "stair balusters"]);
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
    assert_eq!(said(&ask("how many balusters in the gate"))["values"]["balusters"], json!(5));
    holds(&ask("parts list"), &["10 gate balusters"]);
}
