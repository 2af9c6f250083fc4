//! From blocks to weights.

use crate::align::{Aligned, align};
use crate::corpus::{Block, Meaning};
use crate::pack::pack;
use railhand::grammar::scores::{Line, NONE, act_features, row_features, want_features};
use crate::softmax::{Recipe, learn};

/// One line of the corpus, read and labelled.
pub struct Labelled {
    /// The line.
    pub line: Line,
    /// What it means.
    pub meaning: Meaning,
    /// The rows of its values.
    pub aligned: Aligned,
    /// The number of its block: lines of one block are never parted.
    pub block: usize,
}

impl Labelled {
    /// What it wants first, or [`NONE`].
    pub fn want(&self) -> &str {
        self.meaning.wants.first().map_or(NONE, String::as_str)
    }
}

/// Every line of the blocks, in order.
pub fn labelled(blocks: &[Block]) -> Vec<Labelled> {
    let mut out = Vec::new();
    for (block, b) in blocks.iter().enumerate() {
        for talk in &b.talks {
            let said: Vec<&str> = talk.iter().map(String::as_str).collect();
            for (i, meaning) in b.meanings.iter().enumerate() {
                let line = Line::read(said[i], &said[..i]);
                let aligned = align(&line, &meaning.facts);
                out.push(Labelled { line, meaning: meaning.clone(), aligned, block });
            }
        }
    }
    out
}

/// Learns from the lines; the weights as bytes.
pub fn train(lines: &[&Labelled], recipe: Recipe) -> Vec<u8> {
    let acts: Vec<_> = lines.iter().map(|l| (act_features(&l.line), l.meaning.act.clone())).collect();
    let act = learn(&acts, recipe);
    drop(acts);
    let wants: Vec<_> = lines.iter().map(|l| (want_features(&l.line, &l.meaning.act), l.want().to_owned())).collect();
    let want = learn(&wants, recipe);
    drop(wants);
    let mut rows = Vec::new();
    for l in lines {
        for (at, row) in l.line.values().zip(&l.aligned.rows) {
            rows.push((row_features(&l.line, at, &l.meaning.act, l.want()), row.clone()));
        }
    }
    pack([&act, &want, &learn(&rows, recipe)])
}
