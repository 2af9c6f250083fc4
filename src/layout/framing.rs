//! The joists under the posts: which posts of a side find one beside them, and which do not.
//!
//! Where a side's rim runs across the joists a post bolts beside one of them; where it runs
//! along them every post wants blocking back to the joists (common practice, no source).

use super::placed::{Placed, Post, RunLayout};
use super::reach::{Reach, reaches};
use super::{Bay, BayKind, Kind, Limits, Part};
use crate::figure::{Fig, Why};
use crate::job::outline::Filled;
use crate::job::{JoistsRun, RunId, Settings};
use crate::limits;
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::solve::{Source, choice, habit, joist_thick};
use num_rational::Ratio;

/// A side of the outline over its framing.
#[derive(Clone, Debug, PartialEq)]
pub struct Framing {
    /// The side.
    pub run: RunId,
    /// Its name.
    pub name: Option<String>,
    /// All of the run, or a flank of its recessed stairs.
    pub part: Part,
    /// What its posts find.
    pub under: Under,
}

/// What lies under a side's posts.
#[derive(Clone, Debug, PartialEq)]
pub enum Under {
    /// The rim runs along the joists: blocking at each post, so many.
    RimAlong(Fig),
    /// The rim runs across them: the posts that miss a joist; the others stand beside one.
    Missed(Vec<Missed>),
    /// The rim crosses them at an angle: blocking cut to it at each post, so many.
    Angled(Fig),
    /// Which way the run goes, or where along the joists it starts, nobody told.
    Unknown,
}

/// A post with no joist beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Missed {
    /// What kind of post.
    pub kind: Kind,
    /// Its mark.
    pub at: Fig,
    /// True where it would stand on a joist, not just away from one.
    pub on_joist: bool,
    /// The nearest mark beside a joist that keeps the limit; only line posts move.
    pub spot: Option<Fig>,
}

/// The joists as told: all three facts of them.
struct Joists {
    spacing: Fig,
    first: Fig,
    way: JoistsRun,
}

/// Each run over its framing; none until the joists' spacing, first place and direction are
/// told.
pub(super) fn framing(outline: &Filled, runs: &[RunLayout], limits: &Limits, tape: Tape) -> Vec<Framing> {
    let Some(joists) = Joists::of(&outline.job.settings) else { return Vec::new() };
    let over = |run: &RunLayout, placed: &Placed, reach: Reach| {
        let under = joists.under(reach, placed, limits, tape);
        Framing { run: run.id, name: run.name.clone(), part: run.part, under }
    };
    reaches(outline, runs).into_iter().map(|(run, placed, reach)| over(run, placed, reach)).collect()
}

impl Joists {
    fn of(settings: &Settings) -> Option<Joists> {
        Some(Joists {
            spacing: Source::told(settings, RowId::Joists)?,
            first: Source::told(settings, RowId::FirstJoist)?,
            way: choice::joists_run(settings)?,
        })
    }

    fn under(&self, reach: Reach, placed: &Placed, limits: &Limits, tape: Tape) -> Under {
        let posts = || placed.posts.iter().filter(|p| wants_framing(p));
        let counted = || Fig::count(posts().count() as u64, Why::Formula("the posts between its ends", Vec::new()));
        // Along a side that is square to the house one of the two is nothing.
        let (across, away, start) = match (self.way, reach) {
            (_, Reach::Unknown) => return Under::Unknown,
            (JoistsRun::Out, Reach::Between { from, to }) => (to.0 - from.0, to.1 - from.1, from.0),
            (JoistsRun::Along, Reach::Between { from, to }) => (to.1 - from.1, to.0 - from.0, from.1),
            (way, Reach::Way(heading)) if way == heading => return Under::RimAlong(counted()),
            (_, Reach::Way(_)) => return Under::Unknown,
        };
        if across.is_zero() {
            return Under::RimAlong(counted());
        }
        if !away.is_zero() {
            return Under::Angled(counted());
        }
        let side = SideOver { joists: self, placed, limits, tape, start, forward: across.is_positive() };
        Under::Missed(posts().filter_map(|p| side.missed(p)).collect())
    }

    /// From a joist's centre to the centre of a post beside it: half of each.
    fn beside(&self, post: &Fig) -> Fig {
        let joist = joist_thick();
        let half = (joist.as_length().unwrap_or(Length::ZERO) + post.as_length().unwrap_or(Length::ZERO)) / 2;
        Fig::length(half, Why::Formula("half a joist and half a post", vec![("joist", joist), ("post", post.clone())]))
    }
}

