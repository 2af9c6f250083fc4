//! Corners of the deck: where on each of its two sides the post stands, or the two posts.
//!
//! With the baluster line `d` inside the edge, the line's corner lies `d tan(turn/2)` in
//! from the decking's outside corner, and as much past its inside corner: `d` at a right
//! angle, 0.4142 `d` at 45 degrees (plane geometry, no source).

use super::ground::Neighbour;
use crate::figure::{Fig, Value, Why};
use crate::job::{Mount, RunId, Settings, Turn};
use crate::measure::{Length, half_tangent};
use crate::quantity::RowId;
use crate::solve::{choice, taken};

/// A corner that a stretch of guard shares with another.
#[derive(Clone, Debug, PartialEq)]
pub struct Meet {
    /// The other's run; its own at the mouth of its stairs.
    pub run: RunId,
    /// How the edge turns.
    pub turn: Turn,
    /// The gap between its two posts, where there are two; `None` where one post serves both.
    pub gap: Option<Fig>,
    /// True in the later of the two runs: what the corner has is counted there.
    pub later: bool,
    /// True where nobody walked an outline: that the two runs meet is taken from how they were told.
    pub taken: bool,
}

/// A corner seen from one of its sides, in inches along the edge from the decking's
/// corner; below nothing, past it.
#[derive(Clone, Debug)]
pub(super) struct AtCorner {
    /// The post's centre.
    pub post: Fig,
    /// The baluster line's corner.
    pub line: Fig,
}

/// Where the post of that width stands. `None` where there is no turn to work from.
pub(super) fn at_corner(turn: Turn, width: &Fig, line: &Fig, settings: &Settings) -> Option<AtCorner> {
    let (degrees, outside) = match turn {
        Turn::Start | Turn::Free => return None,
        Turn::Right(degrees) => (degrees, true),
        Turn::Left(degrees) => (degrees, false),
    };
    let on_line = line_corner(degrees, outside, line)?;
    let two = outside && choice::mount(settings) == Some(Mount::Outside);
    let post = if two { held_back(degrees, width, line, settings)? } else { on_line.clone() };
    Some(AtCorner { post, line: on_line })
}

fn line_corner(degrees: u16, outside: bool, line: &Fig) -> Option<Fig> {
    let in_from = times_half_tangent(line.as_length()?, degrees)?;
    let inputs = vec![("line inside the edge", line.clone()), ("turn in degrees", turn_fig(degrees))];
    let (l, says) = match outside {
        true => (in_from, "line x tan(half the turn), in from the decking's corner"),
        false => (-in_from, "line x tan(half the turn), past the decking's inside corner"),
    };
    Some(Fig::length(l, Why::Formula(says, inputs)))
}

fn turn_fig(degrees: u16) -> Fig {
    Fig::new(Value::Count(u64::from(degrees)), Why::Told("the turn"))
}

fn times_half_tangent(l: Length, degrees: u16) -> Option<Length> {
    let tangent = half_tangent(i32::from(degrees))?;
    l.times(tangent.q()).map(|s| if tangent.is_exact() { s } else { s.inexact() })
}

/// One of two posts at an outside corner: its near face stands the hold-back from the
/// rim's corner. The rim's face lies half a post inside the line.
fn held_back(degrees: u16, width: &Fig, line: &Fig, settings: &Settings) -> Option<Fig> {
    let (half, back) = (width.as_length()? / 2, hold_back(settings));
    let rim = times_half_tangent(line.as_length()? + half, degrees)?;
    let at = rim + back.as_length()? + half;
    let inputs = vec![("hold-back", back), ("post", width.clone()), ("line inside the edge", line.clone())];
    let says = "the rim's corner, then the hold-back, then half the post: two posts at an outside corner";
    Some(Fig::length(at, Why::Formula(says, inputs)))
}

/// How far each of two corner posts stands back from the rim's corner.
fn hold_back(settings: &Settings) -> Fig {
    taken(settings, RowId::HoldBack)
}

/// The gap across an outside corner between its two posts, `2 x hold-back x cos(turn/2)`:
/// at a right angle the hold-back times the root of 2. `None` where there is one post.
fn gap_across(turn: Turn, settings: &Settings) -> Option<Fig> {
    let Turn::Right(degrees) = turn else { return None };
    if choice::mount(settings) != Some(Mount::Outside) {
        return None;
    }
    let back = hold_back(settings);
    let held = back.as_length()?;
    // 1 / cos(a) is the diagonal of 1 and tan(a).
    let one_over_cos = Length::diagonal(Length::inches(1), half_tangent(i32::from(degrees))?)?;
    let gap = (held * 2).over(one_over_cos.q())?.rounded(Length::CARRIED).inexact();
    let inputs = vec![("hold-back", back), ("turn in degrees", turn_fig(degrees))];
    Some(Fig::length(gap, Why::Formula("twice the hold-back x cos(half the turn)", inputs)))
}

/// The corner between two neighbours, as one of them meets it: one post, or two and a gap.
pub(super) fn meet(next: Neighbour, settings: &Settings) -> Option<Meet> {
    let (run, turn) = (next.run?, next.turn?);
    Some(Meet { run, turn, gap: gap_across(turn, settings), later: next.later, taken: next.taken })
}
