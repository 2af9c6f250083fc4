//! Stairs off a side of the deck, placed along it.

use super::stairs::NO_SIDE;
use super::{Branch, Branches, Problem, Resolver, grow};
use crate::grammar::draft::{Along, Mark};
use crate::grammar::sense::Side;
use crate::job::outline::filled;
use crate::job::{Run, RunId, SlotId, StairAt};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

/// Where along the run a place or side lies; true for its from-end.
pub(super) fn end(run: &Run, mark: Mark) -> Option<bool> {
    match mark {
        Mark::Side(Side::Left) => Some(true),
        Mark::Side(Side::Right) => Some(false),
        Mark::Side(_) => None,
        Mark::End(e) => match (run.from == Some(e), run.to == Some(e)) {
            (true, false) => Some(true),
            (false, true) => Some(false),
            _ => None,
        },
    }
}

pub(super) fn at(from: bool, off: Length) -> StairAt {
    if from { StairAt::FromLeft(off) } else { StairAt::FromRight(off) }
}

impl Resolver<'_> {
    /// "stairs off the left side, 4 foot, tight to the house".
    pub(super) fn stairs_on(
        &self,
        branch: Branch,
        on: Side,
        width: Option<&Measure>,
        along: Option<&Along>,
    ) -> Branches {
        let Some(id) = targets::named(&branch.job, on).map(|r| r.id) else {
            if width.is_none() && along.is_none() && branch.job.runs.is_empty() {
                return Err(Problem::Ask(NO_SIDE, Vec::new()));
            }
            return self.place_stairs(branch, Some(on), width, along.or(Some(&Along::Untold)));
        };
        let Some(along) = along.filter(|a| **a != Along::Untold) else {
            return Err(Problem::Ask(
                "Where along that side are the stairs? Say in the middle, tight to an end, or how far from one.",
                Vec::new(),
            ));
        };
        self.stairs_put(branch, id, width, along)
    }

    /// "stairs are tight to the house": along the run spoken of.
    pub(super) fn stairs_along(&self, branch: Branch, along: &Along) -> Branches {
        let Some(id) = targets::focus(self.session, &branch.job).map(|r| r.id) else {
            return Err(Problem::Ask("Which side are the stairs in? Tell me that run first.", Vec::new()));
        };
        self.stairs_put(branch, id, None, along)
    }

    pub(super) fn stairs_put(&self, branch: Branch, id: RunId, width: Option<&Measure>, along: &Along) -> Branches {
        let widths: Vec<(Option<Length>, bool)> = match width {
            Some(m) => {
                let said = fits(m, SlotId::StairWidth, None);
                said.lengths.iter().map(|(l, _)| (Some(*l), said.doubtful || m.about || m.shade.is_some())).collect()
            }
            None => vec![(None, false)],
        };
        let places = self.places(&branch, id, along)?;
        grow(vec![branch], |b| {
            let each = widths.iter().flat_map(|(w, ask)| places.iter().map(move |p| (*w, *p, *ask)));
            let each = each.map(|(width, at, ask)| self.put_whole(&b, id, width, at, ask || places.len() > 1));
            each.collect::<Result<Vec<_>, _>>().map(|all| all.concat())
        })
    }

    pub(super) fn places(&self, branch: &Branch, id: RunId, along: &Along) -> Result<Vec<StairAt>, Problem> {
        let outlined = filled(&branch.job).job;
        let Some(run) = outlined.run(id) else { return Err(Problem::Refuse("No run for those stairs.")) };
        let which =
            || Problem::Ask("Neither end of that side alone is what you say. Which end are the stairs by?", Vec::new());
        match along {
            Along::Middle => Ok(vec![StairAt::Middle]),
            Along::AtEnd(e) => end(run, Mark::End(*e)).map(|from| vec![at(from, Length::ZERO)]).ok_or_else(which),
            Along::AtSide(side) => {
                end(run, Mark::Side(*side)).map(|from| vec![at(from, Length::ZERO)]).ok_or_else(which)
            }
            Along::Untold => Err(which()),
            Along::Off(m, mark) => {
                let from = end(run, *mark).ok_or_else(which)?;
                let off = fits(m, SlotId::Offset, None);
                if off.slipped() {
                    return Err(Problem::Ask("How far from that end? Say it with its unit.", Vec::new()));
                }
                Ok(off.lengths.iter().map(|(l, _)| at(from, *l)).collect())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::End;

    #[test]
    fn a_place_at_one_end_alone_tells_the_end() {
        let run = Run { from: Some(End::House), to: Some(End::Corner), ..Run::untold(RunId(1)) };
        assert_eq!(end(&run, Mark::End(End::House)), Some(true));
        assert_eq!(end(&run, Mark::End(End::Corner)), Some(false));
        assert_eq!(end(&run, Mark::End(End::StairHead)), None);
        let twins = Run { from: Some(End::Corner), ..run };
        assert_eq!(end(&twins, Mark::End(End::Corner)), None);
    }
}
