//! "why not 2 bays", "why a post there": what one bay or post fewer would do.

use super::super::Figs;
use super::super::reasons::chain;
use super::apart::{Bay, against};
use super::{asks, detail, fig, limit_lines, say};
use crate::figure::{Fig, Why};
use crate::job::{Fact, Job, RunId, RunPatch};
use crate::layout::{Kind, Layout, Placed, Post, lay_out};
use crate::measure::{Length, Tape};
use crate::reply::{Line, Reply, Role, Span, Status};

const NONE: &str = "That run is not laid out yet, so no post of it stands anywhere.";

fn placed(layout: &Layout, id: RunId) -> Option<&Placed> {
    layout.runs.iter().find(|r| r.id == id)?.result.as_ref().ok()
}

/// The job with that many bays told of the run, laid out.
fn with_bays(job: &Job, id: RunId, n: u16) -> Option<Layout> {
    let patch = RunPatch { bays: Some(Some(n)), choices: Vec::new(), ..RunPatch::default() };
    job.with(&Fact::Run(id, patch)).ok().map(|j| lay_out(&j))
}

/// The bay that comes nearest a limit: the longest on centre.
fn longest(placed: &Placed) -> Option<Bay> {
    let bay = placed.rail_bays().max_by_key(|b| (b.spacing, b.clear_length()))?;
    let from = || vec![("clear", bay.clear.clone())];
    let spacing = || Fig::length(bay.spacing, Why::Formula("clear, and half a post where one stands", from()));
    Some(Bay { clear: bay.clear.clone(), centre: bay.centre.clone().unwrap_or_else(spacing) })
}

/// Why a run has not so many bays.
pub fn not_bays(job: &Job, id: RunId, n: u16) -> (Reply, Figs) {
    let layout = lay_out(job);
    let Some(stands) = placed(&layout, id) else { return (asks(NONE), Vec::new()) };
    if stands.count.as_q() == i128::from(n).into() {
        let mut reply = Reply::of(Status::Answered);
        reply.lines.push(Line::new(
            Role::Answer,
            [
                say("It has "),
                fig(&stands.count),
                say(if n == 1 { " bay as it stands." } else { " bays as it stands." }),
            ],
        ));
        reply.lines.extend(chain("bays", &stands.count).into_iter().map(detail));
        return (reply, vec![("bays", stands.count.clone())]);
    }
    let mut reply = Reply::of(Status::Answered);
    let figs = would_be(job, id, n, stands, &mut reply);
    reply.lines.extend(limit_lines(&layout));
    (reply, figs)
}

/// What so many bays would be, against the limits.
fn would_be(job: &Job, id: RunId, n: u16, stands: &Placed, reply: &mut Reply) -> Figs {
    let count = Fig::count(u64::from(n), Why::Told("the bays asked about"));
    let bays = say(if n == 1 { " bay" } else { " bays" });
    let Some(layout) = with_bays(job, id, n) else {
        reply.lines.push(Line::new(Role::Answer, [fig(&count), bays, say(" can't be told of that run.")]));
        return Vec::new();
    };
    let result = layout.runs.iter().find(|r| r.id == id).map(|r| &r.result);
    let Some(bay) = result.and_then(|r| r.as_ref().ok()).and_then(longest) else {
        let lack = result.and_then(|r| r.as_ref().err()).and_then(|l| l.first()).map_or(NONE, |l| l.says());
        reply
            .lines
            .push(Line::new(Role::Answer, [fig(&count), bays, say(" can't be laid out: "), say(lack), say(".")]));
        return Vec::new();
    };
    let mut spans = vec![fig(&count), bays, say(" would be "), fig(&bay.clear), say(" clear, "), fig(&bay.centre)];
    spans.push(say(" on centre"));
    spans.extend(against(&bay, &layout.limits));
    reply.lines.push(Line::new(Role::Answer, spans));
    if bay.over(&layout.limits).is_empty() {
        reply.lines.push(passes(n, stands));
    }
    vec![("clear", bay.clear), ("on centre", bay.centre)]
}

