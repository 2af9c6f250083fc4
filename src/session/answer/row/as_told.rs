//! What a figure was before what the question says anew: "57\", 3\" less than the 60\" as told"; and by how much it moves where nobody knows
//! what it was.

use super::asked::{Asked, Found};
use super::compared::apart;
use super::say;
use crate::figure::{Fig, Value, Why};
use crate::job::{Job, retold};
use crate::provide;
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::solve::{Given, moves_by};

/// What is said of it, and its figures by their names among the values.
type Before = (Vec<Span>, [(&'static str, Fig); 2]);

/// The figure as the job has it, and how far the answer is from it; `None` where the question says nothing anew, or it comes to the same.
pub(super) fn was(told: &Job, asked: &Asked, found: &Found) -> Option<Before> {
    let anew = said_anew(told, asked);
    let replaced = told != asked.job && stands_otherwise(told, asked.job);
    let moved = replaced || anew.iter().any(|row| found.solved.used.contains(row));
    let only = asked.given.rows().all(|row| anew.contains(&row)) && (told == asked.job || replaced);
    (moved && only).then_some(())?;
    let before =
        provide::ask(found.want, &Given::default(), told).ok().filter(|s| !s.defaults.contains(&found.want))?;
    let (is, was) = (&found.solved.fig, before.fig);
    let apart = apart(&was, is).filter(|apart| apart.value() != Value::Count(0) && is.value() != was.value())?;
    let than = if is.as_q() > was.as_q() { " more than the " } else { " less than the " };
    let spans = vec![Span::Say(" That is "), say::fig(&apart), Span::Say(than), say::fig(&was), Span::Say(" as told.")];
    Some((spans, [("as_told", was), ("apart", apart)]))
}

/// True where what is tried on takes the place of what was told, and adds nothing: another size of the same gate.
fn stands_otherwise(told: &Job, tried: &Job) -> bool {
    told.runs.len() == tried.runs.len() && retold(told).len() == retold(tried).len()
}

/// The rows the question gives another figure than they were told.
fn said_anew(told: &Job, asked: &Asked) -> Vec<RowId> {
    let anew = |row: &RowId| {
        let (before, now) = (told.told(*row), asked.given.get(*row));
        before.zip(now).is_some_and(|(before, now)| before.value() != now.value())
    };
    asked.given.rows().filter(anew).collect()
}

/// By how much a row moves that lacks a figure of its own, where what it is a sum of is said anew: "6\" more, whatever it is".
pub(super) fn moved(told: &Job, asked: &Asked, want: RowId) -> Option<(Reply, Fig)> {
    let [row] = said_anew(told, asked)[..] else { return None };
    let (was, is) = (told.told(row)?, asked.given.get(row)?.clone());
    let by = moves_by(want, row, &was, &is)?;
    let more = by.as_length().is_some_and(|l| l.is_positive());
    let size = Fig::length(by.as_length().map(|l| if more { l } else { -l })?, by.why().clone());
    let than = if more { " more than it was" } else { " less than it was" };
    let spans = [
        Span::Say("All else the same, "),
        Span::Say("the "),
        Span::Say(want.row().name),
        Span::Say(" comes to "),
        say::fig(&size),
        Span::Say(than),
        Span::Say(": "),
        Span::Say(row.row().name),
        Span::Say(" "),
        say::fig(&was),
        Span::Say(", then "),
        say::fig(&is),
        Span::Say("."),
    ];
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.values.result = Some(size.clone());
    reply.values.more.extend([("apart", size.clone()), ("with_first", was), ("with_second", is)]);
    Some((reply, size))
}

/// A row given twice, as how it stood and how it is now: both are named.
pub(super) fn both_given(reply: &mut Reply, asked: &Asked) {
    let mut over = asked.over();
    let (Some((row, first)), None) = (over.next(), over.next()) else { return };
    let Some(second) = asked.given.get(row) else { return };
    let given = |value: Value| Fig::new(value, Why::Told("as given"));
    reply.values.more.extend([("with_first", given(first)), ("with_second", second.clone())]);
}
