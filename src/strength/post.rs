//! A guard post under the push at its top.

use super::beam::{ratio, stress, top_load};
use super::number::Num;
use super::section::{Push, Section};
use super::values::{Case, load_time};
use super::{Refused, beam};
use crate::figure::{Fig, Unit, Why};
use crate::job::Duration;
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::by;

/// The heights a post is judged at, in inches: outside them a guard was not meant.
const HEIGHTS: (i64, i64) = (12, 96);

/// The moment at a post's shoulder or bolt: the 200 lb push times its arm.
///
/// # Errors
/// [`Refused::Height`] outside 1 to 8 ft, [`Refused::PastNumbers`].
pub fn moment(arm: &Fig) -> Result<Fig, Refused> {
    let load = top_load();
    let (least, most) = (Length::inches(HEIGHTS.0), Length::inches(HEIGHTS.1));
    let inches = arm.as_length().ok_or(Refused::PastNumbers)?;
    if inches < least || inches > most {
        return Err(Refused::Height(HEIGHTS.0, HEIGHTS.1));
    }
    let m = Num::fig(&load) * Num::fig(arm);
    m.quantity(Unit::InchPounds, "moment: the push times its arm", vec![("push", load), ("arm", arm.clone())])
}

/// The arm of a whole post bolted to the rim: height, decking, and down to the upper bolt.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn arm_to_bolt(height: &Fig, decking: &Fig, edge: &Fig) -> Result<Fig, Refused> {
    let past = || Refused::PastNumbers;
    let bolt = by(RowId::BoltUpper, &[(RowId::Decking, decking), (RowId::BoltEdge, edge)]).ok_or_else(past)?;
    by(RowId::PostArm, &[(RowId::HeightTop, height), (RowId::BoltUpper, &bolt)]).ok_or_else(past)
}

/// The bending stress in a section under the push at the end of an arm.
///
/// # Errors
/// As [`moment`].
pub fn bending(section: &Section, push: Push, arm: &Fig) -> Result<Fig, Refused> {
    stress(&moment(arm)?, &section.modulus(push)?)
}

/// The push a section may carry at the end of an arm, in pounds.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn carries(section: &Section, push: Push, arm: &Fig, allowed: &Fig) -> Result<Fig, Refused> {
    let modulus = section.modulus(push)?;
    let load = Num::fig(allowed) * Num::fig(&modulus) / Num::fig(arm);
    let from = vec![("allowed bending", allowed.clone()), ("section modulus", modulus), ("arm", arm.clone())];
    load.quantity(Unit::Pounds, "the push it may carry: allowed bending times section modulus over the arm", from)
}

/// The section modulus a moment asks for, in cubic inches.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn modulus_needed(moment: &Fig, allowed: &Fig) -> Result<Fig, Refused> {
    let s = Num::fig(moment) / Num::fig(allowed);
    let from = vec![("moment", moment.clone()), ("allowed bending", allowed.clone())];
    s.quantity(Unit::In3, "the section modulus needed: moment over allowed bending", from)
}

/// How far a post's top may move: height / 12.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn sway_limit(height: &Fig) -> Result<Fig, Refused> {
    let parts = Fig::quantity(i128::from(limits::POST_SWAY.value).into(), Unit::Times, Why::Limit(&limits::POST_SWAY));
    let most = Num::fig(height) / Num::whole(limits::POST_SWAY.value);
    most.length("the most movement: height over 12", vec![("height", height.clone()), ("parts of the height", parts)])
}

/// How far a post's top moves with its foot held still, in inches. Real feet turn far more.
///
/// # Errors
/// [`Refused::PastNumbers`].
pub fn sway(section: &Section, arm: &Fig, e: &Fig) -> Result<Fig, Refused> {
    beam::bending_sag(Case::EndPoint, &top_load(), arm, e, &section.second_moment()?)
}

/// Stress asked of a section, what is allowed, and the one over the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// Asked.
    pub demand: Fig,
    /// Allowed.
    pub capacity: Fig,
    /// Asked over allowed.
    pub ratio: Fig,
}

impl Judged {
    /// Puts what is asked beside what is allowed.
    ///
    /// # Errors
    /// [`Refused::PastNumbers`].
    pub fn of(demand: Fig, capacity: Fig) -> Result<Judged, Refused> {
        let ratio = ratio(&demand, &capacity)?;
        Ok(Judged { demand, capacity, ratio })
    }

    /// True where it is over for every load time treated wood may be figured with: over as a load
    /// of ten minutes, where `taken` is the load time of what is allowed.
    pub fn is_far(&self, taken: Duration) -> bool {
        let share = |d| load_time(d).map(|row| row.factor);
        let (Some(taken), Some(most)) = (share(taken), share(Duration::TenMinutes)) else { return false };
        !self.holds() && self.demand.as_q() * taken > self.capacity.as_q() * most
    }

    /// True where no more is asked than is allowed.
    pub fn holds(&self) -> bool {
        self.demand.as_q() <= self.capacity.as_q()
    }
}
