//! What stood before a change of where posts go, in one line.

use crate::job::{Fact, Job};
use crate::layout::{Focus, answer, lay_out};
use crate::reply::{Line, Role, Span};

/// "Before: 3 posts, 2 bays of ...", for each run whose posts were told anew; none for a run
/// that could not be laid out before.
pub fn before(job: &Job, facts: &[Fact]) -> Vec<Line> {
    let chosen = |f: &Fact| match f {
        Fact::Run(id, patch) if !patch.choices.is_empty() => Some(*id),
        _ => None,
    };
    let layout = lay_out(job);
    let laid = |id| layout.runs.iter().any(|r| r.id == id && r.result.is_ok());
    let ids = facts.iter().filter_map(chosen).filter(|id| laid(*id));
    let first = |id| answer(&layout, Some(id), Focus::Whole).into_iter().find(|l| l.role == Role::Answer);
    ids.filter_map(first)
        .map(|l| Line::new(Role::Detail, std::iter::once(Span::Say("Before: ")).chain(l.spans)))
        .collect()
}
