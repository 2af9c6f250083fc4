//! The table of what came out of reading lines.

use crate::outcome::Outcome;

/// The table of what came out.
pub fn table(all: &[Outcome]) -> String {
    let share = |n: usize, of: usize| 100.0 * n as f64 / of.max(1) as f64;
    let part = |f: fn(&Outcome) -> bool| share(all.iter().filter(|o| f(o)).count(), all.len());
    let sum = |f: fn(&Outcome) -> (usize, usize)| all.iter().map(f).fold((0, 0), |(a, b), (c, d)| (a + c, b + d));
    let (values, words) = (sum(|o| o.values), sum(|o| o.words));
    let made_up: usize = all.iter().map(|o| o.made_up).sum();
    let mut text = format!("{} lines, {} values, {} words that say something\n", all.len(), values.1, words.1);
    let shares = [
        ("act right", part(|o| o.act)),
        ("wants right", part(|o| o.want)),
        ("value to row right", share(values.0, values.1)),
        ("word to row right", share(words.0, words.1)),
        ("words given a row of none", share(made_up, words.1)),
        ("whole, figures only", part(|o| o.figures)),
        ("whole, everything", part(|o| o.whole)),
        ("a figure said by no value", part(|o| o.lost)),
        ("a word said by no item", part(|o| o.unsaid)),
    ];
    shares.iter().for_each(|(name, share)| text += &format!("{name:28}{share:6.1} %\n"));
    for wrong in [1.0, 3.0, 5.0] {
        let (share, odds) = coverage(all, wrong / 100.0);
        text += &format!("taken at {wrong} % wrong          {:6.1} %  (odds over {odds:.3})\n", 100.0 * share);
    }
    text + &reliability(all)
}

/// By act as read: how many lines, how many right, and how many are taken at each share of wrong ones.
pub fn by_act(all: &[Outcome]) -> String {
    let mut acts: Vec<&str> = all.iter().map(|o| o.does.as_str()).collect();
    acts.sort_unstable();
    acts.dedup();
    let mut text = String::from("act         lines   right    taken at 1 %      3 %      5 % wrong\n");
    for act in acts {
        let some: Vec<Outcome> = all.iter().filter(|o| o.does == act).cloned().collect();
        let right = some.iter().filter(|o| o.whole).count() as f64 / some.len().max(1) as f64;
        let taken = [0.01, 0.03, 0.05].map(|wrong| format!("{:6.1} %", 100.0 * coverage(&some, wrong).0)).join(" ");
        text += &format!("{act:10} {:6} {:5.1} %        {taken}\n", some.len(), 100.0 * right);
    }
    text
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
