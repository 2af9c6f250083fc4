//! What is said of the deck's outline beside its layout: its sides and corners, from where
//! left and right are seen, what a deck by itself still wants.

use crate::figure::{Fig, Why};
use crate::job::outline::{Filled, filled, stands_free};
use crate::job::{End, Fact, GateAt, Job, Run, RunId, RunPatch, StairAt, Turn, View};
use crate::reply::{Line, Role, Span, Style, Typed};

/// True where a line closes the outline: every side of it is then worth saying again.
pub(super) fn closes(before: &Job, job: &Job, facts: &[Fact]) -> bool {
    let turned = facts.iter().any(|f| matches!(f, Fact::Run(_, p) if p.turn.is_some()));
    turned && is_closed(&filled(job)) && !is_closed(&filled(before))
}

/// True for a walk whose every side is known and that comes home.
fn is_closed(outline: &Filled) -> bool {
    let mut sides = outline.job.runs.iter().filter(|r| r.turn.is_some()).peekable();
    sides.peek().is_some() && outline.open.is_none() && sides.all(|r| r.length.is_some() && r.to.is_some())
}

/// The lines that follow the layout.
pub(super) fn lines(before: &Job, job: &Job, facts: &[Fact]) -> Vec<Line> {
    let outline = filled(job);
    let shaped = facts.iter().any(|f| shapes(job, f));
    let mut lines: Vec<Line> = Vec::new();
    lines.extend(sides(&outline).filter(|_| shaped));
    lines.extend(seen(before, job, facts));
    let free = facts.iter().any(|f| matches!(f, Fact::Run(_, p) if p.turn == Some(Turn::Free)));
    let stairs = job.no_stairs || job.runs.iter().any(|r| !r.stairs.is_empty() || r.gate.is_some());
    if free && stands_free(job) && !stairs {
        let says = "Still to tell: which side the steps come up on, and how wide they are; or say no stairs.";
        lines.push(Line::say(Role::Detail, says));
    }
    lines
}

/// True for a fact that gives the outline its shape.
fn shapes(job: &Job, fact: &Fact) -> bool {
    match fact {
        Fact::Run(id, p) => p.turn.is_some() || p.length.is_some() && job.run(*id).is_some_and(|r| r.turn.is_some()),
        Fact::DeckAlong(_) | Fact::DeckOut(_) => true,
        _ => false,
    }
}

/// "The sides in order: left 12'-0", corner, front 10'-0", inside corner, ...", where the
/// outline is no plain rectangle.
fn sides(outline: &Filled) -> Option<Line> {
    let runs: Vec<&Run> = outline.job.runs.iter().filter(|r| r.turn.is_some()).collect();
    let plain = |r: &&Run| matches!(r.turn, Some(Turn::Start | Turn::Free | Turn::Right(90)));
    if runs.iter().all(plain) || runs.len() < 3 {
        return None;
    }
    let mut spans = vec![Span::Say("The sides in order: ")];
    for (i, run) in runs.iter().enumerate() {
        if i > 0 {
            spans.extend([Span::Say(", "), Span::Say(run.from.map_or("corner", End::name)), Span::Say(", ")]);
        }
        spans.extend(side(run, outline.derived.contains(&run.id)));
    }
    spans.push(Span::Say("."));
    Some(Line::new(Role::Detail, spans))
}

fn side(run: &Run, derived: bool) -> Vec<Span> {
    let mut spans = match &run.name {
        Some(name) => vec![Span::Typed(Typed::new(name))],
        None => vec![Span::Say("run "), number(run.id)],
    };
    spans.push(Span::Say(" "));
    match run.length {
        Some(told) => {
            let why =
                if derived { Why::Formula("what the other sides leave", Vec::new()) } else { Why::Told("the side") };
            spans.push(Span::Fig(Fig::length(told.length, why), Style::Tape));
        }
        None => spans.push(Span::Say("still to tell")),
    }
    spans.extend(derived.then_some(Span::Say(" (follows from the others)")));
    spans
}

fn number(id: RunId) -> Span {
    Span::Fig(Fig::count(u64::from(id.0), Why::Told("the run's number")), Style::Tape)
}

/// From where left and right are seen, once: where they first come into the job.
fn seen(before: &Job, job: &Job, facts: &[Fact]) -> Option<Line> {
    let told = facts.iter().any(|f| matches!(f, Fact::Set(crate::job::Setting::View(_))));
    let first = facts.iter().any(sided) && !before.runs.iter().any(has_sides);
    (told || first).then(|| Line::say(Role::Detail, seen_from(job)))
}

/// Left and right, as the job has them.
pub(super) fn seen_from(job: &Job) -> &'static str {
    match crate::solve::choice::view(job) {
        _ if stands_free(job) => "Left and right as seen standing at the back side, looking to the front.",
        Some(View::Yard) => "Left and right as seen from the yard, looking at the house.",
        _ => "Left and right as seen standing at the house, looking out.",
    }
}

fn handed(name: Option<&str>) -> bool {
    matches!(name, Some("left" | "right"))
}

fn sided(fact: &Fact) -> bool {
    let Fact::Run(_, RunPatch { name, gate, stairs, .. }) = fact else { return false };
    let gate = gate.flatten().is_some_and(|g| matches!(g.at, GateAt::Left | GateAt::Right));
    let stairs = stairs.iter().flat_map(|s| s.iter()).any(|s| s.at != StairAt::Middle);
    handed(name.as_deref()) || gate || stairs
}

fn has_sides(run: &Run) -> bool {
    let gate = run.gate.is_some_and(|g| matches!(g.at, GateAt::Left | GateAt::Right));
    handed(run.name.as_deref()) || gate || run.stairs.iter().any(|s| s.at != StairAt::Middle)
}
