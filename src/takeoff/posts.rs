//! The posts of the layout by size, a shared corner once.

use super::bays::Where;
use crate::job::{Job, PostSize};
use crate::layout::{Layout, Post};
use crate::measure::{Length, Lumber};
use crate::solve::told_sizes;

/// Posts of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Posts {
    /// The lumber, where the width is a listed size's.
    pub size: Option<Lumber>,
    /// The width along the run.
    pub width: Length,
    /// How many.
    pub count: u32,
    /// Which runs they stand in.
    pub at: Vec<Where>,
}

/// The layout's posts, the widest first.
pub fn posts(job: &Job, layout: &Layout) -> Vec<Posts> {
    let mut all: Vec<Posts> = Vec::new();
    for run in &layout.runs {
        let Ok(placed) = &run.result else { continue };
        let [first, last] = layout.shared_before(run);
        let kept = placed.posts.len().saturating_sub(usize::from(last));
        let own: Vec<&Post> = placed.posts.iter().take(kept).skip(usize::from(first)).collect();
        own.iter().for_each(|p| add(&mut all, job, p.width_length(), Where::Run(run.id, run.part)));
    }
    all.sort_by_key(|p| std::cmp::Reverse(p.width));
    all
}

fn add(all: &mut Vec<Posts>, job: &Job, width: Length, at: Where) {
    let k = all.iter().position(|p| p.width == width).unwrap_or_else(|| {
        all.push(Posts { size: size_of(job, width), width, count: 0, at: Vec::new() });
        all.len() - 1
    });
    all[k].count += 1;
    if !all[k].at.contains(&at) {
        all[k].at.push(at);
    }
}

/// The lumber of that width: one told, or the default post.
fn size_of(job: &Job, width: Length) -> Option<Lumber> {
    let told = told_sizes(job).iter().filter_map(|(_, size)| match size {
        PostSize::Lumber(lumber) => Some(*lumber),
        PostSize::Width(_) => None,
    });
    let mut all = told.chain([Lumber::FOUR_BY_FOUR, Lumber::SIX_BY_SIX]);
    let any_width = told_sizes(job).iter().any(|(_, size)| *size == PostSize::Width(width));
    all.find(|l| l.dressed().is_some_and(|(_, wide)| wide == width)).filter(|_| !any_width)
}
