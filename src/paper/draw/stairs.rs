//! A flight from the side, with its guard where that can be laid out.

use super::super::page::{Anchor, Figure, Ink, Shape, block, line, text};
use super::super::set::BODY;
use super::{begun, dimension, per_inch, scale_for};
use crate::job::Job;
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::reply::tape_of;
use crate::solve::told_length;
use crate::stairs::flight::{Flight, work_out};
use crate::stairs::{RakeGuard, Stands, Told};
use crate::takeoff::{flights, rake_guard};

const SIZE: f64 = 7.0;
/// Deck drawn behind the head of the stairs, and ground beyond their foot, in inches.
const BEYOND: f64 = 14.0;

/// A guard laid out, and what it is drawn from, in inches.
struct Drawn {
    guard: RakeGuard,
    /// The top post's centre behind the nosing.
    back: f64,
    /// The rail's top above the line of the nosings.
    high: f64,
    /// How wide the top post, those between and the newel are.
    widths: [f64; 3],
}

/// Every flight that works out.
pub fn stairs(job: &Job) -> Vec<Figure> {
    let tape = tape_of(job);
    let all = flights(job);
    let many = all.len() > 1;
    let drawn = all.iter().enumerate().filter_map(|(n, told)| {
        let flight = work_out(&Told::of(told, told_length(job, RowId::Grade))).ok()?;
        let guard = rake_guard(job, told, tape).map(|(site, guard)| {
            let back = site.top_back.as_length().unwrap_or(Length::ZERO).for_drawing();
            let high = site.height.as_length().unwrap_or(Length::ZERO).for_drawing();
            let widths = site.widths.map(|w| w.as_length().unwrap_or(Length::ZERO).for_drawing());
            Drawn { guard, back, high, widths }
        });
        let title = if many { format!("Flight {}", n + 1) } else { "The stairs from the side".to_owned() };
        figure(&flight, guard.as_ref(), title, tape)
    });
    drawn.collect()
}

fn figure(flight: &Flight, guard: Option<&Drawn>, title: String, tape: Tape) -> Option<Figure> {
    let going = flight.going.as_ref()?;
    let length = |f: &crate::figure::Fig| f.as_length().unwrap_or(Length::ZERO);
    let (rise, tread) = (length(&flight.rise), length(&going.tread));
    let (rise_in, tread_in) = (rise.for_drawing(), tread.for_drawing());
    let risers = flight.riser_count();
    let treads = flight.tread_count();
    let high = guard.map_or(40.0, |drawn| drawn.high + 4.0);
    let wide = BEYOND * 2.0 + tread_in * f64::from(treads);
    let tall = high + rise_in * f64::from(risers);
    let scale = scale_for(wide, BODY - 70.0).max(scale_for(tall, 330.0));
    let k = per_inch(scale);
    let at = |x: f64, y: f64| ((x + BEYOND) * k + 6.0, (y + high) * k);
    // Down the flight: level to the nosing, down the riser, and on.
    let mut profile = vec![at(-BEYOND, 0.0), at(0.0, 0.0)];
    for n in 0..risers {
        let (x, y) = (tread_in * f64::from(n), rise_in * f64::from(n + 1));
        profile.push(at(x, y));
        let next = if n + 1 < risers { x + tread_in } else { x + BEYOND };
        profile.push(at(next, y));
    }
    let mut shapes: Vec<Shape> = profile.windows(2).map(|w| line(w[0], w[1], 1.0)).collect();
    if let Some(drawn) = guard {
        shapes.extend(of_guard(drawn, (rise_in, tread_in, risers), k, &at));
    }
    let foot = at(0.0, rise_in * f64::from(risers)).1;
    // One riser and one tread, then the whole.
    let (nx, ny) = at(0.0, rise_in / 2.0);
    shapes.push(begun(dimension((nx + 3.0, ny + 2.0), SIZE, false, rise, tape)));
    if risers > 1 {
        let (tx, ty) = at(tread_in / 2.0, rise_in);
        shapes.push(dimension((tx, ty + 8.0), SIZE, false, tread, tape));
    }
    let ends = (at(0.0, 0.0).0, at(length(&going.run).for_drawing(), 0.0).0);
    let y = foot + 10.0;
    shapes.push(line((ends.0, y), (ends.1, y), 0.4));
    shapes.push(dimension(((ends.0 + ends.1) / 2.0, y + 9.0), SIZE, false, length(&going.run), tape));
    let says = format!("{risers} risers, {treads} treads; total rise {}", tape.read(length(&flight.total_rise)));
    shapes.push(text((0.0, y + 20.0), SIZE, Anchor::Start, says));
    Some(Figure { title, width: BODY, height: y + 24.0, scale: Some(scale), shapes })
}

fn of_guard(
    drawn: &Drawn,
    (rise, tread, risers): (f64, f64, u16),
    k: f64,
    at: &dyn Fn(f64, f64) -> (f64, f64),
) -> Vec<Shape> {
    let nosing = |x: f64| x * rise / tread;
    let mut shapes = Vec::new();
    let mut tops = Vec::new();
    let last = drawn.guard.posts.len().saturating_sub(1);
    for (n, post) in drawn.guard.posts.iter().enumerate() {
        let x = post.at.as_length().unwrap_or(Length::ZERO).for_drawing() - drawn.back;
        let base = match post.stands {
            Stands::Deck => 0.0,
            Stands::Tread(n) => rise * f64::from(n),
            Stands::Landing => rise * f64::from(risers),
        };
        let top = nosing(x) - drawn.high;
        let (px, py) = at(x, top);
        let [first, between, newel] = drawn.widths;
        let wide = k * if n == 0 {
            first
        } else if n == last {
            newel
        } else {
            between
        };
        shapes.push(block(px - wide / 2.0, py, wide, (base - top) * k, Ink::Pale, 0.6));
        tops.push((px, py));
    }
    shapes.extend(tops.windows(2).map(|w| line(w[0], w[1], 1.4)));
    shapes
}
