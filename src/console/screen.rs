//! What the screen is like: asked anew at each answer, so a resize is no event.

use std::ffi::OsStr;
use std::io::{self, IsTerminal as _};

/// The width taken where none is known.
const USUAL: usize = 80;
/// The height taken where none is known.
const USUAL_ROWS: usize = 24;
/// Wider rows than this are hard to read.
const WIDEST: usize = 100;

/// A screen to print on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Screen {
    /// Columns.
    pub(super) width: usize,
    /// Rows.
    pub(super) height: usize,
    /// True where words may be painted.
    pub(super) colour: bool,
    /// True where colours go by 256 numbers.
    pub(super) deep: bool,
}

impl Screen {
    /// Standard output as it is now.
    pub(super) fn of_stdout() -> Screen {
        if !io::stdout().is_terminal() {
            return Screen { width: USUAL, height: USUAL_ROWS, colour: false, deep: false };
        }
        let (columns, rows) = crossterm::terminal::size().unwrap_or((0, 0));
        let height = if rows == 0 { USUAL_ROWS } else { usize::from(rows) };
        Screen { width: fitting(columns), height, colour: Screen::paints(), deep: Screen::is_deep() }
    }

    /// True where colour is welcome: `NO_COLOR` unset or empty, and a terminal that knows any.
    pub(super) fn paints() -> bool {
        !Screen::is_dumb() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
    }

    /// True for a terminal that says it has 256 colours or more.
    fn is_deep() -> bool {
        let says = |name: &str, words: &[&str]| std::env::var(name).is_ok_and(|v| words.iter().any(|w| v.contains(w)));
        says("TERM", &["256", "direct", "kitty", "alacritty"]) || says("COLORTERM", &["truecolor", "24bit"])
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
