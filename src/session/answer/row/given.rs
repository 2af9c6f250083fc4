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
    let figures = ask.given.iter().map(|(row, value)| (row.row().name, Fig::new(*value, Why::Told(row.said()))));
    let mut spans = vec![Span::Say("Taken: ")];
    for (i, (name, fig)) in figures.enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend([Span::Say(name), Span::Say(" "), super::say::fig(&fig)]);
    }
    if !ask.supposed.is_empty() {
        spans.extend((!ask.given.is_empty()).then_some(Span::Say("; ")));
        spans.push(Span::Phrase(canon::write(&Act::Tell(ask.supposed.clone()))));
    }
    spans.push(Span::Say(". What do you want of it?"));
    let mut reply = Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) };
    for (row, value) in &ask.given {
        values::put_row(&mut reply, *row, &Fig::new(*value, Why::Told(row.said())));
    }
    reply
}
