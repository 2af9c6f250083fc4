//! Whose rules hold, as told: an edition, a place, and what the building department asks itself.

use crate::limits::{Edition, GUARD_HEIGHT, GUARD_TRIGGER, LEVEL_GAP, Limit, Place, STAIR_GAP};
use crate::measure::Length;

/// A limit a building department may set itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Local {
    /// The guard's least height.
    Height,
    /// The gap to stay under.
    Gap,
    /// The drop a guard is required over.
    Drop,
}

impl Local {
    /// Every one.
    pub const ALL: [Local; 3] = [Local::Height, Local::Gap, Local::Drop];

    /// The limit it stands for.
    pub fn limit(self) -> &'static Limit {
        match self {
            Local::Height => &GUARD_HEIGHT,
            Local::Gap => &LEVEL_GAP,
            Local::Drop => &GUARD_TRIGGER,
        }
    }
}

/// One thing told of the rules that hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LawTold {
    /// The edition of the IRC.
    Edition(Edition),
    /// Where the job is, or whose code it is built to.
    Place(&'static Place),
    /// What the building department asks.
    Local(Local, Length),
}

/// All told of the rules that hold.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Law {
    /// See [`LawTold::Edition`].
    pub edition: Option<Edition>,
    /// See [`LawTold::Place`].
    pub place: Option<&'static Place>,
    /// See [`LawTold::Local`].
    pub local: Vec<(Local, Length)>,
}

impl Law {
    /// Takes one thing in; the last told of a thing holds.
    pub(super) fn set(&mut self, told: LawTold) {
        match told {
            LawTold::Edition(edition) => self.edition = Some(edition),
            LawTold::Place(place) => self.place = Some(place),
            LawTold::Local(of, l) => {
                self.local.retain(|(o, _)| *o != of);
                self.local.push((of, l));
            }
        }
    }

    /// What was told, as it would be told again.
    pub fn told(&self) -> Vec<LawTold> {
        let whose = self.edition.map(LawTold::Edition).into_iter().chain(self.place.map(LawTold::Place));
        whose.chain(self.local.iter().map(|(of, l)| LawTold::Local(*of, *l))).collect()
    }

    /// What the building department asks in a limit's stead; the gap it asks holds on stairs too,
    /// where it is the narrower.
    pub fn asked(&self, limit: &Limit) -> Option<Length> {
        let of = |local: Local| self.local.iter().find(|(of, _)| *of == local).map(|(_, l)| *l);
        let own = Local::ALL.into_iter().find(|of| of.limit().id == limit.id).and_then(of);
        own.or_else(|| of(Local::Gap).filter(|l| limit.id == STAIR_GAP.id && *l < limit.length()))
    }

    /// False abroad, where the place's value is not held and the IRC's says nothing.
    pub fn holds(&self, limit: &Limit) -> bool {
        self.asked(limit).is_some() || self.place.is_none_or(|p| !p.abroad || p.limit(limit).is_some())
    }

    /// True where the building department or the place asks something else than the limit says.
    pub fn changes(&self, limit: &Limit) -> bool {
        self.asked(limit).is_some() || self.place.is_some_and(|p| p.limit(limit).is_some())
    }

    /// True where the value that holds is published in millimetres.
    pub fn is_metric(&self, limit: &Limit) -> bool {
        self.asked(limit).is_none() && self.place.and_then(|p| p.limit(limit)).is_some_and(|l| l.metric)
    }

    /// Where a limit is published for this job; its own source where nothing told changes it.
    pub fn source(&self, limit: &'static Limit) -> &'static str {
        if self.asked(limit).is_some() {
            return "as told, your building department";
        }
        let of_place = self.place.and_then(|p| p.limit(limit)).map(|l| l.source);
        of_place.or_else(|| self.edition.map(|e| e.source(limit))).unwrap_or(limit.source)
    }
}
