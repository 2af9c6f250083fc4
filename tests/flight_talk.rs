//! Whole talks about stairs and gates: the figures that come back, and what is refused.
//!
//! Figures are worked by hand beside each talk from plane geometry; the limits are the IRC's
//! (R311.7.5 risers and treads, R311.7.8 handrails, R312.1 guards). What a builder means by a line is
//! common practice, no source.

#[path = "common/talk.rs"]
mod talk;

use railhand::job::Job;
use railhand::reply::{Reply, Status, job_json, reply_json};
use railhand::session::{Session, step};
use serde_json::{Value, json};

/// Says the lines; the last reply, its JSON, and the job before and after it.
fn said(lines: &[&str]) -> (Reply, Value, Job, Job) {
    let last = talk::told_then(lines);
    let (json, job) = (last.json(), last.job());
    (last.reply, json, last.was, job)
}

fn inches(v: &Value) -> &str {
    v["in"].as_str().unwrap_or("none")
}

const NINE: [&str; 2] = ["9 risers, rise is 7 1/4", "10 inch treads"];

fn after<'a>(lines: &[&'a str], last: &'a str) -> Vec<&'a str> {
    lines.iter().copied().chain([last]).collect()
}

/// 9 x 7 1/4 = 65 1/4; 8 x 10 = 80; root(7.25^2 + 10^2) = 12.351619, x 8 = 98.812955;
/// atan(0.725) = 35.9421 degrees.
#[test]
fn the_rake_of_a_flight_told() {
    let (_, json, was, now) = said(&after(&NINE, "what's the rake"));
    let rake = &json["values"]["rake"];
    assert_eq!((inches(&rake["rise"]), inches(&rake["run"])), ("65.25", "80"));
    assert!(inches(&rake["slope_length"]).starts_with("98.81295"), "{rake}");
    assert!(rake["angle_deg"].to_string().contains("35.942"), "{rake}");
    assert_eq!(was, now);
}

/// 80 on the level, 98.8 along the slope, over 72: two bays, mid post at 40, on the fourth nosing.
#[test]
fn the_mid_post() {
    let (_, json, ..) = said(&after(&NINE, "where does the mid post go on the stairs"));
    assert_eq!(inches(&json["values"]["result"]), "40");
    assert_eq!(inches(&json["values"]["stair_bay_clear"]), "36.5");
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("1 mid post: 2 bays") && text.contains("at tread 4"), "{text}");
}

/// 36 1/2 clear: (36.5 - 4.375)/5.875 = 5.47: six, (36.5 - 9)/7 = 3.928571 on the level.
#[test]
fn balusters_on_the_level() {
    let (_, json, ..) = said(&after(&NINE, "how many balusters on the stairs"));
    assert_eq!(json["values"]["balusters"], json!(6));
    assert_eq!(inches(&json["values"]["gap"]), "3.928571");
}

/// Told facts that disagree say by how much, and change nothing: 65 1/4 against 60.
#[test]
fn risers_that_do_not_add_up_are_refused() {
    let (reply, json, was, now) = said(&after(&NINE, "total rise is 60"));
    assert_eq!(reply.status, Status::Refused);
    let text = json["text"].as_str().expect("text");
    assert!(text.contains("5'-5 1/4\"") && text.contains("5 1/4\" apart"), "{text}");
    assert_eq!(was, now);
}

/// 12 on 8 is 56.3 degrees: past 50 it is a ladder.
#[test]
fn a_ladder_is_refused() {
    let (reply, json, was, now) = said(&["5 risers, rise is 12", "8 inch treads"]);
    assert_eq!((reply.status, &was), (Status::Refused, &now));
    assert!(json["text"].as_str().expect("text").contains("56.3 degrees"));
}

/// A gate wider than its opening, by 41 - (41 1/2 - 1/2 - 1/2) = 1/2.
#[test]
fn a_leaf_too_wide_for_its_opening_is_refused() {
    let (reply, json, ..) = said(&["gate opening 41 1/2, leaf 41, how wide is the gate leaf"]);
    assert_eq!(reply.status, Status::Refused, "{json}");
    assert!(json["text"].as_str().expect("text").contains("1/2\" too wide"), "{json}");
}

