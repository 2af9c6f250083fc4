//! What was read of a line already, so that no stretch of items is parsed twice.
//!
//! A line is cut into items in many ways, and most of two cuts are the same. What
//! starts at an item depends only on the items the parsers looked at; where those come
//! again, in another cut, so does the result. Most parsers look at a few items; the few
//! that look over the rest of the line are read again where another cut differs far behind.

use super::atoms::In;
use super::{Item, Piece, parsers, read};
use crate::grammar::ahead::Watch;
use crate::grammar::effort::Effort;
use std::collections::HashMap;
use std::rc::Rc;

/// How many items a parser may look at and still be one of those that look near.
const NEAR: usize = 10;

/// The stretches of one line read so far, by the item they start at, and the work it took.
#[derive(Debug)]
pub struct Known<'a> {
    whole: HashMap<u32, Vec<Stretch<Rc<[Piece]>>>>,
    near: HashMap<u32, Vec<Stretch<Rc<Near>>>>,
    effort: &'a Effort,
}

/// Items looked at, and what was read at the first of them.
#[derive(Debug)]
struct Stretch<T> {
    looked_at: Vec<u32>,
    is: T,
}

/// What the parsers that look near made of an item; and those that looked further.
#[derive(Debug, Default)]
struct Near {
    found: Vec<(usize, Piece)>,
    far: Vec<usize>,
}

impl<'a> Known<'a> {
    /// Nothing read yet.
    pub fn new(effort: &'a Effort) -> Known<'a> {
        Known { whole: HashMap::new(), near: HashMap::new(), effort }
    }

    /// The work done on the line.
    pub fn effort(&self) -> &'a Effort {
        self.effort
    }

    /// What starts at the first of the items; read only where it is not known.
    pub(super) fn or_read(&mut self, items: &[Item]) -> Rc<[Piece]> {
        let Some(first) = items.first() else { return Rc::new([]) };
        let whole = self.whole.entry(first.id).or_default();
        if let Some(pieces) = find(whole, items, self.effort) {
            return pieces;
        }
        let nears = self.near.entry(first.id).or_default();
        let known = find(nears, items, self.effort);
        let (near, mut looked) = match known {
            Some(near) => (near, 0),
            None => {
                let (near, looked) = read_near(items, self.effort);
                nears.push(Stretch { looked_at: ids(items, looked), is: near.clone() });
                (near, looked)
            }
        };
        // Known by as many items as any near parser may have looked at.
        looked = looked.max(NEAR.min(items.len()));
        let mut found = near.found.clone();
        for nth in &near.far {
            let (piece, far) = watched(*nth, items, self.effort);
            looked = looked.max(far);
            found.extend(piece.map(|p| (*nth, p)));
        }
        found.sort_by_key(|(nth, _)| *nth);
        let pieces: Rc<[Piece]> = found.into_iter().map(|(_, p)| p).collect();
        whole.push(Stretch { looked_at: ids(items, looked), is: pieces.clone() });
        pieces
    }
}

/// What every parser that looks near makes of the items, and how many of them they looked at.
fn read_near(items: &[Item], effort: &Effort) -> (Rc<Near>, usize) {
    let (mut near, mut most) = (Near::default(), 0);
    for nth in 0..parsers() {
        let (piece, looked) = watched(nth, items, effort);
        if looked > NEAR {
            near.far.push(nth);
        } else {
            most = most.max(looked);
            near.found.extend(piece.map(|p| (nth, p)));
        }
    }
    (Rc::new(near), most)
}

/// What one parser makes of the items, and how many of them it looked at.
fn watched(nth: usize, items: &[Item], effort: &Effort) -> (Option<Piece>, usize) {
    let watch = Watch::new(effort);
    let piece = read(nth, In::watched(items, &watch));
    // The item with the fewest ahead of it, itself among them, was the last one looked at; one past the end is the end.
    (piece, (items.len() + 1).saturating_sub(watch.least()))
}

/// What is known of these items: what was read where the same ones were looked at.
fn find<T: Clone>(stretches: &[Stretch<T>], items: &[Item], effort: &Effort) -> Option<T> {
    effort.spend(stretches.len());
    let same = |s: &&Stretch<T>| {
        s.looked_at.len() <= items.len() && s.looked_at.iter().zip(items).all(|(id, item)| *id == item.id)
    };
    stretches.iter().find(same).map(|s| s.is.clone())
}

fn ids(items: &[Item], looked: usize) -> Vec<u32> {
    items.iter().take(looked).map(|i| i.id).collect()
}
