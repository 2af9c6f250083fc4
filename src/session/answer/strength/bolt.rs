//! The pull on a post's upper bolt, against the published hold-down.

use super::rows::row;
use super::section::of_rule;
use super::taken::Taken;
use super::{Answered, Figs, detail, fig, inches, say};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Fixing, Job, Mount};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Finding, Line, Reply, Role, Status};
use crate::solve::{choice, limit_length, told_length};
use crate::strength::tie::{Tie, hold_down};
use crate::strength::{Judged, Refused};

/// The bolts of the job's posts: in the rim asked about or told, else as the guide draws them.
pub(super) fn tie(ask: &StrengthAsk, taken: &Taken) -> Result<Tie, Refused> {
    match ask.rim.filter(|rim| rim.dressed().is_none()) {
        Some(rim) => Err(Refused::NotLumber(rim)),
        None => taken.inputs.tie(),
    }
}

/// The pull beside the published hold-down.
pub(super) fn judged(tie: &Tie) -> Result<Judged, Refused> {
    Judged::of(tie.pull()?, hold_down())
}

/// True for a height the published hold-down speaks of.
fn spoken_of(tie: &Tie) -> bool {
    tie.height.as_length().is_some_and(|h| h <= Length::inches(36))
}

/// "The upper bolt is pulled 2,000 lb; the published hold-down is 1,800 lb: 1.11 times."
pub(super) fn line(tie: &Tie) -> Result<Line, Refused> {
    let judged = judged(tie)?;
    Ok(detail([
        say("The upper bolt is pulled "),
        fig(&judged.demand),
        say("; the published hold-down is good for "),
        fig(&judged.capacity),
        say(": "),
        fig(&judged.ratio),
        say(" times."),
    ]))
}

/// A warning where the published hold-down does not cover the case.
pub(super) fn finding(tie: &Tie) -> Result<Option<Finding>, Refused> {
    let judged = judged(tie)?;
    let (pull, over) = (judged.demand.clone(), !judged.holds());
    let spans = match (over, spoken_of(tie)) {
        (false, true) => return Ok(None),
        (_, false) => vec![
            say("the published hold-down is for guards up to 36 in.; none is published for "),
            inches(&tie.height),
            say(", where the bolt is pulled "),
            fig(&pull),
            say(": ask an engineer."),
        ],
        (true, true) => vec![
            say("bolts "),
            inches(&tie.apart),
            say(" apart pull the upper one "),
            fig(&pull),
            say(", "),
            fig(&judged.ratio),
            say(" times the published hold-down: a deeper rim, or ask an engineer."),
        ],
    };
    let rule = if tie.is_far(&judged) { "hold-down-far-over" } else { "hold-down-over-published" };
    Ok(of_rule(rule, spans))
}

/// What is told of the posts that the hold-down does not speak of.
fn held_otherwise(job: &Job) -> Option<&'static str> {
    match (choice::mount(job), choice::fixing(job)) {
        (Some(Mount::Surface), _) => Some(
            "The posts stand on the decking, as told: no bolt goes through the rim. Bolted to the rim they would be:",
        ),
        (_, Some(Fixing::Lags | Fixing::Screws)) => Some(
            "No through bolts, as told, and the published hold-down goes with them. With through bolts it would be:",
        ),
        _ if is_thin(job) => Some(
            "The bolts told are thinner than the guide's, and the published hold-down goes with those. With the guide's it would be:",
        ),
        _ => None,
    }
}

/// True where the bolts told are thinner than the guide shows.
fn is_thin(job: &Job) -> bool {
    told_length(job, RowId::Bolt).is_some_and(|told| told < limit_length(job, &limits::BOLT_SIZE))
}

/// How hard the push pulls on the upper bolt.
pub fn bolt(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let tie = tie(ask, taken)?;
    let judged = judged(&tie)?;
    let mut reply = Reply::of(Status::Answered);
    reply.lines.extend(held_otherwise(job).map(|says| Line::say(Role::Answer, says)));
    let lead = match (judged.holds(), spoken_of(&tie)) {
        (true, true) => "Inside the published hold-down, by arithmetic: ",
        (false, _) => "Over the published hold-down, by arithmetic: ",
        (true, false) => "The published hold-down does not speak of this height; by arithmetic: ",
    };
    let first = [
        say(lead),
        say("200 lb at "),
        inches(&tie.height),
        say(" pulls "),
        fig(&judged.demand),
        say(" on the upper bolt, and the hold-down is good for "),
        fig(&judged.capacity),
        say(": "),
        fig(&judged.ratio),
        say(" times."),
    ];
    reply.lines.push(Line::new(Role::Answer, first));
    reply.lines.push(detail([say("The lower bolt pushes back "), fig(&tie.push()?), say(".")]));
    reply.lines.push(detail([
        say("Taken: decking "),
        inches(&tie.decking),
        say(" thick, the upper bolt "),
        inches(&tie.edge),
        say(" below the rim's top, the bolts "),
        inches(&tie.apart),
        say(" apart."),
    ]));
    let rim = match taken.inputs.rim {
        Some(_) if tie.is_close() => {
            Some("The rim told brings the bolts closer together than the 2 1/2 in. the guide shows.")
        }
        Some(_) => None,
        None => Some(
            "The rim is not told: the bolts stand as the guide draws them. Name it (\"2x8 rim\") and the spacing follows.",
        ),
    };
    reply.lines.extend(rim.map(|says| detail([say(says)])));
    reply.findings.extend(finding(&tie)?);
    reply.values.strength = vec![row("pull on the upper bolt", &judged)];
    let figs: Figs = vec![("pull on the upper bolt", judged.demand), ("hold-down", judged.capacity)];
    Ok((reply, figs))
}
