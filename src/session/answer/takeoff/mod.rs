//! Answers about balusters, parts, cuts and cost.

mod bays;
mod buy;
mod cost;
mod infill;
mod lengths;
mod lists;
mod settled;
mod short;
mod words;

use super::Figs;
use crate::figure::{Fig, Why};
use crate::grammar::ask::TakeoffAsk;
use crate::job::{Fact, Job, Order};
use crate::layout::{Layout, lay_out};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status, Style};

/// The answer to a question about balusters, parts, cuts or cost.
pub fn takeoff(job: &Job, ask: &TakeoffAsk) -> (Reply, Figs) {
    let layout = lay_out(job);
    match ask {
        TakeoffAsk::Infill(i) => infill::opening(job, i),
        TakeoffAsk::OnCentre { centre, baluster } => infill::on_centre(job, *centre, *baluster),
        TakeoffAsk::Gap(gap) => infill::gap(job, *gap, &crate::gate::gap::level(job)),
        TakeoffAsk::GapUnder(gap) => infill::gap(job, *gap, &crate::gate::gap::plain(job)),
        TakeoffAsk::ByObject => (infill::by_object(job), Vec::new()),
        TakeoffAsk::Balusters(run) => bays::balusters(job, &layout, *run),
        TakeoffAsk::Dried { wood, gap } => settled::dried(job, &layout, *wood, *gap),
        TakeoffAsk::Routed { pitch, clear, baluster } => settled::routed(job, &layout, *pitch, *clear, *baluster),
        TakeoffAsk::Measured(width) => (settled::measured(job, &layout, *width), Vec::new()),
        TakeoffAsk::Parts => listed(job, &layout, lists::parts),
        TakeoffAsk::Cuts => listed(job, &layout, lists::cuts),
        TakeoffAsk::Buy => listed(job, &layout, buy::buy),
        TakeoffAsk::Cost => listed(job, &layout, cost::cost),
        TakeoffAsk::Splits(run) => (buy::splits(job, &layout, *run), Vec::new()),
        TakeoffAsk::CutLength(part) => lengths::of_part(job, &layout, *part),
        TakeoffAsk::CutShort(length) => (short::cut_short(job, &layout, *length), Vec::new()),
        TakeoffAsk::RailLength => lengths::of_rails(job, &layout),
    }
}

type List = fn(&Job, &Layout, &crate::takeoff::Parts) -> Reply;

/// A list over all parts; what keeps them from being counted comes first.
fn listed(job: &Job, layout: &Layout, list: List) -> (Reply, Figs) {
    let parts = crate::takeoff::parts(job, layout, |size| crate::takeoff::longest(job, size));
    let reply = match parts {
        Err(cannot) => words::cannot_fill(&cannot),
        Ok(parts) if parts.list.is_empty() && job.runs.is_empty() && !parts.lacks.is_empty() => {
            let mut reply = Reply::of(Status::Asks);
            reply.lines.push(Line::say(Role::Question, "Nothing can be listed yet."));
            reply.lines.extend(words::lacks(&parts.lacks));
            reply
        }
        Ok(parts) if parts.list.is_empty() => nothing(job, layout),
        Ok(parts) => {
            let mut reply = list(job, layout, &parts);
            words::not_laid_out(layout, &mut reply.lines);
            reply
        }
    };
    (reply, Vec::new())
}

/// The answer where nothing is told that a list could be made of.
fn nothing(job: &Job, layout: &Layout) -> Reply {
    let says = if job.runs.is_empty() {
        "A list of what? Tell the runs (how long, from what to what), the height, and what fills them."
    } else {
        "The runs told can't be laid out yet, so there is nothing to list."
    };
    let mut reply = Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    words::not_laid_out(layout, &mut reply.lines);
    reply
}

/// Where the lengths something is sold in were just told and one run is laid out: its even
/// split beside the one that wastes least.
pub fn suits_the_sticks(job: &Job, facts: &[Fact]) -> Vec<Line> {
    let sold = facts.iter().any(|f| matches!(f, Fact::Order(Order::Sold(Some(_), _))));
    if !sold || job.runs.is_empty() {
        return Vec::new();
    }
    let reply = buy::splits(job, &lay_out(job), None);
    if reply.status == Status::Answered { reply.lines } else { Vec::new() }
}

/// Bays told alone, added up: their clear openings in all.
pub fn add_up(facts: &[Fact], reply: &mut Reply) {
    let bays = facts.iter().filter_map(|f| if let Fact::Order(Order::Bays(n, l)) = f { Some((*n, *l)) } else { None });
    let bays: Vec<(u16, Length)> = bays.collect();
    if bays.is_empty() || reply.values.result.is_some() {
        return;
    }
    let sum = bays.iter().map(|(n, l)| *l * i64::from(*n)).sum();
    let each = bays.iter().map(|(_, l)| ("one bay", Fig::told(*l, "the bay's clear"))).collect();
    let sum = Fig::length(sum, Why::Formula("every bay's clear added up", each));
    let says = [
        Span::Say("That is "),
        Span::Fig(sum.clone(), Style::Full),
        Span::Say(" of clear opening in all, posts not counted."),
    ];
    reply.lines.push(Line::new(Role::Detail, says));
    reply.values.result = Some(sum);
}
