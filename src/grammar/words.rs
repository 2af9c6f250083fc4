//! A typed line to words: marks, glyphs and full-width forms made plain, spans kept.
//!
//! Nothing is thrown away: every character that is not a space belongs to a word.

use super::measures::is_tail;
use std::ops::Range;

/// What a word is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Digits, with a decimal point or thousands commas taken out: `12`, `10.6`, `1070`.
    Digits,
    /// A vulgar fraction typed as one glyph; the text is `1/2`.
    Glyph,
    /// A foot mark `'` or an inch mark `"`.
    Mark,
    /// Letters, in lower case; `'s` stands alone as a word.
    Letters,
    /// One sign: `-`, `/`, `,`, `>` ...
    Sign,
    /// Anything else: emoji, control characters.
    Junk,
}

/// One word of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Word {
    /// What it is made of.
    pub kind: Kind,
    /// Its plain text.
    pub text: String,
    /// The bytes of the typed line it came from.
    pub span: Range<usize>,
    /// True when it is written onto the word before it with no space and no
    /// separating sign between: both belong to one cluster.
    pub joined: bool,
}

impl Word {
    /// True for exactly this text.
    pub fn is(&self, text: &str) -> bool {
        self.text == text
    }
}

/// The words of a line.
pub fn words(typed: &str) -> Vec<Word> {
    let chars: Vec<Char> = plain_chars(typed);
    let mut list: Vec<Word> = Vec::new();
    let mut at = 0;
    while at < chars.len() {
        if chars[at].c == ' ' {
            at += 1;
            continue;
        }
        let (kind, text, end) = next_word(&chars, at, list.last());
        let span = chars[at].span.start..chars[end - 1].span.end;
        let touches = at > 0 && chars[at - 1].c != ' ';
        list.push(Word { kind, text, span, joined: touches });
        at = end;
    }
    part_separators(&mut list);
    list
}

struct Char {
    c: char,
    span: Range<usize>,
    glyph: Option<&'static str>,
}

const GLYPHS: [(char, &str); 18] = [
    ('½', "1/2"),
    ('¼', "1/4"),
    ('¾', "3/4"),
    ('⅛', "1/8"),
    ('⅜', "3/8"),
    ('⅝', "5/8"),
    ('⅞', "7/8"),
    ('⅓', "1/3"),
    ('⅔', "2/3"),
    ('⅕', "1/5"),
    ('⅖', "2/5"),
    ('⅗', "3/5"),
    ('⅘', "4/5"),
    ('⅙', "1/6"),
    ('⅚', "5/6"),
    ('⅐', "1/7"),
    ('⅑', "1/9"),
    ('⅒', "1/10"),
];

/// The line in plain characters, each with the bytes it was typed as.
fn plain_chars(typed: &str) -> Vec<Char> {
    let mut out: Vec<Char> = Vec::new();
    for (start, typed_char) in typed.char_indices() {
        let span = start..start + typed_char.len_utf8();
        let glyph = GLYPHS.iter().find(|(g, _)| *g == typed_char).map(|(_, text)| *text);
        let c = plain_char(typed_char);
        let before = out.len().checked_sub(2).and_then(|at| out.get(at));
        let after_number = before.is_some_and(|b| b.glyph.is_some() || !(b.c.is_alphabetic() || b.c == ' '));
        match (out.last_mut(), c) {
            // Two apostrophes are an inch mark; a mark doubled is one mark.
            (Some(last), '\'') if last.c == '\'' => {
                last.c = '"';
                last.span.end = span.end;
            }
            (Some(last), '"') if last.c == '"' => last.span.end = span.end,
            // "house--corner": one dash, unless it may be a sign on a number.
            (Some(last), '-') if last.c == '-' && !after_number => last.span.end = span.end,
            (Some(last), '>') if matches!(last.c, '-' | '=' | '>') => {
                last.c = '>';
                last.span.end = span.end;
            }
            // Joiners and variation selectors belong to the emoji before them.
            (Some(last), '\u{200d}' | '\u{fe0e}' | '\u{fe0f}') => last.span.end = span.end,
            _ => out.push(Char { c, span, glyph }),
        }
    }
    out
}

fn plain_char(c: char) -> char {
    match c {
        '\u{ff01}'..='\u{ff5e}' => {
            let ascii = u32::from(c) - 0xfee0;
            char::from_u32(ascii).map_or(c, |a| a.to_ascii_lowercase())
        }
        '\u{2018}' | '\u{2019}' | '\u{2032}' | '\u{2035}' | '\u{02b9}' | '`' | '\u{00b4}' | '\u{02bc}' => '\'',
        '\u{201c}' | '\u{201d}' | '\u{2033}' | '\u{3003}' | '\u{02ba}' | '\u{201e}' => '"',
        '\u{2044}' | '\u{2215}' => '/',
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        '\u{00d7}' | '\u{2715}' => 'x',
        '\u{2192}' | '\u{27a1}' | '\u{2794}' | '\u{21d2}' => '>',
        '\u{00f7}' => '/',
        c if c.is_whitespace() => ' ',
        c => c.to_lowercase().next().unwrap_or(c),
    }
}

