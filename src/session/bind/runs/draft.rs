//! One run as told so far, and the facts that tell it.

use super::super::About;
use super::super::readings::is_taking_back;
use crate::figure::Value;
use crate::job::{
    Basis, End, Fact, Gate, GateAt, Hung, Jamb, Job, Run, RunId, RunPatch, StairAt, StairOpening, StairPlace, Stairs,
    Swing, Told,
};
use crate::measure::Length;
use crate::quantity::RowId;

/// One run, so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Draft {
    pub name: Option<String>,
    pub length: Option<(Length, Option<Basis>)>,
    pub longer: Option<Length>,
    pub from: Option<End>,
    pub to: Option<End>,
    pub bays: Option<u16>,
    pub gate: Option<Opening>,
    pub no_gate: bool,
    pub stairs: Option<Opening>,
    pub no_stairs: bool,
}

/// An opening: stairs or a gate.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Opening {
    pub width: Option<Length>,
    /// Where it stands, as said: "front", "middle".
    pub at: Vec<String>,
    pub off: Option<Length>,
    pub off_from: Option<String>,
    /// So much further along than it stands.
    pub further: Option<Length>,
    /// How a gate's leaf is hung.
    pub hung: Hung,
}

/// The jamb a word of the corpus is.
pub(super) fn jamb(side: &str) -> Option<Jamb> {
    match side.trim_start_matches("by ") {
        "left" => Some(Jamb::Left),
        "right" => Some(Jamb::Right),
        "house" | "wall" => Some(Jamb::House),
        "corner" | "away" => Some(Jamb::Away),
        _ => None,
    }
}

/// The way a word of the corpus swings.
pub(super) fn swing(way: &str) -> Option<Swing> {
    match way {
        "deck" | "over the deck" | "in" | "inward" => Some(Swing::OverDeck),
        "out" | "outward" | "yard" | "stairs" | "stair head" => Some(Swing::Out),
        "both ways" => Some(Swing::Both),
        _ => None,
    }
}

/// An end of the run, by how it is said.
#[derive(Clone, Copy, Debug, PartialEq)]
enum AtEnd {
    From,
    To,
}

/// Which end of a run between these a place is: the left end is the one it starts from.
fn which_end(place: &str, (from, to): (Option<End>, Option<End>)) -> Option<AtEnd> {
    let place = place.trim_start_matches("by ");
    match place {
        "left" | "left corner" | "left side" | "left end" | "from-end" | "near end" => return Some(AtEnd::From),
        "right" | "right corner" | "right side" | "right end" | "to-end" | "end" | "far end" => return Some(AtEnd::To),
        _ => {}
    }
    match end(place)? {
        e if from == to && Some(e) == from => None,
        e if Some(e) == from => Some(AtEnd::From),
        e if Some(e) == to => Some(AtEnd::To),
        _ => None,
    }
}

/// The end a place of the corpus is.
pub(super) fn end(place: &str) -> Option<End> {
    let plain = |e: &&End| e.name() == place;
    End::ALL.iter().find(plain).copied().or(match place {
        "column" | "chimney" => Some(End::Wall),
        "corner post" => Some(End::Corner),
        "stair post" => Some(End::StairHead),
        "clipped corner" => Some(End::AngledCorner),
        "left corner" | "right corner" | "front corner" | "outside corner" => Some(End::Corner),
        _ => None,
    })
}

/// A side of the deck that stairs may stand in.
fn side_of(place: &str) -> Option<String> {
    ["front", "left", "right", "back"].contains(&place).then(|| place.to_owned())
}

impl Draft {
    /// The facts that tell it; `None` where it is not clear which run is meant.
    pub(super) fn facts(self, about: &About<'_>, next: &mut RunId, several: bool) -> Option<Vec<Fact>> {
        let mut this = self;
        this.name = this.name.take().or_else(|| this.side(about.job));
        let whole = this.length.is_some() || this.from.is_some() || this.to.is_some();
        let old = this.name.as_deref().and_then(|n| about.job.named(n)).or_else(|| this.spoken_of(about, several));
        // A length alone makes no second run: it is that of the one spoken of, or nobody's.
        let alone = this.name.is_none() && this.from.is_none() && this.to.is_none() && !several;
        // How a gate is hung is told of the gate that is there.
        let old = this.of_the_gate(about.job).or(old);
        // How wide the stairs are, before it is told where they stand.
        if let (Some(width), Some(run)) = (this.only_stair_width(), old)
            && run.stairs.is_empty()
        {
            return Some(vec![Fact::StairWidth(width)]);
        }
        let patch = match old {
            Some(run) => this.patch(about.job, run)?,
            None if whole && alone && !about.job.runs.is_empty() => return None,
            None if whole => {
                let untold = Run::untold(*next);
                this.patch(about.job, &untold)?
            }
            None => return this.without_run(about.job),
        };
        let id = old.map_or(*next, |r| r.id);
        if old.is_none() {
            *next = RunId(next.0 + 1);
        }
        Some(vec![Fact::Run(id, patch)])
    }

