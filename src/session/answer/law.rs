//! Whose rules are held against the job, and answers that cite them as they hold for it.

use crate::figure::Fig;
use crate::job::{Job, Law, LawTold};
use crate::limits::{GUARD_HEIGHT, GUARD_TRIGGER, LEVEL_GAP, LIMITS, Limit};
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::{self, told_instead};

const DECIDES: &str = "Your building department decides which code, edition and changes hold where you are.";

/// Whose rules hold, the heaviest figures by them, and who decides.
pub(super) fn in_force(job: &Job) -> Reply {
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, whose(&job.settings.law)));
    for (limit, says) in [
        (&GUARD_TRIGGER, "A guard is required over a drop of "),
        (&GUARD_HEIGHT, "Its least height is "),
        (&LEVEL_GAP, "Gaps on the level stay under "),
    ] {
        reply.lines.push(figure(job, limit, says));
    }
    reply.lines.extend(beware(&job.settings.law));
    reply.lines.push(Line::say(Role::Detail, DECIDES));
    reply
}

/// "By the 2018 IRC, as told.", "By the values held for Canada", or what is taken.
fn whose(law: &Law) -> Vec<Span> {
    let edition = law.edition.map(|e| e.name());
    let Some(place) = law.place else {
        return match edition {
            Some(edition) => vec![Span::Say("By "), Span::Say(edition), Span::Say(", as told.")],
            None => {
                vec![Span::Say("No edition told: sections are given for the 2018, 2021 and 2024 IRC side by side.")]
            }
        };
    };
    let mut spans = vec![
        Span::Say("By the values held for "),
        Span::Say(place.name),
        Span::Say(", as told; what they leave open "),
    ];
    match (place.abroad, edition) {
        (true, _) => spans.push(Span::Say("I hold no value for: ask there.")),
        (false, Some(edition)) => spans.extend([Span::Say("stands by "), Span::Say(edition), Span::Say(".")]),
        (false, None) => spans.push(Span::Say("stands by the IRC.")),
    }
    spans
}

fn figure(job: &Job, limit: &'static Limit, says: &'static str) -> Line {
    let law = &job.settings.law;
    // Some limits are words, or pounds: none of those has a value of a place's own.
    if !law.holds(limit) {
        return Line::new(Role::Detail, [Span::Say(says), Span::Say("a value I do not hold for there: ask.")]);
    }
    let held = solve::in_force(job, limit);
    let mut spans = vec![Span::Say(says)];
    spans.extend(said(&held, law, limit));
    spans.extend([Span::Say(": "), Span::Say(law.source(limit))]);
    spans.push(Span::Say("."));
    Line::new(Role::Detail, spans)
}

/// A value, in millimetres first where it is published so.
fn said(held: &Fig, law: &Law, limit: &Limit) -> Vec<Span> {
    let metric = law.is_metric(limit);
    let inches = Span::Fig(held.clone(), Style::InchesExact);
    match metric {
        true => vec![Span::Fig(held.clone(), Style::Millimetres), Span::Say(" = "), inches],
        false => vec![inches],
    }
}

fn beware(law: &Law) -> Option<Line> {
    law.place.map(|p| Line::new(Role::Detail, [Span::Say("Mind: "), Span::Say(p.note), Span::Say(".")]))
}

/// What was just told of whose rules hold: they are said at once.
pub(super) fn told(job: &Job, told: &LawTold) -> Vec<Line> {
    let lines = in_force(job).lines;
    match told {
        LawTold::Local(of, _) => {
            let kept = figure(job, of.limit(), "Kept for this job: ");
            vec![Line { role: Role::Answer, ..kept }, Line::say(Role::Detail, DECIDES)]
        }
        _ => lines,
    }
}

