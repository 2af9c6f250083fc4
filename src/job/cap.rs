//! The cap: one fact, told by its size or by how thick it lies on the posts.
//!
//! A cap told by its size lies over the top rail and the posts, unless the posts were told to
//! stand above the rail or to carry none. Its thickness on the posts is then taken from the size.

use super::{Foot, Job, Member};
use crate::measure::{Length, Lumber};

/// What is told of the cap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CapTold {
    /// Nothing.
    Untold,
    /// That there is none.
    None,
    /// So thick, by its size or as told.
    Thick(Length),
}

/// How thick lumber lies as a cap: flat.
fn thick(size: Lumber) -> Option<Length> {
    size.dressed().map(|(thick, _)| thick)
}

impl Job {
    /// The cap, whichever way it was told.
    pub fn cap(&self) -> CapTold {
        let told = self.settings.foot.cap;
        match (self.order.rail(Member::Cap), told) {
            (Some(Some(size)), _) => thick(size).map_or(CapTold::Untold, CapTold::Thick),
            (_, Some(l)) if l.is_positive() => CapTold::Thick(l),
            (Some(None), _) => CapTold::None,
            (None, Some(_)) => CapTold::None,
            (None, None) => CapTold::Untold,
        }
    }

    /// A cap told by its size, or none: how thick it lies on the posts follows from it, but for
    /// posts told to stand above the rail or to carry none.
    pub(super) fn cap_by_size(&mut self, size: Option<Lumber>) {
        let foot = &mut self.settings.foot;
        if foot.above.is_none() && foot.cap != Some(Length::ZERO) {
            foot.cap = size.and_then(thick);
        }
    }

    /// A fact of the posts' feet that is one of the cap: a size, or that there is none, which
    /// disagrees with a cap so thick on the posts is told anew.
    pub(super) fn cap_on_posts(&mut self, fact: Foot) {
        let Foot::Cap(l) = fact else { return };
        let agrees = |size: &Option<Lumber>| size.and_then(thick) == Some(l);
        let keep = |(member, size): &(Member, Option<Lumber>)| *member != Member::Cap || agrees(size);
        if l.is_positive() {
            self.order.rails.retain(keep);
        }
    }

    /// True where how thick the cap lies on the posts is only what its size says.
    pub(super) fn cap_follows(&self) -> bool {
        let size = self.order.rail(Member::Cap).flatten();
        self.settings.foot.cap.is_some() && self.settings.foot.cap == size.and_then(thick)
    }
}
