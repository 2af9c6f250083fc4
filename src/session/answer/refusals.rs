//! What cannot be, said with the figures.

use crate::figure::Fig;
use crate::figure::{Value, Why};
use crate::job::{Impossible, RunId, SlotId};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// The refusal for a fact that cannot be taken.
pub fn impossible(i: &Impossible) -> Reply {
    let told = |l: &Length, what| Span::Fig(Fig::told(*l, what), Style::Tape);
    let spans = match i {
        Impossible::OutOfRange(slot, l) => out_of_range(*slot, *l),
        Impossible::GateDoesntFit { needs, run } => vec![
            Span::Say("A gate there reaches "),
            told(needs, "the gate and its distance from the end"),
            Span::Say(" along a run of "),
            told(run, "the run"),
            Span::Say(". Which one is off?"),
        ],
        Impossible::GateTooWide { gate, run } => vec![
            Span::Say("A gate of "),
            told(gate, "the gate"),
            Span::Say(" does not fit in a run of "),
            told(run, "the run"),
            Span::Say(": it is "),
            Span::Fig(wider(*gate, *run), Style::Tape),
            Span::Say(" too wide, and no guard is left. Which one is off?"),
        ],
        Impossible::StairsDontFit { needs, run } => vec![
            Span::Say("The stairs need "),
            told(needs, "the stair opening with its distance from the end"),
            Span::Say(" and the run is "),
            told(run, "the run"),
            Span::Say(". Which one is off?"),
        ],
        Impossible::StairsOverlap => {
            vec![Span::Say("Those stairs reach into each other: guard must stand between two of them. Where is each?")]
        }
        Impossible::OneJamb => {
            vec![Span::Say("A leaf can't be hinged and latched on the same post. Which side are the hinges on?")]
        }
        Impossible::RisersDontFit(_) => vec![Span::Say("A flight off a deck has from 1 to 60 risers.")],
        Impossible::NoSuchRun(_) => vec![Span::Say("There is no run of that number.")],
        Impossible::NoSuchNote(_) => vec![Span::Say("There is no note of that number.")],
        Impossible::BaysDontFit(_) => vec![Span::Say("A run has from 1 to 200 bays.")],
        Impossible::NotLumber => {
            vec![Span::Say("That is not a size of lumber I know. Say the post's outside width instead.")]
        }
        Impossible::NoPrice => vec![Span::Say("A price is more than nothing: say what one costs, or leave it untold.")],
        Impossible::NotSoMany(n) => {
            let told = Fig::count(u64::from(*n), Why::Told("the number told"));
            let says = " is more than I take there, or nothing: from 1 to 40 feet of stock, from 1 to 200 bays.";
            vec![Span::Fig(told, Style::Tape), Span::Say(says)]
        }
        Impossible::NotAPercent => vec![Span::Say("A part of a hundred is from 0 to 100 per cent.")],
        Impossible::NoSuchTurn(d) => {
            let turn = Fig::count(u64::from(*d), Why::Told("the turn"));
            vec![Span::Say("A side can't turn "), Span::Fig(turn, Style::Tape), Span::Say(" degrees: from 1 to 170.")]
        }
        Impossible::SidesCross(a, b) => {
            let run = |id: &RunId| {
                Span::Fig(Fig::new(Value::Count(u64::from(id.0)), Why::Told("the run's number")), Style::Tape)
            };
            vec![
                Span::Say("Runs "),
                run(a),
                Span::Say(" and "),
                run(b),
                Span::Say(" would cross: the outline runs over itself. Which side is off?"),
            ]
        }
        Impossible::RecessTooDeep { recess, deck } => vec![
            Span::Say("Stairs "),
            told(recess, "the recess"),
            Span::Say(" deep into the deck don't fit: the deck is "),
            told(deck, "the deck, in from the opening"),
            Span::Say(" there. Which one is off?"),
        ],
        Impossible::PostOffRun { at, run } => vec![
            Span::Say("A post is told at "),
            told(at, "where the post stands"),
            Span::Say(" and the run is "),
            told(run, "the run"),
            Span::Say(". Which one is off?"),
        ],
        Impossible::NoPostThere { run, at } => vec![
            Span::Say("No post was told at "),
            told(at, "where the post stands"),
            Span::Say(" on run "),
            Span::Fig(Fig::new(Value::Count(u64::from(run.0)), Why::Told("the run's number")), Style::Tape),
            Span::Say(". A post the split put there goes by a bay count, or by telling what posts keep off."),
        ],
        Impossible::NameTaken(_) => vec![Span::Say("Another run goes by that name.")],
    };
    let tail = Line::say(Role::Detail, "Nothing was changed.");
    Reply { lines: vec![Line::new(Role::Answer, spans), tail], ..Reply::of(Status::Refused) }
}

/// By how much a gate passes its run.
fn wider(gate: Length, run: Length) -> Fig {
    let from = vec![("gate", Fig::told(gate, "the gate")), ("run", Fig::told(run, "the run"))];
    Fig::length(gate - run, Why::Formula("gate less run", from))
}

fn out_of_range(slot: SlotId, l: Length) -> Vec<Span> {
    let row = slot.row();
    let range = |n: i64| Span::Fig(Fig::told(Length::inches(n), "the range this is taken in"), Style::Tape);
    let mut spans =
        vec![Span::Fig(Fig::told(l, "as told"), Style::Tape), Span::Say(" can't be a "), Span::Say(row.name)];
    if l.is_positive() {
        spans.extend([Span::Say(": I take "), range(row.sane.0), Span::Say(" to "), range(row.sane.1), Span::Say(".")]);
    } else {
        spans.push(Span::Say(": it must be more than nothing."));
    }
    spans
}
