//! Which posts are the same cut, for cutting in batches.

use super::cut::{Cut, Spot};
use super::feet::{Feet, Foot, Post};
use crate::measure::Length;
use num_rational::Ratio;
use num_traits::Signed;

/// Posts of one cut, by their place in [`Feet::posts`].
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// The posts.
    pub posts: Vec<usize>,
    /// An earlier batch this one is the mirror image of.
    pub mirrors: Option<usize>,
}

/// The posts with a foot, in batches of one cut. An uncut post may be turned on its axis,
/// so cuts that differ by a turn are one; mirror images are not.
pub fn batches(feet: &Feet) -> Vec<Batch> {
    let mut batches: Vec<(Foot, Batch)> = Vec::new();
    for (at, post) in feet.posts.iter().enumerate() {
        let Ok(foot) = &post.foot else { continue };
        match batches.iter_mut().find(|(first, _)| same(first, foot)) {
            Some((_, batch)) => batch.posts.push(at),
            None => {
                let mirrors = batches.iter().position(|(first, _)| same(first, &mirrored(foot)));
                batches.push((foot.clone(), Batch { posts: vec![at], mirrors }));
            }
        }
    }
    batches.into_iter().map(|(_, batch)| batch).collect()
}

/// True where two posts are cut the same.
pub fn same_cut(a: &Post, b: &Post) -> bool {
    matches!((&a.foot, &b.foot), (Ok(a), Ok(b)) if same(a, b))
}

fn same(a: &Foot, b: &Foot) -> bool {
    (0..4).any(|quarters| level(&a.upper, &b.upper, quarters) && level(&a.lower, &b.lower, quarters))
}

/// True where one level turned by so many quarters is the other.
fn level(a: &Cut, b: &Cut, quarters: u8) -> bool {
    let (along, across) =
        if quarters.is_multiple_of(2) { (b.size.along, b.size.across) } else { (b.size.across, b.size.along) };
    a.size.along == along && a.size.across == across && alike(&corners(a, 0), &corners(b, quarters))
}

type Corners = Vec<Spot>;

/// True where each piece of the one is a piece of the other.
fn alike(one: &[Corners], other: &[Corners]) -> bool {
    let has = |piece: &Corners| other.iter().any(|p| p.len() == piece.len() && piece.iter().all(|c| holds(p, c)));
    one.len() == other.len() && one.iter().all(has)
}

/// A carried corner reached two ways is one corner: they differ by less than a hundred-thousandth.
fn holds(piece: &Corners, corner: &Spot) -> bool {
    let near = |a: Length, b: Length| (a - b).q().abs() < Ratio::new(1, 100_000);
    piece.iter().any(|c| near(c.0, corner.0) && near(c.1, corner.1))
}

/// The corners of what is left, turned by so many quarters.
fn corners(cut: &Cut, quarters: u8) -> Vec<Corners> {
    let turned = |(x, y): (Length, Length)| match quarters % 4 {
        0 => (x, y),
        1 => (-y, x),
        2 => (-x, -y),
        _ => (y, -x),
    };
    cut.left.iter().map(|ring| ring.iter().copied().map(turned).collect()).collect()
}

fn mirrored(foot: &Foot) -> Foot {
    let flip = |cut: &Cut| Cut {
        left: cut.left.iter().map(|ring| ring.iter().rev().map(|(x, y)| (-*x, *y)).collect()).collect(),
        ..cut.clone()
    };
    Foot { upper: flip(&foot.upper), lower: flip(&foot.lower) }
}
