//! "where'd you get 58 from": the figure found among those said last, and its chain.

use super::super::Figs;
use super::super::reasons::{chain, cited};
use super::{Before, fig, say};
use crate::figure::{Fig, Value};
use crate::grammar::ask::WhyAsk;
use crate::job::Job;
use crate::layout::lay_out;
use crate::limits::{LIMITS, Limit};
use crate::measure::{Length, Q, Tape};
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// How many figures are listed where the one asked for is not among them.
const MOST: usize = 8;

/// The chain of a figure said last, or the limits that are so much, or what was said instead.
pub fn figure(job: &Job, ask: &WhyAsk, before: &Before<'_>) -> (Reply, Figs) {
    let tape = lay_out(job).tape;
    let named = before.named.iter().find(|(_, f)| is(f, ask, tape)).cloned();
    let found = named.or_else(|| before.said.iter().find(|f| is(f, ask, tape)).map(|f| ("the figure", f.clone())));
    let mut reply = Reply::of(Status::Answered);
    if let Some((name, f)) = found {
        reply.lines.extend(chain(name, &f));
        return (reply, vec![(name, f)]);
    }
    let limits: Vec<&'static Limit> = LIMITS.iter().copied().filter(|l| of_limit(l, ask)).collect();
    if limits.is_empty() {
        return (none(before), Vec::new());
    }
    let lead = match before.named.is_empty() && before.said.is_empty() {
        true => "It is a limit:",
        false => "It is not among the figures I gave last. As a limit it stands here:",
    };
    reply.lines.push(Line::say(Role::Answer, lead));
    for limit in &limits {
        reply.lines.push(Line::new(Role::Detail, cited(limit)));
        let note = (!limit.note.is_empty()).then_some([Span::Say("Mind: "), Span::Say(limit.note), Span::Say(".")]);
        reply.lines.extend(note.map(|spans| Line::new(Role::Detail, spans)));
    }
    (reply, limits.into_iter().map(|l| ("limit", Fig::limit(l))).collect())
}

/// True for a figure that reads so: exactly, or as the tape or the last place has it.
fn is(f: &Fig, ask: &WhyAsk, tape: Tape) -> bool {
    let half = |q: Q, n: Q| n.is_integer() && (q - n) * 2 <= 1.into() && (n - q) * 2 < 1.into();
    match (f.value(), *ask) {
        (Value::Length(l), WhyAsk::Length(asked)) => l == asked || tape.round(l) == asked,
        (Value::Length(l), WhyAsk::Number(n)) => [n, n * 12].iter().any(|q| l.q() == *q || tape.round(l).q() == *q),
        (Value::Quantity(q, _), WhyAsk::Number(n)) => q == n || half(q, n),
        (Value::Count(_) | Value::Number(_) | Value::Money(_), WhyAsk::Number(n)) => f.as_q() == n,
        _ => false,
    }
}

fn of_limit(limit: &Limit, ask: &WhyAsk) -> bool {
    let length = || matches!(limit.unit, "in" | "sixteenths").then(|| limit.length());
    match *ask {
        WhyAsk::Length(asked) => length() == Some(asked),
        WhyAsk::Number(n) => length().is_some_and(|l: Length| l.q() == n && !l.is_zero()),
        _ => false,
    }
}

/// That there is no such figure, and which there are.
fn none(before: &Before<'_>) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    let mut listed: Vec<&Fig> = Vec::new();
    for f in before.named.iter().map(|(_, f)| f).chain(before.said) {
        if listed.len() < MOST && !listed.iter().any(|l| l.value() == f.value()) {
            listed.push(f);
        }
    }
    if listed.is_empty() {
        reply.lines.push(Line::say(Role::Answer, "I have given no figure yet, so it is not mine."));
        return reply;
    }
    let mut spans: Vec<Span> = vec![say("That is not among the figures I gave last. Those were ")];
    for (i, f) in listed.iter().enumerate() {
        spans.extend((i > 0).then_some(say(", ")));
        spans.push(if matches!(f.value(), Value::Length(_)) { Span::Fig((*f).clone(), Style::Full) } else { fig(f) });
    }
    spans.push(say("."));
    reply.lines.push(Line::new(Role::Answer, spans));
    reply
}
