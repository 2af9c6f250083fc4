//! Where the level rail and the rake rail meet: the top post.
//!
//! The rake rail leaves the top post at its face down the stairs. Where that face stands x past
//! the nosing, the rail's top there is already x r/t down from its height at the nosing,
//! so at equal heights it misses the level rail by so much. It is raised, within what a stair
//! guard's height may be, or stepped at the post.

use super::guard::Site;
use super::{inches, worked};
use crate::figure::{Fig, Why};
use crate::job::Settings;
use crate::limits;
use crate::measure::Length;
use crate::solve::limit_length;

/// What can be done where the two rails do not meet.
#[derive(Clone, Debug, PartialEq)]
pub enum Choice {
    /// They meet as they are.
    Meets,
    /// The rake rail is raised to so much above the nosing line, which its limits allow.
    Raise(Fig),
    /// It cannot be raised or lowered so far: the rails stop at the post at two heights.
    Step,
}

/// The two rails at the top post.
#[derive(Clone, Debug, PartialEq)]
pub struct Meeting {
    /// The post's face down the stairs, past the decking's nosing.
    pub face: Fig,
    /// How much the rake rail has dropped there.
    pub drop: Fig,
    /// The level rail's top above the decking.
    pub level: Fig,
    /// The rake rail's top at that face, above the decking.
    pub rake: Fig,
    /// How far apart the two tops are; nothing where they meet.
    pub step: Fig,
    /// The best choice; stepping is always another.
    pub choice: Choice,
}

/// Works the meeting out. `handrail`: the rake rail's top is the handrail too.
pub fn meet(site: &Site, level: &Fig, handrail: bool, s: &Settings) -> Meeting {
    let half = inches(&site.widths[0]) / 2;
    let from = vec![
        ("half the post's width from its centre, behind the nosing by", site.top_back.clone()),
        ("post", site.widths[0].clone()),
    ];
    let face =
        worked(half - inches(&site.top_back), "half the post, less what its centre stands behind the nosing", from);
    let drop = site.rake.drop(&face);
    let over = vec![("height above the nosing line", site.height.clone()), ("drop at the post's face", drop.clone())];
    let rake = worked(inches(&site.height) - inches(&drop), "height above the nosing line less the drop", over);
    let between = inches(level) - inches(&rake);
    let apart = vec![("level rail", level.clone()), ("rake rail at the post", rake.clone())];
    let step = worked(if between.is_positive() { between } else { -between }, "the difference", apart);
    let choice = choose(between, level, &drop, handrail, s);
    Meeting { face, drop, level: level.clone(), rake, step, choice }
}

fn choose(between: Length, level: &Fig, drop: &Fig, handrail: bool, s: &Settings) -> Choice {
    if between.is_zero() {
        return Choice::Meets;
    }
    let needs = inches(level) + inches(drop);
    let guard = limit_length(s, &limits::STAIR_GUARD_LOW);
    // The guard's own least height holds where its top is the handrail too.
    let low = if handrail { limit_length(s, &limits::HANDRAIL_LOW).max(guard) } else { guard };
    let high = limit_length(s, &limits::HANDRAIL_HIGH);
    if needs < low || (handrail && needs > high) {
        return Choice::Step;
    }
    let from = vec![("level rail", level.clone()), ("drop at the post's face", drop.clone())];
    Choice::Raise(Fig::length(needs, Why::Formula("the level rail's height + the drop at the post's face", from)))
}
