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

/// The same text with every unsafe character but the newline shown as U+FFFD; its
/// length is not bounded. The last gate before any output.
pub(crate) fn safe(text: &str) -> String {
    text.chars().map(|c| if c != '\n' && is_unsafe(c) { '\u{fffd}' } else { c }).collect()
}

/// True for characters that could move a cursor, hide text or turn its direction:
/// Unicode's control characters (category Cc) and the format characters (category Cf)
/// that have no sign of their own.
pub(crate) fn is_unsafe(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Code points by the Unicode Character Database's own names and categories.
    #[test]
    fn no_character_that_moves_hides_or_turns_text_is_shown() {
        let rows = [
            ("escape", '\u{1b}'),
            ("null", '\0'),
            ("delete", '\u{7f}'),
            ("control sequence introducer", '\u{9b}'),
            ("soft hyphen", '\u{ad}'),
            ("arabic letter mark", '\u{61c}'),
            ("zero width space", '\u{200b}'),
            ("line separator", '\u{2028}'),
            ("right-to-left override", '\u{202e}'),
            ("first strong isolate", '\u{2068}'),
            ("byte order mark", '\u{feff}'),
            ("interlinear annotation anchor", '\u{fff9}'),
            ("language tag", '\u{e0001}'),
        ];
        for (name, c) in rows {
            assert_eq!(Typed::new(&format!("a{c}b")).as_str(), "a\u{fffd}b", "{name}");
        }
        assert_eq!(Typed::new("10'-6 ½″ naïve 木").as_str(), "10'-6 ½″ naïve 木");
    }

    #[test]
    fn a_long_stretch_is_cut_and_says_so() {
        let shown = Typed::new(&"é".repeat(Typed::MOST + 1));
        assert_eq!(shown.as_str().chars().count(), Typed::MOST + 1);
        assert!(shown.as_str().ends_with('\u{2026}'));
        assert!(!Typed::new(&"é".repeat(Typed::MOST)).as_str().contains('\u{2026}'));
    }
}
