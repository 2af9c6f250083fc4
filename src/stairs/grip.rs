//! Whether a hand can hold it: the shapes a handrail may have.

use super::worked;
use crate::figure::{Fig, Why};
use crate::job::Settings;
use crate::limits::{self, Limit};
use crate::measure::{Length, Lumber};
use crate::solve::limit_length;

/// A handrail's section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// Round, so far across.
    Round(Length),
    /// Square-edged, so wide and so deep.
    Box(Length, Length),
}

/// How a section stands against the two kinds of handrail.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// It can be gripped as it is (Type I).
    Grips,
    /// Too big around: only with a finger recess along both sides (Type II).
    OnlyWithRecess(&'static Limit),
    /// It breaks this limit, and no recess helps.
    Fails(&'static Limit),
}

/// A section measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    /// All the way around; for a round one nothing is asked of it.
    pub around: Option<Fig>,
    /// Across at its widest.
    pub across: Fig,
    /// The verdict.
    pub verdict: Verdict,
}

/// The section of named lumber; `None` for lumber no table holds.
pub fn of_lumber(lumber: Lumber) -> Option<Section> {
    lumber.dressed().map(|(thick, wide)| Section::Box(wide, thick))
}

/// Judges a section by the limits as they hold for the job. `None` past what can be carried, or of no size.
pub fn grip(section: Section, s: &Settings) -> Option<Grip> {
    match section {
        Section::Round(across) if across.is_positive() => Some(round(across, s)),
        Section::Box(wide, deep) if wide.is_positive() && deep.is_positive() => boxed(wide, deep, s),
        Section::Round(_) | Section::Box(..) => None,
    }
}

/// Round rails are held to their diameter alone.
fn round(across: Length, s: &Settings) -> Grip {
    let verdict = if across < limit_length(s, &limits::GRIP_ROUND_LEAST) {
        Verdict::Fails(&limits::GRIP_ROUND_LEAST)
    } else if across > limit_length(s, &limits::GRIP_ROUND_MOST) {
        Verdict::OnlyWithRecess(&limits::GRIP_ROUND_MOST)
    } else {
        Verdict::Grips
    };
    Grip { around: None, across: Fig::told(across, "the rail's diameter"), verdict }
}

fn boxed(wide: Length, deep: Length, s: &Settings) -> Option<Grip> {
    let (w, d) = (Fig::told(wide, "the rail's width"), Fig::told(deep, "the rail's depth"));
    let from = || vec![("width", w.clone()), ("depth", d.clone())];
    let around = (wide + deep) * 2;
    let across = Length::diagonal(wide, deep)?;
    let verdict = if around < limit_length(s, &limits::GRIP_AROUND_LEAST) {
        Verdict::Fails(&limits::GRIP_AROUND_LEAST)
    } else if around > limit_length(s, &limits::GRIP_AROUND_MOST) {
        Verdict::OnlyWithRecess(&limits::GRIP_AROUND_MOST)
    } else if across > limit_length(s, &limits::GRIP_ACROSS_MOST) {
        Verdict::Fails(&limits::GRIP_ACROSS_MOST)
    } else {
        Verdict::Grips
    };
    let across =
        Fig::length(across, Why::Formula("corner to corner: the root of width squared + depth squared", from()));
    Some(Grip { around: Some(worked(around, "twice width and depth", from())), across, verdict })
}
