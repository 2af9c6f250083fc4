//! A straight side broken: a part that stands out, a corner cut off, stairs let in.
//!
//! Runs stand in walking order, so a side put in the middle of the walk drops the sides
//! behind it and tells them again under numbers of their own.

use super::walks::under_way;
use super::{Branch, Branches, Problem, Resolver, grow};
use crate::grammar::draft::{Along, BumpDraft, ClipDraft, Mark, Way};
use crate::grammar::sense::Side;
use crate::job::outline::filled;
use crate::job::{Basis, Fact, Job, Run, RunId, RunPatch, SlotId, StairOpening, Told, Turn};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

/// A side of the walk with this turn and length, along the decking's edge.
fn side(turn: Turn, length: Length) -> RunPatch {
    RunPatch { turn: Some(turn), length: Some(Told::plain(length)), basis: Some(Basis::Edge), ..RunPatch::default() }
}

/// A length that can be told: what has a root in it, to the sixteenth.
fn to_tell(l: Length) -> Length {
    if l.is_exact() { l } else { Length::from_q(l.rounded(16).q()).unwrap_or(l) }
}

/// Everything told of a run, as a patch that tells it again.
fn whole(run: &Run) -> RunPatch {
    RunPatch {
        name: run.name.clone(),
        length: run.length,
        basis: run.basis,
        from: run.from,
        to: run.to,
        gate: run.gate.map(Some),
        stairs: Some(run.stairs.clone()).filter(|s| !s.is_empty()),
        bays: run.bays.map(Some),
        choices: run.choices.retold(),
        turn: run.turn,
    }
}

/// Tells sides behind `after`, and the walk's later sides again behind them.
fn put_in(branch: Branch, after: RunId, new: Vec<RunPatch>) -> Result<Branch, Problem> {
    let sides: Vec<Run> = branch.job.runs.iter().filter(|r| r.turn.is_some()).cloned().collect();
    let later: Vec<Run> = sides.into_iter().skip_while(|r| r.id != after).skip(1).collect();
    // Sides half told cross or miss: the walk is looked over when all stand again.
    let drops = later.iter().map(|r| Fact::DropRun(r.id));
    let first = branch.job.next_run().0;
    let tells = new.into_iter().chain(later.iter().map(whole)).zip(first..).map(|(p, id)| Fact::Run(RunId(id), p));
    let facts: Vec<Fact> = drops.chain(tells).collect();
    together(branch, facts)
}

/// Several facts as one change.
fn together(mut branch: Branch, facts: Vec<Fact>) -> Result<Branch, Problem> {
    branch.job = branch.job.with_all(&facts).map_err(Problem::Impossible)?;
    branch.facts.extend(facts);
    Ok(branch)
}

/// One length for a slot that takes no "about": several mean ask.
fn lengths(m: &Measure, slot: SlotId) -> Result<Vec<Length>, Problem> {
    let said = fits(m, slot, None);
    if said.lengths.is_empty() || m.about || m.shade.is_some() {
        return Err(Problem::Ask("I can't take that as a length of the outline. How long exactly?", Vec::new()));
    }
    Ok(said.lengths.into_iter().map(|(l, _)| l).collect())
}

fn first(m: &Measure, slot: SlotId) -> Result<Length, Problem> {
    lengths(m, slot)?.first().copied().ok_or(Problem::Refuse("There is no length in that."))
}

