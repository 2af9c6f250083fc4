//! Balusters down a stair: spaced on the level, cut on the angle.
//!
//! Plumb balusters leave a ball the clear between them on the level; the same places
//! measured along the slope are further apart, and are never held against the limit.

use super::{Rake, counted, inches, times, worked};
use crate::figure::Fig;
use crate::infill::{GapLimit, Opening, Spread, fewest};
use crate::measure::{Length, Tape};

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
    /// Centre to centre along the slope: what is stepped off on the rail.
    pub centre_along: Fig,
    /// The limit it keeps under.
    pub most: Fig,
}

/// Fills a bay so clear on the level. `None` where no number of balusters does.
pub fn infill(rake: &Rake, clear: &Fig, baluster: &Fig, most: &Fig, tape: Tape) -> Option<Infill> {
    let found = fewest(Opening::measured(inches(clear), inches(baluster), GapLimit::under(inches(most)), tape)).ok()?;
    let from =
        || vec![("clear on the level", clear.clone()), ("baluster", baluster.clone()), ("gap limit", most.clone())];
    let count = counted(found.taped.count(), "the fewest with every gap under the limit, on the tape too", from());
    let gap = worked(found.taped.gap(), "(clear less the balusters) over one more than their number", from());
    let centre = centres(&found.taped, &gap, baluster);
    Some(Infill {
        exact: found.exact.count(),
        gap_along: rake.along(&gap),
        centre_along: rake.along(&centre),
        most: most.clone(),
        count,
        gap,
        centre,
    })
}

fn centres(found: &Spread, gap: &Fig, baluster: &Fig) -> Fig {
    let from = vec![("gap", gap.clone()), ("baluster", baluster.clone())];
    worked(found.pitch(), "gap + baluster", from)
}

/// So many balusters on each tread: their gap on the level.
pub fn per_tread(rake: &Rake, each: u16, baluster: &Fig) -> Option<Fig> {
    let centre = inches(rake.tread()) / i64::from(each.max(1));
    let gap = centre - inches(baluster);
    let count = counted(each, "balusters on each tread", Vec::new());
    let from = vec![("tread", rake.tread().clone()), ("on each", count), ("baluster", baluster.clone())];
    (each > 0 && gap.is_positive()).then(|| worked(gap, "tread over their number, less a baluster", from))
}

/// A baluster's plumb length where the rails are so far apart square to the slope.
pub fn plumb_length(rake: &Rake, rails_apart: &Fig) -> Fig {
    rake.plumb(rails_apart)
}

/// The stock one baluster takes, cut on the same bevel at both ends: long point to long point.
pub fn stock(rake: &Rake, plumb: &Fig, width: &Fig) -> Fig {
    let more = rake.drop(width);
    let from = vec![("plumb length", plumb.clone()), ("width x riser over tread", more.clone())];
    worked(inches(plumb) + inches(&more), "plumb length + the bevel across its width", from)
}

/// The clear on the level between posts so many treads apart, centre to centre.
pub fn clear_over(rake: &Rake, treads: u16, post: &Fig) -> Option<Fig> {
    let clear: Length = times(inches(rake.tread()), treads) - inches(post);
    let from = vec![("tread", rake.tread().clone()), ("post", post.clone())];
    clear.is_positive().then(|| worked(clear, "treads between the posts' centres, less a post", from))
}
