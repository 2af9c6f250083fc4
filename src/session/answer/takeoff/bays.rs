//! The balusters of the job, bay by bay.

use super::super::Figs;
use super::infill::{drying, marks_of};
use super::words::{cannot_fill, detail, exact, fig, not_laid_out, number, places};
use crate::figure::{Fig, Why};
use crate::gate::gap;
use crate::gate::pool::Barrier;
use crate::infill::{Spread, count_fig, gap_fig};
use crate::job::{Flight, Job, RunId};
use crate::layout::Layout;
use crate::limits;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::solve::in_force;
use crate::takeoff::{FilledBay, baluster_fig, fill, gap_limit_fig};

/// More kinds of bay than this get no marks in one answer.
const MOST_MARKED: usize = 3;

/// How many balusters, of one run or in all.
pub fn balusters(job: &Job, layout: &Layout, run: Option<RunId>) -> (Reply, Figs) {
    let bays = match fill(job, layout, run) {
        Ok(bays) => bays,
        Err(cannot) => return (cannot_fill(&cannot), Vec::new()),
    };
    if bays.is_empty() {
        let says = "Balusters in what? Tell a run, or the clear opening: \"how many in a 58 inch opening\".";
        let mut reply = Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
        not_laid_out(layout, &mut reply.lines);
        return (reply, Vec::new());
    }
    let total = bays.iter().map(|b| u64::from(b.spread.count())).sum();
    let each: Vec<(&'static str, Fig)> = bays.iter().map(|b| ("a bay", in_bay(job, b))).collect();
    let total = Fig::count(total, Why::Formula("every bay's balusters added up", each.clone()));
    let groups = grouped(&bays);
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, first(&total, &bays, &groups)));
    if groups.len() > 1 {
        reply.lines.extend(groups.iter().map(group_line));
    }
    reply.lines.extend(matched(&bays));
    reply.lines.push(taken(job));
    for (bay, _) in groups.iter().take(MOST_MARKED) {
        if groups.len() > 1 {
            reply.lines.push(detail(vec![Span::Phrase(places(&[bay.at])), Span::Say(":")]));
        }
        reply.lines.extend(marks_of(&bay.spread, &gap_of(&bay.spread)));
    }
    not_laid_out(layout, &mut reply.lines);
    reply.lines.extend(at_the_pool(job));
    if job.flight != Flight::default() || job.runs.iter().any(|r| !r.stairs.is_empty()) {
        reply.lines.push(Line::say(Role::Detail, "The balusters down the stairs are not in this count."));
    }
    if job.runs.iter().any(|r| r.gate.is_some()) {
        reply.lines.push(Line::say(Role::Detail, "A gate's own balusters are not in this count."));
    }
    let widest = bays.iter().map(|b| b.spread).max_by_key(Spread::widest);
    reply.findings.extend(widest.as_ref().and_then(drying));
    let mut figs: Figs = vec![("balusters", total.clone())];
    reply.values.more = vec![("balusters", total), ("baluster", baluster_fig(job)), ("gap_max", gap_limit_fig(job))];
    reply.values.takeoff.each = each.into_iter().map(|(_, f)| f).collect();
    if let [(bay, _)] = groups.as_slice() {
        let gap = gap_of(&bay.spread);
        figs.push(("gap", gap.clone()));
        reply.values.more.insert(1, ("gap", gap.clone()));
        let marks = (0..bay.spread.count()).map(|k| crate::infill::mark_fig(&bay.spread, k, &gap));
        reply.values.takeoff.marks = marks.collect();
    }
    (reply, figs)
}

/// At a pool told, which of the barrier's gaps holds, and from what.
pub fn at_the_pool(job: &Job) -> Option<Line> {
    let barrier = Barrier::of(job)?;
    let here = &job.settings;
    let inches = |f: &Fig| Span::Fig(f.clone(), crate::reply::Style::Inches);
    let mut spans = vec![Span::Say("At the pool told ")];
    match (barrier.rails_apart(), barrier.is_tight(here)) {
        (Some(apart), true) => spans.extend([
            Span::Say("the rails' tops are "),
            inches(&apart),
            Span::Say(" apart, under "),
            inches(&in_force(here, &limits::POOL_RAILS_APART)),
            Span::Say(": they go on the pool side, and gaps are no more than "),
            inches(&in_force(here, &limits::POOL_TIGHT_GAP)),
        ]),
        (Some(apart), false) => spans.extend([
            Span::Say("the rails' tops are "),
            inches(&apart),
            Span::Say(" apart, enough for the plain gap"),
        ]),
        (None, _) => spans.extend([
            Span::Say("how far apart the rails' tops are is not told (the height, the gap under, the bottom rail and how it lies), so gaps are kept to "),
            inches(&in_force(here, &limits::POOL_TIGHT_GAP)),
        ]),
    }
    spans.extend([Span::Say(" ("), Span::Say(limits::POOL_RAILS_APART.source), Span::Say(").")]);
    Some(Line::new(Role::Caution, spans))
}