    /// The one run with a gate, where only the leaf of that gate is told of.
    fn of_the_gate<'a>(&self, job: &'a Job) -> Option<&'a Run> {
        let leaf = self.gate.as_ref().filter(|g| g.at.is_empty() && g.off.is_none() && g.hung != Hung::default())?;
        let alone = Draft { gate: Some(leaf.clone()), ..Draft::default() } == *self;
        let mut gated = job.runs.iter().filter(|r| r.gate.is_some());
        gated.next().filter(|_| alone && gated.next().is_none())
    }

    /// The stairs' width, where nothing else is told.
    fn only_stair_width(&self) -> Option<Length> {
        let stairs = self.stairs.as_ref().filter(|s| s.at.is_empty() && s.off.is_none() && s.off_from.is_none())?;
        let alone = Draft { stairs: self.stairs.clone(), ..Draft::default() } == *self;
        stairs.width.filter(|_| alone)
    }

    /// The side that an opening is said to stand in, where a run goes by it: it is the run's name then, and no place in the run.
    fn side(&mut self, job: &Job) -> Option<String> {
        let openings = [&mut self.stairs, &mut self.gate];
        let mut places = openings.into_iter().flatten().map(|o| &mut o.at);
        places.find_map(|at| {
            let n = at.iter().position(|place| job.named(place).is_some())?;
            Some(at.remove(n))
        })
    }

    /// The run a draft without a name is told of: the one spoken of, for what is told of its openings, or where it has no length yet.
    fn spoken_of<'a>(&self, about: &About<'a>, several: bool) -> Option<&'a Run> {
        let focus = about.run.and_then(|id| about.job.run(id)).or_else(|| match &about.job.runs[..] {
            [only] => Some(only),
            _ => None,
        });
        let new = several || self.name.is_some() || self.from.is_some() || self.to.is_some();
        focus.filter(|run| !new && (self.length.is_none() || run.length.is_none() || is_taking_back(about.line)))
    }

    fn patch(&self, job: &Job, run: &Run) -> Option<RunPatch> {
        let now = run.length.map(|t| t.length);
        let longer = match self.longer {
            Some(by) => Some(now? + by),
            None => None,
        };
        let length = self.length.map(|l| l.0).or(longer);
        let gate = match (&self.gate, self.no_gate) {
            (_, true) => Some(None),
            (Some(gate), _) => Some(Some(self.hang(gate, run)?)),
            (None, _) => None,
        };
        let stairs = match (&self.stairs, self.no_stairs) {
            (_, true) => Some(Stairs::NONE),
            (Some(stairs), _) => Some(self.put(job, stairs, run)?),
            (None, _) => None,
        };
        Some(RunPatch {
            name: self.name.clone().filter(|_| run.name.is_none()),
            length: length.map(Told::plain),
            // A run told without a basis is taken out to out, and that is said back.
            basis: self.length.and_then(|l| l.1.or(Some(run.basis.unwrap_or_default()))),
            from: self.from.or(self.ends(run).0.filter(|_| run.from.is_none())),
            to: self.to.or(self.ends(run).1.filter(|_| run.to.is_none())),
            gate,
            stairs,
            bays: self.bays.map(Some),
            ..RunPatch::default()
        })
    }

    /// The run's ends as told; where neither was, and an opening stands by the house or so far from it, one of them is the house.
    fn ends(&self, run: &Run) -> (Option<End>, Option<End>) {
        let told = (self.from.or(run.from), self.to.or(run.to));
        let openings = [&self.stairs, &self.gate].into_iter().flatten();
        let mut places = openings.flat_map(|o| o.at.iter().chain(&o.off_from));
        let by_house = places.any(|p| matches!(p.as_str(), "house" | "by house" | "by the house"));
        match (told, self.name.as_deref().or(run.name.as_deref())) {
            // The right side of a deck comes home to the house.
            ((None, None), Some("right")) if by_house => (None, Some(End::House)),
            ((None, None), _) if by_house => (Some(End::House), None),
            _ => told,
        }
    }

    /// Where a gate hangs in the run.
    fn hang(&self, gate: &Opening, run: &Run) -> Option<Gate> {
        let stands = run.gate;
        let place = gate.off_from.as_deref().or(gate.at.last().map(String::as_str));
        let at = match (place, gate.off, gate.further) {
            (None, None, None) => stands?.at,
            (None, None, Some(by)) => match stands?.at {
                GateAt::OffFrom(off) => GateAt::OffFrom(off + by),
                GateAt::OffTo(off) => GateAt::OffTo(off + by),
                _ => return None,
            },
            (Some("middle"), None, None) => GateAt::Middle,
            (Some("left"), None, None) => GateAt::Left,
            (Some("right"), None, None) => GateAt::Right,
            (Some(place), off, None) => match (which_end(place, self.ends(run))?, off.filter(|l| l.is_positive())) {
                (AtEnd::From, None) => GateAt::From,
                (AtEnd::To, None) => GateAt::To,
                (AtEnd::From, Some(off)) => GateAt::OffFrom(off),
                (AtEnd::To, Some(off)) => GateAt::OffTo(off),
            },
            _ => return None,
        };
        let hung = gate.hung.or(stands.map(|g| g.hung).unwrap_or_default());
        Some(Gate { at, width: gate.width.or(stands.and_then(|g| g.width)), hung })
    }

    /// Where stairs stand in the run.
    fn put(&self, job: &Job, stairs: &Opening, run: &Run) -> Option<Stairs> {
        let old = run.stairs.only();
        let width = stairs.width.or(old.map(|s| s.width)).or(job.stair_width)?;
        let at = stairs.at.last().map(String::as_str);
        let ends = self.ends(run);
        let said = || [stairs.off_from.as_deref(), at].into_iter().flatten().find_map(|p| which_end(p, ends));
        let at = match (stairs.off, at) {
            (None, Some("middle")) => StairAt::Middle,
            (None, Some("full width")) => StairAt::FromLeft(Length::ZERO),
            (None, None) if stairs.off_from.is_none() => match (old?.at, stairs.further) {
                (at, None) => at,
                (StairAt::FromLeft(off), Some(by)) => StairAt::FromLeft(off + by),
                (StairAt::FromRight(off), Some(by)) => StairAt::FromRight(off + by),
                _ => return None,
            },
            (off, _) => match said()? {
                AtEnd::From => StairAt::FromLeft(off.unwrap_or(Length::ZERO)),
                AtEnd::To => StairAt::FromRight(off.unwrap_or(Length::ZERO)),
            },
        };
        let mut all = Stairs::NONE;
        let new = match old {
            Some(old) => StairOpening { width, at, ..*old },
            None => StairOpening::new(width, at),
        };
        all.push(new);
        (run.stairs.len() <= 1).then_some(all)
    }

    /// What is told of openings while no run is there to hold them.
    fn without_run(self, job: &Job) -> Option<Vec<Fact>> {
        if !job.runs.is_empty() || self.name.is_some() || self.longer.is_some() {
            return None;
        }
        let mut facts: Vec<Fact> = self.no_stairs.then_some(Fact::NoStairs).into_iter().collect();
        if let Some(stairs) = self.stairs {
            let place = match (stairs.off, stairs.at.last().map(String::as_str)) {
                (Some(_), _) => return None,
                (None, Some(side)) => Some(Fact::StairPlace(StairPlace { side: side_of(side)?, by: None })),
                (None, None) => None,
            };
            facts.extend(stairs.width.map(Fact::StairWidth));
            facts.extend(place);
        }
        if let Some(gate) = self.gate {
            let placed = !gate.at.is_empty() || gate.off.is_some() || gate.hung != Hung::default();
            let width = gate.width.filter(|_| !placed)?;
            facts.extend(Fact::of(RowId::GateOpening, Value::Length(width)));
        }
        if let Some(bays) = self.bays {
            facts.extend(Fact::of(RowId::BayCount, Value::Count(u64::from(bays))));
        }
        (!facts.is_empty() && !self.no_gate).then_some(facts)
    }
}
