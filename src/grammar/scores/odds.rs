//! How likely a reading is right: a logistic over a few marks of it, one for each act, fitted on meanings the scores had not seen.

/// How many marks a reading has.
pub const MARKS: usize = 10;

/// What a reading is judged by, in this order: one; the logs of the act, of what is wanted and of what is wanted besides; the least
/// and the mean log of its items; the margin to the runner-up; its figures and its words that say something, in fourths; the share
/// of its words no line of the corpus had.
pub type Marks = [f32; MARKS];

/// How often, in a hundred, a reading taken as sure may be wrong, for each threshold kept.
pub const WRONG: [u8; 3] = [1, 3, 5];

/// The odds of one act.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ActOdds {
    /// The weight of each mark.
    pub weights: Marks,
    /// The least odds at which no more than [`WRONG`] of a hundred readings were wrong; over one where there are none.
    pub sure: [f32; 3],
}

impl ActOdds {
    /// The probability that a reading with these marks is right.
    pub fn of(&self, marks: &Marks) -> f32 {
        let sum: f32 = self.weights.iter().zip(marks).map(|(w, m)| w * m).sum();
        1.0 / (1.0 + (-sum).exp())
    }
}
