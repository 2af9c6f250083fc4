//! Facts told, a question, and the figure that comes back: each worked by hand beside its row.
//!
//! A path goes down the JSON of the last answer: a field, a place in a list, or the `what`, `rule` or
//! `at` of the item meant. A length is in inches. Dressed sizes are PS 20's; design values, limits and
//! their sources are those of `tests/published/strength` and `src/limits`. What a builder means by a
//! line is common practice, no source.
//!
//! Rows that other tests hold already: the drop over falling ground in `talks/drop.toml`; rims, asked
//! heights, notched 4x4s and corner posts in `strength_told.rs`; the lift of a stair's bottom rail and
//! its balusters' marks, a pool's gap, a cap's posts and a gate's leaf in `told_inputs.rs`; the feet of a
//! clipped corner in `corners.rs`; lines that no length can be read from in `reading_tangles.rs`.

use railhand::reply::reply_json;
use railhand::session::{Session, step};
use serde_json::Value;

/// Says the lines; the JSON of the last answer.
fn ask(lines: &[&str]) -> Value {
    let mut session = Session::new();
    let mut last = Value::Null;
    for line in lines {
        let (delta, reply) = step(&session, line);
        session.apply(delta);
        last = reply_json(line, &reply, session.job());
    }
    last
}

fn at<'a>(json: &'a Value, path: &str) -> &'a Value {
    path.split('/').fold(json, |here, part| match (here, part.parse::<usize>()) {
        (Value::Array(all), Ok(k)) => all.get(k).unwrap_or(&Value::Null),
        (Value::Array(all), _) => {
            let named = |v: &&Value| ["what", "rule", "at"].iter().any(|name| v[*name] == part);
            all.iter().find(named).unwrap_or(&Value::Null)
        }
        _ => &here[part],
    })
}

fn shown(v: &Value) -> String {
    match v {
        Value::Object(length) if length.contains_key("in") => shown(&length["in"]),
        Value::String(s) => s.clone(),
        other => other.to_string(),
    }
}

fn same(got: &str, want: &str) -> bool {
    match (got.parse::<f64>(), want.parse::<f64>()) {
        (Ok(got), Ok(want)) => (got - want).abs() <= 5e-5 * want.abs().max(1.0),
        _ => got == want,
    }
}

type Row<'a> = (&'a [&'a str], &'a [(&'a str, &'a str)], &'a [&'a str]);

/// Each row: the lines, what stands at which path, and pieces of the text.
#[track_caller]
fn hold(rows: &[Row]) {
    let mut wrong = Vec::new();
    for (lines, paths, pieces) in rows {
        let json = ask(lines);
        let text = json["text"].as_str().unwrap_or_default();
        for (path, want) in *paths {
            let got = shown(at(&json, path));
            if !same(&got, want) {
                wrong.push(format!("{lines:?}: {path} is {got}, not {want}\n{text}"));
            }
        }
        wrong.extend(pieces.iter().filter(|p| !text.contains(**p)).map(|p| format!("{lines:?}: no {p:?} in\n{text}")));
    }
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong.join("\n\n"));
}

const PULL: &str = "values/strength/pull on the upper bolt/demand";
const HOLD: &str = "is the hold down enough";

#[test]
fn the_drop_a_guard_is_asked_for_over() {
    let ask = "do I need a guard";
    hold(&[
        // 28 + 10% of 36 = 31.6
        (&["deck is 28 inches up", "yard falls 10 percent", ask], &[], &["Yes: a drop of 31 5/8\""]),
        // 28 + 4 x 3 = 40
        (&["deck is 28 inches up", "yard drops 4 in per ft", ask], &[], &["Yes: a drop of 40\""]),
        // 2 in 72 is 1 in 36: 29
        (&["deck is 28 inches up", "ground drops 2 inches in 6 ft", ask], &[], &["No: a drop of 29\""]),
        // rising ground takes nothing off what stands at the edge
        (&["deck is 31 up", "ground rises 2 in in 3 ft", ask], &[], &["Yes: a drop of 31\""]),
        (&["the building department wants a guard over 24 inches", "deck is 26 up", ask], &[], &["more than 24\""]),
    ]);
    // Two heights, and a fall over no distance, are no height of the deck: a question.
    for line in [
        "deck is 28 inches up at the house and 34 at the outer edge",
        "ground drops 2 inches",
        "the yard slopes down 10 inches",
        "ground falls away 10 inches",
    ] {
        let json = ask_after("deck is 28 inches up", line);
        assert_ne!(json["status"], "told", "{line}: {}", json["text"]);
        assert_eq!(json["job"]["settings"]["grade"]["in"], "28", "{line}");
    }
    let json = ask_after("deck is 28 inches up", "ground falls off to 36");
    assert_eq!(json["job"]["settings"]["grade"]["in"], "36", "{}", json["text"]);
}

