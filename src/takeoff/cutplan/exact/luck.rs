//! Numbers that look drawn by lot and are the same on every machine.

/// A multiplicative generator with Knuth's constants (MMIX): good enough to vary a search.
pub struct Luck(u64);

impl Luck {
    /// A sequence of its own for every seed.
    pub fn of(seed: u64) -> Luck {
        Luck(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x5851_F42D)
    }

    /// The next number below `n`; 0 for 0.
    pub fn below(&mut self, n: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n.max(1)
    }
}
