//! `railhand-train [folds] [FOLDER]`: trains on the corpus and writes `weights.bin` beside it, or prints how well
//! meanings it has not seen are read.

use railhand::grammar::scores::{Line, Scores};
use railhand_train::folds::{folds, table};
use railhand_train::learn::{Labelled, labelled, train};
use railhand_train::softmax::Recipe;
use std::path::PathBuf;
use std::process::ExitCode;

const PARTS: usize = 5;

fn main() -> ExitCode {
    match run() {
        Ok(said) => {
            println!("{said}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

/// Lines whose labels and odds are written beside the weights: the program must come to the same.
const GOLDEN: [&str; 3] = [
    "whats the gap with 13 balusters 1 1/2 wide in a 72 inch bay",
    "the front is 16 foot and the posts are 4x4",
    "can i put the rail at 34 inches",
];

fn golden_of(bytes: &[u8]) -> Result<String, String> {
    let scores = Scores::read(bytes).ok_or("the weights written cannot be read")?;
    let row = |said: &&str| {
        let guess = scores.guess(&Line::read(said, &[])).ok_or("no labels were learned")?;
        Ok(format!("{said} | {} | {} | {} | {:.4}\n", guess.act, guess.want, guess.rows.join(", "), guess.log))
    };
    GOLDEN.iter().map(row).collect()
}

fn run() -> Result<String, String> {
    let mut args: Vec<String> = std::env::args().skip(1).collect();
    let parted = args.first().is_some_and(|a| a == "folds");
    if parted {
        args.remove(0);
    }
    let beside = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../talk"));
    let folder = args.first().map_or(beside, PathBuf::from);
    let lines = labelled(&railhand_train::corpus::read(&folder)?);
    if lines.is_empty() {
        return Err(format!("{}: no lines", folder.display()));
    }
    if parted {
        return Ok(table(&folds(&lines, PARTS, Recipe::default())?));
    }
    let all: Vec<&Labelled> = lines.iter().collect();
    let bytes = train(&all, Recipe::default());
    let file = folder.join("weights.bin");
    std::fs::write(&file, &bytes).map_err(|e| format!("{}: {e}", file.display()))?;
    let golden = folder.join("weights.golden");
    std::fs::write(&golden, golden_of(&bytes)?).map_err(|e| format!("{}: {e}", golden.display()))?;
    Ok(format!("{} lines, {} bytes in {}", lines.len(), bytes.len(), file.display()))
}
