//! Caps: one over each stretch of rail, mitred at shared corners, joined over posts.

use super::bays::Where;
use super::lengths::{CapEnd, cap, past_mitre};
use crate::job::{End, Turn};
use crate::layout::{Bay, BayKind, Kind, Layout, Part, Placed, Post, RunLayout};
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
        for (points, ends) in stretches(layout, run, placed) {
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
fn stretches(layout: &Layout, run: &RunLayout, placed: &Placed) -> Vec<(Vec<Length>, [CapEnd; 2])> {
    let mut all = Vec::new();
    let mut k = 0;
    while k < placed.bays.len() {
        if placed.bays[k].kind != BayKind::Rail {
            k += 1;
            continue;
        }
        let rails = placed.bays[k..].iter().take_while(|b| b.kind == BayKind::Rail).count();
        all.push(stretch(layout, run, placed, k, k + rails));
        k += rails;
    }
    all
}

fn stretch(layout: &Layout, run: &RunLayout, placed: &Placed, from: usize, to: usize) -> (Vec<Length>, [CapEnd; 2]) {
    let bays = &placed.bays[from..to];
    let (first, last) = (bays[0].start, bays[bays.len() - 1].start + bays[bays.len() - 1].clear_length());
    let left = placed.posts.iter().find(|p| p.far() == first);
    let right = placed.posts.iter().find(|p| p.near == last);
    let outer = [from.checked_sub(1), Some(to)].map(|k| k.and_then(|k| placed.bays.get(k)));
    let corners = [(left, 0), (right, 1)].map(|(post, which)| corner(layout, run, post?, which, outer[which]));
    let (before, after) = (line_end(left, corners[0]), line_end(right, corners[1]));
    let joints = bays[1..].iter().filter_map(|b| placed.posts.iter().find(|p| p.far() == b.start)).map(Post::centre);
    let start = left.map_or(first, Post::centre) - before.0;
    let end = right.map_or(last, Post::centre) + after.0;
    (std::iter::once(start).chain(joints).chain([end]).collect(), [before.1, after.1])
}

/// A corner a cap turns at: its turn in degrees, and how far each of two posts stands back
/// from the rim's corner.
#[derive(Clone, Copy)]
struct Corner {
    turn: u16,
    held_back: Option<Length>,
}

/// The corner at an end of a stretch of rail, where its guard goes on round it.
fn corner(layout: &Layout, run: &RunLayout, post: &Post, which: usize, outer: Option<&Bay>) -> Option<Corner> {
    if let Some(beyond) = outer {
        return mouth(layout, run, post, beyond);
    }
    let meet = run.meets[which].as_ref()?;
    let turn = match meet.turn {
        Turn::Right(d) | Turn::Left(d) => d,
        Turn::Start | Turn::Free => return None,
    };
    let at_corner = matches!(post.kind, Kind::Fixed(end) if end.is_corner());
    at_corner.then_some(Corner { turn, held_back: meet.held_back })
}

/// At the mouth of stairs let into the deck the guard turns in along the stairs.
fn mouth(layout: &Layout, run: &RunLayout, post: &Post, beyond: &Bay) -> Option<Corner> {
    let stairs = matches!(beyond.kind, BayKind::Stairs | BayKind::GatedStairs);
    let turns_in = stairs && run.part == Part::Whole && post.kind == Kind::Fixed(End::Corner);
    let flanks = layout.runs.iter().filter(|r| r.id == run.id && r.part != Part::Whole);
    let meet = flanks.flat_map(|r| r.meets.iter().flatten()).find(|m| m.run == run.id);
    meet.filter(|_| turns_in).map(|m| Corner { turn: 90, held_back: m.held_back })
}

/// How far past the last post's centre the cap's line goes, and how the cap is cut there.
/// Round a corner the caps meet on the line's corner: over its one post, or past two posts.
fn line_end(post: Option<&Post>, corner: Option<Corner>) -> (Length, CapEnd) {
    let half = post.map_or(Length::ZERO, |p| p.width_length() / 2);
    match corner {
        None => (Length::ZERO, CapEnd::Square(half)),
        Some(Corner { turn, held_back: None }) => (Length::ZERO, CapEnd::Mitre(turn)),
        Some(Corner { turn, held_back: Some(back) }) => (past_two(half, back, turn), CapEnd::Mitre(turn)),
    }
}

/// From the centre of one of two posts to the corner of the line both stand on: half the
/// post and the hold-back to the rim's corner, and from there half the post's width times
/// the tangent of half the turn.
fn past_two(half: Length, back: Length, turn: u16) -> Length {
    half + back + past_mitre(half * 2, turn).unwrap_or(half)
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
