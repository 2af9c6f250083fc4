//! The stretches of guard in a run: one, or one on each side of a stair opening.

use crate::job::apply::flanks;
use crate::job::{End, Run, RunId};
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
    /// From the mouth of recessed stairs in to their head, on the left.
    InLeft,
    /// From the head of recessed stairs out to their mouth, on the right.
    InRight,
}

impl Part {
    /// What follows the run's number in its JSON id.
    pub fn suffix(self) -> &'static str {
        match self {
            Part::Whole => "",
            Part::Left => "-left",
            Part::Right => "-right",
            Part::InLeft => "-in-left",
            Part::InRight => "-in-right",
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

/// The stretches of a run, in walking order. A stair opening stops the guard at both its
/// edges; where it begins at the run's very end, that side has no stretch. Stairs recessed
/// into the deck turn the guard in along both of their flanks to their head.
pub fn stretches(run: &Run) -> Vec<Stretch> {
    let told = run.length.map(|t| t.length);
    let of = |part, length, from, to| Stretch { run: run.id, part, length, from, to };
    let Some(stairs) = run.stairs else {
        return vec![of(Part::Whole, told, run.from, run.to)];
    };
    let (left, right) = flanks(stairs, told);
    let mouth = Some(if stairs.recess.is_some() { End::Corner } else { End::StairHead });
    let head = Some(End::InsideCorner);
    let mut all = vec![of(Part::Left, left, run.from, mouth)];
    if let Some(deep) = stairs.recess {
        all.push(of(Part::InLeft, Some(deep), mouth, head));
        all.push(of(Part::InRight, Some(deep), head, mouth));
    }
    all.push(of(Part::Right, right, mouth, run.to));
    all.into_iter().filter(|s| !s.length.is_some_and(Length::is_zero)).collect()
}
