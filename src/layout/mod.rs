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
mod draw;
mod frame;
mod kind;
mod limits;
mod place;
mod placed;
mod sizes;
mod split;
mod stretch;
mod values;

pub use answer::{Focus, answer};
pub use draw::draw;
pub use kind::Kind;
pub use limits::{Limits, clear_max};
pub use placed::{Bay, BayKind, Lack, Layout, Placed, Post, RunLayout};
pub use sizes::post_width;
pub use stretch::{Part, Stretch, stretches};
pub use values::values;

use crate::job::outline::filled;
use crate::job::{Job, RunId};
use crate::measure::Tape;

/// Lays every run of the job out, in the order told.
pub fn lay_out(job: &Job) -> Layout {
    let tape = job.settings.tape.and_then(|d| Tape::to(i128::from(d))).unwrap_or_default();
    let limits = Limits::in_force(&job.settings);
    let outlined = filled(job).job;
    let runs = outlined.runs.iter().map(|run| place::run(run, &job.settings, &limits, tape)).collect();
    Layout { runs, tape, limits, clear_max: clear_max(job) }
}

impl Layout {
    /// The layout of one run alone; all of it for `None`.
    pub fn only(&self, which: Option<RunId>) -> Layout {
        let mut layout = self.clone();
        layout.runs.retain(|r| which.is_none_or(|id| r.id == id));
        layout
    }
}
