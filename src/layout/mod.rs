//! Where posts go: fixed posts first, then even bays between them.
//!
//! A run is laid on one line, measured from its outside start:
//!
//! 1. `frame` sets the fixed posts: ends, both sides of a stair opening, gate jambs.
//! 2. `split` parts each span between them into the fewest equal clear bays that
//!    pass no limit, on the tape as well as exactly.
//! 3. `place` names an origin for the tape and gives every post and bay its figures.
//!
//! [`answer`], [`draw`] and [`values`] are three views of the result. Everything here
//! is a pure function of the job.

mod answer;
mod chosen;
mod chosen_words;
mod corner;
mod draw;
mod edge_words;
mod ends;
mod frame;
mod framing;
mod ground;
mod joins;
mod kind;
mod limits;
mod line;
mod opening;
mod place;
mod placed;
mod plan;
mod reach;
mod recess;
mod sizes;
mod skew;
mod split;
mod stair_ways;
mod stretch;
mod values;

pub use answer::{Focus, answer};
pub use corner::Meet;
pub use draw::draw;
pub(crate) use framing::framing_untold;
pub use framing::{Framing, Missed, Under};
pub use kind::Kind;
pub use limits::{Limits, clear_max};
pub use line::line_inside;
pub use placed::{Bay, BayKind, Intrusion, Lack, Layout, Placed, Post, RunLayout, Took};
pub use plan::plan;
pub use sizes::post_width;
pub use skew::Skew;
pub use stair_ways::{Beside, beside, other_ways};
pub(crate) use stretch::as_built;
pub use stretch::{Part, Stretch, stretches};
pub use values::values;

use crate::figure::Fig;
use crate::job::outline::filled;
use crate::job::walk::miss;
use crate::job::{Job, PostRole, RunId};
use ground::Ground;
use joins::neighbours;

/// Lays every run of the job out, in the order told.
pub fn lay_out(job: &Job) -> Layout {
    let tape = crate::solve::choice::tape(job);
    let limits = Limits::in_force(&job.settings);
    let outline = filled(job);
    let ground = Ground::of(job, &limits, tape);
    let ends = neighbours(&outline.job);
    let runs: Vec<RunLayout> =
        outline.job.runs.iter().zip(ends).flat_map(|(run, ends)| place::run(run, &ground, ends)).collect();
    let on_line = |r: &RunLayout| r.result.as_ref().is_ok_and(|p| p.on_line.is_some());
    let line = ground.line.ok().filter(|_| runs.iter().any(on_line));
    let framing = framing::framing(&outline, &runs, &limits, tape);
    Layout { runs, tape, line, framing, open: miss(&outline), clear_max: clear_max(job), limits }
}

impl Layout {
    /// The roles its posts stand in, each once.
    pub fn roles(&self) -> Vec<PostRole> {
        let placed = self.runs.iter().filter_map(|r| r.result.as_ref().ok());
        let mut roles: Vec<PostRole> = placed.flat_map(|p| p.posts.iter().map(|post| post.kind.role())).collect();
        roles.sort();
        roles.dedup();
        roles
    }

    /// The longest bay with rails, face to face.
    pub fn longest_bay(&self) -> Option<&Fig> {
        let placed = self.runs.iter().filter_map(|r| r.result.as_ref().ok());
        placed.flat_map(|p| p.rail_bays().map(|b| &b.clear)).max_by_key(|clear| clear.as_length())
    }

    /// The layout of one run alone; all of it for `None`.
    pub fn only(&self, which: Option<RunId>) -> Layout {
        self.keeping(|id| which.is_none_or(|only| only == id))
    }

    /// The layout of some runs, each as it stands in the whole.
    pub fn keeping(&self, keep: impl Fn(RunId) -> bool) -> Layout {
        let mut layout = self.clone();
        layout.runs.retain(|r| keep(r.id));
        layout.framing.retain(|f| keep(f.run));
        layout
    }

    /// How many posts stand in all: a corner post that two runs share is one.
    pub fn distinct_posts(&self) -> usize {
        self.runs.iter().map(|r| r.result.as_ref().map_or(0, |p| p.posts.len() - self.counted_before(r))).sum()
    }

    /// How many of a stretch's posts one told before it in this layout holds already.
    fn counted_before(&self, r: &RunLayout) -> usize {
        self.shared_before(r).into_iter().filter(|shared| *shared).count()
    }

    /// Whether a stretch's first and last post are held already by one told before it.
    pub(crate) fn shared_before(&self, r: &RunLayout) -> [bool; 2] {
        let whole = |id| self.runs.iter().any(|o| o.id == id && o.part == Part::Whole && o.result.is_ok());
        let held = |meet: &Option<Meet>| meet.as_ref().is_some_and(|m| m.later && m.gap.is_none() && whole(m.run));
        [held(&r.meets[0]), held(&r.meets[1])]
    }
}
