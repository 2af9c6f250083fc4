//! A light stemmer: plural, "ing" and "ed" taken off, so that "pickets" and "picket" count as one word.

/// The stem of a word in lower case. It need not be a word: "spacing" and "spaced" are both "spac".
pub fn stem(word: &str) -> String {
    let long = |least: usize| word.chars().count() > least;
    if !word.is_ascii() || !long(3) {
        return word.to_owned();
    }
    if let Some(base) = word.strip_suffix("ies").filter(|_| long(4)) {
        return format!("{base}y");
    }
    for (ending, least) in [("ing", 5), ("ed", 4)] {
        if let Some(base) = word.strip_suffix(ending).filter(|_| long(least)) {
            return undoubled(base).to_owned();
        }
    }
    let singular = match word.strip_suffix("es") {
        Some(base) if long(4) && base.ends_with(['s', 'x', 'z']) => base,
        _ if word.ends_with("ss") || word.ends_with("us") || word.ends_with("is") => word,
        _ => word.strip_suffix('s').unwrap_or(word),
    };
    let silent = singular.strip_suffix('e').filter(|base| base.len() > 2);
    silent.unwrap_or(singular).to_owned()
}

/// "cut" of "cutt": one of two like letters goes, but for "ll" and "ss"; a silent "e" goes.
fn undoubled(base: &str) -> &str {
    let mut last = base.chars().rev();
    match (last.next(), last.next()) {
        (Some(a), Some(b)) if a == b && base.len() > 3 && !matches!(a, 'l' | 's') => &base[..base.len() - 1],
        _ => base.strip_suffix('e').unwrap_or(base),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forms_of_a_word_share_a_stem() {
        let same = [
            ["pickets", "picket"],
            ["spacing", "spaced"],
            ["spaces", "space"],
            ["notching", "notched"],
            ["cutting", "cut"],
            ["boxes", "box"],
            ["bodies", "body"],
            ["rises", "rise"],
        ];
        for [a, b] in same {
            assert_eq!(stem(a), stem(b), "{a} {b}");
        }
    }

    #[test]
    fn short_words_and_endings_of_their_own_stay() {
        for word in ["is", "bay", "less", "this", "radius", "deux"] {
            assert_eq!(stem(word), word);
        }
    }
}
