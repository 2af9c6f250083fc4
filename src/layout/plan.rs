//! The deck from above, to scale, in plain ASCII characters.
//!
//! ```text
//!            _____
//!   #----2---     ------#
//!   |                   |
//!   1                   3
//!   |                   |
//! ========= house =========
//! ```
//! `#` is a corner, `=` the house, `_` and `|` treads beside a gap for the stairs. A side
//! bears its run's number; the lengths stand below. With left and right told from the yard
//! the house is at the top.

use crate::job::outline::{filled, stands_free};
use crate::job::walk::{Leg, Point, legs};
use crate::job::{Job, Run, StairOpening, View};
use crate::measure::{Length, Tape};
use crate::solve::choice;
use unicode_width::UnicodeWidthChar;

/// Fewer columns than this are drawn as if there were this many.
const LEAST_WIDTH: usize = 30;
/// A plan takes no more rows than this, its lengths aside.
const MOST_ROWS: f64 = 20.0;
/// A character is about twice as high as it is wide.
const ASPECT: f64 = 2.0;
/// Columns and rows kept around the deck for treads.
const MARGIN: usize = 5;

/// The plan no wider than `width` columns (at least 30), then each side's length. Empty
/// without an outline of which every side is known.
pub fn plan(job: &Job, width: usize) -> Vec<String> {
    let outline = filled(job);
    let sides: Vec<&Run> = outline.job.runs.iter().filter(|r| r.turn.is_some()).collect();
    let legs = legs(&outline);
    if legs.is_empty() || legs.len() < sides.len() {
        return Vec::new();
    }
    let width = width.max(LEAST_WIDTH);
    let mut sheet = Sheet::new(&legs, width, choice::view(job) == Some(View::Yard));
    for (leg, run) in legs.iter().zip(&sides) {
        sheet.side(leg, run);
    }
    let free = stands_free(job);
    if !free {
        sheet.house(&legs);
    }
    legs.iter().skip(usize::from(!free)).for_each(|leg| sheet.put(sheet.cell(place(leg.from)), '#'));
    sheet.rows().into_iter().chain(sides.iter().map(|r| legend(r, width, choice::tape(job)))).collect()
}

/// "2 front: 16'-0", stairs 4'-0"".
fn legend(run: &Run, width: usize, tape: Tape) -> String {
    let mut text = run.id.0.to_string();
    text.extend(run.name.iter().flat_map(|name| [" ", name.as_str()]));
    let length = run.length.map_or(String::new(), |t| format!(": {}", tape.read(t.length)));
    let stairs: String = run.stairs.iter().map(|s| format!(", stairs {}", tape.read(s.width))).collect();
    // The figures stay whole: only a long name gives way.
    let room = width.saturating_sub(length.len() + stairs.len());
    let mut used = 0;
    let fits = |c: &char| {
        used += c.width().unwrap_or(0);
        used <= room
    };
    format!("{}{length}{stairs}", text.chars().take_while(fits).collect::<String>())
}

/// A place on the ground, for drawing only.
type Spot = (f64, f64);

fn place(p: Point) -> Spot {
    (p.0.for_drawing(), p.1.for_drawing())
}

struct Sheet {
    scale: f64,
    left: f64,
    low: f64,
    top: f64,
    /// Seen from the yard: the house is at the top.
    yard: bool,
    cells: Vec<Vec<char>>,
}

impl Sheet {
    fn new(legs: &[Leg], width: usize, yard: bool) -> Sheet {
        let spots: Vec<Spot> = legs.iter().flat_map(|l| [place(l.from), place(l.to)]).collect();
        let fold = |of: fn(&Spot) -> f64, pick: fn(f64, f64) -> f64| spots.iter().map(of).fold(0.0, pick);
        let (left, right) = (fold(|s| s.0, f64::min), fold(|s| s.0, f64::max));
        let (low, top) = (fold(|s| s.1, f64::min), fold(|s| s.1, f64::max));
        let columns = (width - 2 * MARGIN - 1) as f64;
        let scale = (columns / (right - left).max(1.0)).min(MOST_ROWS * ASPECT / (top - low).max(1.0));
        // Both are sums of lengths in the slots' range, so a few dozen rows at most.
        let rows = ((top - low) * scale / ASPECT).round() as usize + 2 * MARGIN;
        Sheet { scale, left, low, top, yard, cells: vec![vec![' '; width]; rows] }
    }

    /// Row and column of a place.
    fn cell(&self, s: Spot) -> (isize, isize) {
        let down = if self.yard { s.1 - self.low } else { self.top - s.1 };
        let row = (down * self.scale / ASPECT).round() as isize;
        (row + MARGIN as isize, ((s.0 - self.left) * self.scale).round() as isize + MARGIN as isize)
    }

    fn put(&mut self, (row, column): (isize, isize), c: char) {
        let (Ok(row), Ok(column)) = (usize::try_from(row), usize::try_from(column)) else { return };
        if let Some(cell) = self.cells.get_mut(row).and_then(|cells| cells.get_mut(column)) {
            *cell = c;
        }
    }

