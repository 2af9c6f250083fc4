//! A line as the scores see it: stems, signs and values in their order.

use super::item::{Item, items};
use super::stem::stem;
use super::value::{Value, values_at};
use crate::grammar::typo;
use crate::grammar::words::{Kind, words};
use std::ops::Range;

/// One token of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Token {
    /// The stem of a word, a sign, or a value's kind in angle brackets.
    pub stem: String,
    /// The word as typed, in lower case; for letters only.
    pub word: Option<String>,
    /// The value it is, if it is one.
    pub value: Option<Value>,
    /// Where it stands in the line as typed, in bytes.
    pub span: Range<usize>,
}

impl Token {
    /// True for a word that asks: "what", "how".
    pub fn asks(&self) -> bool {
        super::features::asks(self)
    }
}

/// A line, with what was said before it in the same talk.
#[derive(Clone, Debug)]
pub struct Line {
    /// Its tokens.
    pub tokens: Vec<Token>,
    /// What of it may fill a row, in order.
    pub items: Vec<Item>,
    /// The tokens of the lines before it, the last one first; two at most.
    pub before: Vec<Vec<Token>>,
    /// How many lines came before it in the talk.
    pub number: usize,
}

/// The most lines before this one that say something of it.
const BEFORE: usize = 2;

impl Line {
    /// The line as read; `before` is the talk up to it, in order.
    pub fn read(said: &str, before: &[&str]) -> Line {
        let earlier = before.iter().rev().take(BEFORE).map(|b| tokens(b)).collect();
        let tokens = tokens(said);
        Line { items: items(&tokens), tokens, before: earlier, number: before.len() }
    }

    /// Where its values stand among the tokens.
    pub fn values(&self) -> impl Iterator<Item = usize> {
        self.tokens.iter().enumerate().filter(|(_, t)| t.value.is_some()).map(|(i, _)| i)
    }

    /// The item that begins at this token.
    pub fn item(&self, at: usize) -> Option<&Item> {
        self.items.binary_search_by_key(&at, |i| i.at).ok().and_then(|i| self.items.get(i))
    }
}

fn tokens(said: &str) -> Vec<Token> {
    let words = words(said);
    let mut out = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let (end, values) = values_at(&words, at);
        if values.is_empty() {
            let word = &words[at];
            // "cornr" is the corner.
            let spelled = typo::meant_for(&word.text).map_or_else(|| word.text.to_string(), str::to_owned);
            let letters = (word.kind == Kind::Letters).then(|| spelled.clone());
            out.push(Token { stem: stem(&spelled), word: letters, value: None, span: word.span.clone() });
            at += 1;
            continue;
        }
        let span = words[at].span.start..words[at..end.max(at + 1)].last().map_or(0, |w| w.span.end);
        for value in values {
            out.push(Token {
                stem: format!("<{}>", value.shape.name()),
                word: None,
                value: Some(value),
                span: span.clone(),
            });
        }
        at = end.max(at + 1);
    }
    out
}
