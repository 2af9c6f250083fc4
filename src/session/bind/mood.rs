//! Which way a line asks for a word: that something is all right, or that it is amiss.

use crate::grammar::ask::Mood;
use crate::grammar::words::{Word, words};

/// Beside one of these a word asks either way: "pass or fail".
const EITHER: &[&str] = &["or", "/", "not", "n't", "isnt", "aint"];

/// Words a line asks with for a word on something, what-if or not: "still good?", "can I get away with it".
const WORDS: &[&str] = &[
    "alright", "allowed", "away", "enough", "fine", "good", "hold", "holds", "legal", "legit", "meet", "ok", "okay",
    "pass", "passes",
];

/// A limit with one of these before it is asked about: "would that be under 72".
const IS: &[&str] = &["be", "stay", "keep", "still"];

/// What a line asks with for a figure.
const FIGURE: &[&str] = &["how", "what", "whats", "which", "where"];

/// A line with one of these asks whether something moves, which no limit says.
const MOVES: &[&str] = &["change", "changes", "matter", "matters", "differ", "help", "helps"];

/// True where a what-if asks for a word on what comes of it.
pub(super) fn asks_for_a_word(line: &str) -> bool {
    let all = words(line);
    let any = |of: &[&str]| (0..all.len()).any(|at| !opens(&all, at) && of.iter().any(|w| all[at].is(w)));
    let held =
        |at: usize| (all[at].is("under") || all[at].is("over")) && at > 0 && IS.iter().any(|w| all[at - 1].is(w));
    (any(WORDS) || (0..all.len()).any(held)) && !any(FIGURE) && !any(MOVES)
}

/// True where the line asks for a figure, a place or a reason, and no word on something.
pub(super) fn asks_for_figure(line: &str) -> bool {
    words(line).iter().any(|w| w.is("why") || w.is("when") || FIGURE.iter().any(|f| w.is(f)))
}

/// How the line asks for a word on something.
pub(super) fn mood(line: &str) -> Mood {
    if asked_by(line).next().is_some() || asks_past(line) { Mood::Fault } else { Mood::Judge }
}

/// "Over 6' on center?": a question that opens with the way past a figure asks whether it is past it.
fn asks_past(line: &str) -> bool {
    const PAST: &[&str] = &["over", "past", "above"];
    const FEW: usize = 6;
    let all = words(line);
    let ends = |w: &Word| [".", ",", ";", "?", "!"].iter().any(|s| w.is(s));
    (0..all.len()).any(|at| {
        let opens = at == 0 || ends(&all[at - 1]);
        let rest = all.get(at + 1..).unwrap_or_default();
        let asked = rest.iter().take(FEW).position(|w| w.is("?")).is_some_and(|n| n > 0 && !rest[..n].iter().any(ends));
        let figure = rest.first().is_some_and(|w| w.text.starts_with(|c: char| c.is_ascii_digit()));
        opens && PAST.iter().any(|w| all[at].is(w)) && figure && asked
    })
}

/// How it asks for a word on what a limit may ask for, a guard or a handrail: that it is needed, or may be left off.
pub(super) fn mood_of_need(line: &str) -> Mood {
    if !asks_whether_needed(line) && stands(line, LEFT_OFF).next().is_some() { Mood::Without } else { mood(line) }
}

/// True where it asks whether something is needed, or may be left off, and for no figure.
pub(super) fn asks_of_need(line: &str) -> bool {
    let all = words(line);
    let figure = (0..all.len()).any(|at| FIGURE.iter().any(|w| all[at].is(w)) && !opens(&all, at));
    !figure && (asks_whether_needed(line) || stands(line, LEFT_OFF).next().is_some())
}

fn asks_whether_needed(line: &str) -> bool {
    stands(line, NEEDS).next().is_some()
}

/// True for the first word of "what if", "how about".
fn opens(all: &[Word], at: usize) -> bool {
    let behind = |w: &str| all.get(at + 1).is_some_and(|next| next.is(w));
    (all[at].is("what") || all[at].is("how")) && (behind("if") || behind("about"))
}

