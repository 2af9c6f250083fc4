//! One run as told so far, and the facts that tell it.

use super::Said;
use super::opening::{Kind, Opening};
use super::place::{AtEnd, Ends, Spot, stands};
use crate::figure::Value;
use crate::job::outline::filled;
use crate::job::{
    Basis, End, Fact, Gate, GateAt, Hung, Job, Run, RunId, RunPatch, StairAt, StairOpening, StairPlace, Stairs, Told,
};
use crate::measure::Length;
use crate::quantity::RowId;
use crate::session::bind::About;
use crate::session::bind::readings::is_taking_back;

/// What the run told last is called.
const LAST: &str = "last";

/// One run, so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Draft {
    pub name: Option<String>,
    /// Its number, where it is called by that.
    pub nth: Option<u32>,
    pub length: Option<(Length, Option<Basis>)>,
    /// It is the one run there is.
    pub of_the_one: bool,
    pub longer: Option<Length>,
    pub from: Option<End>,
    pub to: Option<End>,
    pub bays: Option<u16>,
    pub gone: bool,
    pub openings: Vec<Opening>,
}

impl Draft {
    /// Takes in what is said of the run itself.
    pub(super) fn take(&mut self, said: &Said) {
        match said {
            Said::Name(name) => self.name = Some(name.clone()),
            Said::Nth(n) => self.nth = Some(*n),
            Said::Length(l, basis) => self.length = Some((*l, *basis)),
            Said::Longer(by) => self.longer = Some(*by),
            Said::From(end) => self.from = Some(*end),
            Said::To(end) => self.to = Some(*end),
            Said::Bays(n) => self.bays = Some(*n),
            Said::Gone => self.gone = true,
            Said::Opening(..) | Said::Again(_) => {}
        }
    }

    fn all(&self, kind: Kind) -> impl Iterator<Item = &Opening> {
        self.openings.iter().filter(move |o| o.kind == kind)
    }

    /// True where nothing is told but of openings.
    fn only_openings(&self) -> bool {
        Draft { openings: self.openings.clone(), ..Draft::default() } == *self
    }

    /// The facts that tell it; `None` where it is not clear which run is meant.
    pub(super) fn facts(self, about: &About<'_>, next: &mut RunId, several: bool) -> Option<Vec<Fact>> {
        let mut this = self;
        let side = this.side(about.job);
        this.name = this.name.take().or(side);
        let whole = this.length.is_some() || this.from.is_some() || this.to.is_some();
        let named = match this.nth {
            Some(nth) => about.job.run(RunId(nth)),
            None => this.name.as_deref().and_then(|n| about.job.named(n)).or_else(|| this.last(about)),
        };
        // Not told yet, it is the next one.
        if this.nth.is_some_and(|nth| named.is_none() && RunId(nth) < *next) {
            return None;
        }
        if this.name.as_deref() == Some(LAST) {
            named?;
            this.name = None;
        }
        let old = this.of_its_opening(about.job).or(named).or_else(|| this.spoken_of(about, several));
        if this.gone {
            return Some(vec![Fact::DropRun(old?.id)]);
        }
        // How wide the stairs are, before it is told where they stand.
        if let (Some(width), Some(run)) = (this.only_stair_width(), old)
            && run.stairs.is_empty()
        {
            return Some(vec![Fact::StairWidth(width)]);
        }
        // A length alone makes no second run: it is that of the one spoken of, or nobody's.
        let alone = this.name.is_none() && this.nth.is_none() && this.from.is_none() && this.to.is_none() && !several;
        // A run that ends at a gate's post has the gate beside it.
        let mut facts: Vec<Fact> = this.gate_beside().into_iter().collect();
        let patch = match old {
            Some(run) => {
                facts.extend(this.taken_from_another(about.job, run)?);
                this.patch(about.job, run)?
            }
            None if whole && alone && !about.job.runs.is_empty() => return None,
            None if whole || this.is_gate_at_the_stairs() && about.job.runs.is_empty() => {
                this.to = this.to.or((!whole).then_some(End::StairHead));
                this.patch(about.job, &Run::untold(*next))?
            }
            None => return this.without_run(about.job),
        };
        let id = old.map_or(*next, |r| r.id);
        if old.is_none() {
            *next = RunId(next.0 + 1);
        }
        facts.push(Fact::Run(id, patch));
        Some(facts)
    }