fn ask_after(told: &str, line: &str) -> Value {
    ask(&[told, line])
}

#[test]
fn the_hold_down_takes_what_was_told() {
    hold(&[
        // 200 (36 + 1.5 + 2 + 5)/5 = 200 x 44.5 / 5
        (&["decking is 2x6", "is the hold down enough at 36"], &[(PULL, "1780")], &["decking 1 1/2\" thick"]),
        (&["2x6 decking", HOLD], &[(PULL, "1780")], &[]),
        // 5/4 is 1 in. dressed: 200 x 44 / 5
        (&["decking is 5/4", HOLD], &[(PULL, "1760")], &[]),
        // 42: 200 x 50 / 5 = 2,000, 1.11 of 1,800
        (&["we're in california", HOLD], &[(PULL, "2000")], &["1.11 times"]),
        // The hold-down goes with the guide's 1/2 in. bolts.
        (&["3/8 bolts", HOLD], &[("findings/bolts-too-thin/level", "check")], &["The bolts told are thinner"]),
        (&["1/2 bolts", HOLD], &[("findings", "[]")], &["Inside the published hold-down"]),
    ]);
    let json = ask(&["3/8 bolts", HOLD]);
    assert!(!json["text"].as_str().unwrap_or_default().starts_with("Inside"), "{json}");
}

#[test]
fn what_weakens_stands_in_the_checks() {
    hold(&[
        (&["fixing: lags", "checks"], &[("findings/through-bolts-missing/level", "check")], &["AWC DCA 6"]),
        (&["3/8 bolts", "checks"], &[("findings/bolts-too-thin/level", "check")], &["AWC DCA 6"]),
        (
            &["posts sit on top of the decking", "checks"],
            &[("findings/posts-on-decking/level", "check")],
            &["R507.10.1.2"],
        ),
        (&["no bottom rail", "checks"], &[("findings/bottom-rail-left-out/level", "check")], &["R312.1.3"]),
        (&["2x4 posts", "checks"], &[("findings/post-under-4x4/level", "check")], &["AWC DCA 6"]),
    ]);
    // One thing found is said once.
    let json = ask(&["no bottom rail"]);
    assert_eq!(json["findings"].as_array().map(Vec::len), Some(1), "{}", json["text"]);
}

/// A notch told on a 6x6: 5.5 - 1.5 = 4, at an inside corner 4^3 / (6 root 2) = 7.5425, 460 x 7.5425 / 36 = 96 lb.
/// 200 / 96.4 = 2.08 times. The whole post is inside; what was told is not.
#[test]
fn a_whole_post_inside_does_not_speak_for_its_notch() {
    let json = ask(&["6x6 posts", "notches are 1 1/2 deep", "are the posts strong enough"]);
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("Stop: the bending of what the notch leaves is 2.08 times"), "{text}");
    assert!(text.contains("may carry 96 lb of the 200") && text.contains("Inside the figures"), "{text}");
    // 1/2 off in southern pine for ten minutes: 5^3 / (6 root 2) = 14.7314, 850 x 1.6 x 14.7314 / 36 = 557 lb: inside.
    let lines = ["it's southern pine", "use ten minute load", "6x6 posts", "notches are 1/2 deep"];
    let json = ask(&[&lines[..], &["are the posts strong enough"]].concat());
    let text = json["text"].as_str().expect("text");
    assert!(text.starts_with("Check: a notched post larger than a 4x4\nInside the figures"), "{text}");
}

