//! How far a reading can be trusted: for each act a logistic over the marks of its readings, fitted on folds.

use crate::outcome::Outcome;
use crate::softmax::exp;
use crate::table::coverage;
use railhand::grammar::scores::{ActOdds, MARKS, Marks, WRONG};
use std::collections::BTreeMap;

/// The odds of each act.
pub type Odds = BTreeMap<String, ActOdds>;

/// How often all readings are gone through.
const ROUNDS: usize = 300;

/// How hard the weights of one act are held to those of all: about so many readings speak for them.
const HELD: f32 = 8.0;

/// Fewer sure readings than this show nothing.
const FEW: usize = 20;

/// Fits the odds on readings of unseen lines; gives the readings with the odds that the other folds' readings give them, too.
pub fn calibrate(all: &[Outcome]) -> (Odds, Vec<Outcome>) {
    let parts = all.iter().map(|o| o.part + 1).max().unwrap_or(0);
    let mut judged = Vec::new();
    for part in 0..parts {
        let others: Vec<&Outcome> = all.iter().filter(|o| o.part != part).collect();
        let odds = fit(&others);
        judged.extend(all.iter().filter(|o| o.part == part).map(|o| Outcome { odds: of(&odds, o), ..o.clone() }));
    }
    let mut odds = fit(&all.iter().collect::<Vec<_>>());
    for (act, of_act) in &mut odds {
        let some: Vec<Outcome> = judged.iter().filter(|o| o.does == *act).cloned().collect();
        of_act.sure = WRONG.map(|wrong| sure(&some, wrong));
    }
    (odds, judged)
}

/// The odds from which on no more than so many of a hundred are wrong; over one where too few are.
fn sure(some: &[Outcome], wrong: u8) -> f32 {
    let (share, odds) = coverage(some, f64::from(wrong) / 100.0);
    if share * some.len() as f64 >= FEW as f64 { odds } else { 2.0 }
}

fn of(odds: &Odds, o: &Outcome) -> f32 {
    odds.get(&o.does).map_or(0.0, |odds| odds.of(&o.marks))
}

/// One logistic for all, and from it one for each act.
fn fit(all: &[&Outcome]) -> Odds {
    let pooled = logistic(all, &[0.0; MARKS], 0.1);
    let mut acts: BTreeMap<&str, Vec<&Outcome>> = BTreeMap::new();
    all.iter().for_each(|o| acts.entry(&o.does).or_default().push(o));
    let one = |some: &Vec<&Outcome>| ActOdds { weights: logistic(some, &pooled, HELD), sure: [2.0; 3] };
    acts.iter().map(|(act, some)| ((*act).to_owned(), one(some))).collect()
}

/// Logistic regression by Adagrad over all readings at once, held to these weights.
fn logistic(some: &[&Outcome], held_to: &Marks, held: f32) -> Marks {
    let mut weights = *held_to;
    let mut squares = [1e-3_f32; MARKS];
    for _ in 0..ROUNDS {
        let mut slope = [0.0_f32; MARKS];
        for o in some {
            let sum: f32 = weights.iter().zip(&o.marks).map(|(w, m)| w * m).sum();
            let said = if sum > 0.0 { 1.0 / (1.0 + exp(-sum)) } else { exp(sum) / (1.0 + exp(sum)) };
            let off = said - f32::from(u8::from(o.whole));
            slope.iter_mut().zip(&o.marks).for_each(|(s, m)| *s += off * m);
        }
        for i in 0..MARKS {
            let g = (slope[i] + held * (weights[i] - held_to[i])) / (some.len() as f32 + held);
            squares[i] += g * g;
            weights[i] -= 0.3 * g / squares[i].sqrt();
        }
    }
    weights
}
