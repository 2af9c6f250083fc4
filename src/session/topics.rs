//! Questions about the rules themselves, known by what they are about.

use crate::grammar::Query;
use crate::grammar::items::{Is, Item, senses_in};
use crate::grammar::sense::{Ask, Part, Sense};
use crate::grammar::words::Word;
use crate::limits::{self, Limit};
use std::ops::Range;

/// The limit a question is about: an asking line with a word of its topic. A topic
/// said in more words outweighs one said in fewer.
pub(super) fn topic(words: &[Word], items: &[Item]) -> Option<&'static Limit> {
    let opens =
        senses_in(words).any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)));
    (opens || asks(items) || names_a_bound(words)).then_some(())?;
    let ids: Vec<&str> =
        senses_in(words).filter_map(|s| if let Sense::Topic(id) = s { Some(id) } else { None }).collect();
    let count = |id: &&str| ids.iter().filter(|i| *i == id).count();
    let first = ids.iter().rev().max_by_key(|id| count(id))?;
    // "the baluster spacing": balusters stand by their gaps, not as posts do.
    let of_balusters = senses_in(words).any(|s| matches!(s, Sense::Part(Part::Baluster)));
    limits::find(if of_balusters && **first == *limits::POST_SPACING.id { limits::LEVEL_GAP.id } else { first })
}

/// "max post spacing": a bound named and no figure given for it asks for the figure.
fn names_a_bound(words: &[Word]) -> bool {
    let bound = |w: &Word| matches!(w.text.as_str(), "max" | "maximum" | "min" | "minimum");
    words.first().is_some_and(bound) && !words.iter().any(|w| w.text.chars().any(|c| c.is_ascii_digit()))
}

/// A limit, and words that together point to it: each with the others that may stand for it.
type Cue = (&'static Limit, &'static [&'static [&'static str]]);

/// A limit that answers topics of loose talk, words together that point to it, and those that make it a word on what is asked.
pub(super) struct Talked {
    /// The limit.
    pub limit: &'static Limit,
    /// Topics of the corpus it may answer.
    pub of: &'static [&'static str],
    /// Words that together point to it.
    pub when: &'static [&'static [&'static [&'static str]]],
    /// Words with which it says that it is so.
    pub yes: &'static [&'static [&'static [&'static str]]],
    /// Words with which it says that it is not.
    pub no: &'static [&'static [&'static [&'static str]]],
}

/// Every limit that answers topics of loose talk.
pub(super) fn talked() -> &'static [Talked] {
    TALKED
}

include!(concat!(env!("OUT_DIR"), "/topics.rs"));

/// The limit a line asks about by words of its own: all of one cue stand in it, and no other
/// cue with more words does.
pub(super) fn asked(words: &[Word]) -> Option<&'static Limit> {
    let found = CUES.iter().filter_map(|(limit, cue)| Some((*limit, pointing(words, cue)?)));
    found.reduce(|a, b| if b.1.len() > a.1.len() { b } else { a }).map(|(limit, _)| limit)
}

/// Where each word of a cue stands, if all do, each in a place of its own.
pub(super) fn pointing(words: &[Word], cue: &[&[&str]]) -> Option<Vec<usize>> {
    let mut at = Vec::new();
    for any in cue {
        let here = (0..words.len()).find(|i| !at.contains(i) && any.contains(&words[*i].text.as_str()))?;
        at.push(here);
    }
    Some(at)
}

/// A question about the rules as a whole, and nothing beside it: the list of them, or those that
/// found something.
pub(super) fn of_rules(words: &[Word]) -> Option<Query> {
    let whole = |cues: &[&[&[&str]]]| {
        let all = |w: &Word, cue: &[&[&str]]| cue.iter().any(|any| any.contains(&w.text.as_str()));
        let light = |w: &Word| LIGHT.contains(&w.text.as_str()) || w.text == "?";
        let said_once = |i: usize| i == 0 || words[i].text != words[i - 1].text;
        let fits = |cue: &&&[&[&str]]| {
            pointing(words, cue).is_some()
                && words.iter().enumerate().all(|(i, w)| (all(w, cue) || light(w)) && said_once(i))
        };
        cues.iter().find(fits).is_some()
    };
    if whole(FOUND) {
        return Some(Query::RulesFound);
    }
    whole(LIST).then_some(Query::Rules)
}

