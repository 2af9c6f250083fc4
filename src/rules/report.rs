//! A layout asked about, answered: lines, figures, findings, in one value.

use super::RULES;
use crate::job::outline::filled;
use crate::job::{Job, RunId};
use crate::layout::{Focus, Layout, answer, draw, lay_out, plan, values};
use crate::limits::Trust;
use crate::reply::{Finding, Line, Role, Span, Values};

/// The parts of a reply about the layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// The answer, the drawing where the whole layout was asked, then the cautions.
    pub lines: Vec<Line>,
    /// The figures.
    pub values: Values,
    /// What the rules found.
    pub findings: Vec<Finding>,
}

/// What every rule finds, the gravest first.
pub fn check(job: &Job, layout: &Layout) -> Vec<Finding> {
    let mut findings: Vec<Finding> = RULES.iter().flat_map(|r| r.findings(job, layout)).collect();
    findings.sort_by_key(|f| f.level);
    findings
}

/// Findings as caution lines, and once who decides where a published rule is among them.
pub fn cautions(findings: &[Finding]) -> Vec<Line> {
    let mut lines: Vec<Line> = findings.iter().map(caution).collect();
    let published = |f: &Finding| super::find(f.rule).is_some_and(|r| r.limit.trust != Trust::Practice);
    if findings.iter().any(published) {
        lines.push(Line::say(Role::Caution, "Your building department decides."));
    }
    lines
}

fn caution(f: &Finding) -> Line {
    use crate::reply::Level::{Check, Note, Stop};
    let level = match f.level {
        Stop => "Stop: ",
        Check => "Check: ",
        Note => "Note: ",
    };
    let mut spans = vec![Span::Say(level)];
    spans.extend(f.spans.iter().cloned());
    let rule = super::find(f.rule);
    if rule.is_some_and(|r| r.limit.trust != Trust::Practice) {
        spans.extend([Span::Say(" ("), Span::Say(f.source), Span::Say(")")]);
    }
    Line::new(Role::Caution, spans)
}

/// The layout of one run, or of all: answered, drawn `width` columns wide and checked.
/// Findings on other runs than the one asked about are left out.
pub fn report(job: &Job, which: Option<RunId>, focus: Focus, width: usize) -> Report {
    report_on(job, |id| which.is_none_or(|only| only == id), focus, width)
}

/// As [`report`], on the runs that `keep` holds. They are laid out with all the others, for
/// a side of the outline hangs on its neighbours.
pub fn report_on(job: &Job, keep: impl Fn(RunId) -> bool, focus: Focus, width: usize) -> Report {
    let layout = lay_out(job).keeping(&keep);
    let mut asked = filled(job).job;
    asked.runs.retain(|r| keep(r.id));
    let findings = check(&asked, &layout);
    let mut lines = answer(&layout, None, focus);
    if focus == Focus::Whole {
        let sides: Vec<RunId> = filled(job).job.runs.iter().filter(|r| r.turn.is_some()).map(|r| r.id).collect();
        let whole = sides.len() >= 3 && sides.iter().all(|id| keep(*id));
        let planned = if whole { plan(job, width) } else { Vec::new() };
        lines.extend(planned.into_iter().map(|text| Line::new(Role::Drawing, [Span::Drawn(text)])));
        let drawn = layout.runs.iter().flat_map(|r| draw(r, width, layout.tape));
        lines.extend(drawn.map(|text| Line::new(Role::Drawing, [Span::Drawn(text)])));
    }
    lines.extend(cautions(&findings));
    Report { lines, values: values(&layout), findings }
}
