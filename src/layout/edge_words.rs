//! How a layout along the decking's edge is said: the line, the corners, posts in all.

use super::{Layout, Part, Placed, Post, RunLayout};
use crate::figure::{Fig, Why};
use crate::job::Basis;
use crate::measure::Length;
use crate::reply::{Line, Role, Span, Style};

fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

fn detail(spans: Vec<Span>) -> Line {
    Line::new(Role::Detail, spans)
}

/// A length below nothing as one above it, for "past the edge".
fn past(f: &Fig) -> Option<Fig> {
    let l = f.as_length().filter(|l| *l < Length::ZERO)?;
    Some(Fig::length(-l, Why::Formula("so far past the edge that the tape hooks on", vec![("mark", f.clone())])))
}

/// Where the baluster line lies, once for the layout.
pub(super) fn line_said(layout: &Layout) -> Option<Line> {
    let line = layout.line.as_ref()?;
    let spans = match (past(line), line.as_length()) {
        (Some(out), _) => vec![fig(&out), Span::Say(" outside the decking's edge.")],
        (None, Some(l)) if l.is_zero() => vec![Span::Say("on the decking's edge.")],
        _ => vec![fig(line), Span::Say(" inside the decking's edge.")],
    };
    Some(detail([Span::Say("Baluster line, through the posts' centres: ")].into_iter().chain(spans).collect()))
}

/// What follows the basis: the run's length along the line.
pub(super) fn on_line(p: &Placed) -> Vec<Span> {
    let said = p.on_line.as_ref().map(|l| vec![Span::Say("; "), fig(l), Span::Say(" on the baluster line")]);
    said.unwrap_or_default()
}

/// Which part of its run a stretch is.
pub(super) fn part(p: Part) -> &'static str {
    match p {
        Part::Whole | Part::Left | Part::Between(_) | Part::Right => ": ",
        Part::InLeft(_) => ", in along the stairs on the left: ",
        Part::InRight(_) => ", out along the stairs on the right: ",
    }
}

/// The clear between the posts at the head of recessed stairs, said with their left flank.
pub(super) fn head(run: &RunLayout, p: &Placed) -> Option<Line> {
    let head = p.head.as_ref().filter(|_| matches!(run.part, Part::InLeft(_)))?;
    let tail = if p.beyond.is_some() { " clear; the gate hangs there." } else { " clear." };
    Some(detail(vec![Span::Say("Between the posts at the stairs' head: "), fig(head), Span::Say(tail)]))
}

/// The first post's mark where its centre is not past the tape's start on the run's side.
pub(super) fn start_mark(basis: Basis, post: &Post) -> Vec<Span> {
    let kind = Span::Say(post.kind.post());
    match (basis, past(&post.at), past(&post.near_face)) {
        (Basis::Edge, Some(at), _) => vec![Span::Say("  "), fig(&at), Span::Say(" past the edge: "), kind],
        (Basis::Edge, None, Some(near)) => {
            vec![Span::Say("  tape's start (near face "), fig(&near), Span::Say(" past the edge): "), kind]
        }
        _ => vec![Span::Say("  tape's start: "), kind],
    }
}

/// A mark, its near face past the edge where it is.
pub(super) fn mark(post: &Post) -> Vec<Span> {
    let mut spans = vec![Span::Say("  "), fig(&post.at), Span::Say("  (")];
    match past(&post.near_face) {
        Some(near) => spans.extend([fig(&near), Span::Say(" past the edge)  ")]),
        None => spans.extend([fig(&post.near_face), Span::Say(")  ")]),
    }
    spans.push(Span::Say(post.kind.post()));
    spans
}

/// How the posts of several runs are counted.
fn counted(layout: &Layout) -> &'static str {
    let met = || layout.runs.iter().flat_map(|r| r.meets.iter().flatten());
    let shares = met().any(|m| m.gap.is_none());
    match (met().next().is_some(), shares, met().any(|m| m.taken)) {
        (true, true, false) => ", a corner post that two runs share counted once.",
        (true, true, true) => {
            ", a corner post that two runs share counted once: a run told after another is taken to start at the corner where that one ends."
        }
        (true, false, false) => ", two posts at each outside corner.",
        (true, false, true) => {
            ", two posts at each outside corner: a run told after another is taken to start at the corner where that one ends."
        }
        (false, ..) => ", run by run: a corner post that two of these runs share would be counted twice.",
    }
}

/// The posts in all, as the answer to "how many posts".
pub(super) fn posts_first(layout: &Layout) -> Line {
    let [(_, posts), _] = super::values::counts(layout);
    let unlaid = layout.runs.iter().any(|r| r.result.is_err());
    let tail = if unlaid { " posts in the runs that can be laid out" } else { " posts in all" };
    Line::new(Role::Answer, [fig(&posts), Span::Say(tail), Span::Say(counted(layout))])
}

/// Posts and bays in all, after the runs.
pub(super) fn in_all(layout: &Layout) -> Line {
    let [(_, posts), (_, bays)] = super::values::counts(layout);
    let tail = Span::Say(counted(layout));
    detail(vec![Span::Say("In all: "), fig(&posts), Span::Say(" posts, "), fig(&bays), Span::Say(" bays"), tail])
}
