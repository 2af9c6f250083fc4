//! A row asked for: its figure, one line of working, what was taken or had no part; or what is still needed.

use super::Figs;
use crate::figure::{Fig, Why};
use crate::grammar::ask::RowAsk;
use crate::job::Job;
use crate::provide;
use crate::quantity::{Kind, RowId};
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::{Given, Lacks, Solved};

/// The answer.
pub(super) fn row(job: &Job, ask: &RowAsk) -> (Reply, Figs) {
    let given = Given::of(ask.given.iter().copied());
    match provide::ask(ask.want, &given, job) {
        Ok(solved) => found(ask.want, &given, solved),
        Err(lacks) => (lacking(ask.want, &lacks), Vec::new()),
    }
}

fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Full)
}

fn found(want: RowId, given: &Given, solved: Solved) -> (Reply, Figs) {
    let mut reply = Reply::of(Status::Answered);
    let unit = if want.row().kind == Kind::Angle { " degrees" } else { "" };
    let first = [Span::Say(want.row().name), Span::Say(": "), fig(&solved.fig), Span::Say(unit), Span::Say(".")];
    reply.lines.push(Line::new(Role::Answer, first));
    reply.lines.extend(working(&solved.fig));
    reply.lines.extend(named("Not told, so taken as usual: ", &solved.defaults));
    reply.lines.extend(named("Not used for it: ", &solved.unused(given)));
    reply.values.result = Some(solved.fig.clone());
    let json = want.row().json;
    reply.values.more.extend((!json.is_empty()).then(|| (json, solved.fig.clone())));
    (reply, vec![(want.row().name, solved.fig)])
}

/// "the clear less the balusters ...: bay 58", balusters 9".
fn working(f: &Fig) -> Option<Line> {
    let Why::Formula(says, from) = f.why() else { return None };
    let mut spans = vec![Span::Say("By "), Span::Say(says)];
    for (i, (name, input)) in from.iter().enumerate() {
        spans.extend([Span::Say(if i == 0 { ": " } else { ", " }), Span::Say(name), Span::Say(" ")]);
        spans.push(fig(input));
    }
    spans.push(Span::Say("."));
    Some(Line::new(Role::Detail, spans))
}

fn named(lead: &'static str, rows: &[RowId]) -> Option<Line> {
    let mut spans = vec![Span::Say(lead)];
    spans.extend(list(rows));
    spans.push(Span::Say("."));
    (!rows.is_empty()).then(|| Line::new(Role::Detail, spans))
}

fn list(rows: &[RowId]) -> impl Iterator<Item = Span> + '_ {
    let parted = |i| Span::Say(if i == 0 { "" } else { ", " });
    rows.iter().enumerate().flat_map(move |(i, row)| [parted(i), Span::Say(row.row().name)])
}

/// The one question that would settle it: the shortest set of rows that would do, and the next.
fn lacking(want: RowId, lacks: &Lacks) -> Reply {
    let mut spans = vec![Span::Say("For "), Span::Say(want.said()), Span::Say(" I still need ")];
    for (i, rows) in lacks.0.iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; or ")));
        spans.extend(list(rows));
    }
    if lacks.0.is_empty() {
        spans.push(Span::Say("more than I know how to ask for"));
    }
    spans.push(Span::Say("."));
    Reply { lines: vec![Line::new(Role::Question, spans)], ..Reply::of(Status::Asks) }
}
