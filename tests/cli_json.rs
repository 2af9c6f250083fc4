//! The JSON of a reply, built by hand: field for field as the README's contract says.

use num_rational::Ratio;
use pretty_assertions::assert_eq;
use railhand::figure::{Fig, Value as Figure, Why};
use railhand::job::{
    Basis, Fact, Fixing, Gate, GateAt, HouseEnd, Job, Mount, NotchTold, PostRole, PostSize, RunId, RunPatch, Setting,
    StairAt, StairOpening, Told,
};
use railhand::job::{End, End::Corner, End::StairHead};
use railhand::measure::{Length, Lumber, Shade};
use railhand::reply::{
    BayFig, Finding, Level, Line, PostFig, Reply, Role, Span, Status, Style, Typed, job_json, json_line, reply_json,
};
use serde_json::{Value, json};

fn inches(n: i64) -> Length {
    Length::inches(n)
}

fn fig(l: Length) -> Fig {
    Fig::told(l, "length")
}

fn part(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("a small fraction")
}

fn job(facts: &[Fact]) -> Job {
    Job::default().with_all(facts).expect("the facts fit together")
}

fn set(settings: &[Setting]) -> Value {
    let facts: Vec<Fact> = settings.iter().map(|s| Fact::Set(*s)).collect();
    job_json(&job(&facts))["settings"].clone()
}

fn result(value: Figure) -> Value {
    let mut reply = Reply::of(Status::Answered);
    reply.values.result = Some(Fig::new(value, Why::Told("result")));
    reply_json("", &reply, &Job::default())["values"].clone()
}

/// 126 3/4 in. is the contract's own example; 39 11/24 has no end in decimals (24 = 2^3 x 3).
#[test]
fn a_length_is_decimal_inches_and_a_tape_reading() {
    let rows = [
        (part(507, 4), json!({"in": "126.75", "text": "10'-6 3/4\""})),
        (part(947, 24), json!({"in": "39.458333", "text": "3'-3 7/16\"", "exact": "39 11/24"})),
        (inches(0), json!({"in": "0", "text": "0\""})),
        (part(-1, 2), json!({"in": "-0.5", "text": "-1/2\""})),
        (part(500, 127), json!({"in": "3.937008", "text": "3 15/16\"", "exact": "3 119/127"})),
    ];
    for (length, want) in rows {
        assert_eq!(result(Figure::Length(length))["result"], want);
    }
}

/// The diagonal of a foot square is 12 times the root of 2: 16.970562748...
#[test]
fn a_carried_length_says_so() {
    let root = Length::diagonal(inches(12), inches(12)).expect("small");
    assert_eq!(
        result(Figure::Length(root))["result"],
        json!({"in": "16.970562748", "text": "1'-5\"", "carried": true})
    );
}

#[test]
fn counts_and_ratios_are_plain_numbers() {
    let number = |n, d| result(Figure::Number(Ratio::new(n, d)));
    assert_eq!(result(Figure::Count(28)), json!({"result": 28}));
    assert_eq!(number(5, 2), json!({"result": 2.5}));
    assert_eq!(number(6, 2), json!({"result": 3}));
    assert_eq!(number(1, 3), json!({"result": 0.333333, "result_exact": "1/3"}));
    // Past what a JSON reader's double holds (2^53, IEEE 754), the digits come as text.
    assert_eq!(number(10_i128.pow(20) + 1, 1), json!({"result": "100000000000000000001"}));
}

