//! Words to items: each island of measure, each term of the lexicon, each word left.
//!
//! A line can be cut into items in more than one way ("4 and 3/8" is one measure or
//! two). Every way worth reading is kept; the likeliest, with the longest items, first.

use super::flight_words::is_listed;
use super::measures::measures_at;
use super::sense::{Name, Sense, Side, terms_beginning_as, terms_from};
use super::words::{Kind, Word, parts_before};
use crate::measure::Measure;
use std::ops::Range;
use std::rc::Rc;

/// What an item is.
#[derive(Clone, Debug, PartialEq)]
pub enum Is {
    /// An island of measure.
    Measure(Measure),
    /// A term, with all it may mean.
    Term(Rc<[Sense]>),
    /// A separating sign: `,` `;` `.` `?` `:` `>` ...
    Sep(char),
    /// Digits or marks no island could read: never skipped.
    Unread,
    /// A word nobody listed.
    Unknown,
    /// Emoji and the like.
    Junk,
}

/// One item of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it is.
    pub is: Is,
    /// Its words, as one text.
    pub text: Rc<str>,
    /// The words it is made of.
    pub words: Range<usize>,
    /// Taken for a listed word it is one slip away from.
    pub near: bool,
    /// A piece of a heavy term of more words, cut up: no filler, whatever it is alone.
    pub torn: bool,
    /// Holds a dash with a space on both sides: it may join, and it may take off.
    pub loose: bool,
    /// A word that may stand before a noun without meaning anything of its own.
    pub determiner: bool,
    /// Which of all the items the line may be cut into this is.
    pub id: u32,
}

impl Item {
    /// The item's senses, if it is a term.
    pub fn senses(&self) -> &[Sense] {
        match &self.is {
            Is::Term(senses) => senses,
            _ => &[],
        }
    }

    /// True if the item may mean this.
    pub fn may_be(&self, sense: Sense) -> bool {
        self.senses().contains(&sense)
    }

    /// True for a separator.
    pub fn is_sep(&self) -> bool {
        matches!(self.is, Is::Sep(_))
    }

    /// True for a term all of whose senses are light: filler and links.
    pub fn is_light(&self) -> bool {
        !self.senses().is_empty() && self.senses().iter().any(|s| !s.is_heavy() && !matches!(s, Sense::Topic(_)))
    }
}

/// Words that may stand before a noun without meaning anything of their own.
const DETERMINERS: &[&str] = &[
    "the", "a", "an", "that", "my", "our", "this", "its", "their", "your", "'s", "new", "old", "little", "short",
    "long", "big", "small", "plain", "straight", "single", "nice", "whole", "simple",
];

/// The most ways to cut one line that are read.
const MOST_WAYS: usize = 40;

/// Every way to cut the words into items that is worth reading, likeliest first.
/// The number with each is how many steps down the lists of options it took.
/// `names` are the runs' own: they are known words where they are spelled.
pub fn cuts(words: &[Word], names: &[Name]) -> Vec<(usize, Vec<Item>)> {
    let mut options: Vec<Vec<Item>> = (0..words.len()).map(|at| options_at(words, names, at)).collect();
    keep_whole(&mut options);
    parted(words, &mut options);
    (0..).zip(options.iter_mut().flatten()).for_each(|(id, item)| item.id = id);
    let mut all = Vec::new();
    for turns in 0..=2 {
        let mut ways = Vec::new();
        grow(&options, 0, turns, &mut Vec::new(), &mut ways);
        all.extend(ways.into_iter().map(|w| (turns, w)));
        if all.len() >= MOST_WAYS {
            break;
        }
    }
    all
}

/// A word inside a heavy term of several ("at least", "do that") is no filler and no noise
/// to be passed over when the line is cut another way.
fn keep_whole(options: &mut [Vec<Item>]) {
    let heavy = |i: &&Item| i.words.len() > 1 && !i.senses().is_empty() && i.senses().iter().all(|s| s.is_heavy());
    let whole: Vec<Range<usize>> = options.iter().flatten().filter(heavy).map(|i| i.words.clone()).collect();
    for (at, term) in whole.iter().flat_map(|t| t.clone().map(move |at| (at, t))) {
        for item in options[at].iter_mut().filter(|i| i.words.end <= term.end && i.words != *term) {
            item.torn = true;
        }
    }
}

