//! Whole talks about feet, bevels and stairs let into the deck, through the JSON contract. A
//! 4x4 dresses to 3 1/2 (PS 20 size table); the figures are plane geometry, worked by hand.

#[path = "common/talk.rs"]
mod talk;

use serde_json::{Value, json};

/// Says the lines; the last reply's JSON and its words on one line.
fn said(lines: &[&str]) -> (Value, String) {
    let last = talk::talk(lines).json();
    let text = last["text"].as_str().expect("text").split_whitespace().collect::<Vec<_>>().join(" ");
    (last, text)
}

/// A deck 20 by 12 with stairs let into its front; the width is from decking to decking.
fn let_in(width: &str) -> Vec<String> {
    let stairs = format!("stairs in the middle of the front, {width} in wide, recessed 30 in");
    ["deck 20 along the house, 12 out", &stairs, "2"].map(str::to_owned).to_vec()
}

fn after(deck: &[String], more: &[&str]) -> (Value, String) {
    let lines: Vec<&str> = deck.iter().map(String::as_str).chain(more.iter().copied()).collect();
    said(&lines)
}

const STEPPED: [&str; 3] =
    ["decking overhangs 1", "leave the nosing whole", "the baluster line is 1 inside the decking's edge"];

/// The line 1 inside the edge and the nosing 1 past the rim: at an inside corner 3/4 by 3/4 is
/// left past the decking, 0.5625 square inches, and 1 3/4 by 1 3/4 at the rim, 3.0625.
#[test]
fn both_levels_of_a_stepped_foot() {
    let (json, text) = after(&let_in("48"), &[&STEPPED[..], &["what comes off each post"]].concat());
    assert!(
        text.contains(
            "Past the decking it is 2 3/4\" along the edge and 2 3/4\" across it; a leg 3/4\" by 3/4\" stays."
        ),
        "{text}"
    );
    let all = json["values"]["notches"].as_array().expect("three cuts");
    let inside = all.iter().find(|n| n["shape"] == "three quadrants").expect("an inside corner");
    let level = |k: usize| {
        let l = &inside["levels"][k];
        let d = &l["depths"];
        json!([
            l["at"],
            l["shape"],
            l["off"]["in"],
            l["left"]["in"],
            d["along"]["in"],
            d["across"]["in"],
            l["area_left"]["value"].to_string(),
            l["weakest"]
        ])
    };
    assert_eq!(level(0), json!(["decking", "all but one corner", "2.75", "0.75", "2.75", "2.75", "0.5625", true]));
    assert_eq!(level(1), json!(["rim", "three quadrants", "1.75", "1.75", "1.75", "1.75", "3.0625", false]));
    assert_eq!(inside["levels"].as_array().map(Vec::len), Some(2));
    // What was there before stays: the rim's level.
    assert_eq!(inside["left"]["in"], "1.75");
    let (json, _) = after(
        &let_in("48"),
        &["decking overhangs 1", "the nosing is cut back at the posts", "what comes off each post"],
    );
    assert!(json["values"]["notches"].as_array().expect("cuts").iter().all(|n| n["levels"].is_null()), "{json}");
}

/// The strength answer judges the foot the notches answer gives: 7,200 inch-pounds (200 lb at
/// 36) over 0.75 cubed / (6 root 2), a square on its diagonal, is 144,815.47 psi. A notch told 1 1/2 deep is 2 1/2 past a whole nosing:
/// 1 in. of 3 1/2 is left at an edge, 7,200 over 3.5 / 6 is 12,342.86.
#[test]
fn the_foot_worked_out_is_the_foot_judged() {
    let row = |json: &Value| json["values"]["strength"][0].clone();
    let asked = "how strong is what's left of the post";
    let (json, text) = after(&let_in("48"), &[&STEPPED[..], &[asked]].concat());
    assert_eq!(row(&json)["what"], "leg at an inside corner");
    assert!((row(&json)["demand"].as_f64().expect("a number") - 144_815.47).abs() < 0.5, "{json}");
    assert!(text.contains("(inside corner)") && text.contains("where it passes the decking"), "{text}");
    let deck = ["deck 20 along the house, 12 out".to_owned()];
    let told = ["notch 1 1/2", "decking overhangs 1", "leave the nosing whole", asked];
    let (json, text) = after(&deck, &told);
    let demand: f64 = row(&json)["demand"].to_string().trim_matches('"').parse().expect("a number");
    assert!((demand - 12_342.857).abs() < 0.01, "{demand} {text}");
    // No posts laid out: what a notch so deep leaves, as before.
    let (json, _) = said(&["notch 1 1/2", asked]);
    assert_eq!(json["values"]["left_thick"]["in"], "2");
}