    /// The run told last, where it is called so.
    fn last<'a>(&self, about: &About<'a>) -> Option<&'a Run> {
        about.job.runs.last().filter(|_| self.name.as_deref() == Some(LAST))
    }

    /// True for a gate alone that stands at the head of the stairs, wherever they are.
    fn is_gate_at_the_stairs(&self) -> bool {
        let ends = (None, Some(End::StairHead));
        let at_stairs = |o: &Opening| o.kind == Kind::Gate && !o.none && o.off.is_none() && at_stairs(o, ends);
        self.only_openings() && self.openings.len() == 1 && self.openings.iter().all(at_stairs)
    }

    /// The width of a gate that stands beyond the end of the run, taken out of those in it.
    fn gate_beside(&mut self) -> Option<Fact> {
        let ends = [self.from, self.to].contains(&Some(End::GatePost));
        let beside =
            |o: &Opening| o.kind == Kind::Gate && o.is_unplaced() && o.width.is_some() && o.hung == Hung::default();
        let at = self.openings.iter().position(beside).filter(|_| ends)?;
        Fact::of(RowId::GateOpening, Value::Length(self.openings.remove(at).width?))
    }

    /// The one run with a gate where only the leaf of that gate is told of, or the one with stairs where a gate at their head is.
    fn of_its_opening<'a>(&self, job: &'a Job) -> Option<&'a Run> {
        let [gate] = &self.openings[..] else { return None };
        let leaf = gate.kind == Kind::Gate && gate.is_unplaced() && gate.hung != Hung::default();
        let only = |of: &dyn Fn(&Run) -> bool| {
            let mut all = job.runs.iter().filter(|r| of(r));
            all.next().filter(|_| all.next().is_none())
        };
        if leaf && self.only_openings() {
            return only(&|r| r.gate.is_some());
        }
        let head = |r: &Run| !r.stairs.is_empty() || [r.from, r.to].contains(&Some(End::StairHead));
        only(&head).filter(|_| self.is_gate_at_the_stairs())
    }

    /// The stairs' width, where nothing else is told.
    fn only_stair_width(&self) -> Option<Length> {
        let [stairs] = &self.openings[..] else { return None };
        let alone = stairs.kind == Kind::Stairs && stairs.is_unplaced() && !stairs.none;
        stairs.width.filter(|_| alone && self.only_openings())
    }

    /// The side that an opening is said to stand in, where a run goes by it: it is the run's name then, and no place in the run.
    fn side(&mut self, job: &Job) -> Option<String> {
        let own = self.name.clone();
        let is_side = |place: &String| own.as_ref().map_or_else(|| job.named(place).is_some(), |name| name == place);
        let mut side = None;
        for opening in &mut self.openings {
            // "On the left, at the left": a side is named once.
            if let Some(n) = opening.at.iter().position(is_side).filter(|_| own.is_none() || opening.at.len() > 1) {
                side = side.or(Some(opening.at.remove(n)));
            }
        }
        side
    }

    /// The run a draft without a name is told of: the one spoken of, for what is told of its openings, for where it ends, or where it has no
    /// length yet.
    fn spoken_of<'a>(&self, about: &About<'a>, several: bool) -> Option<&'a Run> {
        let focus = about.run.and_then(|id| about.job.run(id)).or_else(|| match &about.job.runs[..] {
            [only] => Some(only),
            _ => None,
        });
        if several || self.name.is_some() || self.nth.is_some() {
            return None;
        }
        if self.from.is_some() || self.to.is_some() {
            return focus.filter(|run| self.is_end_of(run, about.line)).or_else(|| self.pending(about.job));
        }
        focus.filter(|run| {
            self.of_the_one || self.length.is_none() || run.length.is_none() || is_taking_back(about.line)
        })
    }

    /// True where only an end is told of a run that has its length: "the far end is the stairs". What goes on from it is another run.
    fn is_end_of(&self, run: &Run, line: &str) -> bool {
        let goes_on = line.split(|c: char| !c.is_alphanumeric()).any(|w| w.eq_ignore_ascii_case("then"));
        let only = Draft { to: self.to, ..Draft::default() } == *self;
        only && run.length.is_some() && !goes_on
    }

    /// The one run of which only an end and its opening were told, where this is how long it is and that end is one of its own.
    fn pending<'a>(&self, job: &'a Job) -> Option<&'a Run> {
        let fits = |r: &&Run| {
            let open = r.length.is_none() && r.name.is_none() && r.turn.is_none() && r.from.is_none();
            open && r.gate.is_some() && r.to.is_some() && r.to == self.to
        };
        let mut all = job.runs.iter().filter(fits);
        all.next().filter(|_| self.length.is_some() && all.next().is_none())
    }

    fn patch(&self, job: &Job, run: &Run) -> Option<RunPatch> {
        let now = run.length.map(|t| t.length);
        let longer = match self.longer {
            Some(by) => Some(now? + by),
            None => None,
        };
        let length = self.length.map(|l| l.0).or(longer);
        let ends = self.ends(job, run);
        let stairs = self.stairs(job, run, ends)?;
        let gate = self.gate(run, ends, stairs.as_ref())?;
        let worked = self.ends_by_openings(run);
        Some(RunPatch {
            name: self.name.clone().filter(|_| run.name.is_none()),
            length: length.map(Told::plain),
            // A run told without a basis is taken out to out, and that is said back.
            basis: self.length.and_then(|l| l.1.or(Some(run.basis.unwrap_or_default()))),
            from: self.from.or(worked.0.filter(|_| run.from.is_none())),
            to: self.to.or(worked.1.filter(|_| run.to.is_none())),
            gate,
            stairs,
            bays: self.bays.map(Some),
            ..RunPatch::default()
        })
    }

    /// The run's ends as told; where neither was, and an opening stands by the house or so far from it, one of them is the house.
    fn ends_by_openings(&self, run: &Run) -> Ends {
        let told = (self.from.or(run.from), self.to.or(run.to));
        let mut places = self.openings.iter().flat_map(|o| o.at.iter().chain(&o.off_from));
        let by_house =
            run.turn.is_none() && places.any(|p| matches!(p.as_str(), "house" | "by house" | "by the house"));
        match (told, self.name.as_deref().or(run.name.as_deref())) {
            // The right side of a deck comes home to the house.
            ((None, None), Some("right")) if by_house => (None, Some(End::House)),
            ((None, None), _) if by_house => (Some(End::House), None),
            _ => told,
        }
    }

    /// The ends openings are placed by: a side of the deck has those its outline gives it.
    fn ends(&self, job: &Job, run: &Run) -> Ends {
        let outlined = run.turn.and_then(|_| filled(job).job.run(run.id).map(|r| (r.from, r.to)));
        let told = self.ends_by_openings(run);
        let (from, to) = outlined.unwrap_or_default();
        (told.0.or(from), told.1.or(to))
    }

    /// What becomes of the run's gate: `Some(None)` where nothing is told of it, `None` where it is not clear.
    #[allow(clippy::option_option)]
    fn gate(&self, run: &Run, ends: Ends, stairs: Option<&Stairs>) -> Option<Option<Option<Gate>>> {
        let gates: Vec<&Opening> = self.all(Kind::Gate).collect();
        match &gates[..] {
            [] => Some(None),
            [gate] if gate.none => Some(Some(None)),
            [gate] => Some(Some(Some(hang(gate, run, ends, stairs.unwrap_or(&run.stairs))?))),
            // A run keeps one gate.
            _ => None,
        }
    }

    /// What becomes of the run's stairs: `Some(None)` where nothing is told of them, `None` where it is not clear.
    fn stairs(&self, job: &Job, run: &Run, ends: Ends) -> Option<Option<Stairs>> {
        let told: Vec<&Opening> = self.all(Kind::Stairs).collect();
        match &told[..] {
            [] => Some(None),
            [none] if none.none => Some(Some(Stairs::NONE)),
            [one] if run.stairs.len() <= 1 => Some(Some(Stairs::from(put(one, job, run, ends)?))),
            [first, .., last] if run.stairs.is_empty() => {
                let mut all = Stairs::NONE;
                for stairs in &told {
                    // "3 ft, 4 ft stairs, guard, 4 ft stairs, 3 ft": how far the first and the last are from the ends.
                    let flank =
                        |end: &Opening| std::ptr::eq(*stairs, end) && stairs.at.is_empty() && stairs.off_from.is_none();
                    let at = match (stairs.off, flank(first), flank(last)) {
                        (Some(off), true, _) if told.len() == 2 => StairAt::FromLeft(off),
                        (Some(off), _, true) if told.len() == 2 => StairAt::FromRight(off),
                        _ => put(stairs, job, run, ends)?.at,
                    };
                    all.push(StairOpening::new(stairs.width?, at));
                }
                Some(Some(all))
            }
            _ => None,
        }
    }

    /// Stairs that are moved to this run go from the one that has them; `None` where it is not clear which do.
    fn taken_from_another(&self, job: &Job, run: &Run) -> Option<Option<Fact>> {
        let moved = self.only_named_and_openings()
            && run.stairs.is_empty()
            && matches!(&self.openings[..], [o] if o.kind == Kind::Stairs && o.width.is_none() && !o.none);
        let holds: Vec<&Run> = job.runs.iter().filter(|r| !r.stairs.is_empty()).collect();
        match &holds[..] {
            [other] if moved && other.stairs.len() == 1 => {
                let none = RunPatch { stairs: Some(Stairs::NONE), ..RunPatch::default() };
                Some(Some(Fact::Run(other.id, none)))
            }
            [_, ..] if moved => None,
            _ => Some(None),
        }
    }

    fn only_named_and_openings(&self) -> bool {
        Draft { name: self.name.clone(), nth: self.nth, openings: self.openings.clone(), ..Draft::default() } == *self
    }

    /// What is told of openings while no run is there to hold them.
    fn without_run(self, job: &Job) -> Option<Vec<Fact>> {
        if !job.runs.is_empty() || self.name.is_some() || self.longer.is_some() {
            return None;
        }
        let mut facts: Vec<Fact> = Vec::new();
        for opening in &self.openings {
            facts.extend(match opening.kind {
                Kind::Stairs => loose_stairs(opening)?,
                Kind::Gate => loose_gate(opening)?,
            });
        }
        if let Some(bays) = self.bays {
            facts.extend(Fact::of(RowId::BayCount, Value::Count(u64::from(bays))));
        }
        (!facts.is_empty()).then_some(facts)
    }
}

