//! The numbers a line says, in digits or in words, without reading the line.

use super::form::{Q, Value};
use std::collections::BTreeSet;

const UNDER_TWENTY: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
/// Words that stand for a number: how many, which, what share.
const OTHERS: [(&str, i128); 32] = [
    ("a", 1),
    ("an", 1),
    ("single", 1),
    ("once", 1),
    ("first", 1),
    ("foot", 1),
    ("another", 1),
    ("both", 2),
    ("pair", 2),
    ("couple", 2),
    ("double", 2),
    ("twice", 2),
    ("second", 2),
    ("half", 2),
    ("third", 3),
    ("thirds", 3),
    ("fourth", 4),
    ("quarter", 4),
    ("quarters", 4),
    ("fifth", 5),
    ("sixth", 6),
    ("seventh", 7),
    ("eighth", 8),
    ("eighths", 8),
    ("ninth", 9),
    ("tenth", 10),
    ("dozen", 12),
    ("sixteenth", 16),
    ("sixteenths", 16),
    ("hundred", 100),
    ("sixes", 6),
    ("eights", 8),
];

fn place(list: &[&str], word: &str) -> Option<i128> {
    list.iter().position(|w| *w == word).and_then(|n| i128::try_from(n).ok())
}

fn small(word: &str) -> Option<i128> {
    let plural = word.strip_suffix('s').unwrap_or(word);
    place(&UNDER_TWENTY, word).or_else(|| place(&UNDER_TWENTY, plural))
}

/// Every whole number the line may say.
pub fn numbers(line: &str) -> BTreeSet<i128> {
    let low = line.to_lowercase();
    let joined: String = low.chars().filter(|c| *c != ',').collect();
    let digits = |s: &str| s.split(|c: char| !c.is_ascii_digit()).filter_map(|d| d.parse().ok()).collect::<Vec<i128>>();
    let mut out: BTreeSet<i128> = digits(&low).into_iter().chain(digits(&joined)).collect();
    let words: Vec<&str> = low.split(|c: char| !c.is_alphabetic()).filter(|w| !w.is_empty()).collect();
    for (at, word) in words.iter().enumerate() {
        let next = words.get(at + 1).copied().unwrap_or("");
        out.extend(small(word));
        out.extend(OTHERS.iter().filter(|(w, _)| w == word).map(|(_, n)| *n));
        if let Some(tens) = place(&TENS, word).map(|n| (n + 2) * 10) {
            out.extend([Some(tens), small(next).map(|n| tens + n)].into_iter().flatten());
        }
        if next == "hundred" {
            let rest = words.get(at + 2).and_then(|w| place(&TENS, w).map(|n| (n + 2) * 10).or(small(w))).unwrap_or(0);
            out.extend(small(word).map(|n| n * 100 + rest));
        }
    }
    out
}

/// Feet and what is left of them: "four ten", "4 1/2 foot", "9.5 ft", "five foot" alone.
fn in_feet(said: &BTreeSet<i128>, whole: i128) -> bool {
    let (feet, inches) = (whole / 12, whole % 12);
    let half = inches == 6 && (said.contains(&2) || said.contains(&5));
    let quarters = inches % 3 == 0 && said.contains(&4);
    feet > 0 && said.contains(&feet) && (inches == 0 || said.contains(&inches) || half || quarters)
}

/// Millimeters, centimeters or meters, where it comes out even in millimeters.
fn in_metric(said: &BTreeSet<i128>, inches: Q) -> bool {
    let mm = inches * Q::new(254, 10);
    let ways = [1, 10, 1000].map(|unit| mm.to_integer() / unit);
    mm.is_integer() && ways.iter().any(|n| *n > 0 && said.contains(n))
}

/// Whether the numbers can be how this one is said: its whole part, its feet and inches, its millimeters, its cents, its fraction.
pub fn says(said: &BTreeSet<i128>, value: &Value) -> Option<bool> {
    let (Value::Length(q) | Value::Number(q)) = value else { return None };
    let whole = q.to_integer();
    let fraction = [*q.fract().numer(), *q.fract().denom()];
    Some(match value {
        _ if whole > 0 && said.contains(&whole) => true,
        Value::Length(_) if whole > 0 => in_feet(said, whole) || in_metric(said, *q),
        Value::Number(_) if whole > 0 => said.contains(&(whole % 100)),
        Value::Length(_) => fraction.iter().any(|n| said.contains(n)) || in_metric(said, *q),
        _ => fraction.iter().any(|n| said.contains(n)) || said.contains(&(*q * 100).to_integer()),
    })
}
