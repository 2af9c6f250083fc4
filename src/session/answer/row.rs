//! Rows asked for: the figures, short and first, one line of working, what had no part and what was taken; or what is still needed.

mod alike;
mod anew;
mod as_told;
mod asked;
mod case;
mod compared;
mod counts;
mod each;
mod given;
mod held;
mod judge;
mod judged;
mod lies;
mod metric;
mod needed;
mod say;
mod sides;
mod taken;
mod tried;
mod values;
mod warned;

use super::Figs;
use crate::figure::{Fig, Why};
use crate::grammar::ask::{Mood, RowAsk};
use crate::job::Job;
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status};
use asked::{Asked, Found};
pub(in crate::session) use counts::{settled, to_keep};
pub(super) use given::{beside_told, given};
pub(super) use metric::{in_metric, is_metric};
pub(in crate::session) use sides::of_both;

/// The answer, on the job with what is tried on laid over it.
pub(super) fn row(job: &Job, ask: &RowAsk) -> (Reply, Figs) {
    let tried = match job.with_all(&ask.supposed) {
        Ok(tried) => tried,
        Err(why) => return (super::impossible(&why), Vec::new()),
    };
    let whole = ask;
    let (tried, ask) = &settled(tried, ask);
    let asked = Asked::of(tried, ask);
    let (mut reply, figs) = match ask.mood {
        Mood::Figure => {
            let several = lies::answer(&asked).or_else(|| sides::answer(&asked)).or_else(|| each::each(job, &asked));
            several.unwrap_or_else(|| figures(job, &asked))
        }
        Mood::Judge | Mood::Fault | Mood::Without => judge::judge(job, &asked),
    };
    // What was laid into the run is a premise like any other.
    let answered = reply.status == Status::Answered;
    let laid = whole.given.iter().filter(|given| answered && !ask.given.contains(given));
    laid.for_each(|(row, value)| values::put_row(&mut reply, *row, &Fig::new(*value, Why::Told(row.said()))));
    tried::name(&mut reply, &ask.supposed);
    metric::say(&mut reply, &asked);
    (reply, figs)
}

/// The figures, each with what it is never said without; one question for what lacks.
fn figures(told: &Job, asked: &Asked) -> (Reply, Figs) {
    let (mut found, mut questions) = (Vec::new(), Vec::new());
    for want in &asked.ask.wants {
        match asked.find(*want) {
            // What is usual is no answer to one who gives what it should follow from.
            Ok(one) if asked.is_usual_alone(&one) => questions.push(say::lacking(*want, &[])),
            Ok(one) => found.push(one),
            Err(lacks) => questions.push(say::lacking(*want, &asked.needs(*want, &lacks))),
        }
    }
    // One of several values of a row is no answer where they are not alternatives.
    if let Some(row) = taken::passed_over(asked, &used(&found)).filter(|_| asked.ask.wants.len() == 1) {
        return (Reply { lines: vec![say::which(row)], ..Reply::of(Status::Asks) }, Vec::new());
    }
    if let ([want], [_]) = (&asked.ask.wants[..], &questions[..])
        && let Some((mut reply, by)) = as_told::moved(told, asked, *want).filter(|_| found.is_empty())
    {
        reply.lines.extend(questions);
        return (reply, vec![(want.row().name, by)]);
    }
    let mut reply = Reply::of(if found.is_empty() { Status::Asks } else { Status::Answered });
    if found.is_empty() {
        reply.lines = questions;
        return (reply, Vec::new());
    }
    reply.lines.extend(first(&found));
    let anew: Vec<(Line, Fig)> = found.iter().filter_map(|one| anew::anew(asked, one)).collect();
    let apart = anew.first().map(|(_, apart)| ("apart", apart.clone()));
    reply.lines.extend(anew.into_iter().map(|(line, _)| line));
    let before = found.iter().find_map(|one| as_told::was(told, asked, one)).filter(|_| apart.is_none());
    let (says, before) = before.unzip();
    if let Some(line) = reply.lines.first_mut() {
        line.spans.extend(says.into_iter().flatten());
    }
    reply.lines.extend(found.iter().find_map(|one| say::working(&one.solved.fig)));
    let taken = taken::taken(asked.job, &defaults(&found), figs_of(&found));
    reply.lines.extend(taken::both(taken::unused(asked, &used(&found)), taken));
    reply.lines.extend(questions);
    reply.findings = warned::found(told, asked, &found);
    values::put(&mut reply, &found);
    values::put_given(&mut reply, asked, &used(&found));
    values::put_unused(&mut reply, asked, &used(&found));
    as_told::both_given(&mut reply, asked);
    reply.values.more.extend(apart);
    reply.values.more.extend(before.into_iter().flatten());
    let figs = found.into_iter().map(|one| (one.want.row().name, one.solved.fig)).collect();
    (reply, figs)
}

/// "The gap is 3 11/16"; 9 balusters, the gap 4 9/20"."
fn first(found: &[Found]) -> Option<Line> {
    let mut spans = Vec::new();
    for (i, one) in found.iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend(say::sentence(one.want, &one.solved.fig, i == 0));
        for (row, solved) in one.beside.iter().filter(|(_, s)| s.fig.value() != one.solved.fig.value()) {
            spans.push(Span::Say(", "));
            spans.extend(say::beside(*row, &solved.fig));
        }
    }
    spans.push(Span::Say("."));
    (!found.is_empty()).then(|| Line::new(Role::Answer, spans))
}

fn figs_of<'a>(found: impl IntoIterator<Item = &'a Found>) -> impl Iterator<Item = &'a Fig> {
    found.into_iter().flat_map(|one| one.all().map(|s| &s.fig))
}

fn used<'a>(found: impl IntoIterator<Item = &'a Found>) -> Vec<RowId> {
    found.into_iter().flat_map(|one| one.all().flat_map(|s| s.used.iter().copied())).collect()
}

fn defaults<'a>(found: impl IntoIterator<Item = &'a Found>) -> Vec<RowId> {
    let mut rows: Vec<_> =
        found.into_iter().flat_map(|one| one.all().flat_map(|s| s.defaults.iter().copied())).collect();
    rows.sort();
    rows.dedup();
    rows
}
