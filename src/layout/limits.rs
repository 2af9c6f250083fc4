//! The limits on a bay that are in force now.

use super::sizes::post_width;
use crate::figure::{Fig, Why};
use crate::job::{Job, PostRole, Settings};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{Source, by, in_force};

/// The limits the split keeps to. A clear limit and a centre limit are two facts:
/// where both were told both hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Limits {
    /// Most on centre.
    pub centre: Option<Fig>,
    /// Most clear.
    pub clear: Option<Fig>,
}

impl Limits {
    /// The limits told; neither told, the published spacing on centre. A told limit
    /// governs the split even where it is wider than the published one, and a rule
    /// then says so.
    pub fn in_force(settings: &Settings) -> Limits {
        let (centre, clear) = (Source::told(settings, RowId::CentreMax), Source::told(settings, RowId::ClearMax));
        match (&centre, &clear) {
            (None, None) => Limits { centre: Some(in_force(settings, &limits::POST_SPACING)), clear: None },
            _ => Limits { centre, clear },
        }
    }

    /// True when a bay so far on centre and so far clear passes no limit. Equal passes.
    pub fn allow(&self, centre: Length, clear: Length) -> bool {
        within(&self.centre, centre) && within(&self.clear, clear)
    }

    /// True when the limits are the published ones, not told.
    pub fn published(&self) -> bool {
        self.centre.as_ref().is_some_and(|f| matches!(f.why(), Why::Limit(_)))
    }

    /// The limits as named inputs of a formula.
    pub(super) fn inputs(&self) -> impl Iterator<Item = (&'static str, Fig)> {
        let centre = self.centre.clone().map(|f| ("most on centre", f));
        centre.into_iter().chain(self.clear.clone().map(|f| ("most clear", f)))
    }
}

fn within(limit: &Option<Fig>, l: Length) -> bool {
    limit.as_ref().and_then(Fig::as_length).is_none_or(|most| l <= most)
}

/// The longest clear opening allowed between any two posts of the job now: the clear
/// limit, or the centre limit less the widest post, whichever is less.
pub fn clear_max(job: &Job) -> Option<Fig> {
    let limits = Limits::in_force(&job.settings);
    let by_centre = limits.centre.and_then(|most| less_the_post(&job.settings, most));
    [by_centre, limits.clear].into_iter().flatten().min_by_key(Fig::as_length)
}

fn less_the_post(settings: &Settings, most: Fig) -> Option<Fig> {
    let roles = [PostRole::Corner, PostRole::Line, PostRole::End, PostRole::Gate, PostRole::Stair];
    let post = roles.iter().map(|r| post_width(settings, &[*r])).max_by_key(Fig::as_length)?;
    by(RowId::ClearMax, &[(RowId::CentreMax, &most), (RowId::PostWidth, &post)])
}
