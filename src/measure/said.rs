//! A measure as a person said it: what it may mean, before any slot decides.

use super::{Length, Lumber, Q};

/// One island of measure: a stretch of words read as one length, number or size.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// What the words may mean.
    pub meaning: Meaning,
    /// "strong", "shy" ...: kept and echoed, never added to the length.
    pub shade: Option<Shade>,
    /// "about", "roughly", "-ish": the length is told as not exact.
    pub about: bool,
    /// What had to be assumed to read it; `None` when it reads one way only.
    pub guess: Option<Guess>,
}

/// What a measure may mean.
#[derive(Clone, Debug, PartialEq)]
pub enum Meaning {
    /// A number with no unit: the slot it fills decides the unit, or counts with it.
    Bare(Number),
    /// A length whose unit was said, or follows from how it was written.
    Length(Length, Said),
    /// Named lumber: a thing, never a product of two numbers.
    Lumber(Lumber),
    /// Two sides, "12 by 16": each a bare number or a length.
    By(Side, Side),
    /// Readings too far apart to choose for anyone: always asked.
    Doubt(Doubt, Vec<Length>),
}

/// One side of a "this by that".
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Side {
    /// A number with no unit.
    Bare(Number),
    /// A length.
    Length(Length, Said),
}

/// A number with no unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number {
    /// The number, exactly.
    pub value: Q,
    /// Written or said with a vulgar fraction ("118 3/8", "eleven and a half").
    pub fraction: bool,
    /// Said as a plural ("38s", "sixteens"): so many pieces of that length.
    pub plural: bool,
}

/// How the unit of a length was said; a bare correction inherits it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Said {
    /// Feet alone: "12 foot", "8.5'".
    Feet,
    /// Feet and inches: "14'-3\"", "7-9", "ten foot six".
    FeetInches,
    /// Inches alone: "118 3/8 in".
    Inches,
    /// Millimetres, centimetres or metres.
    Metric,
}

/// A shade on a measure: a little over or a little under, of no fixed size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shade {
    /// strong, heavy, fat, big, plus
    Strong,
    /// light, shy, weak, small, minus
    Shy,
}

/// What was assumed to read a measure; every one is said back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Guess {
    /// "7-9", "10-6-3/4": feet and inches.
    DashPair,
    /// "nine two", "twelve nine and a quarter": feet and inches.
    SpokenPair,
    /// "three foot and a half": half of a foot.
    HalfFoot,
    /// "four and a half foot": half of a foot.
    MixedFeet,
    /// "4' 15\"" or "5 17/16": more than a whole, carried over.
    CarriedOver,
    /// "10:06", "10;6": feet and inches.
    ClockPair,
    /// "nine foot to": a homophone taken for its number.
    Homophone,
    /// "62 and 5 8": a slash taken as lost.
    LostSlash,
}

/// Why a measure is always asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doubt {
    /// "10.6": decimal feet, or feet and inches.
    Decimal,
    /// "36-twelve", "10-14": the second number may count sixteenths.
    Sixteenths,
    /// "31/2", "4 38": a slash or a space went missing.
    Lost,
    /// "1510": feet and inches run together, millimetres or inches.
    Packed,
    /// "6-8 apart": from one to the other.
    Range,
    /// "10 6" in digits: feet and inches, or two numbers.
    SpacedPair,
    /// "1/8 big" and other calls whose size depends on the crew.
    CrewCall,
}
