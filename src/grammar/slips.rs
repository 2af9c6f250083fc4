//! Slips of the tongue: a word said twice running, and sounds that are no word.

use super::items::senses_in;
use super::measures::measures_at;
use super::sense::{Op, Sense, Verb};
use super::words::{Kind, Word};
use crate::measure::Guess;

/// The words with each stutter once: "why a post there there". What counts, denies, sums or takes back
/// is done as often as it is said, and stays.
pub fn said_once(list: Vec<Word>) -> Vec<Word> {
    let mut out: Vec<Word> = Vec::with_capacity(list.len());
    for word in list {
        match out.last_mut().filter(|last| stutters(last, &word)) {
            Some(last) => last.span.end = word.span.end,
            None => out.push(word),
        }
    }
    out
}

fn stutters(last: &Word, word: &Word) -> bool {
    word.kind == Kind::Letters && !word.joined && last.text == word.text && !bears_repeating(word)
}

/// True for a number, and for a word acted on once for each time it is said.
fn bears_repeating(word: &Word) -> bool {
    let alone = std::slice::from_ref(word);
    let number = measures_at(alone, 0).iter().any(|m| m.measure.guess != Some(Guess::Homophone));
    let counts = |op: Op| matches!(op, Op::Pieces | Op::Stick | Op::Ways | Op::Total | Op::Convert);
    let acts = |s: Sense| match s {
        Sense::Op(op) => !counts(op),
        Sense::Not | Sense::Qualifier | Sense::Unit(_) | Sense::Verb(Verb::Undo | Verb::Redo) => true,
        _ => false,
    };
    let light = senses_in(alone).any(|s| matches!(s, Sense::Link | Sense::Fill));
    number || !light && senses_in(alone).any(acts)
}

/// The words without "um", "ok" and their like; `None` where there are none, or nothing else.
pub fn without_hums(list: &[Word]) -> Option<Vec<Word>> {
    let hum = |w: &Word| !w.joined && senses_in(std::slice::from_ref(w)).any(|s| s == Sense::Hum);
    let rest: Vec<Word> = list.iter().filter(|w| !hum(w)).cloned().collect();
    (rest.len() < list.len() && !rest.is_empty()).then_some(rest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grammar::words::words;
    use pretty_assertions::assert_eq;

    fn texts(list: &[Word]) -> String {
        list.iter().map(|w| w.text.as_str()).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn a_word_said_twice_is_said_once_where_it_counts_nothing() {
        for (line, expected) in [
            ("why a post there there", "why a post there"),
            ("half a a foot", "half a foot"),
            ("stretch it it to 15", "stretch it to 15"),
            ("run 1 1", "run 1 1"),
            ("two two by fours", "two two by fours"),
            ("undo undo", "undo undo"),
            ("not not 12", "not not 12"),
        ] {
            assert_eq!(texts(&said_once(words(line))), expected, "{line}");
        }
    }

    #[test]
    fn sounds_go_and_words_stay() {
        assert_eq!(
            without_hums(&words("why can't i well notch um it")).map(|w| texts(&w)).as_deref(),
            Some("why cant i notch it")
        );
        assert_eq!(without_hums(&words("notch it")), None);
        assert_eq!(without_hums(&words("um ok")), None);
    }
}