/// A hole 38 wide with posts on its edge: half of each stands in it, 34 1/2 between them. A
/// handrail stands 4 1/2 in at most (IRC R311.7.8.2): 30 beside one, 25 1/2 between two, under
/// the 31 1/2 and 27 there must be (R311.7.1).
#[test]
fn posts_in_the_hole_narrow_the_stairs() {
    let on_edge = "the baluster line is 0 inside the decking's edge";
    let (json, text) = after(&let_in("38"), &[on_edge, "what does a 4 1/2 handrail leave"]);
    assert_eq!(json["values"]["beside_one"]["in"], "30", "{text}");
    assert_eq!(json["values"]["between_two"]["in"], "25.5", "{text}");
    assert!(text.contains("34 1/2\" is clear between them"), "{text}");
    // The line 2 inside the edge: 38 + 4 - 3 1/2 between the posts, so the hole is the narrowest.
    let (json, _) =
        after(&let_in("38"), &["the baluster line is 2 inside the decking's edge", "what does a 4 1/2 handrail leave"]);
    assert_eq!(json["values"]["between_two"]["in"], "29");
}

/// The stop on the stairs' width stands, and no answer about the stairs says otherwise.
#[test]
fn an_answer_does_not_speak_against_a_stop() {
    let flight = ["4 risers, rise is 7 1/4", "the baluster line is 0 inside the decking's edge"];
    let (_, text) = after(&let_in("38"), &[&flight[..], &["are my stairs ok"]].concat());
    assert!(!text.contains("Nothing I check"), "{text}");
    assert!(text.contains("34 1/2\" breaks this"), "{text}");
    let (_, text) = after(&let_in("38"), &[&flight[..], &["are the stairs wide enough"]].concat());
    assert!(!text.contains("Nothing I check"), "{text}");
    let (_, text) = after(&let_in("48"), &[&flight[..], &["are my stairs ok"]].concat());
    assert!(text.contains("Nothing I check speaks against"), "{text}");
    // A stop the flight alone does not show: a stair rail under 34.
    let (_, text) = after(&let_in("48"), &[&flight[..], &["stair rail is 33 high", "are my stairs ok"]].concat());
    assert!(!text.contains("Nothing I check"), "{text}");
}

/// Between posts that split a 45-degree turn, 48 between centers, a 2x4 on the flat is 45 11/16 long point to long point, cut 22 1/2 degrees off square at both ends (worked in `corners`).
#[test]
fn a_bevel_is_said() {
    let walk = "left side 12 ft out, turn right 45, 4 ft, turn right 45, 16 ft, turn right 45, 4 ft, turn right 45, 12 ft home";
    let told = [
        "the baluster line is 0 inside the decking's edge",
        "angled posts split the turn",
        "top rail is a 2x4 on the flat",
        "bottom rail is a 2x4 on the flat",
        "cut list",
    ];
    let (json, text) = after(&[walk.to_owned()], &told);
    assert!(text.contains("3'-9 11/16\" long point to long point, cut 22.5 degrees off square at both ends"), "{text}");
    let parts = json["values"]["takeoff"].as_array().expect("parts");
    let slant =
        parts.iter().find(|p| p["part"] == "top rail" && p["cut"]["in"] == "45.6875").expect("the slant's rail");
    assert_eq!(slant["bevels"].as_array().map(Vec::len), Some(2), "{slant}");
    // The sides from the house have a square bay at the wall.
    assert!(parts.iter().any(|p| p["part"] == "top rail" && p["bevels"].is_null()), "{parts:?}");
}
