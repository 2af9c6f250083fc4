//! Runs as told in one line, in the order said: lengths, ends, names, and the openings in them.

mod draft;

use super::About;
use super::told::Says;
use crate::figure::Value;
use crate::job::{Basis, End, Fact};
use crate::measure::Length;
use crate::quantity::RowId;
use draft::{Draft, Opening, end, jamb, swing};

/// True for a row that is told of a run or of an opening in it.
pub(super) fn is_of_runs(row: RowId) -> bool {
    use RowId::{
        BayCount, Flank, GateAt, GateOpening, GateWidth, Hinge, Latch, Offset, OffsetFrom, RunCentre, RunClear,
        RunFrom, RunLength, RunName, RunOverall, RunTo, StairAt, StairWidth, Swing, Turn,
    };
    let lengths = matches!(row, RunLength | RunOverall | RunClear | RunCentre | Flank);
    let ends = matches!(row, RunFrom | RunTo | RunName | Offset | OffsetFrom | BayCount);
    lengths
        || ends
        || matches!(row, Hinge | Latch | Swing | Turn | StairAt | StairWidth | GateAt | GateWidth | GateOpening)
}

/// True for a row of a gate's opening, false for one of stairs'; `None` for any other.
pub(super) fn is_opening(row: RowId) -> Option<bool> {
    match row {
        RowId::GateAt | RowId::GateWidth | RowId::GateOpening => Some(true),
        RowId::Hinge | RowId::Latch | RowId::Swing => Some(true),
        RowId::StairAt | RowId::StairWidth => Some(false),
        _ => None,
    }
}

/// True for a row that says where along its run an opening stands.
pub(super) fn is_placing(row: RowId) -> bool {
    matches!(row, RowId::Offset | RowId::OffsetFrom)
}

/// How the guard goes on at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Bend {
    /// In over the deck, and on: an outside corner and an inside one.
    In,
    /// Out from the deck, and on: an inside corner and an outside one.
    Out,
    /// By so many degrees that are no right angle.
    Angled,
}

fn bend(said: &Says) -> Option<Bend> {
    match said {
        Says::Word(word) => match word.as_str() {
            "in" | "back" | "toward house" => Some(Bend::In),
            "out" => Some(Bend::Out),
            _ => None,
        },
        Says::Value(Value::Quantity(degrees, _)) => (*degrees.numer() != 90 * *degrees.denom()).then_some(Bend::Angled),
        _ => None,
    }
}

/// The runs of a line.
#[derive(Clone, Debug)]
pub(super) struct Runs {
    runs: Vec<Draft>,
    /// A name stands before its run's length in this line.
    names_lead: bool,
    /// Where the next run starts: at the opening the last one ran into.
    started: Option<End>,
    /// How many lengths of runs are still to come.
    lengths: usize,
    /// How wide the stairs between two runs are.
    stairs_between: Option<Length>,
    /// The rows still to come, the next one last.
    ahead: Vec<RowId>,
    /// How the guard goes on behind so many lengths.
    turns: Vec<(usize, Bend)>,
}

impl Runs {
    /// None yet; the rows of runs the line will fill, in order.
    pub(super) fn new(rows: Vec<RowId>) -> Runs {
        let first = |of: &dyn Fn(&RowId) -> bool| rows.iter().position(of);
        let length = first(&|r| length_of(*r).is_some());
        let name = first(&|r| *r == RowId::RunName);
        let names_lead = name.is_some() && (length.is_none() || name < length);
        let lengths = rows.iter().filter(|r| length_of(**r).is_some()).count();
        Runs {
            runs: Vec::new(),
            names_lead,
            started: None,
            lengths,
            stairs_between: None,
            ahead: rows.into_iter().rev().collect(),
            turns: Vec::new(),
        }
    }

    /// The run spoken of, a new one where what comes next is already told of the last.
    fn run(&mut self, full: impl Fn(&Draft) -> bool) -> &mut Draft {
        if self.runs.last().is_none_or(full) {
            let from = self.started.take();
            self.runs.push(Draft { from, ..Draft::default() });
        }
        let last = self.runs.len() - 1;
        &mut self.runs[last]
    }

