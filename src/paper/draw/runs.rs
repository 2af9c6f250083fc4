//! A run seen from outside, and from above with its running marks.

use super::super::page::{Anchor, Figure, Ink, Shape, block, line, text};
use super::super::set::BODY;
use super::super::type_face::width;
use super::{dimension, per_inch, scale_for, spaced};
use crate::job::Job;
use crate::layout::{BayKind, Layout, Placed, RunLayout};
use crate::limits;
use crate::measure::{Length, Tape};
use crate::takeoff::{FilledBay, fill};

/// Room left of the run, for a wall.
const LEFT: f64 = 16.0;
const SIZE: f64 = 7.0;
/// A baluster narrower than this on paper is one line.
const FINE: f64 = 2.2;
/// Room an upright dimension takes.
const UPRIGHT: f64 = 58.0;

/// Every run that is laid out.
pub fn runs(job: &Job, layout: &Layout) -> Vec<Figure> {
    let filled = fill(job, layout, None).unwrap_or_default();
    let mut filled = filled.into_iter();
    layout
        .runs
        .iter()
        .filter_map(|run| Some(figure(job, run, run.result.as_ref().ok()?, &mut filled, layout.tape)))
        .collect()
}

fn figure(
    job: &Job,
    run: &RunLayout,
    placed: &Placed,
    filled: &mut dyn Iterator<Item = FilledBay>,
    tape: Tape,
) -> Figure {
    let scale = scale_for(placed.overall.for_drawing(), BODY - 2.0 * LEFT);
    let k = per_inch(scale);
    let x = |l: Length| LEFT + l.for_drawing() * k;
    let top = job.settings.height_top;
    let tall = top.unwrap_or_else(|| limits::GUARD_HEIGHT.length()).for_drawing() * k;
    let under = job.settings.gap_under.map_or(3.0, Length::for_drawing) * k;
    let deck = tall + 2.0;
    let mut shapes = vec![block(LEFT - 12.0, deck, (x(placed.overall) + 12.0) - (LEFT - 12.0), 3.0, Ink::Grey, 0.4)];
    for (end, at) in placed.ends.iter().zip([LEFT - 6.0, x(placed.overall)]) {
        if end.is_wall() {
            shapes.push(block(at, 0.0, 6.0, deck, Ink::Pale, 0.6));
        }
    }
    let narrow = placed.bays.iter().any(|bay| {
        let l = bay.clear_length();
        width(&tape.read(l), SIZE, false) + 6.0 > l.for_drawing() * k
    });
    let row = deck + 8.0 + if narrow { UPRIGHT } else { 10.0 };
    for bay in &placed.bays {
        let (from, to) = (x(bay.start), x(bay.start + bay.clear_length()));
        match bay.kind {
            BayKind::Rail => rail(&mut shapes, (from, to), (tall, under, deck), k, filled.next()),
            kind => opening(&mut shapes, (from, to), (tall, deck), kind),
        }
        let middle = (from + to) / 2.0;
        shapes.push(line((from, deck + 7.0), (to, deck + 7.0), 0.4));
        for tick in [from, to] {
            shapes.push(line((tick, deck + 5.0), (tick, deck + 9.0), 0.4));
        }
        let at = if narrow { (middle + SIZE / 3.0, deck + 12.0) } else { (middle, deck + 16.0) };
        shapes.push(dimension(at, SIZE, narrow, bay.clear_length(), tape));
    }
    let plan = row + 4.0;
    let deep = placed.posts.iter().map(|p| p.width.as_length().unwrap_or(Length::ZERO).for_drawing() * k);
    let deep = deep.fold(3.0, f64::max);
    let middles: Vec<f64> = placed.posts.iter().map(|p| x(p.centre())).collect();
    let marks = spaced(&middles, SIZE + 1.5, BODY - 2.0);
    for ((post, middle), mark) in placed.posts.iter().zip(&middles).zip(marks) {
        let wide = post.width.as_length().unwrap_or(Length::ZERO).for_drawing() * k;
        shapes.push(block(middle - wide / 2.0, 0.0, wide, deck, Ink::Pale, 0.6));
        shapes.push(block(middle - wide / 2.0, plan, wide, deep, Ink::Grey, 0.6));
        let foot = plan + deep;
        shapes.push(line((*middle, foot), (mark, foot + 8.0), 0.4));
        shapes.push(dimension(
            (mark + SIZE / 3.0, foot + 11.0),
            SIZE,
            true,
            post.at.as_length().unwrap_or(Length::ZERO),
            tape,
        ));
    }
    shapes.push(line((LEFT, plan + deep / 2.0), (x(placed.overall), plan + deep / 2.0), 0.4));
    let bottom = plan + deep + 12.0 + UPRIGHT;
    let drawn = if top.is_some() { "" } else { "; the height is not told, drawn 36\"" };
    let says =
        format!("Above: clear between posts. Below: centre of each post, tape hooked on {}{drawn}.", placed.origin);
    shapes.push(text((0.0, bottom + 4.0), SIZE, Anchor::Start, says));
    let title = run.name.clone().unwrap_or_else(|| format!("run {}{}", run.id.0, run.part.suffix()));
    Figure { title, width: BODY, height: bottom + 6.0, scale: Some(scale), shapes }
}

fn rail(
    shapes: &mut Vec<Shape>,
    (from, to): (f64, f64),
    (tall, under, deck): (f64, f64, f64),
    k: f64,
    filled: Option<FilledBay>,
) {
    let thick = 1.5 * k;
    shapes.push(block(from, deck - tall, to - from, thick, Ink::None, 0.5));
    shapes.push(block(from, deck - under - thick, to - from, thick, Ink::None, 0.5));
    let Some(filled) = filled else { return };
    let spread = filled.spread;
    let wide = spread.opening().baluster.for_drawing() * k;
    for i in 0..spread.count() {
        let x = from + spread.place(i).for_drawing() * k;
        // Drawn small, two edges of a baluster would run into one blot.
        if wide < FINE {
            let middle = x + wide / 2.0;
            shapes.push(line((middle, deck - tall + thick), (middle, deck - under - thick), 0.3));
        } else {
            shapes.push(block(x, deck - tall + thick, wide, tall - under - 2.0 * thick, Ink::White, 0.3));
        }
    }
}

fn opening(shapes: &mut Vec<Shape>, (from, to): (f64, f64), (tall, deck): (f64, f64), kind: BayKind) {
    if kind.is_gate() {
        shapes.push(block(from + 1.0, deck - tall, to - from - 2.0, tall - 2.0, Ink::None, 0.8));
        shapes.push(line((from + 1.0, deck - 2.0), (to - 1.0, deck - tall), 0.5));
    }
    let says = if kind.is_gate() { "gate" } else { "stairs" };
    // Clear of the brace.
    let down = if kind.is_gate() { 0.85 } else { 0.5 };
    shapes.push(text(((from + to) / 2.0, deck - tall * down), 7.0, Anchor::Middle, says));
}
