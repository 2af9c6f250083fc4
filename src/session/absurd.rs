//! Numbers that are typed well enough and cannot be: said so, rather than puzzled over.

use crate::grammar::items::senses_in;
use crate::grammar::measures::measures_at;
use crate::grammar::sense::{Part, Sense};
use crate::grammar::words::{Kind, Word};
use crate::measure::{Lumber, Meaning, Measure, Side};

/// What is wrong with a number of the line, if one is below zero, over zero or past
/// counting.
pub(super) fn absurd(words: &[Word]) -> Option<&'static str> {
    (0..words.len()).find_map(|at| {
        if no_lumber(words, at) {
            return Some(NO_LUMBER);
        }
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

const NO_LUMBER: &str = "That is not a size of lumber I have figures for. The sizes I know are 1, 5/4, 2, 3, 4, 6, 8, 10 \
                         and 12 by 2, 3, 4, 6, 8, 10 and 12: 2x4, 2x6, 4x4, 6x6.";

/// "9x9 posts", "top rail is a 2x9": a size said as lumber's is, of a part that is lumber, and
/// none that is sawn.
fn no_lumber(words: &[Word], at: usize) -> bool {
    let part =
        |s: Sense| matches!(s, Sense::Part(Part::Post | Part::LinePost | Part::Rail | Part::TopRail | Part::Rim));
    let whole = |s: &Side| match s {
        Side::Bare(n) if n.value.is_integer() && !n.fraction => u16::try_from(n.value.to_integer()).ok(),
        _ => None,
    };
    let none_sawn = |a: u16, b: u16| a <= 24 && b <= 24 && Lumber::by(a.min(b), a.max(b)).dressed().is_none();
    let by = |m: &Measure| match &m.meaning {
        Meaning::By(a, b) => whole(a).zip(whole(b)).is_some_and(|(a, b)| none_sawn(a, b)),
        _ => false,
    };
    senses_in(words).any(part) && measures_at(words, at).iter().any(|island| by(&island.measure))
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
