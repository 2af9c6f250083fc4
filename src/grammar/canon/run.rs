//! What is told of one run.
//!
//! ```text
//! run  = "run " n [": " item *(", " item)]
//! item = "called " words
//!      | "off the house" | "off by itself" | "turning " ("right" | "left") [" " n " degrees"]
//!      | told (" out to out" | " clear" | " centre to centre" | " on the edge" | " long") | "measured " basis
//!      | "from " end | "to " end
//!      | "gate " ("at the from-end" | "at the to-end" | "in the middle") [" " length " wide"] | "no gate"
//!      | "stairs " length " wide " [length " deep into the deck "] ("in the middle" | length " from the left" | length " from the right") | "no stairs"
//!      | n " bays" | "fewest bays"
//! ```
//! " long" is a length told without its basis; "measured" a basis told without a length.

use super::Read;
use super::clean::clean_name;
use super::length::{read_length, read_told, write_told};
use super::words::{Table, one_of, read_count, whole, words_of, write_count};
use crate::job::{Basis, End, Fact, Gate, GateAt, RunId, RunPatch, StairAt, StairOpening, Told, Turn};
use crate::measure::exact_phrase;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_till1};
use nom::combinator::{map, opt, value, verify};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded, terminated};

const BASES: &Table<Basis> = &[
    (Basis::Overall, "out to out"),
    (Basis::Clear, "clear"),
    (Basis::Centre, "centre to centre"),
    (Basis::Edge, "on the edge"),
];

const GATES: &Table<GateAt> = &[
    (GateAt::From, "at the from-end"),
    (GateAt::To, "at the to-end"),
    (GateAt::Middle, "in the middle"),
    (GateAt::Left, "at the left"),
    (GateAt::Right, "at the right"),
    (GateAt::Stairs, "across the stairs"),
];

/// One item of a run, as read.
#[derive(Clone)]
enum Item {
    Name(String),
    Turn(Turn),
    Length(Told, Option<Basis>),
    Basis(Basis),
    From(End),
    To(End),
    Gate(Option<Gate>),
    Stairs(Option<StairOpening>),
    Bays(Option<u16>),
}

/// `run 2: 10'-0" clear, from corner`; `run 2` alone when nothing is set.
pub(super) fn write_run(id: RunId, patch: &RunPatch) -> String {
    let items: Vec<String> = [
        patch.name.as_deref().and_then(clean_name).map(|name| format!("called {name}")),
        patch.turn.map(write_turn),
        write_measure(patch.length, patch.basis),
        patch.from.map(|end| format!("from {}", end.name())),
        patch.to.map(|end| format!("to {}", end.name())),
        patch.gate.map(write_gate),
        patch.stairs.map(write_stairs),
        patch.bays.map(write_bays),
    ]
    .into_iter()
    .flatten()
    .collect();
    match items.is_empty() {
        true => format!("run {}", id.0),
        false => format!("run {}: {}", id.0, items.join(", ")),
    }
}

fn write_measure(length: Option<Told>, basis: Option<Basis>) -> Option<String> {
    match (length.map(write_told), basis.map(|b| words_of(BASES, b))) {
        (Some(told), Some(basis)) => Some(format!("{told} {basis}")),
        (Some(told), None) => Some(format!("{told} long")),
        (None, Some(basis)) => Some(format!("measured {basis}")),
        (None, None) => None,
    }
}

/// A side of the outline: "off the house" or "off by itself" for the first, then the turn it begins with.
fn write_turn(turn: Turn) -> String {
    match turn {
        Turn::Start => "off the house".to_owned(),
        Turn::Free => "off by itself".to_owned(),
        Turn::Right(90) => "turning right".to_owned(),
        Turn::Left(90) => "turning left".to_owned(),
        Turn::Right(degrees) => format!("turning right {degrees} degrees"),
        Turn::Left(degrees) => format!("turning left {degrees} degrees"),
    }
}

fn read_turn(i: &str) -> Read<'_, Turn> {
    let degrees = || map(opt(delimited(tag(" "), whole, tag(" degrees"))), |d| d.unwrap_or(90));
    alt((
        value(Turn::Start, tag("off the house")),
        value(Turn::Free, tag("off by itself")),
        map(preceded(tag("turning right"), degrees()), Turn::Right),
        map(preceded(tag("turning left"), degrees()), Turn::Left),
    ))
    .parse(i)
}