/// "privacy and wall": a word nobody listed alone, of a heavy term that one other word has parted, is no
/// noise either.
fn parted(words: &[Word], options: &mut [Vec<Item>]) {
    let heavy = |sense: &Sense| sense.is_heavy();
    for at in 0..words.len() {
        let of_term = |(spelling, sense): &(&[&str], Sense)| {
            let skips = |one: usize| {
                (1..spelling.len())
                    .all(|k| words.get(at + k + usize::from(k >= one)).is_some_and(|w| w.is(spelling[k])))
            };
            heavy(sense) && !skips(spelling.len()) && (1..spelling.len()).any(skips)
        };
        if terms_from(&words[at].text).iter().any(of_term) {
            options[at].iter_mut().filter(|i| i.is == Is::Unknown).for_each(|i| i.torn = true);
        }
    }
}

/// The likeliest way to cut the words into items, the runs' own names known.
pub fn likeliest(words: &[Word], names: &[Name]) -> Vec<Item> {
    let mut items = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let first = options_at(words, names, at).swap_remove(0);
        at = first.words.end;
        items.push(first);
    }
    items
}

/// Every sense spelled anywhere in the words, whatever the line is cut into.
pub fn senses_in(words: &[Word]) -> impl Iterator<Item = Sense> {
    (0..words.len()).flat_map(move |at| {
        let spelled_here = move |(spelling, sense): &(&[&str], Sense)| spelled(words, at, spelling).map(|_| *sense);
        terms_from(&words[at].text).iter().filter_map(spelled_here)
    })
}

/// Follows the first option everywhere but for exactly `turns` steps down the lists.
fn grow(options: &[Vec<Item>], at: usize, turns: usize, path: &mut Vec<Item>, ways: &mut Vec<Vec<Item>>) {
    if ways.len() >= MOST_WAYS {
        return;
    }
    // Walk straight ahead without recursion as far as there is nothing to choose.
    let (start, mut at) = (path.len(), at);
    while at < options.len() && (turns == 0 || options[at].len() == 1) {
        path.push(options[at][0].clone());
        at = options[at][0].words.end;
    }
    if at >= options.len() {
        if turns == 0 {
            ways.push(path.clone());
        }
    } else {
        for (k, item) in options[at].iter().enumerate().take(turns + 1) {
            path.push(item.clone());
            grow(options, item.words.end, turns - k, path, ways);
            path.pop();
        }
    }
    path.truncate(start);
}

/// The items that may start at a word; never empty.
fn options_at(words: &[Word], names: &[Name], at: usize) -> Vec<Item> {
    let mut out: Vec<Item> = names.iter().filter_map(|name| called(words, at, name)).collect();
    for island in measures_at(words, at) {
        out.push(item(words, at..island.end, Is::Measure(island.measure)));
    }
    let terms = terms_at(words, at);
    // A whole phrase of the trade outweighs a number word inside it ("two posts").
    let phrase = terms.first().is_some_and(|t| t.words.len() > 1 && out.iter().all(|m| m.words.end < t.words.end));
    if phrase {
        out.splice(0..0, terms);
    } else {
        out.extend(terms);
    }
    if out.is_empty() {
        out.push(alone(words, at));
    }
    out
}

/// A run's own name, with the word for what it is: "creek", "the creek side".
fn called(words: &[Word], at: usize, name: &Name) -> Option<Item> {
    let spelling: Vec<&str> = name.split([' ', '-', '\'']).collect();
    let end = spelled(words, at, &spelling).filter(|_| parts_before(words, at))?;
    let what = |w: &Word| matches!(w.text.as_str(), "side" | "run" | "rail" | "section");
    let end = if words.get(end).is_some_and(what) { end + 1 } else { end };
    Some(item(words, at..end, Is::Term([Sense::Side(Side::Named(*name))].into())))
}

fn item(words: &[Word], range: Range<usize>, is: Is) -> Item {
    let text: Vec<&str> = words[range.clone()].iter().map(|w| w.text.as_str()).collect();
    let apart = |k: usize| words[k].is("-") && !words[k].joined && words.get(k + 1).is_some_and(|w| !w.joined);
    let loose = range.len() > 1 && range.clone().any(apart);
    let text = text.join(" ");
    let determiner = DETERMINERS.contains(&text.as_str());
    Item { is, text: text.into(), words: range, near: false, torn: false, loose, determiner, id: 0 }
}

