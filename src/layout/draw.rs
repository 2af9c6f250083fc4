//! A run drawn to scale in plain ASCII characters.
//!
//! ```text
//! house                         stair head
//! |#----------------#----------------#
//!      4'-6 3/4"        4'-6 3/4"
//! ```
//! `#` is a post, `|` a wall, `-` rail, `:` a gate; the way to the stairs is left blank.

use super::{Bay, BayKind, Placed, RunLayout};
use crate::measure::{Length, Tape};

/// Fewer columns than this are drawn as if there were this many.
const LEAST_WIDTH: usize = 30;

/// The run drawn no wider than `width` columns (at least 30), with each bay's clear as
/// `tape` reads it. A run too long for its shortest bay to show is drawn to the same
/// scale over several rows. Empty where the run is not laid out.
pub fn draw(run: &RunLayout, width: usize, tape: Tape) -> Vec<String> {
    let Ok(placed) = &run.result else { return Vec::new() };
    let canvas = Canvas::new(placed, width.max(LEAST_WIDTH));
    let line = canvas.line(placed);
    let labels = canvas.labels(placed, tape);
    let rows = line.len().div_ceil(canvas.row);
    let mut drawn = canvas.ends(placed, rows);
    for row in 0..rows {
        let end = (row + 1) * canvas.row;
        let mut text: String = line[row * canvas.row..end.min(line.len())].iter().collect();
        text.push_str(if row + 1 < rows { ">" } else { "" });
        drawn.push(text.trim_end().to_owned());
        drawn.extend(shelve(labels.iter().filter(|l| l.0 / canvas.row == row), row * canvas.row, canvas.row));
        if row + 2 == rows {
            drawn.extend(canvas.last_end(placed));
        }
    }
    drawn
}

struct Canvas {
    /// Columns an inch takes.
    scale: f64,
    /// Columns kept before the run for a wall.
    margin: usize,
    /// Columns of a row; one more is kept for the mark that it goes on.
    row: usize,
}

/// A label: the column its middle stands at, and its text.
type Label = (usize, String);

impl Canvas {
    fn new(p: &Placed, width: usize) -> Canvas {
        let row = width - 1;
        let room = (row - 3) as f64;
        let fits = room / p.overall.for_drawing().max(1.0);
        Canvas { scale: fits.max(least_scale(p, fits)), margin: usize::from(p.ends[0].is_wall()), row }
    }

    fn column(&self, place: Length) -> usize {
        // Places lie between 0 and the run's length: a whole number of columns, never negative.
        self.margin + (place.for_drawing() * self.scale).round().max(0.0) as usize
    }

    /// The run itself, in one long row.
    fn line(&self, p: &Placed) -> Vec<char> {
        let end = self.column(p.overall);
        let mut line = vec![' '; end + 2];
        for bay in &p.bays {
            let (from, to) = (self.column(bay.start), self.column(bay.start + bay.clear_length()));
            line[from..=to].fill(fill(bay.kind));
        }
        for post in &p.posts {
            line[self.column(post.centre())] = '#';
        }
        if p.ends[0].is_wall() {
            line[0] = '|';
        }
        if p.ends[1].is_wall() {
            line[end + 1] = '|';
        }
        line.truncate(end + 1 + usize::from(p.ends[1].is_wall()));
        line
    }

    /// What is written under the line: each bay's clear where it fits, else one label
    /// for bays of one size in a row; openings by name.
    fn labels(&self, p: &Placed, tape: Tape) -> Vec<Label> {
        let mut labels = Vec::new();
        for group in p.bays.chunk_by(|a, b| a.kind == b.kind && a.clear.value() == b.clear.value()) {
            let text = label(&group[0], tape);
            if text.len() < self.columns(&group[0]) || group.len() == 1 {
                labels.extend(group.iter().map(|b| (self.middle(b, b), text.clone())));
            } else {
                labels
                    .push((self.middle(&group[0], &group[group.len() - 1]), format!("{} bays of {text}", group.len())));
            }
        }
        labels
    }

    fn columns(&self, b: &Bay) -> usize {
        self.column(b.start + b.clear_length()) - self.column(b.start)
    }

    fn middle(&self, a: &Bay, b: &Bay) -> usize {
        (self.column(a.start) + self.column(b.start + b.clear_length())) / 2
    }

    /// The ends named over the line: both where it is one row, else the start alone.
    fn ends(&self, p: &Placed, rows: usize) -> Vec<String> {
        let [from, to] = p.ends.map(|e| e.name());
        if rows > 1 {
            return vec![from.to_owned()];
        }
        let end = (self.column(p.overall) + 2).clamp(from.len() + 1 + to.len(), self.row);
        vec![format!("{from}{to:>width$}", width = end - from.len())]
    }

    fn last_end(&self, p: &Placed) -> Option<String> {
        let end = self.column(p.overall) % self.row + 1;
        let name = p.ends[1].name();
        Some(format!("{name:>width$}", width = end.max(name.len()).min(self.row)))
    }
}

/// The least columns an inch that still tell posts apart: two columns between
/// neighbours; one where only a stray short bay would force a second row.
fn least_scale(p: &Placed, fits: f64) -> f64 {
    let least = p.bays.iter().map(|b| b.spacing.for_drawing()).fold(f64::INFINITY, f64::min);
    if !least.is_finite() || least <= 0.0 {
        return 0.0;
    }
    let roomy = fits * p.overall.for_drawing() >= 3.0 * p.bays.len() as f64;
    if roomy && fits >= 1.0 / least { fits } else { 2.0 / least }
}

fn fill(kind: BayKind) -> char {
    match kind {
        BayKind::Rail => '-',
        BayKind::Gate | BayKind::GatedStairs => ':',
        BayKind::Stairs => ' ',
    }
}

fn label(bay: &Bay, tape: Tape) -> String {
    let clear = tape.read(bay.clear_length());
    match bay.kind {
        BayKind::Rail => clear,
        BayKind::Gate | BayKind::GatedStairs => format!("gate {clear}"),
        BayKind::Stairs => format!("stairs {clear}"),
    }
}

/// Puts labels on as few shelves under the line as keep them apart and inside `width`.
fn shelve<'a>(labels: impl Iterator<Item = &'a Label>, start: usize, width: usize) -> Vec<String> {
    let mut shelves: Vec<String> = Vec::new();
    for (middle, text) in labels {
        let at = (middle - start).saturating_sub(text.len() / 2).min(width.saturating_sub(text.len()));
        let free = |s: &String| s.is_empty() || s.len() < at;
        let shelf = match shelves.iter().position(free) {
            Some(i) => &mut shelves[i],
            None => {
                shelves.push(String::new());
                let last = shelves.len() - 1;
                &mut shelves[last]
            }
        };
        shelf.push_str(&" ".repeat(at - shelf.len()));
        shelf.push_str(text);
    }
    shelves
}
