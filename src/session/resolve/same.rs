//! One run like another.

use super::{Branch, Branches, Problem, Resolver};
use crate::grammar::draft::RunDraft;
use crate::grammar::sense::Side;
use crate::job::outline::filled;
use crate::job::{Basis, Fact, Run, RunId, RunPatch};
use crate::session::state::Focus;
use crate::session::targets::{self, Target, target};

impl Resolver<'_> {
    /// "right side matches the left": its length, with the ends mirrored.
    pub(super) fn same(&self, branch: Branch, what: Option<Side>, like: Option<Side>) -> Branches {
        let nothing = || Problem::Ask("The same as what? Name the run to copy and the run to make.", Vec::new());
        let walk = branch.job.runs.iter().find(|r| r.turn.is_some());
        let model = match like {
            // "same again on the other side": as the walk's first side is.
            None if what == Some(Side::Other) && walk.is_some() => walk,
            Some(side) => targets::named(&branch.job, side),
            None => targets::focus(self.session, &branch.job),
        };
        let model = model.cloned().ok_or_else(nothing)?;
        let side = what.and_then(|w| meant(w, &model)).ok_or_else(nothing)?;
        let draft = RunDraft { name: Some(side), run_word: true, ..RunDraft::default() };
        let id = match target(self.session, &branch.job, &draft, false) {
            Target::Old(id) if id != model.id => id,
            Target::New(id) => id,
            _ => return Err(nothing()),
        };
        if model.turn.is_some() {
            return self.same_side(branch, &model, id, side);
        }
        let name = branch.job.named(side.name()).is_none().then(|| side.name().to_owned());
        let patch = RunPatch {
            name,
            length: model.length,
            basis: model.basis,
            from: model.to,
            to: model.from,
            ..RunPatch::default()
        };
        let mut branch = branch.with(Fact::Run(id, patch))?;
        branch.focus = Focus { run: Some(id), ..branch.focus };
        Ok(vec![branch])
    }

    /// A side of the outline as long as the one it faces.
    fn same_side(&self, branch: Branch, model: &Run, id: RunId, side: Side) -> Branches {
        let length = filled(&branch.job).job.run(model.id).and_then(|r| r.length);
        let Some(length) = length else {
            return Err(Problem::Ask("How long is the side to copy? It has no length yet.", Vec::new()));
        };
        let mut patch = RunPatch { length: Some(length), basis: Some(Basis::Edge), ..RunPatch::default() };
        if branch.job.run(id).is_none() {
            patch.turn = Some(super::walks::facing(&branch.job, model.id)?);
            patch.name = Some(side.name().to_owned());
        }
        let mut branch = branch.with(Fact::Run(id, patch))?;
        branch.focus = Focus { run: Some(id), ..branch.focus };
        Ok(vec![branch])
    }
}

/// The side meant: "the other side" of left is right.
fn meant(what: Side, model: &Run) -> Option<Side> {
    match (what, model.name.as_deref()) {
        (Side::Other, Some("left")) => Some(Side::Right),
        (Side::Other, Some("right")) => Some(Side::Left),
        (Side::Other | Side::Side, _) => None,
        (side, _) => Some(side),
    }
}
