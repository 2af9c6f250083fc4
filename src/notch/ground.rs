//! Where each post of the job stands on the deck's brink: on the whole outline where the
//! walk comes home, else on its own edge or corner.

use super::brink::{Brink, Edge, turn};
use super::point::{Point, Way, plus};
use crate::job::apply::flanks;
use crate::job::outline::filled;
use crate::job::walk::{Leg, legs};
use crate::job::{End, Job, Run, Turn};
use crate::layout::{Kind, Part, Placed, RunLayout};
use crate::measure::Length;

/// A post's place: on which brink, where, and how the edge heads and turns there.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Place {
    pub brink: Brink,
    /// The post's centre.
    pub centre: Point,
    /// The way of the edge its stretch is laid on, in degrees.
    pub own: i32,
    /// The way of the edge that comes to its corner; its own on a straight edge.
    pub before: i32,
    /// The corner's turn; nothing on a straight edge.
    pub turn: i32,
}

/// Which spot of its stretch a post stands at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Spot {
    Start,
    Finish,
    /// The first or the second post of a recess's mouth.
    Mouth(bool),
    Along,
}

/// The deck's whole outline, where it comes home.
struct Outline {
    brink: Brink,
    sides: Vec<Side>,
}

/// A side of it: its leg, its heading, and its first edge and last edge by number.
struct Side {
    leg: Leg,
    degrees: i32,
    edges: (usize, usize),
    recess: Option<Recess>,
}

/// Stairs let into a side.
#[derive(Clone, Copy)]
struct Recess {
    left: Length,
    width: Length,
    deep: Length,
    right: Length,
}

/// The grounds of one job.
pub(super) struct Ground {
    job: Job,
    outline: Option<Outline>,
    line: Length,
}

impl Ground {
    /// The ground under a job whose baluster line lies so far inside the decking's edge.
    pub fn of(job: &Job, line: Length) -> Ground {
        let filled = filled(job);
        let home = filled.open.is_none();
        let outline = if home { outline(&filled.job, &legs(&filled)) } else { None };
        Ground { job: filled.job, outline, line }
    }

    /// Where the k-th post of a stretch stands. `None` where its corner's turn was not told,
    /// or it stands at no brink.
    pub fn place(&self, run: &RunLayout, placed: &Placed, k: usize) -> Option<Place> {
        let spot = spot(run.part, placed, k)?;
        let on_outline = self.outline.as_ref().and_then(|o| o.place(run, placed, k, spot, self.line));
        match on_outline {
            Some(place) => Some(place),
            None => self.alone(run, placed, spot),
        }
    }

    fn alone(&self, run: &RunLayout, placed: &Placed, spot: Spot) -> Option<Place> {
        // Alone, a stretch is walked along x.
        let own = 90;
        let (before, turned) = match spot {
            Spot::Along => (own, 0),
            Spot::Mouth(first) => (if first { own } else { own - 90 }, 90),
            Spot::Start => {
                let t = self.turn(run, placed.ends[0], 0)?;
                (own - t, t)
            }
            Spot::Finish => (own, self.turn(run, placed.ends[1], 1)?),
        };
        let brink = if turned == 0 { Brink::straight(before) } else { Brink::corner(before, turned) };
        let centre = brink.inside(self.line)?.get(1).copied()?;
        Some(Place { brink, centre, own, before, turn: turned })
    }

    /// The turn at an end of a stretch: the outline's, or what its name says.
    fn turn(&self, run: &RunLayout, end: End, which: usize) -> Option<i32> {
        let told = run.meets[which].as_ref().map(|m| m.turn).or_else(|| self.outline_turn(run, which));
        match (end, told) {
            (End::Corner | End::InsideCorner | End::AngledCorner, Some(turn)) => degrees_of(turn),
            (End::Corner, None) => Some(90),
            (End::InsideCorner, None) => Some(-90),
            (End::AngledCorner, None) => None,
            _ => Some(0),
        }
    }

    /// The outline's turn at a side's end, where the outline is told but not closed yet.
    fn outline_turn(&self, run: &RunLayout, which: usize) -> Option<Turn> {
        if run.part != Part::Whole {
            return None;
        }
        let sides: Vec<&Run> = self.job.runs.iter().filter(|r| r.turn.is_some()).collect();
        let at = sides.iter().position(|r| r.id == run.id)?;
        let turn = sides.get(at + which)?.turn?;
        (turn != Turn::Start).then_some(turn)
    }
}

fn degrees_of(turn: Turn) -> Option<i32> {
    match turn {
        Turn::Start => None,
        Turn::Right(d) => Some(i32::from(d)),
        Turn::Left(d) => Some(-i32::from(d)),
    }
}

