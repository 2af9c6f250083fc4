//! A measure in a slot: the lengths it may be, and how its unit was said.

use crate::job::{BareUnit, SlotId, Told};
use crate::measure::{Doubt, Guess, Length, Meaning, Measure, Number, Q, Said};
use num_rational::Ratio;

/// The lengths a measure may be in a slot.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fits {
    /// The lengths, likeliest first; more than one means ask.
    pub lengths: Vec<(Length, Said)>,
    /// Ask even about a single one.
    pub doubtful: bool,
}

impl Fits {
    /// No length, or one that only fits with its marks swapped ("a leaf of 40 feet").
    pub fn slipped(&self) -> bool {
        self.lengths.is_empty() || self.doubtful && self.lengths.len() == 1
    }

    fn sure(l: Length, said: Said) -> Fits {
        Fits { lengths: vec![(l, said)], doubtful: false }
    }
}

/// The lengths a measure may be in this slot. `inherit` is how the unit of the value
/// it replaces was said: "no, make it eleven and a half" after "12 foot" is feet.
/// Empty when it is no length at all.
pub(super) fn fits(m: &Measure, slot: SlotId, inherit: Option<Said>) -> Fits {
    let none = Fits { lengths: Vec::new(), doubtful: false };
    match &m.meaning {
        Meaning::Length(l, said) if m.guess == Some(Guess::DashPair) && is_spacing(slot) => range(*l, *said),
        Meaning::Length(l, said) => checked(*l, *said, slot),
        Meaning::Bare(n) if n.plural => none,
        Meaning::Bare(n) => bare(*n, slot, inherit),
        Meaning::Doubt(Doubt::Decimal, lengths) if slot.row().bare == BareUnit::Inches => in_inches(lengths),
        // "41.5" for a gate: no gate is 41 feet, but one may be 41 1/2 inches.
        Meaning::Doubt(Doubt::Decimal, lengths) if !lengths.iter().any(|l| slot.takes(*l)) => in_inches(lengths),
        Meaning::Doubt(_, lengths) => doubted(lengths, slot),
        Meaning::Lumber(_) | Meaning::By(..) => none,
    }
}

/// "gap 3.5": where only inches make sense the decimal is inches, not feet. Of the two choices, 3'-6"
/// and 3'-5", the decimal is the likelier for a half and the second for the rest; fives of twelve are
/// no decimal.
fn in_inches(feet: &[Length]) -> Fits {
    let typed = |l: &Length| 100 % *l.q().denom() == 0;
    let decimal = feet.iter().rev().filter_map(|l| l.over(Ratio::from_integer(12))).find(typed);
    Fits { lengths: decimal.map(|l| (l, Said::Inches)).into_iter().collect(), doubtful: false }
}

fn doubted(lengths: &[Length], slot: SlotId) -> Fits {
    let sane: Vec<Length> = lengths.iter().copied().filter(|l| slot.takes(*l)).collect();
    let all = if sane.is_empty() { lengths.to_vec() } else { sane };
    Fits { lengths: all.into_iter().map(|l| (l, said_of(l))).collect(), doubtful: true }
}

fn is_spacing(slot: SlotId) -> bool {
    matches!(slot, SlotId::ClearMax | SlotId::CentreMax)
}

/// "posts 6-8 apart": from six to eight feet, or 6'-8".
fn range(l: Length, said: Said) -> Fits {
    let feet = (l.q() / Ratio::from_integer(12)).trunc();
    let second = l.q() - feet * Ratio::from_integer(12);
    let of = |q: Q| Length::from_q(q * Ratio::from_integer(12)).map(|l| (l, Said::Feet));
    let lengths = [of(feet), of(second), Some((l, said))];
    Fits { lengths: lengths.into_iter().flatten().collect(), doubtful: true }
}

/// A length with its unit said. Where it makes no sense in the slot but would with the
/// other mark, both are offered: marks get swapped in print and in thumbs.
fn checked(l: Length, said: Said, slot: SlotId) -> Fits {
    // A run of a foot or so is built, but 12" is as likely 12': a whole number and a mark that slipped.
    let short = slot == SlotId::RunLength && said == Said::Inches && l.q().is_integer();
    if short && (Length::inches(4)..=Length::inches(20)).contains(&l) {
        let feet = l.times(Ratio::from_integer(12)).map(|o| (o, Said::Feet));
        return Fits { lengths: [Some((l, said)), feet].into_iter().flatten().collect(), doubtful: true };
    }
    if slot.takes(l) {
        return Fits::sure(l, said);
    }
    let other = match said {
        Said::Inches => l.times(Ratio::from_integer(12)).map(|o| (o, Said::Feet)),
        Said::Feet => l.over(Ratio::from_integer(12)).map(|o| (o, Said::Inches)),
        Said::FeetInches | Said::Metric => None,
    };
    // A 14 foot gate is no 14 inch gate with its mark swapped: neither is one.
    let likely = |o: &Length| slot.takes(*o) && (slot != SlotId::GateWidth || *o >= Length::inches(24));
    match other.filter(|(o, _)| likely(o)) {
        Some(swapped) => Fits { lengths: vec![swapped], doubtful: true },
        None => Fits::sure(l, said),
    }
}

fn bare(n: Number, slot: SlotId, inherit: Option<Said>) -> Fits {
    let feet = Length::from_q(n.value).and_then(|l| l.times(Ratio::from_integer(12)));
    let inches = Length::from_q(n.value);
    let inherited = match inherit {
        Some(Said::Feet | Said::FeetInches) => feet.map(|l| (l, Said::Feet)),
        Some(Said::Inches) => inches.map(|l| (l, Said::Inches)),
        Some(Said::Metric) | None => None,
    };
    if let Some((l, said)) = inherited.filter(|(l, _)| slot.takes(*l)) {
        // "13 5/8" after feet: eighths are counted in inches, whatever stood.
        let fine = said != Said::Inches && n.fraction && *n.value.denom() > 4;
        let also = inches.filter(|i| fine && slot.takes(*i)).map(|i| (i, Said::Inches));
        let doubtful = also.is_some();
        return Fits { lengths: [Some((l, said)), also].into_iter().flatten().collect(), doubtful };
    }
    let lengths: Vec<_> = slot.bare(n).into_iter().map(|l| (l, said_as(l, n))).collect();
    Fits { doubtful: lengths.len() > 1, lengths }
}

fn said_as(l: Length, n: Number) -> Said {
    if l.q() == n.value { Said::Inches } else { Said::Feet }
}

fn said_of(l: Length) -> Said {
    let feet = (l.q() / Ratio::from_integer(12)).is_integer();
    match (feet, l > Length::inches(12)) {
        (true, _) => Said::Feet,
        (false, true) => Said::FeetInches,
        (false, false) => Said::Inches,
    }
}

/// The length as told: with its shade and its "about".
pub(super) fn told(m: &Measure, length: Length) -> Told {
    Told { length, shade: m.shade, about: m.about }
}
