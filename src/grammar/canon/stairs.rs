//! Stair openings and flights.
//!
//! ```text
//! stairs  = "stairs " length " wide " [measure " "] [length " deep into the deck "] at [" (" flight *(", " flight) ")"] | "no stairs"
//! measure = "between the posts" | "decking to decking" | "on the treads" | "in the framing"
//! at      = "in the middle" | length (" from the left" | " from the right")
//! flight  = n " risers" | "rise " inches | "tread " inches | "open on " sides | "newels " where | "lands on " what
//!         | "total rise " length | "total run " length | "nosing " inches | "rail " inches " above the nosings"
//!         | "top tread " head | "closed risers" | "open risers" [" " inches] | "landing " inches " deep"
//!         | "ground " ("falls " | "rises ") inches " in " inches
//! fact    = "stairs: " (length " wide" | "on the " side " side" [" by the " end] | "measured " measure | flight | "none")
//! ```
//! Several stairs of one run are told one after the other, and together are all its stairs.

use super::Read;
use super::clean::clean_name;
use super::length::read_length;
use super::words::{Table, one_of, read_count, words_of, write_count};
use crate::job::{
    End, Fact, Fall, Flight, FlightFact, Head, Lands, Newels, OpenSides, RiserKind, StairAt, StairMeasure,
    StairOpening, StairPlace, Stairs,
};
use crate::measure::{Length, exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_until};
use nom::combinator::{map, map_opt, opt, value, verify};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded, terminated};

const MEASURES: &Table<StairMeasure> = &[
    (StairMeasure::Posts, "between the posts"),
    (StairMeasure::Decking, "decking to decking"),
    (StairMeasure::Treads, "on the treads"),
    (StairMeasure::Framing, "in the framing"),
];

const SIDES: &Table<OpenSides> = &[
    (OpenSides::Both, "both sides"),
    (OpenSides::One, "one side"),
    (OpenSides::Left, "the left"),
    (OpenSides::Right, "the right"),
    (OpenSides::Neither, "neither side"),
];

const NEWELS: &Table<Newels> = &[(Newels::Beside, "beside the stringers"), (Newels::OnTreads, "on the treads")];

const LANDS: &Table<Lands> = &[
    (Lands::Slab, "a slab"),
    (Lands::Ground, "the ground"),
    (Lands::Pavers, "pavers"),
    (Lands::Gravel, "gravel"),
    (Lands::Landing, "a landing"),
];

const HEADS: &Table<Head> = &[(Head::OneDown, "one riser down"), (Head::Flush, "flush with the decking")];

/// The stairs of a run, one item each.
pub(super) fn write_stairs(stairs: &Stairs) -> String {
    if stairs.is_empty() {
        return "no stairs".to_owned();
    }
    stairs.iter().map(write_opening).collect::<Vec<_>>().join(", ")
}

fn write_opening(stairs: &StairOpening) -> String {
    let at = match stairs.at {
        StairAt::Middle => "in the middle".to_owned(),
        StairAt::FromLeft(l) => format!("{} from the left", exact_phrase(l)),
        StairAt::FromRight(l) => format!("{} from the right", exact_phrase(l)),
    };
    let measure = stairs.measure.map_or(String::new(), |m| format!("{} ", words_of(MEASURES, m)));
    let recess = stairs.recess.map_or(String::new(), |deep| format!("{} deep into the deck ", exact_phrase(deep)));
    let flight: Vec<String> = stairs.flight.facts().into_iter().map(write_flight).collect();
    let flight = if flight.is_empty() { String::new() } else { format!(" ({})", flight.join(", ")) };
    format!("stairs {} wide {measure}{recess}{at}{flight}", exact_phrase(stairs.width))
}

fn write_flight(fact: FlightFact) -> String {
    match fact {
        FlightFact::Risers(n) => write_count(n.into(), "riser"),
        FlightFact::Rise(l) => format!("rise {}", exact_inches(l)),
        FlightFact::Tread(l) => format!("tread {}", exact_inches(l)),
        FlightFact::Open(sides) => format!("open on {}", words_of(SIDES, sides)),
        FlightFact::Newels(n) => format!("newels {}", words_of(NEWELS, n)),
        FlightFact::Lands(on) => format!("lands on {}", words_of(LANDS, on)),
        FlightFact::TotalRise(l) => format!("total rise {}", exact_phrase(l)),
        FlightFact::TotalRun(l) => format!("total run {}", exact_phrase(l)),
        FlightFact::Nosing(l) => format!("nosing {}", exact_inches(l)),
        FlightFact::Height(l) => format!("rail {} above the nosings", exact_inches(l)),
        FlightFact::Head(head) => format!("top tread {}", words_of(HEADS, head)),
        FlightFact::Between(RiserKind::Closed) => "closed risers".to_owned(),
        FlightFact::Between(RiserKind::Open) => "open risers".to_owned(),
        FlightFact::Between(RiserKind::Opening(l)) => format!("open risers {}", exact_inches(l)),
        FlightFact::Landing(l) => format!("landing {} deep", exact_inches(l)),
        FlightFact::Fall(Fall { by, over }) if by < Length::ZERO => {
            format!("ground rises {} in {}", exact_inches(-by), exact_inches(over))
        }
        FlightFact::Fall(Fall { by, over }) => format!("ground falls {} in {}", exact_inches(by), exact_inches(over)),
    }
}

