//! The limits of stairs, handrails and pools against the published figures, each with its section: IRC R311.7 of
//! 2018 and 2021, R318.7 and R320 of 2024; CPSC pool barrier guideline and ISPSC 305. Sections of 2021, and those of
//! 2018 marked so, were not seen.

use railhand::job::{Fact, FlightFact, Job, RiserKind, Setting};
use railhand::layout::lay_out;
use railhand::limits::{Edition, Limit, find};
use railhand::measure::Length;
use railhand::rules;

fn limit(id: &str) -> &'static Limit {
    find(id).unwrap_or_else(|| panic!("no limit {id}"))
}

fn inches(whole: i128, num: i128, den: i128) -> Length {
    Length::new(whole * den + num, den).expect("small")
}

/// What was seen of a section: of 2018 and 2024, or of 2024 alone.
#[derive(Clone, Copy, PartialEq)]
enum Seen {
    Both,
    Newest,
}
use Seen::{Both, Newest};

/// A limit, its figure as whole inches and a fraction, its section of 2018 and 2021, that of 2024, which were seen.
type Row = (&'static str, (i128, i128, i128), &'static str, &'static str, Seen);

const IRC: &[Row] = &[
    ("riser-most", (7, 3, 4), "R311.7.5.1", "R318.7.5.1", Both),
    ("tread-least", (10, 0, 1), "R311.7.5.2", "R318.7.5.2", Both),
    ("nosing-least", (0, 3, 4), "R311.7.5.3", "R318.7.5.3", Newest),
    ("nosing-most", (1, 1, 4), "R311.7.5.3", "R318.7.5.3", Newest),
    ("nosing-free", (11, 0, 1), "R311.7.5.3", "R318.7.5.3", Newest),
    ("nosing-curve", (0, 9, 16), "R311.7.5.3", "R318.7.5.3", Newest),
    ("open-riser", (4, 0, 1), "R311.7.5.1", "R318.7.5.1", Newest),
    ("stair-width", (36, 0, 1), "R311.7.1", "R318.7.1", Both),
    ("stair-width-one-rail", (31, 1, 2), "R311.7.1", "R318.7.1", Both),
    ("stair-width-two-rails", (27, 0, 1), "R311.7.1", "R318.7.1", Both),
    ("stair-headroom", (80, 0, 1), "R311.7.2", "R318.7.2", Both),
    ("flight-rise", (151, 0, 1), "R311.7.3", "R318.7.3", Newest),
    ("landing", (36, 0, 1), "R311.7.6", "R318.7.6", Newest),
    ("handrail-low", (34, 0, 1), "R311.7.8.1", "R320.2", Both),
    ("handrail-high", (38, 0, 1), "R311.7.8.1", "R320.2", Both),
    ("handrail-projection", (4, 1, 2), "R311.7.8.2", "R320.3", Newest),
    ("handrail-space", (1, 1, 2), "R311.7.8.3", "R320.4", Newest),
    ("grip-round-least", (1, 1, 4), "R311.7.8.5", "R320.6", Newest),
    ("grip-round-most", (2, 0, 1), "R311.7.8.5", "R320.6", Newest),
    ("grip-around-least", (4, 0, 1), "R311.7.8.5", "R320.6", Newest),
    ("grip-around-most", (6, 1, 4), "R311.7.8.5", "R320.6", Newest),
    ("grip-across-most", (2, 1, 4), "R311.7.8.5", "R320.6", Newest),
];

#[test]
fn every_length_of_the_irc_with_its_section_in_each_edition() {
    for (id, (whole, num, den), old, new, seen) in IRC {
        let l = limit(id);
        assert_eq!(l.length(), inches(*whole, *num, *den), "{id}");
        let memory = if *seen == Both { "" } else { ", from memory" };
        assert_eq!(Edition::Irc2018.source(l), format!("IRC {old} (2018{memory})"), "{id}");
        assert_eq!(Edition::Irc2021.source(l), format!("IRC {old} (2021, from memory)"), "{id}");
        assert_eq!(Edition::Irc2024.source(l), format!("IRC {new} (2024)"), "{id}");
    }
}

/// CPSC pool barrier guideline and ISPSC 305 (2018), by local texts: a top 48 up, 2 under it over the ground and 4
/// over a deck, 1 3/4 between balusters where the rails' tops are under 45 apart, the latch 54 up.
#[test]
fn every_length_of_a_pool_barrier() {
    let rows = [
        ("pool-top", (48, 0, 1), "ISPSC 305.2.1"),
        ("pool-gap-ground", (2, 0, 1), "ISPSC 305.2.1"),
        ("pool-gap-deck", (4, 0, 1), "ISPSC 305.2.1"),
        ("pool-rails-apart", (45, 0, 1), "ISPSC 305.2.5 (2018)"),
        ("pool-tight-gap", (1, 3, 4), "ISPSC 305.2.5 (2018)"),
        ("pool-latch", (54, 0, 1), "ISPSC 305.3.3"),
    ];
    for (id, (whole, num, den), section) in rows {
        assert_eq!(limit(id).length(), inches(whole, num, den), "{id}");
        assert!(limit(id).source.starts_with(section), "{id}: {}", limit(id).source);
    }
}

/// Treads and landings fall no more than 1 in 48; a landing, and no tread, that must drain 1 in 20 (R311.7.7,
/// R318.7.7, which alone was seen; that the 1 in 20 is not for treads is from memory). A closed riser leans no
/// more than 30 degrees (R318.7.5.1).
#[test]
fn slopes_and_leans() {
    let fall = limit("landing-fall");
    assert_eq!(fall.value, 48);
    let (both, wet) = fall.says.split_once("; ").expect("two rules");
    assert!(both.contains("tread or landing") && both.contains("1 in 48"), "{both}");
    assert!(wet.contains("landing") && !wet.contains("tread") && wet.contains("1 in 20"), "{wet}");
    assert_eq!(limit("riser-lean").value, 30);
}

fn finds(facts: &[FlightFact], rule: &str) -> bool {
    let facts: Vec<Fact> = facts.iter().map(|f| Fact::Flight(*f)).collect();
    let job = Job::default().with_all(&facts).expect("a possible job");
    rules::check(&job, &lay_out(&job)).iter().any(|f| f.rule == rule)
}

/// A rule, the fact it looks at, what keeps to it and what does not.
type Edge = (&'static str, fn(Length) -> FlightFact, Length, Length);

/// At the published figure nothing is found, a sixteenth past it something is: risers R311.7.5.1 (7 3/4), treads
/// R311.7.5.2 (10), landings R311.7.6 (36), stair guards R312.1.2 exc. 1 (34), handrails R311.7.8.1 (38), nosings
/// R311.7.5.3 (3/4 to 1 1/4 where a tread is under 11), handrails from four risers R311.7.8. Five risers of 7 1/2
/// and treads of 10 keep to all of them.
#[test]
fn a_sixteenth_past_the_published_figure_is_found() {
    let flight = |more: &[FlightFact]| {
        let plain = [FlightFact::Risers(5), FlightFact::Rise(inches(7, 1, 2)), FlightFact::Tread(inches(10, 0, 1))];
        plain.into_iter().chain(more.iter().copied()).collect::<Vec<_>>()
    };
    let rows: [Edge; 7] = [
        ("riser-too-high", FlightFact::Rise, inches(7, 3, 4), inches(7, 13, 16)),
        ("tread-too-shallow", FlightFact::Tread, inches(10, 0, 1), inches(9, 15, 16)),
        ("landing-short", FlightFact::Landing, inches(36, 0, 1), inches(35, 15, 16)),
        ("stair-rail-too-low", FlightFact::Height, inches(34, 0, 1), inches(33, 15, 16)),
        ("stair-rail-over-handrail", FlightFact::Height, inches(38, 0, 1), inches(38, 1, 16)),
        ("nosing-out-of-range", FlightFact::Nosing, inches(0, 3, 4), inches(0, 11, 16)),
        ("nosing-out-of-range", FlightFact::Nosing, inches(1, 1, 4), inches(1, 5, 16)),
    ];
    for (rule, fact, keeps, fails) in rows {
        assert!(!finds(&flight(&[fact(keeps)]), rule), "{rule} at {keeps:?}");
        assert!(finds(&flight(&[fact(fails)]), rule), "{rule} at {fails:?}");
    }
    assert!(!finds(&flight(&[FlightFact::Risers(3)]), "handrail-needed"));
    assert!(finds(&flight(&[FlightFact::Risers(4)]), "handrail-needed"));
    // An 11 in. tread needs no nosing.
    assert!(!finds(
        &flight(&[FlightFact::Tread(inches(11, 0, 1)), FlightFact::Nosing(inches(0, 1, 2))]),
        "nosing-out-of-range"
    ));
}

/// R311.7.5.1: an open riser more than 30 in. up stops a 4 in. ball; of five risers of 7 3/4 one is 31 up.
/// Over a drop of 30 no guard is asked for (R312.1.1), over 30 1/16 one is.
#[test]
fn thirty_inches_up() {
    let open = |by| FlightFact::Between(RiserKind::Opening(by));
    let five = [FlightFact::Risers(5), FlightFact::Rise(inches(7, 3, 4)), FlightFact::Tread(inches(10, 0, 1))];
    let with = |by| five.into_iter().chain([open(by)]).collect::<Vec<_>>();
    assert!(finds(&with(inches(4, 0, 1)), "open-risers"));
    assert!(!finds(&with(inches(3, 15, 16)), "open-risers"));
    for (drop, asks) in [(inches(30, 0, 1), false), (inches(30, 1, 16), true)] {
        let job = Job::default().with(&Fact::Set(Setting::Grade(drop))).expect("a possible job");
        let found = rules::check(&job, &lay_out(&job));
        assert_eq!(found.iter().any(|f| f.rule == "guard-required"), asks, "{drop:?}");
    }
}
