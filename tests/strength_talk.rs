//! Whole conversations about span and strength: what is answered, and that the job stays.
//!
//! Figures come from the checks under `tests/published/strength`; the wording is our own.

#[path = "common/talk.rs"]
mod talk;

use railhand::measure::Tape;
use railhand::reply::{Status, plain};
use railhand::session::{Session, step};
use serde_json::Value;

/// Steps the lines; the last reply as JSON, its plain text, and the session after.
fn talk(lines: &[&str]) -> (Value, String, Session) {
    let last = talk::talk(lines);
    (last.json(), last.text(), last.session)
}

fn number(v: &Value) -> f64 {
    v.as_f64().or_else(|| v.as_str().and_then(|s| s.parse().ok())).expect("a number")
}

fn row<'a>(json: &'a Value, what: &str) -> &'a Value {
    let rows = json["values"]["strength"].as_array().expect("rows of strength");
    rows.iter().find(|r| r["what"] == what).unwrap_or_else(|| panic!("no row {what}: {rows:?}"))
}

const QUESTIONS: [&str; 12] = [
    "could I get away with 8 foot?",
    "how bouncy is it at 8",
    "will a 2x4 on the flat sag over 6 foot",
    "would a 6x6 let me go 8",
    "how much stiffer is it with a 2x6 flat on top of the 2x4",
    "how strong is what's left of the post",
    "is a 4x4 enough at 42",
    "can I stretch a bay to 6 foot 3",
    "what would happen at 10 foot with nothing in the middle",
    "how far can a 2x4 on edge span",
    "is the hold down enough at 42",
    "what's the longest bay I can run with a 2x4 flat",
];

/// No question changes the job, begins with a yes, or calls anything safe; each says "by
/// arithmetic", whom to ask, and what the wood was taken as or where its figure is from.
#[test]
fn a_question_changes_nothing_and_promises_nothing() {
    let run = "run 12 ft between house and corner";
    let (before, ..) = talk(&[run]);
    for question in QUESTIONS {
        let (json, text, _) = talk(&[run, question]);
        assert_eq!(json["status"], "answered", "{question}");
        assert_eq!(json["job"], before["job"], "{question}");
        let lower = text.to_lowercase();
        assert!(!lower.starts_with("yes") && !lower.contains("safe"), "{question}: {text}");
        assert!(lower.contains("by arithmetic") && lower.contains("building department"), "{question}: {text}");
    }
}

/// W3 of a 2x4 laid flat, 8 ft: P L / 4 over S is 3,657 psi (Wood Handbook Table 9-1); in southern
/// pine, wet, Fb' is 1,210 (NDS Supplement 4B) and E 1,260,000, so it sags 2.675 / 0.9.
#[test]
fn the_rows_of_a_bay() {
    let (json, ..) = talk(&["it's southern pine", "how bouncy is it at 8"]);
    let sag = row(&json, "rail sag, down");
    assert!((number(&sag["demand"]) - 2.675 / 0.9).abs() < 5e-4 && number(&sag["capacity"]) == 1.0);
    assert_eq!((&sag["unit"], &sag["source"]), (&Value::from("in"), &Value::from("ASTM E985")));
    let bending = row(&json, "rail bending, down");
    assert!((number(&bending["demand"]) - 3657.14).abs() < 0.01 && number(&bending["capacity"]) == 1210.0);
    assert!((number(&bending["ratio"]) - 3657.142857 / 1210.0).abs() < 1e-5);
    assert!(bending["source"].as_str().is_some_and(|s| s.starts_with("NDS Supplement Table 4B")));
    let short = row(&json, "rail bending, down, load of ten minutes");
    assert_eq!(number(&short["capacity"]), 1936.0);
}

/// 200 lb at 42 in. on a 4x4: 1,175.5 psi; hem-fir No.2 wet and incised allows 867 (NDS), southern
/// pine 1,100. The upper bolt is pulled 2,000 lb against 1,800 (AWC DCA 6): a check.
#[test]
fn a_post_at_42() {
    let (json, text, _) = talk(&["is a 4x4 enough at 42"]);
    let deck = row(&json, "post bending at the deck");
    assert!((number(&deck["demand"]) - 1175.51).abs() < 0.01 && number(&deck["capacity"]) == 867.0);
    assert!(text.contains("hem-fir") && text.contains("southern pine"), "both woods are shown: {text}");
    let pull = row(&json, "pull on the upper bolt");
    assert_eq!((number(&pull["demand"]), number(&pull["capacity"])), (2000.0, 1800.0));
    let findings = json["findings"].as_array().expect("findings");
    assert!(findings.iter().any(|f| f["rule"] == "hold-down-over-published" && f["level"] == "check"));
    let (told, ..) = talk(&["it's southern pine", "is a 4x4 enough at 42"]);
    assert_eq!(number(&row(&told, "post bending at the deck")["capacity"]), 1100.0);
}

