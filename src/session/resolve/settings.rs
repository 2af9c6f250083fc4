//! Settings resolved: a measure in its slot.

use super::feet::rim_of;
use super::{Branch, Branches, Problem, Resolver, grow};
use crate::figure::Value;
use crate::grammar::draft::{Clause, RunDraft};
use crate::job::{Fact, Foot, Impossible, NotchTold, PostRole, PostSize, Setting, SlotId};
use crate::measure::{Length, Lumber, Meaning, Measure, Said, Side};
use crate::session::lengths::fits;
use crate::session::state::Focus;

impl Resolver<'_> {
    pub(super) fn setting(&self, branch: Branch, clause: &Clause) -> Branches {
        let set = |branch: Branch, s| Ok(vec![branch.with(Fact::Set(s))?]);
        match clause {
            Clause::Slot(slot, m) => self.slot(branch, *slot, m),
            Clause::Post(role, lumber) => {
                let focus = Focus { role: Some(*role), slot: None, ..branch.focus.clone() };
                set(Branch { focus, ..branch }, Setting::Post(*role, PostSize::Lumber(*lumber)))
            }
            Clause::Timber(told) => {
                let each = told.iter().try_fold(branch, |b, t| b.with(Fact::Set(Setting::Timber(*t))))?;
                Ok(vec![each])
            }
            Clause::Mount(m) => set(branch, Setting::Mount(*m)),
            Clause::Fixing(f) => set(branch, Setting::Fixing(*f)),
            Clause::HouseEnd(h) => set(branch, Setting::HouseEnd(*h)),
            Clause::Pool(b) => set(branch, Setting::Pool(*b)),
            Clause::Blocking(b) => set(branch, Setting::Blocking(*b)),
            Clause::View(v) => self.view(branch, *v),
            Clause::NoNotch => set(branch, Setting::Notch(NotchTold::None)),
            Clause::Foot(f) => set(branch, Setting::Foot(*f)),
            Clause::Notched { deep, post, at_rail } => self.notched(branch, deep, *post, *at_rail),
            Clause::RimOf(lumber) => rim_of(branch, *lumber),
            Clause::CapOf(lumber) => match lumber.dressed() {
                Some((thick, _)) => set(branch, Setting::Foot(Foot::Cap(thick))),
                None => Err(Problem::Impossible(Impossible::NotLumber)),
            },
            Clause::Tape(d) => set(branch, Setting::Tape(*d)),
            Clause::Deck(along, out) => self.deck(branch, along.as_ref(), out.as_ref()),
            _ => Ok(vec![branch]),
        }
    }

    pub(super) fn slot(&self, branch: Branch, slot: SlotId, m: &Measure) -> Branches {
        let said = fits(m, slot, None);
        if said.lengths.is_empty() {
            return Err(Problem::Ask("How much? I can't take that as a length.", Vec::new()));
        }
        let each = said.lengths.iter().map(|(l, _)| *l);
        let branches = each.map(|l| {
            let mut b = branch.clone();
            // A setting has no place for "strong" or "about": what would be lost is asked about.
            b.ask |= said.doubtful || m.shade.is_some() || m.about;
            b.focus.slot = Some(slot);
            b.with(fact(slot, l)?)
        });
        first_problem(branches.collect())
    }

    /// "no, 42" after a setting: the same slot again.
    pub(super) fn setting_again(&self, branch: &Branch, draft: &RunDraft) -> Result<Option<Vec<Branch>>, Problem> {
        let only_length =
            RunDraft { length: None, not: None, it: false, words: 0..0, ..draft.clone() } == RunDraft::default();
        let (Some(slot), true) = (self.session.talk.focus.slot, only_length) else { return Ok(None) };
        if let Some(not) = &draft.not {
            let stands = branch.job.settings.told(slot).and_then(|f| f.as_length());
            if !fits(not, slot, None).lengths.iter().any(|(l, _)| Some(*l) == stands) {
                return Err(Problem::Ask("That is not what stands. Say which figure, and what it is.", Vec::new()));
            }
        }
        match &draft.length {
            Some(m) => self.slot(branch.clone(), slot, m).map(Some),
            None if draft.not.is_some() => Err(Problem::Ask("Not that: what is it then?", Vec::new())),
            None => Ok(None),
        }
    }

    pub(super) fn deck(&self, mut branch: Branch, along: Option<&Measure>, out: Option<&Measure>) -> Branches {
        // "5 out" in a walk is its next side, not how far the deck comes out.
        if along.is_none() && super::walks::under_way(&branch.job) {
            return Err(Problem::Unfit("Is that the deck's size out from the house, or the way the walk goes on?"));
        }
        branch.focus.deck = true;
        branch.focus.slot = None;
        if let Some(Measure { meaning: Meaning::By(a, b), shade, about, .. }) = along {
            // Which of the two runs along the house is not agreed between builders: asked.
            let (a, b) = (side(*a), side(*b));
            let (Some(a), Some(b)) = (a, b) else {
                return Err(Problem::Ask("How big is the deck? Say so much along the house, so much out.", Vec::new()));
            };
            let mut one = branch.clone().with(Fact::DeckAlong(a))?.with(Fact::DeckOut(b))?;
            let mut other = branch.with(Fact::DeckAlong(b))?.with(Fact::DeckOut(a))?;
            let ask = one.ask || a != b || shade.is_some() || *about;
            (one.ask, other.ask) = (ask, ask);
            let both = if a == b { vec![one] } else { vec![one, other] };
            return grow(both, |b| self.sides(b).map(|b| vec![b]));
        }
        let told = [(along, true), (out, false)];
        let mut branches = vec![branch];
        for (m, is_along) in told {
            let Some(m) = m else { continue };
            let said = fits(m, SlotId::DeckSide, None);
            branches = grow(branches, |b| {
                let each = said.lengths.iter().map(|(l, _)| {
                    let mut b = b.clone();
                    b.ask |= said.doubtful || m.shade.is_some() || m.about;
                    b.with(if is_along { Fact::DeckAlong(*l) } else { Fact::DeckOut(*l) })
                });
                first_problem(each.collect())
            })?;
        }
        grow(branches, |b| self.sides(b).map(|b| vec![b]))
    }

    /// "gap 1 1/2": the most between balusters, or what is left under the bottom rail.
    pub(super) fn gap_of(&self, branch: Branch, m: &Measure) -> Branches {
        let between = self.slot(branch.clone(), SlotId::GapMax, m)?;
        let under = self.slot(branch, SlotId::GapUnder, m)?;
        Ok(between.into_iter().chain(under).map(|b| Branch { ask: true, ..b }).collect())
    }

    /// "the rail is 36": its height, or a run's length.
    pub(super) fn rail_is(&self, branch: Branch, m: &Measure) -> Branches {
        let high = self.slot(branch.clone(), SlotId::HeightTop, m)?;
        let long = self.run(branch, &RunDraft { length: Some(m.clone()), run_word: true, ..RunDraft::default() })?;
        Ok(high.into_iter().chain(long).map(|b| Branch { ask: true, ..b }).collect())
    }
}