/// True for a line that begins as a question does, perhaps behind a name or a "so".
pub(super) fn opens(words: &[Word]) -> bool {
    words.iter().take(2).any(|w| OPENS.contains(&w.text.as_str()))
}

/// The words an answer found by [`asked`] took no part of: neither its cues nor what asks, nor light.
pub(super) fn beside(limit: &Limit, words: &[Word], items: &[Item]) -> Vec<Range<usize>> {
    let of_topic =
        |text: &str| CUES.iter().any(|(l, cue)| l.id == limit.id && cue.iter().any(|any| any.contains(&text)));
    let said = |at: usize| of_topic(&words[at].text) || LIGHT.contains(&words[at].text.as_str());
    let part = |i: &Item| {
        i.is_sep()
            || !again(i, words)
                && (i.words.clone().all(said)
                    || i.senses().iter().any(|s| matches!(s, Sense::Ask(_)))
                    || i.is_light() && !i.may_be(Sense::Not) && !weighs(i) && !counts_off(i))
    };
    items.iter().filter(|i| !part(i)).map(|i| i.words.clone()).collect()
}

/// True for a word said twice in a row: the second is named.
pub(super) fn again(item: &Item, words: &[Word]) -> bool {
    item.words.start > 0 && words[item.words.start].text == words[item.words.start - 1].text
}

/// True for a line that asks: by its opening or its mark.
pub(super) fn asks(items: &[Item]) -> bool {
    let asking = |i: &Item| {
        i.senses().iter().any(|s| matches!(s, Sense::Ask(a) if !matches!(a, Ask::Actual | Ask::Show | Ask::Told)))
            || matches!(i.is, Is::Sep('?'))
    };
    items.iter().any(asking)
}

/// True for a line that names two things to choose between: "lags or through bolts".
pub(super) fn either_or(items: &[Item]) -> bool {
    let or = |i: &Item| i.text.eq_ignore_ascii_case("or");
    items.iter().skip(1).any(or) && !items.iter().any(|i| matches!(i.is, Is::Measure(_)))
}

/// True for a trouble told as a statement: "i failed inspection".
pub(super) fn stuck_with(words: &[Word]) -> bool {
    words.iter().any(|w| matches!(w.text.as_str(), "failed" | "flunked" | "wrote"))
}

/// True for a line that opens with "why".
pub(super) fn asks_why(items: &[Item]) -> bool {
    items.iter().find(|i| !i.is_sep() && !i.is_light()).is_some_and(|i| i.may_be(Sense::Ask(Ask::Why)))
}

/// True for "why" about what was answered, not about the rules at large.
pub(super) fn of_the_answer(words: &[Word]) -> bool {
    words.iter().any(|w| matches!(w.text.as_str(), "you" | "give" | "gave" | "get" | "got" | "there" | "put"))
}

/// True for a question that wants a count or a cut length worked out.
pub(super) fn counts(items: &[Item]) -> bool {
    let worked = [Ask::HowMany, Ask::HowLong, Ask::Where];
    items.iter().flat_map(Item::senses).any(|s| matches!(s, Sense::Ask(a) if worked.contains(a)))
}

/// True for a word an answer about this limit takes in: what asks, what names the topic, a
/// light word. Any other is named beside the answer.
pub(super) fn belongs(item: &Item, limit: &Limit) -> bool {
    let own = |s: &Sense| match s {
        Sense::Topic(id) => *id == limit.id,
        Sense::Ask(_) => true,
        _ => false,
    };
    // A limit is what "the max" asks for.
    let bound = matches!(&*item.text, "max" | "maximum" | "min" | "minimum" | "most" | "least");
    item.is_sep()
        || bound
        || item.senses().iter().any(own)
        || item.is_light() && !item.may_be(Sense::Not) && !weighs(item) && !counts_off(item)
}

/// "the second posts": which of them, which no rule tells apart.
fn counts_off(item: &Item) -> bool {
    matches!(&*item.text, "first" | "second" | "third" | "fourth" | "last" | "next")
}

/// A word that is light only where it stands beside nothing: a qualifier, a unit, a verb.
fn weighs(item: &Item) -> bool {
    let heavy = |s: &Sense| matches!(s, Sense::Qualifier | Sense::Unit(_) | Sense::Verb(_) | Sense::Part(_));
    item.senses().iter().any(heavy)
}
