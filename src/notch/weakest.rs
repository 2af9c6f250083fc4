//! The weakest foot of a job: what of which post, at which level, has the least to bend with.

use super::cut::{Cut, Spot};
use super::feet::{Feet, Foot, Post, feet};
use crate::figure::Fig;
use crate::job::Job;
use crate::measure::Length;
use crate::strength::Refused;
use crate::strength::section::{Corner, Push, Section};
use num_rational::Ratio;

/// The two levels of a foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Where it passes the decking.
    Decking,
    /// Where it passes the skirt and the rim.
    Rim,
}

impl Level {
    /// Its name in the JSON contract.
    pub fn name(self) -> &'static str {
        match self {
            Level::Decking => "decking",
            Level::Rim => "rim",
        }
    }
}

impl Foot {
    /// True where the whole post stands on what carries the decking: it is not notched.
    fn stands_on_deck(&self) -> bool {
        self.lower.left.is_empty()
    }

    /// Its two levels from the top down; one where it is not stepped.
    pub fn levels(&self) -> Vec<(Level, &Cut)> {
        let both = [(Level::Decking, &self.upper), (Level::Rim, &self.lower)];
        if self.is_stepped() { both.into() } else { vec![both[1]] }
    }

    /// The level with the least left: the decking reaches out over the rim, so what is left
    /// there is part of what is left below.
    pub fn weakest_level(&self) -> (Level, &Cut) {
        let upper = self.is_stepped() && self.upper.area_left() < self.lower.area_left();
        if upper { (Level::Decking, &self.upper) } else { (Level::Rim, &self.lower) }
    }
}

impl Cut {
    /// The largest piece left, as the corners of a section: exact, or carried to a thousandth
    /// of an inch, which no saw holds. `None` where nothing is left.
    pub fn section(&self) -> Option<Vec<Corner>> {
        self.left.first().map(|ring| section_corners(ring))
    }
}

/// Corners as exact numbers.
pub fn section_corners(ring: &[Spot]) -> Vec<Corner> {
    let plain = |l: Length| {
        if l.is_exact() { l.q() } else { (l.q() * Ratio::from_integer(1000)).round() / Ratio::from_integer(1000) }
    };
    ring.iter().map(|(x, y)| (plain(*x), plain(*y))).collect()
}

/// The weakest of a job's feet, and what it is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Weakest {
    /// The post: its number, kind, size and whole foot.
    pub post: Post,
    /// Which level of it is the weakest.
    pub level: Level,
    /// What is left there, and what comes off.
    pub cut: Cut,
    /// What is left there, as a section: along the edge, and out.
    pub left: Section,
    /// The section modulus of what is left, pushed outward and free to move sideways, in
    /// cubic inches.
    pub modulus: Fig,
    /// True where the nosing was told of, or makes no difference: else it is taken as cut back.
    pub nosing_told: bool,
}

/// The weakest foot of the job, by the section modulus of what is left at its weaker level.
/// `Ok(None)` where no post is cut, or not enough is told to say how.
///
/// # Errors
/// [`Refused::NothingLeft`] where nothing is left of a post at one level.
pub fn weakest_foot(job: &Job) -> Result<Option<Weakest>, Refused> {
    feet(job).map_or(Ok(None), |feet| weakest_of(&feet))
}

/// As [`weakest_foot`], of feet worked out.
///
/// # Errors
/// As [`weakest_foot`].
pub fn weakest_of(feet: &Feet) -> Result<Option<Weakest>, Refused> {
    if feet.uncut.is_some() {
        return Ok(None);
    }
    let cut = |p: &Post| Some((p.clone(), p.foot.clone().ok()?)).filter(|(_, f)| !f.stands_on_deck());
    let all: Result<Vec<Weakest>, Refused> =
        feet.posts.iter().filter_map(cut).map(|(post, foot)| of_post(post, &foot, feet)).collect();
    Ok(all?.into_iter().min_by_key(|w| w.modulus.as_q()))
}

/// A post's weaker level.
fn of_post(post: Post, foot: &Foot, feet: &Feet) -> Result<Weakest, Refused> {
    let (level, cut) = foot.weakest_level();
    let left = section_of(cut, &post.width)?;
    let modulus = left.modulus(Push::Free)?;
    Ok(Weakest { post, level, cut: cut.clone(), left, modulus, nosing_told: feet.nosing.is_some() })
}

/// What is left at a level, as a section.
///
/// # Errors
/// [`Refused::NothingLeft`], [`Refused::PastNumbers`].
pub fn section_of(cut: &Cut, post: &Fig) -> Result<Section, Refused> {
    Section::of(&cut.section().ok_or(Refused::NothingLeft)?, vec![("post", post.clone())])
}

/// The section modulus of a whole post so large, free to move sideways.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn whole_modulus(size: super::Size, post: &Fig) -> Result<Fig, Refused> {
    Section::of(&section_corners(&size.corners()), vec![("post", post.clone())])?.modulus(Push::Free)
}
