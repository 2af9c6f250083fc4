//! Where each post of the job stands on the deck's brink: on the whole outline where the
//! walk comes home, else on its own edge or corner.

use super::brink::{Brink, Edge, turn};
use super::point::{Point, Way, plus};
use crate::job::outline::filled;
use crate::job::walk::{Leg, legs};
use crate::job::{End, Job, Run, Turn};
use crate::layout::{Kind, Part, Placed, RunLayout, as_built};
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
    /// A post of a recess's mouth: of which recess, counted from the left, and whether its first.
    Mouth(usize, bool),
    Along,
}

/// The deck's whole outline, where it comes home.
struct Outline {
    brink: Brink,
    sides: Vec<Side>,
}

/// A side of it: its leg, its heading, and its first edge by number.
struct Side {
    leg: Leg,
    degrees: i32,
    first: usize,
    recesses: Vec<Recess>,
}

/// Stairs let into a side: which of its stairs from the left, and where.
#[derive(Clone, Copy)]
struct Recess {
    nth: u8,
    start: Length,
    width: Length,
    deep: Length,
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
            Spot::Mouth(_, first) => (if first { own } else { own - 90 }, 90),
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
        (!matches!(turn, Turn::Start | Turn::Free)).then_some(turn)
    }
}

fn degrees_of(turn: Turn) -> Option<i32> {
    match turn {
        Turn::Start | Turn::Free => None,
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
            Some(Spot::Mouth(before / 2, before.is_multiple_of(2)))
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
        let side = Side { leg: *leg, degrees, first: edges.len(), recesses: recesses(job, run) };
        edges.extend(side.edges(run.length?.length));
        sides.push(side);
    }
    // Home is towards the house: at last it heads in.
    let homeward = Way::degrees(degrees).by(Length::inches(1)).1;
    if sides.len() < 2 || homeward.is_zero() || homeward.is_positive() {
        return None;
    }
    Some(Outline { brink: Brink::outline(legs.first()?.from, edges), sides })
}

fn recesses(job: &Job, run: &Run) -> Vec<Recess> {
    let length = run.length.map(|t| t.length);
    let of = |(s, nth): (&crate::job::StairOpening, u8)| {
        let (start, deep) = (s.flanks(length).0?, s.recess?);
        Some(Recess { nth, start, width: s.width, deep })
    };
    as_built(job, run).iter().zip(0..).filter_map(of).collect()
}

impl Side {
    /// Its edges: along, and for each recess in, across the stairs' head, out, and on.
    fn edges(&self, length: Length) -> Vec<Edge> {
        let edge = |turned: i32, length: Length| Edge { degrees: self.degrees + turned, length };
        let (mut at, mut edges) = (Length::ZERO, Vec::new());
        for r in &self.recesses {
            edges.extend([edge(0, r.start - at), edge(90, r.deep), edge(0, r.width), edge(-90, r.deep)]);
            at = r.start + r.width;
        }
        edges.push(edge(0, length - at));
        edges
    }

    /// The recess of that number among the side's stairs, and the edge before it.
    fn recess(&self, nth: u8) -> Option<(&Recess, usize)> {
        let k = self.recesses.iter().position(|r| r.nth == nth)?;
        Some((&self.recesses[k], self.first + 4 * k))
    }
}

impl Outline {
    fn place(&self, run: &RunLayout, placed: &Placed, k: usize, spot: Spot, line: Length) -> Option<Place> {
        let side = self.sides.iter().find(|s| s.leg.run == run.id)?;
        if run.basis != crate::job::Basis::Edge {
            return None;
        }
        // A recess's edges: in, across, out; its corners are numbered by the edge before them.
        let (edge, before, after) = match run.part {
            Part::InLeft(n) => side.recess(n).map(|(_, e)| (e + 1, e + 1, e + 2))?,
            Part::InRight(n) => side.recess(n).map(|(_, e)| (e + 3, e + 3, e + 4))?,
            _ => (side.first, side.first, side.first + 4 * side.recesses.len() + 1),
        };
        let own = self.brink.heading(edge)?;
        let corner = |vertex: usize| self.corner(vertex, own, line);
        let is_corner = |which: usize| placed.ends[which].is_corner();
        match spot {
            Spot::Start if is_corner(0) => corner(before),
            Spot::Finish if is_corner(1) => corner(after),
            Spot::Mouth(k, true) => corner(side.first + 4 * k + 1),
            Spot::Mouth(k, false) => corner(side.first + 4 * k + 4),
            _ => self.along(side, run.part, own, placed.posts.get(k)?.at.as_length()?, line),
        }
    }

    fn corner(&self, vertex: usize, own: i32, line: Length) -> Option<Place> {
        let centre = self.brink.inside(line)?.get(vertex).copied()?;
        let (before, after) = (self.brink.heading(vertex.checked_sub(1)?)?, self.brink.heading(vertex)?);
        Some(Place { brink: self.brink.clone(), centre, own, before, turn: turn(before, after) })
    }

    fn along(&self, side: &Side, part: Part, degrees: i32, at: Length, line: Length) -> Option<Place> {
        let (way, whole) = (Way::degrees(degrees), Way::degrees(side.degrees));
        let start = match part {
            Part::InLeft(n) => plus(side.leg.from, whole.by(side.recess(n)?.0.start)),
            Part::InRight(n) => {
                let r = side.recess(n)?.0;
                plus(plus(side.leg.from, whole.by(r.start + r.width)), whole.right().by(r.deep))
            }
            _ => side.leg.from,
        };
        let centre = plus(plus(start, way.by(at)), way.right().by(line));
        Some(Place { brink: self.brink.clone(), centre, own: degrees, before: degrees, turn: 0 })
    }
}
