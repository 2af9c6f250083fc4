//! A foot in plain ASCII characters, to scale.
//!
//! ```text
//! xxxxxxx  comes off      #######  leg      : : :  deck
//! ```

use super::cut::{Cut, Spot};
use super::face::Face;
use super::feet::Foot;
use super::stack::Stack;
use crate::measure::{Length, Tape};

/// Columns and rows to the inch of a face: a character is about twice as high as it is wide.
const COLUMNS: f64 = 4.0;
const ROWS: f64 = 2.0;
/// Columns to the inch from above, where a page has the room.
const FROM_ABOVE: f64 = 8.0;
/// The columns of a page.
const PAGE: f64 = 76.0;
/// Deck and air drawn round the foot, in inches.
const MARGIN: f64 = 0.75;
/// Post drawn above its shoulder, in inches.
const ABOVE: f64 = 3.0;

/// A cut from above, out at the top of the page.
pub fn draw_foot(cut: &Cut) -> Vec<String> {
    let (x, y) = (cut.size.along.for_drawing() / 2.0 + MARGIN, cut.size.across.for_drawing() / 2.0 + MARGIN);
    let scale = FROM_ABOVE.min(PAGE / (2.0 * x));
    let (columns, rows) = ((2.0 * x * scale).round() as usize, (y * scale).round() as usize);
    let cell = |row: usize, column: usize| {
        let at = ((column as f64 + 0.5) / scale - x, y - (row as f64 + 0.5) * 2.0 / scale);
        mark(cut, at, row + column)
    };
    let row = |r: usize| (0..columns).map(|c| cell(r, c)).collect::<String>().trim_end().to_owned();
    (0..rows).map(row).collect()
}

fn mark(cut: &Cut, at: (f64, f64), place: usize) -> char {
    let within = |pieces: &[Vec<Spot>]| pieces.iter().any(|ring| holds(ring, at));
    match (within(&cut.off), within(&cut.left), holds(&cut.deck, at)) {
        (true, ..) => 'x',
        (_, true, _) => '#',
        (.., true) if place.is_multiple_of(2) => '.',
        _ => ' ',
    }
}

/// True where a ring goes round a place: it crosses a ray from there an odd number of times.
fn holds(ring: &[Spot], at: (f64, f64)) -> bool {
    let next = ring.iter().cycle().skip(1);
    let crossings = ring.iter().zip(next).filter(|(a, b)| {
        let (ax, ay, bx, by) = (a.0.for_drawing(), a.1.for_drawing(), b.0.for_drawing(), b.1.for_drawing());
        (ay > at.1) != (by > at.1) && at.0 < (bx - ax) * (at.1 - ay) / (by - ay) + ax
    });
    crossings.count() % 2 == 1
}

/// Two faces of a foot side by side, each looked at straight on, with the shoulder and the
/// leg's end marked. Empty until the leg's length is known.
pub fn draw_faces(foot: &Foot, stack: &Stack, faces: [Face; 2], tape: Tape) -> Vec<String> {
    let Some(leg) = stack.leg.as_ref().and_then(|f| f.as_length()) else { return Vec::new() };
    let decking = stack.decking.as_length().unwrap_or(Length::ZERO).for_drawing();
    let rows = ((ABOVE + leg.for_drawing()) * ROWS).round() as usize;
    let shoulder_row = (ABOVE * ROWS).round() as usize;
    let draw = |face: Face, row: usize| {
        let down = (row as f64 + 0.5) / ROWS - ABOVE;
        let cut = if down < decking { &foot.upper } else { &foot.lower };
        strip(face, if down < 0.0 { None } else { Some(cut) }, &foot.lower)
    };
    let label = |row: usize| match row {
        r if r == shoulder_row => format!("  <- shoulder, {} from the top", tape.read_inches(length(&stack.shoulder))),
        r if r + 1 == rows => format!("  <- end, {} below the shoulder", tape.read_inches(leg)),
        _ => String::new(),
    };
    let wide = strip(faces[0], None, &foot.lower).len().max(faces[0].name().len()) + 3;
    let head = format!("{:wide$}{}", faces[0].name(), faces[1].name());
    let padded = |row: usize| {
        let (one, two) = (draw(faces[0], row), draw(faces[1], row));
        format!("{one:wide$}{two}{}", label(row)).trim_end().to_owned()
    };
    std::iter::once(head).chain((0..rows).map(padded)).collect()
}

fn length(fig: &crate::figure::Fig) -> Length {
    fig.as_length().unwrap_or(Length::ZERO)
}

/// One row of a face: `x` where it comes off, `#` where it stays.
fn strip(face: Face, cut: Option<&Cut>, size: &Cut) -> String {
    let columns = (face.width(size).for_drawing() * COLUMNS).round() as usize;
    let gone = cut.map(|c| face.cut_away(c)).unwrap_or_default();
    let away = |column: usize| {
        let at = (column as f64 + 0.5) / COLUMNS;
        gone.iter().any(|(from, to)| from.for_drawing() < at && at < to.for_drawing())
    };
    (0..columns).map(|c| if away(c) { 'x' } else { '#' }).collect()
}
