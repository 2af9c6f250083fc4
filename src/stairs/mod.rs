//! Stairs: what a flight works out to, and the guard, balusters and handrail down it.
//!
//! Everything is measured from the nosing of the decking at the head of the stairs: `x` on the
//! level down the stairs, heights down from the decking. The nosings lie on one line, the
//! nosing line, which falls a riser in a tread. Guard and handrail heights are plumb
//! above that line.
//!
//! 1. [`flight`] works out risers, rise, treads and run from what was told, or names what is
//!    untold or disagrees.
//! 2. [`rake`] turns level, plumb, square and sloping measures into one another.
//! 3. [`guard`] places the posts of the stair guard, [`meet`] its rail against the level
//!    guard's, [`infill`] its balusters, [`triangle`] the opening under it.
//! 4. [`handrail`] and [`grip`] say whether one is needed and whether a hand can hold it.
//! 5. [`check`](mod@check) holds all of it against the published limits.
//!
//! Everything here is a pure function of what was told; nothing is rounded but where a
//! name says so.

pub mod check;
pub mod flight;
pub mod grip;
pub mod guard;
pub mod handrail;
pub mod infill;
pub mod meet;
pub mod rake;
mod told;
pub mod triangle;

pub use flight::{Clash, Flight, Ground, Head, Lack, Told, Unready};
pub use guard::{RakeBay, RakeGuard, RakePost, Stands};
pub use rake::Rake;

use crate::figure::{Fig, Value, Why};
use crate::measure::{Length, Q};

/// The inches of a figure that was made as a length.
fn inches(f: &Fig) -> Length {
    f.as_length().unwrap_or(Length::ZERO)
}

/// A length worked out from figures.
fn worked(l: Length, says: &'static str, from: Vec<(&'static str, Fig)>) -> Fig {
    Fig::length(l, Why::Formula(says, from))
}

/// A count worked out from figures.
fn counted(n: impl Into<u64>, says: &'static str, from: Vec<(&'static str, Fig)>) -> Fig {
    Fig::new(Value::Count(n.into()), Why::Formula(says, from))
}

/// So many times a length.
fn times(l: Length, n: u16) -> Length {
    l * i64::from(n)
}

/// A whole number as a ratio.
fn whole(n: u16) -> Q {
    Q::from_integer(i128::from(n))
}

/// A ratio rounded up to a whole number; `None` below nothing or past 16 bits.
fn ceiling(q: Q) -> Option<u16> {
    u16::try_from(q.ceil().to_integer()).ok()
}
