//! A value as a row takes it.

use crate::figure::{Unit, Value};
use crate::grammar::Act;
use crate::grammar::canon;
use crate::grammar::scores::{Line, Reading, Shape, Value as Said};
use crate::job::Fact;
use crate::measure::{Length, Number, Q};
use crate::quantity::{Kind, ROWS, RowId, money};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// What a value says: a row's figure, or a fact of another kind (lumber, a choice).
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Premise {
    /// A row and its figure.
    Row(RowId, Value),
    /// A fact.
    Fact(Fact),
}

/// What a size that is out of the ordinary costs, and each of several units that all fit: logarithms of odds.
const UNUSUAL: f32 = -1.5;
const EITHER: f32 = -0.7;

/// A value's ways to fill a row, each with what it costs; none where its kind or size does not fit.
pub(super) fn ways(row: RowId, line: &Line, at: usize) -> Vec<(f32, Premise)> {
    let Some(said) = line.tokens.get(at).and_then(|t| t.value.as_ref()) else { return Vec::new() };
    // "4 steps" are so many: a number without a unit before its things is no length.
    if row.row().kind == Kind::Length && counts(line, at, said) {
        return Vec::new();
    }
    // "38s" are so many pieces of one length, and a length in doubt is asked about where more than one of what it may be would do.
    // One side of "12 by 16" counts nothing.
    let counted = said.shape == Shape::Side && row.row().kind == Kind::Count;
    let doubt = row.row().kind == Kind::Length && said.shape == Shape::Doubt;
    if doubt {
        return settled(row, said).into_iter().map(|value| (0.0, Premise::Row(row, value))).collect();
    }
    if counted || said.shape == Shape::Pieces && !PIECES.contains(&row) {
        return Vec::new();
    }
    if let Some(facts) = lumber(row, said) {
        return facts;
    }
    let mut all: Vec<(f32, Value)> = Vec::new();
    for reading in &said.readings {
        for (cost, value) in as_kind(row, *reading) {
            if row.holds(value) && all.iter().all(|(_, v)| *v != value) {
                all.push((cost + unusual(row, value), value));
            }
        }
        // A number without a unit has the row's own; its other readings are for rows without any.
        if matches!(reading, Reading::Number(_)) && !all.is_empty() {
            break;
        }
    }
    if all.len() > 1 && all.iter().filter(|(c, _)| *c > UNUSUAL).count() > 1 {
        all.iter_mut().for_each(|(c, _)| *c += EITHER);
    }
    all.into_iter().map(|(cost, value)| (cost, Premise::Row(row, value))).collect()
}

/// A length in doubt, "58.5", where one of all it may be is usual for the row: no bay is 58 ft wide.
fn settled(row: RowId, said: &Said) -> Option<Value> {
    // A slash that was lost is another doubt: "3 58".
    let point = said.number().filter(|q| !q.is_integer())?;
    let feet = Length::from_q(point * Q::from_integer(12))?;
    said.readings.contains(&Reading::Length(feet)).then_some(())?;
    let all = said.readings.iter().flat_map(|reading| as_kind(row, *reading)).map(|(_, value)| value);
    let mut usual: Vec<Value> = all.filter(|value| row.holds(*value) && unusual(row, *value) == 0.0).collect();
    usual.dedup();
    let one = usual.pop()?;
    usual.is_empty().then_some(one)
}

/// By how much a row is to be more or less: in its own unit, however little it is of the row.
pub(super) fn amount(row: RowId, line: &Line, at: usize) -> Option<Value> {
    let said = line.tokens.get(at)?.value.as_ref().filter(|said| said.shape != Shape::Doubt)?;
    said.readings.iter().find_map(|reading| as_kind(row, *reading).into_iter().next()).map(|(_, value)| value)
}

/// True for a number in figures or words before a noun of several things.
fn counts(line: &Line, at: usize, said: &Said) -> bool {
    let next = line.tokens.get(at + 1).filter(|t| !t.asks()).and_then(|t| t.word.as_deref());
    let several = |w: &str| w.len() > 3 && w.ends_with('s') && !w.ends_with("ss") && !UNITS.contains(&w);
    // "22 front, 12 sides 4 ft stairs": the things behind it have a figure of their own.
    let own = line.tokens.get(at + 2).is_some_and(|t| t.value.is_some());
    let number = matches!(said.shape, Shape::Bare | Shape::Spoken) && said.size().fract() == 0.0;
    number && !own && next.is_some_and(several)
}

