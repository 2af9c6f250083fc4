//! A "why" with words of its own: each answers its own question, not the layout's.

mod apart;
mod figure;
mod stands;

use super::reasons::chain;
use super::{Figs, takeoff};
use crate::figure::Fig;
use crate::grammar::ask::{Counted, TakeoffAsk, WhyAsk};
use crate::grammar::{Act, Query, canon};
use crate::job::Job;
use crate::layout::{Focus, Layout, lay_out};
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// What was said before the question: the figures of the last answer.
pub struct Before<'a> {
    /// Those with a name of their own.
    pub named: &'a Figs,
    /// Every one that was said.
    pub said: &'a [Fig],
}

/// The reason asked for, and the figures it rests on.
pub fn why_of(job: &Job, ask: &WhyAsk, before: &Before<'_>, width: usize) -> (Reply, Figs) {
    let (mut reply, figs) = match *ask {
        WhyAsk::NotBay(length, between) => apart::not_bay(job, length, between),
        WhyAsk::NotBays(run, n) => stands::not_bays(job, run, n),
        WhyAsk::PostAt(run, at) => stands::post_at(job, run, at),
        WhyAsk::LinePosts(run) => stands::line_posts(job, run),
        WhyAsk::Length(_) | WhyAsk::Number(_) => figure::figure(job, ask, before),
        WhyAsk::Counted(what, n) => counted(job, what, n, before, width),
    };
    reply.readback = Some(canon::write(&Act::Query(Query::WhyOf(*ask))));
    (reply, figs)
}

/// Why so many: the count last given, else the job's own; another than that is put right.
fn counted(job: &Job, what: Counted, n: u16, before: &Before<'_>, width: usize) -> (Reply, Figs) {
    let name = match what {
        Counted::Posts => "posts",
        Counted::Bays => "bays",
        Counted::Balusters => "balusters",
    };
    let find = |figs: &Figs| figs.iter().find(|(n, _)| *n == name).map(|(_, f)| f.clone());
    let fresh = || match what {
        Counted::Balusters => find(&takeoff::takeoff(job, &TakeoffAsk::Balusters(None)).1),
        Counted::Posts | Counted::Bays => find(&super::reported(job, None, Focus::Bays, width).1),
    };
    let Some(count) = find(before.named).or_else(fresh) else {
        let says = "There is no such count yet: nothing is laid out that it could be of.";
        return (asks(says), Vec::new());
    };
    let mut reply = Reply::of(Status::Answered);
    if count.as_q() != i128::from(n).into() {
        let spans = [say("Not so many: "), fig(&count), say(" "), say(name), say(" as it stands.")];
        reply.lines.push(Line::new(Role::Answer, spans));
    }
    reply.lines.extend(chain(name, &count));
    if what != Counted::Balusters {
        let layout = lay_out(job);
        let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
        reply.lines.extend(placed.flat_map(|p| chain("bays of a run", &p.count)).map(detail));
    }
    (reply, vec![(name, count)])
}

fn asks(says: &'static str) -> Reply {
    Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) }
}

/// The layout's limits, each with whose it is.
fn limit_lines(layout: &Layout) -> Vec<Line> {
    let limits = [("the most on centre", &layout.limits.centre), ("the most clear", &layout.limits.clear)];
    limits.into_iter().filter_map(|(name, f)| f.as_ref().map(|f| chain(name, f))).flatten().map(detail).collect()
}

/// A line as one under the answer's first.
fn detail(line: Line) -> Line {
    Line { role: Role::Detail, ..line }
}

fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

fn say(words: &'static str) -> Span {
    Span::Say(words)
}
