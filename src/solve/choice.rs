//! Rows that take one of a few words, as told. None has a value where nobody told it but those that say so.

use super::Source;
use crate::job::{Anyway, Blocking, Fixing, HouseEnd, JoistsRun, Mount, Nosing, NotchTold, Timber, Turned, View};
use crate::measure::Tape;

/// How posts are mounted.
pub fn mount(of: &impl Source) -> Option<Mount> {
    of.settings().mount
}

/// What holds the posts.
pub fn fixing(of: &impl Source) -> Option<Fixing> {
    of.settings().fixing
}

/// What stands where a run meets the house.
pub fn house_end(of: &impl Source) -> Option<HouseEnd> {
    of.settings().house_end
}

/// Which way the joists run.
pub fn joists_run(of: &impl Source) -> Option<JoistsRun> {
    of.settings().joists_run
}

/// What blocking stands between the joists.
pub fn blocking(of: &impl Source) -> Option<Blocking> {
    of.settings().blocking
}

/// From where left and right are told.
pub fn view(of: &impl Source) -> Option<View> {
    of.settings().view
}

/// True where the guard closes off a pool.
pub fn pool(of: &impl Source) -> bool {
    of.settings().pool == Some(true)
}

/// The notch told; a depth is a row of the table.
pub fn notch(of: &impl Source) -> Option<NotchTold> {
    of.settings().notch
}

/// Whether the decking's nosing is cut back at the posts.
pub fn nosing(of: &impl Source) -> Option<Nosing> {
    of.settings().foot.nosing
}

/// Which way posts at an angled corner are turned.
pub fn turned(of: &impl Source) -> Option<Turned> {
    of.settings().foot.turned
}

/// Why posts are notched where a rule bars it.
pub fn notched_anyway(of: &impl Source) -> Option<Anyway> {
    of.settings().foot.anyway
}

/// The parts of an inch figures are read to.
pub fn tape(of: &impl Source) -> Tape {
    of.settings().tape.and_then(|parts| Tape::to(i128::from(parts))).unwrap_or_default()
}

/// The wood, as far as told.
pub fn timber(of: &impl Source) -> Timber {
    of.settings().timber
}
