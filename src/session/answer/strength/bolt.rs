//! The pull on a post's upper bolt, against the published hold-down.

use super::rows::row;
use super::taken::Taken;
use super::{Answered, Figs, detail, fig, inches, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::Job;
use crate::limits;
use crate::measure::Length;
use crate::reply::{Finding, Level, Line, Reply, Role, Status};
use crate::strength::tie::{Tie, apart_in, hold_down};
use crate::strength::{Judged, Refused};

/// The bolts of the job's posts: the rim asked about, else as the guide draws them.
pub(super) fn tie(_: &Job, ask: &StrengthAsk, taken: &Taken) -> Result<Tie, Refused> {
    let drawn = Tie::as_drawn(taken.height.clone());
    let Some(rim) = ask.rim else { return Ok(drawn) };
    let (_, deep) = rim.dressed().ok_or(Refused::NotLumber(rim))?;
    let deep = Fig::length(deep, Why::Table("dressed dry depth of the rim", rim.table()));
    let apart = apart_in(&deep, &drawn.edge)?;
    Ok(if apart.as_length() > drawn.apart.as_length() { drawn } else { Tie { apart, ..drawn } })
}

/// True for a height the published hold-down speaks of.
fn spoken_of(tie: &Tie) -> bool {
    tie.height.as_length().is_some_and(|h| h <= Length::inches(36))
}

/// "The upper bolt is pulled 2,000 lb; the published hold-down is 1,800 lb: 1.11 times."
pub(super) fn line(tie: &Tie) -> Result<Line, Refused> {
    let judged = Judged::of(tie.pull()?, hold_down())?;
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
    let pull = tie.pull()?;
    let over = pull.as_q() > hold_down().as_q();
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
            say(", over the published hold-down: a deeper rim, or ask an engineer."),
        ],
    };
    let rule = "hold-down-over-published";
    Ok(Some(Finding { rule, level: Level::Check, spans, source: limits::HOLD_DOWN.source }))
}

/// How hard the push pulls on the upper bolt.
pub fn bolt(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let tie = tie(job, ask, taken)?;
    let judged = Judged::of(tie.pull()?, hold_down())?;
    let mut reply = Reply::of(Status::Answered);
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
        say(" apart. Name the rim (\"2x8 rim\") and the spacing follows."),
    ]));
    reply.findings.extend(finding(&tie)?);
    reply.values.strength = vec![row("pull on the upper bolt", &judged)];
    let figs: Figs = vec![("pull on the upper bolt", judged.demand), ("hold-down", judged.capacity)];
    Ok((reply, figs))
}