/// What is untold is asked for, never made up.
#[test]
fn what_is_untold_is_asked() {
    for (lines, asks) in [
        (vec!["what's the rake"], "How high"),
        (vec!["9 risers, rise is 7 1/4", "how long is the stair rail"], "How deep is a tread"),
        (vec!["do I need a handrail"], "How many risers"),
        (vec!["how wide do I build the gate"], "How wide is the opening"),
    ] {
        let (reply, json, ..) = said(&lines);
        assert_eq!(reply.status, Status::Asks, "{lines:?}");
        assert!(json["text"].as_str().expect("text").contains(asks), "{json}");
    }
}

/// Facts of the stairs told are kept in the job, and read back from their phrases.
#[test]
fn facts_only_a_later_answer_needs_are_kept() {
    let (_, json, _, job) = said(&["total rise is 65 1/4", "total run is 80", "nosing is 1", "stair rail at 37"]);
    assert_eq!(inches(&job_json(&job)["stairs"][0]["total_rise"]), "65.25");
    let readback = json["readback"].as_str().expect("a phrase");
    assert_eq!(readback, "stairs: rail 37\" above the nosings");
    assert_eq!(said(&[readback]).3.flight.height, job.flight.height);
}

/// Stairs turned to the other side of the deck: every figure down the stairs is the same.
#[test]
fn the_other_side_mirrors_the_answer() {
    let deck = ["deck is 16 ft along the house and 12 ft out", "mounted over the edge"];
    let question = "where do the posts go down the stairs";
    let values = |side: &str| {
        let stairs = format!("4 ft stairs on the {side} side, 3 ft from the house");
        let lines: Vec<&str> = deck.into_iter().chain([stairs.as_str()]).chain(NINE).chain([question]).collect();
        let (reply, json, _, job) = said(&lines);
        assert_eq!(reply.status, Status::Answered, "{side}: {json}");
        (json["values"].clone(), job)
    };
    let ((left, one), (right, other)) = (values("left"), values("right"));
    assert_eq!(left, right);
    assert_ne!(one, other, "the two decks differ");
}

/// "why?" gives the chain behind the figures of the last answer.
#[test]
fn why_explains_the_last_figures() {
    let mut session = Session::new();
    for line in NINE.into_iter().chain(["how long is the stair rail"]) {
        let (delta, _) = step(&session, line);
        session.apply(delta);
    }
    let (_, reply) = step(&session, "why?");
    let text = reply_json("why?", &reply, session.job())["text"].to_string();
    assert!(text.contains("nosing to nosing over tread") && text.contains("told, the riser"), "{text}");
}

/// 30 up at the head and the ground falling 1 in 12: four risers reach 32 1/2, which takes five, whose foot
/// is 40 out and 33 1/3 down (by hand).
#[test]
fn falling_ground_is_told_and_counted() {
    let told = ["the deck is 30 inches off the ground", "10 inch treads", "ground falls 1 inch in 12 inches"];
    let (reply, json, ..) = said(&after(&told, "how many steps"));
    assert_eq!(reply.status, Status::Answered, "{json}");
    assert_eq!(json["values"]["risers"], json!(5), "{json}");
    let (_, json, ..) = said(&after(&told, "how high is the deck"));
    // 30 at the edge, and 36/12 = 3 more within 36 in. of it.
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("The height above ground is 30\", the drop within 36 in. of the edge 33\""), "{text}");
    let (_, json, ..) = said(&after(&told, "what's the total rise"));
    assert!(json["text"].as_str().expect("text").contains("2'-9 5/16\""), "{json}");
}

/// A flush top tread is one tread more, a tread further out (common practice, no source); the slope of the
/// nosing line stays, and the guard is laid out only from a tread one riser down.
#[test]
fn a_flush_top_tread() {
    let flush = after(&NINE, "top tread is flush with the deck");
    let lines = |question| flush.iter().copied().chain([question]).collect::<Vec<_>>();
    let (_, json, ..) = said(&lines("what's the rake"));
    let rake = &json["values"]["rake"];
    assert_eq!(inches(&rake["run"]), "90");
    assert!(inches(&rake["slope_length"]).starts_with("98.81295"), "{rake}");
    let (reply, json, ..) = said(&lines("how long is the stair rail"));
    assert_eq!(reply.status, Status::Refused, "{json}");
    assert!(json["text"].as_str().expect("text").contains("one riser down"), "{json}");
}

