//! One line of a job file: what it is, how it is written, how it is read. Pure.
//!
//! ```text
//! file  = head *line
//! head  = "railhand job, version " n ", defaults " n
//! line  = ["  "] phrase ["  // " words]     told: a plain phrase, and the words it was told in
//!       | "? " words                        set aside: not understood, or a question still open
//!       | "// " words | ""                  a comment or an empty line: kept as it is
//! ```
//! A line that begins with two blanks belongs to the told line before it: they came in one
//! paste, and one undo takes them back. A phrase never holds two blanks side by side, so "  // "
//! always begins the comment, whatever a note says; and no phrase begins with "//" or "?".

use super::editions::Editions;
use crate::grammar::{Act, canon};
use crate::reply::{Typed, safe};

/// The version of the file's form that is written, and the newest that is read.
pub const VERSION: u32 = 1;

/// What a line that belongs to the one before begins with.
const JOINED: &str = "  ";
/// What stands between a phrase and the words it was told in.
const SAID: &str = "  // ";
/// The longest words set aside, in characters: all that a line may have, and the cut's mark.
const MOST_ASIDE: usize = crate::session::LONGEST;

/// What a line of the file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Told, and part of the job.
    Told,
    /// Words set aside.
    Aside,
    /// A comment or an empty line.
    Other,
}

/// A line of the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Entry {
    /// What it is.
    pub(super) kind: Kind,
    /// True where it belongs to the told line before it.
    pub(super) joined: bool,
    /// True while the question these words led to is open.
    pub(super) open: bool,
    /// Its text, without the mark of a joined line.
    pub(super) text: String,
}

impl Entry {
    /// A told phrase and the words it was told in.
    pub(super) fn told(phrase: &str, said: &str, joined: bool) -> Entry {
        let same = said.trim().is_empty() || said.trim() == phrase;
        let text = match same {
            true => phrase.to_owned(),
            false => format!("{phrase}{SAID}{}", one_line(said, Typed::MOST)),
        };
        Entry { kind: Kind::Told, joined, open: false, text }
    }

    /// Words set aside.
    pub(super) fn aside(words: &str, open: bool) -> Entry {
        let words = one_line(words, MOST_ASIDE);
        Entry { kind: Kind::Aside, joined: false, open, text: format!("? {words}") }
    }

    /// A line that stays as it is.
    pub(super) fn other(text: &str, kind: Kind) -> Entry {
        Entry { kind, joined: false, open: false, text: text.to_owned() }
    }

    /// The words a line was told in or set aside with; empty where none stand there.
    pub(super) fn words(&self) -> &str {
        match self.kind {
            Kind::Aside => self.text.trim_start_matches("? "),
            _ => parted(&self.text).1,
        }
    }

    /// How many bytes [`write_to`](Entry::write_to) writes.
    pub(super) fn size(&self) -> usize {
        self.text.len() + 1 + if self.joined { JOINED.len() } else { 0 }
    }

    /// Writes the line out.
    pub(super) fn write_to(&self, out: &mut String) {
        if self.joined {
            out.push_str(JOINED);
        }
        out.push_str(&self.text);
        out.push('\n');
    }
}

/// The words on one line with single blanks, nothing in them that steers a terminal, and
/// bounded in length; a cut is marked.
fn one_line(words: &str, most: usize) -> String {
    let words = safe(&words.split_whitespace().collect::<Vec<_>>().join(" "));
    match words.char_indices().nth(most) {
        Some((end, _)) => format!("{}\u{2026}", &words[..end]),
        None => words,
    }
}

/// The head of a file written under an edition of the defaults.
pub(super) fn head(defaults: u32) -> String {
    format!("railhand job, version {VERSION}, defaults {defaults}")
}

/// Whose file a first line says it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Head {
    /// One that can be read, and the edition of the defaults it was made under.
    Ours(u32),
    /// One of a later program: what it means is not known here.
    Newer,
    /// Somebody else's.
    Foreign,
}

/// Reads a first line, `newest` being the newest edition of the defaults that is known. A later
/// version may go on as it likes after its number.
pub(super) fn read_head(line: &str, newest: u32) -> Head {
    let Some(rest) = line.trim_end().strip_prefix("railhand job, version ") else { return Head::Foreign };
    let (version, rest) = number(rest);
    match version {
        None | Some(0) => return Head::Foreign,
        Some(n) if n > VERSION => return Head::Newer,
        Some(_) => {}
    }
    let (defaults, rest) = rest.strip_prefix(", defaults ").map_or((None, rest), number);
    match defaults {
        Some(n) if n > newest => Head::Newer,
        Some(n @ 1..) if rest.is_empty() => Head::Ours(n),
        _ => Head::Foreign,
    }
}

/// The number a text begins with, and what follows. One too great to hold is the greatest.
fn number(text: &str) -> (Option<u32>, &str) {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let digits = &text[..end];
    ((end > 0).then(|| digits.parse().unwrap_or(u32::MAX)), &text[end..])
}

/// A line's phrase, and the words behind the comment mark.
fn parted(line: &str) -> (&str, &str) {
    let (phrase, said) = line.split_once(SAID).unwrap_or((line, ""));
    (phrase.trim(), said.trim())
}

/// A line of a file below its head, taken apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Parts<'a> {
    /// Words set aside.
    Aside,
    /// A comment or an empty line.
    Other,
    /// Told, whether a plain phrase or not.
    Told {
        /// The phrase.
        phrase: &'a str,
        /// The words behind it.
        said: &'a str,
        /// True where it belongs to the told line before it.
        joined: bool,
    },
}

