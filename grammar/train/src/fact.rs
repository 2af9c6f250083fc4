//! What a fact of the corpus says.

use railhand::grammar::measures::measures_at;
use railhand::grammar::scores::{How, Reading};
use railhand::grammar::words::words;
use railhand::measure::{Meaning, Q};

/// A fact of a meaning.
pub struct Fact {
    /// Its row.
    pub row: String,
    /// What is said of it.
    pub said: Said,
    /// Row and value as the corpus writes them.
    pub written: String,
}

/// What is said of a row.
pub enum Said {
    /// A figure.
    Figure(Reading),
    /// More or less by so much, or so many times as much.
    Change(How<'static>, Reading),
    /// Nothing of it.
    Nothing,
    /// It is named, and no more.
    Named,
    /// A place, a choice, a name.
    Words(String),
}

impl Fact {
    /// The fact as the corpus writes it.
    pub fn of(row: &str, value: &str) -> Fact {
        let sign = match value.chars().next() {
            Some('+') => Some(How::Add),
            Some('-') => Some(How::Less),
            Some('*') => Some(How::Times),
            _ => None,
        };
        let said = match (value, sign, figure(value.trim_start_matches(['+', '-', '*']))) {
            ("none", ..) => Said::Nothing,
            ("true", ..) => Said::Named,
            (_, Some(how), Some(figure)) => Said::Change(how, figure),
            (_, None, Some(figure)) => Said::Figure(figure),
            _ => Said::Words(value.to_lowercase()),
        };
        Fact { row: row.to_owned(), said, written: format!("{row} {value}") }
    }

    /// True where a figure says it.
    pub fn is_figure(&self) -> bool {
        matches!(self.said, Said::Figure(_) | Said::Change(..))
    }
}

/// The figure a value is; `None` for words.
fn figure(plain: &str) -> Option<Reading> {
    let words = words(plain);
    let whole = measures_at(&words, 0).into_iter().find(|i| i.end == words.len())?;
    match whole.measure.meaning {
        Meaning::Bare(n) => Some(Reading::Number(n.value)),
        Meaning::Length(l, _) => Some(Reading::Length(l)),
        Meaning::Lumber(l) => Some(Reading::Lumber(l)),
        Meaning::By(..) | Meaning::Doubt(..) => number(plain).map(Reading::Number),
    }
}

/// A plain decimal, whatever a measure would make of it.
fn number(text: &str) -> Option<Q> {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits: i128 = format!("{whole}{part}").parse().ok()?;
    Some(Q::new(digits, 10_i128.checked_pow(u32::try_from(part.len()).ok()?)?))
}
