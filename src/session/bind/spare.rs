//! Words of a line that have no part in how it was taken: they are named, and what leaves one of weight over is not sure.

use super::mood::asked_by;
use super::readings::{Filled, Reading};
use super::strays::of_another_matter;
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::draft::Weight;
use crate::grammar::items::{Is, Item, likeliest};
use crate::grammar::reading::weight;
use crate::grammar::scores::{Line, stem};
use crate::grammar::sense::{Cue, Sense, Verb};
use crate::grammar::words::words;
use crate::grammar::{Act, Query};
use crate::job::{End, Fact, Setting};
use crate::quantity::{Owner, ROWS, Row, RowId};
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// A word without a part.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::session) struct Spare {
    /// As typed.
    pub text: String,
    /// The lexicon holds it for a word that counts: what is told may hang on it.
    pub heavy: bool,
    /// It denies, bends or places what is beside it: whatever is made of the line may hang on it.
    pub bends: bool,
    /// Nobody knows it, and it stands beside a figure or a word of the trade.
    pub unknown: bool,
    /// It denies or bends what is beside it, or makes a limit of it: nothing is told beside it.
    pub denies: bool,
}

/// What a reading of this line leaves over, when this act is made of it.
pub(super) fn spare(typed: &str, line: &Line, reading: &Reading<'_>, act: &Act) -> Vec<Spare> {
    let owners = owners(reading, act);
    let filled = filled(line, reading, act);
    let words = words(typed);
    let items = likeliest(&words, &[]);
    let tells = !act.told().is_empty();
    let limits = rows(reading, act).iter().any(|row| LIMITS.contains(row));
    // "Too" has its part in what is asked: whether it is too high.
    let asked: Vec<&str> = if is_of_fault(act) { asked_by(typed).collect() } else { Vec::new() };
    let left = |at: usize| {
        let item = &items[at];
        let said = |w: &str| filled.contains(w);
        let called =
            |w: &str| said(w) || if tells { is_noun(reading, w) } else { owners.iter().any(|o| is_called(*o, w)) };
        let mut its_words = item.text.split_whitespace();
        // A noun has its part by its thing; what bends or places something only where it fills a row itself.
        let limits = limits && item.senses().iter().any(|s| matches!(s, Sense::Cue(Cue::Least | Cue::Most)));
        let op = !tells && item.senses().iter().any(|s| matches!(s, Sense::Op(_)));
        // "stairs" is a place, and what a told width is of.
        let thing = tells && is_stairs(item) && item.text.split_whitespace().any(called);
        let asks = item.text.split_whitespace().all(|w| asked.contains(&w));
        let part = asks
            || limits
            || thing
            || takes_back(&items, at)
            || if bends(item) && !op { its_words.all(said) } else { its_words.any(called) };
        let weight = weight(&items, at);
        let measure = matches!(item.is, Is::Measure(_));
        // A word that may bend something counts, whatever else it may be.
        let counts = weight > Weight::Light || bends(item);
        (counts && !measure && !part).then(|| Spare {
            text: item.text.to_string(),
            heavy: weight > Weight::Unknown || bends(item),
            bends: bends(item),
            unknown: weight == Weight::Touching,
            denies: item.senses().iter().any(denies),
        })
    };
    (0..items.len()).filter_map(left).collect()
}

/// The figures without a part: those a telling passes over as another matter's, and those of a question that nothing it asks rests on.
pub(super) fn figures(typed: &str, line: &Line, reading: &Reading<'_>, act: &Act) -> Vec<Spare> {
    let (tells, asks) = (!act.told().is_empty(), matches!(act, Act::Query(Query::Row(_))));
    let passed = if tells { of_another_matter(line, reading) } else { Vec::new() };
    let idle = reading.unsaid(line).filter(|_| asks).map(|item| item.at);
    let text = |at: usize| typed.get(line.tokens.get(at)?.span.clone());
    let spare = |text: &str| Spare { text: text.to_owned(), heavy: true, bends: asks, unknown: false, denies: false };
    passed.into_iter().chain(idle).filter_map(text).map(spare).collect()
}

/// "8, no, 9": between two figures it takes the first one back, and denies nothing.
fn takes_back(items: &[Item], at: usize) -> bool {
    let figure = |i: Option<&Item>| i.is_some_and(|i| matches!(i.is, Is::Measure(_)));
    let repairs = items[at].senses().iter().any(|s| matches!(s, Sense::Not | Sense::Verb(Verb::Repair)));
    let before = items[..at].iter().rev().find(|i| !i.is_sep());
    let behind = items[at + 1..].iter().find(|i| !i.is_sep());
    let alike = |a: Option<&Item>, b: Option<&Item>| figure(a) && figure(b);
    repairs && &*items[at].text == "no" && alike(before, behind)
}

/// True for a question whether something is amiss.
fn is_of_fault(act: &Act) -> bool {
    matches!(act, Act::Query(Query::Row(RowAsk { mood: Mood::Fault, .. })))
}

/// Rows that a "no more than" or an "at least" belongs to.
const LIMITS: &[RowId] = &[
    RowId::GapMax,
    RowId::ClearMax,
    RowId::CentreMax,
    RowId::RiserMost,
    RowId::BoltsMost,
    RowId::Gap,
    RowId::GapLimit,
    RowId::BayCentre,
    RowId::BayClear,
    RowId::Rise,
];

