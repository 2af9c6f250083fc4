//! Premises taken for what is asked next.

use super::values;
use crate::figure::{Fig, Why};
use crate::grammar::ask::RowAsk;
use crate::grammar::{Act, canon};
use crate::job::Job;
use crate::reply::{Line, Reply, Role, Span, Status};

/// What was taken, named; the figures stand among the values.
pub(in crate::session::answer) fn given(job: &Job, ask: &RowAsk) -> Reply {
    if let Err(why) = job.with_all(&ask.supposed) {
        return super::super::impossible(&why);
    }
    let mut spans = vec![Span::Say("Taken: ")];
    spans.extend(named(ask));
    spans.push(Span::Say(". What do you want of it?"));
    let mut reply = Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) };
    put(ask, &mut reply);
    reply
}

/// What a telling gives beside what the job keeps, named, and its figures among the values.
pub(in crate::session::answer) fn beside_told(ask: &RowAsk, reply: &mut Reply) {
    let mut spans = vec![Span::Say("Not kept in the job, but taken for what you ask next: ")];
    spans.extend(named(ask));
    spans.push(Span::Say("."));
    reply.lines.push(Line::new(Role::Detail, spans));
    put(ask, reply);
}

fn put(ask: &RowAsk, reply: &mut Reply) {
    for (row, value) in &ask.given {
        values::put_row(reply, *row, &Fig::new(*value, Why::Told(row.said())));
    }
}

/// Each premise by its row's name.
fn named(ask: &RowAsk) -> Vec<Span> {
    let mut spans = Vec::new();
    for (i, (row, value)) in ask.given.iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend([
            Span::Say(row.row().name),
            Span::Say(" "),
            super::say::fig(&Fig::new(*value, Why::Told(row.said()))),
        ]);
    }
    if !ask.supposed.is_empty() {
        spans.extend((!ask.given.is_empty()).then_some(Span::Say("; ")));
        spans.push(Span::Phrase(canon::write(&Act::Tell(ask.supposed.clone()))));
    }
    spans
}
