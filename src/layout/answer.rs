//! A layout in words, shortest first: the answer, the basis, the marks, the bays.

use super::{Bay, BayKind, Lack, Layout, Limits, Placed, Post, RunLayout};
use super::{chosen_words, edge_words};
use crate::figure::{Fig, Value, Why};
use crate::job::{Basis, RunId};
use crate::limits;
use crate::measure::Length;
use crate::reply::{Line, Role, Span, Style, Typed};

/// Which part of a layout was asked for; it comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Focus {
    /// Posts, marks and bays.
    #[default]
    Whole,
    /// How many posts and where.
    Posts,
    /// How far between posts.
    Bays,
    /// How long the run is.
    RunLength,
    /// The marks, the tape hooked at the far end.
    Back,
}

/// The layout in lines: the answer to `focus` first, then what it rests on.
///
/// Cautions are not among them: they come from the rules over the layout.
pub fn answer(layout: &Layout, which: Option<RunId>, focus: Focus) -> Vec<Line> {
    let asked = layout.only(which);
    let mut lines = Vec::new();
    let laid = asked.runs.iter().filter(|r| r.result.is_ok()).count();
    if laid > 1 && focus == Focus::Posts {
        lines.push(edge_words::posts_first(&asked));
    }
    let mut of_the_job: Vec<Lack> = Vec::new();
    for run in &asked.runs {
        let prefix = if asked.runs.len() > 1 || run.name.is_some() { name(run) } else { Vec::new() };
        match &run.result {
            Ok(placed) => lines.extend(placed_lines(run, placed, focus, prefix)),
            Err(lacks) => {
                // What the whole job lacks is asked once.
                let fresh: Vec<Lack> = lacks.iter().copied().filter(|lack| !of_the_job.contains(lack)).collect();
                of_the_job.extend(fresh.iter().filter(|lack| lack.is_of_the_job()));
                lines.extend(lacking(run, &fresh, focus, prefix));
            }
        }
    }
    lines.extend(edge_words::line_said(&asked).filter(|_| laid > 0));
    if laid > 0 && !matches!(focus, Focus::RunLength | Focus::Back) {
        lines.extend(limit_lines(&layout.limits));
    }
    if laid > 1 && focus == Focus::Whole {
        lines.push(edge_words::in_all(&asked));
    }
    if asked.runs.is_empty() {
        lines.push(Line::say(Role::Answer, "No run has been told yet: say how long it is and what it goes between."));
    }
    lines
}

fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

fn count(n: usize) -> Span {
    fig(&Fig::count(n as u64, Why::Formula("counted in the layout", Vec::new())))
}

fn detail(spans: Vec<Span>) -> Line {
    Line::new(Role::Detail, spans)
}

/// The run's name or number, to stand before its answer.
fn name(run: &RunLayout) -> Vec<Span> {
    match &run.name {
        Some(name) => vec![Span::Typed(Typed::new(name)), Span::Say(edge_words::part(run.part))],
        None => {
            let number = Fig::new(Value::Count(u64::from(run.id.0)), Why::Told("the run's number"));
            vec![Span::Say("run "), fig(&number), Span::Say(edge_words::part(run.part))]
        }
    }
}

fn placed_lines(run: &RunLayout, p: &Placed, focus: Focus, prefix: Vec<Span>) -> Vec<Line> {
    let first = |mut spans: Vec<Span>| {
        spans.splice(0..0, prefix.clone());
        Line::new(Role::Answer, spans)
    };
    let mut lines = match focus {
        Focus::Whole => vec![first(counted(p)), basis(run, p)],
        Focus::Posts => vec![first(post_count(p)), basis(run, p)],
        Focus::Bays => vec![first(bay_answer(p)), basis(run, p)],
        Focus::RunLength => vec![first(length(run, p))],
        Focus::Back => marks_back(p, prefix.clone()),
    };
    if matches!(focus, Focus::Whole | Focus::Posts) {
        lines.extend(marks(run.basis, p));
    }
    if focus == Focus::Whole {
        lines.push(bays(p));
    }
    if focus == Focus::Back {
        return lines;
    }
    lines.extend(openings(p));
    lines.extend(edge_words::head(run, p));
    if focus != Focus::RunLength {
        lines.extend(chosen_words::lines(p));
    }
    if p.rounded_up && focus != Focus::RunLength {
        lines.push(detail(vec![Span::Say(
            "One bay more than the exact split needs: rounded to the tape, a bay would pass the limit.",
        )]));
    }
    lines.extend(still(&p.still));
    lines
}

