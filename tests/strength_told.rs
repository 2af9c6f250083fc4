//! Every strength answer takes what was told, and judges the weakest of it.
//!
//! Design values are those of `tests/published/strength`; the arithmetic stands beside each figure.

#[path = "common/talk.rs"]
mod talk;

use serde_json::Value;

/// Steps the lines; the last reply as JSON, and its plain text.
fn talk(lines: &[&str]) -> (Value, String) {
    let last = talk::talk(lines);
    (last.json(), last.text())
}

fn rows(json: &Value) -> Vec<Value> {
    json["values"]["strength"].as_array().cloned().unwrap_or_default()
}

#[track_caller]
fn of(json: &Value, what: &str, field: &str) -> f64 {
    let rows = rows(json);
    let row = rows.iter().find(|r| r["what"] == what).unwrap_or_else(|| panic!("no row {what}: {json:#}"));
    row[field].as_f64().unwrap_or_else(|| panic!("{what}: {field} is no number: {row}"))
}

#[track_caller]
fn near(got: f64, want: f64) {
    assert!((got - want).abs() <= 5e-4 * want.abs().max(1.0), "{got} is not {want}");
}

fn level(json: &Value, rule: &str) -> Option<String> {
    let findings = json["findings"].as_array()?;
    findings.iter().find(|f| f["rule"] == rule).and_then(|f| Some(f["level"].as_str()?.to_owned()))
}

const HOLD: &str = "is the hold down enough";
const PULL: &str = "pull on the upper bolt";

/// T = 200 (h + d + 2 + s) / s, s the rim less 2 in. at either edge and no more than 5 (AWC DCA 6
/// p.19), beside 1,800 lb. Over 1.6 times is a stop.
#[test]
fn the_bolts_stand_in_the_rim_told() {
    let rows: [(&[&str], f64, Option<&str>); 9] = [
        (&[HOLD], 1760.0, None),                                                 // 200 x 44 / 5
        (&["2x8 rim", HOLD], 2600.0, Some("check")),                             // 200 x (39 + 3.25) / 3.25
        (&["rim is 7 1/4 tall", HOLD], 2600.0, Some("check")),                   // the same, told as a height
        (&["2x6 rim", HOLD], 5400.0, Some("stop")),                              // 200 x (39 + 1.5) / 1.5, 3 times
        (&["2x12 rim", HOLD], 1760.0, None),                                     // 7.25 apart is taken as 5
        (&["decking is 1 1/2 thick", HOLD], 1780.0, None),                       // 200 x 44.5 / 5
        (&["2x8 rim", "decking is 1 1/2 thick", HOLD], 2630.769, Some("check")), // 200 x 42.75 / 3.25
        (&["guard height 40", HOLD], 1920.0, Some("check")),                     // 200 x 48 / 5
        (&["2x8 rim", "guard height 42", HOLD], 2969.231, Some("stop")),         // 200 x 48.25 / 3.25, 1.65 times
    ];
    for (lines, pull, found) in rows {
        let (json, text) = talk(lines);
        near(of(&json, PULL, "demand"), pull);
        near(of(&json, PULL, "ratio"), pull / 1800.0);
        let over = level(&json, "hold-down-over-published").or(level(&json, "hold-down-far-over"));
        assert_eq!(over.as_deref(), found, "{lines:?}: {text}");
        assert_eq!(text.contains("Over the published hold-down"), pull > 1800.0, "{lines:?}: {text}");
    }
    // Lags, or posts on the decking, are not what the hold-down goes with: that comes first.
    for (told, says) in
        [("fixing: lags", "No through bolts"), ("posts sit on top of the decking", "The posts stand on")]
    {
        let (_, text) = talk(&[told, HOLD]);
        assert!(text.starts_with(says), "{text}");
    }
    let (_, text) = talk(&["2x6 rim", HOLD]);
    assert!(text.contains("1 1/2\" apart") && text.contains("closer together"), "{text}");
    // 3 1/2 deep leaves less than nothing between bolts 2 in. from each edge.
    assert_eq!(talk(&["rim is 3 1/2 tall", HOLD]).0["status"], "refused");
}

