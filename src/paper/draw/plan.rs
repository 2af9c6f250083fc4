//! The whole deck from above: how its sides meet, with posts, stairs and gates where they stand.
//!
//! The house is at the bottom: standing at it and looking out is looking up the page, and left is left.

use super::super::page::{Anchor, Figure, Ink, Shape, area, line, text};
use super::super::set::BODY;
use super::super::type_face::width;
use super::{dimension, per_inch, scale_for};
use crate::job::Job;
use crate::job::outline::{filled, stands_free};
use crate::job::walk::{self, Leg, legs};
use crate::layout::{Bay, BayKind, Layout, Placed};
use crate::measure::Length;

const SIZE: f64 = 7.0;
/// Room round the deck for dimensions and the house; and where stairs come down from it.
const ROOM: f64 = 26.0;
const STAIRS_ROOM: f64 = 62.0;
/// The tallest the drawing may be.
const TALL: f64 = 400.0;
/// How far out stairs are drawn, in inches: three treads.
const TREADS: [f64; 3] = [11.0, 22.0, 33.0];

type Point = (f64, f64);

fn inches(p: walk::Point) -> Point {
    (p.0.for_drawing(), p.1.for_drawing())
}

/// The deck, where its sides are walked and every length is known; none for runs told one by one.
pub fn plan(job: &Job, layout: &Layout) -> Option<Figure> {
    let outline = filled(job);
    let legs = legs(&outline);
    let sides = outline.job.runs.iter().filter(|r| r.turn.is_some()).count();
    if legs.len() < 2 || legs.len() < sides {
        return None;
    }
    let corners: Vec<Point> =
        legs.iter().take(1).map(|l| inches(l.from)).chain(legs.iter().map(|l| inches(l.to))).collect();
    let span = |of: fn(&Point) -> f64| {
        let fold = |f: fn(f64, f64) -> f64, from| corners.iter().map(of).fold(from, f);
        (fold(f64::min, f64::INFINITY), fold(f64::max, f64::NEG_INFINITY))
    };
    let ((left, right), (low, high)) = (span(|p| p.0), span(|p| p.1));
    let room = if job.runs.iter().any(|r| !r.stairs.is_empty()) { STAIRS_ROOM } else { ROOM };
    let scale = scale_for(right - left, BODY - 2.0 * room).max(scale_for(high - low, TALL - 2.0 * room));
    let k = per_inch(scale);
    let tall = (high - low) * k;
    let middle = (BODY - (right - left) * k) / 2.0;
    let paper = |p: Point| (middle + (p.0 - left) * k, room + tall - (p.1 - low) * k);
    let mut shapes = vec![area(corners.iter().map(|p| paper(*p)).collect(), Ink::White, 0.3)];
    if !stands_free(job) {
        let (a, b) = (paper((left, 0.0)), paper((right, 0.0)));
        shapes.push(area(
            vec![(a.0 - 10.0, a.1), (b.0 + 10.0, b.1), (b.0 + 10.0, b.1 + 9.0), (a.0 - 10.0, a.1 + 9.0)],
            Ink::Pale,
            0.6,
        ));
        shapes.push(text(((a.0 + b.0) / 2.0, a.1 + 7.0), SIZE, Anchor::Middle, "house"));
    }
    let mut lettered = Lettered::default();
    let mut left_out = false;
    for leg in &legs {
        let way = Way::of(leg, k, &paper);
        shapes.push(line(way.from, way.to, 1.4));
        let laid = layout.runs.iter().filter(|r| r.id == leg.run).filter_map(|r| Some((r, r.result.as_ref().ok()?)));
        for (_, placed) in laid.clone() {
            shapes.extend(furnished(&way, placed, k));
            lettered.taken.extend(placed.bays.iter().filter_map(|bay| stairs_room(&way, placed, bay, k)));
        }
        let length = outline.job.run(leg.run).and_then(|r| r.length).map_or(Length::ZERO, |t| t.length);
        left_out |= !lettered.along(&mut shapes, &way, dimension((0.0, 0.0), SIZE, false, length, layout.tape), -11.0);
        let name = laid.clone().next().map(|(r, _)| r.name.clone().unwrap_or_else(|| format!("run {}", r.id.0)));
        if let Some(name) = name {
            left_out |= !lettered.along(&mut shapes, &way, text((0.0, 0.0), SIZE, Anchor::Middle, name), 11.0);
        }
    }
    let foot = room + tall + 24.0;
    let says = "From above, the house at the bottom: each side along the decking's edge, its posts, stairs and gates.";
    shapes.push(text((0.0, foot), SIZE, Anchor::Start, says));
    if left_out {
        let says = "Sides too short to letter here have their figures in the drawings of the runs.";
        shapes.push(text((0.0, foot + 9.0), SIZE, Anchor::Start, says));
    }
    Some(Figure { title: "The whole deck".to_owned(), width: BODY, height: foot + 14.0, scale: Some(scale), shapes })
}

/// A side on paper: its ends, the way along it, and the way out of the deck.
struct Way {
    from: Point,
    to: Point,
    along: Point,
    out: Point,
    long: f64,
}

