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

/// "run 2, " or the run's name, to stand before what is wrong with it.
pub(super) fn run(id: RunId, name: Option<&str>) -> [Span; 2] {
    match name {
        Some(name) => [Span::Typed(Typed::new(name)), Span::Say(": ")],
        None => [Span::Say("run "), fig(&Fig::count(u64::from(id.0), Why::Told("the run's number")))],
    }
}

/// The run a finding is about, then what it says.
pub(super) fn about(r: &Run, spans: impl IntoIterator<Item = Span>) -> Vec<Span> {
    of_run(r.id, r.name.as_deref(), spans)
}

/// As [`about`], from a run's number and name.
pub(super) fn of_run(id: RunId, name: Option<&str>, spans: impl IntoIterator<Item = Span>) -> Vec<Span> {
    let mut said: Vec<Span> = run(id, name).into();
    if name.is_none() {
        said.push(Span::Say(": "));
    }
    said.extend(spans);
    said
}