/// The words a line asks by whether something is amiss.
pub(super) fn asked_by(line: &str) -> impl Iterator<Item = &'static str> {
    stands(line, AMISS)
}

/// The words of those spellings that stand in the line.
fn stands(line: &str, of: &'static [&'static [&'static str]]) -> impl Iterator<Item = &'static str> {
    let words = words(line);
    let asks = move |spelled: &&&[&str]| (0..words.len()).any(|at| stands_at(&words, at, spelled));
    of.iter().filter(asks).copied().flatten().copied()
}

/// True where the words stand there, and no other way is asked beside them.
fn stands_at(words: &[Word], at: usize, spelled: &[&str]) -> bool {
    let stands = words.get(at..at + spelled.len()).is_some_and(|w| w.iter().zip(spelled).all(|(w, s)| w.is(s)));
    let either = |at: Option<usize>| at.and_then(|at| words.get(at)).is_some_and(|w| EITHER.iter().any(|e| w.is(e)));
    stands && !either(at.checked_sub(1)) && !either(Some(at + spelled.len()))
}

include!(concat!(env!("OUT_DIR"), "/amiss.rs"));

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_that_asks_for_a_fault_is_told_from_one_that_asks_for_leave() {
        let rows = [
            ("39 over the nosings, too high?", Mood::Fault),
            ("stair guard measures 33 off the nosing, am I short", Mood::Fault),
            ("boards hang an inch and a half past the riser, that too much lip", Mood::Fault),
            ("a 4 1/8 gap, will it fail", Mood::Fault),
            ("is 5 ft too far apart", Mood::Fault),
            ("last picket ended 4 1/2 off the siding. gotta fix it?", Mood::Fault),
            ("alley side 6'3\" one bay. max 6'. over?", Mood::Fault),
            ("bay of 70 1/2 clear, 6x6s. over 6 ft on center? by how much", Mood::Fault),
            ("39 over the nosings, is that ok", Mood::Judge),
            ("33 over the nosings, high enough?", Mood::Judge),
            // Either way, the word is on whether it passes.
            ("3 15/16 gap, pass or fail?", Mood::Judge),
            ("as-built gap 3 15/16, pass/fail?", Mood::Judge),
            ("first post 5 off the wall, ok or too much?", Mood::Judge),
            ("39 up, not too high?", Mood::Judge),
            // "Over" and "too" by themselves bend nothing.
            ("39 over the nosings, legal?", Mood::Judge),
            ("does the left side pass too", Mood::Judge),
        ];
        for (line, want) in rows {
            assert_eq!(mood(line), want, "{line}");
        }
    }

    #[test]
    fn a_line_that_asks_to_leave_a_guard_off_is_told_from_one_that_asks_whether_it_is_needed() {
        let rows = [
            ("22 off the ground, can I leave it off", Mood::Without),
            ("could I skip the guard", Mood::Without),
            ("can the low side go without", Mood::Without),
            ("3 ft unguarded, acceptable?", Mood::Without),
            ("there's no rail on it now, do I need one", Mood::Judge),
            ("22 off the ground, is that ok", Mood::Judge),
            ("33 up, does it need a guard", Mood::Judge),
        ];
        for (line, want) in rows {
            assert_eq!(mood_of_need(line), want, "{line}");
        }
    }

    #[test]
    fn a_what_if_that_asks_for_a_word_is_told_from_one_that_asks_for_a_figure() {
        let rows = [
            ("would that be under 72 centers", true),
            ("33 off the nosings, do I pass if I raise it 2", true),
            ("what if they were an inch wide, still good?", true),
            ("36 to the top, 2 under, what's between the rails if I leave 3 under", false),
            ("what if I went with 4 bays", false),
            ("62 bay, 1 1/2 pickets at under 4, same bay, inch and a quarter pickets. count and gap?", false),
            ("held to 6 ft, would the bay count change if they made me go under 5", false),
        ];
        for (line, want) in rows {
            assert_eq!(asks_for_a_word(line), want, "{line}");
        }
    }
}
