//! How well lines of unseen meanings are read: the corpus is parted by its blocks, and each part is read by what the
//! others taught.

use crate::learn::{Labelled, part_of, train};
use crate::outcome::{Outcome, outcome};
use crate::softmax::Recipe;
use railhand::grammar::scores::Scores;

/// How many folds are learned at one time.
const AT_ONCE: usize = 2;

/// Reads one part alone.
pub fn one_fold(lines: &[Labelled], parts: usize, recipe: Recipe) -> Result<Vec<Outcome>, String> {
    fold(lines, 0, parts, recipe)
}

/// Reads every line by weights learned from the other folds' blocks.
pub fn folds(lines: &[Labelled], parts: usize, recipe: Recipe) -> Result<Vec<Outcome>, String> {
    let mut out = Vec::new();
    for some in (0..parts).collect::<Vec<_>>().chunks(AT_ONCE) {
        let done: Vec<Result<Vec<Outcome>, String>> = std::thread::scope(|scope| {
            let started: Vec<_> =
                some.iter().map(|part| scope.spawn(move || fold(lines, *part, parts, recipe))).collect();
            started.into_iter().map(|t| t.join().unwrap_or_else(|_| Err("a fold broke off".into()))).collect()
        });
        for part in done {
            out.extend(part?);
        }
    }
    Ok(out)
}

/// Reads one part by what the others taught.
fn fold(lines: &[Labelled], part: usize, parts: usize, recipe: Recipe) -> Result<Vec<Outcome>, String> {
    let bytes = without(lines, part, parts, recipe, 0);
    let scores = Scores::read(&bytes).ok_or("the weights written cannot be read")?;
    eprintln!("fold {} of {parts}: {} bytes, weights and labels {:?}", part + 1, bytes.len(), scores.size());
    let read = read(&scores, lines.iter().filter(|l| part_of(&l.block, parts) == part));
    Ok(read.into_iter().map(|o| Outcome { part, ..o }).collect())
}

/// Weights that have not seen this part.
pub fn without(lines: &[Labelled], part: usize, parts: usize, recipe: Recipe, source: u64) -> Vec<u8> {
    let seen: Vec<&Labelled> = lines.iter().filter(|l| part_of(&l.block, parts) != part).collect();
    train(&seen, recipe, source)
}

/// Reads these lines by these scores.
pub fn read<'a>(scores: &Scores, lines: impl Iterator<Item = &'a Labelled>) -> Vec<Outcome> {
    lines.filter_map(|l| outcome(scores, l)).collect()
}
