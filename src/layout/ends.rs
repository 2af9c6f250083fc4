//! The two ends of a run: what stands there, and where by the basis the run was told on.

use super::corner::at_corner;
use super::frame::Fixed;
use super::ground::{Ground, Neighbour, Side, gated, stairs_at, stairs_reach};
use super::sizes::{post_width, roles};
use super::{Intrusion, Lack, Skew};
use crate::figure::{Fig, Why};
use crate::job::{Basis, End, HouseEnd, Mount, Run, Turn};
use crate::measure::Length;
use crate::solve::choice;

/// One end of a run.
pub(super) struct RunEnd {
    pub fixed: Fixed,
    /// How much of the post lies outside the told length; below nothing, how far inside it starts.
    pub outside: Length,
    /// How far the baluster line's corner lies inside the told length, at a corner of the decking.
    pub on_line: Option<Fig>,
}

/// What stands at that end of the run.
///
/// # Errors
/// Facts untold that its place hangs on.
pub(super) fn run_end(run: &Run, ground: &Ground, next: Neighbour, side: Side) -> Result<RunEnd, Vec<Lack>> {
    let end = side.of(run).0.unwrap_or(End::EndPost);
    // Of two posts at a corner, the gate's is the other run's own.
    let shared = next.meet(ground.settings).is_none_or(|m| m.gap.is_none());
    let size = post_width(ground.settings, &roles(end, shared && next.gate || gated(run, side)));
    let bracket = end.is_wall() && choice::house_end(ground.settings) == Some(HouseEnd::Bracket);
    let post = !bracket && !stairs_reach(run, side);
    // Of two posts at a corner each stands square to its own run.
    let skew = Skew::at(next.turn, side, choice::turned(ground.settings)).filter(|_| post && shared && end.is_corner());
    let why = Why::Formula("at the end of the run, on the basis it was told", vec![("post", size.clone())]);
    let mut fixed = Fixed { end, kind: None, near: Length::ZERO, width: Length::ZERO, size, skew, post, why };
    fixed.width = if post { fixed.takes().as_length().unwrap_or(Length::ZERO) } else { Length::ZERO };
    let width = fixed.width;
    match run.basis.unwrap_or_default() {
        Basis::Edge if end.is_corner() && post => on_edge(fixed, ground, turn(end, next)?),
        basis => Ok(RunEnd { outside: outside(basis, width), fixed, on_line: None }),
    }
}

/// A post at a corner of the decking stands on the baluster line, not on the corner.
fn on_edge(fixed: Fixed, ground: &Ground, turn: Turn) -> Result<RunEnd, Vec<Lack>> {
    let line = ground.line.as_ref().map_err(Clone::clone)?;
    let at = at_corner(turn, &fixed.size, line, ground.settings).ok_or_else(|| vec![Lack::Turn])?;
    let centre = at.post.as_length().unwrap_or(Length::ZERO);
    let why = Why::Formula(
        "the post's centre from the decking's corner; its near face half a post before",
        vec![("from the corner", at.post), ("post", fixed.takes())],
    );
    Ok(RunEnd { outside: fixed.width / 2 - centre, on_line: Some(at.line), fixed: Fixed { why, ..fixed } })
}

/// The corner post of a neighbouring side that stands in stairs at this run's very end.
pub(super) fn intrusion(run: &Run, ground: &Ground, ends: [Neighbour; 2]) -> Option<Intrusion> {
    let reached = |(next, side): &(Neighbour, Side)| next.post_beyond && stairs_reach(run, *side);
    let (next, side) = ends.into_iter().zip([Side::Start, Side::Finish]).find(reached)?;
    let (line, turn) = (ground.line.as_ref().ok()?, next.turn?);
    if choice::mount(ground.settings) == Some(Mount::Outside) && matches!(turn, Turn::Right(_)) {
        return None;
    }
    let size = post_width(ground.settings, &roles(End::Corner, next.gate));
    let at = at_corner(turn, &size, line, ground.settings)?.post;
    let by = at.as_length()? + size.as_length()? / 2;
    let why =
        Why::Formula("the post's centre from the corner, and half the post", vec![("centre", at), ("post", size)]);
    let (by_fig, opening) = (Fig::length(by, why), Fig::told(stairs_at(run, side)?.width, "the stair opening"));
    let left = opening.as_length()? - by;
    let why = Why::Formula(
        "the opening less what the post takes of it",
        vec![("opening", opening), ("post", by_fig.clone())],
    );
    by.is_positive().then(|| Intrusion { by: by_fig, left: Fig::length(left, why) })
}

/// The turn at a corner: the outline's, or the right angle its name says.
fn turn(end: End, next: Neighbour) -> Result<Turn, Vec<Lack>> {
    let by_name = match end {
        End::InsideCorner => Some(Turn::Left(90)),
        End::AngledCorner => None,
        _ => Some(Turn::Right(90)),
    };
    next.turn.or(by_name).ok_or_else(|| vec![Lack::Turn])
}

/// How much of an end post lies outside the told length. Along the decking's edge a post
/// at a wall or a stair opening stands with its outside face at the length's end.
fn outside(basis: Basis, width: Length) -> Length {
    match basis {
        Basis::Overall | Basis::Edge => Length::ZERO,
        Basis::Clear => width,
        Basis::Centre => width / 2,
    }
}
