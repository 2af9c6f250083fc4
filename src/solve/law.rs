//! Limits and defaults as they hold for a job.

use super::Source;
use crate::figure::{Fig, Why};
use crate::limits::{self, Limit};
use crate::measure::Length;
use crate::quantity::RowId;

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

/// What was told for the job in a limit's stead, and as which row. It is the builder's own, and no code's.
pub fn told_instead(of: &impl Source, limit: &'static Limit) -> Vec<(RowId, Fig)> {
    let rows: &[RowId] = match limit.id {
        id if id == limits::LEVEL_GAP.id => &[RowId::GapMax],
        id if id == limits::POST_SPACING.id => &[RowId::CentreMax, RowId::ClearMax],
        _ => &[],
    };
    rows.iter().filter_map(|row| Some((*row, of.told(*row)?))).collect()
}

/// Where a figure that stands for a limit comes from: published, a place's, or told.
pub fn source_of(of: &impl Source, limit: &'static Limit, held: &Fig) -> &'static str {
    let law = &of.settings().law;
    match held.why() {
        Why::Told(_) if law.asked(limit) != held.as_length() => "as told",
        _ => law.source(limit),
    }
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
