//! Questions about the guard itself, and whose rules hold, resolved: a drop and a height are
//! inches where no unit is said.

use super::{Branch, Branches, Problem};
use crate::grammar::Act;
use crate::grammar::ask::GuardAsk;
use crate::grammar::draft::{GuardDraft, LawDraft};
use crate::job::{Fact, LawTold, Local, Setting, SlotId};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;

/// What is asked, or why it cannot be told.
pub(super) fn asked(draft: &GuardDraft) -> Result<GuardAsk, Problem> {
    Ok(match draft {
        GuardDraft::Needed(drop) => GuardAsk::Needed(
            drop.as_ref().map(|m| one(m, SlotId::Grade, "How high is the deck, in inches?")).transpose()?,
        ),
        GuardDraft::HighEnough(m) => GuardAsk::HighEnough(one(m, SlotId::HeightTop, "How high is that, in inches?")?),
    })
}

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
