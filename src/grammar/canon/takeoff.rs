//! Questions about balusters, parts, cuts and cost.
//!
//! ```text
//! ask    = "balusters" [" of run " n] | infill | "gap at " inches " on centre" [", balusters " inches " wide"]
//!        | "gap " ["under "] inches | "gap by what passes" | "parts" | "cuts" | "buy" | "cost" | "splits" [" of run " n]
//!        | "gaps dried" [" from " inches] [", " wood] | "holes " inches " on centre" [" in " length " clear"] [", balusters " inches " wide"]
//!        | "same marks, balusters " inches " wide"
//!        | "cut length of " ("balusters" | "posts" | "rails")
//! infill = [n " "] "balusters" [" " inches " wide"] " in " length " clear" [", under " inches] [", start with a " ("gap" | "baluster")]
//! ```

use super::Read;
use super::length::read_length;
use super::timber::SPECIES;
use super::words::{Table, one_of, whole, words_of};
use crate::grammar::ask::{Infill, TakeoffAsk};
use crate::job::{LongPart, RunId, Species, StartWith};
use crate::measure::{Length, exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt, value};
use nom::sequence::{delimited, preceded, terminated};

const STARTS: &Table<StartWith> = &[(StartWith::Gap, "gap"), (StartWith::Baluster, "baluster")];
const LONG: &Table<LongPart> = &[(LongPart::Baluster, "balusters"), (LongPart::Post, "posts")];

/// The plain phrase of a question, its "?" aside.
pub(super) fn write_takeoff(ask: &TakeoffAsk) -> String {
    match ask {
        TakeoffAsk::Balusters(run) => format!("balusters{}", of_run(*run)),
        TakeoffAsk::Infill(infill) => write_infill(infill),
        TakeoffAsk::OnCentre { centre, baluster } => {
            format!("gap at {} on centre{}", exact_inches(*centre), wide(*baluster))
        }
        TakeoffAsk::ByObject => "gap by what passes".to_owned(),
        TakeoffAsk::GapUnder(l) => format!("gap under {}", exact_inches(*l)),
        TakeoffAsk::Gap(l) => format!("gap {}", exact_inches(*l)),
        TakeoffAsk::Dried { wood, gap } => {
            let from = gap.map_or(String::new(), |l| format!(" from {}", exact_inches(l)));
            let wood = wood.map_or(String::new(), |w| format!(", {}", words_of(SPECIES, w)));
            format!("gaps dried{from}{wood}")
        }
        TakeoffAsk::Routed { pitch, clear, baluster } => {
            let clear = clear.map_or(String::new(), |l| format!(" in {} clear", exact_phrase(l)));
            format!("holes {} on centre{clear}{}", exact_inches(*pitch), wide(*baluster))
        }
        TakeoffAsk::Measured(l) => format!("same marks{}", wide(Some(*l))),
        TakeoffAsk::Parts => "parts".to_owned(),
        TakeoffAsk::Cuts => "cuts".to_owned(),
        TakeoffAsk::Buy => "buy".to_owned(),
        TakeoffAsk::Cost => "cost".to_owned(),
        TakeoffAsk::Splits(run) => format!("splits{}", of_run(*run)),
        TakeoffAsk::CutLength(part) => format!("cut length of {}", words_of(LONG, *part)),
        TakeoffAsk::RailLength => "cut length of rails".to_owned(),
        TakeoffAsk::CutShort(l) => format!("cut short at {}", exact_phrase(*l)),
    }
}

fn write_infill(i: &Infill) -> String {
    let count = i.count.map_or(String::new(), |n| format!("{n} "));
    let wide = i.baluster.map_or(String::new(), |l| format!(" {} wide", exact_inches(l)));
    let under = i.limit.map_or(String::new(), |l| format!(", under {}", exact_inches(l)));
    let start = i.start.map_or(String::new(), |s| format!(", start with a {}", words_of(STARTS, s)));
    format!("{count}balusters{wide} in {} clear{under}{start}", exact_phrase(i.clear))
}

fn wide(l: Option<Length>) -> String {
    l.map_or(String::new(), |l| format!(", balusters {} wide", exact_inches(l)))
}

fn of_run(run: Option<RunId>) -> String {
    run.map_or(String::new(), |id| format!(" of run {}", id.0))
}

/// Reads what [`write_takeoff`] writes.
pub(super) fn read_takeoff(i: &str) -> Read<'_, TakeoffAsk> {
    let on_centre = (delimited(tag("gap at "), read_length, tag(" on centre")), opt(read_wide));
    alt((
        map(read_infill, TakeoffAsk::Infill),
        map(preceded(tag("balusters"), opt(read_of_run)), TakeoffAsk::Balusters),
        map(on_centre, |(centre, baluster)| TakeoffAsk::OnCentre { centre, baluster }),
        value(TakeoffAsk::ByObject, tag("gap by what passes")),
        map(read_dried, |(gap, wood)| TakeoffAsk::Dried { wood, gap }),
        map(read_routed, |(pitch, clear, baluster)| TakeoffAsk::Routed { pitch, clear, baluster }),
        map(preceded(tag("same marks"), read_wide), TakeoffAsk::Measured),
        map(preceded(tag("gap under "), read_length), TakeoffAsk::GapUnder),
        map(preceded(tag("gap "), read_length), TakeoffAsk::Gap),
        value(TakeoffAsk::Parts, tag("parts")),
        value(TakeoffAsk::Cuts, tag("cuts")),
        value(TakeoffAsk::Buy, tag("buy")),
        value(TakeoffAsk::Cost, tag("cost")),
        map(preceded(tag("splits"), opt(read_of_run)), TakeoffAsk::Splits),
        map(preceded(tag("cut length of "), one_of(LONG)), TakeoffAsk::CutLength),
        value(TakeoffAsk::RailLength, tag("cut length of rails")),
        map(preceded(tag("cut short at "), read_length), TakeoffAsk::CutShort),
    ))
    .parse(i)
}

fn read_dried(i: &str) -> Read<'_, (Option<Length>, Option<Species>)> {
    let wood = preceded(tag(", "), one_of(SPECIES));
    preceded(tag("gaps dried"), (opt(preceded(tag(" from "), read_length)), opt(wood))).parse(i)
}

fn read_routed(i: &str) -> Read<'_, (Length, Option<Length>, Option<Length>)> {
    let clear = delimited(tag(" in "), read_length, tag(" clear"));
    (delimited(tag("holes "), read_length, tag(" on centre")), opt(clear), opt(read_wide)).parse(i)
}

fn read_infill(i: &str) -> Read<'_, Infill> {
    let start = preceded(tag(", start with a "), one_of(STARTS));
    let parts = (
        terminated(opt(terminated(whole, tag(" "))), tag("balusters")),
        opt(delimited(tag(" "), read_length, tag(" wide"))),
        delimited(tag(" in "), read_length, tag(" clear")),
        opt(preceded(tag(", under "), read_length)),
        opt(start),
    );
    map(parts, |(count, baluster, clear, limit, start)| Infill { clear, count, baluster, limit, start }).parse(i)
}

fn read_wide(i: &str) -> Read<'_, Length> {
    delimited(tag(", balusters "), read_length, tag(" wide")).parse(i)
}

fn read_of_run(i: &str) -> Read<'_, RunId> {
    map(preceded(tag(" of run "), whole), RunId).parse(i)
}
