//! Stairs recessed into the deck: the guard turns in at their mouth, along both flanks, to
//! their head. The mouth has two outside corners, the head two inside ones.

use super::corner::at_corner;
use super::ground::{Ground, Neighbour};
use super::opening::{Built, built};
use super::place::laid;
use super::sizes::{post_width, roles};
use super::{Lack, Part, RunLayout};
use crate::figure::{Fig, Why};
use crate::job::{Basis, End, GateAt, Run, StairAt, StairOpening, Told, Turn};
use crate::measure::Length;

const MOUTH: Turn = Turn::Right(90);
const HEAD: Turn = Turn::Left(90);

/// The flanks of a run's recessed stairs, each a little run laid along the decking's edge.
pub(super) fn in_flanks(run: &Run, ground: &Ground) -> Vec<RunLayout> {
    let all = run.stairs.along(run.length.map(|t| t.length));
    let recessed = all.iter().zip(0..).filter_map(|(s, n)| s.recess.map(|deep| (s, n, deep)));
    recessed.flat_map(|(stairs, n, deep)| two_flanks(run, stairs, n, deep, ground)).collect()
}

/// The flanks left and right of a run's `n`th stairs from the left.
fn two_flanks(run: &Run, stairs: &StairOpening, n: u8, deep: Length, ground: &Ground) -> [RunLayout; 2] {
    let gate = across(run, stairs);
    let mouth = Neighbour { turn: Some(MOUTH), run: Some(run.id), later: true, ..Neighbour::default() };
    let head = Neighbour { turn: Some(HEAD), gate, ..Neighbour::default() };
    let flank = |part, from, to, ends: [Neighbour; 2]| {
        let little = Run {
            name: run.name.clone(),
            length: Some(Told::plain(deep)),
            basis: Some(Basis::Edge),
            from: Some(from),
            to: Some(to),
            ..Run::untold(run.id)
        };
        let mut layout = laid(&little, ground, ends, part);
        if let Ok(placed) = &mut layout.result {
            placed.head = built(stairs, ground).and_then(|b| head_clear(&b, gate, ground)).ok();
            placed.beyond = placed.head.clone().filter(|_| gate && part == Part::InLeft(n));
        }
        layout
    };
    [
        flank(Part::InLeft(n), End::Corner, End::InsideCorner, [mouth, head]),
        flank(Part::InRight(n), End::InsideCorner, End::Corner, [head, mouth]),
    ]
}

/// True where the run's gate hangs across these stairs.
pub(super) fn across(run: &Run, stairs: &StairOpening) -> bool {
    run.gate.is_some_and(|g| g.at == GateAt::Stairs || g.at == GateAt::Middle && stairs.at == StairAt::Middle)
}

/// True where the run's gate hangs across stairs in it.
pub(super) fn across_any(run: &Run) -> bool {
    run.stairs.iter().any(|s| across(run, s))
}

/// The opening between two posts of recessed stairs: hole + 2 x line - post.
fn between(built: &Built, turn: Turn, size: &Fig, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    let line = ground.line.as_ref().map_err(Clone::clone)?;
    let at = at_corner(turn, size, line, ground.settings).ok_or_else(|| vec![Lack::Turn])?;
    // At the mouth the posts stand so far before and after the hole; at the head so far past its corners.
    let in_from = if turn == HEAD { at.line } else { at.post };
    let set_back = in_from.as_length().map_or(Length::ZERO, |l| if turn == HEAD { -l } else { l });
    let clear = built.stairs.width + set_back * 2 - size.as_length().unwrap_or(Length::ZERO);
    let inputs = vec![("hole", built.width.clone()), ("line inside the edge", line.clone()), ("post", size.clone())];
    let why = Why::Formula("the hole and twice what the posts stand back from it, less a post", inputs);
    if clear.is_positive() { Ok(Fig::length(clear, why)) } else { Err(vec![Lack::Room]) }
}

/// The clear between the posts at the stairs' mouth.
pub(super) fn mouth_clear(built: &Built, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    between(built, MOUTH, &post_width(ground.settings, &roles(End::Corner, false)), ground)
}

/// The clear between the posts at the stairs' head, where a gate hangs.
pub(super) fn head_clear(built: &Built, gate: bool, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    between(built, HEAD, &post_width(ground.settings, &roles(End::InsideCorner, gate)), ground)
}
