//! Which way a line asks for a word: that something is all right, or that it is amiss.

use crate::grammar::ask::Mood;
use crate::grammar::words::{Word, words};

/// Beside one of these a word asks either way: "pass or fail".
const EITHER: &[&str] = &["or", "/", "not", "n't", "isnt", "aint"];

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
}
