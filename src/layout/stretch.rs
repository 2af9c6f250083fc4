//! The stretches of guard in a run: one, or one on each side of a stair opening.

use crate::job::{End, Run, RunId, StairAt, StairOpening};
use crate::measure::Length;

/// Which stretch of its run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The run has no stair opening.
    Whole,
    /// From the from-end to the stairs.
    Left,
    /// From the stairs to the to-end.
    Right,
}

impl Part {
    /// What follows the run's number in its JSON id.
    pub fn suffix(self) -> &'static str {
        match self {
            Part::Whole => "",
            Part::Left => "-left",
            Part::Right => "-right",
        }
    }
}

/// One stretch of guard, itself a little run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Its run.
    pub run: RunId,
    /// Which part of it.
    pub part: Part,
    /// Its length, on the run's basis; `None` until it can be told.
    pub length: Option<Length>,
    /// What it starts at; `None` until told.
    pub from: Option<End>,
    /// What it ends at; `None` until told.
    pub to: Option<End>,
}

/// The stretches of a run, in walking order. A stair opening stops the guard at both
/// its edges; where it begins at the run's very end, that side has no stretch.
pub fn stretches(run: &Run) -> Vec<Stretch> {
    let told = run.length.map(|t| t.length);
    let of = |part, length, from, to| Stretch { run: run.id, part, length, from, to };
    let Some(stairs) = run.stairs else {
        return vec![of(Part::Whole, told, run.from, run.to)];
    };
    let (left, right) = flanks(stairs, told);
    let both =
        [of(Part::Left, left, run.from, Some(End::StairHead)), of(Part::Right, right, Some(End::StairHead), run.to)];
    both.into_iter().filter(|s| !s.length.is_some_and(Length::is_zero)).collect()
}

/// What is left of the run on each side of its stair opening.
pub(super) fn flanks(stairs: StairOpening, run: Option<Length>) -> (Option<Length>, Option<Length>) {
    let rest = run.map(|l| l - stairs.width);
    match stairs.at {
        StairAt::Middle => (rest.map(|l| l / 2), rest.map(|l| l / 2)),
        StairAt::FromLeft(off) => (Some(off), rest.map(|l| l - off)),
        StairAt::FromRight(off) => (rest.map(|l| l - off), Some(off)),
    }
}