/// True for a word of stairs alone, which is the place where they begin too: it bends nothing else.
fn is_stairs(item: &Item) -> bool {
    let stairs = |s: &Sense| matches!(s, Sense::End(End::StairHead) | Sense::Ends(End::StairHead));
    item.senses().iter().any(stairs) && item.senses().iter().all(|s| stairs(s) || !bend(s))
}

/// True for a word that denies, bends or places what stands beside it.
fn bends(item: &Item) -> bool {
    item.senses().iter().any(bend)
}

fn bend(s: &Sense) -> bool {
    let place = matches!(s, Sense::End(_) | Sense::Side(_) | Sense::Spot(_) | Sense::Nth(_));
    place || denies(s)
}

fn denies(s: &Sense) -> bool {
    matches!(s, Sense::Not | Sense::Qualifier | Sense::Op(_) | Sense::Cue(Cue::Least | Cue::Most))
}

/// The words of the items that fill a row, but for places that what is told does not hold.
fn filled(line: &Line, reading: &Reading<'_>, act: &Act) -> BTreeSet<String> {
    let item = |at: usize| line.item(at).and_then(|i| line.tokens.get(i.at..i.end)).unwrap_or_default();
    let holds = |f: &&Filled<'_>| act.told().is_empty() || f.row.is_none_or(|row| is_held(row, act.told()));
    let said = reading.filled.iter().filter(holds).flat_map(|f| item(f.at)).filter_map(|t| t.word.clone());
    // "Starts 5 ft from the corner": told with the distance; the ways of a walk are told with its turns.
    let off = reading.filled.iter().any(|f| f.row == Some(RowId::Offset)) && is_held(RowId::OffsetFrom, act.told());
    let turns = act.told().iter().any(|f| matches!(f, Fact::Run(_, patch) if patch.turn.is_some()));
    let ways = turns && reading.filled.iter().all(|f| !matches!(f.row, Some(RowId::DeckAlong | RowId::DeckOut)));
    let words = [(off, PLACED), (ways, WAYS)].into_iter().filter(|(so, _)| *so).flat_map(|(_, words)| words);
    said.chain(words.map(|w| (*w).to_owned())).collect()
}

/// Words of a distance along a run.
const PLACED: &[&str] = &["from", "off", "starts", "starting", "begins"];

/// Words of the ways of a walk.
const WAYS: &[&str] = &["out", "back", "in", "left", "right", "across", "over", "then"];

/// True where what is told has the thing that a place is of: a gate's place says nothing where no gate is told.
fn is_held(row: RowId, facts: &[Fact]) -> bool {
    let runs = || facts.iter().filter_map(|f| if let Fact::Run(_, patch) = f { Some(patch) } else { None });
    let gate = || runs().any(|p| p.gate.is_some());
    let stairs = || {
        let none = |f: &Fact| matches!(f, Fact::StairPlace(_) | Fact::NoStairs);
        runs().any(|p| p.stairs.is_some() || p.to == Some(End::StairHead)) || facts.iter().any(none)
    };
    match row {
        RowId::GateAt | RowId::Hinge | RowId::Latch | RowId::Swing => gate(),
        RowId::StairAt => stairs(),
        RowId::OffsetFrom => gate() || stairs(),
        RowId::RunFrom | RowId::RunTo => runs().next().is_some(),
        RowId::PostAt => {
            runs().any(|p| p.bays.is_some()) || facts.iter().any(|f| matches!(f, Fact::Set(Setting::Post(..))))
        }
        _ => true,
    }
}

/// True where the word is a noun of a row that is filled: a telling is held to its own rows.
pub(super) fn is_noun(reading: &Reading<'_>, word: &str) -> bool {
    let rows = reading.filled.iter().filter_map(|f| f.row);
    let nouns = rows.flat_map(|r| [r.row().nouns, r.row().name]).flat_map(str::split_whitespace);
    nouns.map(|noun| stem(noun.trim_matches(','))).any(|noun| noun == stem(word))
}

/// True where the word is a noun of one of the thing's rows, or asks for one.
fn is_called(owner: Owner, word: &str) -> bool {
    static CALLED: LazyLock<BTreeSet<(Owner, String)>> = LazyLock::new(|| {
        let called = |row: &'static Row| [row.nouns, row.asked, row.name].into_iter().flat_map(str::split_whitespace);
        let plain = |w: &'static str| stem(w.trim_matches(','));
        ROWS.iter().flat_map(|row| called(row).map(move |w| (row.owner, plain(w)))).collect()
    });
    CALLED.contains(&(owner, stem(word)))
}

/// The rows a reading and its act speak of.
fn rows(reading: &Reading<'_>, act: &Act) -> Vec<RowId> {
    let filled = reading.filled.iter().filter_map(|f| f.row);
    let asked: Vec<RowId> = match act {
        Act::Query(Query::Row(RowAsk { wants, given, .. })) => {
            wants.iter().copied().chain(given.iter().map(|g| g.0)).collect()
        }
        _ => Vec::new(),
    };
    filled.chain(asked).collect()
}

/// The things they belong to.
fn owners(reading: &Reading<'_>, act: &Act) -> Vec<Owner> {
    let mut owners: Vec<Owner> = rows(reading, act).into_iter().map(|row| row.row().owner).collect();
    owners.sort();
    owners.dedup();
    owners
}
