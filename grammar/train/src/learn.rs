//! From blocks to weights.

use crate::align::{Aligned, align};
use crate::corpus::{Block, Meaning};
use crate::pack::pack;
use crate::softmax::{Recipe, learn};
use railhand::grammar::scores::{Line, NONE, act_features, how_features, more_features, row_features, want_features};

/// One line of the corpus, read and labelled.
pub struct Labelled {
    /// The line as written.
    pub said: String,
    /// The line.
    pub line: Line,
    /// What it means.
    pub meaning: Meaning,
    /// The rows of its items.
    pub aligned: Aligned,
    /// The id of its block: lines of one block are never parted.
    pub block: String,
}

impl Labelled {
    /// What it wants first, or [`NONE`].
    pub fn want(&self) -> &str {
        self.meaning.wants.first().map_or(NONE, String::as_str)
    }

    /// What it wants besides, or [`NONE`].
    pub fn more(&self) -> &str {
        self.meaning.wants.get(1).map_or(NONE, String::as_str)
    }
}

/// What the parts are drawn with: the same whatever becomes of the features, so that figures before and after can be compared.
const SEED: [u8; 9] = [3, 0, 0, 0, 0, 0, 0, 0, 0];

/// Which of so many parts a block belongs to, by its id.
pub fn part_of(block: &str, parts: usize) -> usize {
    // Ids that follow one another hash to numbers that are much alike in their low figures: stirred, they part evenly.
    let bytes = SEED.into_iter().chain(block.bytes()).chain([0]);
    let mut hash = bytes.fold(0xcbf2_9ce4_8422_2325, |h: u64, b| (h ^ u64::from(b)).wrapping_mul(0x0100_0000_01b3));
    for by in [0xff51_afd7_ed55_8ccd, 0xc4ce_b9fe_1a85_ec53_u64] {
        hash = (hash ^ (hash >> 33)).wrapping_mul(by);
    }
    ((hash ^ (hash >> 33)) % parts.max(1) as u64) as usize
}

/// Every line of the blocks, in order.
pub fn labelled(blocks: &[Block]) -> Vec<Labelled> {
    let mut out = Vec::new();
    for b in blocks {
        for talk in &b.talks {
            let said: Vec<&str> = talk.iter().map(String::as_str).collect();
            for (i, meaning) in b.meanings.iter().enumerate() {
                let block = b.id.clone();
                let line = Line::read(said[i], &said[..i]);
                let aligned = align(&line, &meaning.facts);
                out.push(Labelled { said: said[i].to_owned(), line, meaning: meaning.clone(), aligned, block });
            }
        }
    }
    out
}

/// Learns from the lines; the weights as bytes, with what they come from.
pub fn train(lines: &[&Labelled], recipe: Recipe, source: u64) -> Vec<u8> {
    let acts = lines.iter().map(|l| (act_features(&l.line), l.meaning.act.clone()));
    let wants = lines.iter().map(|l| (want_features(&l.line, &l.meaning.act), l.want().to_owned()));
    let more = lines.iter().map(|l| (more_features(&l.line, &l.meaning.act, l.want()), l.more().to_owned()));
    let rows = |values: bool| {
        let all = lines.iter().flat_map(|l| l.line.items.iter().zip(&l.aligned.rows).map(move |(i, row)| (l, i, row)));
        let some = all.filter(move |(_, item, _)| item.is_value() == values);
        some.map(|(l, item, row)| (row_features(&l.line, item.at, &l.meaning.act, l.want()), row.clone()))
    };
    let hows = lines.iter().flat_map(|l| {
        let filled = l.aligned.rows.iter().zip(&l.aligned.hows).zip(&l.line.items).filter(|((row, _), _)| *row != NONE);
        filled.map(|((row, how), item)| (how_features(&l.line, item.at, &l.meaning.act, row), how.clone()))
    });
    // One after the other: their examples together would not fit a small machine.
    let models = [
        learn(&acts.collect::<Vec<_>>(), recipe),
        learn(&wants.collect::<Vec<_>>(), recipe),
        learn(&more.collect::<Vec<_>>(), recipe),
        learn(&rows(true).collect::<Vec<_>>(), recipe),
        learn(&rows(false).collect::<Vec<_>>(), recipe),
        learn(&hows.collect::<Vec<_>>(), recipe),
    ];
    pack(models.each_ref(), source)
}