    /// Takes in what is said of a row; `None` where it cannot be told so.
    pub(super) fn take(&mut self, row: RowId, said: &Says) -> Option<()> {
        if self.ahead.last() == Some(&row) {
            self.ahead.pop();
        }
        match (row, said) {
            (RowId::RunName, Says::Word(name)) => self.name(name),
            // "30 in from the left": of the opening's distance.
            (RowId::RunFrom, Says::Word(place)) if end(place).is_none() => {
                let opening = self.opening()?;
                opening.off?;
                opening.off_from = Some(place.clone());
            }
            (RowId::RunFrom, Says::Word(place)) => self.from(end(place)?),
            (RowId::RunTo, Says::Word(place)) => self.to(end(place)?),
            (RowId::BayCount, Says::Value(Value::Count(n))) => {
                self.run(|_| false).bays = Some(u16::try_from(*n).ok()?);
            }
            // Between two stretches of guard an opening parts them.
            (RowId::StairWidth, Says::Value(Value::Length(l))) if self.is_between() => self.parted(End::StairHead, *l),
            (RowId::StairWidth, Says::Value(Value::Length(l))) => self.stairs().width = Some(*l),
            (RowId::StairAt, Says::Nothing) => self.run(|_| false).no_stairs = true,
            (RowId::StairAt, Says::Word(place)) => self.stairs().at.push(place.clone()),
            (RowId::GateWidth | RowId::GateOpening, Says::Value(Value::Length(l))) => self.gate().width = Some(*l),
            (RowId::GateAt, Says::Nothing) => self.run(|_| false).no_gate = true,
            (RowId::GateAt, Says::Word(place)) => self.gate().at.push(place.clone()),
            (RowId::Turn, said) => {
                let told = self.runs.iter().filter(|d| d.length.is_some()).count();
                self.turns.push((told, bend(said)?));
            }
            (RowId::Hinge, Says::Word(side)) => self.gate().hung.hinge = Some(jamb(side)?),
            (RowId::Latch, Says::Word(side)) => self.gate().hung.latch = Some(jamb(side)?),
            (RowId::Swing, Says::Word(way)) => self.gate().hung.swing = Some(swing(way)?),
            // Two distances of one opening, from both ends: they may not agree.
            (RowId::Offset, Says::Value(Value::Length(_))) if self.opening()?.off.is_some() => return None,
            (RowId::Offset, Says::Value(Value::Length(l))) => self.opening()?.off = Some(*l),
            (RowId::Offset, Says::Change(Value::Length(l))) => self.opening()?.further = Some(*l),
            (RowId::OffsetFrom, Says::Word(place)) => self.opening()?.off_from = Some(place.clone()),
            (row, Says::Value(Value::Length(l))) => self.length(*l, length_of(row)?),
            (row, Says::Change(Value::Length(l))) if length_of(row).is_some() => self.run(|_| false).longer = Some(*l),
            _ => return None,
        }
        Some(())
    }

    fn name(&mut self, name: &str) {
        let lead = self.names_lead;
        let full = |d: &Draft| d.name.is_some() || lead && (d.length.is_some() || d.to.is_some());
        self.run(full).name = Some(name.to_owned());
    }

    /// True where a stretch of guard has been told without its end, and another is to come.
    fn is_between(&self) -> bool {
        let open = |d: &Draft| d.length.is_some() && d.to.is_none_or(|e| e == End::StairHead) && d.stairs.is_none();
        // Stairs with a place of their own stand in the run they are said of.
        let placed = matches!(self.ahead.last(), Some(RowId::StairAt | RowId::Offset | RowId::OffsetFrom));
        !placed && self.lengths > 0 && self.stairs_between.is_none() && self.runs.last().is_some_and(open)
    }

    fn parted(&mut self, at: End, width: Length) {
        self.run(|_| false).to = Some(at);
        self.started = Some(at);
        self.stairs_between = Some(width);
    }

    fn length(&mut self, l: Length, basis: Option<Basis>) {
        self.lengths = self.lengths.saturating_sub(1);
        self.run(|d| d.length.is_some()).length = Some((l, basis));
    }

    fn from(&mut self, place: End) {
        let run = self.run(|d| d.from.is_some() && (d.length.is_some() || d.to.is_some()));
        run.from = Some(place);
    }

    fn to(&mut self, place: End) {
        self.run(|d| d.to.is_some()).to = Some(place);
    }

    fn stairs(&mut self) -> &mut Opening {
        self.run(|_| false).stairs.get_or_insert_default()
    }

