//! Named lumber: "4x4", "5/4x6". The name is not its size.

use super::Length;

/// A nominal size of sawn lumber, smaller number first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Lumber {
    /// Nominal thickness in quarter inches (5/4 stock is 5, a 4x4 is 16).
    pub thick_quarters: u16,
    /// Nominal width in whole inches.
    pub wide: u16,
}

impl Lumber {
    /// The 4x4 most guard posts are.
    pub const FOUR_BY_FOUR: Lumber = Lumber { thick_quarters: 16, wide: 4 };
    /// The 6x6.
    pub const SIX_BY_SIX: Lumber = Lumber { thick_quarters: 24, wide: 6 };

    /// Nominal `thick` by `wide` whole inches.
    pub const fn by(thick: u16, wide: u16) -> Lumber {
        Lumber { thick_quarters: thick * 4, wide }
    }

    /// Dressed dry thickness and width; `None` for a size the table does not hold.
    /// Source: PS 20 dressed sizes, in `sizes.rs` made from the data file at build time.
    pub fn dressed(self) -> Option<(Length, Length)> {
        let thick = dressed_of(self.thick_quarters, self.is_timber())?;
        let wide = dressed_of(self.wide * 4, self.is_timber())?;
        Some((thick, wide))
    }

    /// The table its dressed size is from, saying so where a row of it is from memory.
    pub fn table(self) -> &'static str {
        let memory = |quarters: u16| DRESSED.iter().any(|row| row.0 == quarters && row.2);
        // The half inch off a timber was seen for 5 and 6 in.; of larger ones it is known only.
        let from_memory = match self.is_timber() {
            true => self.thick_quarters > 24 || self.wide > 6,
            false => memory(self.thick_quarters) || memory(self.wide * 4),
        };
        if from_memory { "PS 20 size table (from memory, not checked)" } else { "PS 20 size table" }
    }

    /// Five inches and thicker: sized half an inch off by PS 20.
    fn is_timber(self) -> bool {
        self.thick_quarters >= 20
    }

    /// True for boards and sticks under 3 in. nominal: said alone, none of them is taken for a
    /// guard post (common practice, no source).
    pub fn is_thin(self) -> bool {
        self.thick_quarters < 12
    }

    /// True where both sides are the same, as a post's usually are.
    pub fn is_square(self) -> bool {
        self.thick_quarters == self.wide * 4
    }
}

include!(concat!(env!("OUT_DIR"), "/sizes.rs"));

fn dressed_of(quarters: u16, timber: bool) -> Option<Length> {
    if timber {
        return Length::new(i128::from(quarters) * 4 - 8, 16);
    }
    DRESSED.iter().find(|row| row.0 == quarters).map(|row| Length::sixteenths(row.1))
}

impl std::fmt::Display for Lumber {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.thick_quarters % 4 {
            0 => write!(f, "{}x{}", self.thick_quarters / 4, self.wide),
            _ => write!(f, "{}/4x{}", self.thick_quarters, self.wide),
        }
    }
}
