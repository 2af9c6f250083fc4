//! Colours, by what they stand for. Each is told by a word or a mark as well, so that nothing is lost without them.
//!
//! They are of the 256 a terminal gives by number (ISO 8613-6, SGR 38;5): the first sixteen are the
//! person's own theme and may be anything. Each reads on a dark and on a light ground.

use super::screen::Screen;
use crate::grammar::kinds::Kind;
use crate::reply::Tone;

/// A colour by its number.
pub(super) type Colour = u8;

/// The hint behind the line.
pub(super) const HINT: Colour = 243;
/// A caution.
const CAUTION: Colour = 130;
/// A stop.
const STOP: Colour = 161;

/// The colour of a kind of word; none for words that say nothing of their own, nor for what is not read, which
/// is underlined.
pub(super) fn of_kind(kind: Kind) -> Option<Colour> {
    match kind {
        Kind::Measure => Some(28),
        Kind::Place => Some(31),
        Kind::Part => Some(130),
        Kind::Doing => Some(163),
        Kind::Asking => Some(98),
        Kind::Known | Kind::Unread => None,
    }
}

/// Cautions coloured, stops bold and coloured; their words say the same without it.
pub(super) fn paint(tone: Tone, text: &str, screen: Screen) -> String {
    let code = match (tone, screen.deep) {
        (Tone::Plain, _) => return text.to_owned(),
        (Tone::Caution, true) => format!("38;5;{CAUTION}"),
        (Tone::Stop, true) => format!("1;38;5;{STOP}"),
        // A terminal of few colours has bold at least.
        (Tone::Caution, false) => return text.to_owned(),
        (Tone::Stop, false) => "1".to_owned(),
    };
    if !screen.colour {
        return text.to_owned();
    }
    let rows: Vec<String> = text.split('\n').map(|row| format!("\x1b[{code}m{row}\x1b[0m")).collect();
    rows.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    const DEEP: Screen = Screen { width: 80, height: 24, colour: true, deep: true };

    #[test]
    fn paint_covers_each_row_and_only_where_welcome() {
        assert_eq!(paint(Tone::Stop, "a\nb", DEEP), "\x1b[1;38;5;161ma\x1b[0m\n\x1b[1;38;5;161mb\x1b[0m");
        assert_eq!(paint(Tone::Stop, "a\nb", Screen { colour: false, ..DEEP }), "a\nb");
        assert_eq!(paint(Tone::Stop, "a", Screen { deep: false, ..DEEP }), "\x1b[1ma\x1b[0m");
        assert_eq!(paint(Tone::Plain, "a\nb", DEEP), "a\nb");
    }

    /// Levels of the 6 x 6 x 6 cube and the greys, as terminals of 256 colours have them (from memory of the common
    /// table: 0, 95, 135, 175, 215, 255; greys from 8 in steps of 10).
    fn rgb(colour: Colour) -> [f64; 3] {
        let level = |n: u8| [0.0, 95.0, 135.0, 175.0, 215.0, 255.0][usize::from(n)];
        match colour {
            232.. => [8.0 + 10.0 * f64::from(colour - 232); 3],
            _ => {
                let at = colour - 16;
                [level(at / 36), level(at / 6 % 6), level(at % 6)]
            }
        }
    }

    /// Relative luminance (WCAG 2.1, from memory).
    fn luminance(colour: Colour) -> f64 {
        let linear = |c: f64| {
            let c = c / 255.0;
            if c <= 0.03928 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        let [r, g, b] = rgb(colour).map(linear);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    /// WCAG 2.1 asks 3:1 of large text and of marks, 4.5:1 of small text on one ground (from memory). On black and on
    /// white at once 4.58:1 is the most any colour can have.
    #[test]
    fn every_colour_reads_on_black_and_on_white() {
        let kinds = Kind::ALL.iter().filter_map(|k| of_kind(*k));
        for colour in kinds.chain([HINT, CAUTION, STOP]) {
            let lit = luminance(colour);
            let least = ((lit + 0.05) / 0.05).min(1.05 / (lit + 0.05));
            assert!(least >= 4.0, "{colour}: {least:.2}");
        }
    }
}
