//! "why?" and "says who": the chain behind the last figures.

use super::{Figs, reported};
use crate::figure::{Fig, Why};
use crate::grammar::{Act, Query, canon};
use crate::job::Job;
use crate::layout::Focus;
use crate::limits::{Limit, Trust};
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// How deep a chain is followed: told facts are never deeper.
const DEEPEST: usize = 5;
/// How many figures are explained at once.
const MOST: usize = 4;

/// Why the last figures are what they are; the layout's, where none were given yet.
pub fn why(job: &Job, last: &Figs, width: usize) -> (Reply, Figs) {
    let mut figs = last.clone();
    if figs.is_empty() {
        let (reply, from_layout) = reported(job, None, Focus::Bays, width);
        if from_layout.is_empty() {
            return (reply, Vec::new());
        }
        figs = from_layout;
    }
    let mut reply = Reply::of(Status::Answered);
    let mut said = Vec::new();
    for (name, fig) in figs.iter().take(MOST) {
        explain(name, fig, 0, &mut reply.lines, &mut said);
    }
    reply.lines.push(Line::say(Role::Detail, "Rounded once, last, to the tape; an exact tie goes up."));
    reply.readback = Some(canon::write(&Act::Query(Query::Why)));
    (reply, figs)
}

/// Where the limits behind the last figures are published.
pub fn sources(last: &Figs) -> (Reply, Figs) {
    let mut limits: Vec<&'static Limit> = Vec::new();
    for (_, fig) in last {
        limits_of(fig, 0, &mut limits);
    }
    let mut reply = Reply::of(Status::Answered);
    if limits.is_empty() {
        reply.lines.push(Line::say(Role::Answer, "Nothing published: only what you told me, and arithmetic."));
    }
    for limit in limits {
        reply.lines.push(Line::new(Role::Answer, cited(limit)));
    }
    reply.readback = Some(canon::write(&Act::Query(Query::Sources)));
    (reply, last.clone())
}

fn cited(limit: &'static Limit) -> Vec<Span> {
    let trust = if limit.trust == Trust::Memory { " (from memory)" } else { "" };
    vec![Span::Say(limit.says), Span::Say(": "), Span::Say(limit.source), Span::Say(trust), Span::Say(".")]
}

fn limits_of(fig: &Fig, depth: usize, out: &mut Vec<&'static Limit>) {
    if depth > DEEPEST {
        return;
    }
    match fig.why() {
        Why::Default(limit) | Why::Limit(limit) => {
            if !out.iter().any(|l| l.id == limit.id) {
                out.push(limit);
            }
        }
        Why::Formula(_, inputs) => inputs.iter().for_each(|(_, f)| limits_of(f, depth + 1, out)),
        Why::Told(_) | Why::Table(..) => {}
    }
}

fn explain(name: &'static str, fig: &Fig, depth: usize, lines: &mut Vec<Line>, said: &mut Vec<(&'static str, Fig)>) {
    if depth > DEEPEST || said.iter().any(|(n, f)| *n == name && f == fig) {
        return;
    }
    said.push((name, fig.clone()));
    let mut spans = vec![
        Span::Say(INDENT[depth.min(DEEPEST)]),
        Span::Say(name),
        Span::Say(" "),
        Span::Fig(fig.clone(), Style::InchesExact),
        Span::Say(": "),
    ];
    match fig.why() {
        Why::Told(what) => spans.extend([Span::Say("told, "), Span::Say(what)]),
        Why::Default(limit) => spans.extend([Span::Say("not told, so the default: ")].into_iter().chain(cited(limit))),
        Why::Limit(limit) => spans.extend([Span::Say("a limit: ")].into_iter().chain(cited(limit))),
        Why::Table(what, source) => spans.extend([Span::Say(what), Span::Say(", "), Span::Say(source)]),
        Why::Formula(says, _) => spans.push(Span::Say(says)),
    }
    lines.push(Line::new(if depth == 0 { Role::Answer } else { Role::Detail }, spans));
    if let Why::Formula(_, inputs) = fig.why() {
        for (name, input) in inputs {
            explain(name, input, depth + 1, lines, said);
        }
    }
}

const INDENT: [&str; DEEPEST + 1] = ["", "from ", "  from ", "    from ", "      from ", "        from "];
