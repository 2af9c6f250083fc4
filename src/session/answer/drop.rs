//! Whether a guard is needed, where the drop is told.

use super::Figs;
use crate::figure::{Fig, Value, Why};
use crate::job::{Fact, FlightFact, Job, Setting};
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::{Engines, Given, in_force, known, solve};

/// The rule when a guard is needed, led by what it comes to at the drop the job tells of.
pub(super) fn led_by_the_drop(job: &Job, limit: &Limit, (mut rule, figs): (Reply, Figs)) -> (Reply, Figs) {
    let judges = limit.id == limits::GUARD_TRIGGER.id && job.settings.law.holds(&limits::GUARD_TRIGGER);
    let Some(above) = job.told(RowId::Grade).and_then(|v| v.as_length()).filter(|_| judges) else {
        return (rule, figs);
    };
    let (mut reply, figs) = verdict(job, above);
    reply.lines.append(&mut rule.lines);
    reply.values.more.append(&mut rule.values.more);
    (reply, figs)
}

/// Whether a guard is needed, where facts tell of nothing but how high the deck stands or how the ground falls below
/// a deck of a known height.
pub(super) fn guard_needed(job: &Job, facts: &[Fact]) -> Option<(Reply, Figs)> {
    let of_it = |f: &Fact| matches!(f, Fact::Set(Setting::Grade(_)) | Fact::Flight(FlightFact::Fall(_)));
    let above = job.told(RowId::Grade)?.as_length().filter(|_| !facts.is_empty() && facts.iter().all(of_it))?;
    let held = job.settings.law.holds(&limits::GUARD_TRIGGER);
    Some(if held { needed(job, above) } else { (unheld(), Vec::new()) })
}

fn inches(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::InchesExact)
}

/// Abroad, where no drop is held.
fn unheld() -> Reply {
    let says = "I can't judge that: I hold no drop for there, and the IRC's says nothing. Ask the building department.";
    Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Answered) }
}

fn over(a: &Fig, limit: &Fig) -> Length {
    a.as_length().unwrap_or(Length::ZERO) - limit.as_length().unwrap_or(Length::ZERO)
}

/// The drop where the deck stands so high: told, or made with what the ground falls.
fn drop_below(job: &Job, above: Length, falls: bool) -> Fig {
    let given = Given::of([(RowId::Grade, Value::Length(above))]);
    let solved = solve(RowId::Drop, &given, job, &Engines::NONE).ok().filter(|_| falls);
    solved.map_or_else(|| Fig::told(above, "the drop"), |s| s.fig)
}

fn needed(job: &Job, above: Length) -> (Reply, Figs) {
    let (mut reply, figs) = verdict(job, above);
    let says = "The drop is looked for at every place along the run, down to the lowest ground within 36 in. of the edge: one spot that is deeper makes it required.";
    reply.lines.push(Line::say(Role::Detail, says));
    reply.lines.extend(source(&limits::GUARD_TRIGGER));
    (reply, figs)
}

/// Yes or no at the drop, and what that is made of.
fn verdict(job: &Job, above: Length) -> (Reply, Figs) {
    let fall = known(job, RowId::FallWithin).filter(|f| f.as_length().is_some_and(Length::is_positive));
    let drop = &drop_below(job, above, fall.is_some());
    let limit = in_force(job, &limits::GUARD_TRIGGER);
    let past = over(drop, &limit);
    let (lead, tail) = if past.is_positive() {
        ("Yes: a drop of ", " is more than ")
    } else if past == Length::ZERO {
        ("By the words no, and by a hair: a drop of ", " is not more than ")
    } else {
        ("No: a drop of ", " is not more than ")
    };
    let own = !matches!(limit.why(), Why::Limit(_));
    let whose = if own { ", by what you told me holds here." } else { ", so far as the model code goes." };
    let spans = [
        Span::Say(lead),
        inches(drop),
        Span::Say(tail),
        Span::Fig(limit.clone(), super::law::style(job, &limits::GUARD_TRIGGER)),
        Span::Say(whose),
    ];
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.lines.extend(fall.map(|f| made_up(above, &f)));
    reply.values.guard_needed = Some(past.is_positive());
    reply.values.more = vec![("drop", drop.clone()), ("guard_trigger", limit.clone())];
    (reply, vec![("drop", drop.clone()), ("limit", limit)])
}

/// What a drop over falling ground is made of.
fn made_up(above: Length, fall: &Fig) -> Line {
    let spans = [
        inches(&Fig::told(above, "the height above ground")),
        Span::Say(" at the edge, and the ground falls "),
        inches(fall),
        Span::Say(" more within "),
        Span::Fig(Fig::limit(&limits::GUARD_REACH), Style::Inches),
        Span::Say(" of it, as told."),
    ];
    Line::new(Role::Detail, spans)
}

fn source(limit: &'static Limit) -> [Line; 2] {
    let spans = [Span::Say("Source: "), Span::Say(limit.source), Span::Say(".")];
    let decides = "Your building department decides which code, edition and changes hold where you are.";
    [Line::new(Role::Detail, spans), Line::say(Role::Detail, decides)]
}
