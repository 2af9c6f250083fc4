//! What the wood is and how the rail is made up: only what a strength question needs.

use crate::measure::{Length, Lumber};

/// A species, or the group it is graded and sold under.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Species {
    /// Southern pine.
    SouthernPine,
    /// Douglas fir and larch.
    DouglasFir,
    /// Hemlock and true firs.
    HemFir,
    /// Spruce, pine and fir.
    SprucePineFir,
    /// Western cedars.
    Cedar,
    /// Redwood.
    Redwood,
}

impl Species {
    /// Every species there are design values for.
    pub const ALL: [Species; 6] = [
        Species::SouthernPine,
        Species::DouglasFir,
        Species::HemFir,
        Species::SprucePineFir,
        Species::Cedar,
        Species::Redwood,
    ];

    /// Its name, as said and written.
    pub fn name(self) -> &'static str {
        match self {
            Species::SouthernPine => "southern pine",
            Species::DouglasFir => "douglas fir-larch",
            Species::HemFir => "hem-fir",
            Species::SprucePineFir => "spruce-pine-fir",
            Species::Cedar => "western cedar",
            Species::Redwood => "redwood",
        }
    }
}

/// A visual stress grade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// No. 1.
    No1,
    /// No. 2.
    No2,
}

impl Grade {
    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Grade::No1 => "no. 1",
            Grade::No2 => "no. 2",
        }
    }
}

/// How long a load is taken to stand, over the wood's life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duration {
    /// For good.
    Permanent,
    /// Ten years: the reference the design values are given for.
    TenYears,
    /// Two months.
    TwoMonths,
    /// Seven days.
    SevenDays,
    /// Ten minutes.
    TenMinutes,
    /// A blow.
    Impact,
}

impl Duration {
    /// Every duration of the table.
    pub const ALL: [Duration; 6] = [
        Duration::Permanent,
        Duration::TenYears,
        Duration::TwoMonths,
        Duration::SevenDays,
        Duration::TenMinutes,
        Duration::Impact,
    ];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Duration::Permanent => "permanent",
            Duration::TenYears => "ten years",
            Duration::TwoMonths => "two months",
            Duration::SevenDays => "seven days",
            Duration::TenMinutes => "ten minutes",
            Duration::Impact => "impact",
        }
    }
}

/// How a rail lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lie {
    /// Wide face up.
    Flat,
    /// Narrow face up.
    Edge,
}

impl Lie {
    /// How much height a member of this size takes lying so: its thickness flat, its width on edge.
    /// `None` for lumber the size table does not hold.
    pub fn depth(self, size: Lumber) -> Option<Length> {
        let (thick, wide) = size.dressed()?;
        Some(if self == Lie::Flat { thick } else { wide })
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Lie::Flat => "flat",
            Lie::Edge => "on edge",
        }
    }
}

/// One thing told of the wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimberTold {
    /// The species.
    Species(Species),
    /// The grade.
    Grade(Grade),
    /// Wet in service, or dry.
    Wet(bool),
    /// Incised for its preservative, or not.
    Incised(bool),
    /// How long the load is taken to stand.
    Duration(Duration),
}

/// All that was told of the wood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Timber {
    /// See [`TimberTold::Species`].
    pub species: Option<Species>,
    /// See [`TimberTold::Grade`].
    pub grade: Option<Grade>,
    /// See [`TimberTold::Wet`].
    pub wet: Option<bool>,
    /// See [`TimberTold::Incised`].
    pub incised: Option<bool>,
    /// See [`TimberTold::Duration`].
    pub duration: Option<Duration>,
}

impl Timber {
    /// Takes one in; the last told wins.
    pub fn set(&mut self, told: TimberTold) {
        match told {
            TimberTold::Species(s) => self.species = Some(s),
            TimberTold::Grade(g) => self.grade = Some(g),
            TimberTold::Wet(w) => self.wet = Some(w),
            TimberTold::Incised(i) => self.incised = Some(i),
            TimberTold::Duration(d) => self.duration = Some(d),
        }
    }

    /// What was told, one by one, in the order of the fields.
    pub fn told(&self) -> Vec<TimberTold> {
        let told = [
            self.species.map(TimberTold::Species),
            self.grade.map(TimberTold::Grade),
            self.wet.map(TimberTold::Wet),
            self.incised.map(TimberTold::Incised),
            self.duration.map(TimberTold::Duration),
        ];
        told.into_iter().flatten().collect()
    }
}