#[test]
fn an_empty_reply_has_every_key_and_nulls() {
    let want = r#"{"line":"hm","status":"refused","readback":null,"unused":[],"choices":[],"text":"","values":{},"#;
    let line = json_line(&reply_json("hm", &Reply::of(Status::Refused), &Job::default()));
    assert!(line.starts_with(want), "{line}");
    assert!(line.ends_with(r#""notes":[]},"findings":[],"bound":[]}"#), "{line}");
}

#[test]
fn a_reply_gives_what_it_holds() {
    let mut reply = Reply::of(Status::Told);
    reply.readback = Some("run 1: 10'-0\"".into());
    reply.unused = vec![Typed::new("wibble")];
    reply.choices = vec!["a".into(), "b".into()];
    let long = "word ".repeat(60);
    reply.lines = vec![Line::new(Role::Answer, [Span::Fig(fig(inches(120)), Style::Tape), Span::Phrase(long.clone())])];
    reply.values.posts = vec![PostFig {
        run: RunId(2),
        stretch: "-in-left".to_owned(),
        shared: Some(RunId(1)),
        at: fig(part(7, 4)),
        near_face: fig(inches(0)),
        from: "corner",
        kind: "corner",
        why: "an end",
    }];
    reply.values.bays = vec![BayFig {
        run: RunId(2),
        stretch: String::new(),
        clear: fig(inches(54)),
        centre: None,
        from: "corner",
        to: "wall",
        gate: false,
    }];
    reply.values.clear_max = Some(fig(part(137, 2)));
    reply.values.left = Some(fig(inches(3)));
    reply.values.more = vec![("stick", fig(inches(96))), ("left", fig(inches(99)))];
    reply.values.ends = vec![End::House];
    reply.findings = vec![Finding {
        rule: "post-spacing",
        level: Level::Check,
        spans: vec![Span::Fig(fig(inches(72)), Style::Tape)],
        source: "S",
    }];
    let got = reply_json("x", &reply, &Job::default());
    assert_eq!((&got["status"], &got["readback"]), (&json!("told"), &json!("run 1: 10'-0\"")));
    assert_eq!((&got["unused"], &got["choices"]), (&json!(["wibble"]), &json!(["a", "b"])));
    assert!(got["text"].as_str().is_some_and(|t| t.contains(long.trim_end())), "the text is not wrapped");
    let len = |i: &str, t: &str| json!({"in": i, "text": t});
    assert_eq!(
        got["values"],
        json!({
            "left": len("3", "3\""),
            "clear_max": len("68.5", "5'-8 1/2\""),
            "posts": [{"run": 2, "at": len("1.75", "1 3/4\""), "from": "corner", "kind": "corner", "why": "an end",
                       "near_face": len("0", "0\""), "shared_with": 1, "stretch": "2-in-left"}],
            "bays": [{"run": 2, "clear": len("54", "4'-6\""), "centre": null, "from": "corner", "to": "wall", "gate": false}],
            "ends": ["house"],
            "stick": len("96", "8'-0\""),
        })
    );
    assert_eq!(got["findings"], json!([{"rule": "post-spacing", "level": "check", "text": "6'-0\"", "source": "S"}]));
}

#[test]
fn a_job_gives_its_runs_gates_stairs_and_notes() {
    let gate = |at, width| Some(Some(Gate::new(at, width)));
    let told = RunPatch {
        name: Some("front".into()),
        length: Some(Told { length: inches(168), shade: Some(Shade::Shy), about: true }),
        basis: Some(Basis::Clear),
        from: Some(Corner),
        to: Some(StairHead),
        gate: gate(GateAt::To, Some(inches(38))),
        bays: Some(Some(3)),
        ..RunPatch::default()
    };
    let held = RunPatch {
        length: Some(Told::plain(inches(240))),
        gate: gate(GateAt::From, None),
        stairs: Some(StairOpening::new(inches(48), StairAt::FromLeft(inches(36))).into()),
        ..RunPatch::default()
    };
    let facts = [
        Fact::Run(RunId(1), told),
        Fact::Run(RunId(2), held),
        Fact::DeckAlong(inches(192)),
        Fact::StairWidth(inches(42)),
        Fact::Note("inspector thursday at 10".into()),
    ];
    let got = job_json(&job(&facts));
    let len = |i: &str, t: &str| json!({"in": i, "text": t});
    let stairs = json!({"run": 2, "width": len("48", "4'-0\""), "risers": null, "rise": null, "tread": null,
                        "at": "from left", "off": len("36", "3'-0\"")});
    assert_eq!(
        got["runs"],
        json!([
            {"id": "1", "run": 1, "name": "front", "length": len("168", "14'-0\""), "length_told": len("168", "14'-0\""),
             "about": true, "shade": "shy", "basis": "clear", "from": "corner", "to": "stair head", "gate": "at to-end", "stairs": null, "bays": 3},
            {"id": "2-left", "run": 2, "name": null, "length": len("36", "3'-0\""), "length_told": len("240", "20'-0\""),
             "about": false, "shade": null, "basis": "overall", "from": null, "to": "stair head", "gate": "at from-end", "stairs": stairs, "bays": null},
            {"id": "2-right", "run": 2, "name": null, "length": len("156", "13'-0\""), "length_told": len("240", "20'-0\""),
             "about": false, "shade": null, "basis": "overall", "from": "stair head", "to": null, "gate": "at from-end", "stairs": stairs, "bays": null},
        ])
    );
    assert_eq!(
        got["gates"],
        json!([
            {"run": 1, "width": len("38", "3'-2\""), "at": "at stair head", "hinge": null, "latch": null, "swing": null},
            {"run": 2, "width": null, "at": "at from-end", "hinge": null, "latch": null, "swing": null},
        ])
    );
    let alone = json!({"run": null, "width": len("42", "3'-6\""), "risers": null, "rise": null, "tread": null, "at": null, "off": null});
    assert_eq!(got["stairs"], json!([stairs, alone]));
    assert_eq!(got["deck"], json!({"along_house": len("192", "16'-0\""), "out": null}));
    assert_eq!(got["notes"], json!(["inspector thursday at 10"]));
}

#[test]
fn a_post_size_is_one_word_or_one_for_each_role() {
    let four = PostSize::Lumber(Lumber::FOUR_BY_FOUR);
    let six = PostSize::Lumber(Lumber::SIX_BY_SIX);
    let sleeve = PostSize::Width(inches(5));
    let wide = json!({"in": "5", "text": "5\""});
    let post = |role, size| Setting::Post(role, size);
    let rows = [
        (vec![], json!(null), json!(null)),
        (vec![post(PostRole::All, four)], json!("4x4"), json!(null)),
        (vec![post(PostRole::All, sleeve)], json!(null), wide.clone()),
        (
            vec![post(PostRole::Line, four), post(PostRole::Corner, six)],
            json!({"corner": "6x6", "line": "4x4"}),
            json!(null),
        ),
        (vec![post(PostRole::All, four), post(PostRole::Gate, sleeve)], json!({"all": "4x4"}), json!({"gate": wide})),
    ];
    for (settings, size, width) in rows {
        let got = set(&settings);
        assert_eq!((&got["post"], &got["post_width"]), (&size, &width), "{settings:?}");
    }
}

#[test]
fn settings_stand_under_the_contract_s_names() {
    let got = set(&[
        Setting::HeightTop(inches(36)),
        Setting::GapUnder(inches(3)),
        Setting::Baluster(part(3, 2)),
        Setting::GapMax(inches(4)),
        Setting::ClearMax(inches(66)),
        Setting::CentreMax(inches(72)),
        Setting::Grade(inches(40)),
        Setting::Notch(NotchTold::Deep(part(7, 4))),
        Setting::Mount(Mount::OverEdge),
        Setting::Fixing(Fixing::ThroughBolts),
        Setting::HouseEnd(HouseEnd::Bracket),
        Setting::Tape(8),
    ]);
    let inch = |key: &str| got[key]["in"].clone();
    let lengths = ["height_top", "gap_under", "baluster", "gap_max", "clear_max", "oc_max", "grade", "notch"].map(inch);
    assert_eq!(json!(lengths), json!(["36", "3", "1.5", "4", "66", "72", "40", "1.75"]));
    let words = ["mount", "fix", "house_end", "tape", "code"].map(|key| got[key].clone());
    assert_eq!(json!(words), json!(["over edge", "through bolts", "bracket", 8, null]));
    assert_eq!(set(&[Setting::Notch(NotchTold::None)])["notch"], "none");
}

#[test]
fn what_was_not_told_is_null() {
    let untold = set(&[]);
    let keys: Vec<&String> = untold.as_object().expect("an object").keys().collect();
    assert_eq!(
        json!(keys),
        json!([
            "post",
            "post_width",
            "height_top",
            "gap_under",
            "baluster",
            "gap_max",
            "clear_max",
            "oc_max",
            "grade",
            "notch",
            "code",
            "mount",
            "fix",
            "house_end",
            "pool",
            "tape",
            "overhang",
            "skirt",
            "rim",
            "line",
            "hold_back",
            "joists",
            "first_joist",
            "joists_run",
            "blocking",
            "view",
            "species",
            "lumber_grade",
            "service",
            "incised",
            "load_duration",
            "decking",
            "rim_height",
            "nosing",
            "cap",
            "above_rail",
            "angled_posts",
            "bolt",
            "blade",
            "rail_notch",
            "notch_anyway",
            "place",
            "local"
        ])
    );
    assert!(untold.as_object().expect("an object").values().all(Value::is_null));
    assert_eq!(job_json(&Job::default())["deck"], Value::Null);
}

#[test]
fn the_job_s_tape_decides_the_reading() {
    let mut reply = Reply::of(Status::Answered);
    reply.values.result = Some(fig(part(47, 16)));
    let eighths = job(&[Fact::Set(Setting::Tape(8))]);
    assert_eq!(reply_json("", &reply, &eighths)["values"]["result"], json!({"in": "2.9375", "text": "3\""}));
}

/// RFC 8259, section 7: any character may be escaped; a reader gets the same text.
#[test]
fn a_line_comes_back_as_typed_and_stands_on_one_row_of_harmless_text() {
    let typed = "run\u{1b}[2J 10\0 ft\n\u{7f}\u{9b}31m \u{202e}x\u{e0001} ½ \u{1f9b7} \"\\";
    let line = json_line(&reply_json(typed, &Reply::of(Status::Refused), &Job::default()));
    assert!(!line.chars().any(|c| c.is_control() || c == '\u{202e}' || c == '\u{e0001}'), "{line:?}");
    let back: Value = serde_json::from_str(&line).expect("it is JSON");
    assert_eq!(back["line"], typed);
}
