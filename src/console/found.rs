//! What a job file was found like, in words.

use crate::reply::{safe, wrap};
use crate::store::{KeptDefault, Odd, Opened, What};

/// The most odd lines shown; the rest are counted.
const MOST_SHOWN: usize = 10;

/// What there is to say of a job file, each row ended; nothing where all is well, unless to a
/// person, who hears what the file holds.
pub(super) fn says(opened: &Opened, person: bool, width: usize) -> String {
    let mut rows = Vec::new();
    if person {
        rows.push(holds(opened));
    }
    rows.extend(opened.kept.iter().map(|kept| format!("{} {}", opened.store.name(), kept_line(kept))));
    rows.extend(opened.odd.iter().take(MOST_SHOWN).map(|odd| format!("{} {}", opened.store.name(), odd_line(odd))));
    if opened.odd.len() > MOST_SHOWN {
        rows.push(format!("{} {} more lines like these", opened.store.name(), opened.odd.len() - MOST_SHOWN));
    }
    if let Some(why) = &opened.trouble {
        let name = opened.store.name();
        rows.push(format!("{name}: nothing is kept in it for now: {}. I go on in memory.", why.says()));
    }
    rows.iter().map(|row| wrap("", &safe(row), 2, width) + "\n").collect()
}

fn holds(opened: &Opened) -> String {
    let lines = |n: usize| format!("{n} {}", if n == 1 { "line" } else { "lines" });
    match opened.store.counts() {
        (0, 0) => format!("{}: nothing told yet.", opened.store.name()),
        (told, 0) => format!("{}: {} told.", opened.store.name(), lines(told)),
        (told, aside) => {
            format!("{}: {} told, {} set aside behind a \"?\".", opened.store.name(), lines(told), lines(aside))
        }
    }
}

/// What a newer edition of the defaults would take otherwise, and what is kept.
fn kept_line(kept: &KeptDefault) -> String {
    let KeptDefault { kept, newest } = kept;
    format!(
        "was made under older defaults: I keep \"{kept}\"; not told, it would be \"{newest}\" now. Tell me the one you want."
    )
}

fn odd_line(odd: &Odd) -> String {
    let read_as = match &odd.what {
        What::ReadAs(phrase) => format!(" -> {phrase}"),
        _ => String::new(),
    };
    format!("line {}: {}: \"{}\"{read_as}", odd.line, odd.what.says(), odd.words.as_str())
}