/// True where the gate's place is the head of the stairs.
fn at_stairs(gate: &Opening, ends: Ends) -> bool {
    let named = |p: &String| matches!(p.as_str(), "stair head" | "stairs" | "by stairs" | "stair post");
    gate.at.iter().any(named) && stands(gate, ends).is_some_and(|s| matches!(s, Spot::Stairs | Spot::End(_)))
}

fn loose_stairs(stairs: &Opening) -> Option<Vec<Fact>> {
    if stairs.none {
        return Some(vec![Fact::NoStairs]);
    }
    if stairs.off.is_some() || stairs.further.is_some() {
        return None;
    }
    let side = |place: &String| ["front", "left", "right", "back"].contains(&place.as_str()).then(|| place.clone());
    let place = match &stairs.at[..] {
        [] => None,
        [.., last] => Some(Fact::StairPlace(StairPlace { side: side(last)?, by: None })),
    };
    Some(stairs.width.map(Fact::StairWidth).into_iter().chain(place).collect())
}

fn loose_gate(gate: &Opening) -> Option<Vec<Fact>> {
    let placed = !gate.is_unplaced() || gate.hung != Hung::default() || gate.none;
    let width = gate.width.filter(|_| !placed)?;
    Some(Fact::of(RowId::GateOpening, Value::Length(width)).into_iter().collect())
}

