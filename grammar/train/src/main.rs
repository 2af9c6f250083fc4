//! `railhand-train [MODE]`. Without a mode: trains on `grammar/talk` and writes `weights.bin` beside it; another folder may be named.
//!
//! - `folds`: how well meanings it has not seen are read; `quick`: the same of a fifth of them.
//! - `fold K N OUT.bin`: writes weights that have not seen the Kth of N parts, and prints the ids of the blocks in it.
//! - `unseen FILE...`: how well the lines of other files are read by what the corpus taught.
//! - `held K N`: the talks of the Kth of N parts, a talk a row, its lines parted by tabs.
//! - `odds FITTED OTHERS`: the odds of the binder's candidates, fitted on one file of comparisons and judged on another (`grammar/README.md`).
//! - `labels`: every line with its own labels, to see what the program makes of a line that is read right.
//! - `unsaid`: the facts that no item of their line says.

use railhand::grammar::scores::{Line, NONE, Scores};
use railhand_train::corpus::{parse, read, source};
use railhand_train::decide;
use railhand_train::folds::{folds, one_fold, read as read_lines, without};
use railhand_train::learn::{Labelled, labelled, part_of, train};
use railhand_train::outcome::Outcome;
use railhand_train::softmax::Recipe;
use railhand_train::table::{by_act, table};
use std::path::{Path, PathBuf};
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
    "the front is 16 foot from the house to the corner and the posts are 4x4",
    "can i put the rail at 34 inches",
];

fn golden_of(bytes: &[u8]) -> Result<String, String> {
    let scores = readable(bytes)?;
    let row = |said: &&str| {
        let guess = scores.guess(&Line::read(said, &[])).ok_or("no labels were learned")?;
        Ok(format!("{said} | {} | {} | {} | {:.4}\n", guess.act, guess.want, guess.rows.join(", "), guess.log))
    };
    GOLDEN.iter().map(row).collect()
}

fn run() -> Result<String, String> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let beside = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../talk"));
    match args.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => write(&beside),
        ["folds"] => Ok(judged(&folds(&lines_of(&beside)?, PARTS, Recipe::default())?)),
        ["quick"] => Ok(table(&one_fold(&lines_of(&beside)?, PARTS, Recipe::default())?)),
        ["fold", part, parts, out] => one_out(&beside, part, parts, Path::new(out)),
        ["unseen", ref files @ ..] => unseen(&lines_of(&beside)?, files),
        ["held", part, parts] => held(&beside, part, parts),
        ["odds", fitted, others] => odds(&beside, Path::new(fitted), Path::new(others)),
        ["labels"] => Ok(labels(&lines_of(&beside)?)),
        ["unsaid"] => Ok(unsaid(&lines_of(&beside)?)),
        [folder] => write(Path::new(folder)),
        _ => Err("railhand-train [FOLDER | folds | quick | fold K N OUT.bin | held K N | odds FITTED OTHERS | unseen FILE... | labels | unsaid]".into()),
    }
}

/// The table of all, and by act.
fn judged(all: &[Outcome]) -> String {
    table(all) + &by_act(all)
}

/// The number of a part, from none, and how many there are.
fn part_and_parts(part: &str, parts: &str) -> Result<(usize, usize), String> {
    let number = |text: &str| text.parse::<usize>().map_err(|e| format!("{text}: {e}"));
    let (part, parts) = (number(part)?, number(parts)?);
    let part = part.checked_sub(1).filter(|p| *p < parts).ok_or(format!("parts go from 1 to {parts}"))?;
    Ok((part, parts))
}

/// The talks of one part.
fn held(folder: &Path, part: &str, parts: &str) -> Result<String, String> {
    let (part, parts) = part_and_parts(part, parts)?;
    let blocks = read(folder)?;
    let talks = blocks.iter().filter(|b| part_of(&b.id, parts) == part).flat_map(|b| &b.talks);
    Ok(talks.map(|talk| talk.join("\t")).collect::<Vec<_>>().join("\n"))
}

