//! What kind of word each stretch of a line is, for showing a line while it is typed.

use super::items::{Is, Item, likeliest};
use super::sense::{Name, Sense};
use super::words::words;
use std::ops::Range;

/// A kind of word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A length, a size, a count.
    Measure,
    /// A place or a side: where a run ends, what it is called.
    Place,
    /// A part of the guard, and what it is made of.
    Part,
    /// Something to be done or changed.
    Doing,
    /// What makes a line a question.
    Asking,
    /// Known, and none of these.
    Known,
    /// Not to be read.
    Unread,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 7] =
        [Kind::Measure, Kind::Place, Kind::Part, Kind::Doing, Kind::Asking, Kind::Known, Kind::Unread];
}

/// The line cut into stretches by kind, in order; the bytes between them are spaces. A line is
/// cut here as the reader likes best: which reading it comes to is not looked into.
pub fn kinds(line: &str, names: &[Name]) -> Vec<(Range<usize>, Kind)> {
    let words = words(line);
    let span = |item: &Item| words[item.words.start].span.start..words[item.words.end - 1].span.end;
    likeliest(&words, names).iter().map(|item| (span(item), kind(item))).collect()
}

fn kind(item: &Item) -> Kind {
    match &item.is {
        Is::Measure(_) => Kind::Measure,
        Is::Sep(_) => Kind::Known,
        Is::Unread | Is::Unknown | Is::Junk => Kind::Unread,
        Is::Term(senses) => senses.iter().filter_map(of_sense).min().unwrap_or(Kind::Known),
    }
}

fn of_sense(sense: &Sense) -> Option<Kind> {
    Some(match sense {
        Sense::End(_) | Sense::Ends(_) | Sense::Side(_) | Sense::Spot(_) => Kind::Place,
        Sense::Part(_) | Sense::Wood(_) | Sense::Mount(_) | Sense::Fixing(_) => Kind::Part,
        Sense::Verb(_) | Sense::Op(_) | Sense::Not => Kind::Doing,
        Sense::Ask(_) => Kind::Asking,
        Sense::Unit(_) | Sense::Nth(_) | Sense::Parts(_) => Kind::Measure,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(line: &str) -> String {
        let mark = |kind| match kind {
            Kind::Measure => 'm',
            Kind::Place => 'p',
            Kind::Part => 't',
            Kind::Doing => 'd',
            Kind::Asking => 'a',
            Kind::Known => '.',
            Kind::Unread => '?',
        };
        let mut marks = vec![' '; line.len()];
        for (span, kind) in kinds(line, &[]) {
            marks[span].fill(mark(kind));
        }
        marks.into_iter().collect()
    }

    #[test]
    fn each_word_has_its_kind() {
        let rows = [
            ("run 10 ft house to corner", "ttt mmmmm ppppp .. pppppp"),
            ("make it 3 bays", "ddddddd m tttt"),
            ("how many posts", "aaaaaaaa ttttt"),
            ("zork 12 wimmel", "???? mm ??????"),
            ("", ""),
        ];
        for (line, want) in rows {
            assert_eq!(shown(line), want, "{line:?}");
        }
    }

    #[test]
    fn the_stretches_stand_in_order_whatever_is_typed() {
        for line in ["é 10'–3½\" \u{202e}x", "  4x4,,posts ?", "\u{1f528} gate", "1/0 \0 \t house"] {
            let cut = kinds(line, &[]);
            assert!(cut.windows(2).all(|w| w[0].0.end <= w[1].0.start), "{line:?}");
            assert!(cut.iter().all(|(span, _)| line.get(span.clone()).is_some()), "{line:?}");
        }
    }
}