fn write_gate(gate: Option<Gate>) -> String {
    let Some(gate) = gate else { return "no gate".to_owned() };
    let width = gate.width.map_or(String::new(), |w| format!(" {} wide", exact_phrase(w)));
    format!("gate {}{width}", words_of(GATES, gate.at))
}

fn write_stairs(stairs: Option<StairOpening>) -> String {
    let Some(stairs) = stairs else { return "no stairs".to_owned() };
    let at = match stairs.at {
        StairAt::Middle => "in the middle".to_owned(),
        StairAt::FromLeft(l) => format!("{} from the left", exact_phrase(l)),
        StairAt::FromRight(l) => format!("{} from the right", exact_phrase(l)),
    };
    let recess = stairs.recess.map_or(String::new(), |deep| format!("{} deep into the deck ", exact_phrase(deep)));
    format!("stairs {} wide {recess}{at}", exact_phrase(stairs.width))
}

fn write_bays(bays: Option<u16>) -> String {
    bays.map_or("fewest bays".to_owned(), |n| write_count(n.into(), "bay"))
}

/// Reads what [`write_run`] writes.
pub(super) fn read_run(i: &str) -> Read<'_, Fact> {
    let id = map(preceded(tag("run "), whole), RunId);
    let items = opt(preceded(tag(": "), separated_list1(tag(", "), read_item)));
    map((id, items), |(id, items)| {
        let patch = items.unwrap_or_default().into_iter().fold(RunPatch::default(), with_item);
        Fact::Run(id, patch)
    })
    .parse(i)
}

fn with_item(mut patch: RunPatch, item: Item) -> RunPatch {
    match item {
        Item::Name(name) => patch.name = Some(name),
        Item::Turn(turn) => patch.turn = Some(turn),
        Item::Length(told, basis) => {
            patch.length = Some(told);
            patch.basis = basis;
        }
        Item::Basis(basis) => patch.basis = Some(basis),
        Item::From(end) => patch.from = Some(end),
        Item::To(end) => patch.to = Some(end),
        Item::Gate(gate) => patch.gate = Some(gate),
        Item::Stairs(stairs) => patch.stairs = Some(stairs),
        Item::Bays(bays) => patch.bays = Some(bays),
    }
    patch
}

fn read_item(i: &str) -> Read<'_, Item> {
    let told = alt((value(None, tag(" long")), map(preceded(tag(" "), one_of(BASES)), Some)));
    alt((
        map(read_name, Item::Name),
        map(read_turn, Item::Turn),
        map((read_told, told), |(told, basis)| Item::Length(told, basis)),
        map(preceded(tag("measured "), one_of(BASES)), Item::Basis),
        map(preceded(tag("from "), read_end), Item::From),
        map(preceded(tag("to "), read_end), Item::To),
        map(alt((value(None, tag("no gate")), map(read_gate, Some))), Item::Gate),
        map(alt((value(None, tag("no stairs")), map(read_stairs, Some))), Item::Stairs),
        map(alt((value(None, tag("fewest bays")), map(read_count("bay"), Some))), Item::Bays),
    ))
    .parse(i)
}

fn read_name(i: &str) -> Read<'_, String> {
    let words = take_till1(|c| matches!(c, ',' | ';'));
    let name = verify(words, |words: &str| clean_name(words).as_deref() == Some(words));
    map(preceded(tag("called "), name), str::to_owned).parse(i)
}

fn read_end(i: &str) -> Read<'_, End> {
    one_of(&End::ALL.map(|end| (end, end.name())))(i)
}

fn read_gate(i: &str) -> Read<'_, Gate> {
    let width = opt(delimited(tag(" "), read_length, tag(" wide")));
    map((preceded(tag("gate "), one_of(GATES)), width), |(at, width)| Gate { at, width }).parse(i)
}

fn read_stairs(i: &str) -> Read<'_, StairOpening> {
    let at = alt((
        value(StairAt::Middle, tag("in the middle")),
        map(terminated(read_length, tag(" from the left")), StairAt::FromLeft),
        map(terminated(read_length, tag(" from the right")), StairAt::FromRight),
    ));
    let recess = opt(terminated(read_length, tag(" deep into the deck ")));
    let parts = (delimited(tag("stairs "), read_length, tag(" wide ")), recess, at);
    map(parts, |(width, recess, at)| StairOpening { width, at, recess }).parse(i)
}
