//! What is asked to leave the talk: notes, and text for the clipboard.

use crate::grammar::Query;
use crate::job::Job;
use crate::paper::{Document, markdown};
use crate::reply::{plain, tape_of};
use crate::session::ask;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

/// What is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// The job as notes, shown.
    Notes,
    /// The last answer, copied.
    Last,
    /// The layout, copied.
    Layout,
    /// The notes, copied.
    CopiedNotes,
}

/// What a whole line asks for, if that is what it does.
pub(super) fn wanted(line: &str) -> Option<Wanted> {
    let line = line.trim().trim_end_matches(['.', '!', '?']).to_lowercase();
    let words: Vec<&str> = line.split_whitespace().filter(|w| *w != "please").collect();
    Some(match words.join(" ").as_str() {
        "notes" | "job notes" | "the notes" | "write it up" | "show me the notes" => Wanted::Notes,
        "copy" | "copy that" | "copy it" | "copy this" => Wanted::Last,
        "copy the layout" | "copy layout" => Wanted::Layout,
        "copy the notes" | "copy notes" | "copy the job" | "copy my notes" => Wanted::CopiedNotes,
        _ => return None,
    })
}

/// The text wanted, 72 columns wide and without colour; `last` is the last answer.
pub(super) fn text(wanted: Wanted, job: &Job, last: &str) -> String {
    match wanted {
        Wanted::Notes | Wanted::CopiedNotes => markdown(&Document::of(job)),
        Wanted::Last => last.to_owned(),
        Wanted::Layout => plain(&ask(job, &Query::Layout(None)), COLUMNS, tape_of(job)),
    }
}

/// How wide copied text is.
pub(super) const COLUMNS: usize = 72;

/// The most text handed to a terminal's clipboard: more is cut off or refused by many (common practice, no source).
const MOST: usize = 70_000;

/// The control that puts text on the clipboard where the terminal lets it: OSC 52, its text in base 64
/// (xterm's control sequences, from memory). None for a text too long for it.
pub(super) fn clipboard(text: &str) -> Option<String> {
    let coded = STANDARD.encode(text);
    (coded.len() <= MOST).then(|| format!("\x1b]52;c;{coded}\x07"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_whole_line_asks_for_them() {
        let rows = [
            ("notes", Some(Wanted::Notes)),
            (" Copy that. ", Some(Wanted::Last)),
            ("copy the layout", Some(Wanted::Layout)),
            ("copy the notes please", Some(Wanted::CopiedNotes)),
            ("note: copy that", None),
            ("notes on the gate", None),
        ];
        for (line, want) in rows {
            assert_eq!(wanted(line), want, "{line:?}");
        }
    }

    /// "Man" is "TWFu" in base 64 (RFC 4648, section 9 has its like; from memory).
    #[test]
    fn the_clipboard_s_text_is_in_base_64() {
        assert_eq!(clipboard("Man").as_deref(), Some("\u{1b}]52;c;TWFu\u{7}"));
        assert_eq!(clipboard(&"x".repeat(MOST)), None);
    }
}