/// 42: 200 x 50 / 5 = 2,000, over 1,800; 8,400 / 27.729 = 303 psi of 460. A 2x6 rim's bolts, 1 1/2 apart: 200 x 40 1/2 / 1 1/2 =
/// 5,400, three times. The post is inside; what holds it is not.
#[test]
fn a_figure_inside_does_not_speak_for_the_rest() {
    let posts = "are the posts strong enough";
    for (told, ask_it, lead) in [
        ("guard height 42", posts, "Check: the published hold-down is for guards up to 36 in."),
        ("2x6 rim", posts, "Stop: bolts 1 1/2\" apart pull the upper one 5,400 lb"),
        ("fixing: lags", posts, "Check: lag screws hold the posts"),
        ("3/8 bolts", posts, "Check: bolts of 3/8\""),
        ("posts sit on top of the decking", posts, "Check: posts on the decking"),
        ("guard height 34", HOLD, "Stop: a guard 34\" high is under 36\""),
    ] {
        let json = ask(&["6x6 posts", told, ask_it]);
        let text = json["text"].as_str().expect("text");
        assert!(text.starts_with(lead), "{told}: {text}");
    }
    let json = ask(&["6x6 posts", posts]);
    assert!(json["text"].as_str().expect("text").starts_with("Inside the figures"), "{json}");
}

/// 12 ft, three 4x4s: (144 - 10 1/2)/2 = 66 3/4 to a bay, 48 - 2 - 3 1/2 = 42 1/2 between the rails' tops: 1 3/4.
/// 66 3/4 - 1 1/2 n <= 1 3/4 (n + 1): n >= 20; 40.
#[test]
fn a_pools_balusters_in_every_list() {
    let pool = ["there's a pool", "48 high", "gap under 2", "bottom rail 2x4 on edge", "12 ft run"];
    for (ask, piece) in [
        ("how many balusters", "40 balusters: 20 in each of 2 bays, gaps of 1 3/4\""),
        ("cut list", "40 balusters"),
        ("parts list", "40 balusters"),
        ("what do I buy", "40 balusters"),
    ] {
        hold(&[(&[&pool[..], &[ask]].concat(), &[], &[piece])]);
    }
}

/// (240 - 10 1/2)/2 = 114 3/4 clear, 118 1/4 on centre, over 72.
#[test]
fn a_wide_limit_told_does_not_take_the_stop_away() {
    let stop: &[(&str, &str)] =
        &[("findings/post-spacing-over-published/level", "stop"), ("values/bays/0/clear", "114.75")];
    hold(&[
        (&["posts no more than 10 ft on center", "20 ft run"], stop, &["9'-10 1/4\" on centre"]),
        (&["20 ft run", "2 bays"], stop, &["9'-10 1/4\" on centre"]),
    ]);
}

const CLIPPED: [&str; 4] = [
    "deck is 16 by 12 with 16 on the house",
    "the front left corner is clipped at 45, 4 ft",
    "1",
    "mount: over the edge",
];

/// Both corners of the clip are one cut, posts 3 and 4. Split, the line 10 mm inside and 1 in. cut back: 6.125 - 3.5 x
/// 0.60630 / cos 22.5 - 3.0625 tan 22.5 = 2.5596 (`corners.rs`). Square to one side, 1 inside: the two edges cross under
/// the center and leave three octants of the square, 12.25 x 3/8 = 4.59375. 1 outside: a strip 3/4 deep along the one
/// edge, cut slanting by the other root 2 before the center: from 1 3/4 - (root 2 - 1) = 1.33579 long to 2.08579,
/// 3/4 x 1.71079 = 1.28309.
#[test]
fn the_corners_of_a_clip_talked_through() {
    let posts = ("values/notches/1/posts", "[3,4]");
    let of = |more: &[&str], off: &str| {
        let lines = [&CLIPPED[..], more, &["notches"]].concat();
        hold(&[(&lines, &[posts, ("values/notches/1/area_off/value", off)], &[])]);
    };
    let back = ["overhang is 1", "nosing is cut back"];
    let split = "angled posts split the turn";
    of(&[&back[..], &["line is 10 mm inside the edge", split]].concat(), "2.5595835755");
    of(&[&back[..], &["line is 1 inch inside the edge"]].concat(), "4.59375");
    of(&["line is 1 inch outside the edge", "nosing is cut back"], "1.2830898285");
}

