//! How likely a line's act, what it wants and the rows of its values are, learned from `grammar/talk/`.
//!
//! Three log-linear models, one given the other: the act of the line; what is wanted, given the act; the row of each
//! value, given both. So their product is the probability of the whole reading. Nothing here decides: it ranks.
//! The weights are written by the trainer under `grammar/train/`, which shares this reading of lines and its features.

mod concept;
mod features;
mod line;
mod of_line;
mod of_value;
mod shape;
mod stem;
mod value;
mod weights;

pub use features::Features;
pub use line::{Line, Token};
pub use of_line::{act_features, want_features};
pub use of_value::row_features;
pub use shape::Shape;
pub use stem::stem;
pub use value::{Reading, Value};
pub use weights::Model;

use std::sync::LazyLock;

/// The label for a line that wants nothing, and for a value that fills no row.
pub const NONE: &str = "none";

/// The learned scores.
#[derive(Clone, Debug)]
pub struct Scores {
    act: Model,
    want: Model,
    row: Model,
}

static SHIPPED: LazyLock<Option<Scores>> =
    LazyLock::new(|| Scores::read(include_bytes!("../../../grammar/talk/weights.bin")));

/// The scores the program brings with it, read when first asked for; `None` where the weights were spoilt.
pub fn shipped() -> Option<&'static Scores> {
    SHIPPED.as_ref()
}

/// One reading of a line: the likeliest labels taken together.
#[derive(Clone, Debug, PartialEq)]
pub struct Guess<'a> {
    /// What the line does.
    pub act: &'a str,
    /// The row, topic or list it wants, or [`NONE`].
    pub want: &'a str,
    /// For each value of the line, in order, its row or [`NONE`].
    pub rows: Vec<&'a str>,
    /// The natural logarithm of the reading's probability.
    pub log: f32,
}

/// How many acts, and of each how many wants, a guess looks at.
const LOOKED_AT: usize = 3;

impl Scores {
    /// Reads weights in the form `weights.rs` describes; `None` where the bytes are not in it.
    pub fn read(bytes: &[u8]) -> Option<Scores> {
        let [act, want, row] = weights::read(bytes)?;
        Some(Scores { act, want, row })
    }

    /// The acts of the line with their log-probabilities, likeliest first.
    pub fn score_act(&self, line: &Line) -> Vec<(&str, f32)> {
        self.act.score(&act_features(line))
    }

    /// What is wanted, given the act, with log-probabilities, likeliest first.
    pub fn score_want(&self, line: &Line, act: &str) -> Vec<(&str, f32)> {
        self.want.score(&want_features(line, act))
    }

    /// The row of the value at token `at`, given act and want, with log-probabilities, likeliest first.
    pub fn score_row(&self, line: &Line, at: usize, act: &str, want: &str) -> Vec<(&str, f32)> {
        self.row.score(&row_features(line, at, act, want))
    }

    /// How many weights the three models hold, and how many labels: act, want, row.
    pub fn size(&self) -> [(usize, usize); 3] {
        [&self.act, &self.want, &self.row].map(|m| (m.size(), m.labels().len()))
    }

    /// The likeliest reading of the line, act, want and rows judged together; `None` where the weights hold no labels.
    pub fn guess(&self, line: &Line) -> Option<Guess<'_>> {
        let mut best: Option<Guess<'_>> = None;
        for (act, act_log) in self.score_act(line).into_iter().take(LOOKED_AT) {
            for (want, want_log) in self.score_want(line, act).into_iter().take(LOOKED_AT) {
                let mut guess = Guess { act, want, rows: Vec::new(), log: act_log + want_log };
                for at in line.values() {
                    let (row, log) = self.score_row(line, at, act, want).into_iter().next()?;
                    guess.rows.push(row);
                    guess.log += log;
                }
                if best.as_ref().is_none_or(|b| guess.log > b.log) {
                    best = Some(guess);
                }
            }
        }
        best
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The trainer wrote these beside the weights: a line, its act, its want, the rows of its values, the log of the odds.
    const GOLDEN: &str = include_str!("../../../grammar/talk/weights.golden");

    #[test]
    fn the_program_scores_lines_as_the_trainer_did() {
        let scores = shipped().expect("the weights are in their form");
        assert_eq!(GOLDEN.lines().count(), 3);
        for row in GOLDEN.lines() {
            let [said, act, want, rows, log] = row.split(" | ").collect::<Vec<_>>()[..] else { panic!("{row}") };
            let guess = scores.guess(&Line::read(said, &[])).expect("labels");
            assert_eq!((guess.act, guess.want, guess.rows.join(", ").as_str()), (act, want, rows), "{said}");
            let written: f32 = log.parse().expect("a number");
            assert!((guess.log - written).abs() < 1e-3, "{said}: {}", guess.log);
        }
    }

    #[test]
    fn a_word_that_names_the_row_moves_its_odds() {
        let scores = shipped().expect("the weights are in their form");
        let odds = |said: &str, row: &str| {
            let line = Line::read(said, &[]);
            let at = line.values().next().expect("a value");
            scores.score_row(&line, at, "tell", NONE).into_iter().find(|(r, _)| *r == row).map(|(_, log)| log)
        };
        assert!(odds("the gate is 36 inches", "gate-width") > odds("the rail is 36 inches", "gate-width"));
        assert!(odds("the kerf is 1/8", "kerf") > odds("the decking is 1/8", "kerf"));
    }
}
