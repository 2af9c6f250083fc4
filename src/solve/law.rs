//! Limits and defaults as they hold for a job.

use super::Source;
use crate::figure::{Fig, Why};
use crate::limits::Limit;
use crate::measure::Length;

/// A limit as it holds for the job: what the building department asks as told, else the place's value, else the code's.
pub fn in_force(of: &impl Source, limit: &'static Limit) -> Fig {
    own(of, limit).unwrap_or_else(|| Fig::limit(limit))
}

/// What is taken where nobody told a row: the limit as it holds for the job, as a default.
pub fn default_of(of: &impl Source, limit: &'static Limit) -> Fig {
    own(of, limit).unwrap_or_else(|| Fig::length(limit.length(), Why::Default(limit)))
}

/// [`in_force`] as a length.
pub fn limit_length(of: &impl Source, limit: &'static Limit) -> Length {
    in_force(of, limit).as_length().unwrap_or_else(|| limit.length())
}

/// A habit of the program's own that nobody tells: how short a bay is remarked on, how near two bays count as matched.
pub fn habit(limit: &'static Limit) -> Length {
    limit.length()
}

/// What the department or the place puts in the limit's stead.
fn own(of: &impl Source, limit: &'static Limit) -> Option<Fig> {
    let law = &of.settings().law;
    if let Some(l) = law.asked(limit) {
        return Some(Fig::told(l, "what the building department asks"));
    }
    let place = law.place?;
    let held = place.limit(limit)?;
    Some(Fig::length(held.length(), Why::Table(place.name, held.source)))
}
