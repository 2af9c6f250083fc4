//! What is told for the parts, the saw and the yard, and what is taken where nobody told it.

use crate::job::{BalustersAt, Job, Lie, LongPart, Member, Percent, StartWith, StickOf};
use crate::measure::{Length, Lumber};
use rust_decimal::Decimal;

/// The lumber rails are taken to be where nobody told them (common practice, no source).
pub const RAIL: Lumber = Lumber::by(2, 4);

/// The lengths lumber is sold in where nobody told them, in feet (common practice, no source).
pub const SOLD: [u16; 5] = [8, 10, 12, 14, 16];

/// A member of the rail: its lumber as told, `Some(None)` where there is to be none, `None` where nobody told it.
pub fn member(job: &Job, of: Member) -> Option<Option<Lumber>> {
    job.order.rail(of)
}

/// A rail's lumber: as told, else what rails are taken to be; `None` where there is to be none.
pub fn rail(job: &Job, of: Member) -> Option<Lumber> {
    member(job, of).unwrap_or(Some(RAIL))
}

/// How many rails a bay has: both, but for one told to be left out.
pub fn rails(job: &Job) -> usize {
    [Member::Top, Member::Bottom].iter().filter(|m| member(job, **m) != Some(None)).count()
}

/// How a member lies, as told.
pub fn lies(job: &Job, of: Member) -> Option<Lie> {
    job.order.lay(of)
}

/// How tall a member of that lumber is, as it is told to lie; `None` where that was not told and makes a difference.
pub fn depth(job: &Job, of: Member, size: Lumber) -> Option<Length> {
    job.order.depth(of, size)
}

/// Where the balusters stand, as told.
pub fn balusters_at(job: &Job) -> Option<BalustersAt> {
    job.order.balusters
}

/// What stands against the posts: as told, else a gap (common practice, no source).
pub fn start_with(job: &Job) -> StartWith {
    job.order.start.unwrap_or(StartWith::Gap)
}

/// The lengths a size of lumber is sold in, in feet, and whether they were told.
pub fn sold(job: &Job, size: Lumber) -> (&[u16], bool) {
    job.order.sold(size).map_or((&SOLD, false), |feet| (feet, true))
}

/// The price of a stick, as told.
pub fn price(job: &Job, stick: StickOf) -> Option<Decimal> {
    job.order.price(stick)
}

/// Waste, tax or markup in a hundred, as told.
pub fn percent(job: &Job, of: Percent) -> Option<Decimal> {
    job.order.percent(of)
}

/// Labor on top of the bill, as told.
pub fn labor(job: &Job) -> Option<Decimal> {
    job.order.labour
}

/// Spare balusters: as told, else none.
pub fn spares(job: &Job) -> u32 {
    u32::from(job.order.spares.unwrap_or(0))
}

/// Sticks at hand of a size: how long, and how many.
pub fn on_hand(job: &Job, size: Lumber) -> impl Iterator<Item = (Length, u16)> + '_ {
    job.order.on_hand.iter().filter(move |(s, ..)| *s == size).map(|(_, l, n)| (*l, *n))
}

/// Bays told alone, each as often as told.
pub fn bays_alone(job: &Job) -> impl Iterator<Item = Length> + '_ {
    job.order.bays.iter().flat_map(|(n, clear)| std::iter::repeat_n(*clear, usize::from(*n)))
}

/// How long a part is cut, as told.
pub fn cut(job: &Job, part: LongPart) -> Option<Length> {
    job.order.cut(part)
}