/// A riser and a tread alone are a ladder already: no count of risers is told.
#[test]
fn a_ladder_in_two_facts_is_refused() {
    let (reply, json, was, now) = said(&["rise is 12", "8 inch treads"]);
    assert_eq!((reply.status, &was), (Status::Refused, &now), "{json}");
}

/// Two bays a side (36 1/2 clear): on both sides four mid posts and newels, four top and four bottom rails, six
/// balusters to a bay. With no run told the two top posts are in it as well. A rail's stick by hand: 36 1/2 x
/// sqrt(7 1/4^2 + 10^2)/10 = 45.0834, and a 2x4 on edge 3 1/2 x 0.725 = 2.5375 more: 47.6209, on the tape 47 5/8.
#[test]
fn the_parts_list_goes_down_the_stairs() {
    let told: Vec<&str> = NINE.into_iter().chain(["open on both sides"]).collect();
    let (_, json, ..) = said(&after(&told, "parts list"));
    let text = json["text"].as_str().expect("text");
    let first = "6 stair posts, 4 stair top rails, 4 stair bottom rails, 24 stair balusters.";
    assert!(text.starts_with(first), "{text}");
    assert!(text.contains("cut 3'-11 5/8\""), "{text}");
    let level = ["front 20 ft corner to corner", "4 ft stairs in the middle"];
    let lines: Vec<&str> = level.into_iter().chain(told).chain(["parts list"]).collect();
    let (_, json, ..) = said(&lines);
    assert!(json["text"].as_str().expect("text").contains("4 stair posts, 4x4"), "{json}");
}

/// Which sides have a guard is asked for, not guessed.
#[test]
fn a_parts_list_asks_which_sides_are_open() {
    let (reply, json, ..) = said(&after(&NINE, "parts list"));
    assert_eq!(reply.status, Status::Asks, "{json}");
    assert!(json["text"].as_str().expect("text").contains("which sides of the stairs are open"), "{json}");
}

/// Facts of a gate that disagree are named, by how much, and nothing is changed.
#[test]
fn a_gate_that_does_not_go_is_refused() {
    let gate = ["front 20 ft corner to corner, 42 inch gate in the middle"];
    for (line, says) in [
        ("the leaf is 42", "42\" is 1\" too wide"),
        ("gate hinged on the house", "goes from corner to corner, with no end at the house"),
    ] {
        let (reply, json, was, now) = said(&after(&gate, line));
        assert_eq!((reply.status, &was), (Status::Refused, &now), "{line}: {json}");
        assert!(json["text"].as_str().expect("text").contains(says), "{json}");
    }
    let (reply, json, ..) = said(&["front 10 ft corner to corner", "12 ft gate in the middle"]);
    assert_eq!(reply.status, Status::Refused);
    assert!(json["text"].as_str().expect("text").contains("2'-0\" too wide"), "{json}");
}

/// IRC R311.7.3: 151 over 20 risers is 7.55 each; 18 of the highest allowed are 139 1/2.
#[test]
fn risers_in_one_go() {
    let (_, json, ..) = said(&["can I do 20 risers in one go"]);
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("Only if each is no more than 7 1/2\":"), "{text}");
    let (_, json, ..) = said(&["can I do 18 risers in one go"]);
    assert!(json["text"].as_str().expect("text").starts_with("Yes: 18 risers"), "{json}");
    let (_, json, ..) = said(&["22 risers at 7", "can I do 22 risers in one go"]);
    assert!(json["text"].as_str().expect("text").starts_with("No: 22 risers of 7\" rise 12'-10\""), "{json}");
}

/// Which post of the stairs is meant: each down the stairs is its own height, none is the stair-head post's.
#[test]
fn stair_posts_have_their_own_heights() {
    let (_, json, ..) = said(&after(&NINE, "how long do I cut the stair posts"));
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("At the bottom newel the rail's top is 36\""), "{text}");
}

