//! Items as the words of a question about stairs or gates.

use crate::grammar::flight_words::{FlightWord, spellings};
use crate::grammar::items::{Is, Item};
use crate::grammar::sense::{Ask, Part, Sense};
use crate::measure::{Lumber, Meaning, Measure};
use std::ops::Range;

/// One token of a question.
#[derive(Clone, Debug, PartialEq)]
pub enum Token {
    /// A measure or a count.
    Measure(Measure),
    /// Named lumber.
    Lumber(Lumber),
    /// A word of the table.
    Word(FlightWord),
    /// A word that asks.
    Ask(Ask),
    /// "?", at the end.
    Mark,
    /// A break.
    Break,
}

/// A token and the words it was read from.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The token.
    pub token: Token,
    /// Its words.
    pub words: Range<usize>,
}

/// All items as tokens; `None` where one is none.
pub fn all(items: &[Item]) -> Option<Vec<Placed>> {
    let mut tokens: Vec<Placed> = Vec::new();
    let mut at = 0;
    while at < items.len() {
        let (token, end) = token(items, at)?;
        let words = items[at].words.start..items[end - 1].words.end;
        // "on on": a stutter; "don't don't" is none.
        let stutter = matches!(token, Token::Word(w) if w != FlightWord::Not)
            && tokens.last().is_some_and(|t| t.token == token)
            && !matches!(token, Token::Word(FlightWord::Fill | FlightWord::Idle));
        match tokens.last_mut().filter(|_| stutter) {
            Some(last) => last.words.end = words.end,
            None => tokens.push(Placed { token, words }),
        }
        at = end;
    }
    Some(tokens)
}

fn token(items: &[Item], at: usize) -> Option<(Token, usize)> {
    let item = &items[at];
    match &item.is {
        Is::Measure(m) => {
            let lumber = if let Meaning::Lumber(l) = m.meaning { Some(Token::Lumber(l)) } else { None };
            // "6 inch ball" is no measure of the job.
            return Some(
                spelled(items, at).unwrap_or_else(|| (lumber.unwrap_or_else(|| Token::Measure(m.clone())), at + 1)),
            );
        }
        Is::Sep('?') => return Some((Token::Mark, at + 1)),
        Is::Sep(',' | ';' | '.' | '(' | ')') => return Some((Token::Break, at + 1)),
        Is::Sep(_) => return Some((Token::Word(FlightWord::Fill), at + 1)),
        _ => {}
    }
    let asks = item.senses().iter().find_map(|s| if let Sense::Ask(a) = s { Some(Token::Ask(*a)) } else { None });
    let spelled = spelled(items, at);
    // A word that both asks and is listed asks where it is longer than its listing.
    match (asks, spelled) {
        (Some(ask), Some((Token::Word(FlightWord::Fill), _)) | None) => Some((ask, at + 1)),
        (_, Some(found)) => Some(found),
        (None, None) => by_sense(item).map(|w| (Token::Word(w), at + 1)),
    }
}

/// The longest listed spelling that starts at an item and ends with one.
fn spelled(items: &[Item], at: usize) -> Option<(Token, usize)> {
    let first = items[at].text.split(' ').next()?;
    let fits =
        spellings(first).iter().filter_map(|(words, sense)| Some((words.len(), *sense, ends(items, at, words)?)));
    let (_, word, end) = fits.max_by_key(|(n, ..)| *n)?;
    Some((Token::Word(word), end))
}

/// Where the items that spell these words end.
fn ends(items: &[Item], at: usize, words: &[&str]) -> Option<usize> {
    let mut left = words;
    let mut end = at;
    while !left.is_empty() {
        let item = items.get(end)?;
        for part in item.text.split(' ') {
            let (first, rest) = left.split_first()?;
            if part != *first {
                return None;
            }
            left = rest;
        }
        end += 1;
    }
    Some(end)
}

/// A listed word of the trade, under any of its spellings.
fn by_sense(item: &Item) -> Option<FlightWord> {
    use FlightWord as W;
    let word = |s: &Sense| match s {
        Sense::Part(Part::Stairs) => Some(W::Stairs),
        Sense::Part(Part::Baluster) => Some(W::Baluster),
        Sense::Part(Part::Gate) => Some(W::Gate),
        Sense::Part(Part::Handrail) => Some(W::Handrail),
        Sense::Part(Part::Post) => Some(W::Post),
        Sense::Part(Part::LinePost) => Some(W::Mid),
        Sense::Part(Part::Guard | Part::Rail | Part::TopRail) => Some(W::Rail),
        Sense::Part(Part::Deck) => Some(W::Deck),
        Sense::Part(Part::Opening) => Some(W::Opening),
        Sense::Link | Sense::Fill => Some(W::Fill),
        _ => None,
    };
    item.senses().iter().find_map(word).filter(|_| !item.may_be(Sense::Not) && !item.may_be(Sense::Qualifier))
}
