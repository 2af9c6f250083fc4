//! Learned weights to bytes: the small ones dropped, the rest rounded to a signed byte. The form stands in
//! `src/grammar/scores/weights.rs`.

use crate::softmax::Learned;
use railhand::grammar::scores::MODELS;

/// The most weights each model keeps: act, want, what besides, row of a figure, row of
/// a word, how. About two bytes each, and under 1 MB with the hashes.
pub const KEPT: [usize; MODELS] = [28_000, 70_000, 4_000, 120_000, 45_000, 8_000];

/// The bytes of the models: act, want, what besides, row of a figure, row of a word, how.
pub fn pack(models: [&Learned; MODELS], source: u64) -> Vec<u8> {
    let mut out = b"RHS4".to_vec();
    out.extend(source.to_le_bytes());
    models.into_iter().zip(KEPT).for_each(|(model, most)| pack_one(model, most, &mut out));
    out
}

fn pack_one(model: &Learned, most: usize, out: &mut Vec<u8>) {
    count(model.labels.len(), out);
    for label in &model.labels {
        count(label.len(), out);
        out.extend(label.bytes());
    }
    let mut sizes: Vec<f32> = model.weights.iter().map(|w| w.abs()).filter(|w| *w > 0.0).collect();
    sizes.sort_by(|a, b| b.total_cmp(a));
    let scale = sizes.first().map_or(1.0, |most| most / 127.0);
    let least = sizes.get(most).copied().unwrap_or(0.0);
    out.extend(scale.to_le_bytes());
    let rows: Vec<(u32, Vec<(usize, i8)>)> = model
        .hashes
        .iter()
        .zip(model.weights.chunks(model.labels.len().max(1)))
        .map(|(hash, row)| (*hash, kept(row, least, scale)))
        .filter(|(_, row)| !row.is_empty())
        .collect();
    count(rows.len(), out);
    let mut before = 0;
    for (hash, row) in rows {
        count((hash - before) as usize, out);
        before = hash;
        count(row.len(), out);
        let mut last = 0;
        for (label, weight) in row {
            count(label - last, out);
            last = label;
            out.extend(weight.to_le_bytes());
        }
    }
}

fn kept(row: &[f32], least: f32, scale: f32) -> Vec<(usize, i8)> {
    let large = row.iter().enumerate().filter(|(_, w)| w.abs() > least);
    large.map(|(label, w)| (label, (w / scale).round() as i8)).filter(|(_, w)| *w != 0).collect()
}

/// LEB128.
fn count(mut n: usize, out: &mut Vec<u8>) {
    while n >= 0x80 {
        out.push(n as u8 | 0x80);
        n >>= 7;
    }
    out.push(n as u8);
}
