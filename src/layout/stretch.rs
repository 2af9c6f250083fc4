//! The stretches of guard in a run: one, or one on each side of a stair opening.

use super::Limits;
use super::ground::Ground;
use super::opening::built;
use crate::job::{End, Job, Run, RunId, StairOpening, Stairs};
use crate::measure::{Length, Tape};

/// Which stretch of its run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The run has no stair opening.
    Whole,
    /// From the from-end to the stairs.
    Left,
    /// Between two of its stairs: those after the `n`th from the left, counted from 0.
    Between(u8),
    /// From the stairs to the to-end.
    Right,
    /// From the mouth of recessed stairs in to their head, on the left; of the `n`th stairs.
    InLeft(u8),
    /// From the head of recessed stairs out to their mouth, on the right; of the `n`th stairs.
    InRight(u8),
}

impl Part {
    /// What follows the run's number in its JSON id.
    pub fn suffix(self) -> String {
        let numbered = |name: &str, n: u8| if n == 0 { name.to_owned() } else { format!("{name}-{}", n + 1) };
        match self {
            Part::Whole => String::new(),
            Part::Left => "-left".to_owned(),
            Part::Between(n) => numbered("-between", n),
            Part::Right => "-right".to_owned(),
            Part::InLeft(n) => numbered("-in-left", n),
            Part::InRight(n) => numbered("-in-right", n),
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
pub fn stretches(job: &Job, run: &Run) -> Vec<Stretch> {
    let told = run.length.map(|t| t.length);
    let of = |part, length, from, to| Stretch { run: run.id, part, length, from, to };
    let openings = as_built(job, run);
    if openings.is_empty() {
        return vec![of(Part::Whole, told, run.from, run.to)];
    }
    let mouth = |s: &StairOpening| Some(if s.recess.is_some() { End::Corner } else { End::StairHead });
    let head = Some(End::InsideCorner);
    let mut all = vec![of(Part::Left, openings[0].flanks(told).0, run.from, mouth(&openings[0]))];
    for (k, stairs) in (0..).zip(&openings) {
        if let Some(deep) = stairs.recess {
            all.push(of(Part::InLeft(k), Some(deep), mouth(stairs), head));
            all.push(of(Part::InRight(k), Some(deep), head, mouth(stairs)));
        }
        all.push(match openings.get(usize::from(k) + 1) {
            Some(next) => of(Part::Between(k), between(stairs, next, told), mouth(stairs), mouth(next)),
            None => of(Part::Right, stairs.flanks(told).1, mouth(stairs), run.to),
        });
    }
    all.into_iter().filter(|s| !s.length.is_some_and(Length::is_zero)).collect()
}

/// The run's stairs from the left, each by the opening it makes in the guard; as told where
/// facts for that are lacking.
pub(crate) fn as_built(job: &Job, run: &Run) -> Vec<StairOpening> {
    let limits = Limits::in_force(&job.settings);
    let ground = Ground::of(job, &limits, Tape::default());
    let stairs = run.stairs.iter().map(|s| built(s, &ground).map_or(*s, |b| b.stairs));
    Stairs::from(stairs.collect::<Vec<_>>()).along(run.length.map(|t| t.length))
}

/// The guard between two neighbouring stairs.
fn between(one: &StairOpening, next: &StairOpening, run: Option<Length>) -> Option<Length> {
    let end = one.flanks(run).0? + one.width;
    Some(next.flanks(run).0? - end)
}
