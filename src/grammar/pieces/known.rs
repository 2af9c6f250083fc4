//! What was read of a line already, so that no stretch of items is parsed twice.
//!
//! A line is cut into items in many ways, and most of two cuts are the same. What
//! starts at an item depends only on the items the parsers looked at; where those come
//! again, in another cut, so does the result.

use super::atoms::In;
use super::{Item, Piece, read};
use std::cell::Cell;
use std::collections::HashMap;
use std::rc::Rc;

/// The stretches of one line read so far, by the item they start at.
#[derive(Debug, Default)]
pub struct Known(HashMap<u32, Vec<Stretch>>);

/// Items looked at, and what starts at the first of them.
#[derive(Debug)]
struct Stretch {
    looked_at: Vec<u32>,
    pieces: Rc<[Piece]>,
}

impl Known {
    /// What starts at the first of the items; read only where it is not known.
    pub(super) fn or_read(&mut self, items: &[Item]) -> Rc<[Piece]> {
        let Some(first) = items.first() else { return Rc::new([]) };
        let same = |s: &&Stretch| {
            s.looked_at.len() <= items.len() && s.looked_at.iter().zip(items).all(|(id, item)| *id == item.id)
        };
        let stretches = self.0.entry(first.id).or_default();
        if let Some(known) = stretches.iter().find(same) {
            return known.pieces.clone();
        }
        let least = Cell::new(usize::MAX);
        let pieces: Rc<[Piece]> = read(In::watched(items, &least)).into();
        // The item with `least` ahead of it, itself among them, was the last one looked at.
        let looked = (items.len() + 1).saturating_sub(least.get()).min(items.len());
        let looked_at = items[..looked].iter().map(|i| i.id).collect();
        stretches.push(Stretch { looked_at, pieces: pieces.clone() });
        pieces
    }
}
