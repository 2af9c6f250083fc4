//! Which value of a line says which fact of its meaning.

use railhand::grammar::measures::measures_at;
use railhand::grammar::words::words;
use railhand::measure::{Length, Meaning, Q};

use railhand::grammar::scores::{Line, NONE, Reading};

/// A line's values with their rows.
pub struct Aligned {
    /// The row of each value in order, or [`NONE`].
    pub rows: Vec<String>,
    /// How many figures of the meaning no value says, or only a value that says another.
    pub lost: usize,
}

/// Puts each fact that is a figure on the value that says it: the fact with the least choice first, a value that says
/// nothing yet before one that does, the likelier reading before the other, the earlier value before the later.
pub fn align(line: &Line, facts: &[(String, String)]) -> Aligned {
    let values: Vec<&[Reading]> = line.tokens.iter().filter_map(|t| t.value.as_ref()).map(|v| &*v.readings).collect();
    let mut figures: Vec<(&str, Vec<(usize, usize)>)> = Vec::new();
    for (row, value) in facts {
        let Some(figure) = figure(value) else { continue };
        let may = values.iter().enumerate().filter_map(|(i, ways)| Some((rank(ways, figure)?, i)));
        figures.push((row, may.collect()));
    }
    figures.sort_by_key(|(_, may)| may.len());
    let mut rows: Vec<Option<&str>> = vec![None; values.len()];
    let mut lost = 0;
    for (row, may) in figures {
        let free = may.iter().filter(|(_, i)| rows[*i].is_none()).min();
        match free {
            Some((_, i)) => rows[*i] = Some(row),
            // "both sides are 8 ft" tells the same row twice by one value.
            None if may.iter().any(|(_, i)| rows[*i] == Some(row)) => {}
            None => lost += 1,
        }
    }
    Aligned { rows: rows.into_iter().map(|r| r.unwrap_or(NONE).to_owned()).collect(), lost }
}

/// The figure a value of the corpus is, its sign left off; `None` for words.
fn figure(text: &str) -> Option<Reading> {
    let plain = text.trim_start_matches(['+', '-', '*']);
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

/// How far down the readings the figure stands.
fn rank(ways: &[Reading], figure: Reading) -> Option<usize> {
    ways.iter().position(|way| match (way, figure) {
        (Reading::Length(a), Reading::Length(b)) => near(*a, b),
        (a, b) => *a == b,
    })
}

/// Metric lengths are written in the corpus to a hundredth of an inch or so.
fn near(a: Length, b: Length) -> bool {
    let apart = a.q() - b.q();
    apart < Q::new(1, 90) && apart > Q::new(-1, 90)
}
