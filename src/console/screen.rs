//! What the screen is like: asked anew at each answer, so a resize is no event.

use std::ffi::OsStr;
use std::io::{self, IsTerminal as _};

/// The width taken where none is known.
const USUAL: usize = 80;
/// Wider rows than this are hard to read.
const WIDEST: usize = 100;

/// A screen to print on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Screen {
    /// Columns.
    pub(super) width: usize,
    /// True where cautions may be painted.
    pub(super) colour: bool,
}

impl Screen {
    /// Standard output as it is now.
    pub(super) fn of_stdout() -> Screen {
        if !io::stdout().is_terminal() {
            return Screen { width: USUAL, colour: false };
        }
        let columns = crossterm::terminal::size().map(|(columns, _)| columns).unwrap_or(0);
        Screen { width: fitting(columns), colour: Screen::paints() }
    }

    /// True where colour is welcome: `NO_COLOR` unset or empty, and a terminal that knows any.
    pub(super) fn paints() -> bool {
        !Screen::is_dumb() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
    }

    /// True for `TERM=dumb`.
    pub(super) fn is_dumb() -> bool {
        std::env::var_os("TERM").as_deref() == Some(OsStr::new("dumb"))
    }
}

/// The width to wrap to; a terminal that reports no columns counts as the usual one.
fn fitting(columns: u16) -> usize {
    match usize::from(columns) {
        0 => USUAL,
        columns => columns.min(WIDEST),
    }
}
