//! What Tab offers: what fits where the cursor stands.

use crate::grammar::words::{Kind, words};
use crate::job::End;
use crate::session::Session;
use std::ops::Range;

/// One thing offered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Offer {
    /// What it puts into the line.
    pub(super) put: String,
    /// What it is, in a few words.
    pub(super) about: String,
    /// The bytes it replaces.
    pub(super) over: Range<usize>,
}

/// What a line may begin with, and what for.
const OPENERS: [(&str, &str); 26] = [
    ("run ", "a run of guard: how long, between what"),
    ("deck ", "the whole deck: 16 along the house, 12 out"),
    ("stairs ", "how wide, where, how many risers"),
    ("gate ", "how wide, at which end"),
    ("posts ", "their size, or how far apart"),
    ("guard height ", "to the top of the rail"),
    ("gap under ", "under the bottom rail"),
    ("make it ", "puts right what was said last"),
    ("what if ", "tries it, and changes nothing"),
    ("layout", "posts, marks and bays"),
    ("how many posts", "counts them"),
    ("spacing", "how far between the posts"),
    ("balusters", "how many, and the gap"),
    ("notches", "what comes off each post's foot"),
    ("draw the corner post", "its foot, drawn"),
    ("cut list", "every piece to cut"),
    ("shopping list", "what to buy"),
    ("what's next", "the order of the work"),
    ("what have I forgotten", "what is still to tell"),
    ("what changed", "since the last list"),
    ("rules", "what the code says"),
    ("why?", "where the last figure comes from"),
    ("note: ", "kept word for word"),
    ("undo", "takes the last line back"),
    ("more", "the rest of a long answer"),
    ("help", "what can be said"),
];

/// Sizes posts come in, then those of rails and balusters.
const SIZES: [&str; 6] = ["4x4", "4x6", "6x6", "2x4", "2x6", "2x2"];

/// What may stand before a place.
const LEADS: [&str; 8] = ["to", "from", "between", "and", "at", "past", "the", "by"];

/// What may stand before a size.
const SIZED: [&str; 9] = ["posts", "post", "rails", "rail", "cap", "balusters", "are", "is", "with"];

/// What may stand before a run's own name.
const NAMED: [&str; 8] = ["the", "on", "of", "for", "call", "drop", "marks", "posts"];

/// What fits at the cursor: the numbers of an open question on an empty line; else what the word begun may become.
pub(super) fn offers(line: &str, cursor: usize, session: &Session) -> Vec<Offer> {
    let Some(before) = line.get(..cursor) else { return Vec::new() };
    let all = words(before);
    // The word under the cursor; one that a space has closed is done.
    let begun = all.last().filter(|w| w.span.end == before.len() && w.kind == Kind::Letters);
    let start = begun.map_or(before.len(), |w| w.span.start);
    let stem = before[start..].to_lowercase();
    let choices = session.open_choices();
    if before.trim().is_empty() && !choices.is_empty() {
        let offer =
            |(n, phrase): (usize, String)| Offer { put: (n + 1).to_string(), about: phrase, over: 0..line.len() };
        return choices.into_iter().enumerate().map(offer).collect();
    }
    let last = all.iter().rev().find(|w| w.span.end <= start).map(|w| w.text.as_str());
    let mut found: Vec<(String, &'static str)> = Vec::new();
    let after = |list: &[&str]| last.is_some_and(|w| list.contains(&w));
    if before[..start].trim().is_empty() {
        // An opener of more words is found by all of them.
        found.extend(OPENERS.iter().map(|(put, about)| ((*put).to_owned(), *about)));
    }
    if after(&LEADS) {
        found.extend(End::ALL.iter().map(|e| (e.name().to_owned(), "an end of a run")));
    }
    if after(&SIZED) {
        let (posts, rails) = SIZES.split_at(3);
        let fitting = match last {
            Some("post" | "posts") => posts,
            Some("rail" | "rails" | "cap" | "balusters") => rails,
            _ => &SIZES[..],
        };
        found.extend(fitting.iter().map(|s| ((*s).to_owned(), "a size")));
    }
    if after(&NAMED) || before[..start].trim().is_empty() {
        let names = session.job().runs.iter().filter_map(|r| r.name.clone());
        found.extend(names.map(|n| (n, "a run of yours")));
    }
    let fits = |(put, _): &(String, &str)| put.starts_with(&stem) && *put != stem;
    found
        .into_iter()
        .filter(fits)
        .map(|(put, about)| Offer { put, about: about.to_owned(), over: start..cursor })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::step;

    fn told(lines: &[&str]) -> Session {
        let mut session = Session::new();
        for line in lines {
            let (delta, _) = step(&session, line);
            session.apply(delta);
        }
        session
    }

    fn put(line: &str, session: &Session) -> Vec<String> {
        offers(line, line.len(), session).into_iter().map(|o| o.put).collect()
    }

    #[test]
    fn what_fits_is_offered() {
        let none = Session::new();
        assert_eq!(put("run 10 ft house to co", &none), ["corner"]);
        assert_eq!(put("run 10 ft ho", &none), [""; 0]);
        assert_eq!(put("posts 6", &none), [""; 0]);
        assert!(put("posts ", &none).contains(&"6x6".to_owned()));
        assert_eq!(put("und", &none), ["undo"]);
        assert_eq!(put("how", &none), ["how many posts"]);
        assert_eq!(put("quit", &none), [""; 0]);
    }

    #[test]
    fn a_run_s_own_name_is_offered_and_a_question_s_numbers() {
        let session = told(&["creek side 14 ft house to corner"]);
        assert_eq!(put("how many posts on the cr", &session), ["creek"]);
        let asked = told(&["run 10 6 house to corner"]);
        assert_eq!(put("", &asked).first().map(String::as_str), Some("1"));
    }

    #[test]
    fn no_cursor_in_a_letter_or_past_the_end_does_harm() {
        let session = Session::new();
        for (line, cursor) in [("é", 1), ("a", 9), ("\u{1f528} h", 4)] {
            assert!(offers(line, cursor, &session).len() < 100);
        }
    }
}
