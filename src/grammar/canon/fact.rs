//! Facts: one phrase each, joined by "; ".
//!
//! ```text
//! setting = ("posts" | "corner posts" | "line posts" | "end posts" | "gate posts" | "stair posts") ": " (lumber | inches " wide")
//!         | "height: " inches " to the top" | "gap under: " inches | "balusters: " inches " wide"
//!         | "gap limit: " inches | "most clear: " length | "most on centre: " length | "above ground: " inches
//!         | "overhang: " inches | "skirt: " inches " thick" | "rim: " inches " thick"
//!         | "baluster line: " inches " inside the edge" | "hold-back: " inches
//!         | "joists: " inches " on centre" | "first joist: " inches " in" | "joists run: " words
//!         | "mount: " words | "fixing: " words | "house end: " words
//!         | "pool: " words | "blocking: " words | "left and right: " words
//!         | "notch: none" | "notch: " inches " deep" | "tape: 1/" parts | timber        see timber.rs
//! order   = "kerf: " inches | ...                                               see order.rs
//! deck    = "deck: " length (" along the house" | " out")
//! done    = ["not "] "done: " stage
//! figure  = "told: " name " " value | "drop told: " name                         see row.rs
//! ```

use super::Read;
use super::clean::clean_note;
use super::deck::{read_deck, write_deck};
use super::foot::{read_foot, write_foot};
use super::law::{read_law, write_law};
use super::length::{read_length, read_lumber};
use super::order::{read_order, write_order};
use super::row::{read_given, read_name, write_value};
use super::run::{read_run, write_run};
use super::stairs::{read_stair_fact, write_stair_fact};
use super::timber::{read_timber, write_timber};
use super::words::{Table, one_of, whole, words_of};
use crate::job::{
    Blocking, Fact, Fixing, HouseEnd, JoistsRun, Mount, NotchTold, PostRole, PostSize, RunId, Setting, Stage, View,
};
use crate::measure::{Tape, exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_till1};
use nom::combinator::{map, map_opt, value, verify};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded, separated_pair, terminated};

const ROLES: &Table<PostRole> = &[
    (PostRole::All, "posts"),
    (PostRole::Corner, "corner posts"),
    (PostRole::Line, "line posts"),
    (PostRole::End, "end posts"),
    (PostRole::Gate, "gate posts"),
    (PostRole::Stair, "stair posts"),
];

const MOUNTS: &Table<Mount> = &[
    (Mount::OverEdge, "over the edge"),
    (Mount::Inside, "inside the rim"),
    (Mount::Outside, "outside the rim"),
    (Mount::Surface, "on the decking"),
];

const FIXINGS: &Table<Fixing> =
    &[(Fixing::ThroughBolts, "through bolts"), (Fixing::Lags, "lags"), (Fixing::Screws, "structural screws")];

const POOLS: &Table<bool> = &[(true, "closed off by the guard"), (false, "none")];

const HOUSE_ENDS: &Table<HouseEnd> = &[(HouseEnd::Post, "post"), (HouseEnd::Bracket, "bracket")];

const JOISTS_RUN: &Table<JoistsRun> = &[(JoistsRun::Out, "out from the house"), (JoistsRun::Along, "along the house")];

const BLOCKING: &Table<Blocking> = &[(Blocking::AtPosts, "at every post"), (Blocking::None, "none")];

const VIEWS: &Table<View> = &[(View::House, "as seen from the house"), (View::Yard, "as seen from the yard")];

/// The facts of one act, joined.
pub(super) fn write_facts(facts: &[Fact]) -> String {
    facts.iter().map(write_fact).collect::<Vec<_>>().join("; ")
}

