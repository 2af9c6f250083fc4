//! How one line was read, held against what it means.

use crate::learn::Labelled;
use railhand::grammar::scores::{Guess, How, Line, NONE, Scores};

/// How one line was read.
#[derive(Clone, Debug, Default)]
pub struct Outcome {
    /// What the line was read as doing.
    pub does: String,
    /// The fold it is of.
    pub part: usize,
    /// The act was right.
    pub act: bool,
    /// All that is wanted was right.
    pub want: bool,
    /// How many values got the right row, and how many there are.
    pub values: (usize, usize),
    /// How many words that say something got the right row, and how many there are.
    pub words: (usize, usize),
    /// How many words that say nothing were given a row.
    pub made_up: usize,
    /// Act, first want and every figure's row were right, and no figure was lost; changes and words are not looked at.
    pub figures: bool,
    /// Everything was right: acts, wants, every figure, change, place, choice and name.
    pub whole: bool,
    /// Some figure of the meaning is said by no value.
    pub lost: bool,
    /// Some place, choice or name of the meaning is said by no word.
    pub unsaid: bool,
    /// The probability given to the reading.
    pub odds: f32,
}

/// Reads the line by these scores.
pub fn outcome(scores: &Scores, l: &Labelled) -> Option<Outcome> {
    let guess = scores.guess(&l.line)?;
    let mut out = Outcome {
        does: guess.act.to_owned(),
        act: guess.act == l.meaning.act,
        lost: l.aligned.lost > 0,
        unsaid: l.aligned.unsaid > 0,
        odds: guess.log.exp(),
        ..Outcome::default()
    };
    for ((item, got), row) in l.line.items.iter().zip(&guess.rows).zip(&l.aligned.rows) {
        let right = *got == row.as_str();
        let of = if item.is_value() { &mut out.values } else { &mut out.words };
        if item.is_value() || row != NONE {
            *of = (of.0 + usize::from(right), of.1 + 1);
        } else {
            out.made_up += usize::from(!right);
        }
    }
    let first = guess.want == l.want() && l.meaning.wants.len() < 2;
    out.want = same_wants(&guess, &l.meaning.wants);
    out.figures = out.act && first && !out.lost && out.values.0 == out.values.1;
    let hows: Vec<How> = l.aligned.hows.iter().map(|h| How::of(h)).collect();
    let rows: Vec<&str> = l.aligned.rows.iter().map(String::as_str).collect();
    let told = facts(&l.line, &guess.rows, &guess.hows) == facts(&l.line, &rows, &hows);
    out.whole = out.act && out.want && told && !out.lost && !out.unsaid;
    Some(out)
}

fn same_wants(guess: &Guess, wants: &[String]) -> bool {
    let mut got: Vec<&str> = [guess.want, guess.more].into_iter().filter(|w| *w != NONE).collect();
    let mut right: Vec<&str> = wants.iter().map(String::as_str).collect();
    got.sort_unstable();
    right.sort_unstable();
    got == right
}

/// What the items say, as rows with their values, whichever word says it.
fn facts(line: &Line, rows: &[&str], hows: &[How]) -> Vec<String> {
    let mut out = Vec::new();
    for ((item, rows), how) in line.items.iter().zip(rows).zip(hows) {
        for row in rows.split('+').filter(|r| *r != NONE) {
            out.push(match (item.word(), how) {
                (None, how) => format!("{row} {} {}", item.at, how.label()),
                (Some(word), How::Set) => format!("{row} {word}"),
                (Some(_), How::Words(words)) => format!("{row} {words}"),
                (Some(_), how) => format!("{row} {}", how.label()),
            });
        }
    }
    out.sort_unstable();
    out
}