/// Corner posts stand on two rims, posts at the house on the ledger's end: framing of their own.
fn wants_framing(p: &Post) -> bool {
    !matches!(p.kind, Kind::Fixed(end) if end.is_corner() || end.is_wall())
}

/// A side across the joists.
struct SideOver<'a> {
    joists: &'a Joists,
    placed: &'a Placed,
    limits: &'a Limits,
    tape: Tape,
    /// Where the side starts, and whether it walks away from where the joists are counted from.
    start: Length,
    forward: bool,
}

impl SideOver<'_> {
    /// The marks of the joists about a mark.
    fn near(&self, at: Length) -> Vec<Length> {
        let (first, spacing) = (self.joists.first.as_length(), self.joists.spacing.as_length());
        let (first, spacing) = (first.unwrap_or(Length::ZERO), spacing.unwrap_or(Length::inches(1)));
        let place = if self.forward { self.start + at } else { self.start - at };
        let before = (place - first).ratio(spacing).map_or(0, |q| q.floor().to_integer());
        // The joists stand between the side's own ends, no further.
        let marks = (before - 5..=before + 6).filter(|k| *k >= 0).filter_map(|k| {
            let joist = first + spacing.times(Ratio::from_integer(k))?;
            Some(if self.forward { joist - self.start } else { self.start - joist })
        });
        marks.filter(|m| *m >= Length::ZERO && Some(*m) <= self.placed.length.as_length()).collect()
    }

    fn missed(&self, post: &Post) -> Option<Missed> {
        let (at, beside) = (post.at.as_length()?, self.joists.beside(&post.width));
        let half = beside.as_length()?;
        let apart = |joist: &Length| if *joist > at { *joist - at } else { at - *joist };
        let joists = self.near(at);
        let on_joist = joists.iter().any(|j| apart(j) < half);
        let slack = habit(&limits::BESIDE_JOIST);
        if !on_joist && joists.iter().any(|j| apart(j) <= half + slack) {
            return None;
        }
        let spot = (post.kind == Kind::Line).then(|| self.spot(post, at, half, &joists)).flatten();
        let spot = spot.map(|l| Fig::length(l, self.why(&post.at, &beside)));
        Some(Missed { kind: post.kind, at: post.at.clone(), on_joist, spot })
    }

    fn why(&self, at: &Fig, beside: &Fig) -> Why {
        let inputs = vec![
            ("mark", at.clone()),
            ("first joist", self.joists.first.clone()),
            ("joist spacing", self.joists.spacing.clone()),
            ("beside a joist", beside.clone()),
        ];
        Why::Formula("the nearest place beside a joist at which no bay passes a limit", inputs)
    }

    /// The nearest place beside a joist that keeps the bays on both sides, on the tape too.
    fn spot(&self, post: &Post, at: Length, half: Length, joists: &[Length]) -> Option<Length> {
        let bays = &self.placed.bays;
        let before = bays.iter().find(|b| b.start + b.clear_length() == post.near)?;
        let after = bays.iter().find(|b| b.start == post.near + post.width_length())?;
        if before.kind != BayKind::Rail || after.kind != BayKind::Rail {
            return None;
        }
        let clear_of = |spot: &Length| joists.iter().all(|j| *j - *spot >= half || *spot - *j >= half);
        let keeps = |spot: &Length| {
            [*spot - at, self.tape.round(*spot) - self.tape.round(at)]
                .into_iter()
                .all(|by| self.holds(before, by) && self.holds(after, -by))
        };
        let spots = joists.iter().flat_map(|j| [*j - half, *j + half]);
        let far = |spot: &Length| if *spot > at { *spot - at } else { at - *spot };
        spots.filter(clear_of).filter(keeps).min_by_key(far)
    }

    /// True where a bay made longer by so much passes no limit.
    fn holds(&self, bay: &Bay, by: Length) -> bool {
        let clear = bay.clear_length() + by;
        clear.is_positive() && self.limits.allow(bay.spacing + by, clear)
    }
}

/// Which facts of the joists are untold, where one was told: spacing, first joist, direction.
pub(crate) fn framing_untold(s: &Settings) -> Option<Vec<&'static str>> {
    let facts = [
        (s.joists.is_some(), "how far apart the joists are"),
        (s.first_joist.is_some(), "where the first joist stands"),
        (s.joists_run.is_some(), "which way the joists run"),
    ];
    let untold: Vec<&str> = facts.iter().filter(|(told, _)| !told).map(|(_, says)| *says).collect();
    (!untold.is_empty() && untold.len() < facts.len()).then_some(untold)
}