/// Units and limits, which are no things.
const UNITS: &[&str] = &["tops", "inches", "feets", "clears", "centers", "centres"];

fn as_kind(row: RowId, reading: Reading) -> Vec<(f32, Value)> {
    match (row.row().kind, reading) {
        (Kind::Length, Reading::Length(l)) => vec![(0.0, Value::Length(l))],
        (Kind::Length, Reading::Number(q)) => {
            let number = Number { value: q, fraction: !q.is_integer(), plural: false };
            row.bare(number).into_iter().map(|l| (0.0, Value::Length(l))).collect()
        }
        (Kind::Count, Reading::Number(q)) if q.is_integer() => {
            u64::try_from(q.to_integer()).map(|n| (0.0, Value::Count(n))).into_iter().collect()
        }
        (Kind::Number | Kind::Percent, Reading::Number(q)) => vec![(0.0, Value::Number(q))],
        (Kind::Angle, Reading::Number(q)) => vec![(0.0, Value::Quantity(q, Unit::Degrees))],
        (Kind::Force, Reading::Number(q)) => vec![(0.0, Value::Quantity(q, Unit::Pounds))],
        (Kind::Money, Reading::Number(q)) => money(q).map(|m| (0.0, Value::Money(m))).into_iter().collect(),
        _ => Vec::new(),
    }
}

fn unusual(row: RowId, value: Value) -> f32 {
    let (lo, hi) = row.row().usual;
    let sixteenths = match value {
        Value::Length(l) => l,
        Value::Count(n) => match i64::try_from(n).ok().and_then(|n| n.checked_mul(16)) {
            Some(n) => Length::sixteenths(n),
            None => return UNUSUAL,
        },
        _ => return 0.0,
    };
    let usual = sixteenths >= Length::sixteenths(lo) && sixteenths <= Length::sixteenths(hi);
    if usual { 0.0 } else { UNUSUAL }
}

/// What comes in pieces of one length, or stands all alike: "joists on 24s".
const PIECES: &[RowId] = &[
    RowId::PieceLength,
    RowId::BalusterLength,
    RowId::PostLength,
    RowId::RailLength,
    RowId::Stock,
    RowId::PostWidth,
    RowId::Joists,
];

/// What is as wide as lumber is dressed.
const WIDE: &[RowId] = &[
    RowId::PostWidth,
    RowId::CornerPostWidth,
    RowId::EndPostWidth,
    RowId::GatePostWidth,
    RowId::StairPostWidth,
    RowId::BalusterWidth,
    RowId::RimTall,
];

/// Lumber told for a size is that size; for a width it is as wide as it is dressed.
fn lumber(row: RowId, said: &Said) -> Option<Vec<(f32, Premise)>> {
    let size = said.lumber();
    if let Some(thick) = quarters(said).filter(|_| matches!(row, RowId::Decking | RowId::DeckingSize)) {
        return Some(vec![(0.0, Premise::Row(RowId::Decking, Value::Length(thick)))]);
    }
    if row.row().kind == Kind::Lumber {
        let size = size?;
        let wide = match row {
            RowId::BalusterSize => Some((RowId::BalusterWidth, size.dressed().map(|d| d.1))),
            RowId::DeckingSize => Some((RowId::Decking, size.dressed().map(|d| d.0))),
            RowId::RimSize => Some((RowId::Rim, size.dressed().map(|d| d.0))),
            _ => None,
        };
        let premise = match wide {
            Some((row, width)) => width.map(|l| Premise::Row(row, Value::Length(l))),
            None => fact(row, &size.to_string()).map(Premise::Fact),
        };
        return Some(premise.into_iter().map(|p| (0.0, p)).collect());
    }
    if row.row().kind != Kind::Length {
        return None;
    }
    // A size is no length, but of what is as wide or as thick as it is.
    let (thick, width) = size?.dressed()?;
    let length = match row {
        RowId::Rim | RowId::Decking | RowId::Cap | RowId::Skirt => thick,
        row if WIDE.contains(&row) => width,
        _ => return Some(Vec::new()),
    };
    Some(if row.takes(length) { vec![(0.0, Premise::Row(row, Value::Length(length)))] } else { Vec::new() })
}

/// A board by its quarters, "5/4", is dressed a quarter less (PS 20: 5/4 decking is 1 in.).
fn quarters(said: &Said) -> Option<Length> {
    let by_quarters = |q: &Reading| matches!(q, Reading::Number(q) if *q.denom() == 4 && matches!(*q.numer(), 5 | 6));
    let part = said.shape == Shape::Part && said.readings.iter().any(by_quarters);
    said.number().filter(|_| part).and_then(|q| Length::from_q(q - Q::new(1, 4)))
}