/// Takes a line of a file apart.
pub(super) fn parts(line: &str) -> Parts<'_> {
    let plain = line.trim();
    if plain == "?" || plain.starts_with("? ") {
        return Parts::Aside;
    }
    if plain.is_empty() || plain.starts_with("//") {
        return Parts::Other;
    }
    let (phrase, said) = parted(line);
    Parts::Told { phrase, said, joined: line.starts_with(JOINED) }
}

/// What a line typed or pasted is, where it may come out of a job file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pasted<'a> {
    /// A file's head.
    Head,
    /// The head of a later version's file.
    NewerHead,
    /// Words set aside.
    Aside,
    /// A comment.
    Comment,
    /// A plain phrase with the words it was told in behind it.
    Phrase(&'a str, &'a str),
    /// Anything else: a line as people type it.
    Line,
}

/// What a line typed or pasted is. Only a whole plain phrase gives up what stands behind
/// "  // ": in any other line every word is left for the reader to account for.
pub fn pasted(line: &str) -> Pasted<'_> {
    match read_head(line, Editions::default().newest()) {
        Head::Ours(_) => return Pasted::Head,
        Head::Newer => return Pasted::NewerHead,
        Head::Foreign => {}
    }
    match parts(line) {
        Parts::Aside => Pasted::Aside,
        Parts::Other if line.trim().is_empty() => Pasted::Line,
        Parts::Other => Pasted::Comment,
        Parts::Told { phrase, said, .. } if !said.is_empty() && told_phrase(phrase) => Pasted::Phrase(phrase, said),
        Parts::Told { .. } => Pasted::Line,
    }
}

fn told_phrase(phrase: &str) -> bool {
    matches!(canon::read(phrase), Some(Act::Tell(_)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_head_says_whose_file_it_is() {
        let rows = [
            ("railhand job, version 1, defaults 1", Head::Ours(1)),
            ("railhand job, version 1, defaults 1  ", Head::Ours(1)),
            ("railhand job, version 2, defaults 1", Head::Newer),
            ("railhand job, version 1, defaults 2", Head::Newer),
            ("railhand job, version 2; whatever comes", Head::Newer),
            ("railhand job, version 99999999999999999999, defaults 1", Head::Newer),
            ("railhand job, version 0, defaults 1", Head::Foreign),
            ("railhand job, version 1", Head::Foreign),
            ("railhand job, version 1, defaults 0", Head::Foreign),
            ("railhand job, version 1, defaults 1 or so", Head::Foreign),
            ("railhand job, version -1, defaults 1", Head::Foreign),
            ("railhand job", Head::Foreign),
            ("#!/bin/sh", Head::Foreign),
            ("", Head::Foreign),
        ];
        for (line, want) in rows {
            assert_eq!(read_head(line, 1), want, "{line:?}");
        }
        assert_eq!(read_head(&head(1), 1), Head::Ours(1));
    }

    #[test]
    fn a_line_is_taken_apart() {
        let told = |phrase, said, joined| Parts::Told { phrase, said, joined };
        let rows = [
            ("", Parts::Other),
            ("   ", Parts::Other),
            ("// measured on a wet day", Parts::Other),
            ("  // indented", Parts::Other),
            ("? wibble 12", Parts::Aside),
            ("?", Parts::Aside),
            ("drop run 1", told("drop run 1", "", false)),
            ("  drop run 1", told("drop run 1", "", true)),
            ("drop run 1  // lose the first", told("drop run 1", "lose the first", false)),
            ("note: see http://a // b", told("note: see http://a // b", "", false)),
            ("note: a // b  // c  // d", told("note: a // b", "c  // d", false)),
        ];
        for (line, want) in rows {
            assert_eq!(parts(line), want, "{line:?}");
        }
    }

    #[test]
    fn a_typed_line_keeps_every_word_unless_it_is_a_phrase_with_its_comment() {
        let rows = [
            ("railhand job, version 1, defaults 1", Pasted::Head),
            ("railhand job, version 7", Pasted::NewerHead),
            ("? run twelvty", Pasted::Aside),
            ("// by hand", Pasted::Comment),
            ("drop run 1  // lose it", Pasted::Phrase("drop run 1", "lose it")),
            ("  drop run 1  // lose it", Pasted::Phrase("drop run 1", "lose it")),
            ("drop run 1", Pasted::Line),
            ("run 10 ft  // between corners", Pasted::Line),
            ("undo  // the last", Pasted::Line),
            ("# of posts", Pasted::Line),
            ("", Pasted::Line),
        ];
        for (line, want) in rows {
            assert_eq!(pasted(line), want, "{line:?}");
        }
    }

    #[test]
    fn words_are_kept_on_one_safe_line() {
        let told = |said: &str| Entry::told("drop run 1", said, false).text;
        assert_eq!(told("drop run 1"), "drop run 1");
        assert_eq!(told("lose\tthe  // first\n"), "drop run 1  // lose the // first");
        assert_eq!(told("\u{1b}[2J\u{202e}x"), "drop run 1  // \u{fffd}[2J\u{fffd}x");
        let aside = Entry::aside(&"é ".repeat(5_000), true);
        assert_eq!(aside.text.chars().count(), 2 + MOST_ASIDE + 1);
        assert!(aside.text.ends_with('\u{2026}'));
    }
}