/// With stairs told the lift is the 6 in. triangle's, with the most of a nosing where none is told: 8.71875 x
/// (6/5.7357 - 1) = 0.4017, 3/8 short of it; with no stairs it is the level guard's 4 in. ball.
#[test]
fn the_lift_of_a_bottom_rail() {
    let (_, json, ..) = said(&["7 3/4 rise 10 run", "how far can I lift the bottom rail"]);
    assert_eq!(inches(&json["values"]["most_lift"]), "0.375", "{json}");
    let (_, json, ..) = said(&["how far can I lift the bottom rail"]);
    assert!(json["text"].as_str().expect("text").starts_with("Along the deck, less than 4\""), "{json}");
}

/// The stairs' bottom rail is asked about by what it is above, not by how far the stairs come out.
#[test]
fn how_far_up_the_bottom_rail_goes() {
    let (_, json, ..) = said(&["7 3/4 rise 10 run", "how far up can the bottom rail go on the stairs"]);
    assert_eq!(inches(&json["values"]["most_lift"]), "0.375", "{json}");
}

/// 4 in. stops no 4 in. ball (IRC R311.7.5.1): over 30 in. up it fails, and 23 1/4 up it may be.
#[test]
fn open_risers_are_checked() {
    let high = ["9 risers at 7 1/4", "10 inch treads", "open risers 4 inch"];
    let (reply, json, ..) = said(&high);
    assert!(reply.findings.iter().any(|f| f.rule == "open-risers"), "{json}");
    let low = ["4 risers at 7 3/4", "10 inch treads", "open risers 4 inch"];
    assert!(!said(&low).0.findings.iter().any(|f| f.rule == "open-risers"));
}

/// ISPSC 305.2.1: 48 in. up at a pool; a 42 in. guard is stopped there and nowhere else.
#[test]
fn a_pool_asks_more_of_the_guard() {
    let low = |lines: &[&str]| said(lines).0.findings.iter().any(|f| f.rule == "pool-guard-low");
    assert!(low(&["guard height 42", "there's a pool"]));
    assert!(!low(&["guard height 42", "no pool"]));
    let (_, json, ..) = said(&["there's a pool", "latch height"]);
    assert!(json["text"].as_str().expect("text").starts_with("At 54\" or higher"), "{json}");
}

/// A gate across the stairs goes by the opening laid out there: 48 less 1/2 and 1/2 leaves 47.
#[test]
fn a_leaf_across_the_stairs_goes_by_their_opening() {
    let told = ["front 20 ft corner to corner", "4 ft stairs in the middle", "gate at the stair head"];
    assert_eq!(said(&after(&told, "the leaf is 47")).0.status, Status::Told);
    let (reply, json, was, now) = said(&after(&told, "the leaf is 48"));
    assert_eq!((reply.status, &was), (Status::Refused, &now), "{json}");
    assert!(json["text"].as_str().expect("text").contains("1\" too wide"), "{json}");
}

/// ISPSC 305.2.5: at a pool, the rails' places not told, gaps keep to 1 3/4 and not to the plain 4 in.
#[test]
fn a_pool_is_minded_where_balusters_are_counted() {
    let (_, json, ..) = said(&["front 20 ft corner to corner", "there's a pool", "how many balusters"]);
    assert!(json["text"].as_str().expect("text").contains("so gaps are kept to 1 3/4\""), "{json}");
}

/// What the stairs would come to: 8 treads of 11 are 88, 7'-4"; treads of 5 under 7 1/4 are 55.4 degrees,
/// a ladder, refused in a what-if as when told.
#[test]
fn a_what_if_goes_down_the_stairs() {
    let (_, json, was, now) = said(&after(&NINE, "what if the treads were 11"));
    assert!(json["text"].as_str().expect("text").contains("8 treads of 11\" come out 7'-4\""), "{json}");
    assert_eq!(was, now);
    let (reply, json, was, now) = said(&after(&NINE, "what if the treads were 5"));
    assert_eq!((reply.status, &was), (Status::Refused, &now), "{json}");
    assert!(json["text"].as_str().expect("text").contains("55.4 degrees"), "{json}");
}
