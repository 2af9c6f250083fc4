//! A layout with an eye to the sticks: the even split beside the one that wastes least.

use super::bays::rail_bays;
use super::buy::order;
use super::cutplan::{Effort, Wanted, plan};
use super::lengths::rail;
use crate::job::{Fact, Job, RunId, RunPatch};
use crate::layout::{Layout, lay_out};
use crate::measure::{Length, Lumber};

/// More bays than the fewest looked at.
const MORE_BAYS: u16 = 4;

/// One way to split a run, with what its rails waste.
#[derive(Clone, Debug, PartialEq)]
pub struct Split {
    /// How many rail bays.
    pub bays: u16,
    /// How many posts.
    pub posts: usize,
    /// The widest bay's clear.
    pub clear: Length,
    /// The sticks bought: length and how many.
    pub buy: Vec<(Length, u32)>,
    /// The length bought.
    pub bought: Length,
    /// What is left of them, saw cuts taken off.
    pub waste: Length,
}

/// The split the limits ask for, and the even split with more bays that buys least and then
/// wastes least; the second is `None` where none does better. Rails are cut from the lengths
/// that size is sold in.
pub fn splits(job: &Job, run: RunId, rail_size: Lumber) -> Option<(Split, Option<Split>)> {
    let even = split(job, run, rail_size)?;
    let more = (1..=MORE_BAYS).filter_map(|k| {
        let patch = RunPatch { bays: Some(Some(even.bays + k)), ..RunPatch::default() };
        split(&job.with(&Fact::Run(run, patch)).ok()?, run, rail_size)
    });
    let rank = |s: &Split| (s.bought, s.waste, s.posts);
    let best = more.filter(|s| rank(s) < rank(&even)).min_by(|a, b| rank(a).cmp(&rank(b)));
    Some((even, best))
}

fn split(job: &Job, run: RunId, size: Lumber) -> Option<Split> {
    let layout: Layout = lay_out(job).only(Some(run));
    let alone = Job { order: crate::job::OrderBook { bays: Vec::new(), ..job.order.clone() }, ..job.clone() };
    let bays = rail_bays(&alone, &layout);
    let widest = bays.iter().map(|b| b.clear).max()?;
    let members = crate::solve::order::rails(job);
    let short = crate::solve::told_length(job, crate::quantity::RowId::Bracket).unwrap_or(Length::ZERO);
    let cut = |l: Length| rail(l, short).map(|l| layout.tape.round(l));
    let wanted = bays.iter().filter_map(|b| Some(Wanted { length: cut(b.clear)?, count: members as u32 }));
    let plan = plan(&order(job, size, wanted.collect()), &mut Effort::AT_THE_PROMPT.clone()).ok()?;
    let bays = u16::try_from(bays.len()).ok()?;
    let waste = plan.left_over();
    Some(Split { bays, posts: layout.distinct_posts(), clear: widest, buy: plan.buy(), bought: plan.bought, waste })
}
