//! How well lines of unseen meanings are read: the corpus is parted by its blocks, and each part is read by what the
//! others taught.

use crate::learn::{Labelled, train};
use railhand::grammar::scores::Scores;
use crate::softmax::Recipe;

/// How one line was read.
#[derive(Clone, Copy)]
pub struct Outcome {
    /// The act was right.
    pub act: bool,
    /// All that is wanted was right.
    pub want: bool,
    /// How many values got the right row, and how many there are.
    pub rows: (usize, usize),
    /// Act, wants and every figure of the meaning were right.
    pub whole: bool,
    /// Some figure of the meaning is said by no value.
    pub lost: bool,
    /// The probability given to the reading.
    pub odds: f32,
}

/// Reads every line by weights learned from the other folds' blocks.
pub fn folds(lines: &[Labelled], parts: usize, recipe: Recipe) -> Result<Vec<Outcome>, String> {
    let mut out = Vec::new();
    for part in 0..parts {
        let seen: Vec<&Labelled> = lines.iter().filter(|l| l.block % parts != part).collect();
        let bytes = train(&seen, recipe);
        let scores = Scores::read(&bytes).ok_or("the weights written cannot be read")?;
        let unseen = lines.iter().filter(|l| l.block % parts == part);
        out.extend(unseen.filter_map(|l| outcome(&scores, l)));
        eprintln!("fold {} of {parts}: {} bytes, weights and labels {:?}", part + 1, bytes.len(), scores.size());
    }
    Ok(out)
}

fn outcome(scores: &Scores, l: &Labelled) -> Option<Outcome> {
    let guess = scores.guess(&l.line)?;
    let right = guess.rows.iter().zip(&l.aligned.rows).filter(|(got, row)| **got == row.as_str()).count();
    let (act, want) = (guess.act == l.meaning.act, guess.want == l.want() && l.meaning.wants.len() < 2);
    let lost = l.aligned.lost > 0;
    let whole = act && want && !lost && right == guess.rows.len();
    Some(Outcome { act, want, rows: (right, guess.rows.len()), whole, lost, odds: guess.log.exp() })
}

/// The table of what came out.
pub fn table(all: &[Outcome]) -> String {
    let share = |n: usize, of: usize| 100.0 * n as f64 / of.max(1) as f64;
    let part = |f: fn(&Outcome) -> bool| share(all.iter().filter(|o| f(o)).count(), all.len());
    let (right, values) = all.iter().fold((0, 0), |(r, n), o| (r + o.rows.0, n + o.rows.1));
    let mut text = format!("{} lines, {values} values\n", all.len());
    let shares = [
        ("act right", part(|o| o.act)),
        ("wants right", part(|o| o.want)),
        ("value to row right", share(right, values)),
        ("every row of a line right", part(|o| o.rows.0 == o.rows.1 && !o.lost)),
        ("whole line right", part(|o| o.whole)),
        ("a figure said by no value", part(|o| o.lost)),
    ];
    shares.iter().for_each(|(name, share)| text += &format!("{name:28}{share:6.1} %\n"));
    for wrong in [1.0, 5.0] {
        let (share, odds) = coverage(all, wrong / 100.0);
        text += &format!("taken at {wrong} % wrong          {:6.1} %  (odds over {odds:.3})\n", 100.0 * share);
    }
    text + &reliability(all)
}

/// The largest share of lines, the surest first, of which no more than this share are wrong; and the odds of the last.
pub fn coverage(all: &[Outcome], most: f64) -> (f64, f32) {
    let mut surest: Vec<&Outcome> = all.iter().collect();
    surest.sort_by(|a, b| b.odds.total_cmp(&a.odds));
    let (mut wrong, mut best) = (0, (0.0, 1.0));
    for (i, o) in surest.iter().enumerate() {
        wrong += usize::from(!o.whole);
        let next_differs = surest.get(i + 1).is_none_or(|n| n.odds < o.odds);
        if next_differs && wrong as f64 <= most * (i + 1) as f64 {
            best = ((i + 1) as f64 / all.len() as f64, o.odds);
        }
    }
    best
}

/// In ten bins of the odds: how many lines, the mean odds, and how many were right.
fn reliability(all: &[Outcome]) -> String {
    let mut text = String::from("odds          lines   said   right\n");
    for bin in 0..10_usize {
        let inside: Vec<&Outcome> = all.iter().filter(|o| ((o.odds * 10.0) as usize).min(9) == bin).collect();
        let n = inside.len().max(1) as f64;
        let said = inside.iter().map(|o| f64::from(o.odds)).sum::<f64>() / n;
        let right = inside.iter().filter(|o| o.whole).count() as f64 / n;
        let (low, high) = (bin as f64 / 10.0, (bin + 1) as f64 / 10.0);
        text += &format!("{low:.1} to {high:.1}  {:7} {:5.1} % {:5.1} %\n", inside.len(), 100.0 * said, 100.0 * right);
    }
    text
}
