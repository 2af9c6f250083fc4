//! The deck as a whole: afresh, by itself, a strip of it, its framing and its edge.

use super::{Branch, Branches, Problem, Resolver, first_problem, grow};
use crate::grammar::draft::{Clause, JoistDraft, Lies, Reading};
use crate::grammar::sense::Side;
use crate::job::{Basis, DeckFact, Fact, RunId, RunPatch, Setting, SlotId, Told, Turn, View};
use crate::measure::{Length, Meaning, Measure, Side as BySide};
use crate::session::lengths::fits;
use crate::session::state::Focus;

/// The sides of a deck by itself, walked from its near left corner.
const FREE: [(&str, Turn); 4] =
    [("left", Turn::Free), ("front", Turn::Right(90)), ("right", Turn::Right(90)), ("back", Turn::Right(90))];

/// Which sides of a strip have a guard, told in the same line: one of them, named or not, or both.
pub(super) fn rails(reading: &Reading) -> Option<Option<Side>> {
    reading.clauses.iter().find_map(|c| if let Clause::RailOn(side) = c { Some(*side) } else { None })
}

impl Resolver<'_> {
    /// "new deck", "start over".
    pub(super) fn whole(&self, branch: Branch, fact: DeckFact) -> Branches {
        let branch = branch.with(Fact::Deck(fact))?;
        let focus = match fact {
            DeckFact::New | DeckFact::StartOver => Focus { deck: true, ..Focus::default() },
            DeckFact::Wide(_) => branch.focus.clone(),
        };
        Ok(vec![Branch { focus, ..branch }])
    }

    /// Left and right told from another place than before: what was told of a walk that turned
    /// would turn the other way, so it is asked.
    pub(super) fn view(&self, branch: Branch, view: View) -> Branches {
        let changes = branch.job.settings.view.unwrap_or(View::House) != view;
        let mut told = branch.with(Fact::Set(Setting::View(view)))?;
        told.ask |= changes && told.job.runs.iter().any(|r| matches!(r.turn, Some(Turn::Left(_))));
        Ok(vec![told])
    }

    /// The baluster line so far outside the decking's edge.
    pub(super) fn line_outside(&self, branch: Branch, m: &Measure) -> Branches {
        let said = fits(m, SlotId::PostWidth, None);
        let each = said.lengths.iter().map(|(l, _)| {
            let mut b = branch.clone();
            b.ask |= said.doubtful || m.about || m.shade.is_some();
            b.with(Fact::Set(Setting::Line(-*l)))
        });
        first_problem(each.collect())
    }

    /// What is told of the joists.
    pub(super) fn joists(&self, branch: Branch, draft: &JoistDraft) -> Branches {
        let sizes = [(SlotId::Joists, &draft.spacing), (SlotId::FirstJoist, &draft.first)];
        let mut branches = vec![branch];
        for (slot, m) in sizes {
            let Some(m) = m else { continue };
            branches = grow(branches, |b| self.slot(b, slot, m))?;
        }
        grow(branches, |b| match draft.way {
            Some(way) => Ok(vec![b.with(Fact::Set(Setting::JoistsRun(way)))?]),
            None => Ok(vec![b]),
        })
    }

    /// "12 by 20, long side on the house".
    pub(super) fn deck_by(&self, branch: Branch, sides: &Measure, lies: &Lies) -> Branches {
        let Meaning::By(a, b) = sides.meaning else { return Err(how_big()) };
        let (Some(a), Some(b)) = (side(a), side(b)) else { return Err(how_big()) };
        let along = match lies {
            Lies::Longer => a.max(b),
            Lies::Shorter => a.min(b),
            Lies::This(m) => {
                let said = fits(m, SlotId::DeckSide, None);
                let this = [a, b].into_iter().find(|side| said.lengths.iter().any(|(l, _)| l == side));
                this.ok_or(Problem::Ask(
                    "Neither size of the deck is that. How long is it along the house?",
                    Vec::new(),
                ))?
            }
        };
        let out = if along == a { b } else { a };
        let mut branch = branch.with(Fact::DeckAlong(along))?.with(Fact::DeckOut(out))?;
        branch.focus = Focus { deck: true, slot: None, ..branch.focus };
        Ok(vec![self.sides(branch)?])
    }

    /// A landing or a deck by itself: four sides; against the house, three; asked where
    /// nobody said which.
    pub(super) fn alone_deck(
        &self,
        branch: Branch,
        along: &Measure,
        out: Option<&Measure>,
        free: Option<bool>,
    ) -> Branches {
        let (along, out) = both(along, out)?;
        if !branch.job.runs.is_empty() {
            return Err(Problem::Ask(
                "A deck stands here already. Say new deck first, or tell me the landing's sides as runs.",
                Vec::new(),
            ));
        }
        let make = |free: bool| -> Result<Branch, Problem> {
            let mut branch = branch.clone();
            branch.focus = Focus { deck: true, slot: None, ..branch.focus };
            if free {
                // No house for a size to lie along: two sides are told, and two follow.
                return self.named_sides(branch, &FREE, &[out, along]);
            }
            self.sides(branch.with(Fact::DeckAlong(along))?.with(Fact::DeckOut(out))?)
        };
        match free {
            Some(free) => Ok(vec![make(free)?]),
            None => {
                let both = [make(true)?, make(false)?];
                Ok(both.into_iter().map(|b| Branch { ask: true, ..b }).collect())
            }
        }
    }

    /// Sides by name, the first few of a length told; the others take theirs from the deck's
    /// sizes or from one another.
    pub(super) fn named_sides(
        &self,
        branch: Branch,
        sides: &[(&str, Turn)],
        lengths: &[Length],
    ) -> Result<Branch, Problem> {
        let first = branch.job.next_run().0;
        let lengths = lengths.iter().map(|l| Some(Told::plain(*l))).chain(std::iter::repeat(None));
        sides.iter().zip(first..).zip(lengths).try_fold(branch, |b, (((name, turn), id), length)| {
            let basis = length.map(|_| Basis::Edge);
            let patch =
                RunPatch { name: Some((*name).to_owned()), turn: Some(*turn), length, basis, ..RunPatch::default() };
            b.with(Fact::Run(RunId(id), patch))
        })
    }

    /// A walkway, with its guard on one side or on both.
    pub(super) fn strip(&self, branch: Branch, wide: &Measure, long: Option<&Measure>) -> Branches {
        let (wide, long) = match long {
            Some(long) => (one(wide)?, one(long)?),
            None => {
                let (a, b) = both(wide, None)?;
                (a.min(b), a.max(b))
            }
        };
        let Some(rails) = self.rails else {
            return Err(Problem::Ask("Which sides of it get a guard: one, or both?", Vec::new()));
        };
        let branch = branch.with(Fact::Deck(DeckFact::Wide(wide)))?;
        let name = |s: Side| (!matches!(s, Side::Side | Side::Other)).then(|| s.name().to_owned());
        let run = |name: Option<String>| RunPatch {
            name,
            length: Some(Told::plain(long)),
            basis: Some(Basis::Overall),
            ..RunPatch::default()
        };
        let runs = match rails {
            Some(side) => vec![run(name(side))],
            None => vec![run(None), run(None)],
        };
        let branch = runs.into_iter().try_fold(branch, |b, patch| {
            let id = b.job.next_run();
            b.with(Fact::Run(id, patch))
        })?;
        Ok(vec![branch])
    }

    /// A guard on so many sides: as many as the deck told here has open, or asked about.
    pub(super) fn rail_round(&self, branch: Branch, sides: Option<u16>) -> Branches {
        let told_here = !branch.facts.is_empty();
        let open = branch.job.runs.len();
        if told_here && branch.job.deck_along.is_some() && sides.is_none_or(|n| usize::from(n) == open) {
            return Ok(vec![branch]);
        }
        let says = if branch.job.runs.is_empty() {
            "How big is the deck, and which sides are they? Say so much along the house, so much out."
        } else {
            "Which sides have no guard? Say \"no rail on the left\", or tell me each run: how long it is and what it goes between."
        };
        Err(Problem::Ask(says, Vec::new()))
    }

    /// A guard on one side only, with no strip told beside it.
    pub(super) fn rail_on(&self, branch: Branch) -> Branches {
        if self.strips {
            return Ok(vec![branch]);
        }
        Err(Problem::Ask("Which runs are those? Tell me each: how long it is and what it goes between.", Vec::new()))
    }
}

fn how_big() -> Problem {
    Problem::Ask("How big is the deck? Say so much along the house, so much out.", Vec::new())
}

/// One size.
fn one(m: &Measure) -> Result<Length, Problem> {
    let said = fits(m, SlotId::DeckSide, None);
    match said.lengths[..] {
        [(l, _)] if !said.doubtful && !m.about && m.shade.is_none() => Ok(l),
        _ => Err(how_big()),
    }
}

/// Two sizes, in one measure or in two.
fn both(along: &Measure, out: Option<&Measure>) -> Result<(Length, Length), Problem> {
    match (&along.meaning, out) {
        (Meaning::By(a, b), None) => side(*a).zip(side(*b)).ok_or_else(how_big),
        (_, Some(out)) => Ok((one(along)?, one(out)?)),
        _ => Err(how_big()),
    }
}

fn side(s: BySide) -> Option<Length> {
    match s {
        BySide::Length(l, _) => Some(l),
        BySide::Bare(n) => SlotId::DeckSide.bare(n).first().copied(),
    }
}
