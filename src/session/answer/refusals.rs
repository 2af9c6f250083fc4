//! What cannot be, said with the figures.

use crate::figure::Fig;
use crate::job::{Impossible, SlotId};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// The refusal for a fact that cannot be taken.
pub fn impossible(i: &Impossible) -> Reply {
    let told = |l: &Length, what| Span::Fig(Fig::told(*l, what), Style::Tape);
    let spans = match i {
        Impossible::OutOfRange(slot, l) => out_of_range(*slot, *l),
        Impossible::GateTooWide { gate, run } => vec![
            Span::Say("A gate of "),
            told(gate, "the gate"),
            Span::Say(" does not fit in a run of "),
            told(run, "the run"),
            Span::Say(". Which one is off?"),
        ],
        Impossible::StairsDontFit { needs, run } => vec![
            Span::Say("The stairs need "),
            told(needs, "the stair opening with its distance from the end"),
            Span::Say(" and the run is "),
            told(run, "the run"),
            Span::Say(". Which one is off?"),
        ],
        Impossible::NoSuchRun(_) => vec![Span::Say("There is no run of that number.")],
        Impossible::NoSuchNote(_) => vec![Span::Say("There is no note of that number.")],
        Impossible::BaysDontFit(_) => vec![Span::Say("A run has from 1 to 200 bays.")],
        Impossible::NotLumber => {
            vec![Span::Say("That is not a size of lumber I know. Say the post's outside width instead.")]
        }
        Impossible::NameTaken(_) => vec![Span::Say("Another run goes by that name.")],
    };
    let tail = Line::say(Role::Detail, "Nothing was changed.");
    Reply { lines: vec![Line::new(Role::Answer, spans), tail], ..Reply::of(Status::Refused) }
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