/// "3 posts, 2 bays of 4'-6 3/4" clear, gate 3'-0"".
fn counted(p: &Placed) -> Vec<Span> {
    let mut spans = post_count(p);
    let groups = groups(p);
    let total = p.rail_bays().count();
    if total > 0 {
        spans.extend([Span::Say(", "), count(total), Span::Say(if total == 1 { " bay" } else { " bays" })]);
    }
    match groups.as_slice() {
        [] => {}
        [(bay, _)] => spans.extend([Span::Say(" of "), fig(&bay.clear), Span::Say(" clear")]),
        many => {
            for (i, (bay, n)) in many.iter().enumerate() {
                let lead = if i == 0 { ": " } else { ", " };
                spans.extend([Span::Say(lead), count(*n), Span::Say(" of "), fig(&bay.clear)]);
            }
            spans.push(Span::Say(" clear"));
        }
    }
    for opening in p.bays.iter().filter(|b| b.kind != BayKind::Rail) {
        spans.extend([Span::Say(opening_name(opening.kind)), fig(&opening.clear)]);
    }
    spans
}

fn opening_name(kind: BayKind) -> &'static str {
    match kind {
        BayKind::Rail => ", bay ",
        BayKind::Gate => ", gate ",
        BayKind::Stairs => ", stairs ",
        BayKind::GatedStairs => ", gate across the stairs ",
    }
}

fn post_count(p: &Placed) -> Vec<Span> {
    match p.posts.len() {
        0 => vec![Span::Say("no posts")],
        1 => vec![count(1), Span::Say(" post")],
        n => vec![count(n), Span::Say(" posts")],
    }
}

/// Rail bays grouped by clear and centre distance, in walking order of first sight.
fn groups(p: &Placed) -> Vec<(&Bay, usize)> {
    let mut groups: Vec<(&Bay, usize)> = Vec::new();
    let same = |a: &Bay, b: &Bay| a.clear.value() == b.clear.value();
    for bay in p.rail_bays() {
        match groups.iter_mut().find(|(first, _)| same(first, bay)) {
            Some((_, n)) => *n += 1,
            None => groups.push((bay, 1)),
        }
    }
    groups
}

/// "2 bays of 4'-6 3/4" clear, 4'-10 1/4" on centre".
fn bay_group(p: &Placed, first: &Bay, n: usize) -> Vec<Span> {
    let bays = if n == 1 { " bay of " } else { " bays of " };
    let mut spans = vec![count(n), Span::Say(bays), fig(&first.clear), Span::Say(" clear")];
    let mut seen: Vec<&Fig> = Vec::new();
    for bay in p.rail_bays().filter(|b| b.clear.value() == first.clear.value()) {
        let Some(centre) = &bay.centre else { continue };
        if seen.iter().any(|f| f.value() == centre.value()) {
            continue;
        }
        spans.extend([Span::Say(if seen.is_empty() { ", " } else { " or " }), fig(centre)]);
        seen.push(centre);
    }
    spans.extend((!seen.is_empty()).then_some(Span::Say(" on centre")));
    spans
}

fn bay_answer(p: &Placed) -> Vec<Span> {
    let mut spans = Vec::new();
    for (bay, n) in groups(p) {
        spans.extend((!spans.is_empty()).then_some(Span::Say("; ")));
        spans.extend(bay_group(p, bay, n));
    }
    if spans.is_empty() { vec![Span::Say("no bays of rail")] } else { spans }
}

fn bays(p: &Placed) -> Line {
    let mut spans = bay_answer(p);
    spans.push(Span::Say("."));
    detail(spans)
}

fn basis_name(basis: Basis) -> &'static str {
    match basis {
        Basis::Overall => " out to out",
        Basis::Clear => " clear",
        Basis::Centre => " centre to centre",
        Basis::Edge => " on the decking's edge",
    }
}

fn length(run: &RunLayout, p: &Placed) -> Vec<Span> {
    let mut spans = vec![fig(&p.length), Span::Say(basis_name(run.basis))];
    spans.extend([Span::Say(", from "), Span::Say(p.origin), Span::Say(" to "), Span::Say(p.reaches)]);
    spans.extend(edge_words::on_line(p));
    spans
}

fn basis(run: &RunLayout, p: &Placed) -> Line {
    let mut spans = vec![fig(&p.length), Span::Say(" taken"), Span::Say(basis_name(run.basis))];
    spans.extend([Span::Say(": from "), Span::Say(p.origin), Span::Say(" to "), Span::Say(p.reaches)]);
    spans.extend(edge_words::on_line(p));
    spans.push(Span::Say("."));
    detail(spans)
}

/// The marks of one pull of the tape.
fn marks(basis: Basis, p: &Placed) -> Vec<Line> {
    if p.posts.is_empty() {
        return Vec::new();
    }
    let head =
        vec![Span::Say("Marks, tape hooked on "), Span::Say(p.origin), Span::Say(": centre of post (near face)")];
    std::iter::once(detail(head)).chain(p.posts.iter().map(|post| mark(basis, post))).collect()
}