    /// The house, a thick line that closes the walk, with its name in it.
    fn house(&mut self, legs: &[Leg]) {
        let ends = [legs.first().map(|l| l.from), legs.last().map(|l| l.to)];
        let columns = ends.into_iter().flatten().map(|p| self.cell((place(p).0, 0.0)).1);
        let (from, to) = columns.fold((isize::MAX, isize::MIN), |(lo, hi), c| (lo.min(c), hi.max(c)));
        let row = self.cell((0.0, 0.0)).0;
        (from - 3..=to + 3).for_each(|c| self.put((row, c), '='));
        let start = (from + to) / 2 - 3;
        (start..).zip(" house ".chars()).for_each(|(c, letter)| self.put((row, c), letter));
    }

    fn side(&mut self, leg: &Leg, run: &Run) {
        let (from, to) = (place(leg.from), place(leg.to));
        let mark = stroke(from, to);
        self.stroke(from, to, mark);
        let mut label = (0.0, 1.0);
        let mut reached = 0.0;
        let mut widest = 0.0;
        for (stairs, near, far) in openings(run) {
            self.stairs(from, to, (near, far), stairs, run);
            if near - reached > widest {
                (label, widest) = ((reached, near), near - reached);
            }
            reached = far;
        }
        if 1.0 - reached > widest {
            label = (reached, 1.0);
        }
        let (row, column) = self.cell(along(from, to, (label.0 + label.1) / 2.0));
        (column..).zip(run.id.0.to_string().chars()).for_each(|(c, digit)| self.put((row, c), digit));
    }

    /// The gap for the stairs, its treads, and the flanks of recessed ones.
    fn stairs(&mut self, from: Spot, to: Spot, (near, far): (f64, f64), stairs: StairOpening, run: &Run) {
        let length = run.length.map_or(1.0, |t| t.length.for_drawing()).max(1.0);
        // Square in from the side, the deck on the right of the walk.
        let inward = ((to.1 - from.1) / length, -(to.0 - from.0) / length);
        let (a, b) = (along(from, to, near), along(from, to, far));
        self.stroke(a, b, ' ');
        let level = stroke(from, to) == '-';
        let step = if level { ASPECT / self.scale } else { 2.0 / self.scale };
        let (first, count) = match stairs.recess {
            None => (-1.0, 2),
            Some(deep) => (0.0, (deep.for_drawing() / step).floor().max(1.0) as usize),
        };
        let shift = |s: Spot, by: f64| (s.0 + inward.0 * by, s.1 + inward.1 * by);
        for k in 0..count {
            let by = if first < 0.0 { -step * (k + 1) as f64 } else { step * k as f64 };
            self.stroke(shift(a, by), shift(b, by), if level { '_' } else { '|' });
        }
        if let Some(deep) = stairs.recess {
            let deep = deep.for_drawing();
            [a, b].into_iter().for_each(|s| self.stroke(s, shift(s, deep), stroke(s, shift(s, deep))));
            [a, b, shift(a, deep), shift(b, deep)].into_iter().for_each(|s| self.put(self.cell(s), '#'));
        } else {
            [a, b].into_iter().for_each(|s| self.put(self.cell(s), '+'));
        }
    }

    /// A straight stroke of one character.
    fn stroke(&mut self, from: Spot, to: Spot, c: char) {
        let (a, b) = (self.cell(from), self.cell(to));
        let steps = (b.0 - a.0).abs().max((b.1 - a.1).abs());
        for k in 0..=steps {
            let part = |a: isize, b: isize| a + ((b - a) as f64 * k as f64 / steps.max(1) as f64).round() as isize;
            self.put((part(a.0, b.0), part(a.1, b.1)), c);
        }
    }

    /// The rows with anything on them, the blank ones around the deck left out.
    fn rows(self) -> Vec<String> {
        let text = |row: Vec<char>| row.into_iter().collect::<String>().trim_end().to_owned();
        let rows: Vec<String> = self.cells.into_iter().map(text).collect();
        let last = rows.iter().rposition(|r| !r.is_empty()).map_or(0, |i| i + 1);
        rows[..last].iter().skip_while(|r| r.is_empty()).cloned().collect()
    }
}

fn along(from: Spot, to: Spot, part: f64) -> Spot {
    (from.0 + (to.0 - from.0) * part, from.1 + (to.1 - from.1) * part)
}

/// Which character a stroke is drawn with.
fn stroke(from: Spot, to: Spot) -> char {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    match (y.abs() * 3.0 < x.abs(), x.abs() * 3.0 < y.abs()) {
        (true, _) => '-',
        (_, true) => '|',
        _ if (x > 0.0) == (y > 0.0) => '/',
        _ => '\\',
    }
}

/// The stairs of a run from the left and where they start and end, in parts of its length.
fn openings(run: &Run) -> Vec<(StairOpening, f64, f64)> {
    let Some(length) = run.length.map(|t| t.length) else { return Vec::new() };
    let part = |l: Length| l.for_drawing() / length.for_drawing().max(1.0);
    let placed =
        |s: StairOpening| Some((s, part(s.flanks(Some(length)).0?), part(s.flanks(Some(length)).0? + s.width)));
    run.stairs.along(Some(length)).into_iter().filter_map(placed).collect()
}
