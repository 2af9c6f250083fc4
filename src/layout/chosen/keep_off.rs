//! Line posts kept off what was told: a zone each, and posts at a zone's edges where no
//! even split keeps out of it.

use super::super::frame::{Fixed, Frame};
use super::super::ground::Ground;
use super::super::placed::Took;
use super::super::split::{Place, Span};
use super::super::{BayKind, Kind, Lack};
use super::{fewest, line_post, put, told};
use crate::figure::{Fig, Why};
use crate::job::{End, EndOf, KeepOff, Run, Thing};
use crate::measure::Length;

/// A stretch of the run no line post may stand in, from the outside start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Zone {
    from: Length,
    to: Length,
}

impl Zone {
    /// The same zone on the other side of a line.
    pub fn across(self, axis: Length) -> Zone {
        Zone { from: axis * 2 - self.to, to: axis * 2 - self.from }
    }

    /// True where a post stands in it.
    pub fn holds(self, post: &Fixed) -> bool {
        self.touches(post.near, post.far())
    }

    fn touches(self, near: Length, far: Length) -> bool {
        near < self.to && far > self.from
    }
}

/// Every zone the run's choices make. A thing the run does not have makes none.
pub(super) fn zones(frame: &Frame, run: &Run, length: Length) -> Vec<Zone> {
    run.choices.keep_off.iter().flat_map(|k| places(frame, run, length, k.of, k)).collect()
}

fn places(frame: &Frame, run: &Run, length: Length, of: Thing, keep: &KeepOff) -> Vec<Zone> {
    let about = |from: Length, to: Length| Zone { from: from - keep.by, to: to + keep.by };
    let (start, finish) = (frame.lead, frame.lead + length);
    let openings = |is: fn(BayKind) -> bool| -> Vec<Zone> {
        let found = frame.between.iter().enumerate().filter(|(_, k)| is(**k));
        found.map(|(i, _)| about(frame.fixed[i].far(), frame.fixed[i + 1].near)).collect()
    };
    let ends =
        |has: [bool; 2]| [(has[0], start), (has[1], finish)].into_iter().filter(|e| e.0).map(|e| about(e.1, e.1));
    match of {
        Thing::End(EndOf::From) => vec![about(start, start)],
        Thing::End(EndOf::To) => vec![about(finish, finish)],
        Thing::Spot(spot) => {
            let at = told::place(frame, length, spot);
            vec![about(at, at)]
        }
        Thing::Stairs => {
            let head = |end| end == Some(End::StairHead);
            let within = openings(|k| matches!(k, BayKind::Stairs | BayKind::GatedStairs));
            within.into_iter().chain(ends([head(run.from), head(run.to)])).collect()
        }
        Thing::Gate => {
            let beyond = |at| run.gate.is_some_and(|g| g.at.place() == at) && openings(BayKind::is_gate).is_empty();
            let at_ends = ends([beyond(crate::job::GateAt::From), beyond(crate::job::GateAt::To)]);
            openings(BayKind::is_gate).into_iter().chain(at_ends).collect()
        }
    }
}

/// True where no line post of `n` even bays stands in a zone.
pub(super) fn clear_of(span: &Span, n: u16, zones: &[Zone]) -> bool {
    let places: Vec<Place> = span.places(n).collect();
    let lines = places.get(1..places.len() - 1).unwrap_or_default();
    lines.iter().all(|p| zones.iter().all(|z| !z.touches(p.near, p.far())))
}

/// Where no even split keeps out of a zone, a post as near to it as it may stand, on each
/// side where there is room.
pub(super) fn add(
    frame: &mut Frame,
    zones: &[Zone],
    line: &Fig,
    ground: &Ground,
    took: &mut Vec<Took>,
) -> Result<(), Lack> {
    let width = line.as_length().unwrap_or(Length::ZERO);
    let even = |frame: &Frame, i: usize| {
        let span = frame.span(i, width);
        span.fewest(ground.limits, ground.tape).is_none() || fewest(&span, zones, ground.limits, ground.tape).is_some()
    };
    let rails =
        |frame: &Frame| (0..frame.between.len()).filter(|i| frame.between[*i] == BayKind::Rail).collect::<Vec<_>>();
    let odd: Vec<Span> = rails(frame).into_iter().filter(|i| !even(frame, *i)).map(|i| frame.span(i, width)).collect();
    for span in odd {
        for near in zones.iter().flat_map(|z| [z.from - width, z.to]) {
            let inside = near > span.left.far() && near + width < span.right.near;
            let free = zones.iter().all(|z| !z.touches(near, near + width));
            if inside && free {
                let why = Why::Formula("as near as a post may stand to what it must keep off", Vec::new());
                let mark = Fig::length(near + width / 2 - frame.lead, why.clone());
                // Two zones may ask for the same place, or for places too close: the first stands.
                if put(frame, line_post(near, line, Kind::Line, why), Lack::KeepOff).is_ok() {
                    took.push(Took::Edge(mark));
                }
            }
        }
    }
    if rails(frame).into_iter().all(|i| even(frame, i)) { Ok(()) } else { Err(Lack::KeepOff) }
}
