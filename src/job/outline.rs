//! The deck's outline: its sides walked from the house at the left end, out, across and
//! home; or, for a deck that stands by itself, round to where it started. What a side was
//! not told follows from the others where the walk closes.
//!
//! x runs along the house to the right, y straight out, as seen standing at the house
//! looking out. A walk closes when its last side comes home to the house: the y of its
//! sides sum to nothing, and their x to the deck's length along the house where that was
//! told. Without a house both sum to nothing.

use super::{Basis, End, Job, Run, RunId, Told, Turn};
use crate::measure::{Length, Q, sin_cos};
use num_rational::Ratio;
use num_traits::Zero;

/// The job with its outline worked out: untold sides and ends filled in.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// The job, each side of the outline with its length and ends where they follow.
    pub job: Job,
    /// The sides whose length was worked out, not told.
    pub derived: Vec<RunId>,
    /// How far the walk misses its end, along the house and out from it, where it does.
    pub open: Option<Open>,
}

/// A walk that does not come home.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Open {
    /// Along the house: the sides reach so much too far right (or, below zero, fall short).
    pub along: Length,
    /// Out from the house: the last side ends so far out (or, below zero, inside the house).
    pub out: Length,
}

/// A unit direction: x along the house, y out, in parts; exact only at right angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Heading {
    pub x: Length,
    pub y: Length,
}

/// Works the outline out. A job without one comes back as it is.
pub fn filled(job: &Job) -> Filled {
    let mut job = job.clone();
    let sides: Vec<usize> = (0..job.runs.len()).filter(|i| job.runs[*i].turn.is_some()).collect();
    if sides.is_empty() {
        return Filled { job, derived: Vec::new(), open: None };
    }
    let headings = headings(sides.iter().filter_map(|i| job.runs[*i].turn));
    // Until its last side heads for the house the walk is still under way.
    let free = stands_free(&job);
    let homeward = if free { sides.len() > 3 } else { headings.last().is_some_and(heads_home) };
    let along = if free { Some(Length::ZERO) } else { job.deck_along };
    let mut lengths: Vec<Option<Length>> = sides.iter().map(|i| job.runs[*i].length.map(|t| t.length)).collect();
    let told = lengths.clone();
    first_from_deck(&job, &headings, &mut lengths);
    solve(&headings, &mut lengths, along);
    let derived = sides.iter().zip(told.iter().zip(&lengths)).filter(|(_, (t, l))| t.is_none() && l.is_some());
    let derived: Vec<RunId> = derived.map(|(i, _)| job.runs[*i].id).collect();
    for (i, length) in sides.iter().zip(&lengths) {
        let run = &mut job.runs[*i];
        run.length = run.length.or(length.filter(|l| l.is_positive()).map(Told::plain));
        run.basis = run.basis.or(Some(Basis::Edge));
    }
    let open = miss(&headings, &lengths, along).filter(|_| homeward);
    // A last side that misses the house ends at nobody knows what: another side may come.
    let home = homeward && open.is_none_or(|o| o.out.is_zero());
    let closing = if free { closing(&job).map_or(End::Corner, |t| corner(Some(t))) } else { End::House };
    fill_ends(&mut job.runs, &sides, closing, home);
    Filled { job, derived, open }
}

fn heads_home(h: &Heading) -> bool {
    !h.y.is_zero() && !h.y.is_positive()
}

/// True for an outline that no house closes.
pub fn stands_free(job: &Job) -> bool {
    job.runs.iter().any(|r| r.turn == Some(Turn::Free))
}

/// The turn from the last side of a deck that stands by itself back into its first.
/// `None` where a house closes the walk, or the last side runs along the first.
pub fn closing(job: &Job) -> Option<Turn> {
    let turns: Vec<Turn> = job.runs.iter().filter_map(|r| r.turn).collect();
    let back = (-degrees(turns.iter().copied()).last()?).rem_euclid(360);
    let turn =
        if back < 180 { Turn::Right(u16::try_from(back).ok()?) } else { Turn::Left(u16::try_from(360 - back).ok()?) };
    (stands_free(job) && back != 0 && back != 180).then_some(turn)
}

/// The way each side heads, turn by turn, starting straight out.
pub(super) fn headings(turns: impl Iterator<Item = Turn>) -> Vec<Heading> {
    degrees(turns).map(|d| at(d.rem_euclid(360))).collect()
}

