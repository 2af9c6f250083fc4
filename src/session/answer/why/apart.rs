//! "why not 10 ft": a bay so long, held to every limit in force.

use super::super::Figs;
use super::{fig, limit_lines, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::Apart;
use crate::job::{Job, PostRole};
use crate::layout::{Layout, Limits, lay_out, post_width};
use crate::measure::Length;
use crate::reply::{Line, Reply, Role, Span, Status};

/// A bay as it would be, clear and on centre.
pub struct Bay {
    /// Face to face.
    pub clear: Fig,
    /// Centre to centre.
    pub centre: Fig,
}

impl Bay {
    /// The bay so far clear between posts of this width.
    fn clear(clear: Fig, post: &Fig) -> Option<Bay> {
        let centre = clear.as_length()?.plus(post.as_length()?)?;
        let from = vec![("clear", clear.clone()), ("post", post.clone())];
        Some(Bay { clear, centre: Fig::length(centre, Why::Formula("clear and a post", from)) })
    }

    /// The bay so far on centre; `None` where posts so wide leave nothing clear.
    fn centre(centre: Fig, post: &Fig) -> Option<Bay> {
        let clear = centre.as_length()? - post.as_length()?;
        let from = vec![("on centre", centre.clone()), ("post", post.clone())];
        let clear = Fig::length(clear, Why::Formula("on centre less a post", from));
        clear.as_length().filter(|l| l.is_positive())?;
        Some(Bay { clear, centre })
    }

    /// By how much it passes each limit it passes: the limit's name, the limit, how far over.
    pub fn over(&self, limits: &Limits) -> Vec<(&'static str, Fig, Fig)> {
        let centre = over(&self.centre, limits.centre.as_ref()).map(|(l, by)| ("the most on centre", l, by));
        let clear = over(&self.clear, limits.clear.as_ref()).map(|(l, by)| ("the most clear", l, by));
        centre.into_iter().chain(clear).collect()
    }
}

fn over(is: &Fig, limit: Option<&Fig>) -> Option<(Fig, Fig)> {
    let limit = limit?;
    let by = is.as_length()? - limit.as_length()?;
    let from = vec![("what it would be", is.clone()), ("limit", limit.clone())];
    by.is_positive().then(|| (limit.clone(), Fig::length(by, Why::Formula("what it would be less limit", from))))
}

/// ": 2 3/4" over the most on centre, 6'-0"", or that it passes.
pub fn against(bay: &Bay, limits: &Limits) -> Vec<Span> {
    let over = bay.over(limits);
    if over.is_empty() {
        return vec![say(": over no limit.")];
    }
    let mut spans = Vec::new();
    for (i, (name, limit, by)) in over.iter().enumerate() {
        spans.push(say(if i == 0 { ": " } else { ", and " }));
        spans.extend([fig(by), say(" over "), say(name), say(", "), fig(limit)]);
    }
    spans.push(say("."));
    spans
}

/// A bay so long against the limits, as it was said to be taken or both ways.
pub fn not_bay(job: &Job, length: Length, apart: Apart) -> (Reply, Figs) {
    let layout = lay_out(job);
    let post = post_width(&job.settings, &[PostRole::Line]);
    let told = || Fig::told(length, "the bay asked about");
    let clear = Bay::clear(told(), &post).filter(|_| apart != Apart::Centre);
    let centre = Bay::centre(told(), &post).filter(|_| apart != Apart::Clear);
    let mut reply = Reply::of(Status::Answered);
    for (bay, taken_clear) in clear.iter().map(|b| (b, true)).chain(centre.iter().map(|b| (b, false))) {
        let role = if reply.lines.is_empty() { Role::Answer } else { Role::Detail };
        reply.lines.push(Line::new(role, said(bay, taken_clear, &layout)));
    }
    if reply.lines.is_empty() {
        reply.lines.push(Line::say(Role::Answer, "That is no more than a post is wide: no bay at all."));
    }
    reply.lines.extend(limit_lines(&layout));
    let passes = |b: &Bay| b.over(&layout.limits).is_empty();
    if clear.as_ref().is_some_and(passes) || centre.as_ref().is_some_and(passes) {
        reply.lines.extend(as_laid_out(&layout));
    }
    let figs = clear.map(|b| ("on centre", b.centre)).into_iter().chain(centre.map(|b| ("clear", b.clear)));
    (reply, figs.collect())
}

fn said(bay: &Bay, taken_clear: bool, layout: &Layout) -> Vec<Span> {
    let mut spans = if taken_clear {
        vec![fig(&bay.clear), say(" clear would be "), fig(&bay.centre), say(" on centre")]
    } else {
        vec![fig(&bay.centre), say(" on centre would be "), fig(&bay.clear), say(" clear")]
    };
    spans.extend(against(bay, &layout.limits));
    spans
}

/// Why the bays of a layout are shorter than they might be.
fn as_laid_out(layout: &Layout) -> Option<Line> {
    let placed = layout.runs.iter().find_map(|r| r.result.as_ref().ok())?;
    let bay = placed.rail_bays().next()?;
    let spans = [say("As it stands: "), fig(&placed.count), say(" bays, the first "), fig(&bay.clear), say(" clear: ")];
    let tail = "the run is parted into equal bays, as few as keep the limit. Say \"no more than\" a length to have them \
                shorter.";
    Some(Line::new(Role::Detail, spans.into_iter().chain([say(tail)])))
}
