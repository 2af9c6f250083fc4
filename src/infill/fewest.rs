//! The fewest balusters that keep every gap under the limit.

use super::{NoSpread, Opening, Spread, Start};

/// More balusters than any opening takes: the search stops here.
const MOST: u32 = 2_000;

/// The fewest, exactly and on the tape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fewest {
    /// The fewest whose exact gap is under the limit.
    pub exact: Spread,
    /// The fewest whose every gap is under it as marked on the tape, too: what gets built.
    pub taped: Spread,
}

/// The fewest balusters for an opening, `MOST` at most.
pub fn fewest(opening: Opening) -> Result<Fewest, NoSpread> {
    let least = match opening.start {
        Start::Gap => 0,
        Start::Baluster => 2,
    };
    Spread::of(opening, least)?;
    let spreads = (least..=MOST).map_while(|n| Spread::of(opening, n).ok());
    let mut under = spreads.filter(|s| opening.limit.allows(s.gap()));
    let exact = under.next().ok_or(NoSpread::TooMany)?;
    let taped = std::iter::once(exact).chain(under).find(Spread::passes).ok_or(NoSpread::TooMany)?;
    Ok(Fewest { exact, taped })
}
