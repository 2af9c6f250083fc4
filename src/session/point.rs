//! Pointing at the words as typed.

use crate::grammar::items::{Is, Item, likeliest};
use crate::grammar::words::Word;
use crate::measure::Meaning;
use crate::reply::{Line, Role, Span, Typed};
use std::ops::Range;
use unicode_width::UnicodeWidthStr;

/// How much of a long line is shown before the words pointed at, in characters.
const BEFORE: usize = 40;

/// The typed text of a stretch of words, made safe.
pub(super) fn typed(line: &str, words: &[Word], range: &Range<usize>) -> Typed {
    Typed::new(text(line, words, range))
}

fn text<'a>(line: &'a str, words: &[Word], range: &Range<usize>) -> &'a str {
    let bytes = words.get(range.start).zip(words.get(range.end.wrapping_sub(1))).map(|(a, b)| a.span.start..b.span.end);
    bytes.and_then(|b| line.get(b)).unwrap_or("")
}

/// Two lines: what was typed, and marks under the words meant.
pub(super) fn pointer(line: &str, words: &[Word], range: &Range<usize>) -> Vec<Line> {
    let Some((first, last)) = words.get(range.start).zip(words.get(range.end.wrapping_sub(1))) else {
        return Vec::new();
    };
    let start = line[..first.span.start].char_indices().rev().take(BEFORE).last().map_or(first.span.start, |(i, _)| i);
    let before = Typed::new(&line[start..first.span.start]);
    let shown = Typed::new(&line[start..]);
    let under = Typed::new(&line[first.span.clone().start..last.span.end]);
    let marks = " ".repeat(before.as_str().width()) + &"^".repeat(under.as_str().width().clamp(1, 60));
    vec![
        Line::new(Role::Pointer, [Span::Say("  "), Span::Typed(shown)]),
        Line::new(Role::Pointer, [Span::Say("  "), Span::Drawn(marks)]),
    ]
}

/// The measures that are no length: pieces counted ("16s"), lumber, one size by another. The whole line where
/// there is none.
pub(super) fn no_length(words: &[Word]) -> Range<usize> {
    let counted = |m: &Meaning| matches!(m, Meaning::Bare(n) if n.plural);
    let sized = |m: &Meaning| matches!(m, Meaning::Lumber(_) | Meaning::By(..));
    let items = likeliest(words, &[]);
    let find = |test: &dyn Fn(&Meaning) -> bool| {
        let mut found = items.iter().filter(|i: &&Item| matches!(&i.is, Is::Measure(m) if test(&m.meaning)));
        found.next().map(|i| i.words.clone())
    };
    find(&counted).or_else(|| find(&sized)).unwrap_or(0..words.len())
}
