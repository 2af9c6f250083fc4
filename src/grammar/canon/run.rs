//! What is told of one run.
//!
//! ```text
//! run  = "run " n [": " item *(", " item)]
//! item = "called " words
//!      | "off the house" | "off by itself" | "turning " ("right" | "left") [" " n " degrees"]
//!      | told (" out to out" | " clear" | " centre to centre" | " on the edge" | " long") | "measured " basis
//!      | "from " end | "to " end
//!      | gate, as in `gate`
//!      | stairs, as in `stairs`; all the stairs of the run, one item each
//!      | n " bays" | "fewest bays" | choice, as in `choice`
//! ```
//! " long" is a length told without its basis; "measured" a basis told without a length.

use super::Read;
use super::choice::{read_choice, write_choice};
use super::clean::clean_name;
use super::gate::{read_gate, write_gate};
use super::length::{read_told, write_told};
use super::stairs::{read_stairs, write_stairs};
use super::words::{Table, one_of, read_count, whole, words_of, write_count};
use crate::job::{Basis, Choice, End, Fact, Gate, RunId, RunPatch, StairOpening, Told, Turn};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_till1};
use nom::combinator::{map, opt, value, verify};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded};

const BASES: &Table<Basis> = &[
    (Basis::Overall, "out to out"),
    (Basis::Clear, "clear"),
    (Basis::Centre, "centre to centre"),
    (Basis::Edge, "on the edge"),
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
    Choice(Choice),
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
        patch.stairs.as_ref().map(write_stairs),
        patch.bays.map(write_bays),
    ]
    .into_iter()
    .flatten()
    .chain(patch.choices.iter().copied().map(write_choice))
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
        Item::Stairs(stairs) => {
            let all = patch.stairs.get_or_insert_default();
            stairs.into_iter().for_each(|one| all.push(one));
        }
        Item::Bays(bays) => patch.bays = Some(bays),
        Item::Choice(choice) => patch.choices.push(choice),
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
        map(read_gate, Item::Gate),
        map(read_stairs, Item::Stairs),
        map(alt((value(None, tag("fewest bays")), map(read_count("bay"), Some))), Item::Bays),
        map(read_choice, Item::Choice),
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
