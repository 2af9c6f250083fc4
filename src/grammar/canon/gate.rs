//! A gate.
//!
//! ```text
//! gate = "gate " at [" " length " wide"] [" (" hung *(", " hung) ")"] | "no gate"
//! at   = length (" from the from-end" | " from the to-end") | "at the from-end" | "at the to-end" | "in the middle" | "at the left" | "at the right" | "across the stairs"
//! hung = "one leaf" | "two leaves" | "swings " way | "hinged " jamb | "latched " jamb
//!      | "hinge gap " inches | "latch gap " inches | "self-closing" | "not self-closing" | "leaf " inches
//! ```

use super::Read;
use super::length::read_length;
use super::words::{Table, one_of, words_of};
use crate::job::{Gate, GateAt, Hung, Jamb, Swing};
use crate::measure::{exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt, value};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded, terminated};

const PLACES: &Table<GateAt> = &[
    (GateAt::From, "at the from-end"),
    (GateAt::To, "at the to-end"),
    (GateAt::Middle, "in the middle"),
    (GateAt::Left, "at the left"),
    (GateAt::Right, "at the right"),
    (GateAt::Stairs, "across the stairs"),
];

const SWINGS: &Table<Swing> =
    &[(Swing::OverDeck, "over the deck"), (Swing::Out, "out off the deck"), (Swing::Both, "both ways")];

const JAMBS: &Table<Jamb> = &[
    (Jamb::Left, "on the left"),
    (Jamb::Right, "on the right"),
    (Jamb::House, "on the house side"),
    (Jamb::Away, "away from the house"),
];

const LEAVES: &Table<u8> = &[(1, "one leaf"), (2, "two leaves")];

const CLOSING: &Table<bool> = &[(true, "self-closing"), (false, "not self-closing")];

/// The phrase of a gate, or of none.
pub(super) fn write_gate(gate: Option<Gate>) -> String {
    let Some(gate) = gate else { return "no gate".to_owned() };
    let width = gate.width.map_or(String::new(), |w| format!(" {} wide", exact_phrase(w)));
    let hung = write_hung(gate.hung);
    let hung = if hung.is_empty() { hung } else { format!(" ({hung})") };
    format!("gate {}{width}{hung}", write_at(gate.at))
}

fn write_at(at: GateAt) -> String {
    match at {
        GateAt::OffFrom(by) => format!("{} from the from-end", exact_phrase(by)),
        GateAt::OffTo(by) => format!("{} from the to-end", exact_phrase(by)),
        at => words_of(PLACES, at).to_owned(),
    }
}

fn read_at(i: &str) -> Read<'_, GateAt> {
    let off = |to| terminated(read_length, tag(to));
    alt((one_of(PLACES), map(off(" from the from-end"), GateAt::OffFrom), map(off(" from the to-end"), GateAt::OffTo)))
        .parse(i)
}

fn write_hung(h: Hung) -> String {
    let all = [
        h.leaves.map(|n| words_of(LEAVES, n).to_owned()),
        h.swing.map(|s| format!("swings {}", words_of(SWINGS, s))),
        h.hinge.map(|j| format!("hinged {}", words_of(JAMBS, j))),
        h.latch.map(|j| format!("latched {}", words_of(JAMBS, j))),
        h.hinge_gap.map(|l| format!("hinge gap {}", exact_inches(l))),
        h.latch_gap.map(|l| format!("latch gap {}", exact_inches(l))),
        h.self_closing.map(|c| words_of(CLOSING, c).to_owned()),
        h.leaf.map(|l| format!("leaf {}", exact_inches(l))),
        h.latch_height.map(|l| format!("latch {} up", exact_inches(l))),
    ];
    all.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// Reads what [`write_gate`] writes.
pub(super) fn read_gate(i: &str) -> Read<'_, Option<Gate>> {
    let width = opt(delimited(tag(" "), read_length, tag(" wide")));
    let hung = opt(delimited(tag(" ("), separated_list1(tag(", "), read_hung), tag(")")));
    let gate = map((preceded(tag("gate "), read_at), width, hung), |(at, width, hung)| {
        let hung = hung.into_iter().flatten().fold(Hung::default(), |all, one| one.or(all));
        Gate { at, width, hung }
    });
    alt((value(None, tag("no gate")), map(gate, Some))).parse(i)
}

fn read_hung(i: &str) -> Read<'_, Hung> {
    let none = Hung::default();
    alt((
        map(one_of(LEAVES), move |n| Hung { leaves: Some(n), ..none }),
        map(preceded(tag("swings "), one_of(SWINGS)), move |s| Hung { swing: Some(s), ..none }),
        map(preceded(tag("hinged "), one_of(JAMBS)), move |j| Hung { hinge: Some(j), ..none }),
        map(preceded(tag("latched "), one_of(JAMBS)), move |j| Hung { latch: Some(j), ..none }),
        map(preceded(tag("hinge gap "), read_length), move |l| Hung { hinge_gap: Some(l), ..none }),
        map(preceded(tag("latch gap "), read_length), move |l| Hung { latch_gap: Some(l), ..none }),
        map(one_of(CLOSING), move |c| Hung { self_closing: Some(c), ..none }),
        map(preceded(tag("leaf "), read_length), move |l| Hung { leaf: Some(l), ..none }),
        map(delimited(tag("latch "), read_length, tag(" up")), move |l| Hung { latch_height: Some(l), ..none }),
    ))
    .parse(i)
}