impl Resolver<'_> {
    /// "front bumps out 2 ft in the middle, 8 ft wide".
    pub(super) fn bump(&self, branch: Branch, draft: &BumpDraft) -> Branches {
        let run =
            draft.side.map_or_else(|| targets::focus(self.session, &branch.job), |s| targets::named(&branch.job, s));
        let outline = filled(&branch.job).job;
        let run = run.and_then(|r| outline.run(r.id)).filter(|r| r.turn.is_some());
        let (Some(run), Some(length)) = (run, run.and_then(|r| r.length)) else {
            return Err(Problem::Ask("Which side stands out? Tell me the deck or that side first.", Vec::new()));
        };
        if !run.stairs.is_empty() || run.gate.is_some() {
            return Err(Problem::Ask(
                "That side has stairs or a gate in it. Drop them, tell the bump, then say where they go.",
                Vec::new(),
            ));
        }
        let (Some(wide), Some(at)) = (&draft.wide, &draft.at) else {
            return Err(Problem::Ask(
                "How wide is the part that stands out, and where along the side is it?",
                Vec::new(),
            ));
        };
        let (by, wide) = (first(&draft.by, SlotId::RunLength)?, first(wide, SlotId::RunLength)?);
        let rest = to_tell(length.length) - wide;
        let before = match at {
            Along::Middle => rest / 2,
            Along::Off(m, Mark::Side(Side::Left)) => first(m, SlotId::Offset)?,
            Along::Off(m, Mark::Side(Side::Right)) => rest - first(m, SlotId::Offset)?,
            _ => {
                return Err(Problem::Ask(
                    "Where along that side? Say in the middle, or how far from its left or right end.",
                    Vec::new(),
                ));
            }
        };
        let after = rest - before;
        if !before.is_positive() || !after.is_positive() {
            return Err(Problem::Ask(
                "The part that stands out does not fit in that side. How wide is it, and where does it start?",
                Vec::new(),
            ));
        }
        let (right, left) = (Turn::Right(90), Turn::Left(90));
        let new = vec![side(left, by), side(right, wide), side(right, by), side(left, after)];
        let id = run.id;
        let cut = RunPatch { turn: None, ..side(left, before) };
        let branch = together(branch, vec![Fact::Run(id, cut)])?;
        Ok(vec![put_in(branch, id, new)?])
    }

    /// "the left corner is clipped at 45, 4 ft"; in a walk it is the next side.
    pub(super) fn clip(&self, branch: Branch, draft: &ClipDraft) -> Branches {
        let degrees = draft.degrees.unwrap_or(45);
        if under_way(&branch.job) {
            let right = true;
            return self.walk(branch, Way::Turn { right, degrees }, Some(&draft.length), None);
        }
        let Some((before, after)) = corner(&branch.job, draft.side).filter(|_| degrees == 45) else {
            return Err(Problem::Ask(
                "Which corner, left or right, and how much? A cut that is not at 45 degrees: walk me round it, side by side.",
                Vec::new(),
            ));
        };
        let mut out = Vec::new();
        for l in lengths(&draft.length, SlotId::RunLength)? {
            let face = Length::diagonal(l, l).ok_or(Problem::Refuse("That is past anything I can work out."))?;
            // So much off each side, or a cut so long.
            for (off, face) in [(l, to_tell(face)), (to_tell(face / 2), l)] {
                out.push(clipped(branch.clone(), &before, &after, off, face)?);
            }
        }
        Ok(out)
    }

    /// "let into the deck 3 foot": of the stairs spoken of.
    pub(super) fn recess(&self, branch: Branch, m: &Measure) -> Branches {
        let spoken = branch.focus.run.and_then(|id| branch.job.run(id)).filter(|r| !r.stairs.is_empty());
        let cut: Vec<&Run> = branch.job.runs.iter().filter(|r| !r.stairs.is_empty()).collect();
        let run = spoken.or(if let [one] = cut[..] { Some(one) } else { None });
        let Some((id, stairs)) = run.and_then(|r| Some((r.id, *r.stairs.only()?))) else {
            return Err(Problem::Ask(
                "Which stairs are let into the deck? Tell me them first: how wide, and where in which side.",
                Vec::new(),
            ));
        };
        let said = fits(m, SlotId::Recess, None);
        let ask = said.doubtful || m.about || m.shade.is_some();
        grow(vec![branch], |b| {
            let each = said.lengths.iter().map(|(deep, _)| {
                let told = StairOpening { recess: Some(*deep), ..stairs };
                let mut b = b.clone();
                // Stairs told in the same line are told once, with their recess.
                b.facts.iter_mut().for_each(|f| match f {
                    Fact::Run(run, patch) if *run == id && patch.stairs.is_some() => patch.stairs = Some(told.into()),
                    _ => {}
                });
                let mut b = b.with(Fact::Run(id, RunPatch { stairs: Some(told.into()), ..RunPatch::default() }))?;
                b.ask |= ask;
                Ok(b)
            });
            each.collect()
        })
    }
}

/// The two sides, as they work out, that meet at the front's left or right corner.
fn corner(job: &Job, hand: Option<Side>) -> Option<(Run, Run)> {
    let sides: Vec<Run> = filled(job).job.runs.into_iter().filter(|r| r.turn.is_some()).collect();
    let front = sides.iter().position(|r| r.name.as_deref() == Some("front"))?;
    let at = match hand? {
        Side::Left => front.checked_sub(1)?,
        Side::Right => front,
        _ => return None,
    };
    let (before, after) = (sides.get(at)?.clone(), sides.get(at + 1)?.clone());
    (after.turn == Some(Turn::Right(90))).then_some((before, after))
}

/// So much off both sides, a cut so long between them.
fn clipped(branch: Branch, before: &Run, after: &Run, off: Length, face: Length) -> Result<Branch, Problem> {
    let short = |r: &Run| r.length.map(|t| to_tell(t.length) - off).filter(|l| l.is_positive());
    let (Some(one), Some(other)) = (short(before), short(after)) else {
        return Err(Problem::Ask("That cut is longer than the side it is taken off. How much is cut?", Vec::new()));
    };
    // What follows from the others is told, so that the root of 2 does not get into it.
    let outline = filled(&branch.job);
    let follow = outline.derived.iter().filter(|id| **id != before.id && **id != after.id);
    let told = follow.filter_map(|id| {
        let length = outline.job.run(*id)?.length?;
        let length = Told { length: to_tell(length.length), ..length };
        Some(Fact::Run(*id, RunPatch { length: Some(length), basis: Some(Basis::Edge), ..RunPatch::default() }))
    });
    let cut = |id: RunId, l: Length, turn: Option<Turn>| Fact::Run(id, RunPatch { turn, ..side(Turn::Start, l) });
    let mut facts: Vec<Fact> = told.collect();
    facts.push(cut(before.id, one, None));
    facts.push(cut(after.id, other, Some(Turn::Right(45))));
    put_in(together(branch, facts)?, before.id, vec![side(Turn::Right(45), face)])
}
