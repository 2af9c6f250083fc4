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
    pub at: Option<String>,
    pub off: Option<Length>,
    pub off_from: Option<String>,
}

/// The end a place of the corpus is.
pub(super) fn end(place: &str) -> Option<End> {
    let plain = |e: &&End| e.name() == place;
    End::ALL.iter().find(plain).copied().or(match place {
        "column" | "chimney" => Some(End::Wall),
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
        let whole = self.length.is_some() || self.from.is_some() || self.to.is_some();
        let old = self.name.as_deref().and_then(|n| about.job.named(n)).or_else(|| self.spoken_of(about, several));
        // A length alone makes no second run: it is that of the one spoken of, or nobody's.
        let alone = self.name.is_none() && self.from.is_none() && self.to.is_none() && !several;
        let patch = match old {
            Some(run) => self.patch(about.job, run)?,
            None if whole && alone && !about.job.runs.is_empty() => return None,
            None if whole => {
                let untold = Run::untold(*next);
                self.patch(about.job, &untold)?
            }
            None => return self.without_run(about.job),
        };
        let id = old.map_or(*next, |r| r.id);
        if old.is_none() {
            *next = RunId(next.0 + 1);
        }
        Some(vec![Fact::Run(id, patch)])
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
        let at = match gate.at.as_deref() {
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
        let far = [stairs.off_from.as_deref(), stairs.at.as_deref()];
        let is = |of: &dyn Fn(&str) -> bool| far.iter().flatten().any(|p| of(p));
        let at = match (stairs.off, stairs.at.as_deref()) {
            (None, Some("middle")) => StairAt::Middle,
            (None, Some("full width")) => StairAt::FromLeft(Length::ZERO),
            (off, _) if is(&left) => StairAt::FromLeft(off.unwrap_or(Length::ZERO)),
            (off, _) if is(&right) => StairAt::FromRight(off.unwrap_or(Length::ZERO)),
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
            let place = match (stairs.off, stairs.at.as_deref()) {
                (Some(_), _) => return None,
                (None, Some(side)) => Some(Fact::StairPlace(StairPlace { side: side_of(side)?, by: None })),
                (None, None) => None,
            };
            facts.extend(stairs.width.map(Fact::StairWidth));
            facts.extend(place);
        }
        if let Some(gate) = self.gate {
            let placed = gate.at.is_some() || gate.off.is_some();
            let width = gate.width.filter(|_| !placed)?;
            facts.extend(Fact::of(RowId::GateOpening, Value::Length(width)));
        }
        if let Some(bays) = self.bays {
            facts.extend(Fact::of(RowId::BayCount, Value::Count(u64::from(bays))));
        }
        (!facts.is_empty() && !self.no_gate).then_some(facts)
    }
}
