//! Checks on bays: their spacing, the line posts between them.

use super::say::{fig, limit, of_run};
use crate::figure::{Fig, Why};
use crate::job::{Job, PostRole};
use crate::layout::{Bay, Layout, Limits, Placed, RunLayout};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::Span;
use crate::solve::{habit, in_force, limit_length, post_width};

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

/// What a built bay passes: a limit told for the job, or the published spacing, which no told limit takes away.
#[derive(Clone, Copy, PartialEq)]
enum Fault {
    Told,
    Published,
}

/// The one judgement on a bay as it is built, however it came to be so long.
fn fault(job: &Job, limits: &Limits, b: &Bay) -> Option<Fault> {
    if !limits.published() && !limits.allow(b.spacing, b.clear_length()) {
        return Some(Fault::Told);
    }
    (b.spacing > limit_length(job, &limits::POST_SPACING)).then_some(Fault::Published)
}

fn over(fault_of: Fault, job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let limits = &layout.limits;
    let found = laid(layout).filter_map(|(run, p)| {
        let bay = worst(p, |b| fault(job, limits, b) == Some(fault_of))?;
        let mut spans = bay_spans(bay);
        spans.extend(past(job, limits, fault_of));
        // Counted by the limits in force: where one told lets the bay through, it says nothing.
        let fewest = p.fewest.as_ref().filter(|_| fault_of == Fault::Told || limits.published());
        if let Some(fewest) = fewest {
            spans.extend([Span::Say("; the fewest bays that pass: "), fig(fewest)]);
        }
        spans.push(Span::Say("."));
        Some(of_run(run.id, run.name.as_deref(), spans))
    });
    found.collect()
}

/// "is over the limit of 6'-0" on centre", and that a told one does not change it.
fn past(job: &Job, limits: &Limits, fault: Fault) -> Vec<Span> {
    let published = || vec![fig(&in_force(job, &limits::POST_SPACING)), Span::Say(" on centre")];
    if fault == Fault::Published && !limits.published() {
        let lead = std::iter::once(Span::Say(" is wider than the published "));
        return lead.chain(published()).chain([Span::Say(", which the limit told does not take away")]).collect();
    }
    std::iter::once(Span::Say(" is over the limit of ")).chain(limit_spans(limits)).collect()
}

fn limit_spans(limits: &Limits) -> Vec<Span> {
    let mut spans: Vec<Span> = limits.centre.iter().flat_map(|f| [fig(f), Span::Say(" on centre")]).collect();
    if let Some(clear) = &limits.clear {
        spans.extend((!spans.is_empty()).then_some(Span::Say(" or ")));
        spans.extend([fig(clear), Span::Say(" clear")]);
    }
    spans
}

/// A bay built wider than the published spacing, by a told count or under a told limit.
pub(super) fn over_published(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(Fault::Published, job, layout)
}

/// A bay that passes a told limit.
pub(super) fn over_told(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(Fault::Told, job, layout)
}

/// A told limit wider than the published spacing, where no bay is built so yet.
pub(super) fn told_wider_than_published(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let most = in_force(job, &limits::POST_SPACING);
    let built = laid(layout).any(|(_, p)| worst(p, |b| most.as_length().is_some_and(|l| b.spacing > l)).is_some());
    let wide = told_on_centre(job).filter(|told| !built && told.as_length() > most.as_length());
    let spans = |told: Fig| {
        let published =
            [Span::Say(" is wider than the published "), fig(&most), Span::Say(" on centre, which was not told away.")];
        [Span::Say("the limit told, "), fig(&told), Span::Say(" on centre,")].into_iter().chain(published).collect()
    };
    wide.map(spans).into_iter().collect()
}

/// How far on centre the told limits let posts stand: told so, or the clear told and a post.
fn told_on_centre(job: &Job) -> Option<Fig> {
    let clear = job.told(RowId::ClearMax).map(|clear| {
        let post = post_width(job, &[PostRole::Line]);
        let sum = [&clear, &post].into_iter().filter_map(Fig::as_length).fold(Length::ZERO, |a, b| a + b);
        Fig::length(sum, Why::Formula("the most clear + a post", vec![("the most clear", clear), ("a post", post)]))
    });
    job.told(RowId::CentreMax).into_iter().chain(clear).min_by_key(Fig::as_length)
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
        let bay = worst(p, |b| fault(job, &layout.limits, b).is_some())?;
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
    let least = habit(&limits::SHORT_BAY);
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
