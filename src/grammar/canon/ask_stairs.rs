//! Questions about stair openings and gates.
//!
//! ```text
//! ask = "height of the stairs" | "stairs" | "gate swing" | "one leaf of " length
//!     | "leaf for " length [", hinge gap " inches] [", latch gap " inches]
//! ```

use super::Read;
use super::length::read_length;
use crate::grammar::ask::{LeafAsked, StairAsk};
use crate::measure::{Length, exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt, value};
use nom::sequence::preceded;

/// The plain phrase, without its question mark.
pub(super) fn write_ask(ask: StairAsk) -> String {
    let gap = |name: &str, l: Option<Length>| l.map_or(String::new(), |l| format!(", {name} gap {}", exact_inches(l)));
    match ask {
        StairAsk::Height => "height of the stairs".to_owned(),
        StairAsk::Told => "stairs".to_owned(),
        StairAsk::Swing => "gate swing".to_owned(),
        StairAsk::OneLeaf(l) => format!("one leaf of {}", exact_phrase(l)),
        StairAsk::Leaf(LeafAsked { opening, hinge, latch }) => {
            format!("leaf for {}{}{}", exact_phrase(opening), gap("hinge", hinge), gap("latch", latch))
        }
    }
}

/// Reads what [`write_ask`] writes.
pub(super) fn read_ask(i: &str) -> Read<'_, StairAsk> {
    let leaf = (
        preceded(tag("leaf for "), read_length),
        opt(preceded(tag(", hinge gap "), read_length)),
        opt(preceded(tag(", latch gap "), read_length)),
    );
    alt((
        value(StairAsk::Height, tag("height of the stairs")),
        value(StairAsk::Told, tag("stairs")),
        value(StairAsk::Swing, tag("gate swing")),
        map(preceded(tag("one leaf of "), read_length), StairAsk::OneLeaf),
        map(leaf, |(opening, hinge, latch)| StairAsk::Leaf(LeafAsked { opening, hinge, latch })),
    ))
    .parse(i)
}
