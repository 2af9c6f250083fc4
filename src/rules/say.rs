//! The pieces findings are said with.

use crate::figure::{Fig, Why};
use crate::job::{Run, RunId};
use crate::measure::Length;
use crate::reply::{Span, Style, Typed};

/// A figure to the tape, in feet and inches.
pub(super) fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

/// A told length in inches alone, as heights and gaps are said.
pub(super) fn inches(l: Length, what: &'static str) -> Span {
    Span::Fig(Fig::told(l, what), Style::Inches)
}

/// A limit in inches alone.
pub(super) fn limit(l: &'static crate::limits::Limit) -> Span {
    Span::Fig(Fig::limit(l), Style::Inches)
}

/// A limit as it holds for the job, in inches alone.
pub(super) fn held(job: &crate::job::Job, l: &'static crate::limits::Limit) -> Span {
    // A published 1070 mm rounded to the tape would say that 42 1/8 is under 42 1/8.
    let style = if job.settings.law.is_metric(l) { Style::Millimetres } else { Style::Inches };
    Span::Fig(crate::solve::in_force(job, l), style)
}

/// The run a finding is about, then what it says.
pub(super) fn about(r: &Run, spans: impl IntoIterator<Item = Span>) -> Vec<Span> {
    of_run(r.id, r.name.as_deref(), spans)
}

/// As [`about`], from a run's number and name.
pub(super) fn of_run(id: RunId, name: Option<&str>, spans: impl IntoIterator<Item = Span>) -> Vec<Span> {
    let number = || fig(&Fig::count(u64::from(id.0), Why::Told("the run's number")));
    let mut said = match name {
        Some(name) => vec![Span::Typed(Typed::new(name))],
        None => vec![Span::Say("run "), number()],
    };
    said.push(Span::Say(": "));
    said.extend(spans);
    said
}