/// Writes the odds fitted on one file of comparisons, and says how they do on another.
fn odds(folder: &Path, fitted: &Path, others: &Path) -> Result<String, String> {
    let rows = |file: &Path| {
        let at = |e: &dyn std::fmt::Display| format!("{}: {e}", file.display());
        decide::parse(&std::fs::read_to_string(file).map_err(|e| at(&e))?).map_err(|e| at(&e))
    };
    let weights = decide::fitted(&rows(fitted)?);
    let file = folder.join("odds.weights");
    std::fs::write(&file, decide::written(&weights)).map_err(|e| format!("{}: {e}", file.display()))?;
    Ok(decide::judged(&weights, &rows(others)?))
}

/// Writes weights that have not seen one part of the meanings.
fn one_out(folder: &Path, part: &str, parts: &str, out: &Path) -> Result<String, String> {
    let (part, parts) = part_and_parts(part, parts)?;
    let lines = lines_of(folder)?;
    let bytes = without(&lines, part, parts, Recipe::default(), 0);
    std::fs::write(out, bytes).map_err(|e| format!("{}: {e}", out.display()))?;
    let mut ids: Vec<&str> = lines.iter().map(|l| l.block.as_str()).filter(|b| part_of(b, parts) == part).collect();
    ids.dedup();
    Ok(ids.join("\n"))
}

fn lines_of(folder: &Path) -> Result<Vec<Labelled>, String> {
    let lines = labelled(&read(folder)?);
    if lines.is_empty() { Err(format!("{}: no lines", folder.display())) } else { Ok(lines) }
}

fn readable(bytes: &[u8]) -> Result<Scores, String> {
    Scores::read(bytes).ok_or_else(|| "the weights written cannot be read".to_owned())
}

/// Trains on all and writes the weights, and what they make of a few lines, beside the corpus.
fn write(folder: &Path) -> Result<String, String> {
    let lines = lines_of(folder)?;
    let bytes = train(&lines.iter().collect::<Vec<_>>(), Recipe::default(), source(folder)?);
    let file = folder.join("weights.bin");
    std::fs::write(&file, &bytes).map_err(|e| format!("{}: {e}", file.display()))?;
    let golden = folder.join("weights.golden");
    std::fs::write(&golden, golden_of(&bytes)?).map_err(|e| format!("{}: {e}", golden.display()))?;
    Ok(format!("{} lines, {} bytes in {}", lines.len(), bytes.len(), file.display()))
}

/// How well the lines of other files are read by what the corpus taught.
fn unseen(lines: &[Labelled], files: &[&str]) -> Result<String, String> {
    let scores = readable(&train(&lines.iter().collect::<Vec<_>>(), Recipe::default(), 0))?;
    let mut said = String::new();
    for file in files {
        let text = std::fs::read_to_string(file).map_err(|e| format!("{file}: {e}"))?;
        let others = labelled(&parse(&text).map_err(|e| format!("{file}:{e}"))?);
        said += &format!("{file}\n{}\n", table(&read_lines(&scores, others.iter())));
    }
    Ok(said)
}

/// A line a row: as said, its act, its wants, and for each item that fills a row its first token, the rows and how.
fn labels(lines: &[Labelled]) -> String {
    let of_items = |l: &Labelled| {
        let items = l.line.items.iter().zip(l.aligned.rows.iter().zip(&l.aligned.hows));
        let filled = items.filter(|(_, (row, _))| *row != NONE);
        filled.map(|(item, (row, how))| format!("{}\u{1f}{row}\u{1f}{how}", item.at)).collect::<Vec<_>>().join("\u{1e}")
    };
    let row = |l: &Labelled| [l.said.clone(), l.meaning.act.clone(), l.meaning.wants.join(","), of_items(l)].join("\t");
    lines.iter().map(row).collect::<Vec<_>>().join("\n")
}

/// The lines with a fact that none of their items says.
fn unsaid(lines: &[Labelled]) -> String {
    let lost = lines.iter().flat_map(|l| l.aligned.left.iter().map(|fact| format!("{fact} | {}", l.said)));
    lost.collect::<Vec<_>>().join("\n")
}