/// Degrees clockwise from straight out, side by side.
pub fn degrees(turns: impl Iterator<Item = Turn>) -> impl Iterator<Item = i32> {
    turns.scan(0, |heading, turn| {
        *heading += match turn {
            Turn::Start | Turn::Free => 0,
            Turn::Right(d) => i32::from(d),
            Turn::Left(d) => -i32::from(d),
        };
        Some(*heading)
    })
}

/// The unit direction so many degrees clockwise from straight out.
fn at(degrees: i32) -> Heading {
    let (sin, cos) = sin_cos(degrees);
    Heading { x: sin, y: cos }
}

fn fill_ends(runs: &mut [Run], sides: &[usize], closing: End, home: bool) {
    for (k, i) in sides.iter().enumerate() {
        let into = k.checked_sub(1).map_or(closing, |_| corner(runs[*i].turn));
        let next = sides.get(k + 1).map(|next| corner(runs[*next].turn));
        let out_of = next.or(home.then_some(closing));
        let run = &mut runs[*i];
        run.from = run.from.or(Some(into));
        run.to = run.to.or(out_of);
    }
}

fn corner(turn: Option<Turn>) -> End {
    match turn {
        Some(Turn::Left(90)) => End::InsideCorner,
        Some(Turn::Right(90) | Turn::Start | Turn::Free) | None => End::Corner,
        Some(Turn::Right(_) | Turn::Left(_)) => End::AngledCorner,
    }
}

/// "12 out" tells the first side, unless that was told itself.
fn first_from_deck(job: &Job, headings: &[Heading], lengths: &mut [Option<Length>]) {
    let straight_out = headings.first().is_some_and(|h| h.x.is_zero());
    if let (Some(first @ None), true) = (lengths.first_mut(), straight_out) {
        *first = job.deck_out;
    }
}

/// Works out the sides the closing walk leaves no choice about.
fn solve(headings: &[Heading], lengths: &mut [Option<Length>], along: Option<Length>) {
    // Twice: a side found by one sum may leave only one unknown in the other.
    for _ in 0..2 {
        settle(headings, lengths, |h| h.y, Some(Length::ZERO));
        settle(headings, lengths, |h| h.x, along);
    }
}

/// Where one side alone is unknown in this direction and the sum is known, it follows.
fn settle(headings: &[Heading], lengths: &mut [Option<Length>], part: fn(&Heading) -> Length, sum: Option<Length>) {
    let Some(sum) = sum else { return };
    let matters = |k: &usize| !part(&headings[*k]).is_zero();
    let unknown: Vec<usize> = (0..lengths.len()).filter(|k| lengths[*k].is_none()).filter(matters).collect();
    let [one] = unknown[..] else { return };
    let known: Length = (0..lengths.len()).filter_map(|k| lengths[k].map(|l| scaled(l, part(&headings[k])))).sum();
    lengths[one] = over(sum - known, part(&headings[one]));
}

pub(super) fn scaled(l: Length, by: Length) -> Length {
    l.times(by.q()).map_or(l, |s| if by.is_exact() { s } else { s.inexact() })
}

fn over(l: Length, by: Length) -> Option<Length> {
    let result = l.over(by.q())?;
    Some(if by.is_exact() { result } else { result.inexact() })
}

/// By how much the walk misses; `None` while a side is unknown, or where it closes.
fn miss(headings: &[Heading], lengths: &[Option<Length>], along: Option<Length>) -> Option<Open> {
    let known: Option<Vec<Length>> = lengths.iter().copied().collect();
    let known = known?;
    let sum =
        |part: fn(&Heading) -> Length| -> Length { known.iter().zip(headings).map(|(l, h)| scaled(*l, part(h))).sum() };
    let out = sum(|h| h.y);
    let along = along.map_or(Length::ZERO, |a| sum(|h| h.x) - a);
    // Sides on a slant are told to the sixteenth, so between them they may miss by as much.
    let closes = |l: Length| l.is_zero() || !l.is_exact() && off_by_the_tape(l.q());
    (!(closes(out) && closes(along))).then_some(Open { along, out })
}

fn off_by_the_tape(q: Q) -> bool {
    let tape = Ratio::new(1, 16);
    q <= tape && q >= Q::zero() - tape
}
