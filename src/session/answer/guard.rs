//! Whether a guard is needed, and whether it is high enough.

use super::Figs;
use crate::figure::{Fig, Value, Why};
use crate::grammar::ask::GuardAsk;
use crate::job::Job;
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status, Style};
use crate::solve::{Engines, Given, in_force, known, solve};

/// The answer to a question about the guard itself.
pub(super) fn guard(job: &Job, ask: GuardAsk) -> (Reply, Figs) {
    match ask {
        GuardAsk::Needed(above) => match above.or_else(|| job.told(RowId::Grade)?.as_length()) {
            Some(_) if !job.settings.law.holds(&limits::GUARD_TRIGGER) => (unheld(), Vec::new()),
            Some(above) => needed(job, above),
            None => (untold(), Vec::new()),
        },
        GuardAsk::HighEnough(high) => high_enough(job, &Fig::told(high, "the guard's height")),
    }
}

fn inches(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::InchesExact)
}

/// Abroad, where no drop is held.
fn unheld() -> Reply {
    let says = "I can't judge that: I hold no drop for there, and the IRC's says nothing. Ask the building department.";
    Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Answered) }
}

/// The rule where no drop is told, and what to tell.
fn untold() -> Reply {
    let (mut reply, _) = super::rule(&limits::GUARD_TRIGGER);
    let says = "How high is the deck above that ground? Say it as \"deck is 28 up\", and I judge it.";
    reply.lines.push(Line::say(Role::Question, says));
    reply
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
    let says = "The drop is looked for at every place along the run, down to the lowest ground within 36 in. of the edge: one spot that is deeper makes it required.";
    reply.lines.push(Line::say(Role::Detail, says));
    reply.lines.extend(source(&limits::GUARD_TRIGGER));
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

fn high_enough(job: &Job, high: &Fig) -> (Reply, Figs) {
    let limit = in_force(job, &limits::GUARD_HEIGHT);
    let past = over(high, &limit);
    let short = past < Length::ZERO;
    let mut reply = Reply::of(Status::Answered);
    reply.values.more = vec![("height", high.clone()), ("guard_height", limit.clone())];
    let spans = if short {
        let why = Why::Formula(
            "the least height less the height told",
            vec![("least", limit.clone()), ("told", high.clone())],
        );
        // Never said smaller than it is: a sixteenth too little still fails.
        let lacks = Fig::length(up(-past), why);
        reply.values.result = Some(lacks.clone());
        vec![
            Span::Say("Short by "),
            inches(&lacks),
            Span::Say(": "),
            inches(high),
            Span::Say(" where a required guard is at least "),
            Span::Fig(limit.clone(), super::law::style(job, &limits::GUARD_HEIGHT)),
            Span::Say(" to its top."),
        ]
    } else {
        vec![
            Span::Say("High enough: "),
            inches(high),
            Span::Say(" where a required guard is at least "),
            Span::Fig(limit.clone(), super::law::style(job, &limits::GUARD_HEIGHT)),
            Span::Say(" to its top."),
        ]
    };
    reply.lines.push(Line::new(Role::Answer, spans));
    let says = if short {
        "Measured from the decking as it is now, up to the top of the rail or cap: raise the rail or add a cap. What was built to an older code stands only where the building department says so."
    } else {
        "Measured from the decking as it is now, up to the top of the rail or cap; some places ask for 42 in."
    };
    reply.lines.push(Line::say(Role::Detail, says));
    reply.lines.extend(source(&limits::GUARD_HEIGHT));
    (reply, vec![("height", high.clone()), ("least", limit)])
}

fn source(limit: &'static Limit) -> [Line; 2] {
    let spans = [Span::Say("Source: "), Span::Say(limit.source), Span::Say(".")];
    let decides = "Your building department decides which code, edition and changes hold where you are.";
    [Line::new(Role::Detail, spans), Line::say(Role::Detail, decides)]
}

/// Up to the next sixteenth.
fn up(l: Length) -> Length {
    let sixteenths = l.ratio(Length::sixteenths(1)).map(|n| n.ceil().to_integer());
    sixteenths.and_then(|n| Length::new(n, 16)).unwrap_or(l)
}