/// What the building department or the place asks is the height where none is told: 42 in. pulls
/// 200 x 50 / 5 = 2,000 lb and bends a 4x4 200 x 42 / 7.1458 = 1,175.51 psi; 1,070 mm is 42.126 in.
#[test]
fn the_height_asked_is_the_height_judged() {
    let department = "the building department wants 42 inch guards";
    for (law, height) in [(department, 42.0), ("we're in california", 42.0), ("we're in canada", 1070.0 / 25.4)] {
        let (json, text) = talk(&[law, HOLD]);
        near(of(&json, PULL, "demand"), 200.0 * (height + 8.0) / 5.0);
        assert!(text.contains("does not speak") || text.contains("Over"), "{text}");
        let (json, _) = talk(&[law, "is a 4x4 enough"]);
        near(of(&json, "post bending at the deck", "demand"), 200.0 * height / 7.145_833);
        // A leg half through: 3.5 x 1.75^2 / 6 = 1.786458.
        let (json, _) = talk(&[law, "how strong is what's left of the post"]);
        near(of(&json, "leg at a straight edge", "demand"), 200.0 * height / 1.786_458);
        // Outward a rail may move the height / 24 and the span / 96.
        let (json, _) = talk(&[law, "how bouncy is it at 6"]);
        near(of(&json, "rail movement, outward", "capacity"), height / 24.0 + 0.75);
    }
    // Built lower than asked is judged as built, and the height rule speaks.
    let (json, text) = talk(&[department, "guard height 36", HOLD]);
    near(of(&json, PULL, "demand"), 1760.0);
    assert_eq!(level(&json, "guard-too-low").as_deref(), Some("stop"), "{text}");
    // Higher than asked too.
    near(of(&talk(&[department, "guard height 48", HOLD]).0, PULL, "demand"), 2240.0);
}

/// The rule on notched 4x4s comes before the figure. 1/2 in. off leaves 3: along an edge
/// 3.5 x 3^2 / 6 = 5.25, 1,100 x 1.6 x 5.25 / 36 = 256.7 lb; at an inside corner 3^3 / (6 root 2) =
/// 3.18198, 155.6 lb and 1.2857 times, over for every load time.
#[test]
fn a_notched_4x4_is_a_stop_first() {
    let (json, text) =
        talk(&["it's southern pine", "use ten minute load", "notches are 1/2 deep", "is a notched 4x4 strong enough"]);
    assert!(text.starts_with("Stop: 4x4 wood posts") && text.contains("R507.10.2"), "{text}");
    assert_eq!(level(&json, "notch-in-4x4").as_deref(), Some("stop"));
    near(of(&json, "leg at a straight edge", "ratio"), 1371.4286 / 1760.0);
    near(of(&json, "leg at an inside corner", "ratio"), 7200.0 / 3.181_98 / 1760.0);
    assert_eq!(level(&json, "leg-bending-far-over").as_deref(), Some("stop"), "{text}");
    assert!(text.contains("Over, by arithmetic: what a notch leaves of a 4x4 at an inside corner"), "{text}");
    assert!(text.contains("156 lb of the 200") && text.contains("257 lb"), "{text}");
    assert!(!text.contains("as a load of ten minutes"), "it is one already: {text}");
    // A 6x6 is not barred, but must be shown to do.
    let (json, text) = talk(&["6x6 posts", "notches are 1 1/2 deep", "how strong is what's left"]);
    assert!(text.starts_with("Check: a post larger than a 4x4"), "{text}");
    assert_eq!(level(&json, "notch-in-larger-post").as_deref(), Some("check"));
    assert_eq!(level(&json, "notch-in-4x4"), None);
}

/// The least push, any way, that brings a section of rectangles to a stress of one: second moments by
/// parallel axes, and every direction tried by a tenth of a degree.
fn weakest(rectangles: &[[f64; 4]]) -> f64 {
    let area = |r: &[f64; 4]| (r[2] - r[0]) * (r[3] - r[1]);
    let middle = |r: &[f64; 4], k: usize| (r[k] + r[k + 2]) / 2.0;
    let total: f64 = rectangles.iter().map(area).sum();
    let centroid = |k| rectangles.iter().map(|r| area(r) * middle(r, k)).sum::<f64>() / total;
    let (cx, cy) = (centroid(0), centroid(1));
    let (mut ixx, mut iyy, mut ixy) = (0.0, 0.0, 0.0);
    for r in rectangles {
        let (a, dx, dy) = (area(r), middle(r, 0) - cx, middle(r, 1) - cy);
        ixx += a * ((r[3] - r[1]).powi(2) / 12.0 + dy * dy);
        iyy += a * ((r[2] - r[0]).powi(2) / 12.0 + dx * dx);
        ixy += a * dx * dy;
    }
    let whole = ixx * iyy - ixy * ixy;
    let corners = rectangles.iter().flat_map(|r| [(r[0], r[1]), (r[2], r[1]), (r[0], r[3]), (r[2], r[3])]);
    let stress = |(x, y): (f64, f64), turn: f64| {
        let (px, py) = (turn.cos(), turn.sin());
        (((py * iyy - px * ixy) * (y - cy) + (px * ixx - py * ixy) * (x - cx)) / whole).abs()
    };
    let all = corners.flat_map(|c| (0..3600).map(move |k| (c, f64::from(k).to_radians() / 10.0)));
    1.0 / all.map(|(c, turn)| stress(c, turn)).fold(0.0, f64::max)
}

