//! Jobs for the layout tests, and a plain reading of reply lines.
#![allow(dead_code)] // each test crate uses its own part of this

use railhand::figure::Value;
use railhand::job::{Basis, End, Fact, Gate, GateAt, Job, RunId, RunPatch, Setting, StairAt, StairOpening, Told};
use railhand::layout::{Layout, Placed, lay_out};
use railhand::measure::{Length, Tape};
use railhand::reply::{Line, Span};

pub fn inches(n: i64) -> Length {
    Length::inches(n)
}

pub fn frac(n: i128, d: i128) -> Length {
    Length::new(n, d).expect("test lengths are in range")
}

/// A run patch: length in inches between two ends.
pub fn run(length: Length, from: End, to: End) -> RunPatch {
    RunPatch { length: Some(Told::plain(length)), from: Some(from), to: Some(to), ..RunPatch::default() }
}

pub fn basis(patch: RunPatch, basis: Basis) -> RunPatch {
    RunPatch { basis: Some(basis), ..patch }
}

pub fn gate(patch: RunPatch, at: GateAt, width: Option<Length>) -> RunPatch {
    RunPatch { gate: Some(Some(Gate::new(at, width))), ..patch }
}

pub fn stairs(patch: RunPatch, width: Length, at: StairAt) -> RunPatch {
    RunPatch { stairs: Some(StairOpening::new(width, at).into()), ..patch }
}

pub fn bays(patch: RunPatch, n: u16) -> RunPatch {
    RunPatch { bays: Some(Some(n)), ..patch }
}

/// A job of settings and one run.
pub fn job(settings: &[Setting], patch: RunPatch) -> Job {
    let facts: Vec<Fact> = settings.iter().map(|s| Fact::Set(*s)).chain([Fact::Run(RunId(1), patch)]).collect();
    Job::default().with_all(&facts).expect("the test job is possible")
}

pub fn laid(settings: &[Setting], patch: RunPatch) -> Layout {
    lay_out(&job(settings, patch))
}

/// The first run's layout; the test fails where there is none.
pub fn placed(layout: &Layout) -> &Placed {
    layout.runs[0].result.as_ref().expect("the run can be laid out")
}

pub fn centres(p: &Placed) -> Vec<Length> {
    p.posts.iter().map(|post| post.at.as_length().expect("a mark is a length")).collect()
}

pub fn clears(p: &Placed) -> Vec<Length> {
    p.bays.iter().map(railhand::layout::Bay::clear_length).collect()
}

/// A reply line as text, figures as a tape in sixteenths reads them.
pub fn text(line: &Line) -> String {
    line.spans
        .iter()
        .map(|span| match span {
            Span::Say(s) => (*s).to_owned(),
            Span::Fig(f, _) => match f.value() {
                Value::Length(l) => Tape::SIXTEENTHS.read(l),
                Value::Count(n) => n.to_string(),
                Value::Number(q) | Value::Quantity(q, _) => q.to_string(),
                Value::Money(m) => m.to_string(),
            },
            Span::Typed(t) => t.as_str().to_owned(),
            Span::Phrase(s) | Span::Drawn(s) => s.clone(),
        })
        .collect()
}

pub fn texts(lines: &[Line]) -> String {
    lines.iter().map(text).collect::<Vec<_>>().join("\n")
}