fn next_word(chars: &[Char], at: usize, before: Option<&Word>) -> (Kind, String, usize) {
    let c = chars[at].c;
    if let Some(text) = chars[at].glyph {
        return (Kind::Glyph, text.to_owned(), at + 1);
    }
    // "house...14'" ends in dots, not in a point.
    let point = c == '.' && char_at(chars, at + 1).is_some_and(|d| d.is_ascii_digit());
    if c.is_ascii_digit() || point && char_at(chars, at.wrapping_sub(1)) != Some('.') {
        return digits(chars, at);
    }
    if c == '\''
        && clitic_ends(chars, at)
        && before.is_some_and(|w| w.kind != Kind::Sign)
        && at > 0
        && chars[at - 1].c != ' '
    {
        return (Kind::Letters, "'s".to_owned(), at + 2);
    }
    match c {
        '\'' | '"' => (Kind::Mark, c.to_string(), at + 1),
        c if c.is_alphabetic() => letters(chars, at),
        c if c.is_ascii_graphic() => (Kind::Sign, c.to_string(), at + 1),
        c => (Kind::Junk, c.to_string(), at + 1),
    }
}

fn char_at(chars: &[Char], at: usize) -> Option<char> {
    chars.get(at).filter(|c| c.glyph.is_none()).map(|c| c.c)
}

/// True for `'s` at `at` with no letter after it.
fn clitic_ends(chars: &[Char], at: usize) -> bool {
    char_at(chars, at + 1) == Some('s') && !char_at(chars, at + 2).is_some_and(char::is_alphanumeric)
}

/// Digits with thousands commas and one decimal point: `1,070`, `13.25`, `.5`.
fn digits(chars: &[Char], at: usize) -> (Kind, String, usize) {
    let is_digit = |i: usize| char_at(chars, i).is_some_and(|c| c.is_ascii_digit());
    let mut text = String::new();
    let mut end = at;
    while is_digit(end) {
        text.push(chars[end].c);
        end += 1;
    }
    if (1..=3).contains(&text.len()) {
        while char_at(chars, end) == Some(',') && (1..=3).all(|k| is_digit(end + k)) && !is_digit(end + 4) {
            text.extend((1..=3).map(|k| chars[end + k].c));
            end += 4;
        }
    }
    if char_at(chars, end) == Some('.') && is_digit(end + 1) {
        text.push('.');
        end += 1;
        while is_digit(end) {
            text.push(chars[end].c);
            end += 1;
        }
    }
    (Kind::Digits, text, end)
}

/// Letters. `o.c.` is one word `oc`; `don't` is `dont`; `it's` is `it` and `'s`.
fn letters(chars: &[Char], at: usize) -> (Kind, String, usize) {
    let is_letter = |i: usize| char_at(chars, i).is_some_and(char::is_alphabetic);
    let mut text = String::new();
    let mut end = at;
    while is_letter(end) {
        text.push(chars[end].c);
        end += 1;
    }
    while text.len() <= 3 && text.len() * 2 - 1 == end - at && char_at(chars, end) == Some('.') && is_letter(end + 1) {
        if is_letter(end + 2) {
            break;
        }
        text.push(chars[end + 1].c);
        end += 2;
    }
    if text.len() > 1 && text.len() * 2 - 1 == end - at && char_at(chars, end) == Some('.') {
        end += 1;
    }
    if char_at(chars, end) == Some('\'') && is_letter(end + 1) && !clitic_ends(chars, end) {
        end += 1;
        while is_letter(end) {
            text.push(chars[end].c);
            end += 1;
        }
    }
    (Kind::Letters, text, end)
}

/// Unjoins words at signs that part: a comma never ties two numbers together. A
/// colon, semicolon or full stop ties only digits to digits ("10:06", "1.2.3").
fn part_separators(list: &mut [Word]) {
    for i in 0..list.len() {
        let ties = |w: Option<&Word>| w.is_some_and(|w| w.kind == Kind::Digits);
        let parts = |i: usize| match list[i].text.as_str() {
            "," | "?" | "!" | "(" | ")" | ">" | "|" | "[" | "]" | "<" | "{" | "}" => true,
            ":" | ";" | "." => {
                let next = list.get(i + 1).filter(|n| n.joined);
                !(i > 0 && list[i].joined && ties(list.get(i - 1)) && ties(next))
            }
            _ => false,
        };
        let parted = list[i].kind == Kind::Sign && parts(i) || i > 0 && list[i - 1].kind == Kind::Sign && parts(i - 1);
        if parted {
            list[i].joined = false;
        }
    }
}