const LET_IN: [&str; 2] = [
    "deck 20 along the house, 12 out",
    "run 2: stairs 5'-0\" wide between the posts 2'-0\" deep into the deck in the middle",
];

/// Line 1 inside the edge, 1 of overhang left whole: at the decking 1 3/4 + 1 = 2 3/4 comes off, 3/4 stays; at the rim 1 3/4.
/// 3.5 x 0.75^2 / 6 = 0.328125, 36 x 200 / 0.328125 = 21,942.86; 0.75^3 / (6 root 2) = 0.0497184, 144,815.5;
/// an L of 3/4 arms by parallel axes 5,346.05. In hem-fir, 867.
#[test]
fn a_stepped_foot_is_judged_at_the_decking() {
    let deck = [
        &LET_IN[..],
        &["mount: over the edge", "overhang is 1", "line is 1 inside the edge", "leave the nosing whole"],
    ]
    .concat();
    let ask = |line| [&deck[..], &[line]].concat();
    let two = |k: usize, deep: bool| {
        let level = |at: &str, off: &str| (format!("values/notches/{k}/levels/{at}/off"), off.to_owned());
        if deep { level("decking", "2.75") } else { level("rim", "1.75") }
    };
    let paths: Vec<(String, String)> = (0..3).flat_map(|k| [two(k, true), two(k, false)]).collect();
    let mut paths: Vec<(&str, &str)> = paths.iter().map(|(p, w)| (p.as_str(), w.as_str())).collect();
    paths.push(("values/notches/2/posts", "[9,10]"));
    paths.push(("values/notches/2/levels/decking/weakest", "true"));
    hold(&[(&ask("notches"), &paths, &["Stepped: deeper where it passes the decking"])]);
    let strength: &[(&str, &str)] = &[
        ("values/strength/leg at a straight edge/demand", "21942.857"),
        ("values/strength/leg at an inside corner/demand", "144815.467"),
        ("values/strength/leg at an outside corner/demand", "5346.051"),
    ];
    hold(&[(
        &ask("how strong is what's left"),
        strength,
        &["posts 9 and 10 (inside corner), where it passes the decking"],
    )]);
    // 1 3/4 inside and 1 over is 3 1/2: nothing of the post passes the decking, and no half of it is judged.
    let none = [
        &LET_IN[..],
        &["mount: over the edge", "overhang is 1", "line is 1 3/4 inside the edge", "leave the nosing whole"],
    ]
    .concat();
    let left = [&none[..], &["how strong is what's left"]].concat();
    hold(&[(&left, &[("status", "refused")], &["leaves nothing of the post"])]);
}

#[test]
fn what_is_left_between_the_handrails() {
    let deck = ["deck 20 along the house, 12 out", "mount: over the edge"];
    let stairs = |how: &str| format!("run 2: stairs 5'-0\" wide {how} 2'-0\" deep into the deck in the middle");
    let (decking, posts, framing) =
        (stairs("decking to decking"), stairs("between the posts"), stairs("in the framing"));
    let left = "how much is left between the handrails";
    let skirt = ["overhang is 1", "skirt is 3/4 thick"];
    hold(&[
        // Posts centred on the edge stand 1 3/4 in from either side: 60 - 3 1/2 = 56 1/2, less 4 1/2 a handrail.
        (
            &[deck[0], deck[1], &decking, left],
            &[("values/between_two", "47.5"), ("values/beside_one", "52")],
            &["56 1/2\" is clear"],
        ),
        // Told clear between the posts.
        (&[deck[0], deck[1], &posts, left], &[("values/between_two", "51")], &[]),
        // 60 - 2 (1 + 3/4) = 56 1/2 of hole, less 3 1/2: 53.
        (&[deck[0], deck[1], &framing, skirt[0], skirt[1], left], &[("values/between_two", "44")], &["53\" is clear"]),
        (&[deck[0], deck[1], &decking, "are the stairs wide enough"], &[], &["Yes: 56 1/2\" keeps to it"]),
        // Without the skirt nobody knows the hole, nor what newels on the treads leave of them.
        (&[deck[0], deck[1], &framing, left], &[("status", "asks")], &["How wide are the stairs, clear?"]),
        (&["36 in stairs on the treads", "newels on the treads", left], &[("status", "asks")], &[]),
        (&["36 in stairs on the treads", left], &[("values/between_two", "27")], &[]),
        (&["48 inch stairs", left], &[("values/between_two", "39")], &[]),
    ]);
    for lines in [
        &[deck[0], deck[1], &framing, "are the stairs wide enough"][..],
        &["36 in stairs on the treads", "newels on the treads", "are the stairs wide enough"],
    ] {
        assert!(!ask(lines)["text"].as_str().unwrap_or_default().contains("Yes"), "{lines:?}");
    }
    assert_eq!(ask(&["48 inch stairs", left])["unused"], serde_json::json!([]));
}