/// Where a gate hangs in the run.
fn hang(gate: &Opening, run: &Run, ends: Ends, stairs: &Stairs) -> Option<Gate> {
    let was = run.gate;
    let head = || match (stairs.is_empty(), ends) {
        (false, _) => Some(GateAt::Stairs),
        (true, (Some(End::StairHead), to)) if to != Some(End::StairHead) => Some(GateAt::From),
        (true, (from, Some(End::StairHead))) if from != Some(End::StairHead) => Some(GateAt::To),
        _ => None,
    };
    let said = |place: &str| gate.at.iter().any(|p| p == place);
    let at = match (gate.off.filter(|l| l.is_positive()), gate.further) {
        // Of another width than the stairs it may stand elsewhere.
        (None, None) if gate.is_unplaced() => {
            was.map(|g| g.at).or_else(|| head().filter(|at| gate.width.is_none() || *at != GateAt::Stairs))?
        }
        (None, Some(by)) => match was?.at {
            GateAt::OffFrom(off) => GateAt::OffFrom(off + by),
            GateAt::OffTo(off) => GateAt::OffTo(off + by),
            _ => return None,
        },
        (None, None) if at_stairs(gate, ends) && !stairs.is_empty() => GateAt::Stairs,
        (off, None) => match (stands(gate, ends)?, off) {
            (Spot::Middle, None) => GateAt::Middle,
            (Spot::Stairs, None) => head()?,
            (Spot::End(AtEnd::From), None) if said("left") => GateAt::Left,
            (Spot::End(AtEnd::To), None) if said("right") => GateAt::Right,
            (Spot::End(AtEnd::From), None) => GateAt::From,
            (Spot::End(AtEnd::To), None) => GateAt::To,
            (Spot::End(AtEnd::From), Some(off)) => GateAt::OffFrom(off),
            (Spot::End(AtEnd::To), Some(off)) => GateAt::OffTo(off),
            _ => return None,
        },
        _ => return None,
    };
    let hung = gate.hung.or(was.map(|g| g.hung).unwrap_or_default());
    Some(Gate { at, width: gate.width.or(was.and_then(|g| g.width)), hung })
}