/// A square `a` less a square of `a - t` at one corner.
fn ell(a: f64, t: f64) -> f64 {
    weakest(&[[0.0, 0.0, a, t], [0.0, t, t, a]])
}

/// A corner post is pushed any way, and the weakest way counts. An L half through a 4x4: 0.0618718 a^3 =
/// 2.65276 at its heel, 867 x 2.65276 / 36 = 63.9 lb. A whole post on its diagonal: a^3 / (6 root 2).
#[test]
fn a_corner_post_is_judged_the_way_it_is_weakest() {
    near(ell(3.5, 1.75), 0.061_871_8 * 3.5_f64.powi(3));
    let (json, text) = talk(&["how strong is what's left of the post"]);
    near(of(&json, "leg at an outside corner", "demand"), 7200.0 / ell(3.5, 1.75));
    near(of(&json, "leg at an outside corner", "ratio"), 200.0 / 63.887);
    assert!(text.contains("the L, may carry 64 lb, pushed the way it is weakest"), "{text}");
    // The quarter, 1.75^3 / 6 over root 2.
    near(of(&json, "leg at an inside corner", "demand"), 7200.0 / (1.75_f64.powi(3) / 6.0 / 2.0_f64.sqrt()));
    let (json, _) = talk(&["6x6 posts", "notches are 1 1/2 deep", "how strong is what's left"]);
    near(of(&json, "leg at an outside corner", "ratio"), 7200.0 / ell(5.5, 4.0) / 460.0);
    near(of(&json, "leg at an outside corner", "ratio"), 1.0165);
    // Whole: 7,200 / 5.052867 = 1,424.9 psi on the diagonal, 1,007.6 across a face.
    let (json, text) = talk(&["is a 4x4 enough"]);
    near(of(&json, "corner post bending at the deck", "demand"), 1424.935);
    near(of(&json, "post bending at the deck", "demand"), 1007.580);
    assert!(text.contains("corner post, pushed on its diagonal"), "{text}");
    assert!(text.contains("line post, pushed outward"), "{text}");
    // A guard without corners has no corner post to judge.
    let (json, text) = talk(&["run 12 ft between house and house", "is a 4x4 enough"]);
    assert!(!text.contains("diagonal"), "{text}");
    near(of(&json, "post bending at the deck", "demand"), 1007.580);
}

/// Strength numbers are JSON numbers, whatever their decimals come to.
#[test]
fn strength_numbers_are_numbers() {
    let questions = [
        "is a 4x4 enough",
        "is a 4x4 enough at 37",
        "how strong is what's left of the post",
        HOLD,
        "how bouncy is it at 7",
        "would a 6x6 let me go 8",
        "is a 4x4 enough at 41 3/16",
    ];
    for wood in ["it's southern pine", "it's hem-fir", "it's doug fir", "it's cedar", "decking is 15/16 thick"] {
        for question in questions {
            let (json, _) = talk(&[wood, question]);
            for row in rows(&json) {
                for field in ["demand", "capacity", "ratio"] {
                    assert!(row[field].is_number(), "{wood}, {question}: {row}");
                }
            }
        }
    }
}

