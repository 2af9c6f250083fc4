//! Balusters down a stair: spaced on the level, marked along the slope, cut on the angle.
//!
//! Plumb balusters leave a ball the clear between them on the level; the same places
//! measured along the slope are further apart, and are never held against the limit.

use super::{Rake, counted, inches, times, worked};
use crate::figure::Fig;
use crate::infill::{HeldGap, Opening, Spread, Start, fewest};
use crate::measure::{Length, Tape};

/// More balusters than the fewest are looked at no further than this.
const MORE: u32 = 8;

/// A bay to fill.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// Face to face on the level, exactly.
    pub clear: Fig,
    /// The same as built, its posts on rounded marks.
    pub built: Length,
    /// One baluster's width.
    pub baluster: Fig,
    /// What its gaps keep to.
    pub held: HeldGap,
    /// What stands against the posts.
    pub start: Start,
    /// The tape marks are read on.
    pub tape: Tape,
}

/// The balusters of one bay down a stair.
#[derive(Clone, Debug, PartialEq)]
pub struct Infill {
    /// How many to build: every gap under the limit on the tape too.
    pub count: Fig,
    /// The fewest by the exact gaps.
    pub exact: u32,
    /// The clear gap on the level.
    pub gap: Fig,
    /// The same gap along the slope, not for the limit.
    pub gap_along: Fig,
    /// Centre to centre on the level.
    pub centre: Fig,
    /// Centre to centre along the slope.
    pub centre_along: Fig,
    /// Each baluster's upper side along the slope from the upper post's face, rounded once.
    pub marks: Vec<Fig>,
    /// How far off the last one comes where a rounded centre is stepped off along the slope.
    pub drift: Fig,
    /// What the gaps keep to.
    pub held: HeldGap,
}

/// Fills a bay. `None` where no number of balusters does.
pub fn infill(rake: &Rake, bay: &Bay) -> Option<Infill> {
    let opening = Opening {
        clear: inches(&bay.clear),
        built: bay.built,
        baluster: inches(&bay.baluster),
        limit: bay.held.limit(),
        start: bay.start,
        tape: bay.tape,
    };
    let found = fewest(opening).ok()?;
    let least = found.taped.count();
    let more = (least..=least + MORE).map_while(|n| Spread::of(opening, n).ok());
    let built = more.into_iter().find(|s| s.passes() && passes_along(rake, s))?;
    Some(figures(rake, bay, &built, found.exact.count()))
}

fn figures(rake: &Rake, bay: &Bay, built: &Spread, exact: u32) -> Infill {
    let from = || {
        vec![
            ("clear on the level", bay.clear.clone()),
            ("baluster", bay.baluster.clone()),
            ("gap limit", bay.held.most.clone()),
        ]
    };
    let count = counted(built.count(), "the fewest with every gap under the limit, on the tape too", from());
    let says = match bay.start {
        Start::Gap => "(clear less the balusters) over one more than their number",
        Start::Baluster => "(clear less the balusters) over one less than their number, one tight to each post",
    };
    let gap = worked(built.gap(), says, from());
    let parts = vec![("gap", gap.clone()), ("baluster", bay.baluster.clone())];
    let centre = worked(built.pitch(), "gap + baluster", parts);
    let centre_along = rake.along(&centre);
    let off = bay.tape.round(inches(&centre_along)) - inches(&centre_along);
    let last = built.count().saturating_sub(1);
    let drift = times(if off.is_positive() { off } else { -off }, u16::try_from(last).unwrap_or(u16::MAX));
    let from = vec![("centres along the slope", centre_along.clone()), ("balusters", count.clone())];
    Infill {
        exact,
        gap_along: rake.along(&gap),
        marks: marks(rake, built).into_iter().map(|l| mark_fig(l, &gap)).collect(),
        drift: worked(drift, "(rounded centres - exact centres) x one less than the balusters", from),
        held: bay.held.clone(),
        count,
        gap,
        centre,
        centre_along,
    }
}

fn mark_fig(mark: Length, gap: &Fig) -> Fig {
    let says = "its own exact place on the level, laid along the slope, rounded once";
    worked(mark, says, vec![("gap", gap.clone())])
}

/// Where each baluster's upper side is marked along the slope, from the upper post's face.
fn marks(rake: &Rake, spread: &Spread) -> Vec<Length> {
    let tape = spread.opening().tape;
    (0..spread.count()).map(|i| tape.round(rake.stretched(spread.place(i)))).collect()
}

/// True where marks rounded along the slope leave every gap under the limit on the level.
fn passes_along(rake: &Rake, spread: &Spread) -> bool {
    let opening = spread.opening();
    let mut end = Length::ZERO;
    let mut gaps = Vec::new();
    for mark in marks(rake, spread) {
        let at = rake.shrunk(mark);
        gaps.push(at - end);
        end = at + opening.baluster;
    }
    gaps.push(opening.built - end);
    gaps.into_iter().all(|gap| opening.limit.allows(gap))
}

/// The stock one baluster takes, cut on the same bevel at both ends: long point to long point.
pub fn stock(rake: &Rake, plumb: &Fig, width: &Fig) -> Fig {
    let more = rake.drop(width);
    let from = vec![("plumb length", plumb.clone()), ("width x riser over tread", more.clone())];
    worked(inches(plumb) + inches(&more), "plumb length + the bevel across its width", from)
}
