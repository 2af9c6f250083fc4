//! Small numbers in as few bits as will do: Rice's code, the top bit of each byte first.

/// Bits to be read.
pub(super) struct Bits<'a> {
    rest: &'a [u8],
    /// Bits taken from the bytes and not yet read, the next one on top.
    held: u64,
    count: u32,
}

/// No number has more ones before its nought than this.
pub const MOST_ONES: u32 = 31;

impl<'a> Bits<'a> {
    pub(super) fn new(bytes: &'a [u8]) -> Bits<'a> {
        Bits { rest: bytes, held: 0, count: 0 }
    }

    /// The next number: ones up to a nought, then so many low bits; `None` where the bits end before it does.
    pub(super) fn number(&mut self, low: u32) -> Option<u32> {
        self.fill();
        let ones = self.held.leading_ones();
        if ones > MOST_ONES || ones >= self.count {
            return None;
        }
        self.drop(ones + 1);
        let rest = self.take(low)?;
        Some((ones << low) | rest)
    }

    /// The next bits as they stand, 24 at most.
    pub(super) fn take(&mut self, bits: u32) -> Option<u32> {
        self.fill();
        if bits > self.count || bits > 24 {
            return None;
        }
        if bits == 0 {
            return Some(0);
        }
        let value = self.held >> (64 - bits);
        self.drop(bits);
        u32::try_from(value).ok()
    }

    /// True where nothing but the noughts that fill the last byte is left.
    pub(super) fn is_done(&self) -> bool {
        self.rest.is_empty() && self.count < 8 && self.held == 0
    }

    fn drop(&mut self, bits: u32) {
        self.held <<= bits;
        self.count -= bits;
    }

    fn fill(&mut self) {
        while self.count <= 56 {
            let Some((byte, rest)) = self.rest.split_first() else { return };
            self.held |= u64::from(*byte) << (56 - self.count);
            self.count += 8;
            self.rest = rest;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_one_after_another_and_none_behind_the_end() {
        // 5 with two low bits: 1 0 01; 0 with none: 0; 2 as three bits: 010; a nought to fill the byte.
        let bytes = [0b1001_0010, 0b0000_0000];
        let mut bits = Bits::new(&bytes[..1]);
        assert_eq!((bits.number(2), bits.number(0), bits.take(3)), (Some(5), Some(0), Some(2)));
        assert!(bits.is_done());
        assert_eq!((bits.take(1), bits.number(3)), (None, None));
        // Ones without an end are no number.
        assert_eq!(Bits::new(&[0xff; 16]).number(0), None);
    }
}