/// The plain phrase of one fact.
pub fn write_fact(fact: &Fact) -> String {
    match fact {
        Fact::Run(id, patch) => write_run(*id, patch),
        Fact::DropRun(id) => format!("drop run {}", id.0),
        Fact::Set(setting) => write_setting(*setting),
        Fact::DeckAlong(l) => format!("deck: {} along the house", exact_phrase(*l)),
        Fact::DeckOut(l) => format!("deck: {} out", exact_phrase(*l)),
        Fact::Deck(fact) => write_deck(*fact),
        Fact::StairWidth(_) | Fact::StairMeasure(_) | Fact::StairPlace(_) | Fact::Flight(_) | Fact::NoStairs => {
            write_stair_fact(fact).unwrap_or_default()
        }
        // A note without words never comes out of `clean_note`; one built by hand still gets a line that reads.
        Fact::Note(words) => format!("note: {}", clean_note(words).as_deref().unwrap_or("(no words)")),
        Fact::DropNote(n) => format!("drop note {n}"),
        Fact::Order(order) => write_order(order),
        Fact::Row(row, value) => format!("told: {} {}", row.row().name, write_value(*value)),
        Fact::DropRow(row) => format!("drop told: {}", row.row().name),
        Fact::Done(stage, true) => format!("done: {}", stage.name()),
        Fact::Done(stage, false) => format!("not done: {}", stage.name()),
    }
}

fn write_setting(setting: Setting) -> String {
    match setting {
        Setting::Post(role, size) => format!("{}: {}", words_of(ROLES, role), write_size(size)),
        Setting::HeightTop(l) => format!("height: {} to the top", exact_inches(l)),
        Setting::GapUnder(l) => format!("gap under: {}", exact_inches(l)),
        Setting::Baluster(l) => format!("balusters: {} wide", exact_inches(l)),
        Setting::GapMax(l) => format!("gap limit: {}", exact_inches(l)),
        Setting::ClearMax(l) => format!("most clear: {}", exact_phrase(l)),
        Setting::CentreMax(l) => format!("most on centre: {}", exact_phrase(l)),
        Setting::Grade(l) => format!("above ground: {}", exact_inches(l)),
        Setting::Mount(m) => format!("mount: {}", words_of(MOUNTS, m)),
        Setting::Overhang(l) => format!("overhang: {}", exact_inches(l)),
        Setting::Skirt(l) => format!("skirt: {} thick", exact_inches(l)),
        Setting::Rim(l) => format!("rim: {} thick", exact_inches(l)),
        Setting::Line(l) => format!("baluster line: {} inside the edge", exact_inches(l)),
        Setting::HoldBack(l) => format!("hold-back: {}", exact_inches(l)),
        Setting::Joists(l) => format!("joists: {} on centre", exact_inches(l)),
        Setting::FirstJoist(l) => format!("first joist: {} in", exact_inches(l)),
        Setting::JoistsRun(way) => format!("joists run: {}", words_of(JOISTS_RUN, way)),
        Setting::Blocking(b) => format!("blocking: {}", words_of(BLOCKING, b)),
        Setting::View(v) => format!("left and right: {}", words_of(VIEWS, v)),
        Setting::Pool(p) => format!("pool: {}", words_of(POOLS, p)),
        Setting::Fixing(f) => format!("fixing: {}", words_of(FIXINGS, f)),
        Setting::HouseEnd(h) => format!("house end: {}", words_of(HOUSE_ENDS, h)),
        Setting::Notch(NotchTold::None) => "notch: none".to_owned(),
        Setting::Notch(NotchTold::Deep(l)) => format!("notch: {} deep", exact_inches(l)),
        Setting::Tape(den) => format!("tape: 1/{den}"),
        Setting::Timber(told) => write_timber(told),
        Setting::Law(told) => write_law(&told),
        Setting::Foot(f) => write_foot(f),
    }
}

fn write_size(size: PostSize) -> String {
    match size {
        PostSize::Lumber(lumber) => lumber.to_string(),
        PostSize::Width(l) => format!("{} wide", exact_inches(l)),
    }
}

/// Reads what [`write_facts`] writes.
pub(super) fn read_facts(i: &str) -> Read<'_, Vec<Fact>> {
    separated_list1(tag("; "), read_fact).parse(i)
}