/// How many one bay takes, from its clear opening, one baluster and the limit.
fn in_bay(job: &Job, bay: &FilledBay) -> Fig {
    let says = if bay.spread.count() == bay.fewest {
        "the fewest in the clear opening whose every gap, one baluster to the next, is under the gap limit, on the tape too"
    } else {
        "one more than the clear opening asks for, to match the bay beside it, each baluster so wide, gaps under the gap limit"
    };
    let clear = Fig::length(bay.spread.opening().clear, Why::Formula("between its posts, as laid out", Vec::new()));
    let from = vec![("clear opening", clear), ("baluster", baluster_fig(job)), ("gap limit", gap_limit_fig(job))];
    Fig::count(u64::from(bay.spread.count()), Why::Formula(says, from))
}

fn gap_of(spread: &Spread) -> Fig {
    let limit = Fig::told(spread.opening().limit.most, "the gap limit");
    gap_fig(spread, &count_fig(spread, &limit))
}

/// Bays alike, in order of first sight, with their places.
fn grouped(bays: &[FilledBay]) -> Vec<(&FilledBay, Vec<crate::takeoff::Where>)> {
    let mut groups: Vec<(&FilledBay, Vec<crate::takeoff::Where>)> = Vec::new();
    let alike = |a: &FilledBay, b: &FilledBay| {
        a.spread.count() == b.spread.count() && a.spread.opening().clear == b.spread.opening().clear
    };
    for bay in bays {
        match groups.iter_mut().find(|(first, _)| alike(first, bay)) {
            Some((_, at)) => at.push(bay.at),
            None => groups.push((bay, vec![bay.at])),
        }
    }
    groups
}

fn first(total: &Fig, bays: &[FilledBay], groups: &[(&FilledBay, Vec<crate::takeoff::Where>)]) -> Vec<Span> {
    let mut spans = vec![fig(total), Span::Say(if total.as_q() == 1.into() { " baluster" } else { " balusters" })];
    match groups {
        [(bay, at)] if at.len() > 1 => spans.extend([
            Span::Say(": "),
            number(u64::from(bay.spread.count())),
            Span::Say(" in each of "),
            number(at.len() as u64),
            Span::Say(" bays, gaps of "),
            exact(&gap_of(&bay.spread)),
        ]),
        [(bay, _)] => spans.extend([Span::Say(", gaps of "), exact(&gap_of(&bay.spread))]),
        _ => spans.extend([Span::Say(" in "), number(bays.len() as u64), Span::Say(" bays")]),
    }
    spans.push(Span::Say("."));
    spans
}

fn group_line((bay, at): &(&FilledBay, Vec<crate::takeoff::Where>)) -> Line {
    let clear = Fig::length(bay.spread.opening().clear, Why::Formula("the bay's clear", Vec::new()));
    detail(vec![
        Span::Phrase(places(at)),
        Span::Say(": "),
        number(u64::from(bay.spread.count())),
        Span::Say(" in "),
        fig(&clear),
        Span::Say(" clear, gaps of "),
        exact(&gap_of(&bay.spread)),
        Span::Say("."),
    ])
}

/// Bays that get more than they need by themselves.
fn matched(bays: &[FilledBay]) -> Option<Line> {
    let more: Vec<_> = bays.iter().filter(|b| b.spread.count() > b.fewest).map(|b| b.at).collect();
    let says = " would do with fewer; matched to the bays beside it, for the eye.";
    (!more.is_empty()).then(|| detail(vec![Span::Phrase(places(&more)), Span::Say(says)]))
}

fn taken(job: &Job) -> Line {
    let (baluster, limit) = (baluster_fig(job), gap_limit_fig(job));
    let told = |f: &Fig| matches!(f.why(), Why::Told(_));
    let lead = if told(&baluster) { "Balusters " } else { "Balusters taken as 2x2s, " };
    let under = match (gap::by_pool(&gap::level(job)), told(&limit)) {
        (true, _) => " wide, gaps no more than the pool barrier's ",
        (_, true) => " wide, gaps under ",
        _ => " wide, gaps under the level guard's ",
    };
    let inches = |f: &Fig| Span::Fig(f.clone(), crate::reply::Style::Inches);
    detail(vec![Span::Say(lead), inches(&baluster), Span::Say(under), inches(&limit), Span::Say(".")])
}
