//! Posts where they were told, mirrored, or kept off things: the frame's fixed posts with
//! those added, and how the spans between them may be split.
//!
//! Order matters: told posts first, then their mirror images, then posts at the edges of
//! what they must keep off where no even split does. Bays between are split evenly after.

mod keep_off;
mod mirror;
mod told;

use super::frame::{Fixed, Frame};
use super::ground::Ground;
use super::limits::Limits;
use super::placed::Took;
use super::sizes::post_width;
use super::split::{Fewest, Span};
use super::{BayKind, Kind, Lack};
use crate::figure::{Fig, Why};
use crate::job::{End, PostRole, Run};
use crate::measure::{Length, Tape};
use keep_off::Zone;

/// How many bays more than the fewest are tried before bays are made uneven (a choice of
/// this program's own: a second extra post is dearer than an odd bay).
const MOST_MORE: u16 = 2;

/// What was chosen on a run, worked into its frame.
#[derive(Clone, Debug, Default)]
pub(super) struct Chosen {
    zones: Vec<Zone>,
    mirrored: bool,
    /// What was done, to be said.
    pub took: Vec<Took>,
}

/// The frame with the posts a run's choices add, and what they ask of the split.
///
/// # Errors
/// What of the choices does not work out.
pub(super) fn choose(frame: &mut Frame, run: &Run, length: Length, ground: &Ground) -> Result<Chosen, Lack> {
    let mut chosen = Chosen { mirrored: run.choices.mirrored, ..Chosen::default() };
    let line = post_width(ground.settings, &[PostRole::Line]);
    told::add(frame, run, length, &line, &mut chosen.took)?;
    chosen.zones = keep_off::zones(frame, run, length);
    if chosen.mirrored {
        let axis = mirror::axis(frame)?;
        mirror::add(frame, axis, &line, &mut chosen.took)?;
        let images: Vec<Zone> = chosen.zones.iter().map(|z| z.across(axis)).collect();
        chosen.zones.extend(images);
        // The image of an end may fall where line posts were told to keep off: both cannot be.
        let image = |f: &&Fixed| f.kind == Some(Kind::Line);
        if frame.fixed.iter().filter(image).any(|f| chosen.zones.iter().any(|z| z.holds(f))) {
            return Err(Lack::Mirror);
        }
    }
    keep_off::add(frame, &chosen.zones, &line, ground, &mut chosen.took)?;
    Ok(chosen)
}

impl Chosen {
    /// The fewest bays of a span that pass no limit and keep line posts off what was told,
    /// up to [`MOST_MORE`] over the limit's own fewest. `None` where none does.
    pub fn fewest(&self, span: &Span, limits: &Limits, tape: Tape) -> Option<Count> {
        fewest(span, &self.zones, limits, tape)
    }

    /// Where posts are mirrored, the same count on both sides of the axis: the greater.
    pub fn even_up(&self, frame: &Frame, counts: &mut [u16]) {
        if let (true, Ok(axis)) = (self.mirrored, mirror::axis(frame)) {
            mirror::even_up(frame, axis, counts);
        }
    }

    /// True where a told bay count, or one evened up, still keeps line posts off.
    pub fn keeps_off(&self, span: &Span, n: u16) -> bool {
        keep_off::clear_of(span, n, &self.zones)
    }
}

/// The fewest bays of a span: by the limits alone, and keeping off what was told as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Count {
    pub by_limit: Fewest,
    pub bays: u16,
}

fn fewest(span: &Span, zones: &[Zone], limits: &Limits, tape: Tape) -> Option<Count> {
    let by_limit = span.fewest(limits, tape)?;
    let mut tried = by_limit.taped..=by_limit.taped + if zones.is_empty() { 0 } else { MOST_MORE };
    let bays = tried.find(|n| span.passes(*n, limits, tape) && keep_off::clear_of(span, *n, zones))?;
    Some(Count { by_limit, bays })
}

/// A line post with its near face there.
fn line_post(near: Length, line: &Fig, kind: Kind, why: Why) -> Fixed {
    let width = line.as_length().unwrap_or(Length::ZERO);
    Fixed { end: End::EndPost, kind: Some(kind), near, width, size: line.clone(), skew: None, post: true, why }
}

/// Puts a post into the stretch of rail it falls in.
///
/// # Errors
/// The lack named, where it would stand in an opening, on another post or off the run.
fn put(frame: &mut Frame, post: Fixed, lack: Lack) -> Result<(), Lack> {
    let holds = |pair: &[Fixed]| pair[0].far() < post.near && post.far() < pair[1].near;
    let at = frame.fixed.windows(2).position(holds).ok_or(lack)?;
    if frame.between[at] != BayKind::Rail {
        return Err(lack);
    }
    frame.fixed.insert(at + 1, post);
    frame.between.insert(at, BayKind::Rail);
    Ok(())
}

/// True where a post with that centre stands already.
fn stands(frame: &Frame, centre: Length) -> bool {
    frame.fixed.iter().any(|f| f.post && f.near + f.width / 2 == centre)
}
