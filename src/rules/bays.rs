//! Checks on bays: their spacing, the line posts between them.

use super::say::{fig, limit, of_run};
use crate::figure::Fig;
use crate::job::Job;
use crate::layout::{Bay, Layout, Limits, Placed, RunLayout};
use crate::limits;
use crate::measure::Length;
use crate::reply::Span;

/// Runs laid out, with their layouts.
fn laid(layout: &Layout) -> impl Iterator<Item = (&RunLayout, &Placed)> {
    layout.runs.iter().filter_map(|r| r.result.as_ref().ok().map(|p| (r, p)))
}

/// The longest rail bay of a run that is at fault, if any is.
fn worst(p: &Placed, fault: impl Fn(&Bay) -> bool) -> Option<&Bay> {
    p.rail_bays().filter(|b| fault(b)).max_by_key(|b| (b.spacing, b.clear_length()))
}

/// "a bay of 7'-0 3/4" clear, 7'-4 1/4" on centre".
fn bay_spans(b: &Bay) -> Vec<Span> {
    let mut spans = vec![Span::Say("a bay of "), fig(&b.clear), Span::Say(" clear")];
    if let Some(centre) = &b.centre {
        spans.extend([Span::Say(", "), fig(centre), Span::Say(" on centre")]);
    }
    spans
}

fn over(limits: &Limits, published: bool, layout: &Layout) -> Vec<Vec<Span>> {
    if limits.published() != published {
        return Vec::new();
    }
    let found = laid(layout).filter_map(|(run, p)| {
        let bay = worst(p, |b| !limits.allow(b.spacing, b.clear_length()))?;
        let mut spans = bay_spans(bay);
        spans.push(Span::Say(" is over the limit of "));
        spans.extend(limit_spans(limits));
        if let Some(fewest) = &p.fewest {
            spans.extend([Span::Say("; the fewest bays that pass: "), fig(fewest)]);
        }
        spans.push(Span::Say("."));
        Some(of_run(run.id, run.name.as_deref(), spans))
    });
    found.collect()
}

fn limit_spans(limits: &Limits) -> Vec<Span> {
    let mut spans: Vec<Span> = limits.centre.iter().flat_map(|f| [fig(f), Span::Say(" on centre")]).collect();
    if let Some(clear) = &limits.clear {
        spans.extend((!spans.is_empty()).then_some(Span::Say(" or ")));
        spans.extend([fig(clear), Span::Say(" clear")]);
    }
    spans
}

/// A told bay count that passes the published spacing.
pub(super) fn over_published(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(&layout.limits, true, layout)
}

/// A told bay count that passes a told limit.
pub(super) fn over_told(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(&layout.limits, false, layout)
}

/// A bay that a told limit lets through, wider than the published spacing.
pub(super) fn told_wider_than_published(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if layout.limits.published() {
        return Vec::new();
    }
    let most = limits::POST_SPACING.length();
    let found = laid(layout).filter_map(|(run, p)| {
        let mut spans = bay_spans(worst(p, |b| b.spacing > most)?);
        spans.extend([Span::Say(" is wider than the published "), fig(&Fig::limit(&limits::POST_SPACING))]);
        spans.push(Span::Say(" on centre, which was not told away."));
        Some(of_run(run.id, run.name.as_deref(), spans))
    });
    found.collect()
}

/// Line posts left out by a told bay count where the published spacing asks for some.
pub(super) fn line_posts_left_out(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if layout.limits.published() { left_out(job, layout) } else { Vec::new() }
}

/// The same where a limit told for the job does: that is nobody's publication.
pub(super) fn line_posts_left_out_of_told(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    if layout.limits.published() { Vec::new() } else { left_out(job, layout) }
}

fn left_out(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let told = |run: &RunLayout| job.run(run.id).is_some_and(|r| r.bays.is_some());
    let bare = |p: &Placed| !p.posts.iter().any(|post| post.kind == crate::layout::Kind::Line);
    let found = laid(layout).filter(|(run, p)| told(run) && bare(p)).filter_map(|(run, p)| {
        let bay = worst(p, |b| !layout.limits.allow(b.spacing, b.clear_length()))?;
        let spans = [
            Span::Say("no line post in "),
            fig(&bay.clear),
            Span::Say(": the rail alone carries the push between its ends."),
        ];
        Some(of_run(run.id, run.name.as_deref(), spans))
    });
    found.collect()
}

/// A bay too short to be meant.
pub(super) fn very_short(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let least = limits::SHORT_BAY.length();
    let shortest = |p: &Placed| -> Option<(Fig, Length)> {
        p.rail_bays().map(|b| (b.clear.clone(), b.clear_length())).min_by_key(|(_, l)| *l)
    };
    let found = laid(layout).filter_map(|(run, p)| {
        let (clear, _) = shortest(p).filter(|(_, l)| *l < least)?;
        let spans = [
            Span::Say("a bay of only "),
            fig(&clear),
            Span::Say(" clear, under "),
            limit(&limits::SHORT_BAY),
            Span::Say(": would one post do for two?"),
        ];
        Some(of_run(run.id, run.name.as_deref(), spans))
    });
    found.collect()
}