/// Shoulder 36 - 1 1/2 = 34 1/2, leg 1 + 9 1/4: 44 3/4, as in `told_inputs.rs`, in the cut list too.
#[test]
fn how_long_posts_are() {
    let length = ("values/result", "44.75");
    let ask = "how long are the posts";
    hold(&[
        (&["36 high", "decking is 1 inch thick", "2x10 rim", "2x6 cap", ask], &[length], &[]),
        (
            &["36 high", "decking is 1 inch thick", "2x10 rim", "2x6 cap on the posts", "12 ft run", "cut list"],
            &[],
            &["3 at 3'-8 3/4\", posts"],
        ),
        // 36 + 1 1/2 + 7 1/4
        (&["36 high", "2x6 decking", "2x8 rim", ask], &[length], &[]),
        // 36 + 1 + 11 1/4
        (&["36 high", "decking is 5/4", "2x12 rim", ask], &[("values/result", "48.25")], &[]),
        // 42 + 1 1/2 + 9 1/4
        (&["42 high", "decking is 2x6", "rim is a 2x10", ask], &[("values/result", "52.75")], &[]),
        // What California and a department ask: 42 + 1 + 9 1/4
        (&["we're in california", "2x10 rim", ask], &[("values/result", "52.25")], &["42\" above the decking"]),
        (&["the building department wants 42 inch guards", "2x10 rim", ask], &[("values/result", "52.25")], &[]),
        // 36 + 4 + 10 1/4
        (&["36 high", "posts run 4 inches above the rail", "2x10 rim", ask], &[("values/result", "50.25")], &[]),
        (&["36 high", "posts sit on top of the decking", ask], &[("values/result", "36")], &[]),
        // Balusters between the rails: 36 - 1 1/2 - 3 1/2 - 3 1/2 - 3
        (
            &[
                "36 high",
                "gap under 3",
                "2x6 cap",
                "top rail is a 2x4 on edge",
                "bottom rail is a 2x4 on edge",
                "balusters between the rails",
                "how long are the balusters",
            ],
            &[("values/result", "24.5")],
            &[],
        ),
    ]);
}

#[test]
fn every_small_count_is_a_count_of_risers() {
    for n in 3..=9 {
        for tread in ["10 1/2 inch treads", "10 inch treads", "11 1/4 in treads"] {
            let json = ask(&[&format!("{n} risers, {tread}")]);
            assert_eq!(json["job"]["stairs"][0]["risers"], n, "{n}, {tread}: {}", json["text"]);
        }
    }
}

/// 4 ft along both sides is 48 root 2 = 67.882... on the slant, which no tape has a fraction for.
#[test]
fn no_choice_is_read_off_a_fraction_no_tape_has() {
    for by in ["4 ft", "3 ft", "3 ft 1 3/16", "1 m", "50", "2 1/3 ft"] {
        for how in ["the front left corner is clipped at 45, ", "clip the front right corner at 45, "] {
            let json = ask(&["deck is 16 by 12 with 16 on the house", &format!("{how}{by}")]);
            let choices = json["choices"].as_array().expect("choices").iter().map(|c| c.as_str().unwrap_or_default());
            let all: Vec<&str> = choices.chain(json["text"].as_str()).chain(json["readback"].as_str()).collect();
            let long = |s: &str| s.split('/').skip(1).any(|t| t.chars().take_while(char::is_ascii_digit).count() > 3);
            assert!(!all.iter().any(|s| long(s)), "{how}{by}: {all:?}");
        }
    }
}

