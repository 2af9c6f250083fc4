//! The values of a line, each with everything it may stand for.

use super::shape::Shape;
use crate::grammar::measures::{Island, count_at, measures_at};
use crate::grammar::words::{Kind, Word};
use crate::measure::{Length, Lumber, Meaning, Number, Q, Said, Side, q_from_decimal};
use rust_decimal::Decimal;

/// One thing a value may stand for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reading {
    /// So many of something, or a plain number: money, parts of a hundred and degrees too.
    Number(Q),
    /// A length.
    Length(Length),
    /// A nominal size.
    Lumber(Lumber),
}

/// A value of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    /// Its kind, by its words.
    pub shape: Shape,
    /// All it may stand for, likeliest first; never empty.
    pub readings: Vec<Reading>,
}

impl Value {
    /// The plain number it may be.
    pub fn number(&self) -> Option<Q> {
        self.readings.iter().find_map(|r| if let Reading::Number(q) = r { Some(*q) } else { None })
    }

    /// The likeliest length it may be; of a number without a unit, so many inches.
    pub fn length(&self) -> Option<Length> {
        self.readings.iter().find_map(|r| if let Reading::Length(l) = r { Some(*l) } else { None })
    }

    /// The nominal size it may be.
    pub fn lumber(&self) -> Option<Lumber> {
        self.readings.iter().find_map(|r| if let Reading::Lumber(l) = r { Some(*l) } else { None })
    }

    /// Its size for features: inches or units of the first reading.
    pub fn size(&self) -> f64 {
        let q = match self.readings.first() {
            Some(Reading::Number(q)) => *q,
            Some(Reading::Length(l)) => l.q(),
            Some(Reading::Lumber(l)) => Q::new(i128::from(l.thick_quarters), 4),
            None => Q::from_integer(0),
        };
        *q.numer() as f64 / *q.denom() as f64
    }
}

/// The values that start at word `at`, and where their words end; empty where none does.
pub fn values_at(words: &[Word], at: usize) -> (usize, Vec<Value>) {
    if let Some((end, price)) = price_at(words, at) {
        return (end, vec![counted(price, Shape::Money)]);
    }
    let mut islands = measures_at(words, at);
    let apart = next_number(words, at);
    if islands.iter().any(|i| i.end <= apart) {
        islands.retain(|i| i.end <= apart);
    }
    let lot = count_at(words, at).filter(|(end, _)| islands.iter().all(|i| i.end < *end));
    if let Some((end, n)) = lot {
        return (end, vec![counted(Q::from_integer(i128::from(n)), Shape::Spoken)]);
    }
    if let Some(best) = islands.first() {
        let (end, values) = (best.end, of_island(words, at, &islands));
        return (end, values.into_iter().map(|v| with_sign(v, words, at, end)).collect());
    }
    let Some(word) = words.get(at) else { return (at, Vec::new()) };
    let alone = counting(&word.text).map(|n| counted(Q::from_integer(n), Shape::Word));
    // "$2.35", "10%", "#3": written onto a sign, so no measure begins here.
    let glued = || figures(word).map(|q| with_sign(counted(q, Shape::Bare), words, at, at + 1));
    match alone.or_else(glued) {
        Some(value) => (at + 1, vec![value]),
        None => (at, Vec::new()),
    }
}

/// Words of money.
const MONEY: &[&str] = &["dollars", "dollar", "bucks"];

/// A price in words, and where it ends: "two eighty five each", "two dollars ten".
fn price_at(words: &[Word], at: usize) -> Option<(usize, Q)> {
    let is = |i: usize, any: &[&str]| words.get(i).is_some_and(|w| any.contains(&w.text.as_str()));
    let (end, whole) = below_hundred(words, at)?;
    let named = is(end, MONEY);
    let (end, parts) = below_hundred(words, if named { end + 1 } else { end })?;
    let priced = named || is(end, MONEY) || is(end, &["each", "ea", "apiece", "per", "a"]);
    (priced && parts >= 10).then(|| (end, Q::new(whole * 100 + parts, 100)))
}

/// A number in words under a hundred, by itself, and where it ends.
fn below_hundred(words: &[Word], at: usize) -> Option<(usize, i128)> {
    let spelled = |i: &usize| words.get(*i).is_some_and(|w| w.kind == Kind::Letters);
    let number = |to: usize| count_at(words.get(..to)?, at).filter(|(end, n)| *end == to && *n < 100);
    let longest = (at + 1..=at + 2).take_while(|to| spelled(&(to - 1))).filter_map(number).last();
    longest.map(|(end, n)| (end, i128::from(n)))
}

/// The number a word of digits is.
fn figures(word: &Word) -> Option<Q> {
    let digits = (word.kind == Kind::Digits).then_some(&word.text)?;
    q_from_decimal(Decimal::from_str_exact(digits).ok()?)
}