/// The phrase of a fact of all stairs; `None` for any other fact.
pub(super) fn write_stair_fact(fact: &Fact) -> Option<String> {
    let said = match fact {
        Fact::StairWidth(l) => format!("{} wide", exact_phrase(*l)),
        Fact::StairMeasure(m) => format!("measured {}", words_of(MEASURES, *m)),
        Fact::Flight(fact) => write_flight(*fact),
        Fact::StairPlace(place) => {
            let by = place.by.map_or(String::new(), |end| format!(" by the {}", end.name()));
            // A side's name is one word of the few there are; anything else reads as no side at all.
            format!("on the {} side{by}", clean_name(&place.side).unwrap_or_default())
        }
        Fact::NoStairs => "none".to_owned(),
        _ => return None,
    };
    Some(format!("stairs: {said}"))
}

/// Reads what [`write_stair_fact`] writes.
pub(super) fn read_stair_fact(i: &str) -> Read<'_, Fact> {
    let said = alt((
        map(terminated(read_length, tag(" wide")), Fact::StairWidth),
        map(preceded(tag("measured "), one_of(MEASURES)), Fact::StairMeasure),
        map(read_place, Fact::StairPlace),
        value(Fact::NoStairs, tag("none")),
        map(read_flight, Fact::Flight),
    ));
    preceded(tag("stairs: "), said).parse(i)
}

fn read_place(i: &str) -> Read<'_, StairPlace> {
    let side = verify(take_until(" side"), |name: &str| clean_name(name).as_deref() == Some(name));
    let ends = End::ALL.map(|end| (end, end.name()));
    let by = opt(preceded(tag(" by the "), one_of(&ends)));
    let parts = (delimited(tag("on the "), side, tag(" side")), by);
    map(parts, |(side, by)| StairPlace { side: side.to_owned(), by }).parse(i)
}

/// One stair opening, or none of them.
pub(super) fn read_stairs(i: &str) -> Read<'_, Option<StairOpening>> {
    alt((value(None, tag("no stairs")), map(read_opening, Some))).parse(i)
}

fn read_opening(i: &str) -> Read<'_, StairOpening> {
    let at = alt((
        value(StairAt::Middle, tag("in the middle")),
        map(terminated(read_length, tag(" from the left")), StairAt::FromLeft),
        map(terminated(read_length, tag(" from the right")), StairAt::FromRight),
    ));
    let width = delimited(tag("stairs "), read_length, tag(" wide "));
    let measure = opt(terminated(one_of(MEASURES), tag(" ")));
    let recess = opt(terminated(read_length, tag(" deep into the deck ")));
    let flight = opt(delimited(tag(" ("), separated_list1(tag(", "), read_flight), tag(")")));
    map((width, measure, recess, at, flight), |(width, measure, recess, at, told)| {
        let mut flight = Flight::default();
        told.into_iter().flatten().for_each(|fact| flight.set(fact));
        StairOpening { width, measure, at, recess, flight }
    })
    .parse(i)
}

fn read_flight(i: &str) -> Read<'_, FlightFact> {
    alt((
        map_opt(read_count("riser"), |n: u32| u16::try_from(n).ok().map(FlightFact::Risers)),
        map(preceded(tag("rise "), read_length), FlightFact::Rise),
        map(preceded(tag("tread "), read_length), FlightFact::Tread),
        map(preceded(tag("open on "), one_of(SIDES)), FlightFact::Open),
        map(preceded(tag("newels "), one_of(NEWELS)), FlightFact::Newels),
        map(preceded(tag("lands on "), one_of(LANDS)), FlightFact::Lands),
        map(preceded(tag("total rise "), read_length), FlightFact::TotalRise),
        map(preceded(tag("total run "), read_length), FlightFact::TotalRun),
        map(preceded(tag("nosing "), read_length), FlightFact::Nosing),
        map(delimited(tag("rail "), read_length, tag(" above the nosings")), FlightFact::Height),
        map(preceded(tag("top tread "), one_of(HEADS)), FlightFact::Head),
        map(read_between, FlightFact::Between),
        map(delimited(tag("landing "), read_length, tag(" deep")), FlightFact::Landing),
        map(read_fall, FlightFact::Fall),
    ))
    .parse(i)
}

fn read_between(i: &str) -> Read<'_, RiserKind> {
    let opening = map(preceded(tag("open risers "), read_length), RiserKind::Opening);
    let bare = alt((value(RiserKind::Closed, tag("closed risers")), value(RiserKind::Open, tag("open risers"))));
    alt((opening, bare)).parse(i)
}

fn read_fall(i: &str) -> Read<'_, Fall> {
    let way = alt((value(true, tag("ground falls ")), value(false, tag("ground rises "))));
    let parts = (way, read_length, tag(" in "), read_length);
    map(parts, |(falls, by, _, over)| Fall { by: if falls { by } else { -by }, over }).parse(i)
}
