//! Caps: one over each stretch of rail, mitred at shared corners, joined over posts.

use super::bays::Where;
use super::lengths::{CapEnd, cap};
use crate::job::End;
use crate::layout::{BayKind, Layout, Placed, RunLayout};
use crate::measure::{Length, Tape};

/// A piece of cap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CapPiece {
    /// Over which run.
    pub at: Where,
    /// Long point to long point, as the tape reads it.
    pub length: Length,
}

/// The caps of every run, each no longer than the longest stick where one is given. A piece
/// too long is joined over posts; `Err` gives a bay no stick spans.
pub fn caps(layout: &Layout, width: Length, longest: Option<Length>) -> Result<Vec<CapPiece>, Length> {
    let mut pieces = Vec::new();
    for run in &layout.runs {
        let Ok(placed) = &run.result else { continue };
        for (points, ends) in stretches(run, placed) {
            let lengths = join(&points, width, ends, longest)?;
            let at = Where::Run(run.id, run.part);
            pieces.extend(lengths.into_iter().map(|l| CapPiece { at, length: up(layout.tape, l) }));
        }
    }
    Ok(pieces)
}

/// A cap cut short is scrap, one cut long is trimmed: to the next mark up.
fn up(tape: Tape, l: Length) -> Length {
    let near = tape.round(l);
    if near < l { near + Length::new(1, tape.den()).unwrap_or(Length::ZERO) } else { near }
}

/// The unbroken stretches of rail in a run: the places a cap may be joined at, first and last
/// its ends, and how those are cut.
fn stretches(run: &RunLayout, placed: &Placed) -> Vec<(Vec<Length>, [CapEnd; 2])> {
    let mut all = Vec::new();
    let mut k = 0;
    while k < placed.bays.len() {
        if placed.bays[k].kind != BayKind::Rail {
            k += 1;
            continue;
        }
        let rails = placed.bays[k..].iter().take_while(|b| b.kind == BayKind::Rail).count();
        all.push(stretch(run, placed, k, k + rails));
        k += rails;
    }
    all
}

fn stretch(run: &RunLayout, placed: &Placed, from: usize, to: usize) -> (Vec<Length>, [CapEnd; 2]) {
    let bays = &placed.bays[from..to];
    let (first, last) = (bays[0].start, bays[bays.len() - 1].start + bays[bays.len() - 1].clear_length());
    let left = placed.posts.iter().find(|p| p.near + p.width_length() == first);
    let right = placed.posts.iter().find(|p| p.near == last);
    let corner = |at_end: bool, which: usize| {
        at_end && run.meets[which].is_some() && matches!(placed.ends[which], End::Corner | End::InsideCorner)
    };
    let half = |p: Option<&crate::layout::Post>| p.map_or(Length::ZERO, |p| p.width_length() / 2);
    let ends = [corner(from == 0, 0), corner(to == placed.bays.len(), 1)];
    let turn = |mitred, past| if mitred { CapEnd::Mitre(90) } else { CapEnd::Square(past) };
    let joints = bays[1..].iter().filter_map(|b| placed.posts.iter().find(|p| p.near + p.width_length() == b.start));
    let joints = joints.map(|p| p.near + p.width_length() / 2);
    let points = std::iter::once(first - half(left)).chain(joints).chain([last + half(right)]).collect();
    (points, [turn(ends[0], half(left)), turn(ends[1], half(right))])
}

/// The fewest pieces between joints, each as long as a stick allows.
fn join(points: &[Length], width: Length, ends: [CapEnd; 2], longest: Option<Length>) -> Result<Vec<Length>, Length> {
    let flush = CapEnd::Square(Length::ZERO);
    let piece = |a: usize, b: usize| {
        let left = if a == 0 { ends[0] } else { flush };
        let right = if b == points.len() - 1 { ends[1] } else { flush };
        cap(points[b] - points[a], width, [left, right]).unwrap_or(points[b] - points[a])
    };
    let mut pieces = Vec::new();
    let mut from = 0;
    while from < points.len() - 1 {
        let fits = |b: &usize| longest.is_none_or(|most| piece(from, *b) <= most);
        let to = (from + 1..points.len()).rev().find(fits).ok_or_else(|| piece(from, from + 1))?;
        pieces.push(piece(from, to));
        from = to;
    }
    Ok(pieces)
}
