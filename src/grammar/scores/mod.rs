//! How likely a line's act, what it wants and the rows of its items are, learned from `grammar/talk/`.
//!
//! Log-linear models, one given the other: the act of the line; what is wanted, given the act, and what is wanted besides; the row
//! of each item, given act and want; how the item fills that row. So their product is the probability of the whole reading.
//! Nothing here decides: it ranks. The weights are written by the trainer under `grammar/train/`, which shares this reading of
//! lines and its features.

mod among;
mod bits;
mod concept;
mod features;
mod guess;
mod how;
mod item;
mod line;
mod of_how;
mod of_item;
mod of_line;
mod shape;
mod source;
mod spelled;
mod stem;
mod value;
mod weights;

pub use bits::MOST_ONES;
pub use features::Features;
pub use guess::Guess;
pub use how::How;
pub use item::{Is, Item};
pub use line::{Line, Token};
pub use of_how::how_features;
pub use of_item::row_features;
pub use of_line::{act_features, more_features, want_features};
pub use shape::Shape;
pub use source::{FEATURES, source_of};
pub use stem::stem;
pub use value::{Reading, Value};
pub use weights::{Model, sizes};

use std::sync::LazyLock;

/// The label for a line that wants nothing, and for an item that fills no row.
pub const NONE: &str = "none";

/// How many models there are.
pub const MODELS: usize = 6;

/// The learned scores.
#[derive(Clone, Debug)]
pub struct Scores {
    act: Model,
    want: Model,
    more: Model,
    row: Model,
    place: Model,
    how: Model,
    source: u64,
}

static SHIPPED: LazyLock<Option<Scores>> = LazyLock::new(|| match other_weights() {
    Some(bytes) => Scores::read(&bytes),
    None => Scores::read(include_bytes!("../../../grammar/talk/weights.bin")),
});

/// Weights that have not seen some of the corpus, so that it can be read as if it were new.
#[cfg(feature = "fold-weights")]
fn other_weights() -> Option<Vec<u8>> {
    std::fs::read(std::env::var_os("RAILHAND_WEIGHTS")?).ok()
}

/// There are no others.
#[cfg(not(feature = "fold-weights"))]
fn other_weights() -> Option<Vec<u8>> {
    None
}

/// The scores the program brings with it, read when first asked for; `None` where the weights were spoilt.
pub fn shipped() -> Option<&'static Scores> {
    SHIPPED.as_ref()
}

impl Scores {
    /// Reads weights in the form `weights.rs` describes; `None` where the bytes are not in it.
    pub fn read(bytes: &[u8]) -> Option<Scores> {
        let weights::Read { source, models: [act, want, more, row, place, how] } = weights::read(bytes)?;
        Some(Scores { act, want, more, row, place, how, source })
    }

    /// What the weights were learned from: [`source_of`] the corpus.
    pub fn source(&self) -> u64 {
        self.source
    }

    /// The acts of the line with their log-probabilities, likeliest first.
    pub fn score_act(&self, line: &Line) -> Vec<(&str, f32)> {
        self.act.score(&act_features(line))
    }

    /// What is wanted, given the act, with log-probabilities, likeliest first.
    pub fn score_want(&self, line: &Line, act: &str) -> Vec<(&str, f32)> {
        self.want.score(&want_features(line, act))
    }

    /// What is wanted besides, given the act and what is wanted first; [`NONE`] for nothing.
    pub fn score_more(&self, line: &Line, act: &str, want: &str) -> Vec<(&str, f32)> {
        self.more.score(&more_features(line, act, want))
    }

    /// The row of the item that begins at token `at`, given act and want, with log-probabilities, likeliest first. A word may fill
    /// two rows: "run-from+run-to" of "between the corners".
    pub fn score_row(&self, line: &Line, at: usize, act: &str, want: &str) -> Vec<(&str, f32)> {
        let word = line.item(at).is_some_and(|item| !item.is_value());
        let model = if word { &self.place } else { &self.row };
        model.score(&row_features(line, at, act, want))
    }

    /// How the item that begins at token `at` fills this row, given the act; [`How::of`] reads the label.
    pub fn score_how(&self, line: &Line, at: usize, act: &str, row: &str) -> Vec<(&str, f32)> {
        self.how.score(&how_features(line, at, act, row))
    }

    /// How many weights the models hold, and how many labels: act, want, what besides, row of a
    /// figure, row of a word, how.
    pub fn size(&self) -> [(usize, usize); MODELS] {
        [&self.act, &self.want, &self.more, &self.row, &self.place, &self.how].map(|m| (m.size(), m.labels().len()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The trainer wrote these beside the weights: a line, its act, its want, the rows of its items, the log of the odds.
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
