//! Several values of one row: how far apart they are, and whether that is allowed.

use super::asked::Asked;
use super::{Figs, say, taken};
use crate::figure::{Fig, Value, Why};
use crate::limits::Limit;
use crate::quantity::{Alike, RowId};
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::solve::{in_force, limit_length};

/// The values of a row told more than once, where something is asked of them together.
pub(super) fn values(asked: &Asked, row: RowId) -> Option<Vec<Value>> {
    let all: Vec<Value> = asked.ask.given.iter().filter(|(r, _)| *r == row).map(|(_, v)| *v).collect();
    (all.len() > 1 && !matches!(row.row().alike, Alike::Any)).then_some(all)
}

/// A word on them together; `None` where they are no lengths.
pub(super) fn word(asked: &Asked, row: RowId, values: &[Value], reply: &mut Reply) -> Option<Figs> {
    let lengths: Option<Vec<_>> =
        values.iter().map(|v| if let Value::Length(l) = v { Some(*l) } else { None }).collect();
    let (lengths, told) = (lengths?, |l| Fig::told(l, row.said()));
    let (least, most) = (told(*lengths.iter().min()?), told(*lengths.iter().max()?));
    let why =
        Why::Formula("the largest less the smallest", vec![("largest", most.clone()), ("smallest", least.clone())]);
    let apart = Fig::length(most.as_length()? - least.as_length()?, why);
    let mut figs = vec![("apart", apart.clone())];
    match row.row().alike {
        Alike::Within(limit) => {
            reply.lines.push(within(asked, limit, &apart, [&most, &least]));
            match fails(asked, limit, &apart) {
                true => reply.findings.push(Finding {
                    rule: limit.id,
                    level: Level::Check,
                    spans: vec![Span::Say(limit.says)],
                    source: asked.job.settings.law.source(limit),
                }),
                false => {
                    reply.lines.push(Line::new(Role::Detail, [Span::Say(limit.says), Span::Say(taken::stop(limit))]));
                }
            }
            figs.push(("limit", in_force(asked.job, limit)));
        }
        Alike::Square => reply.lines.push(square(asked, &apart, [&most, &least])),
        Alike::Any => return None,
    }
    reply.status = Status::Answered;
    reply.values.result = reply.values.result.take().or(Some(apart));
    reply.values.more.extend(figs.iter().cloned());
    Some(figs)
}

fn fails(asked: &Asked, limit: &'static Limit, apart: &Fig) -> bool {
    asked.job.settings.law.holds(limit) && apart.as_length() > Some(limit_length(asked.job, limit))
}

/// "No: 1/2" between 7 1/2" and 7" is over the 3/8" limit (IRC ...)."
fn within(asked: &Asked, limit: &'static Limit, apart: &Fig, [most, least]: [&Fig; 2]) -> Line {
    let law = &asked.job.settings.law;
    if !law.holds(limit) {
        return Line::say(Role::Answer, super::judged::UNKNOWN);
    }
    let over = apart.as_length().cmp(&Some(limit_length(asked.job, limit)));
    let is = match over {
        std::cmp::Ordering::Less => " is under the ",
        std::cmp::Ordering::Equal => " is just the ",
        std::cmp::Ordering::Greater => " is over the ",
    };
    let opens = say::opens(asked.ask.mood, over != std::cmp::Ordering::Greater);
    let spans = [
        Span::Say(opens),
        say::fig(apart),
        Span::Say(" between "),
        say::fig(most),
        Span::Say(" and "),
        say::fig(least),
        Span::Say(is),
        say::fig(&in_force(asked.job, limit)),
        Span::Say(" limit ("),
        Span::Say(law.source(limit)),
        Span::Say(")."),
    ];
    Line::new(Role::Answer, spans)
}

/// "No: 5'-1" is 1/2" longer than 5'-0 1/2", so it is out of square."
fn square(asked: &Asked, apart: &Fig, [most, least]: [&Fig; 2]) -> Line {
    let opens = Span::Say(say::opens(asked.ask.mood, most.value() == least.value()));
    if most.value() == least.value() {
        return Line::new(Role::Answer, [opens, Span::Say("square, both "), say::fig(most), Span::Say(".")]);
    }
    let spans = [
        opens,
        Span::Say("out of square, "),
        say::fig(most),
        Span::Say(" is "),
        say::fig(apart),
        Span::Say(" longer than "),
        say::fig(least),
        Span::Say("."),
    ];
    Line::new(Role::Answer, spans)
}
