//! What was read of a line already, so that no stretch of items is parsed twice.
//!
//! A line is cut into items in many ways, and most of two cuts are the same. What
//! starts at an item depends only on the items the parsers looked at; where those come
//! again, in another cut, so does the result.

use super::atoms::In;
use super::{Item, Piece, read};
use crate::grammar::ahead::Watch;
use crate::grammar::effort::Effort;
use std::collections::HashMap;
use std::rc::Rc;

/// The stretches of one line read so far, by the item they start at, and the work it took.
#[derive(Debug)]
pub struct Known<'a> {
    stretches: HashMap<u32, Vec<Stretch>>,
    effort: &'a Effort,
}

/// Items looked at, and what starts at the first of them.
#[derive(Debug)]
struct Stretch {
    looked_at: Vec<u32>,
    pieces: Rc<[Piece]>,
}

impl<'a> Known<'a> {
    /// Nothing read yet.
    pub fn new(effort: &'a Effort) -> Known<'a> {
        Known { stretches: HashMap::new(), effort }
    }

    /// The work done on the line.
    pub fn effort(&self) -> &'a Effort {
        self.effort
    }

    /// What starts at the first of the items; read only where it is not known.
    pub(super) fn or_read(&mut self, items: &[Item]) -> Rc<[Piece]> {
        let Some(first) = items.first() else { return Rc::new([]) };
        let same = |s: &&Stretch| {
            s.looked_at.len() <= items.len() && s.looked_at.iter().zip(items).all(|(id, item)| *id == item.id)
        };
        let stretches = self.stretches.entry(first.id).or_default();
        self.effort.spend(stretches.len());
        if let Some(known) = stretches.iter().find(same) {
            return known.pieces.clone();
        }
        let watch = Watch::new(self.effort);
        let pieces: Rc<[Piece]> = read(In::watched(items, &watch)).into();
        // The item with the fewest ahead of it, itself among them, was the last one looked at.
        let looked = (items.len() + 1).saturating_sub(watch.least()).min(items.len());
        let looked_at = items[..looked].iter().map(|i| i.id).collect();
        stretches.push(Stretch { looked_at, pieces: pieces.clone() });
        pieces
    }
}
