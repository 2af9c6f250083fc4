//! Whose rules hold: sections by edition, values of places, and inches against millimetres.

use pretty_assertions::assert_eq;
use railhand::limits::{Edition, GUARD_HEIGHT, GUARD_TRIGGER, HANDRAIL_GRIP, LEVEL_GAP, Limit, Place, STAIR_GAP};
use railhand::measure::{Length, Tape};
use railhand::reply::shown;
use railhand::session::{Session, step};

/// The IRC's numbering: guards R312.1 until 2021, R321.1 in 2024; handrail grip R311.7.8.5, then
/// R320.6 (public excerpts of the 2018, 2021 and 2024 IRC; checked).
#[test]
fn sections_by_edition() {
    let rows: [(&Limit, Edition, &str); 8] = [
        (&GUARD_TRIGGER, Edition::Irc2018, "IRC R312.1.1 (2018)"),
        (&GUARD_TRIGGER, Edition::Irc2024, "IRC R321.1.1 (2024)"),
        (&GUARD_HEIGHT, Edition::Irc2021, "IRC R312.1.2 (2021)"),
        (&GUARD_HEIGHT, Edition::Irc2024, "IRC R321.1.2 (2024)"),
        (&LEVEL_GAP, Edition::Irc2018, "IRC R312.1.3 (2018)"),
        (&LEVEL_GAP, Edition::Irc2024, "IRC R321.1.3 (2024)"),
        (&STAIR_GAP, Edition::Irc2024, "IRC R321.1.3 exc. 2 (2024)"),
        (&HANDRAIL_GRIP, Edition::Irc2024, "IRC R320.6 (2024)"),
    ];
    for (limit, edition, section) in rows {
        let limit = railhand::limits::find(limit.id).expect("a limit held");
        assert_eq!(edition.source(limit), section, "{} in {}", limit.id, edition.name());
    }
}

/// Values of places, in millimetres or inches, each as published: Canada BCBC 2018 9.8.8.1 and
/// 9.8.8.3, OBC (checked); England Approved Document K (checked); Australia NCC 2022 (checked at
/// second hand); Wisconsin SPS 321.04 (checked); California CRC R312.1.2 (checked at second hand);
/// IBC 1015.3 (checked).
#[test]
fn values_of_places() {
    let mm = |n: i128| Length::new(n * 5, 127).expect("a length");
    let rows: [(&str, &Limit, Length); 11] = [
        ("canada", &GUARD_TRIGGER, mm(600)),
        ("canada", &GUARD_HEIGHT, mm(1070)),
        ("canada", &LEVEL_GAP, mm(100)),
        ("england", &GUARD_HEIGHT, mm(1100)),
        ("england", &LEVEL_GAP, mm(100)),
        ("australia", &GUARD_TRIGGER, mm(1000)),
        ("australia", &GUARD_HEIGHT, mm(1000)),
        ("australia", &LEVEL_GAP, mm(125)),
        ("wisconsin", &GUARD_TRIGGER, Length::inches(24)),
        ("california", &GUARD_HEIGHT, Length::inches(42)),
        ("ibc", &GUARD_HEIGHT, Length::inches(42)),
    ];
    for (id, limit, want) in rows {
        let place = Place::find(id).expect("a place held");
        assert_eq!(place.limit(limit).map(|l| l.length()), Some(want), "{id}: {}", limit.id);
    }
}

fn talk(lines: &[&str]) -> String {
    let mut session = Session::new();
    let mut last = String::new();
    for line in lines {
        let (delta, reply) = step(&session, line);
        session.apply(delta);
        last = shown(&reply, 4_000, Tape::default()).into_iter().map(|s| s.text + "\n").collect();
    }
    last
}

/// 42 in. is 1066.8 mm and fails 1070 by 3.2 mm; 36 in. is 914.4 mm and passes 900; 4 in. is 101.6 mm and
/// fails a 100 mm ball; 43 5/16 in. is 1100.14 mm and passes 1100 (arithmetic at 25.4 mm to the inch).
#[test]
fn inches_against_millimetres() {
    let rows: [(&[&str], &str); 6] = [
        (&["we're in canada", "is 42 high enough for a guard"], "Short by 3/16\""),
        (&["we're in canada", "is 42 1/4 high enough for a guard"], "High enough"),
        (&["we're in england", "is 43 5/16 high enough for a guard"], "High enough"),
        (&["we're in england", "is 43 1/4 high enough for a guard"], "Short by"),
        (&["we're in canada", "is a 4 inch gap ok"], "No: 4\" must be under 3 15/16\""),
        (&["we're in australia", "is a 4 inch gap ok"], "Yes: 4\" is under 4 15/16\""),
    ];
    for (lines, want) in rows {
        let text = talk(lines);
        assert!(text.contains(want), "{lines:?}: {want:?} is not in\n{text}");
    }
}

/// Wisconsin asks for a guard over 24 in. (SPS 321.04(3)(c)1; checked), the IRC over 30 (R312.1.1; checked).
#[test]
fn a_drop_between_two_rules() {
    assert!(talk(&["we're in wisconsin", "do I need a guard at 28 inches"]).starts_with("Yes"));
    assert!(talk(&["we're on the 2021", "do I need a guard at 28 inches"]).starts_with("No"));
}