/// Where stairs stand in the run.
fn put(stairs: &Opening, job: &Job, run: &Run, ends: Ends) -> Option<StairOpening> {
    let elsewhere = || {
        let mut all = job.runs.iter().flat_map(|r| r.stairs.iter());
        all.next().filter(|_| all.next().is_none())
    };
    let old = run.stairs.only();
    let width = stairs.width.or(old.or_else(elsewhere).map(|s| s.width)).or(job.stair_width)?;
    let at = match (stairs.off, stairs.further) {
        (None, None) if stairs.is_unplaced() => old?.at,
        (None, Some(by)) => match old?.at {
            StairAt::FromLeft(off) => StairAt::FromLeft(off + by),
            StairAt::FromRight(off) => StairAt::FromRight(off + by),
            StairAt::Middle => return None,
        },
        (off, None) => match (stands(stairs, ends)?, off) {
            (Spot::Middle, None) => StairAt::Middle,
            (Spot::Whole, None) => StairAt::FromLeft(Length::ZERO),
            (Spot::End(AtEnd::From), off) => StairAt::FromLeft(off.unwrap_or(Length::ZERO)),
            (Spot::End(AtEnd::To), off) => StairAt::FromRight(off.unwrap_or(Length::ZERO)),
            _ => return None,
        },
        _ => return None,
    };
    let moved = || elsewhere().filter(|_| stairs.width.is_none()).copied();
    Some(match old.copied().or_else(moved) {
        Some(old) => StairOpening { width, at, ..old },
        None => StairOpening::new(width, at),
    })
}
