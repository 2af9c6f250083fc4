//! A run seen from outside, and from above with its running marks.

use super::super::page::{Anchor, Figure, Ink, Shape, block, dashed, line, text};
use super::super::set::BODY;
use super::super::type_face::width;
use super::{dimension, per_inch, scale_for, spaced};
use crate::job::Job;
use crate::layout::{BayKind, Layout, Placed, RunLayout};
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::solve::{Source, taken};
use crate::takeoff::{FilledBay, fill};

/// Room left of the run, for a wall.
const LEFT: f64 = 16.0;
const SIZE: f64 = 7.0;
/// A baluster narrower than this on paper is one line.
const FINE: f64 = 2.2;
/// A bottom rail whose gap was not told is drawn so far up, in dashes: no answer takes it.
const UNDER: Length = Length::inches(3);
/// From one line of words to the next.
const LINE: f64 = 10.0;
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
    let top = taken(job, RowId::HeightTop).as_length().unwrap_or(Length::ZERO);
    let under_told = Source::told(job, RowId::GapUnder).and_then(|f| f.as_length());
    let tall = top.for_drawing() * k;
    let under = under_told.unwrap_or(UNDER).for_drawing() * k;
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
            BayKind::Rail => {
                rail(&mut shapes, (from, to), (tall, under, deck), k, under_told.is_some(), filled.next());
            }
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
    let says = format!("Above: clear between posts. Below: centre of each post, tape hooked on {}.", placed.origin);
    shapes.push(text((0.0, bottom + 4.0), SIZE, Anchor::Start, says));
    let assumed = assumed(job, top, tape);
    shapes.extend(assumed.iter().map(|says| text((0.0, bottom + 4.0 + LINE), SIZE, Anchor::Start, says.as_str())));
    let title = run.name.clone().unwrap_or_else(|| format!("run {}{}", run.id.0, run.part.suffix()));
    let height = bottom + 6.0 + if assumed.is_some() { LINE } else { 0.0 };
    Figure { title, width: BODY, height, scale: Some(scale), shapes }
}

/// What is drawn and was not told: the height as the answers take it, the gap under only to draw it.
fn assumed(job: &Job, top: Length, tape: Tape) -> Option<String> {
    let height = Source::told(job, RowId::HeightTop).is_none().then(|| format!("the height, drawn {}", tape.read(top)));
    let under = Source::told(job, RowId::GapUnder).is_none();
    let under = under.then(|| format!("the gap under, drawn {} in dashes", tape.read(UNDER)));
    let all: Vec<String> = height.into_iter().chain(under).collect();
    (!all.is_empty()).then(|| format!("Assumed, not told: {}.", all.join("; ")))
}

fn rail(
    shapes: &mut Vec<Shape>,
    (from, to): (f64, f64),
    (tall, under, deck): (f64, f64, f64),
    k: f64,
    told: bool,
    filled: Option<FilledBay>,
) {
    let thick = 1.5 * k;
    shapes.push(block(from, deck - tall, to - from, thick, Ink::None, 0.5));
    let bottom = deck - under - thick;
    match told {
        true => shapes.push(block(from, bottom, to - from, thick, Ink::None, 0.5)),
        false => shapes.extend(dashed(from, bottom, to - from, thick, 0.5)),
    }
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