/// True where an island may begin or end: never inside a cluster of digits and
/// marks. Letters written onto a mark ("36\"h") or saying which way a number runs
/// ("4w"), words tied by hyphens, and plain operators ("5+4") do part.
pub fn parts_before(list: &[Word], at: usize) -> bool {
    let Some(word) = list.get(at) else { return true };
    if at == 0 || !word.joined {
        return true;
    }
    let before = &list[at - 1];
    if word.is("'s") && word.kind == Kind::Letters {
        return before.kind == Kind::Letters;
    }
    if is_operator(word) || is_operator(before) {
        return true;
    }
    if slash_parts(list, at) || before.is("/") && slash_parts(list, at - 1) {
        return true;
    }
    match word.kind {
        Kind::Letters => match before.kind {
            Kind::Mark => true,
            Kind::Digits | Kind::Glyph => is_tail(&word.text) && !list.get(at + 1).is_some_and(|w| w.joined),
            _ => before.is("-") && hyphen_parts(list, at - 1),
        },
        Kind::Sign => word.is("-") && hyphen_parts(list, at),
        Kind::Junk => true,
        Kind::Digits | Kind::Glyph | Kind::Mark => before.kind == Kind::Junk,
    }
}

/// A sign that means one thing only, so it cannot belong to a number.
fn is_operator(word: &Word) -> bool {
    word.kind == Kind::Sign && matches!(word.text.as_str(), "+" | "*" | "=" | "@" | "~")
}

/// True for a slash between two words of more than one letter: "corner/house", not "o/c".
fn slash_parts(list: &[Word], at: usize) -> bool {
    let word = |w: Option<&Word>| w.is_some_and(|w| w.kind == Kind::Letters && w.text.chars().nth(2).is_some());
    list[at].is("/") && word(at.checked_sub(1).and_then(|b| list.get(b))) && word(list.get(at + 1))
}

/// True for a hyphen with letters on both sides, or letters after a mark or digit.
fn hyphen_parts(list: &[Word], at: usize) -> bool {
    let letters = |w: Option<&Word>| w.is_some_and(|w| w.kind == Kind::Letters);
    letters(list.get(at + 1)) && (at == 0 || !list[at].joined || list[at - 1].kind != Kind::Sign)
}

#[cfg(test)]
mod tests {
    use super::*;
    use pretty_assertions::assert_eq;

    fn texts(line: &str) -> Vec<String> {
        words(line).into_iter().map(|w| w.text).collect()
    }

    #[test]
    fn lines_split_into_plain_words() {
        let table: &[(&str, &[&str])] = &[
            ("house to corner, 14-6", &["house", "to", "corner", ",", "14", "-", "6"]),
            ("10'-6 3/4\"", &["10", "'", "-", "6", "3", "/", "4", "\""]),
            ("7ft4in", &["7", "ft", "4", "in"]),
            ("6' o.c. max", &["6", "'", "oc", "max"]),
            ("the gate's fine", &["the", "gate", "'s", "fine"]),
            ("don't", &["dont"]),
            ("6½", &["6", "1/2"]),
            ("11 1⁄2\"", &["11", "1", "/", "2", "\""]),
            ("10''", &["10", "\""]),
            ("5'10\"\"", &["5", "'", "10", "\""]),
            ("１２ｆｔ", &["12", "ft"]),
            ("1,070 mm", &["1070", "mm"]),
            ("8, 9", &["8", ",", "9"]),
            ("corner->stairs", &["corner", ">", "stairs"]),
            ("88in. in the clear", &["88", "in", ".", "in", "the", "clear"]),
            ("10.6 and .5", &["10.6", "and", ".5"]),
            ("", &[]),
            ("  \t ", &[]),
        ];
        for (line, expected) in table {
            assert_eq!(texts(line), *expected, "{line}");
        }
    }

    #[test]
    fn clusters_of_digits_and_marks_hold_together() {
        let list = words("run 14-2 house>corner -2 36\"h 10:06 sixteen-footer 4w 6k 5+4 ~12");
        let parts: Vec<bool> = (0..list.len()).map(|i| parts_before(&list, i)).collect();
        let shown: String =
            list.iter().zip(parts).map(|(w, p)| format!("{}{}", if p { " " } else { "_" }, w.text)).collect();
        assert_eq!(shown, " run 14_-_2 house > corner -_2 36_\" h 10_:_06 sixteen - footer 4 w 6_k 5 + 4 ~ 12");
    }
}
