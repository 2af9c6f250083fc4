//! Wrapping at the screen's width, with a hanging indent. A figure is one piece:
//! `10'-6 3/4"` never stands half on one line and half on the next.

use unicode_width::UnicodeWidthStr;

/// Stands for a space no line may be broken at. It is a control character, so text
/// made safe to show cannot hold it.
pub(super) const GLUE: char = '\u{1}';

/// Narrower than this nothing reads well; the terminal breaks the lines then.
const LEAST: usize = 16;

/// `text` in lines of at most `width` columns, the first behind `lead`, the others
/// indented by `hang`. Unsafe characters must be out of it already.
pub(crate) fn wrap(lead: &str, text: &str, hang: usize, width: usize) -> String {
    let width = width.max(LEAST);
    let text = glue_figures(text);
    if lead.width().saturating_add(plain_width(&text)) <= width {
        return format!("{lead}{}", text.replace(GLUE, " "));
    }
    let mut page = Page { lines: Vec::new(), line: lead.to_owned(), hang: hang.min(width / 2), width, empty: true };
    for word in text.split(' ').filter(|w| !w.is_empty()) {
        page.put(word);
    }
    page.lines.push(page.line);
    page.lines.join("\n").replace(GLUE, " ")
}

/// Columns taken, the glue counted as the space it stands for.
fn plain_width(text: &str) -> usize {
    text.split(GLUE).map(UnicodeWidthStr::width).sum::<usize>() + text.matches(GLUE).count()
}

struct Page {
    lines: Vec<String>,
    line: String,
    hang: usize,
    width: usize,
    /// True while the line holds no word yet.
    empty: bool,
}

impl Page {
    fn put(&mut self, word: &str) {
        let gap = usize::from(!self.empty);
        if plain_width(&self.line) + gap + plain_width(word) > self.width && !self.empty {
            self.turn();
        }
        if self.empty && !word.contains(GLUE) && plain_width(&self.line) + plain_width(word) > self.width {
            return self.put_in_parts(word);
        }
        if !self.empty {
            self.line.push(' ');
        }
        self.line.push_str(word);
        self.empty = false;
    }

    fn turn(&mut self) {
        let next = " ".repeat(self.hang);
        self.lines.push(std::mem::replace(&mut self.line, next));
        self.empty = true;
    }

    /// A word longer than a line, such as a typed one: broken at the edge.
    fn put_in_parts(&mut self, word: &str) {
        for c in word.chars() {
            let c = c.to_string();
            if !self.empty && plain_width(&self.line) + plain_width(&c) > self.width {
                self.turn();
            }
            self.line.push_str(&c);
            self.empty = false;
        }
    }
}

/// Glues what reads as one figure: `126 3/4"`, `16 x 12`, `10 ft`.
fn glue_figures(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').collect();
    let mut out = String::with_capacity(text.len());
    for (i, word) in words.iter().enumerate() {
        out.push_str(word);
        let Some(next) = words.get(i + 1) else { break };
        let before = i.checked_sub(1).and_then(|j| words.get(j));
        out.push(if is_one(before.copied(), word, next, words.get(i + 2).copied()) { GLUE } else { ' ' });
    }
    out
}

/// True where no line may be broken between `word` and `next`.
fn is_one(before: Option<&str>, word: &str, next: &str, after: Option<&str>) -> bool {
    let by = |w: &str| matches!(w, "x" | "by");
    (ends_as_number(word) && (is_fraction(next) || is_unit(next)))
        || (ends_as_measure(word) && by(next) && after.is_some_and(starts_as_number))
        || (before.is_some_and(ends_as_measure) && by(word) && starts_as_number(next))
        || (is_unit(word) && before.is_some_and(ends_as_number) && starts_as_number(next))
}

fn starts_as_number(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit())
}

fn ends_as_number(word: &str) -> bool {
    word.ends_with(|c: char| c.is_ascii_digit())
}

fn ends_as_measure(word: &str) -> bool {
    ends_as_number(word) || (starts_as_number(word) && word.ends_with(['\'', '"']))
}

fn is_fraction(word: &str) -> bool {
    let Some((over, under)) = word.split_once('/') else { return false };
    !over.is_empty() && over.bytes().all(|b| b.is_ascii_digit()) && starts_as_number(under)
}

fn is_unit(word: &str) -> bool {
    let stem = word.trim_end_matches([',', '.', ';', ':', '?', ')']);
    matches!(stem, "ft" | "foot" | "feet" | "in" | "inch" | "inches" | "mm" | "cm" | "m" | "lb")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn text_that_fits_is_left_as_it_is() {
        assert_eq!(wrap("", "two  spaces   stay", 2, 40), "two  spaces   stay");
        assert_eq!(wrap("heard: ", "post 4x4", 2, 40), "heard: post 4x4");
        assert_eq!(wrap("", "", 2, 40), "");
    }

    #[test]
    fn later_lines_hang() {
        assert_eq!(
            wrap("  1. ", "run 1 from the house to the corner", 5, 24),
            "  1. run 1 from the\n     house to the corner"
        );
    }

    /// Each of these has its middle at the edge of some width.
    #[test]
    fn a_figure_is_never_split() {
        let figures =
            ["10'-6 3/4\"", "126 3/4\"", "16 x 12", "10'-6\" x 8'-0\"", "10 ft", "10 ft 6 in", "3 1/2 in", "1070 mm"];
        for figure in figures {
            let text = format!("the long run is {figure} between the posts");
            for width in LEAST..60 {
                let shown = wrap("", &text, 2, width);
                assert!(shown.contains(figure), "{figure} at {width}:\n{shown}");
            }
        }
    }

    #[test]
    fn a_word_longer_than_the_line_is_broken_at_the_edge() {
        assert_eq!(wrap("", &"a".repeat(40), 2, 20), format!("{}\n  {}\n  aa", "a".repeat(20), "a".repeat(18)));
    }

    proptest! {
        #[test]
        fn no_word_is_lost_and_no_line_is_too_long(
            words in prop::collection::vec("[a-z木]{1,8}", 1..40), width in LEAST..90_usize, hang in 0..6_usize
        ) {
            let shown = wrap("", &words.join(" "), hang, width);
            let back: Vec<&str> = shown.split_whitespace().collect();
            prop_assert!(shown.lines().all(|l| l.width() <= width));
            prop_assert_eq!(back.concat(), words.concat());
        }
    }
}