impl Resolver<'_> {
    /// "6x6" of no posts named: in reply, those spoken of last; else all.
    pub(super) fn lumber(&self, branch: Branch, size: Lumber, not: Option<Lumber>) -> Branches {
        let spoken = self.session.talk.focus.role.filter(|_| self.corrects || not.is_some());
        let stands = branch.job.settings.post(spoken.unwrap_or(PostRole::All));
        if stands.is_some() && not.is_some_and(|n| stands != Some(PostSize::Lumber(n))) || not == Some(size) {
            return Err(Problem::Ask(
                "That is not the size that stands. Which posts, and what size are they?",
                Vec::new(),
            ));
        }
        if spoken.is_none() && not.is_none() && size.is_thin() {
            return Err(Problem::Ask(
                "What is cut from those: the balusters, the rails or the posts? Say it with its name, \"2x2 balusters\".",
                Vec::new(),
            ));
        }
        self.setting(branch, &Clause::Post(spoken.unwrap_or(PostRole::All), size))
    }

    /// "5 to 6 feet apart": a limit is one figure, so which is asked.
    pub(super) fn either(&self, branch: Branch, slot: SlotId, a: &Measure, b: &Measure) -> Branches {
        let feet = |m: &Measure| matches!(m.meaning, Meaning::Length(_, Said::Feet));
        let inherit = if feet(b) { Some(Said::Feet) } else { None };
        let lengths = [fits(a, slot, inherit), fits(b, slot, inherit)];
        let each = lengths.iter().flat_map(|f| &f.lengths).map(|(l, _)| {
            let b = branch.clone().with(fact(slot, *l)?)?;
            Ok(Branch { ask: true, ..b })
        });
        first_problem(each.collect())
    }

    /// "4 max": of the gaps where they are spoken of; else asked.
    pub(super) fn most(&self, branch: Branch, m: &Measure) -> Branches {
        if self.infill {
            return self.slot(branch, SlotId::GapMax, m);
        }
        let each = [SlotId::CentreMax, SlotId::GapMax].map(|slot| self.slot(branch.clone(), slot, m));
        let all: Vec<Branch> = each.into_iter().flatten().flatten().collect();
        if all.is_empty() {
            return Err(Problem::Ask("At most that: of what?", Vec::new()));
        }
        Ok(all.into_iter().map(|b| Branch { ask: true, ..b }).collect())
    }

    /// "66 posts": asked, with the lumber offered.
    pub(super) fn lost_x(&self, branch: Branch, lumber: crate::measure::Lumber) -> Branches {
        let branch = branch.with(Fact::Set(Setting::Post(PostRole::All, PostSize::Lumber(lumber))))?;
        Ok(vec![Branch { ask: true, ..branch }])
    }

    /// "36 over a 3 inch gap": to the top, or a panel standing on the gap. Always asked.
    pub(super) fn height_over_gap(&self, branch: Branch, height: &Measure, gap: &Measure) -> Branches {
        let under = self.slot(branch, SlotId::GapUnder, gap)?;
        grow(under, |b| {
            let Some(gap) = b.job.settings.gap_under else { return Ok(vec![b]) };
            let to_top = self.slot(b, SlotId::HeightTop, height)?;
            let panels = to_top.clone().into_iter().map(|b| {
                let whole = b.job.settings.height_top.map(|h| h + gap);
                match whole {
                    Some(h) => b.with(Fact::Set(Setting::HeightTop(h))).map(|mut b| {
                        b.facts.remove(b.facts.len() - 2);
                        b
                    }),
                    None => Ok(b),
                }
            });
            let panels = first_problem(panels.collect())?;
            Ok(to_top.into_iter().chain(panels).map(|b| Branch { ask: true, ..b }).collect())
        })
    }
}

pub(super) fn first_problem(branches: Vec<Result<Branch, Problem>>) -> Branches {
    let mut out = Vec::new();
    let mut problem = None;
    for b in branches {
        match b {
            Ok(b) => out.push(b),
            Err(p) => problem = problem.or(Some(p)),
        }
    }
    match problem {
        Some(p) if out.is_empty() => Err(p),
        _ => Ok(out),
    }
}

fn side(s: Side) -> Option<Length> {
    match s {
        Side::Length(l, _) => Some(l),
        Side::Bare(n) => SlotId::DeckSide.bare(n).first().copied(),
    }
}

/// The fact that tells a slot so long. A run's own slots are told with their run, sticks and bays alone with their number.
pub(super) fn fact(slot: SlotId, l: Length) -> Result<Fact, Problem> {
    Fact::of(slot, Value::Length(l))
        .ok_or(Problem::Ask("Of what? Say it with the run, the stairs or the gate it is of.", Vec::new()))
}
