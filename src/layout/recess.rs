//! Stairs recessed into the deck: the guard turns in at their mouth, along both flanks, to
//! their head. The mouth has two outside corners, the head two inside ones.

use super::corner::at_corner;
use super::ground::{Ground, Neighbour};
use super::place::laid;
use super::sizes::{post_width, roles};
use super::{Lack, Part, RunLayout};
use crate::figure::{Fig, Why};
use crate::job::{Basis, End, GateAt, Run, StairOpening, Told, Turn};
use crate::measure::Length;

const MOUTH: Turn = Turn::Right(90);
const HEAD: Turn = Turn::Left(90);

/// The two flanks of a run's recessed stairs, each a little run laid along the decking's edge.
pub(super) fn in_flanks(run: &Run, ground: &Ground) -> Vec<RunLayout> {
    let Some((stairs, deep)) = run.stairs.and_then(|s| s.recess.map(|deep| (s, deep))) else { return Vec::new() };
    let gate = across(run);
    let mouth = Neighbour { turn: Some(MOUTH), run: Some(run.id), ..Neighbour::default() };
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
            placed.head = head_clear(stairs, gate, ground).ok();
            placed.beyond = placed.head.clone().filter(|_| gate && part == Part::InLeft);
        }
        layout
    };
    vec![
        flank(Part::InLeft, End::Corner, End::InsideCorner, [mouth, head]),
        flank(Part::InRight, End::InsideCorner, End::Corner, [head, mouth]),
    ]
}

/// True where a gate hangs across the run's stairs.
pub(super) fn across(run: &Run) -> bool {
    run.gate.is_some_and(|g| g.at == GateAt::Stairs || g.at == GateAt::Middle && run.stairs_in_the_middle())
}

/// The opening between two posts of recessed stairs: hole + 2 x line - post.
fn between(stairs: StairOpening, turn: Turn, size: &Fig, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    let line = ground.line.as_ref().map_err(Clone::clone)?;
    let at = at_corner(turn, size, line, ground.settings).ok_or_else(|| vec![Lack::Turn])?;
    // At the mouth the posts stand so far before and after the hole; at the head so far past its corners.
    let in_from = if turn == HEAD { at.line } else { at.post };
    let set_back = in_from.as_length().map_or(Length::ZERO, |l| if turn == HEAD { -l } else { l });
    let clear = stairs.width + set_back * 2 - size.as_length().unwrap_or(Length::ZERO);
    let inputs = vec![
        ("hole", Fig::told(stairs.width, "the stairs, decking to decking")),
        ("line inside the edge", line.clone()),
        ("post", size.clone()),
    ];
    let why = Why::Formula("the hole and twice what the posts stand back from it, less a post", inputs);
    if clear.is_positive() { Ok(Fig::length(clear, why)) } else { Err(vec![Lack::Room]) }
}

/// The clear between the posts at the stairs' mouth.
pub(super) fn mouth_clear(stairs: StairOpening, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    between(stairs, MOUTH, &post_width(ground.settings, &roles(End::Corner, false)), ground)
}

/// The clear between the posts at the stairs' head, where a gate hangs.
pub(super) fn head_clear(stairs: StairOpening, gate: bool, ground: &Ground) -> Result<Fig, Vec<Lack>> {
    between(stairs, HEAD, &post_width(ground.settings, &roles(End::InsideCorner, gate)), ground)
}
