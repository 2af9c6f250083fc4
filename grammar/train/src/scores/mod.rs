//! How likely a line's act, what it wants and the rows of its values are, learned from `grammar/talk/`.
//!
//! Three log-linear models, one given the other: the act of the line; what is wanted, given the act; the row of each
//! value, given both. So their product is the probability of the whole reading. Nothing here decides: it ranks.

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

/// The label for a line that wants nothing, and for a value that fills no row.
pub const NONE: &str = "none";

/// The learned scores.
#[derive(Clone, Debug)]
pub struct Scores {
    act: Model,
    want: Model,
    row: Model,
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
    /// Reads weights in the form of [`weights`]; `None` where the bytes are not in it.
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
