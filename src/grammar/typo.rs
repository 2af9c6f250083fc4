//! Slips of the fingers in loose talk: a listed place, part or side with a letter left out inside it, doubled, or two letters swapped.
//!
//! Only such slips, since what differs in one letter is often another word ("sliding", "horses").

use super::sense::{Sense, terms_beginning_as, terms_from};

/// The fewest letters of a word that is looked at.
const LONG: usize = 5;

/// The listed place, part or side that this word, which is not listed, is meant for; the longest of several that mean the same.
pub(crate) fn meant_for(typed: &str) -> Option<&'static str> {
    let listed = terms_from(typed).iter().any(|(words, _)| words.len() == 1);
    if listed || typed.chars().nth(LONG - 1).is_none() {
        return None;
    }
    let near = |word: &str| word.chars().next() == typed.chars().next() && is_slip(typed, word);
    let mut found: Vec<(&'static str, Sense)> = Vec::new();
    for (spelling, sense) in terms_beginning_as(typed) {
        if let [word] = spelling
            && near(word)
        {
            found.push((word, *sense));
        }
    }
    let best = found.iter().map(|(word, _)| *word).max_by_key(|word| word.len())?;
    let senses: Vec<Sense> = found.iter().filter(|(word, _)| *word == best).map(|(_, sense)| *sense).collect();
    let alike = |word: &str| found.iter().any(|(w, sense)| *w == word && senses.contains(sense));
    (senses.iter().any(is_thing) && found.iter().all(|(word, _)| alike(word))).then_some(best)
}

fn is_thing(sense: &Sense) -> bool {
    matches!(sense, Sense::End(_) | Sense::Ends(_) | Sense::Part(_) | Sense::Side(_) | Sense::Cue(_))
}

/// True where the typed letters are the word's with one left out before its last, one of two alike too many, or two neighbors swapped.
fn is_slip(typed: &str, word: &str) -> bool {
    let (t, w): (Vec<char>, Vec<char>) = (typed.chars().collect(), word.chars().collect());
    let without = |all: &[char], at: usize| [&all[..at], &all[at + 1..]].concat();
    if t.len() + 1 == w.len() {
        return (1..w.len() - 1).any(|at| without(&w, at) == t);
    }
    if t.len() == w.len() + 1 {
        return (1..t.len()).any(|at| t[at] == t[at - 1] && without(&t, at) == w);
    }
    let swapped = |at: usize| t[at] == w[at - 1] && t[at - 1] == w[at] && t[at] != t[at - 1];
    t.len() == w.len() && (1..t.len()).any(|at| swapped(at) && t[..at - 1] == w[..at - 1] && t[at + 1..] == w[at + 1..])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_is_taken_for_the_word_and_another_word_is_not() {
        let rows = [
            ("cornr", Some("corner")),
            ("crner", Some("corner")),
            ("hosue", Some("house")),
            ("openning", Some("opening")),
            ("deckng", Some("decking")),
            // Words of their own, or listed.
            ("hose", None),
            ("corner", None),
            ("sliding", None),
            ("horses", None),
            ("sizes", None),
            ("frost", None),
            ("railng", Some("railing")),
        ];
        for (typed, want) in rows {
            assert_eq!(meant_for(typed), want, "{typed}");
        }
    }
}
