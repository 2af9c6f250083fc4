//! Words as typed, made safe to show: no control characters, bounded in length.

/// Typed words that can be printed to any terminal.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Typed(String);

impl Typed {
    /// The longest stretch shown, in characters.
    pub const MOST: usize = 200;

    /// Takes control, format and bidirectional characters out and bounds the length.
    pub fn new(raw: &str) -> Typed {
        let mut shown: String =
            raw.chars().take(Self::MOST).map(|c| if is_unsafe(c) { '\u{fffd}' } else { c }).collect();
        if raw.chars().nth(Self::MOST).is_some() {
            shown.push('\u{2026}');
        }
        Typed(shown)
    }

    /// The safe text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// True for characters that could move a cursor, hide text or turn its direction.
pub(crate) fn is_unsafe(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}
