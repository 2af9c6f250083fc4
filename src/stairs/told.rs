//! What is told of a flight, and why it may not work out.

use crate::figure::Fig;
use crate::job;
pub use crate::job::Head;
use crate::measure::{Length, Q};

/// The ground the stairs come down to, where it was not measured at their foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// The decking above the ground, at the stairs' head.
    pub above: Length,
    /// How much the ground falls for each inch out from there; below nothing where it rises.
    pub fall: Q,
}

/// What was told of a flight. What was not is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// How many risers.
    pub risers: Option<u16>,
    /// One riser.
    pub rise: Option<Length>,
    /// All risers together: decking to the ground at the stairs' foot.
    pub total_rise: Option<Length>,
    /// One tread, nosing to nosing on the level.
    pub tread: Option<Length>,
    /// All treads together, on the level.
    pub total_run: Option<Length>,
    /// The ground, in place of a total rise.
    pub ground: Option<Ground>,
    /// How the stairs meet the decking; `None` takes one riser down.
    pub head: Option<Head>,
}

/// A fact a flight lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lack {
    /// Neither the total rise nor two figures that make it.
    Rise,
    /// The tread or the total run.
    Tread,
}

/// Facts that disagree, and by how much.
#[derive(Clone, Debug, PartialEq)]
pub enum Clash {
    /// Risers x riser is not the total rise.
    Rise {
        /// What they make.
        makes: Fig,
        /// What was told.
        told: Fig,
        /// The difference.
        by: Fig,
    },
    /// The riser told does not go into the total rise evenly.
    NotWhole {
        /// The total rise told.
        total: Fig,
        /// The riser told.
        rise: Fig,
        /// So many risers, a little too high each.
        fewer: (Fig, Fig),
        /// One more, a little lower each.
        more: (Fig, Fig),
    },
    /// Treads x tread is not the total run.
    Run {
        /// What they make.
        makes: Fig,
        /// What was told.
        told: Fig,
        /// The difference.
        by: Fig,
    },
    /// The ground falls as fast as the stairs, or all but: they never reach it.
    NeverLands,
    /// More risers than a flight has.
    TooMany,
    /// Past the angle where it is a ladder.
    Ladder(Fig),
}

/// Why a flight cannot be worked out.
#[derive(Clone, Debug, PartialEq)]
pub enum Unready {
    /// Something is untold.
    Untold(Lack),
    /// Facts disagree.
    Clash(Clash),
}

impl From<Clash> for Unready {
    fn from(c: Clash) -> Unready {
        Unready::Clash(c)
    }
}

impl Told {
    /// What was told of a flight; the decking's height above the ground stands in for a total rise
    /// where nothing else makes one.
    pub fn of(flight: &job::Flight, grade: Option<Length>) -> Told {
        let level = Q::from_integer(0);
        let fall = flight.fall.and_then(|f| f.by.ratio(f.over)).unwrap_or(level);
        let made = flight.total_rise.is_some() || flight.risers.is_some() && flight.rise.is_some();
        Told {
            risers: flight.risers,
            rise: flight.rise,
            total_rise: flight.total_rise,
            tread: flight.tread,
            total_run: flight.total_run,
            ground: grade.filter(|_| !made).map(|above| Ground { above, fall }),
            head: flight.head,
        }
    }
}
