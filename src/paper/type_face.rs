//! The type face on paper: DejaVu Sans, cut down to the signs used here. Its licence stands beside it.

use std::sync::LazyLock;
use ttf_parser::{Face, GlyphId};

/// The face, plain.
pub const PLAIN: &[u8] = include_bytes!("font/DejaVuSans.ttf");
/// The face, heavy.
pub const BOLD: &[u8] = include_bytes!("font/DejaVuSans-Bold.ttf");

static FACES: LazyLock<[Option<Face<'static>>; 2]> =
    LazyLock::new(|| [PLAIN, BOLD].map(|bytes| Face::parse(bytes, 0).ok()));

/// The face; `None` never, while the files beside this one are whole.
pub fn face(bold: bool) -> Option<&'static Face<'static>> {
    FACES[usize::from(bold)].as_ref()
}

/// The sign of a character; of one the face has not, the mark for that.
pub fn sign(bold: bool, c: char) -> GlyphId {
    let of = |c| face(bold).and_then(|f| f.glyph_index(c));
    of(c).or_else(|| of('\u{fffd}')).unwrap_or(GlyphId(0))
}

/// How wide a character is, in parts of the height.
pub fn width_of(bold: bool, c: char) -> f64 {
    let Some(face) = face(bold) else { return 0.6 };
    let advance = face.glyph_hor_advance(sign(bold, c)).unwrap_or(0);
    f64::from(advance) / f64::from(face.units_per_em())
}

/// How wide a text is at that height.
pub fn width(words: &str, size: f64, bold: bool) -> f64 {
    words.chars().map(|c| width_of(bold, c)).sum::<f64>() * size
}

/// The text broken to lines no wider than that. A word wider than the room is broken where it must be.
pub fn broken(words: &str, size: f64, bold: bool, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    let wide = |s: &str| width(s, size, bold);
    for word in words.split(' ').filter(|w| !w.is_empty()) {
        let joined = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if wide(&joined) <= room {
            line = joined;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for c in word.chars() {
            if !line.is_empty() && wide(&line) + width_of(bold, c) * size > room {
                lines.push(std::mem::take(&mut line));
            }
            line.push(c);
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_face_has_every_sign_an_answer_is_written_in() {
        for c in "0123456789'\"/-+x.,:;?!()[]%&# abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".chars() {
            for bold in [false, true] {
                assert!(face(bold).is_some_and(|f| f.glyph_index(c).is_some()), "{c:?}");
            }
        }
    }

    proptest! {
        #[test]
        fn no_line_is_wider_than_its_room_and_no_letter_is_lost(words in "[a-z'\"0-9/ é\u{202e}]{0,120}", room in 20.0..400.0) {
            let lines = broken(&words, 9.0, false, room);
            prop_assert!(lines.iter().all(|l| width(l, 9.0, false) <= room + 9.0));
            let letters = |s: &str| s.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(letters(&lines.concat()), letters(&words));
        }
    }
}
