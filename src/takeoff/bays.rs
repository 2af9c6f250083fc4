//! The bays to be filled with rails and balusters, each by its place.

use crate::job::{Job, RunId};
use crate::layout::{Bay, Layout, Part as Stretch, Placed, Post, Skew};
use crate::measure::{Length, Tape};

/// Where a part goes: the label on the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// A bay of the layout, counted from 1 from where its run's tape hooks on.
    Bay(RunId, Stretch, u16),
    /// A stretch of a run as a whole: its posts, its cap.
    Run(RunId, Stretch),
    /// A flight of stairs, counted from 1 in the order told.
    Stairs(u16),
    /// One of the bays told alone, counted from 1.
    Told(u16),
}

/// A bay that carries rails and balusters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RailBay {
    /// Where it is.
    pub at: Where,
    /// Face to face, exactly.
    pub clear: Length,
    /// Face to face as the posts' rounded marks leave it.
    pub built: Length,
    /// The bevels of its rails, one for each post that stands askew, the larger first.
    pub bevels: Bevels,
}

/// How the two ends of a piece are cut off square, the larger first; both `None` for a square cut.
pub type Bevels = [Option<Skew>; 2];

impl Where {
    /// The run, for a bay of the layout.
    pub fn run(self) -> Option<RunId> {
        match self {
            Where::Bay(run, ..) | Where::Run(run, _) => Some(run),
            Where::Told(_) | Where::Stairs(_) => None,
        }
    }

    /// The label: "run 1 bay 2", "bay 3".
    pub fn label(self) -> String {
        match self {
            Where::Bay(run, part, bay) => format!("run {}{} bay {bay}", run.0, part.suffix()),
            Where::Run(run, part) => format!("run {}{}", run.0, part.suffix()),
            Where::Told(bay) => format!("bay {bay}"),
            Where::Stairs(1) => "stairs".to_owned(),
            Where::Stairs(k) => format!("stairs {k}"),
        }
    }
}

/// Every rail bay of the layout, run by run, then the bays told alone.
pub fn rail_bays(job: &Job, layout: &Layout) -> Vec<RailBay> {
    let mut bays: Vec<RailBay> = Vec::new();
    for run in &layout.runs {
        let Ok(placed) = &run.result else { continue };
        for (k, bay) in (1..).zip(placed.rail_bays()) {
            let at = Where::Bay(run.id, run.part, k);
            let mut bevels = posts_of(placed, bay).map(|post| post.and_then(|p| p.skew));
            bevels.sort_by(|a, b| b.cmp(a));
            bays.push(RailBay { at, clear: bay.clear_length(), built: built(placed, bay, layout.tape), bevels });
        }
    }
    let told = crate::solve::order::bays_alone(job);
    bays.extend((1..).zip(told).map(|(k, clear)| RailBay {
        at: Where::Told(k),
        clear,
        built: clear,
        bevels: Bevels::default(),
    }));
    bays
}

/// The posts a bay stands between, where there are any.
fn posts_of<'a>(placed: &'a Placed, bay: &Bay) -> [Option<&'a Post>; 2] {
    let end = bay.start + bay.clear_length();
    [placed.posts.iter().find(|p| p.far() == bay.start), placed.posts.iter().find(|p| p.near == end)]
}

/// A bay's clear between posts that stand on rounded marks.
fn built(placed: &Placed, bay: &Bay, tape: Tape) -> Length {
    let exact = |place: Length| place - placed.lead;
    let read = |p: &Post| p.near_face.as_length().map_or_else(|| exact(p.near), |l| tape.round(l));
    let end = bay.start + bay.clear_length();
    let [left, right] = posts_of(placed, bay);
    let from = left.map_or_else(|| exact(bay.start), |p| read(p) + p.takes);
    right.map_or_else(|| exact(end), read) - from
}
