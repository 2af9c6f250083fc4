//! Which way a line asks for a word: that something is all right, or that it is amiss.

use crate::grammar::ask::Mood;
use crate::grammar::words::{Word, words};

/// Beside one of these a word asks either way: "pass or fail".
const EITHER: &[&str] = &["or", "/", "not", "n't", "isnt", "aint"];

/// Words a line asks with for a word on something, what-if or not: "still good?", "could I skip it".
const WORDS: &[&str] = &[
    "alright", "allowed", "away", "enough", "fine", "good", "legal", "legit", "meet", "ok", "okay", "pass", "passes",
    "skip",
];

/// A limit with one of these before it is asked about: "would that be under 72".
const IS: &[&str] = &["be", "stay", "keep", "still"];

/// What a line asks with for a figure.
const FIGURE: &[&str] = &["how", "what", "whats", "which", "where", "much", "many"];

/// A line with one of these asks whether something moves, which no limit says.
const MOVES: &[&str] = &["change", "changes", "matter", "matters", "differ", "help", "helps"];

/// True where a what-if asks for a word on what comes of it.
pub(super) fn asks_for_a_word(line: &str) -> bool {
    let all = words(line);
    let opens = |at: usize| {
        let behind = |w: &str| all.get(at + 1).is_some_and(|next| next.is(w));
        (all[at].is("what") || all[at].is("how")) && (behind("if") || behind("about"))
    };
    let any = |of: &[&str]| (0..all.len()).any(|at| !opens(at) && of.iter().any(|w| all[at].is(w)));
    let held =
        |at: usize| (all[at].is("under") || all[at].is("over")) && at > 0 && IS.iter().any(|w| all[at - 1].is(w));
    (any(WORDS) || (0..all.len()).any(held)) && !any(FIGURE) && !any(MOVES)
}

/// True where a line asks whether something must be done: "do I have to brush the cut", "do the cut ends want a coat".
pub(super) fn asks_if_needed(line: &str) -> bool {
    const NEED: &[&[&str]] =
        &[&["have", "to"], &["has", "to"], &["need"], &["needs"], &["must"], &["required"], &["want"]];
    const WHO: &[&str] = &["i", "you", "we", "they"];
    let all = words(line);
    let stands = |at: usize, spelled: &[&str]| {
        let is = all.get(at..at + spelled.len()).is_some_and(|w| w.iter().zip(spelled).all(|(w, s)| w.is(s)));
        // What somebody wants is no need of the thing.
        let wish = spelled == ["want"] && at.checked_sub(1).is_some_and(|i| WHO.iter().any(|w| all[i].is(w)));
        let denied = at.checked_sub(1).is_some_and(|i| EITHER.iter().any(|w| all[i].is(w)));
        is && !wish && !denied
    };
    let asked = ["do", "does", "must", "need"].iter().any(|w| all.iter().any(|word| word.is(w)));
    asked && (0..all.len()).any(|at| NEED.iter().any(|spelled| stands(at, spelled)))
}

/// How the line asks for a word on something.
pub(super) fn mood(line: &str) -> Mood {
    if asked_by(line).next().is_some() { Mood::Fault } else { Mood::Judge }
}

/// The words a line asks by whether something is amiss.
pub(super) fn asked_by(line: &str) -> impl Iterator<Item = &'static str> {
    let words = words(line);
    let asks = move |spelled: &&&[&str]| (0..words.len()).any(|at| stands_at(&words, at, spelled));
    AMISS.iter().filter(asks).copied().flatten().copied()
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
    fn a_what_if_that_asks_for_a_word_is_told_from_one_that_asks_for_a_figure() {
        let rows = [
            ("would that be under 72 centers", true),
            ("33 off the nosings, do I pass if I raise it 2", true),
            ("if they brought in 4 inches of fill, could I skip the guard", true),
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

    #[test]
    fn a_line_that_asks_whether_work_is_needed_is_known() {
        let rows = [
            ("do I have to brush anything on the cut after I notch a post", true),
            ("do the sawn faces want a coat of something", true),
            ("does it still have to take somebody leaning on it", true),
            ("do you want a coat on it", false),
            ("do I not need a coat on it", false),
            ("that strong enough?", false),
        ];
        for (line, want) in rows {
            assert_eq!(asks_if_needed(line), want, "{line}");
        }
    }
}
