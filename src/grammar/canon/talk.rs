//! The words that keep a conversation going.

use super::Read;
use super::words::{Table, one_of, words_of};
use crate::grammar::Talk;

const TALK: &Table<Talk> = &[
    (Talk::Undo, "undo"),
    (Talk::Redo, "redo"),
    (Talk::Keep, "keep it"),
    (Talk::Leave, "leave it"),
    (Talk::Hello, "hello"),
    (Talk::Thanks, "thanks"),
    (Talk::Help, "help"),
];

/// The plain phrase of a piece of talk.
pub(super) fn write_talk(talk: Talk) -> &'static str {
    words_of(TALK, talk)
}

/// Reads what [`write_talk`] writes.
pub(super) fn read_talk(i: &str) -> Read<'_, Talk> {
    one_of(TALK)(i)
}
