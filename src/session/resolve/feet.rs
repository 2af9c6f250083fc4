//! Facts of the posts' feet resolved.

use super::settings::fact;
use super::{Branch, Branches, Problem, Resolver};
use crate::job::{Fact, Foot, Impossible, PostRole, PostSize, Setting, SlotId};
use crate::measure::{Lumber, Measure};

impl Resolver<'_> {
    /// "notch the 4x4s 1 1/2": the size, where said, and the depth, at the deck or up at the rail.
    pub(super) fn notched(&self, branch: Branch, deep: &Measure, post: Option<Lumber>, at_rail: bool) -> Branches {
        let sized = match post {
            Some(lumber) => branch.with(Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(lumber))))?,
            None => branch,
        };
        self.slot(sized, if at_rail { SlotId::RailNotch } else { SlotId::NotchDepth }, deep)
    }
}

/// "the rim is a 2x10": how tall it is, and how thick.
pub(super) fn rim_of(branch: Branch, lumber: Lumber) -> Branches {
    let (thick, tall) = lumber.dressed().ok_or(Problem::Impossible(Impossible::NotLumber))?;
    let told = branch.with(Fact::Set(Setting::Foot(Foot::RimTall(tall))))?;
    Ok(vec![told.with(fact(SlotId::Rim, thick)?)?])
}