#[test]
fn posts_and_bays() {
    let clear = |at: &'static str| ("values/bays/0/clear", at);
    let ask = "where do the posts go";
    hold(&[
        // (120 - 3 x 5 1/2)/2
        (&["10 ft run", "6x6 posts", ask], &[clear("51.75")], &[]),
        // (168 - 5 1/2)/72 = 2.3: three; (168 - 22)/3
        (&["14 ft run", "6x6 posts", ask], &[clear("48.666667")], &[]),
        // Clear between the end posts: (168 + 3 1/2)/72 = 2.4: three; (168 - 7)/3
        (&["14 ft run between the posts", ask], &[clear("53.666667")], &[]),
        // 3.6 m is 141.7323: (141.7323 - 10 1/2)/2
        (&["3.6 m run", ask], &[clear("65.616142")], &[]),
        // A post at 60: 60 - 1 3/4 - 3 1/2 = 54 3/4; the rest 142 1/4 - 60 = 82 1/4 on centre, two of 41 1/8, 37 5/8 clear
        (&["12 ft run", "middle post at 5 ft", ask], &[clear("54.75"), ("values/bays/1/clear", "37.625")], &[]),
        (&["144 inch run from the house to the corner", ask], &[clear("66.75")], &[]),
        // Limits told: 48 on centre, (144 - 3 1/2)/48 = 2.9: three, (144 - 14)/3
        (&["posts no more than 4 ft on center", "12 ft run", ask], &[clear("43.333333")], &[]),
    ]);
}

/// n >= (clear - limit)/(wide + limit) under the limit, and no gap as marked reaches it.
#[test]
fn balusters_counted() {
    let n = |n: &'static str| ("values/balusters", n);
    let ask = "how many balusters";
    hold(&[
        // (66 3/4 - 4)/4 3/4 = 13.2: 14 a bay
        (&["12 ft run", "balusters are 3/4 round", ask], &[n("28"), ("values/gap", "3.75")], &[]),
        // 12 of 1 1/4 leave (66 3/4 - 15)/13 = 3.981, marked as 4: 13, (66 3/4 - 16 1/4)/14
        (&["12 ft run", "pickets are 1 1/4", ask], &[n("26"), ("values/gap", "3.607143")], &[]),
        // flat 2x4s: (66 3/4 - 4)/7 1/2 = 8.4: 9, (66 3/4 - 31 1/2)/10
        (&["12 ft run", "2x4 balusters", ask], &[n("18"), ("values/gap", "3.525")], &[]),
        // A department's 3: (66 3/4 - 3)/4 1/2 = 14.2: 15, (66 3/4 - 22 1/2)/16
        (
            &["the building department wants gaps under 3", "12 ft run", ask],
            &[n("30"), ("values/gap", "2.765625")],
            &[],
        ),
        // 100 mm: (66.75 - 3.937)/5.437 = 11.6: 12
        (&["we're in canada", "12 ft run", ask], &[n("24"), ("values/gap", "3.75")], &[]),
        // (144 - 14)/3 = 43 1/3: (43 1/3 - 4)/5 1/2 = 7.2: 8
        (&["12 ft run", "3 bays", ask], &[n("24"), ("values/gap", "3.481481")], &[]),
        // (144 - 7)/3 = 45 2/3: 7.6: 8
        (&["12 ft run clear", ask], &[n("24"), ("values/gap", "3.740741")], &[]),
        // Posts at both walls: (120 - 10 1/2)/2 = 54 3/4: 9.2: 10
        (&["10 ft run between house and house", ask], &[n("20"), ("values/gap", "3.613636")], &[]),
        // A limit past the ball's is kept to, and is a stop: (66 3/4 - 5)/6 1/2 = 9.5: 10
        (
            &["gap limit 5", "12 ft run", ask],
            &[n("20"), ("findings/gap-limit-too-wide/level", "stop")],
            &["Stop: gaps up to 5\""],
        ),
        // 6x6 posts: (144 - 16 1/2)/2 = 63 3/4: (63 3/4 - 4)/5 1/2 = 10.9: 11, (63 3/4 - 16 1/2)/12
        (&["12 ft run", "6x6 posts", ask], &[n("22"), ("values/gap", "3.9375")], &[]),
    ]);
}

