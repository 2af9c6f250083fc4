//! Whose rules hold, and the ground below, resolved: a drop and a height are inches where no unit is said.

use super::{Branch, Branches, Problem};
use crate::grammar::Act;
use crate::grammar::draft::LawDraft;
use crate::job::{Fact, LawTold, Local, Setting, SlotId};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;

fn one(m: &Measure, slot: SlotId, which: &'static str) -> Result<Length, Problem> {
    let fits = fits(m, slot, None);
    match fits.lengths[..] {
        [(l, _)] if slot.takes(l) && !fits.doubtful => Ok(l),
        _ => Err(Problem::Ask(which, Vec::new())),
    }
}

/// Two heights of the ground: the lowest within reach of the guard's edge is wanted, and which that is was not told.
pub(super) fn two_grounds(a: &Measure, b: &Measure) -> Problem {
    let says = "Two heights of the ground: a guard goes by the lowest within 36 in. of the deck's edge, measured on the level. Which of the two is that?";
    let each = |m: &Measure| one(m, SlotId::Grade, says).map(|l| Act::Tell(vec![Fact::Set(Setting::Grade(l))]));
    match (each(a), each(b)) {
        (Ok(a), Ok(b)) => Problem::Ask(says, vec![a, b]),
        (Err(asks), _) | (_, Err(asks)) => asks,
    }
}

/// Whose rules hold, as a fact.
pub(super) fn law(branch: Branch, draft: &LawDraft) -> Branches {
    let told = match draft {
        LawDraft::Edition(edition) => LawTold::Edition(*edition),
        LawDraft::Place(place) => LawTold::Place(place),
        LawDraft::Local(of, m) => {
            let slot = match of {
                Local::Height => SlotId::HeightTop,
                Local::Gap => SlotId::GapMax,
                Local::Drop => SlotId::Grade,
            };
            LawTold::Local(*of, one(m, slot, "What do they ask, in inches?")?)
        }
    };
    branch.with(Fact::Set(Setting::Law(told))).map(|b| vec![b])
}