/// The longest term at a word, the next shorter one, and the shortest.
fn terms_at(words: &[Word], at: usize) -> Vec<Item> {
    if !parts_before(words, at) {
        return Vec::new();
    }
    let same = terms_from(&words[at].text);
    let mut out: Vec<(usize, Vec<Sense>)> = Vec::new();
    for (spelling, sense) in same {
        let Some(end) = spelled(words, at, spelling) else { continue };
        match out.iter_mut().find(|(e, _)| *e == end) {
            Some((_, senses)) => senses.push(*sense),
            None => out.push((end, vec![*sense])),
        }
    }
    out.sort_by_key(|(end, _)| std::cmp::Reverse(*end));
    if out.len() > 3 {
        out.drain(2..out.len() - 1);
    }
    out.into_iter().map(|(end, senses)| item(words, at..end, Is::Term(senses.into()))).collect()
}

/// Where the spelling ends when the words at `at` spell it. A hyphen between two of
/// its words is let pass ("stair-head").
fn spelled(words: &[Word], at: usize, spelling: &[&str]) -> Option<usize> {
    let mut end = at;
    for (k, part) in spelling.iter().enumerate() {
        if k > 0 && *part != "-" && words.get(end).is_some_and(|w| w.is("-") && w.joined) {
            end += 1;
        }
        if !words.get(end).is_some_and(|w| w.is(part)) {
            return None;
        }
        end += 1;
    }
    parts_before(words, end).then_some(end)
}

/// A word no island and no term starts at.
fn alone(words: &[Word], at: usize) -> Item {
    let word = &words[at];
    let is = match word.kind {
        Kind::Digits | Kind::Glyph | Kind::Mark => Is::Unread,
        Kind::Junk => Is::Junk,
        Kind::Sign => sign(words, at),
        Kind::Letters if word.joined && !parts_before(words, at) => Is::Unread,
        Kind::Letters => return known_or_near(words, at),
    };
    item(words, at..at + 1, is)
}

fn sign(words: &[Word], at: usize) -> Is {
    let c = words[at].text.chars().next().unwrap_or(' ');
    match c {
        ',' | ';' | '.' | '?' | '!' | ':' | '(' | ')' | '>' | '|' | '[' | ']' | '<' | '~' => Is::Sep(c),
        '-' if !words[at].joined || !words.get(at + 1).is_some_and(|w| w.joined) => Is::Sep('-'),
        '-' if hyphenates(words, at) => Is::Sep('-'),
        _ => Is::Unread,
    }
}

fn hyphenates(words: &[Word], at: usize) -> bool {
    let letters = |w: Option<&Word>| w.is_some_and(|w| w.kind == Kind::Letters);
    letters(words.get(at + 1)) || at > 0 && letters(words.get(at - 1)) && !words.get(at + 1).is_some_and(|w| w.joined)
}

fn known_or_near(words: &[Word], at: usize) -> Item {
    match near_miss(&words[at].text).filter(|_| !is_listed(&words[at].text)) {
        Some(senses) => Item { near: true, ..item(words, at..at + 1, Is::Term(senses)) },
        None => item(words, at..at + 1, Is::Unknown),
    }
}

/// The senses of the one listed word this is a single slip away from.
/// Links and fillers are never guessed at, nor are words of three letters.
fn near_miss(text: &str) -> Option<Rc<[Sense]>> {
    if text.chars().count() < 4 {
        return None;
    }
    let mut best: Vec<(&str, Sense)> = Vec::new();
    for (spelling, sense) in terms_beginning_as(text).iter().filter(|(s, _)| s.len() == 1) {
        let word = spelling[0];
        let about_as_long = word.len().abs_diff(text.len()) <= 1 && word.len() >= 4;
        if about_as_long && word.chars().next() == text.chars().next() && strsim::osa_distance(word, text) == 1 {
            best.push((word, *sense));
        }
    }
    let guessable =
        |s: &Sense| matches!(s, Sense::End(_) | Sense::Ends(_) | Sense::Part(_) | Sense::Side(_) | Sense::Cue(_));
    let (first, _) = best.first()?;
    let unique = best.iter().all(|(w, _)| w == first) || best.iter().all(|(_, s)| *s == best[0].1);
    let senses: Vec<Sense> = best.iter().map(|(_, s)| *s).collect();
    (unique && senses.iter().all(guessable)).then(|| senses.into())
}