/// The same marks with the tape hooked at the far end, read from there.
fn marks_back(p: &Placed, prefix: Vec<Span>) -> Vec<Line> {
    let head = [Span::Say("Tape hooked on "), Span::Say(p.reaches), Span::Say(": centre of post (near face)")];
    let head = Line::new(Role::Answer, prefix.into_iter().chain(head));
    let whole = p.length.as_length().unwrap_or(Length::ZERO);
    let from_far = |post: &Post| {
        let at = whole - post.at.as_length().unwrap_or(Length::ZERO);
        let why =
            |says| Why::Formula(says, vec![("length", p.length.clone()), ("mark from the near end", post.at.clone())]);
        let near = Fig::length(at - post.takes / 2, why("length less the mark, less half the post"));
        detail(edge_words::mark(&Post {
            at: Fig::length(at, why("length less the mark")),
            near_face: near,
            ..post.clone()
        }))
    };
    let posts = p.posts.iter().rev().map(from_far);
    std::iter::once(head).chain(posts).collect()
}

fn mark(basis: Basis, post: &Post) -> Line {
    // A post the tape hooks on lies at or behind the tape's start: no mark is pulled for it.
    if post.at.as_length().is_some_and(|l| !l.is_positive()) {
        return detail(edge_words::start_mark(basis, post));
    }
    detail(edge_words::mark(post))
}

fn openings(p: &Placed) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some([left, right]) = &p.flanks {
        let spans = [
            Span::Say("Beside the opening: "),
            fig(left),
            Span::Say(" before it, "),
            fig(right),
            Span::Say(" after it."),
        ];
        lines.push(detail(spans.into()));
    }
    // A gate at the head of recessed stairs is said with the head.
    if let Some(width) = p.beyond.as_ref().filter(|_| p.head.is_none()) {
        let spans = [
            Span::Say("The gate hangs beyond the run: its other jamb stands "),
            fig(width),
            Span::Say(" clear from the run's end post."),
        ];
        lines.push(detail(spans.into()));
    }
    lines
}

/// What is still untold, in one line; the ends taken meanwhile are said.
fn still(lacks: &[Lack]) -> Option<Line> {
    let taken = |lack: &Lack| matches!(lack, Lack::From | Lack::To).then_some(Span::Say(" (an end post is taken)"));
    let facts = lacks.iter().map(|lack| std::iter::once(Span::Say(lack.says())).chain(taken(lack)).collect());
    told_of("Still to tell: ", facts.collect())
}

/// What stands in the way of placing posts.
fn in_the_way(lacks: &[Lack]) -> impl Iterator<Item = Line> {
    let (untold, unfit): (Vec<Lack>, Vec<Lack>) = lacks.iter().partition(|lack| lack.is_untold());
    let words = |lacks: Vec<Lack>| lacks.into_iter().map(|lack| vec![Span::Say(lack.says())]).collect();
    let untold = told_of("Still to tell: ", words(untold));
    untold.into_iter().chain(told_of("It does not work out: ", words(unfit)))
}

fn told_of(lead: &'static str, facts: Vec<Vec<Span>>) -> Option<Line> {
    let mut spans = vec![Span::Say(lead)];
    for (i, fact) in facts.into_iter().enumerate() {
        spans.extend((i > 0).then_some(Span::Say("; ")));
        spans.extend(fact);
    }
    let any = spans.len() > 1;
    spans.push(Span::Say("."));
    any.then(|| detail(spans))
}

fn lacking(run: &RunLayout, lacks: &[Lack], focus: Focus, prefix: Vec<Span>) -> Vec<Line> {
    let mut spans = prefix;
    let length = run.told.map(|t| Fig::told(t.length, "the run's length"));
    match (&length, focus) {
        (Some(length), Focus::RunLength) => spans.extend([fig(length), Span::Say(basis_name(run.basis))]),
        _ => spans.push(Span::Say("Posts cannot be placed yet.")),
    }
    std::iter::once(Line::new(Role::Answer, spans)).chain(in_the_way(lacks)).collect()
}

/// Which limit governed, and whose it is.
fn limit_lines(limits: &Limits) -> Vec<Line> {
    let told = |f: &Fig, what| detail(vec![Span::Say("Limit told: no more than "), fig(f), Span::Say(what)]);
    if limits.published() {
        let source = &limits::POST_SPACING;
        return limits
            .centre
            .iter()
            .map(|most| {
                detail(vec![
                    Span::Say("Limit: no more than "),
                    fig(most),
                    Span::Say(" on centre: "),
                    Span::Say(source.source),
                    Span::Say("; not in the IRC; local rules decide."),
                ])
            })
            .collect();
    }
    let centre = limits.centre.iter().map(|f| told(f, " on centre."));
    centre.chain(limits.clear.iter().map(|f| told(f, " clear."))).collect()
}