/// `None` for a post at a stair's foot, which stands on no brink.
fn spot(part: Part, placed: &Placed, k: usize) -> Option<Spot> {
    let post = placed.posts.get(k)?;
    let last = placed.posts.len() - 1;
    let ends_there = |which: usize| post.kind == Kind::Fixed(placed.ends[which]);
    match post.kind {
        Kind::Fixed(End::BottomNewel) => None,
        _ if k == 0 && ends_there(0) => Some(Spot::Start),
        _ if k == last && ends_there(1) => Some(Spot::Finish),
        Kind::Fixed(End::Corner) if part == Part::Whole => {
            let before = placed.posts[1..k].iter().filter(|p| p.kind == Kind::Fixed(End::Corner)).count();
            Some(Spot::Mouth(before == 0))
        }
        _ => Some(Spot::Along),
    }
}

/// The outline's edges, recesses walked in and out; `None` until every side is known.
fn outline(job: &Job, legs: &[Leg]) -> Option<Outline> {
    let runs: Vec<&Run> = job.runs.iter().filter(|r| r.turn.is_some()).collect();
    if legs.is_empty() || legs.len() != runs.len() {
        return None;
    }
    let (mut degrees, mut edges, mut sides) = (0, Vec::new(), Vec::new());
    for (leg, run) in legs.iter().zip(&runs) {
        degrees += run.turn.and_then(degrees_of).unwrap_or(0);
        let first = edges.len();
        let recess = recess(run);
        match recess {
            Some(r) => edges.extend(r.edges(degrees)),
            None => edges.push(Edge { degrees, length: run.length?.length }),
        }
        sides.push(Side { leg: *leg, degrees, edges: (first, edges.len() - 1), recess });
    }
    // Home is towards the house: at last it heads in.
    let homeward = Way::degrees(degrees).by(Length::inches(1)).1;
    if sides.len() < 2 || homeward.is_zero() || homeward.is_positive() {
        return None;
    }
    Some(Outline { brink: Brink::outline(legs.first()?.from, edges), sides })
}

fn recess(run: &Run) -> Option<Recess> {
    let (stairs, length) = (run.stairs?, run.length?.length);
    let deep = stairs.recess?;
    let (left, right) = flanks(stairs, Some(length));
    Some(Recess { left: left?, width: stairs.width, deep, right: right? })
}

impl Recess {
    /// Along, in, across the stairs' head, out, and on.
    fn edges(self, degrees: i32) -> [Edge; 5] {
        let edge = |turned: i32, length: Length| Edge { degrees: degrees + turned, length };
        [edge(0, self.left), edge(90, self.deep), edge(0, self.width), edge(-90, self.deep), edge(0, self.right)]
    }
}

impl Outline {
    fn place(&self, run: &RunLayout, placed: &Placed, k: usize, spot: Spot, line: Length) -> Option<Place> {
        let side = self.sides.iter().find(|s| s.leg.run == run.id)?;
        if run.basis != crate::job::Basis::Edge {
            return None;
        }
        let (first, last) = side.edges;
        // A recess's edges: along, in, across, out, along.
        let (edge, before, after) = match run.part {
            Part::InLeft => (first + 1, first + 1, first + 2),
            Part::InRight => (first + 3, first + 3, first + 4),
            _ => (first, first, last + 1),
        };
        let own = self.brink.heading(edge)?;
        let corner = |vertex: usize| self.corner(vertex, own, line);
        let is_corner = |which: usize| placed.ends[which].is_corner();
        match spot {
            Spot::Start if is_corner(0) => corner(before),
            Spot::Finish if is_corner(1) => corner(after),
            Spot::Mouth(true) => corner(first + 1),
            Spot::Mouth(false) => corner(first + 4),
            _ => self.along(side, edge, placed.posts.get(k)?.at.as_length()?, line),
        }
    }

    fn corner(&self, vertex: usize, own: i32, line: Length) -> Option<Place> {
        let centre = self.brink.inside(line)?.get(vertex).copied()?;
        let (before, after) = (self.brink.heading(vertex.checked_sub(1)?)?, self.brink.heading(vertex)?);
        Some(Place { brink: self.brink.clone(), centre, own, before, turn: turn(before, after) })
    }

    fn along(&self, side: &Side, edge: usize, at: Length, line: Length) -> Option<Place> {
        let degrees = self.brink.heading(edge)?;
        let (way, whole) = (Way::degrees(degrees), Way::degrees(side.degrees));
        let start = match (edge - side.edges.0, side.recess) {
            (1, Some(r)) => plus(side.leg.from, whole.by(r.left)),
            (3, Some(r)) => plus(plus(side.leg.from, whole.by(r.left + r.width)), whole.right().by(r.deep)),
            _ => side.leg.from,
        };
        let centre = plus(plus(start, way.by(at)), way.right().by(line));
        Some(Place { brink: self.brink.clone(), centre, own: degrees, before: degrees, turn: 0 })
    }
}
