//! The likeliest reading of a line.

use super::odds::{MARKS, Marks, WRONG};
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
    /// What its odds are judged by.
    pub marks: Marks,
    /// How far the next best choice for any of its items is behind.
    closest: f32,
}

/// How many acts, and of each how many wants, a guess looks at.
const LOOKED_AT: usize = 3;

/// A margin over this is no surer.
const FAR: f32 = 5.0;

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
        let second = all.get(1).map(|g| g.log);
        let mut best = all.into_iter().next()?;
        let behind = second.map_or(FAR, |log| best.log - log).min(best.closest).min(FAR);
        best.marks[6] = behind;
        best.marks[9] = self.unseen(line);
        Some(best)
    }

    /// The probability that the reading is right, as it came out on meanings the scores had not seen.
    pub fn odds(&self, guess: &Guess) -> f32 {
        self.of_act(guess.act).map_or(0.0, |odds| odds.of(&guess.marks))
    }

    /// The least odds at which no more than so many of a hundred readings of this act were wrong, for 1, 3 and 5; `None` for others,
    /// and where no readings were so sure.
    pub fn sure(&self, act: &str, wrong: u8) -> Option<f32> {
        let at = WRONG.iter().position(|w| *w == wrong)?;
        self.of_act(act)?.sure.get(at).copied().filter(|odds| *odds <= 1.0)
    }

    /// The likeliest rows for an act and a want.
    fn filled<'a>(&'a self, line: &Line, act: (&'a str, f32), want: (&'a str, f32)) -> Option<Guess<'a>> {
        let ((act, act_log), (want, want_log)) = (act, want);
        let (more, more_log) = self.score_more(line, act, want).into_iter().next().unwrap_or((NONE, 0.0));
        let mut guess = Guess {
            act,
            want,
            more,
            rows: Vec::new(),
            hows: Vec::new(),
            log: act_log + want_log + more_log,
            marks: [0.0; MARKS],
            closest: FAR,
        };
        let mut logs = Vec::new();
        for item in &line.items {
            let scored = self.score_row(line, item.at, act, want);
            let (row, log) = *scored.first()?;
            guess.closest = guess.closest.min(scored.get(1).map_or(FAR, |(_, next)| log - next));
            guess.rows.push(row);
            let how = if row == NONE { None } else { self.score_how(line, item.at, act, row).into_iter().next() };
            logs.push(log + how.map_or(0.0, |(_, log)| log));
            guess.hows.push(how.map_or(How::Set, |(how, _)| How::of(how)));
        }
        let sum: f32 = logs.iter().sum();
        guess.log += sum;
        let filled = |values: bool| {
            let some = line.items.iter().zip(&guess.rows).filter(|(i, row)| i.is_value() == values && **row != NONE);
            some.count() as f32 / 4.0
        };
        let least = logs.iter().copied().fold(0.0, f32::min);
        let mean = sum / logs.len().max(1) as f32;
        guess.marks = [1.0, act_log, want_log, more_log, least, mean, 0.0, filled(true), filled(false), 0.0];
        Some(guess)
    }
}
