//! Checks on bays: their spacing, the line posts between them.

use super::say::{fig, limit, of_run};
use crate::figure::{Fig, Why};
use crate::job::{Job, PostRole};
use crate::layout::{Bay, Layout, Limits, Placed, RunLayout, post_width};
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

/// What a built bay passes: a limit told for the job, or the published spacing, which no told limit takes away.
#[derive(Clone, Copy, PartialEq)]
enum Fault {
    Told,
    Published,
}

/// The one judgement on a bay as it is built, however it came to be so long.
fn fault(limits: &Limits, b: &Bay) -> Option<Fault> {
    if !limits.published() && !limits.allow(b.spacing, b.clear_length()) {
        return Some(Fault::Told);
    }
    (b.spacing > limits::POST_SPACING.length()).then_some(Fault::Published)
}

fn over(fault_of: Fault, layout: &Layout) -> Vec<Vec<Span>> {
    let limits = &layout.limits;
    let found = laid(layout).filter_map(|(run, p)| {
        let bay = worst(p, |b| fault(limits, b) == Some(fault_of))?;
        let mut spans = bay_spans(bay);
        spans.extend(past(limits, fault_of));
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
fn past(limits: &Limits, fault: Fault) -> Vec<Span> {
    let published = || vec![fig(&Fig::limit(&limits::POST_SPACING)), Span::Say(" on centre")];
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
pub(super) fn over_published(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(Fault::Published, layout)
}

/// A bay that passes a told limit.
pub(super) fn over_told(_: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    over(Fault::Told, layout)
}

/// A told limit wider than the published spacing, where no bay is built so yet.
pub(super) fn told_wider_than_published(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let most = Fig::limit(&limits::POST_SPACING);
    let built = laid(layout).any(|(_, p)| worst(p, |b| b.spacing > limits::POST_SPACING.length()).is_some());
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
    let settings = &job.settings;
    let centre = settings.centre_max.map(|l| Fig::told(l, "the most on centre"));
    let clear = settings.clear_max.map(|l| {
        let (clear, post) = (Fig::told(l, "the most clear"), post_width(settings, &[PostRole::Line]));
        let sum = l + post.as_length().unwrap_or(Length::ZERO);
        Fig::length(sum, Why::Formula("the most clear + a post", vec![("the most clear", clear), ("a post", post)]))
    });
    centre.into_iter().chain(clear).min_by_key(Fig::as_length)
}

/// Line posts left out by a told bay count where the limits ask for some.
pub(super) fn line_posts_left_out(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let told = |run: &RunLayout| job.run(run.id).is_some_and(|r| r.bays.is_some());
    let bare = |p: &Placed| !p.posts.iter().any(|post| post.kind == crate::layout::Kind::Line);
    let found = laid(layout).filter(|(run, p)| told(run) && bare(p)).filter_map(|(run, p)| {
        let bay = worst(p, |b| fault(&layout.limits, b).is_some())?;
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
