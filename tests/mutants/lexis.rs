//! What the words of a line may mean, by the lexicon alone.

use railhand::grammar::sense::{Op, Sense, TERMS, Verb};
use railhand::grammar::words::{Kind, words};

/// The plain words of a text, signs left out: "front's" is `front` and `'s`.
pub fn plain(text: &str) -> Vec<String> {
    let spoken = |k| matches!(k, Kind::Letters | Kind::Digits | Kind::Glyph);
    words(text).into_iter().filter(|w| spoken(w.kind)).map(|w| w.text).collect()
}

/// Every sense a phrase has as a whole.
pub fn senses(phrase: &str) -> Vec<Sense> {
    let said = plain(phrase);
    let spelled = |spelling: &[&str]| spelling.iter().copied().eq(said.iter().map(String::as_str));
    TERMS.iter().filter(|(spelling, _)| spelled(spelling)).map(|(_, sense)| *sense).collect()
}

/// A term of several words lying over some words of a line.
pub struct Over {
    /// What it may mean.
    pub sense: Sense,
    /// Its words.
    pub length: usize,
}

/// The terms of two words or more that lie over any of these words of a line.
pub fn terms_over(line: &[String], from: usize, to: usize) -> Vec<Over> {
    let mut found = Vec::new();
    for (spelling, sense) in TERMS.iter().filter(|(s, _)| s.len() > 1) {
        for start in (to + 1).saturating_sub(spelling.len())..=from {
            let here = line.get(start..start + spelling.len());
            if start + spelling.len() > from
                && here.is_some_and(|h| h.iter().map(String::as_str).eq(spelling.iter().copied()))
            {
                found.push(Over { sense: *sense, length: spelling.len() });
            }
        }
    }
    found
}

/// Filler and links, and words of no sense that bear on a layout. A word that may deny is never light.
pub fn is_light(phrase: &str) -> bool {
    let senses = senses(phrase);
    senses.iter().any(|s| matches!(s, Sense::Link | Sense::Fill)) && !senses.contains(&Sense::Not)
}

/// True for a word no list knows.
pub fn is_unknown(phrase: &str) -> bool {
    senses(phrase).is_empty() && !is_number(phrase)
}

/// Digits, and the number words a builder says.
pub fn is_number(phrase: &str) -> bool {
    const OTHERS: [&str; 7] = ["hundred", "eighths", "sixteenths", "eighth", "third", "quarter", "sixteen-footer"];
    let said = |w: &String| number_word(w).is_some() || OTHERS.contains(&w.as_str());
    phrase.chars().any(|c| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c)) || plain(phrase).iter().any(said)
}

/// A number said in one word, up to twenty.
pub fn number_word(word: &str) -> Option<u128> {
    const SAID: &str = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen \
                        sixteen seventeen eighteen nineteen twenty";
    SAID.split(' ').position(|w| w == word).and_then(|n| u128::try_from(n).ok())
}

/// True for a word that changes what it touches or is acted on once for each time it is said: it never stutters.
pub fn never_stutters(phrase: &str) -> bool {
    let counts = |s: &Sense| matches!(s, Sense::Op(Op::Pieces | Op::Stick | Op::Ways | Op::Total | Op::Convert));
    let acts = |s: &Sense| {
        !counts(s) && matches!(s, Sense::Not | Sense::Qualifier | Sense::Op(_) | Sense::Verb(Verb::Undo | Verb::Redo))
    };
    // "no no, 13": a repair may be said over and over.
    let repairs = senses(phrase).contains(&Sense::Verb(Verb::Repair));
    // "seven eighths eighths": what is counted, not how many.
    let counted = matches!(phrase, "eighths" | "sixteenths");
    is_number(phrase) && !counted || !repairs && !is_light(phrase) && senses(phrase).iter().any(acts)
}
