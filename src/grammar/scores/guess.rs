//! The likeliest reading of a line.

use super::{How, Line, NONE, Scores};

/// One reading of a line: the likeliest labels taken together.
#[derive(Clone, Debug, PartialEq)]
pub struct Guess<'a> {
    /// What the line does.
    pub act: &'a str,
    /// The row, topic or list it wants, or [`NONE`].
    pub want: &'a str,
    /// What it wants besides, or [`NONE`].
    pub more: &'a str,
    /// For each item of the line, in order, its row (two joined by a plus) or [`NONE`].
    pub rows: Vec<&'a str>,
    /// For each item how it fills its row; [`How::Set`] where it fills none.
    pub hows: Vec<How<'a>>,
    /// The natural logarithm of the reading's probability.
    pub log: f32,
}

/// How many acts, and of each how many wants, a guess looks at.
const LOOKED_AT: usize = 3;

impl Scores {
    /// The likeliest reading of the line, act, wants and rows judged together; `None` where the weights hold no labels.
    pub fn guess(&self, line: &Line) -> Option<Guess<'_>> {
        let mut all: Vec<Guess<'_>> = Vec::new();
        for (act, act_log) in self.score_act(line).into_iter().take(LOOKED_AT) {
            for (want, want_log) in self.score_want(line, act).into_iter().take(LOOKED_AT) {
                all.push(self.filled(line, (act, act_log), (want, want_log))?);
            }
        }
        all.sort_by(|a, b| b.log.total_cmp(&a.log));
        all.into_iter().next()
    }

    /// The likeliest rows for an act and a want.
    fn filled<'a>(&'a self, line: &Line, act: (&'a str, f32), want: (&'a str, f32)) -> Option<Guess<'a>> {
        let ((act, act_log), (want, want_log)) = (act, want);
        let (more, more_log) = self.score_more(line, act, want).into_iter().next().unwrap_or((NONE, 0.0));
        let log = act_log + want_log + more_log;
        let mut guess = Guess { act, want, more, rows: Vec::new(), hows: Vec::new(), log };
        for item in &line.items {
            let (row, log) = self.score_row(line, item.at, act, want).into_iter().next()?;
            guess.rows.push(row);
            let how = if row == NONE { None } else { self.score_how(line, item.at, act, row).into_iter().next() };
            guess.log += log + how.map_or(0.0, |(_, log)| log);
            guess.hows.push(how.map_or(How::Set, |(how, _)| How::of(how)));
        }
        Some(guess)
    }
}