/// The foot judged is the one told, of the post told for each role; the weakest is named.
#[test]
fn the_weakest_foot_is_the_one_named() {
    let left = "how strong is what's left";
    // Nothing told: half through a 4x4.
    let (json, text) = talk(&[left]);
    near(of(&json, "leg at a straight edge", "demand"), 7200.0 / 1.786_458);
    assert!(text.contains("not told: taken half through"), "{text}");
    // 1 1/2 off leaves 2: 3.5 x 4 / 6 = 2.3333 along an edge; at a corner of 6x6s an L of 4 in. arms.
    let (json, text) = talk(&["corner posts are 6x6", "notches are 1 1/2 deep", left]);
    near(of(&json, "leg at a straight edge", "demand"), 7200.0 / 2.333_333);
    near(of(&json, "leg at an outside corner", "demand"), 7200.0 / ell(5.5, 4.0));
    assert!(text.contains("what a notch leaves of a 4x4 at a straight edge"), "{text}");
    // The other way round the corner is the weakest: 2^3 / (6 root 2) = 0.942809.
    let (json, text) = talk(&["line posts are 6x6", "corner posts are 4x4", "notches are 1 1/2 deep", left]);
    near(of(&json, "leg at an inside corner", "demand"), 7200.0 / 0.942_809);
    near(of(&json, "leg at a straight edge", "demand"), 7200.0 / (5.5 * 16.0 / 6.0));
    assert!(text.contains("what a notch leaves of a 4x4 at an inside corner"), "{text}");
    // Whole posts by role: a hem-fir 6x6 line post 259.7 / 460, a 4x4 corner post 1,424.9 / 867.
    let (json, text) = talk(&["line posts are 6x6", "corner posts are 4x4", "are the posts strong enough"]);
    near(of(&json, "post bending at the deck", "ratio"), 7200.0 / 27.729_167 / 460.0);
    near(of(&json, "corner post bending at the deck", "ratio"), 1424.935 / 867.0);
    assert!(text.contains("a whole 4x4 36\" high, bending at the deck, as a corner post"), "{text}");
    // A notch told stands beside the whole post.
    let (json, text) = talk(&["notches are 1 1/2 deep", "are the posts strong enough"]);
    assert!(text.contains("Notched 1 1/2\" deep, as told"), "{text}");
    assert_eq!(level(&json, "notch-in-4x4").as_deref(), Some("stop"));
    // No notch, or none by the mount: the whole post is judged.
    for told in ["no notch", "posts are inside the rim"] {
        let (json, text) = talk(&[told, left]);
        near(of(&json, "post bending at the deck", "demand"), 1007.580);
        assert!(text.contains("stays whole") && level(&json, "leg-bending-far-over").is_none(), "{told}: {text}");
    }
}

/// A deck told whole: its own feet are judged, and named by their posts.
#[test]
fn the_decks_own_feet_are_judged() {
    let deck = ["the deck is 16 ft wide and 12 ft out", "posts are notched over the edge", "notches are 1 1/2 deep"];
    let (json, text) = talk(&[&deck[..], &["how strong is what's left"]].concat());
    near(of(&json, "leg at a straight edge", "demand"), 7200.0 / 2.333_333);
    assert!(text.contains("line post"), "{text}");
    assert!(rows(&json).iter().all(|r| r["what"] != "leg at an inside corner"), "there is none: {text}");
}

/// What is told and weakens the guard is found, with its source; its opposite is not.
#[test]
fn what_weakens_is_not_kept_in_silence() {
    let rows = [
        ("fixing: lags", "through-bolts-missing", "fixing: through bolts", "AWC DCA 6"),
        ("fixing: structural screws", "through-bolts-missing", "fixing: through bolts", "AWC DCA 6"),
        ("3/8 bolts", "bolts-too-thin", "1/2 bolts", "AWC DCA 6"),
        ("posts sit on top of the decking", "posts-on-decking", "posts are inside the rim", "IRC R507.10.1.2"),
        ("no bottom rail", "bottom-rail-left-out", "bottom rail is a 2x4", "IRC R312.1.3"),
        ("2x4 posts", "post-under-4x4", "4x4 posts", "AWC DCA 6"),
    ];
    for (told, rule, other, source) in rows {
        let (json, text) = talk(&[told]);
        let found = json["findings"].as_array().expect("findings").iter().find(|f| f["rule"] == rule).cloned();
        let found = found.unwrap_or_else(|| panic!("{told}: {text}"));
        assert!(found["source"].as_str().is_some_and(|s| s.starts_with(source)), "{found}");
        assert_eq!(level(&talk(&[other]).0, rule), None, "{other}");
        // It stands beside the figure of a strength answer too.
        if rule != "bottom-rail-left-out" && rule != "post-under-4x4" {
            assert!(level(&talk(&[told, HOLD]).0, rule).is_some(), "{told}");
        }
    }
}

/// Bolted to the rim a post bends most at the upper bolt, 3 in. further down. Southern pine, the run's ends
/// at walls, 38 in.: 200 x 38 / 7.1458 = 1,063.6 psi at the deck and 1,147.5 at the bolt, of 1,100: over.
#[test]
fn what_bends_most_comes_first() {
    let wall = "run 12 ft between house and house";
    let (json, text) = talk(&[wall, "it's southern pine", "guard height 38", "are the posts strong enough"]);
    near(of(&json, "post bending at the deck", "demand"), 1063.557);
    near(of(&json, "post bending at the upper bolt", "demand"), 1147.522);
    assert!(!text.contains("Inside the figures") && text.contains("bending at the upper bolt, as a"), "{text}");
    assert_eq!(level(&json, "post-bending-over-allowed").as_deref(), Some("check"));
}

