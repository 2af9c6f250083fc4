//! One run as told so far, and the facts that tell it.

use super::super::About;
use crate::figure::Value;
use crate::job::{
    Basis, End, Fact, Gate, GateAt, Job, Run, RunId, RunPatch, StairAt, StairOpening, StairPlace, Stairs, Told,
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

/// True for a line that takes back what was said before.
fn repairs(line: &str) -> bool {
    const WORDS: &[&str] = &[
        "no",
        "nope",
        "nah",
        "wait",
        "scratch",
        "sorry",
        "actually",
        "correction",
        "instead",
        "make",
        "should",
        "meant",
        "oops",
    ];
    line.split(|c: char| !c.is_alphanumeric()).any(|w| WORDS.iter().any(|r| w.eq_ignore_ascii_case(r)))
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
        focus.filter(|run| !new && (self.length.is_none() || run.length.is_none() || repairs(about.line)))
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
            from: self.from,
            to: self.to,
            gate,
            stairs,
            bays: self.bays.map(Some),
            ..RunPatch::default()
        })
    }

    /// Where a gate hangs in the run.
    fn hang(&self, gate: &Opening, run: &Run) -> Option<Gate> {
        let (from, to) = (self.from.or(run.from), self.to.or(run.to));
        let at = match gate.at.last().map(String::as_str) {
            Some("middle") => GateAt::Middle,
            Some("left") => GateAt::Left,
            Some("right") => GateAt::Right,
            Some("from-end" | "near end") => GateAt::From,
            Some("to-end" | "end" | "far end") => GateAt::To,
            Some(place) => match (end(place.trim_start_matches("by "))?, from, to) {
                (end, Some(f), Some(t)) if f == t && f == end => return None,
                (end, Some(f), _) if f == end => GateAt::From,
                (end, _, Some(t)) if t == end => GateAt::To,
                _ => return None,
            },
            None => run.gate?.at,
        };
        Some(Gate::new(at, gate.width.or(run.gate.and_then(|g| g.width))))
    }

    /// Where stairs stand in the run.
    fn put(&self, job: &Job, stairs: &Opening, run: &Run) -> Option<Stairs> {
        let old = run.stairs.only();
        let width = stairs.width.or(old.map(|s| s.width)).or(job.stair_width)?;
        let left = |place: &str| matches!(place, "left" | "left corner" | "left side" | "left end");
        let right = |place: &str| matches!(place, "right" | "right corner" | "right side" | "right end");
        let at = stairs.at.last().map(String::as_str);
        let far = [stairs.off_from.as_deref(), at];
        let is = |of: &dyn Fn(&str) -> bool| far.iter().flatten().any(|p| of(p));
        let by = |side: Option<End>| {
            far.iter().flatten().any(|p| end(p.trim_start_matches("by ")).is_some_and(|e| Some(e) == side))
        };
        let (from, to) = (self.from.or(run.from), self.to.or(run.to));
        let at = match (stairs.off, at) {
            (None, Some("middle")) => StairAt::Middle,
            (None, Some("full width")) => StairAt::FromLeft(Length::ZERO),
            (off, _) if is(&left) => StairAt::FromLeft(off.unwrap_or(Length::ZERO)),
            (off, _) if is(&right) => StairAt::FromRight(off.unwrap_or(Length::ZERO)),
            // The left end is the one the run starts from.
            (off, _) if from != to && by(from) => StairAt::FromLeft(off.unwrap_or(Length::ZERO)),
            (off, _) if from != to && by(to) => StairAt::FromRight(off.unwrap_or(Length::ZERO)),
            (Some(_), _) | (None, Some(_)) => return None,
            (None, None) => old?.at,
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
            let placed = !gate.at.is_empty() || gate.off.is_some();
            let width = gate.width.filter(|_| !placed)?;
            facts.extend(Fact::of(RowId::GateOpening, Value::Length(width)));
        }
        if let Some(bays) = self.bays {
            facts.extend(Fact::of(RowId::BayCount, Value::Count(u64::from(bays))));
        }
        (!facts.is_empty() && !self.no_gate).then_some(facts)
    }
}
