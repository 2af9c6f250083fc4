//! "rules": what is checked; "which rules did you use": what of it found something.

use crate::figure::{Fig, Why};
use crate::job::Job;
use crate::layout::lay_out;
use crate::reply::{Level, Line, Reply, Role, Span, Status, Style};
use crate::rules::{RULES, Rule, check};

const LEVELS: [(Level, &str); 3] =
    [(Level::Stop, "Do not build it so: "), (Level::Check, "Look before you build: "), (Level::Note, "Good to know: ")];

/// Every rule by its title, the gravest first.
pub(super) fn all() -> Reply {
    let mut reply = Reply::of(Status::Answered);
    let count = Fig::count(RULES.len() as u64, Why::Formula("the rows of the rule registry", Vec::new()));
    let first = [Span::Fig(count, Style::Tape), Span::Say(" rules are held against every job.")];
    reply.lines.push(Line::new(Role::Answer, first));
    for (level, lead) in LEVELS {
        let titles = RULES.iter().filter(|r| r.level == level).flat_map(|r| [Span::Say("; "), Span::Say(r.title)]);
        let spans = [Span::Say(lead)].into_iter().chain(titles.skip(1)).chain([Span::Say(".")]);
        reply.lines.push(Line::new(Role::Detail, spans));
    }
    let sources = "They come from the IRC of 2018, 2021 and 2024, a prescriptive deck guide and common practice: ask \
                   \"says who\" after an answer.";
    reply.lines.push(Line::say(Role::Detail, sources));
    reply.lines.push(Line::say(Role::Detail, "Your building department decides which of them hold where you are."));
    reply
}

/// What the rules found in the job, each with its source.
pub(super) fn found(job: &Job) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    reply.findings = check(job, &lay_out(job));
    let quiet = "All of them, and none speaks against the job as told: say \"rules\" for the list.";
    let spoke = "All of them; these found something:";
    reply.lines.push(Line::say(Role::Answer, if reply.findings.is_empty() { quiet } else { spoke }));
    let ids: Vec<&str> = reply.findings.iter().map(|f| f.rule).collect();
    let spoken = RULES.iter().filter(|r| ids.contains(&r.id));
    reply.lines.extend(spoken.map(sourced));
    reply
}

fn sourced(rule: &Rule) -> Line {
    let source = [Span::Say(rule.title), Span::Say(": "), Span::Say(rule.source()), Span::Say(".")];
    Line::new(Role::Detail, source)
}
