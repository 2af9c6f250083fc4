//! Numbers that are typed well enough and cannot be: said so, rather than puzzled over.

use crate::grammar::words::{Kind, Word};

/// What is wrong with a number of the line, if one is below zero, over zero or past
/// counting.
pub(super) fn absurd(words: &[Word]) -> Option<&'static str> {
    let digits = |at: usize| words.get(at).filter(|w| w.kind == Kind::Digits);
    (0..words.len()).find_map(|at| {
        let number = digits(at)?;
        let before = at.checked_sub(1).and_then(|b| words.get(b));
        let fresh = at < 2 || !words[at - 1].joined;
        let minus = before.is_some_and(|b| b.is("minus") || b.is("negative") || b.is("-") && number.joined && fresh);
        let over_zero = before.is_some_and(|b| b.is("/")) && number.text.chars().all(|c| c == '0');
        if over_zero {
            return Some("Nothing can be divided by zero, so I can't read that number.");
        }
        if minus {
            return Some("A length can't be less than nothing.");
        }
        (number.text.len() > 12).then_some("That number is past anything a guard is measured in.")
    })
}
