//! Editions of the IRC that are held, and places with values of their own, made from
//! `places.toml` at build time.

use super::{GUARD_HEIGHT, GUARD_TRIGGER, LEVEL_GAP, Limit, STAIR_GAP, STAIR_GUARD_LOW, Trust};
use crate::measure::Length;

/// An edition of the IRC whose sections are held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edition {
    /// Of 2018.
    Irc2018,
    /// Of 2021.
    Irc2021,
    /// Of 2024.
    Irc2024,
}

impl Edition {
    /// Every edition, the oldest first.
    pub const ALL: [Edition; 3] = [Edition::Irc2018, Edition::Irc2021, Edition::Irc2024];

    /// Its year.
    pub fn year(self) -> u16 {
        match self {
            Edition::Irc2018 => 2018,
            Edition::Irc2021 => 2021,
            Edition::Irc2024 => 2024,
        }
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Edition::Irc2018 => "the 2018 IRC",
            Edition::Irc2021 => "the 2021 IRC",
            Edition::Irc2024 => "the 2024 IRC",
        }
    }

    /// Where a limit stands in this edition.
    pub fn source(self, limit: &'static Limit) -> &'static str {
        limit.by_edition[self as usize]
    }
}

/// A place or a code with values of its own.
#[derive(Debug, PartialEq)]
pub struct Place {
    /// Its id.
    pub id: &'static str,
    /// Its name.
    pub name: &'static str,
    /// What it is called.
    pub words: &'static [&'static str],
    /// A word of warning.
    pub note: &'static str,
    /// True where the IRC says nothing: what is not among the values is not held.
    pub abroad: bool,
    /// Its values.
    pub limits: &'static [PlaceLimit],
}

/// A value a place puts in the stead of a limit.
#[derive(Debug, PartialEq)]
pub struct PlaceLimit {
    /// The limit it stands for.
    pub limit: &'static Limit,
    /// Numerator and denominator, in inches.
    pub inches: (i64, i64),
    /// True where it is published in millimetres.
    pub metric: bool,
    /// Where.
    pub source: &'static str,
    /// How far it may be trusted.
    pub trust: Trust,
}

include!(concat!(env!("OUT_DIR"), "/places.rs"));

impl Place {
    /// The place of that id.
    pub fn find(id: &str) -> Option<&'static Place> {
        PLACES.iter().find(|p| p.id == id)
    }

    /// What it puts in the stead of a limit, if anything.
    pub fn limit(&self, limit: &Limit) -> Option<&'static PlaceLimit> {
        self.limits.iter().find(|l| l.limit.id == limit.id)
    }
}

impl PlaceLimit {
    /// The value.
    pub fn length(&self) -> Length {
        Length::new(i128::from(self.inches.0), i128::from(self.inches.1)).unwrap_or(Length::ZERO)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::limits::LIMITS;

    #[test]
    fn a_section_that_moved_is_told_by_edition() {
        assert_eq!(Edition::Irc2018.source(&GUARD_HEIGHT), "IRC R312.1.2 (2018)");
        // The balls' sizes in 2021 were not seen, only that the section's other rules are unchanged.
        assert_eq!(Edition::Irc2021.source(&LEVEL_GAP), "IRC R312.1.3 (2021, from memory)");
        assert_eq!(Edition::Irc2024.source(&GUARD_TRIGGER), "IRC R321.1.1 (2024)");
    }

    #[test]
    fn no_edition_cites_a_section_of_another() {
        for limit in LIMITS.iter().filter(|l| l.source.starts_with("IRC R31") && l.source.contains("; R3")) {
            assert!(!Edition::Irc2018.source(limit).contains("2024"), "{}", limit.id);
            assert!(!Edition::Irc2024.source(limit).contains("2018"), "{}", limit.id);
        }
    }

    #[test]
    fn every_place_has_words_and_sources() {
        for place in PLACES {
            assert!(!place.words.is_empty() && !place.note.is_empty(), "{}", place.id);
            assert!(place.limits.iter().all(|l| !l.source.is_empty() && l.length().is_positive()), "{}", place.id);
        }
    }
}
