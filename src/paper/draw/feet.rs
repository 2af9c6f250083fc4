//! The posts' feet from above: what comes off is dark, the deck's edge below, out is up.

use super::super::page::{Anchor, Figure, Ink, Shape, line, text};
use super::super::set::BODY;
use super::{dimension, per_inch};
use crate::job::Job;
use crate::measure::{Length, Tape};
use crate::notch::{Cut, Post, batches, feet as feet_of};
use crate::reply::tape_of;

/// So many inches of a post to one on paper.
const SCALE: u32 = 4;
const SIZE: f64 = 7.0;
/// Room round each foot for its dimensions.
const ROOM: f64 = 64.0;

/// One drawing of every cut there is; none where no post is cut.
pub fn feet(job: &Job) -> Vec<Figure> {
    let Ok(feet) = feet_of(job) else { return Vec::new() };
    if feet.uncut.is_some() || feet.nosing.is_none() {
        return Vec::new();
    }
    let tape = tape_of(job);
    let k = per_inch(SCALE);
    let (mut x, mut y, mut tallest) = (0.0, 0.0, 0.0_f64);
    let mut shapes = Vec::new();
    for batch in batches(&feet) {
        let posts: Vec<&Post> = batch.posts.iter().filter_map(|at| feet.posts.get(*at)).collect();
        let Some(Ok(foot)) = posts.first().map(|p| &p.foot) else { continue };
        let numbers: Vec<String> = posts.iter().map(|p| p.number.to_string()).collect();
        let levels: &[(&str, &Cut)] = if foot.is_stepped() {
            &[("at the decking", &foot.upper), ("at the rim", &foot.lower)]
        } else {
            &[("", &foot.lower)]
        };
        for (level, cut) in levels {
            let (wide, tall) = (cut.size.along.for_drawing() * k, cut.size.across.for_drawing() * k);
            if x + wide + ROOM > BODY {
                (x, y, tallest) = (0.0, y + tallest + ROOM, 0.0);
            }
            tallest = tallest.max(tall);
            let place = (x + ROOM / 2.0 + wide / 2.0, y + tall / 2.0 + 12.0);
            shapes.extend(one(cut, place, k, tape));
            let says = format!("post{} {}", if numbers.len() > 1 { "s" } else { "" }, shortly(&numbers));
            shapes.push(text((place.0, y + tall + 36.0), SIZE, Anchor::Middle, says));
            shapes.push(text((place.0, y + tall + 45.0), SIZE, Anchor::Middle, *level));
            x += wide + ROOM;
        }
    }
    if shapes.is_empty() {
        return Vec::new();
    }
    let title = "Feet from above, as you stand on the deck looking out: dark comes off".to_owned();
    vec![Figure { title, width: BODY, height: y + tallest + 50.0, scale: Some(SCALE), shapes }]
}

/// "1, 2, 5 ...": no more than fit under a foot.
fn shortly(numbers: &[String]) -> String {
    let shown = numbers.iter().take(5).cloned().collect::<Vec<_>>().join(", ");
    if numbers.len() > 5 { format!("{shown} ...") } else { shown }
}

fn one(cut: &Cut, (cx, cy): (f64, f64), k: f64, tape: Tape) -> Vec<Shape> {
    let at = |(x, y): &(Length, Length)| (cx + x.for_drawing() * k, cy - y.for_drawing() * k);
    let outline = |corners: &[(Length, Length)], fill, thick| Shape::Area {
        corners: corners.iter().map(at).collect(),
        fill,
        thick,
    };
    let mut shapes = vec![outline(&cut.size.corners(), Ink::None, 0.8)];
    shapes.extend(cut.off.iter().map(|piece| outline(piece, Ink::Grey, 0.8)));
    let (half_wide, half_tall) = (cut.size.along.for_drawing() * k / 2.0, cut.size.across.for_drawing() * k / 2.0);
    shapes.push(dimension((cx, cy - half_tall - 3.0), SIZE, false, cut.size.along, tape));
    let spots = || cut.off.iter().flatten();
    let extent = |of: fn(&(Length, Length)) -> Length| {
        let low = spots().map(of).min()?;
        let high = spots().map(of).max()?;
        Some((low, high))
    };
    if let Some((low, high)) = extent(|s| s.1)
        && high - low < cut.size.across
    {
        let x = cx + half_wide + 5.0;
        let y = |l: Length| cy - l.for_drawing() * k;
        shapes.push(line((x, y(low)), (x, y(high)), 0.4));
        shapes.push(text_of((x + 3.0, (y(low) + y(high)) / 2.0 + 2.5), high - low, tape));
    }
    if let Some((low, high)) = extent(|s| s.0)
        && high - low < cut.size.along
    {
        let y = cy + half_tall + 4.0;
        let x = |l: Length| cx + l.for_drawing() * k;
        shapes.push(line((x(low), y), (x(high), y), 0.4));
        shapes.push(dimension(((x(low) + x(high)) / 2.0, y + 9.0), SIZE, false, high - low, tape));
    }
    shapes
}

fn text_of(at: (f64, f64), l: Length, tape: Tape) -> Shape {
    match dimension(at, SIZE, false, l, tape) {
        Shape::Text { at, size, bold, upright, words, inches, .. } => {
            Shape::Text { at, size, bold, anchor: Anchor::Start, upright, words, inches }
        }
        other => other,
    }
}