/// The section modulus asked and the smallest post that has it: hem-fir 7,200 / 867 = 8.304, a 4x4 on its
/// diagonal has 5.053; a 6x6 19.608 of 7,200 / 460 = 15.652. Southern pine at ten minutes: 7,200 / 1,760 = 4.091.
#[test]
fn how_big_a_post_it_asks_for() {
    let (_, text) = talk(&["is a 4x4 enough"]);
    assert!(text.contains("section modulus that way is 5.053 in^3, and 8.304 in^3 is asked"), "{text}");
    assert!(text.contains("smallest square post inside the figures is a 6x6"), "{text}");
    let (_, text) = talk(&["how big a post do I need"]);
    assert!(
        text.contains("Guard posts are 4x4 or larger") && text.contains("inside the figures at 36\" is a 6x6"),
        "{text}"
    );
    let (_, text) = talk(&["it's southern pine", "use ten minute load", "how big a post do I need"]);
    assert!(text.contains("inside the figures at 36\" is a 4x4"), "{text}");
}

/// A 2x4 flat beside its post: 1.5 x 200 / 5.25 = 57.1 psi of 150 x 0.97 x 0.80 = 116.4; on half a
/// 4x4 200 / (3.5 x 1.75) = 32.7 of 405 x 0.67 = 271.35.
#[test]
fn a_rail_is_judged_at_its_ends() {
    let (json, _) = talk(&["how bouncy is it at 6"]);
    near(of(&json, "rail shear at the post", "demand"), 57.142_857);
    near(of(&json, "rail shear at the post", "capacity"), 116.4);
    near(of(&json, "rail bearing on half a post", "demand"), 32.653_06);
    near(of(&json, "rail bearing on half a post", "capacity"), 271.35);
    let (json, _) = talk(&["6x6 posts", "how bouncy is it at 6"]);
    near(of(&json, "rail bearing on half a post", "demand"), 200.0 / (3.5 * 2.75));
}

/// Each fact told moves each figure that depends on it by its formula, and no other question is deaf to it.
#[test]
fn each_fact_told_moves_its_figures() {
    const BAY: &str = "how bouncy is it at 6";
    const REACH: &str = "what's the longest bay I can run";
    const POST: &str = "are the posts strong enough";
    const LEFT: &str = "how strong is what's left";
    const STIFF: &str = "is it stiffer on edge or flat";
    let facts: [(&str, &[&str]); 19] = [
        ("guard height 42", &[BAY, POST, LEFT, HOLD]),
        ("the building department wants 42 inch guards", &[BAY, POST, LEFT, HOLD]),
        ("we're in california", &[BAY, POST, LEFT, HOLD]),
        ("decking is 1 1/2 thick", &[POST, HOLD]),
        ("2x8 rim", &[POST, HOLD]),
        ("rim is 7 1/4 tall", &[POST, HOLD]),
        ("it's southern pine", &[BAY, REACH, POST, LEFT, STIFF]),
        ("lumber stays dry", &[BAY, REACH, POST, LEFT, STIFF]),
        ("lumber is not incised", &[BAY, REACH, POST, LEFT, STIFF]),
        ("use ten minute load", &[BAY, REACH, POST, LEFT]),
        ("6x6 posts", &[BAY, POST, LEFT]),
        ("corner posts are 6x6", &[POST, LEFT]),
        ("line posts are 6x6", &[POST, LEFT]),
        ("notches are 1/2 deep", &[POST, LEFT]),
        ("top rail is a 2x6", &[BAY, REACH, STIFF]),
        ("top rail is on edge", &[BAY, REACH]),
        ("put a 2x6 cap on it", &[BAY, REACH, STIFF]),
        ("no notch", &[LEFT]),
        ("posts are inside the rim", &[LEFT]),
    ];
    for (fact, questions) in facts {
        for question in questions {
            let (plainly, _) = talk(&[question]);
            let (json, text) = talk(&[fact, question]);
            assert_eq!(json["status"], "answered", "{fact}, {question}: {text}");
            assert_ne!(json["values"], plainly["values"], "{fact}, {question}: {text}");
        }
    }
    // A grade, in a wood that has values for two: No.1 Douglas fir timbers 1,200, No.2 750 (NDS 4D).
    let graded =
        |grade| of(&talk(&["it's doug fir", "6x6 posts", grade, POST]).0, "post bending at the deck", "capacity");
    near(graded("no. 1 grade") / graded("no. 2 grade"), 1200.0 / 750.0);
}
