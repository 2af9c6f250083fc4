//! What a word does inside a measure; the words stand in `grammar/numbers.toml`.

use crate::grammar::sense::spelled_from;
use crate::measure::Shade;

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Foot,
    Inch,
    Millimetre,
    Centimetre,
    Metre,
}

/// One thing a word may do inside a measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    /// 0 to 19.
    Small(i128),
    /// 20, 30 ... 90.
    Tens(i128),
    Hundred,
    Thousand,
    /// The nought of "one oh four".
    Oh,
    Point,
    /// "sixteens": pieces of that length.
    Plural(i128),
    Dozen,
    Couple,
    /// "eighths": the under number of a fraction.
    Part(i128),
    /// "ths" written onto digits.
    PartEnding,
    Unit(Unit),
    /// "a 14 footer": feet, and nothing after them.
    Footer,
    Ticks,
    Shade(Shade),
    /// A shade only after the measure: in front of it "plus" adds.
    ShadeAfter(Shade),
    /// "a hair": makes a shade of "over" and "under".
    Little,
    Beyond(Shade),
    About,
    AboutAfter,
    And,
    Article,
    By,
    Of,
    /// "eight foot even".
    Level,
    /// A word before which "in" is likelier a preposition.
    AfterPreposition,
    /// Letters written onto a number: a height or a width.
    Tail,
    /// A word dictation writes for this number.
    Homophone(i128),
}

include!(concat!(env!("OUT_DIR"), "/numbers.rs"));

/// The rows whose first word is this one, longest first.
pub(super) fn rows(first: &str) -> &'static [(&'static [&'static str], Role)] {
    spelled_from(NUMBERS, &NUMBERS_FROM, first)
}

/// True for letters that say which way a number is measured: "h", "wide", "oc".
pub(in crate::grammar) fn is_tail(text: &str) -> bool {
    rows(text).iter().any(|row| row.1 == Role::Tail)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_found_by_its_first_word() {
        for row in NUMBERS {
            assert!(rows(row.0[0]).contains(row), "{row:?}");
        }
        assert!(rows("zzz").is_empty() && rows("").is_empty());
    }
}
