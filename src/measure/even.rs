//! Equal gaps: how many pieces of one width leave gaps that stay under a limit.
//!
//! With n pieces b wide in a clear w there are n + 1 gaps of (w - n b)/(n + 1).

use super::{Length, Q, Tape};
use num_rational::Ratio;

/// More pieces than any opening holds: the search stops here.
const MOST: u16 = 2000;

/// Whether a gap equal to the limit passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touch {
    /// It fails: a ball of that size goes through.
    Fails,
    /// It passes: "not more than".
    Passes,
}

impl Touch {
    fn holds(self, gap: Length, limit: Length) -> bool {
        gap < limit || (self == Touch::Passes && gap == limit)
    }
}

/// The fewest pieces that keep every gap within the limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Even {
    /// Fewest by the exact gaps.
    pub exact: u16,
    /// Fewest with the gaps between marks read on the tape kept within it too.
    pub taped: u16,
    /// The clear space they stand in.
    pub clear: Length,
    /// How wide each is.
    pub width: Length,
}

/// The fewest pieces `width` wide that keep the gaps in `clear` within `limit`. `None`
/// where no number does, or a size is not above nothing.
pub fn even(clear: Length, width: Length, limit: Length, touch: Touch, tape: Tape) -> Option<Even> {
    if !(clear.is_positive() && width.is_positive() && limit.is_positive()) {
        return None;
    }
    let fits = |n: &u16| gap(clear, width, *n).is_some_and(|g| g.is_positive());
    let holds = |n: &u16| gap(clear, width, *n).is_some_and(|g| touch.holds(g, limit));
    let exact = (0..MOST).take_while(fits).find(holds)?;
    let on_tape = |n: &u16| rounded_gaps(clear, width, *n, tape).all(|g| touch.holds(g, limit));
    let taped = (exact..MOST).take_while(fits).find(on_tape)?;
    Some(Even { exact, taped, clear, width })
}

impl Even {
    /// The exact gap with the pieces to build.
    pub fn gap(&self) -> Length {
        gap(self.clear, self.width, self.taped).unwrap_or(Length::ZERO)
    }
}

fn gap(clear: Length, width: Length, n: u16) -> Option<Length> {
    let n = i64::from(n);
    clear.less(width.times(Q::from_integer(i128::from(n)))?)?.over(Q::from_integer(i128::from(n) + 1))
}

/// The gaps between pieces set out by marks, each mark rounded from its own exact place.
fn rounded_gaps(clear: Length, width: Length, n: u16, tape: Tape) -> impl Iterator<Item = Length> {
    let each = gap(clear, width, n).unwrap_or(Length::ZERO);
    let mark = move |i: u16| match i {
        // The opening's far side is where it is, and no mark.
        i if i == n => clear,
        i => tape.round((each + width).times(Ratio::from_integer(i128::from(i))).unwrap_or(Length::ZERO) + each),
    };
    let before = move |i: u16| if i == 0 { Length::ZERO } else { mark(i - 1) + width };
    (0..=n).map(move |i| mark(i) - before(i))
}

#[cfg(test)]
mod tests {
    use super::*;
    use pretty_assertions::assert_eq;

    /// By hand from n > (clear - limit)/(width + limit): a tie fails a ball and passes a
    /// "not more than"; 58 15/16 passes exactly with 10 and reads 4 on the tape.
    #[test]
    fn the_fewest_exactly_and_on_the_tape() {
        let sixteenths = Length::sixteenths;
        let rows = [
            (70 * 16, 24, 64, Touch::Fails, Some((13, 13))),
            (70 * 16, 24, 64, Touch::Passes, Some((12, 12))),
            (943, 24, 64, Touch::Fails, Some((10, 11))),
            (48, 24, 64, Touch::Fails, Some((0, 0))),
            (0, 24, 64, Touch::Fails, None),
        ];
        for (clear, width, limit, touch, want) in rows {
            let got = even(sixteenths(clear), sixteenths(width), sixteenths(limit), touch, Tape::SIXTEENTHS);
            assert_eq!(got.map(|e| (e.exact, e.taped)), want, "{clear} {touch:?}");
        }
    }
}
