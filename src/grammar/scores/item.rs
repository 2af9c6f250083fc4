//! Items: the values, places, choices and named things of a line, each of which may fill a row.

use super::features::{asks, is_common};
use super::line::Token;
use super::spelled::{is_listed, longest};

/// Part of a line that may fill a row.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its first token.
    pub at: usize,
    /// The token behind its last.
    pub end: usize,
    /// What it is.
    pub is: Is,
}

/// What an item is.
#[derive(Clone, Debug, PartialEq)]
pub enum Is {
    /// A figure; it stands in the token.
    Value,
    /// A term of the lexicon: the words the corpus has for it, the likeliest first, and last the words as typed.
    Word(Vec<String>),
    /// A word nobody listed: it may be a name, or a choice of its own.
    Name(String),
}

impl Item {
    /// Its kind in features.
    pub fn kind<'a>(&'a self, tokens: &'a [Token]) -> std::borrow::Cow<'a, str> {
        match &self.is {
            Is::Value => tokens.get(self.at).map_or("", |t| t.stem.as_str()).into(),
            Is::Word(words) => format!("@{}", words.first().map_or("", String::as_str)).into(),
            Is::Name(_) => "@?".into(),
        }
    }

    /// The value it gives a row where its words are taken as they are; `None` for a figure.
    pub fn word(&self) -> Option<&str> {
        match &self.is {
            Is::Value => None,
            Is::Word(words) => words.first().map(String::as_str),
            Is::Name(name) => Some(name),
        }
    }

    /// True for a term of the lexicon.
    pub fn is_word(&self) -> bool {
        matches!(self.is, Is::Word(_))
    }

    /// True for a figure.
    pub fn is_value(&self) -> bool {
        self.is == Is::Value
    }
}

/// The items among the tokens, in order; of terms that begin at one token, the longest.
pub(super) fn items(tokens: &[Token]) -> Vec<Item> {
    let mut out = Vec::new();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        let found = match &token.value {
            Some(_) => Some((at + 1, Is::Value)),
            None => longest(tokens, at).map(|(end, words)| (end, Is::Word(words))).or_else(|| named(token, at)),
        };
        let Some((end, is)) = found else {
            at += 1;
            continue;
        };
        out.push(Item { at, end, is });
        at = end;
    }
    out
}

fn named(token: &Token, at: usize) -> Option<(usize, Is)> {
    let word = token.word.as_deref().filter(|w| !is_common(w) && !asks(token) && !is_listed(w))?;
    Some((at + 1, Is::Name(word.to_owned())))
}