/// Where the next number begins: "nine 1 1/2 balusters" is a count and a width, for nobody writes feet as a word and inches
/// in figures. A fraction in figures still belongs to the word before it: "nine 1/2".
fn next_number(words: &[Word], at: usize) -> usize {
    let kind = |i: usize| words.get(i).map(|w| w.kind);
    let fraction = |i: usize| words.get(i + 1).is_some_and(|w| w.is("/") && w.joined);
    let parted = |i: &usize| kind(*i) == Some(Kind::Digits) && kind(i - 1) == Some(Kind::Letters) && !fraction(*i);
    let spaced = |i: &usize| !words[*i].joined && count_at(words, i - 1).is_some();
    (at + 1..words.len()).find(|i| parted(i) && spaced(i)).unwrap_or(words.len())
}

/// Words that count without being numbers.
fn counting(word: &str) -> Option<i128> {
    match word {
        "single" | "another" => Some(1),
        "both" | "pair" | "double" | "twin" | "twice" => Some(2),
        _ => None,
    }
}

fn counted(n: Q, shape: Shape) -> Value {
    Value { shape, readings: bare(n) }
}

/// A bare number may count, or be inches, or be feet.
fn bare(n: Q) -> Vec<Reading> {
    let lengths = [Length::from_q(n), Length::from_q(n * Q::from_integer(12))];
    [Reading::Number(n)].into_iter().chain(lengths.into_iter().flatten().map(Reading::Length)).collect()
}

/// The likeliest island's values, with what the other islands of the same words add.
fn of_island(words: &[Word], at: usize, islands: &[Island]) -> Vec<Value> {
    let Some(best) = islands.first() else { return Vec::new() };
    let letters = words[at].kind == Kind::Letters;
    let mut values = of_meaning(&best.measure.meaning, letters);
    if let [only] = values.as_mut_slice() {
        for other in islands.iter().skip(1).filter(|o| o.end == best.end) {
            let more = of_meaning(&other.measure.meaning, letters).into_iter().flat_map(|v| v.readings);
            more.for_each(|r| push_new(&mut only.readings, r));
        }
        // "2024": whatever else it may be, it is that number.
        let number = figures(&words[at]).filter(|_| best.end == at + 1);
        number.into_iter().for_each(|q| push_new(&mut only.readings, Reading::Number(q)));
    }
    values
}

fn push_new(list: &mut Vec<Reading>, reading: Reading) {
    if !list.contains(&reading) {
        list.push(reading);
    }
}

fn of_meaning(meaning: &Meaning, letters: bool) -> Vec<Value> {
    match meaning {
        Meaning::Bare(n) => vec![of_number(n, letters)],
        Meaning::Length(l, said) => vec![Value { shape: of_said(*said), readings: vec![Reading::Length(*l)] }],
        Meaning::Lumber(l) => vec![of_lumber(*l)],
        Meaning::By(a, b) => [a, b].into_iter().map(of_side).collect(),
        Meaning::Doubt(_, ways) => {
            let readings = ways.iter().copied().map(Reading::Length).collect();
            vec![Value { shape: Shape::Doubt, readings }]
        }
    }
}

fn of_number(n: &Number, letters: bool) -> Value {
    let shape = match (n.plural, n.fraction, letters) {
        (true, _, _) => Shape::Pieces,
        (_, true, _) => Shape::Part,
        (_, _, true) => Shape::Spoken,
        _ => Shape::Bare,
    };
    counted(n.value, shape)
}

fn of_said(said: Said) -> Shape {
    match said {
        Said::Feet => Shape::Feet,
        Said::FeetInches => Shape::FeetInches,
        Said::Inches => Shape::Inches,
        Said::Metric => Shape::Metric,
    }
}

/// "4x4" is a size first; its sides may be meant too.
fn of_lumber(size: Lumber) -> Value {
    let sides = [Q::new(i128::from(size.thick_quarters), 4), Q::from_integer(i128::from(size.wide))];
    let mut readings = vec![Reading::Lumber(size)];
    for side in sides {
        bare(side).into_iter().for_each(|r| push_new(&mut readings, r));
    }
    Value { shape: Shape::Lumber, readings }
}

fn of_side(side: &Side) -> Value {
    match side {
        Side::Bare(n) => counted(n.value, Shape::Side),
        Side::Length(l, _) => Value { shape: Shape::Side, readings: vec![Reading::Length(*l)] },
    }
}

/// A number beside a sign of money, of a hundred or of degrees is of that kind.
fn with_sign(value: Value, words: &[Word], at: usize, end: usize) -> Value {
    let text = |i: Option<usize>| i.and_then(|i| words.get(i)).map_or("", |w| w.text.as_str());
    let shape = match (text(at.checked_sub(1)), text(Some(end))) {
        ("$", _) | (_, "cents") => Shape::Money,
        (_, word) if MONEY.contains(&word) => Shape::Money,
        (_, "%" | "percent" | "pct") => Shape::Percent,
        (_, "degrees" | "degree" | "deg" | "°") => Shape::Angle,
        _ => return value,
    };
    Value { shape, ..value }
}
