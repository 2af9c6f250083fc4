//! Printing a length: the tape reading, the exact decimal, the phrase that reads back.

use super::{Length, Q};
use num_rational::Ratio;
use num_traits::{Signed, Zero};

/// How fine the tape is read: halves, quarters ... of an inch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tape(i128);

impl Tape {
    /// Sixteenths, as most tapes are marked.
    pub const SIXTEENTHS: Tape = Tape(16);

    /// A tape read to 1/`den` in.; `None` unless `den` is 2, 4, 8, 16, 32 or 64.
    pub fn to(den: i128) -> Option<Tape> {
        [2, 4, 8, 16, 32, 64].contains(&den).then_some(Tape(den))
    }

    /// The parts an inch is read to.
    pub fn den(self) -> i128 {
        self.0
    }

    /// The length as this tape reads it: nearest mark, a tie up.
    pub fn round(self, l: Length) -> Length {
        l.rounded(self.0)
    }

    /// The tape reading in feet and inches, as `10'-6 3/4"`; under a foot, inches alone.
    pub fn read(self, l: Length) -> String {
        feet_inches(self.round(l).q())
    }

    /// The tape reading in inches alone, as `126 3/4"`.
    pub fn read_inches(self, l: Length) -> String {
        inches(self.round(l).q())
    }

    /// True when the tape reading is the length itself.
    pub fn is_true(self, l: Length) -> bool {
        l.is_exact() && l.on_grid(self.0)
    }
}

impl Default for Tape {
    fn default() -> Tape {
        Tape::SIXTEENTHS
    }
}

fn sign(q: Q) -> &'static str {
    if q.is_negative() { "-" } else { "" }
}

/// A mixed number: `10 3/4`, `3/8`, `0`.
fn mixed(q: Q) -> String {
    let (whole, part) = (q.trunc(), q.fract());
    match (whole.is_zero(), part.is_zero()) {
        (_, true) => whole.to_integer().to_string(),
        (true, false) => format!("{}/{}", part.numer(), part.denom()),
        (false, false) => format!("{} {}/{}", whole.to_integer(), part.numer(), part.denom()),
    }
}

fn inches(q: Q) -> String {
    format!("{}{}\"", sign(q), mixed(q.abs()))
}

fn feet_inches(q: Q) -> String {
    let a = q.abs();
    let feet = (a / Ratio::from_integer(12)).trunc();
    if feet.is_zero() {
        return inches(q);
    }
    let rest = a - feet * Ratio::from_integer(12);
    // "8'-0 3/4\"", never "8'-3/4\"": a bare fraction behind feet is misread.
    let zero = if rest < Ratio::from_integer(1) && !rest.is_zero() { "0 " } else { "" };
    format!("{}{}'-{zero}{}\"", sign(q), feet.to_integer(), mixed(rest))
}

/// The exact fraction of inches, as `39 11/24`, without a mark.
pub fn exact_fraction(l: Length) -> String {
    mixed_number(l.q())
}

/// A plain number, exactly, as a mixed number: `5`, `-2 1/2`, `3/8`.
pub fn mixed_number(q: Q) -> String {
    format!("{}{}", sign(q), mixed(q.abs()))
}

/// A number in decimals: exact where it ends within 12 places, else to 6 places.
/// The flag tells whether it is exact.
pub fn decimal(q: Q) -> (String, bool) {
    let exact = terminating_places(q).filter(|p| *p <= 12);
    let places = exact.unwrap_or(6);
    let scale = 10_i128.pow(places);
    let scaled = (q.abs() * Ratio::from_integer(scale) + Ratio::new(1, 2)).floor().to_integer();
    let (whole, part) = (scaled / scale, scaled % scale);
    let text = match places {
        0 => format!("{}{whole}", sign(q)),
        _ => format!("{}{whole}.{part:0width$}", sign(q), width = places as usize),
    };
    (text, exact.is_some())
}

fn terminating_places(q: Q) -> Option<u32> {
    let mut den = *q.denom();
    let (mut twos, mut fives) = (0, 0);
    while den % 2 == 0 {
        den /= 2;
        twos += 1;
    }
    while den % 5 == 0 {
        den /= 5;
        fives += 1;
    }
    (den == 1).then_some(twos.max(fives))
}

/// A length as a person can say it: what is inexact is said to the sixteenth, as a tape is read.
fn told(l: Length) -> Length {
    if l.is_exact() { l } else { l.rounded(16) }
}

/// The phrase that reads back as exactly this length: tape marks down to 1/64 in.,
/// whole or decimal millimetres for a metric length, else a fraction of any kind.
pub fn exact_phrase(l: Length) -> String {
    let l = told(l);
    if l.on_grid(64) {
        return feet_inches(l.q());
    }
    // Only what was told in millimetres has a denominator that 127 divides: 1 mm is 5/127 in.
    match decimal(l.mm()) {
        (text, true) if l.q().denom() % 127 == 0 && text.len() < 16 => format!("{text} mm"),
        _ => inches(l.q()),
    }
}

/// As [`exact_phrase`], but inches alone whatever the size: `38"`, never `3'-2"`.
/// Heights, gaps and the sizes of parts are spoken of so.
pub fn exact_inches(l: Length) -> String {
    let l = told(l);
    if l.on_grid(64) { inches(l.q()) } else { exact_phrase(l) }
}