impl Way {
    fn of(leg: &Leg, k: f64, paper: &dyn Fn(Point) -> Point) -> Way {
        let (from, to) = (paper(inches(leg.from)), paper(inches(leg.to)));
        let long = (to.0 - from.0).hypot(to.1 - from.1).max(k);
        let along = ((to.0 - from.0) / long, (to.1 - from.1) / long);
        // The walk goes clockwise as seen from above, so the deck lies to its right; y grows down the page.
        Way { from, to, along, out: (along.1, -along.0), long }
    }

    /// A place so far along, and so far out.
    fn at(&self, along: f64, out: f64) -> Point {
        (self.from.0 + self.along.0 * along + self.out.0 * out, self.from.1 + self.along.1 * along + self.out.1 * out)
    }

    /// A block along the side, between two places and so far in and out.
    fn block(&self, (from, to): (f64, f64), (inner, outer): (f64, f64), fill: Ink, thick: f64) -> Shape {
        area(vec![self.at(from, inner), self.at(to, inner), self.at(to, outer), self.at(from, outer)], fill, thick)
    }
}

/// A side's posts, its stairs and its gates.
fn furnished(way: &Way, placed: &Placed, k: f64) -> Vec<Shape> {
    let lead = placed.lead.for_drawing();
    let place = |l: Length| (l.for_drawing() - lead) * k;
    let mut shapes: Vec<Shape> = placed.bays.iter().flat_map(|bay| opening(way, bay, &place, k)).collect();
    shapes.extend(placed.posts.iter().map(|post| {
        let wide = post.width.as_length().unwrap_or(Length::ZERO);
        let half = wide.for_drawing() * k / 2.0;
        way.block((place(post.near), place(post.far())), (-half, half), Ink::Black, 0.3)
    }));
    shapes
}

fn opening(way: &Way, bay: &Bay, place: &dyn Fn(Length) -> f64, k: f64) -> Vec<Shape> {
    let (from, to) = (place(bay.start), place(bay.start + bay.clear_length()));
    let mut shapes = Vec::new();
    if matches!(bay.kind, BayKind::Stairs | BayKind::GatedStairs) {
        let deep = TREADS.map(|t| t * k);
        shapes.push(way.block((from, to), (0.0, deep[2]), Ink::White, 0.5));
        shapes.extend(deep.iter().take(2).map(|d| line(way.at(from, *d), way.at(to, *d), 0.4)));
    }
    if bay.kind.is_gate() {
        // Shut, and the diagonal of its leaf: a gate, on a drawing without words.
        let thick = 2.0;
        shapes.push(way.block((from, to), (-thick, thick), Ink::White, 0.6));
        shapes.push(line(way.at(from, -thick), way.at(to, thick), 0.4));
    }
    shapes
}

/// The room stairs take on paper.
fn stairs_room(way: &Way, placed: &Placed, bay: &Bay, k: f64) -> Option<[f64; 4]> {
    matches!(bay.kind, BayKind::Stairs | BayKind::GatedStairs).then_some(())?;
    let from = (bay.start.for_drawing() - placed.lead.for_drawing()) * k;
    let to = from + bay.clear_length().for_drawing() * k;
    let (a, b) = (way.at(from, 0.0), way.at(to, TREADS[2] * k));
    Some([a.0.min(b.0), a.1.min(b.1), a.0.max(b.0), a.1.max(b.1)])
}

/// The room words have taken.
#[derive(Default)]
struct Lettered {
    taken: Vec<[f64; 4]>,
}

impl Lettered {
    /// Letters a side at its middle, so far out, where there is room; false where there is none.
    fn along(&mut self, shapes: &mut Vec<Shape>, way: &Way, shape: Shape, out: f64) -> bool {
        let Shape::Text { size, bold, words, inches, .. } = shape else { return false };
        let long = width(&words, size, bold);
        let upright = way.along.0.abs() < way.along.1.abs();
        let (wide, high) = if upright { (size, long) } else { (long, size) };
        // Clear of a slanting side: half the letters' width counts too.
        let slant = way.along.0.abs().min(way.along.1.abs());
        let off = -out - out.signum() * slant * long / 2.0;
        let room = |part: f64| {
            let middle = way.at(way.long * part, off);
            let edges = [middle.0 - wide / 2.0, middle.1 - high / 2.0, middle.0 + wide / 2.0, middle.1 + high / 2.0];
            let meets = |t: &[f64; 4]| {
                edges[0] < t[2] + 1.0 && t[0] < edges[2] + 1.0 && edges[1] < t[3] + 1.0 && t[1] < edges[3] + 1.0
            };
            let outside = edges[0] < 0.0 || edges[2] > BODY || edges[1] < 0.0;
            (!outside && !self.taken.iter().any(meets)).then_some((middle, edges))
        };
        let found = [0.5, 0.25, 0.75].into_iter().find_map(room).filter(|_| long + 4.0 <= way.long);
        let Some((middle, edges)) = found else { return false };
        self.taken.push(edges);
        let at = if upright { (middle.0 + size * 0.35, middle.1) } else { (middle.0, middle.1 + size * 0.35) };
        shapes.push(Shape::Text { at, size, bold, anchor: Anchor::Middle, upright, words, inches });
        true
    }
}
