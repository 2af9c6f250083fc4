//! Facts about the wood.
//!
//! ```text
//! timber = "species: " name | "lumber grade: " name | "service: " ("wet" | "dry") | "incised: " ("yes" | "no")
//!        | "load duration: " name
//! ```

use super::Read;
use super::words::{Table, one_of, words_of};
use crate::job::{Duration, Grade, Lie, Species, TimberTold};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::map;
use nom::sequence::preceded;

pub(super) const SPECIES: &Table<Species> = &[
    (Species::SouthernPine, "southern pine"),
    (Species::DouglasFir, "douglas fir-larch"),
    (Species::HemFir, "hem-fir"),
    (Species::SprucePineFir, "spruce-pine-fir"),
    (Species::Cedar, "western cedar"),
    (Species::Redwood, "redwood"),
];
const GRADES: &Table<Grade> = &[(Grade::No1, "no. 1"), (Grade::No2, "no. 2")];
const SERVICE: &Table<bool> = &[(true, "wet"), (false, "dry")];
const YES: &Table<bool> = &[(true, "yes"), (false, "no")];
const DURATIONS: &Table<Duration> = &[
    (Duration::Permanent, "permanent"),
    (Duration::TenYears, "ten years"),
    (Duration::TwoMonths, "two months"),
    (Duration::SevenDays, "seven days"),
    (Duration::TenMinutes, "ten minutes"),
    (Duration::Impact, "impact"),
];
pub(super) const LIES: &Table<Lie> = &[(Lie::Flat, "flat"), (Lie::Edge, "on edge")];

/// The plain phrase of one fact.
pub(super) fn write_timber(told: TimberTold) -> String {
    match told {
        TimberTold::Species(s) => format!("species: {}", words_of(SPECIES, s)),
        TimberTold::Grade(g) => format!("lumber grade: {}", words_of(GRADES, g)),
        TimberTold::Wet(w) => format!("service: {}", words_of(SERVICE, w)),
        TimberTold::Incised(i) => format!("incised: {}", words_of(YES, i)),
        TimberTold::Duration(d) => format!("load duration: {}", words_of(DURATIONS, d)),
    }
}

/// Reads what [`write_timber`] writes.
pub(super) fn read_timber(i: &str) -> Read<'_, TimberTold> {
    alt((
        map(preceded(tag("species: "), one_of(SPECIES)), TimberTold::Species),
        map(preceded(tag("lumber grade: "), one_of(GRADES)), TimberTold::Grade),
        map(preceded(tag("service: "), one_of(SERVICE)), TimberTold::Wet),
        map(preceded(tag("incised: "), one_of(YES)), TimberTold::Incised),
        map(preceded(tag("load duration: "), one_of(DURATIONS)), TimberTold::Duration),
    ))
    .parse(i)
}
