//! Numbers that are typed well enough and cannot be: said so, rather than puzzled over.

use crate::grammar::measures::measures_at;
use crate::grammar::words::{Kind, Word};

/// What is wrong with a number of the line, if one is below zero, over zero or past
/// counting.
pub(super) fn absurd(words: &[Word]) -> Option<&'static str> {
    (0..words.len()).find_map(|at| {
        if below_zero(words, at) {
            return Some("A length can't be less than nothing.");
        }
        let number = words.get(at).filter(|w| w.kind == Kind::Digits)?;
        let over_zero = at > 0 && words[at - 1].is("/") && number.text.chars().all(|c| c == '0');
        if over_zero {
            return Some("Nothing can be divided by zero, so I can't read that number.");
        }
        (number.text.len() > 12).then_some("That number is past anything a guard is measured in.")
    })
}

/// True where a measure starts right behind a minus that takes it off nothing: "-4",
/// "minus eight foot"; not "10 minus 4".
fn below_zero(words: &[Word], at: usize) -> bool {
    let Some(sign) = at.checked_sub(1).and_then(|b| words.get(b)) else { return false };
    let number = || !measures_at(words, at).is_empty();
    let measured = |w: &Word| {
        matches!(w.kind, Kind::Digits | Kind::Glyph | Kind::Mark)
            || matches!(&*w.text, "inches" | "inch" | "foot" | "feet" | "ft")
    };
    let after_measure = at >= 2 && measured(&words[at - 2]);
    match sign.text.as_str() {
        "negative" => number(),
        "minus" => !after_measure && number(),
        "-" => words[at].kind == Kind::Digits && words[at].joined && (at < 2 || !sign.joined),
        _ => false,
    }
}