#[test]
fn stairs_told() {
    let six = "5 risers, rise is 7 1/4, 11 inch treads";
    hold(&[
        // 52 / 7 3/4 = 6.7: 7 of 7 3/7
        (&["total rise 52", "are the stairs ok"], &[("values/result", "7.428571")], &["7 risers of 7 7/16\""]),
        // atan(7 1/2 / 10 1/2) = 35.5377
        (
            &["7 risers, rise is 7 1/2, 10 1/2 inch treads", "whats the rake"],
            &[("values/rake/angle_deg", "35.537678")],
            &[],
        ),
        // 4 x 11 = 44 less half a post twice: 40 1/2; (40 1/2 - 4 3/8)/5 7/8 = 6.1: 7, (40 1/2 - 10 1/2)/8
        (&[six, "how many balusters on the stairs"], &[("values/balusters", "7"), ("values/gap", "3.75")], &[]),
        // 40 1/2 x root(7.25^2 + 121)/11 = 48.505
        (&[six, "stair rail length"], &[], &["4'-0 1/2\" along its edge"]),
        (
            &["7 risers, rise is 8, 10 inch treads", "are the stairs ok"],
            &[("findings/riser-too-high/level", "stop")],
            &["Stop: a riser of 8\""],
        ),
        (
            &["7 risers, rise is 7 3/4, 9 1/2 inch treads", "are the stairs ok"],
            &[("findings/tread-too-shallow/level", "stop")],
            &["Stop: a tread of 9 1/2\""],
        ),
        (
            &["stairs 34 wide", "are the stairs wide enough"],
            &[("findings/stair-opening-narrow/level", "stop")],
            &["No: 34\" breaks it"],
        ),
        (&["stair rail is 33 high", "checks"], &[("findings/stair-rail-too-low/level", "stop")], &[]),
    ]);
}

#[test]
fn gates_orders_and_wood() {
    let wide = "how wide do I build the gate";
    hold(&[
        (&["16 ft run", "3 ft gate in the middle", wide], &[("values/result", "35")], &[]),
        (&["16 ft run", "36 inch gate at the left end", wide], &[("values/result", "35")], &[]),
        // 42 - 1/4 - 3/8
        (
            &["16 ft run", "42 inch gate in the middle", "hinge gap is 1/4", "latch gap is 3/8", wide],
            &[("values/result", "41.375")],
            &[],
        ),
        // 3 x 48 and two cuts of 1/8 are 144 1/4: past a 12
        (&["12 ft run", "posts 48 long", "what do I buy"], &[], &["1 4x4x14", "1'-11 3/4\" left"]),
        // 3 x 52 + 1/4 = 156 1/4 of 168
        (&["12 ft run", "posts 52 long", "what do I buy"], &[], &["3 at 4'-4\"; 11 3/4\" left"]),
        // 24 of 32: five to a 14 (160 1/2 of 168), four to a 12 (128 3/8 of 144): 4 x 14 + 12 = 68 ft
        (
            &["12 ft run", "balusters are 32 long", "no cap", "what do I buy"],
            &[],
            &["4 2x2x14, 1 2x2x12", "68'-0\" bought"],
        ),
        // Douglas fir 4x4: 900 x 0.85 x 1.5 (4x4 size) x 0.80 incised = 918; line post 7,200 / 7.1458
        (
            &["it's doug fir", "is a 4x4 strong enough"],
            &[
                ("values/strength/post bending at the deck/capacity", "918"),
                ("values/strength/post bending at the deck/demand", "1007.5802"),
            ],
            &[],
        ),
        // dry and not incised: 900 x 1.5
        (
            &["it's doug fir", "lumber stays dry", "lumber is not incised", "is a 4x4 strong enough"],
            &[("values/strength/post bending at the deck/capacity", "1350")],
            &[],
        ),
        // 72 x 200 / 4 = 3,600 in 1.5 x 3.5^2 / 6 = 3.0625
        (
            &["top rail is a 2x4 on edge", "it's southern pine", "how bouncy is it at 6"],
            &[],
            &["1,176 psi asked, 1,100 psi allowed: 1.07 times"],
        ),
        (
            &["the building department wants 42 inch guards", "36 high", "is 36 high enough"],
            &[("findings/guard-too-low/level", "stop")],
            &["No: 36\" is under the 42\" limit"],
        ),
    ]);
}