/// What was told of the wood, the rail and the notch is used, kept, and read back.
#[test]
fn what_is_told_counts() {
    let (json, text, session) = talk(&[
        "lumber stays dry",
        "doug fir",
        "it's doug fir",
        "top rail is a 2x4 on edge",
        "put a 2x6 cap on it",
        "how bouncy is it at 6",
    ]);
    assert!(text.contains("2x4 on edge under a 2x6 cap") && text.contains("douglas fir-larch no. 2, dry"), "{text}");
    // 0.161 in. at E 1,400,000 (structure of the two pieces' second moments); here 1,600,000 x 0.95.
    let sag = number(&row(&json, "rail sag, down")["demand"]);
    assert!((sag - 0.16086 * 1.4 / (1.6 * 0.95)).abs() < 5e-4, "{sag}");
    let settings = &json["job"]["settings"];
    assert_eq!((&settings["species"], &settings["service"]), (&"douglas fir-larch".into(), &"dry".into()));
    assert_eq!(json["job"]["order"]["top_rail"], serde_json::json!({"size": "2x4", "lies": "on edge"}));
    let facts = railhand::job::retold(session.job());
    let again = railhand::job::Job::default().with_all(&facts).expect("it was told");
    assert_eq!(again.settings.timber, session.job().settings.timber);
    let (notched, ..) = talk(&["notch 1 1/2", "how strong is what's left of the post"]);
    assert_eq!(notched["values"]["left_thick"]["in"], "2");
    // 7,200 over 3.5 x 2^2 / 6 (2 in. left): 3,085.7 psi.
    assert!((number(&row(&notched, "leg at a straight edge")["demand"]) - 3085.71).abs() < 0.01);
}

/// A stretched bay is a what-if: "keep it" keeps it, "leave it" does not; the next builds on it.
#[test]
fn a_stretched_bay_is_kept_only_when_told() {
    let run = "run 12 ft between house and corner";
    let (kept, ..) = talk(&[run, "can I stretch a bay to 6 foot 3", "keep it"]);
    assert_eq!(kept["job"]["settings"]["clear_max"]["in"], "75");
    let (left, ..) = talk(&[run, "can I stretch a bay to 6 foot 3", "leave it"]);
    assert_eq!(left["job"]["settings"]["clear_max"], Value::Null);
    let (built, ..) = talk(&[run, "would a 6x6 let me go 7", "what if no gate", "keep it"]);
    assert!(built["job"]["settings"]["clear_max"].is_null() || built["job"]["settings"]["post"] == "6x6");
    let (stacked, ..) = talk(&[run, "what if 6x6 posts", "is the post strong enough"]);
    assert!(number(&row(&stacked, "post bending at the deck")["demand"]) < 300.0, "the supposed 6x6 is judged");
}

/// A what-if of the layout puts the rail's sag beside what stands.
#[test]
fn a_what_if_shows_the_rail_beside() {
    let (_, text, _) = talk(&["run 12 ft between house and corner", "what if 1 bay"]);
    assert!(text.contains("The rail, by arithmetic") && text.contains("as it stands, at 5'-6 3/4\""), "{text}");
}

/// Bad input: a clear answer, the job as it was.
#[test]
fn what_cannot_be_judged_says_so() {
    let rows = [
        ("will a 40 foot bay hold", "1'-0\" to 20'-0\""),
        ("will a zero foot span sag", "1'-0\" to 20'-0\""),
        ("is an ipe 4x4 strong enough", "no design values"),
        ("is this deck rail safe", "call nothing safe"),
        ("will a 5/4x6 rail sag at 6 ft", "thinner than the tables begin"),
        ("is a 4x6 strong enough at 36", "square posts only"),
        ("will a 2x4 hold at 18 ft", "more than a tenth of the span"),
    ];
    for (line, says) in rows {
        let (json, text, session) = talk(&["run 12 ft between house and corner", line]);
        assert_eq!(json["status"], "refused", "{line}: {text}");
        assert!(text.contains(says), "{line}: {text}");
        assert_eq!(session.job().runs.len(), 1);
        assert_eq!(json["job"]["settings"]["clear_max"], Value::Null, "{line}");
    }
    let (json, ..) = talk(&["load duration: impact", "how bouncy is it at 6"]);
    assert_eq!(json["status"], "refused", "a blow's factor is barred for treated wood");
}

/// "why?" gives the chain down to the tables, with their sources.
#[test]
fn why_reaches_the_tables() {
    let (_, text, _) = talk(&["is a 4x4 enough at 42", "why?"]);
    for part in ["200 lb", "42\"", "7.146 in^3", "Fb 850 psi", "NDS Supplement Table 4A", "NDS Table 4.3.8", "0.85"] {
        assert!(text.contains(part), "no {part} in {text}");
    }
}

/// Words nobody listed are not passed over beside the figures.
#[test]
fn an_unknown_word_is_asked_about() {
    for line in
        ["could I get away with blorft 8 foot?", "is a 4x4 not enough at 42", "will a 2x4 2x6 2x8 sag over 6 foot"]
    {
        let (delta, reply) = step(&Session::new(), line);
        let mut session = Session::new();
        session.apply(delta);
        assert!(
            matches!(reply.status, Status::Asks | Status::Refused),
            "{line}: {}",
            plain(&reply, 80, Tape::SIXTEENTHS)
        );
    }
}
