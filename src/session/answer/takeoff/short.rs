//! A piece cut short: what it was for, by how much, and what it still makes.

use super::words::{cut, detail, fig, places};
use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::layout::Layout;
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::takeoff::{Part, Parts, longest, parts};

/// A piece this much under a part's cut is taken as cut for it, in inches: common practice, no source.
const SLIP: i64 = 12;

/// What a piece of this length was cut for, and what else of the job it makes.
pub fn cut_short(job: &Job, layout: &Layout, length: Length) -> Reply {
    let Ok(parts) = parts(job, layout, |size| longest(job, size)) else {
        let says = "Short of what? The parts can't be counted yet, so no cut is known that it could be short of.";
        return Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    };
    let meant = meant(&parts, length);
    if meant.is_empty() {
        let says = "Short of what? No part told so far is cut up to a foot longer than that. Tell the runs, the height and \
                    what fills them.";
        return Reply { lines: vec![Line::say(Role::Question, says)], ..Reply::of(Status::Asks) };
    }
    let mut reply = Reply::of(Status::Answered);
    for (k, (part, by)) in meant.iter().enumerate() {
        let role = if k == 0 { Role::Answer } else { Role::Detail };
        reply.lines.push(Line::new(role, [vec![fig(by), Span::Say(" short of a ")], said(part)].concat()));
    }
    let sizes: Vec<_> = meant.iter().filter_map(|(p, _)| p.size).collect();
    let makes = parts.list.iter().filter(|p| p.size.is_some_and(|s| sizes.contains(&s)));
    let makes = makes.filter_map(|p| Some((p, length.less(p.cut?).filter(|over| *over >= Length::ZERO)?)));
    let mut made: Vec<(&Part, Length)> = makes.collect();
    made.sort_by_key(|(_, over)| *over);
    match made.first() {
        Some((part, over)) => {
            let over = Fig::length(*over, Why::Formula("what is cut off it", vec![]));
            let spans = [
                vec![Span::Say("It still makes a ")],
                said(part),
                vec![Span::Say(" With "), fig(&over), Span::Say(" cut off it.")],
            ];
            reply.lines.push(detail(spans.concat()));
        }
        None => reply.lines.push(Line::say(Role::Detail, "It makes no other part of this job.")),
    }
    reply.lines.push(Line::say(
        Role::Detail,
        "Nothing is changed: the list counts what the job takes. Cut another; a short post is not packed up to height.",
    ));
    reply
}

/// The parts it may have been cut for, the nearest first, and how far short of each it is.
fn meant(parts: &Parts, length: Length) -> Vec<(&Part, Fig)> {
    let short = |p: &Part| {
        let by = p.cut?.less(length)?;
        (by > Length::ZERO && by <= Length::inches(SLIP)).then_some(by)
    };
    let mut all: Vec<(&Part, Length)> = parts.list.iter().filter_map(|p| Some((p, short(p)?))).collect();
    all.sort_by_key(|(_, by)| *by);
    all.into_iter().map(|(p, by)| (p, Fig::length(by, Why::Formula("cut length less the piece", vec![])))).collect()
}

/// "post, 4x4, cut 4'-1": run 1 posts 1 to 4."
fn said(part: &Part) -> Vec<Span> {
    let mut spans = vec![Span::Say(part.what.name(false))];
    spans.extend(part.size.into_iter().flat_map(|s| [Span::Say(", "), Span::Phrase(s.to_string())]));
    spans.extend(part.cut.into_iter().flat_map(|l| [Span::Say(", cut "), fig(&cut(l))]));
    if !part.at.is_empty() {
        spans.extend([Span::Say(": "), Span::Phrase(places(&part.at))]);
    }
    spans.push(Span::Say("."));
    spans
}