/// How many corners a line clips, and where it says so: "both front corners", "one corner".
pub(super) fn corners_cut(line: &Line) -> Option<(usize, u64)> {
    const NEAR: usize = 3;
    let corner = |at: usize| line.tokens.get(at).is_some_and(|t| t.stem == "corner");
    let many =
        |at: usize| line.tokens.get(at)?.value.as_ref()?.number().filter(|q| q.is_integer()).map(|q| q.to_integer());
    let at = (0..line.tokens.len()).find(|at| many(*at).is_some_and(|n| n < 5) && (at + 1..=at + NEAR).any(corner))?;
    Some((at, u64::try_from(many(at)?).ok()?))
}

/// What a size of lumber says besides: a rim's size is its thickness and its height.
pub(super) fn besides(row: RowId, line: &Line, at: usize) -> Option<Premise> {
    if row == RowId::CornerLeg {
        return corners_cut(line).map(|(_, n)| Premise::Row(RowId::CornersCut, Value::Count(n)));
    }
    let said = line.tokens.get(at)?.value.as_ref().filter(|_| row == RowId::RimSize)?;
    Some(Premise::Row(RowId::RimTall, Value::Length(said.lumber()?.dressed()?.1)))
}

/// Rows that one size of lumber says both of: a question that uses one of them passes over neither.
pub(super) const OF_ONE_SIZE: &[(RowId, RowId)] = &[(RowId::Rim, RowId::RimTall)];

/// Words of the corpus that the plain phrases write otherwise.
const WRITTEN: &[(RowId, &str, &str)] = &[
    (RowId::Mount, "inside", "inside the rim"),
    (RowId::Mount, "outside", "outside the rim"),
    (RowId::Mount, "inside rim", "inside the rim"),
    (RowId::Mount, "outside rim", "outside the rim"),
    (RowId::Mount, "surface", "on the decking"),
    (RowId::Species, "cedar", "western cedar"),
    (RowId::Fixing, "bolts", "through bolts"),
    (RowId::Fixing, "lag screws", "lags"),
    (RowId::Fixing, "screws", "structural screws"),
    (RowId::TopRailLies, "edge", "on edge"),
    (RowId::BottomRailLies, "edge", "on edge"),
    (RowId::Lands, "slab", "a slab"),
    (RowId::Lands, "ground", "the ground"),
    (RowId::Lands, "landing", "a landing"),
];

/// Shapes that are named by how many sides they have.
const SIDED: &[(&str, u64)] = &[("pentagon", 5), ("hexagon", 6), ("octagon", 8)];

/// What a word says as a premise: a shape's name is how many sides it has, any other tells its row.
pub(super) fn word(row: RowId, word: &str) -> Option<Premise> {
    let sides = || SIDED.iter().find(|(name, _)| row == RowId::Shape && *name == word);
    let fact = || fact(row, word).map(Premise::Fact);
    sides().map(|(_, n)| Premise::Row(RowId::FacetCount, Value::Count(*n))).or_else(fact)
}

/// The fact that tells a row with these words, by the row's plain phrase.
pub(super) fn fact(row: RowId, words: &str) -> Option<Fact> {
    let words = WRITTEN.iter().find(|(r, said, _)| *r == row && *said == words).map_or(words, |(.., written)| written);
    let plain = if row == RowId::Lands { "stairs: lands on {}" } else { row.row().plain };
    let phrase = plain.contains("{}").then(|| plain.replace("{}", words))?;
    match canon::read(&phrase)? {
        Act::Tell(facts) if facts.len() == 1 => facts.into_iter().next(),
        _ => None,
    }
}

/// The row the corpus calls so: its id in small letters, a hyphen before each one that was a capital.
pub(super) fn row_of(name: &str) -> Option<RowId> {
    static NAMES: LazyLock<BTreeMap<String, RowId>> = LazyLock::new(|| {
        let kebab = |id: RowId| {
            let capital = |c: char| if c.is_uppercase() { format!("-{}", c.to_lowercase()) } else { c.to_string() };
            format!("{id:?}").chars().map(capital).collect::<String>().trim_start_matches('-').to_owned()
        };
        ROWS.iter().map(|r| (kebab(r.id), r.id)).collect()
    });
    NAMES.get(name).copied()
}
