//! What a builder's own words must be, to stand in a plain phrase without breaking it.

/// Words that begin or mark an item of a run: a comma lost before one of them must not
/// turn the item into part of the name in silence.
const NOT_IN_A_NAME: [&str; 13] =
    ["called", "off", "turning", "measured", "from", "to", "gate", "no", "stairs", "bays", "mm", "post", "posts"];

/// A note's words made safe: one line, single blanks, no ";" (a comma instead, for ";" parts
/// facts), no control or hidden characters. `None` when nothing is left to note.
///
/// Cleaning what is clean changes nothing.
pub fn clean_note(said: &str) -> Option<String> {
    let plain = said.chars().filter(|c| !is_hidden(*c)).map(|c| match c {
        ';' => ',',
        c if c.is_control() => ' ',
        c => c,
    });
    single_blanks(&plain.collect::<String>())
}

/// A run's name made safe: lower-case words of letters, digits, hyphens and apostrophes, with
/// single blanks, at least one letter, and none of the words that begin an item of a run.
/// `None` when that leaves no name, or when such a word is in it.
///
/// Cleaning what is clean changes nothing.
pub fn clean_name(said: &str) -> Option<String> {
    let in_name = |c: char| c.is_alphanumeric() || c == '-' || c == '\'';
    let plain = said.to_lowercase().replace(|c| !in_name(c), " ");
    let name = single_blanks(&plain)?;
    let taken = name.split(' ').any(|word| NOT_IN_A_NAME.contains(&word));
    (!taken && name.chars().any(char::is_alphabetic)).then_some(name)
}

/// Zero-width and direction-turning characters: on a screen they make a line read as
/// something it is not. From memory of the Unicode "Cf" category.
fn is_hidden(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}')
}

fn single_blanks(text: &str) -> Option<String> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    (!text.is_empty()).then_some(text)
}