/// The answer with its sections cited by what was told: where nothing was, as it is.
pub(in crate::session) fn cited(mut reply: Reply, law: &Law) -> Reply {
    if *law == Law::default() {
        return reply;
    }
    for line in &mut reply.lines {
        // Words that say the IRC's own figure are never laid to another's charge.
        let own = LIMITS.iter().any(|l| line.spans.iter().any(|s| matches!(s, Span::Say(t) if *t == l.says)));
        for span in &mut line.spans {
            if let Span::Say(text) = span {
                *text = if own { of_edition(law, text) } else { by(law, text) };
            }
        }
    }
    for finding in &mut reply.findings {
        finding.source = by(law, finding.source);
    }
    let missing = missing(&reply, law);
    reply.lines.extend(missing);
    let sources = reply.findings.iter().map(|f| f.source);
    if let Some(place) = law.place.filter(|p| p.abroad && says(&reply).chain(sources).any(|t| t.contains("IRC"))) {
        let mind = "Mind: what goes by the IRC here is not the law of ";
        let spans = [Span::Say(mind), Span::Say(place.name), Span::Say(", and I hold no value of its own: ask there.")];
        reply.lines.push(Line::new(Role::Detail, spans));
    }
    reply
}

/// A rule that came in after the edition told is said to be none of it, and why it is minded.
fn missing(reply: &Reply, law: &Law) -> Option<Line> {
    let edition = law.edition?;
    let not_in = format!("not in {}", edition.name());
    let sources = reply.findings.iter().map(|f| f.source);
    says(reply).chain(sources).any(|t| t.contains(&not_in)).then(|| {
        let why = " has no such rule: it came in later. It is minded all the same, for the push at a guard's top is in \
                   every edition held (IRC Table R301.5), and the wood is no stronger for the year.";
        Line::new(Role::Detail, [Span::Say("Mind: "), Span::Say(edition.name()), Span::Say(why)])
    })
}

/// The fixed words of a reply's lines, sources among them.
fn says(reply: &Reply) -> impl Iterator<Item = &'static str> {
    reply.lines.iter().flat_map(|l| &l.spans).filter_map(|span| match span {
        Span::Say(text) => Some(*text),
        _ => None,
    })
}

fn by(law: &Law, text: &'static str) -> &'static str {
    LIMITS.iter().find(|l| l.source == text).map_or(text, |l| law.source(l))
}

/// The section of the edition told, whatever place was told.
fn of_edition(law: &Law, text: &'static str) -> &'static str {
    let edition = law.edition.and_then(|e| LIMITS.iter().find(|l| l.source == text).map(|l| e.source(l)));
    edition.unwrap_or(text)
}

/// The answer to a question about a limit that what was told puts another in the stead of, or
/// that is not held there; `None` where the rule stands as it is.
pub(super) fn instead(job: &Job, limit: &'static Limit) -> Option<Reply> {
    let law = &job.settings.law;
    let told = told_instead(job, limit);
    if !told.is_empty() {
        return Some(of_the_job(limit, &told));
    }
    let own = law.asked(limit).is_some() || law.place.is_some_and(|p| p.limit(limit).is_some());
    let line = (own || !law.holds(limit)).then(|| figure(job, limit, "Here it is "))?;
    let model = [Span::Say("By the model code: "), Span::Say(limit.says), Span::Say(".")];
    let mut reply = Reply::of(Status::Answered);
    reply.lines =
        vec![Line { role: Role::Answer, ..line }, Line::new(Role::Detail, model), Line::say(Role::Detail, DECIDES)];
    Some(reply)
}

/// A limit told for the job, as told; what is published stands beside it with its own source.
fn of_the_job(limit: &'static Limit, told: &[(RowId, Fig)]) -> Reply {
    let mut spans = vec![Span::Say("For this job it is ")];
    for (i, (row, fig)) in told.iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say(", and ")));
        spans.push(Span::Fig(fig.clone(), if limit.id == LEVEL_GAP.id { Style::InchesExact } else { Style::Tape }));
        spans.extend(match row {
            RowId::CentreMax => Some(Span::Say(" on centre")),
            RowId::ClearMax => Some(Span::Say(" clear")),
            _ => None,
        });
    }
    spans.push(Span::Say(", as told: that is yours, and no code's."));
    let published =
        [Span::Say("Published: "), Span::Say(limit.says), Span::Say(" ("), Span::Say(limit.source), Span::Say(").")];
    let mut reply = Reply::of(Status::Answered);
    reply.lines =
        vec![Line::new(Role::Answer, spans), Line::new(Role::Detail, published), Line::say(Role::Detail, DECIDES)];
    reply
}

/// The style a limit that holds is said in: millimetres where it is published so.
pub(super) fn style(job: &Job, limit: &Limit) -> Style {
    if job.settings.law.is_metric(limit) { Style::Millimetres } else { Style::InchesExact }
}