/// Reads one fact.
pub(super) fn read_fact(i: &str) -> Read<'_, Fact> {
    alt((
        read_run,
        map(preceded(tag("drop run "), whole), |n| Fact::DropRun(RunId(n))),
        map(preceded(tag("drop note "), whole), Fact::DropNote),
        map(delimited(tag("deck: "), read_length, tag(" along the house")), Fact::DeckAlong),
        map(delimited(tag("deck: "), read_length, tag(" out")), Fact::DeckOut),
        map(read_deck, Fact::Deck),
        read_stair_fact,
        map(preceded(tag("note: "), read_note), Fact::Note),
        map(read_post, Fact::Set),
        map(read_size_setting, Fact::Set),
        map(read_framing_setting, Fact::Set),
        map(read_chosen_setting, Fact::Set),
        map(read_timber, |told| Fact::Set(Setting::Timber(told))),
        map(read_law, |told| Fact::Set(Setting::Law(told))),
        map(read_order, Fact::Order),
        map_opt(preceded(tag("told: "), read_given), |(row, value)| Fact::of(row, value)),
        map(preceded(tag("drop told: "), read_name), Fact::DropRow),
        map(preceded(tag("done: "), read_stage), |s| Fact::Done(s, true)),
        map(preceded(tag("not done: "), read_stage), |s| Fact::Done(s, false)),
        map(read_foot, |f| Fact::Set(Setting::Foot(f))),
    ))
    .parse(i)
}

fn read_stage(i: &str) -> Read<'_, Stage> {
    one_of(&Stage::ALL.map(|s| (s, s.name())))(i)
}

fn read_note(i: &str) -> Read<'_, String> {
    let words = verify(take_till1(|c| c == ';'), |words: &str| clean_note(words).as_deref() == Some(words));
    map(words, str::to_owned).parse(i)
}

fn read_post(i: &str) -> Read<'_, Setting> {
    let size = alt((map(read_lumber, PostSize::Lumber), map(terminated(read_length, tag(" wide")), PostSize::Width)));
    map(separated_pair(one_of(ROLES), tag(": "), size), |(role, size)| Setting::Post(role, size)).parse(i)
}

/// Settings that are a length.
fn read_size_setting(i: &str) -> Read<'_, Setting> {
    let between = |before, after| delimited(tag(before), read_length, tag(after));
    alt((
        map(between("height: ", " to the top"), Setting::HeightTop),
        map(between("gap under: ", ""), Setting::GapUnder),
        map(between("balusters: ", " wide"), Setting::Baluster),
        map(between("gap limit: ", ""), Setting::GapMax),
        map(between("most clear: ", ""), Setting::ClearMax),
        map(between("most on centre: ", ""), Setting::CentreMax),
        map(between("above ground: ", ""), Setting::Grade),
        map(between("notch: ", " deep"), |l| Setting::Notch(NotchTold::Deep(l))),
    ))
    .parse(i)
}

/// Settings of what the posts stand on that are a length.
fn read_framing_setting(i: &str) -> Read<'_, Setting> {
    let between = |before, after| delimited(tag(before), read_length, tag(after));
    alt((
        map(between("overhang: ", ""), Setting::Overhang),
        map(between("skirt: ", " thick"), Setting::Skirt),
        map(between("rim: ", " thick"), Setting::Rim),
        map(between("baluster line: ", " inside the edge"), Setting::Line),
        map(between("hold-back: ", ""), Setting::HoldBack),
        map(between("joists: ", " on centre"), Setting::Joists),
        map(between("first joist: ", " in"), Setting::FirstJoist),
    ))
    .parse(i)
}

/// Settings that are one of a few things.
fn read_chosen_setting(i: &str) -> Read<'_, Setting> {
    let parts = verify(whole, |den: &u8| Tape::to(i128::from(*den)).is_some());
    alt((
        map(preceded(tag("mount: "), one_of(MOUNTS)), Setting::Mount),
        map(preceded(tag("fixing: "), one_of(FIXINGS)), Setting::Fixing),
        map(preceded(tag("house end: "), one_of(HOUSE_ENDS)), Setting::HouseEnd),
        map(preceded(tag("joists run: "), one_of(JOISTS_RUN)), Setting::JoistsRun),
        map(preceded(tag("pool: "), one_of(POOLS)), Setting::Pool),
        map(preceded(tag("blocking: "), one_of(BLOCKING)), Setting::Blocking),
        map(preceded(tag("left and right: "), one_of(VIEWS)), Setting::View),
        value(Setting::Notch(NotchTold::None), tag("notch: none")),
        map(preceded(tag("tape: 1/"), parts), Setting::Tape),
    ))
    .parse(i)
}