    fn gate(&mut self) -> &mut Opening {
        self.run(|_| false).gate.get_or_insert_default()
    }

    /// The opening a distance belongs to.
    fn opening(&mut self) -> Option<&mut Opening> {
        let run = self.run(|_| false);
        match (&mut run.stairs, &mut run.gate) {
            (Some(_), Some(_)) => None,
            (None, Some(gate)) => Some(gate),
            (stairs, None) => Some(stairs.get_or_insert_default()),
        }
    }

    /// The facts that tell them; `None` where it is not clear which run is meant.
    pub(super) fn facts(mut self, about: &About<'_>) -> Option<Vec<Fact>> {
        self.part_by_stairs();
        self.bend()?;
        self.share_length(about.line);
        let mut next = about.job.next_run();
        let mut facts: Vec<Fact> = self.stairs_between.map(Fact::StairWidth).into_iter().collect();
        let several = self.runs.len() > 1;
        for draft in self.runs {
            if draft == Draft::default() {
                continue;
            }
            facts.extend(draft.facts(about, &mut next, several)?);
        }
        Some(facts)
    }
}

impl Runs {
    /// "6 ft, in 2, and 8 to the corner": three lengths that meet where the guard bends; `None` for bends of anything else.
    fn bend(&mut self) -> Option<()> {
        let Some((behind, bend)) = self.turns.first().copied() else { return Some(()) };
        let alike = self.turns.iter().all(|(_, b)| *b == bend);
        let [first, second, third] = &mut self.runs[..] else { return None };
        let lengths = [&*first, second, third].iter().all(|d| d.length.is_some());
        let (near, far) = match bend {
            Bend::In => (End::Corner, End::InsideCorner),
            Bend::Out => (End::InsideCorner, End::Corner),
            Bend::Angled => (End::AngledCorner, End::AngledCorner),
        };
        // A step stands before the length of its own, the second.
        let placed = bend == Bend::Angled || self.turns.len() == 1 && behind == 1;
        if !alike || !lengths || !placed || second.name.is_some() {
            return None;
        }
        (first.to, second.from, second.to, third.from) = (Some(near), Some(near), Some(far), Some(far));
        Some(())
    }

    /// "6'8 to the stairs, past them 11'4, stairs 4'6": stairs without a place of their own part two stretches, wherever their width is said.
    fn part_by_stairs(&mut self) {
        let [first, second] = &mut self.runs[..] else { return };
        let open = first.to.is_none_or(|e| e == End::StairHead) && second.from.is_none_or(|e| e == End::StairHead);
        let lengths = first.length.is_some() && second.length.is_some() && second.name.is_none();
        let holds = |d: &Draft| d.stairs.as_ref().filter(|s| s.at.is_empty() && s.off.is_none()).and_then(|s| s.width);
        if let Some(width) = holds(first).or(holds(second)).filter(|_| open && lengths && self.stairs_between.is_none())
        {
            (first.stairs, second.stairs) = (None, None);
            (first.to, second.from) = (Some(End::StairHead), Some(End::StairHead));
            self.stairs_between = Some(width);
        }
    }

    /// "left and right are 12 foot each": the one length is of every run named.
    fn share_length(&mut self, line: &str) {
        let each = line.split(|c: char| !c.is_alphanumeric()).any(|w| EACH.iter().any(|e| w.eq_ignore_ascii_case(e)));
        let lengths: Vec<_> = self.runs.iter().filter_map(|d| d.length).collect();
        if let ([length], true) = (&lengths[..], each && self.runs.iter().all(|d| d.name.is_some())) {
            self.runs.iter_mut().for_each(|d| d.length = Some(*length));
        }
    }
}

/// Words that give one figure to several things.
const EACH: &[&str] = &["each", "ea", "both", "apiece", "every"];

/// True for a row of a run's length.
pub(super) fn is_length(row: RowId) -> bool {
    length_of(row).is_some()
}

/// The basis a row of lengths tells; `None` for a row that is no run's length.
fn length_of(row: RowId) -> Option<Option<Basis>> {
    match row {
        RowId::RunLength => Some(None),
        RowId::RunOverall => Some(Some(Basis::Overall)),
        RowId::RunClear => Some(Some(Basis::Clear)),
        RowId::RunCentre => Some(Some(Basis::Centre)),
        _ => None,
    }
}