/// Why a bay count that passes was not taken.
fn passes(n: u16, stands: &Placed) -> Line {
    let fewest = stands.fewest.as_ref().filter(|f| f.as_q() <= i128::from(n).into());
    match fewest {
        Some(f) => {
            detail_of([fig(f), say(" is the fewest that keeps the limit, so it was taken. Say the bays you want.")])
        }
        None => {
            detail_of([say("Exactly it passes, but the marks rounded to the tape would not, so one more was taken.")])
        }
    }
}

fn detail_of(spans: impl IntoIterator<Item = Span>) -> Line {
    Line::new(Role::Detail, spans)
}

/// Why a post stands at a mark of a run.
pub fn post_at(job: &Job, id: RunId, at: Length) -> (Reply, Figs) {
    let layout = lay_out(job);
    let Some(stands) = placed(&layout, id) else { return (asks(NONE), Vec::new()) };
    let far = |p: &Post| p.at.as_length().map(|l| if l > at { l - at } else { at - l });
    let here = stands.posts.iter().find(|p| is_at(p, at, layout.tape));
    let mut reply = Reply::of(Status::Answered);
    let Some(post) = here.or_else(|| stands.posts.iter().min_by_key(|p| far(p))) else {
        return (asks(NONE), Vec::new());
    };
    if here.is_none() {
        let told = Fig::told(at, "the mark asked about");
        let spans = [say("No post stands at "), fig(&told), say(": the nearest is the "), say(post.kind.post())];
        reply.lines.push(Line::new(Role::Answer, spans.into_iter().chain([say(" at "), fig(&post.at), say(".")])));
    }
    reason(job, id, stands, post, &mut reply);
    (reply, vec![("the post's centre", post.at.clone())])
}

/// True where a post's centre or its near face reads so on the tape.
fn is_at(post: &Post, at: Length, tape: Tape) -> bool {
    let reads = |f: &Fig| f.as_length().is_some_and(|l| l == at || tape.round(l) == at);
    reads(&post.at) || reads(&post.near_face)
}

/// Why one post stands where it does: what it is for, then how its place was worked out.
fn reason(job: &Job, id: RunId, stands: &Placed, post: &Post, reply: &mut Reply) {
    let first = [say("The "), say(post.kind.post()), say(" at "), fig(&post.at), say(": ")];
    let why = [say(post.kind.why()), say(".")];
    reply.lines.push(Line::new(Role::Answer, first.into_iter().chain(why)));
    if post.kind == Kind::Line {
        reply.lines.extend(one_fewer(job, id, stands));
    }
    reply.lines.extend(chain("its centre", &post.at).into_iter().map(detail));
}

/// What the run would be with one line post fewer.
fn one_fewer(job: &Job, id: RunId, stands: &Placed) -> Vec<Line> {
    let count = u16::try_from(*stands.count.as_q().numer()).unwrap_or(0);
    let mut without = Reply::of(Status::Answered);
    if count > 1 {
        would_be(job, id, count - 1, stands, &mut without);
    }
    if let Some(first) = without.lines.first_mut() {
        first.spans.insert(0, say("With one post fewer, "));
    }
    without.lines.into_iter().map(detail).collect()
}

/// Why the line posts of a run stand where they do.
pub fn line_posts(job: &Job, id: RunId) -> (Reply, Figs) {
    let layout = lay_out(job);
    let Some(stands) = placed(&layout, id) else { return (asks(NONE), Vec::new()) };
    let mut line = stands.posts.iter().filter(|p| matches!(p.kind, Kind::Line | Kind::Told));
    let mut reply = Reply::of(Status::Answered);
    match line.next() {
        Some(post) => {
            reason(job, id, stands, post, &mut reply);
            (reply, vec![("the post's centre", post.at.clone())])
        }
        None => {
            let says = "No line post stands in that run: its posts are at its ends and openings only.";
            reply.lines.push(Line::say(Role::Answer, says));
            (reply, Vec::new())
        }
    }
}
