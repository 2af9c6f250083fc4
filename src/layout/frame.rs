//! Fixed posts: where they have to be, before any bay is split.
//!
//! Places are taken from the run's outside start: the wall, or the outside face of
//! the end post.

use super::ends::{RunEnd, run_end};
use super::ground::{Ground, Neighbour, Side};
use super::opening::{Built, built};
use super::recess::{across, head_clear, mouth_clear};
use super::sizes::{post_width, roles};
use super::split::{Place, Span};
use super::{BayKind, Kind, Lack, Skew};
use crate::figure::{Fig, Why};
use crate::job::apply::gate_in_run;
use crate::job::{End, Gate, GateAt, Run, StairAt, StairOpening};
use crate::measure::Length;

/// A fixed place: a post, or a wall or edge without one.
#[derive(Clone, Debug)]
pub(super) struct Fixed {
    pub end: End,
    /// What kind of post it is, where it is not one by what it stands at.
    pub kind: Option<Kind>,
    pub near: Length,
    /// Of no width where there is no post.
    pub width: Length,
    pub size: Fig,
    /// How a post at an angled corner stands askew to this run; its width is then what it
    /// takes of the line, not its size.
    pub skew: Option<Skew>,
    pub post: bool,
    /// Why it stands there: the formula and its inputs.
    pub why: Why,
}

impl Fixed {
    pub fn far(&self) -> Length {
        self.near + self.width
    }

    /// What it takes of the line: its size, more where it stands askew.
    pub fn takes(&self) -> Fig {
        self.skew.and_then(|skew| skew.takes(&self.size)).unwrap_or_else(|| self.size.clone())
    }

    /// What kind of post stands there.
    pub fn kind(&self) -> Kind {
        self.kind.unwrap_or(Kind::Fixed(self.end))
    }

    pub fn place(&self) -> Place {
        Place { near: self.near, width: self.width, post: self.post }
    }
}

/// The fixed places of a run, and what fills the space after each but the last.
#[derive(Clone, Debug)]
pub(super) struct Frame {
    pub fixed: Vec<Fixed>,
    pub between: Vec<BayKind>,
    pub overall: Length,
    /// Where the told length starts, from the outside start.
    pub lead: Length,
    /// The run along the baluster line, where an end is a corner of the decking.
    pub on_line: Option<Fig>,
}

/// What the frame is built from.
struct Site<'a> {
    run: &'a Run,
    ground: &'a Ground<'a>,
    length: Length,
    lead: Length,
    overall: Length,
}

/// Sets the fixed posts of a run of that length, or names what is lacking.
pub(super) fn frame(run: &Run, length: Length, ground: &Ground, ends: [Neighbour; 2]) -> Result<Frame, Vec<Lack>> {
    let start = run_end(run, ground, ends[0], Side::Start)?;
    let end = run_end(run, ground, ends[1], Side::Finish)?;
    let (lead, on_line) = (start.outside, on_line(length, &start, &end));
    let site = Site { run, ground, length, lead, overall: lead + length + end.outside };
    let frame = site.build(start.fixed, end.fixed, on_line)?;
    frame.check_room(run).map_err(|lack| vec![lack])?;
    Ok(frame)
}

/// The run's length along the baluster line, from its length along the decking's edge.
fn on_line(length: Length, start: &RunEnd, end: &RunEnd) -> Option<Fig> {
    if start.on_line.is_none() && end.on_line.is_none() {
        return None;
    }
    let off: Vec<Fig> = [&start.on_line, &end.on_line].into_iter().flatten().cloned().collect();
    let rest = off.iter().filter_map(Fig::as_length).fold(length, |rest, l| rest - l);
    let mut inputs = vec![("edge", Fig::told(length, "the run's length"))];
    inputs.extend(off.into_iter().map(|f| ("corner", f)));
    Some(Fig::length(rest, Why::Formula("the edge less what the line is in from each of its corners", inputs)))
}

/// An opening within the run: its edges are the outside faces of the guard's posts.
struct Opening {
    start: Length,
    width: Length,
    kind: BayKind,
    /// What its two posts stand at.
    jamb: End,
    why: Why,
}

/// Fixed posts and the openings between them, gathered from the start on.
struct Walk {
    fixed: Vec<Fixed>,
    between: Vec<BayKind>,
}

impl Walk {
    fn then(&mut self, opening: BayKind, post: Fixed) {
        self.between.push(opening);
        self.fixed.push(post);
    }

    fn reached(&self) -> Length {
        self.fixed.last().map_or(Length::ZERO, Fixed::far)
    }
}

impl Site<'_> {
    fn build(&self, start: Fixed, mut end: Fixed, on_line: Option<Fig>) -> Result<Frame, Vec<Lack>> {
        end.near = self.overall - end.width;
        let mut walk = Walk { fixed: vec![start], between: Vec::new() };
        if let Some(gate) = self.end_gate(GateAt::From) {
            let mut jamb = self.end_jamb(gate).map_err(|lack| vec![lack])?;
            jamb.near = walk.reached() + gate.width.unwrap_or(Length::ZERO);
            walk.then(BayKind::Gate, jamb);
        }
        let last = self.openings_into(&mut walk, &end)?;
        if let Some(gate) = self.end_gate(GateAt::To) {
            let mut jamb = self.end_jamb(gate).map_err(|lack| vec![lack])?;
            jamb.near = end.near - gate.width.unwrap_or(Length::ZERO) - jamb.width;
            walk.then(last, jamb);
            walk.then(BayKind::Gate, end);
        } else {
            walk.then(last, end);
        }
        Ok(Frame { fixed: walk.fixed, between: walk.between, overall: self.overall, lead: self.lead, on_line })
    }

    /// The gate that takes its width out of the run at that end.
    fn end_gate(&self, at: GateAt) -> Option<Gate> {
        self.run.gate.filter(|g| g.at.place() == at && gate_in_run(self.run, *g))
    }

    /// A gate at an end: that end's post is one jamb, this is the other.
    fn end_jamb(&self, gate: Gate) -> Result<Fixed, Lack> {
        let width = Fig::told(gate.width.ok_or(Lack::GateWidth)?, "the gate's width");
        let why = Why::Formula("the gate's opening, clear, from the post at that end", vec![("gate", width)]);
        Ok(self.post(End::GatePost, true, why))
    }

    /// Walks the openings within the run; gives what fills the space after them.
    fn openings_into(&self, walk: &mut Walk, end: &Fixed) -> Result<BayKind, Vec<Lack>> {
        for opening in self.openings()? {
            let jamb = || self.post(opening.jamb, opening.kind.is_gate(), opening.why.clone());
            let far = opening.start + opening.width;
            if opening.start < walk.reached() {
                return Err(vec![no_fit(self.run)]);
            }
            // An opening that begins at the run's very start, or ends at its very end, has no guard there.
            if opening.start.is_positive() {
                let mut near_jamb = jamb();
                near_jamb.near = opening.start - near_jamb.width;
                walk.then(BayKind::Rail, near_jamb);
            }
            if far == self.overall && !end.post {
                return if self.end_gate(GateAt::To).is_none() { Ok(opening.kind) } else { Err(vec![Lack::GatePlace]) };
            }
            let mut far_jamb = jamb();
            far_jamb.near = far;
            walk.then(opening.kind, far_jamb);
        }
        Ok(BayKind::Rail)
    }

    /// The openings within the run, in walking order.
    fn openings(&self) -> Result<Vec<Opening>, Vec<Lack>> {
        let within = |g: &Gate| matches!(g.at, GateAt::Middle | GateAt::Stairs) || g.at.off().is_some();
        let gate = self.run.gate.filter(within);
        if gate.is_some_and(|g| g.at == GateAt::Stairs) && self.run.stairs.is_empty() {
            return Err(vec![Lack::GatePlace]);
        }
        let gated = |s: &StairOpening| gate.filter(|_| across(self.run, s));
        let stairs = self.run.stairs.iter().map(|s| self.stairs(&built(s, self.ground)?, gated(s)));
        let mut all: Vec<Opening> = stairs.collect::<Result<_, _>>()?;
        let hangs = self.run.stairs.iter().any(|s| gated(s).is_some());
        let gate = gate.filter(|_| !hangs).map(|g| self.gate_within(g)).transpose().map_err(|lack| vec![lack])?;
        all.extend(gate);
        all.sort_by_key(|o| o.start);
        let apart = all.windows(2).all(|pair| pair[0].start + pair[0].width < pair[1].start);
        if apart { Ok(all) } else { Err(vec![Lack::GatePlace]) }
    }

    fn stairs(&self, built: &Built, gate: Option<Gate>) -> Result<Opening, Vec<Lack>> {
        let stairs = &built.stairs;
        let (left, right) = stairs.flanks(Some(self.length));
        let left = left.unwrap_or(Length::ZERO);
        if stairs.recess.is_some() {
            let corner = left.is_zero() || right.is_some_and(Length::is_zero);
            return if corner { Err(vec![Lack::RecessAtCorner]) } else { self.mouth(built, left, gate) };
        }
        if gate.and_then(|g| g.width).is_some_and(|w| w != stairs.width) {
            return Err(vec![Lack::GatePlace]);
        }
        let says = "the guard stops at the stair opening, the post's outside face at its edge";
        let why = Why::Formula(says, self.stair_inputs(built));
        let kind = if gate.is_some() { BayKind::GatedStairs } else { BayKind::Stairs };
        // A side told as 0 has no guard: the opening starts at the run's outside.
        let start = if left.is_zero() { Length::ZERO } else { self.lead + left };
        Ok(Opening { start, width: stairs.width, kind, jamb: End::StairHead, why })
    }

    fn stair_inputs(&self, built: &Built) -> Vec<(&'static str, Fig)> {
        let mut inputs = vec![("stair opening", built.width.clone())];
        if let StairAt::FromLeft(off) | StairAt::FromRight(off) = built.stairs.at {
            inputs.push(("from the end", Fig::told(off, "where the stairs stand")));
        }
        inputs.push(("run", Fig::told(self.length, "the run's length")));
        inputs
    }

    /// The mouth of recessed stairs: a corner post on the baluster line at each side. A
    /// gate across them hangs at their head, not here.
    fn mouth(&self, built: &Built, left: Length, gate: Option<Gate>) -> Result<Opening, Vec<Lack>> {
        let stairs = &built.stairs;
        if let Some(told) = gate.and_then(|g| g.width)
            && head_clear(built, true, self.ground)?.as_length() != Some(told)
        {
            return Err(vec![Lack::GatePlace]);
        }
        let clear = mouth_clear(built, self.ground)?;
        let width = clear.as_length().unwrap_or(stairs.width);
        let mut inputs = self.stair_inputs(built);
        inputs.push(("between the posts", clear));
        let why = Why::Formula("the guard turns in at the mouth: a corner post on the line at each side", inputs);
        let start = self.lead + left - (width - stairs.width) / 2;
        Ok(Opening { start, width, kind: BayKind::Stairs, jamb: End::Corner, why })
    }

    /// A gate away from both ends: its jambs stand outside its opening.
    fn gate_within(&self, gate: Gate) -> Result<Opening, Lack> {
        let width = gate.width.ok_or(Lack::GateWidth)?;
        let mut inputs =
            vec![("run", Fig::told(self.length, "the run's length")), ("gate", Fig::told(width, "the gate's width"))];
        inputs.extend(gate.at.off().map(|off| ("from the end", Fig::told(off, "where the gate stands"))));
        let (along, says) = match gate.at {
            GateAt::OffFrom(off) => (off, "the gate stands so far from the run's start"),
            GateAt::OffTo(off) => (self.length - off - width, "the gate stands so far from the run's end"),
            _ => ((self.length - width) / 2, "the gate stands in the middle of the run"),
        };
        let why = Why::Formula(says, inputs);
        Ok(Opening { start: self.lead + along, width, kind: BayKind::Gate, jamb: End::GatePost, why })
    }

    fn post(&self, end: End, gate: bool, why: Why) -> Fixed {
        let size = post_width(self.ground.settings, &roles(end, gate));
        let width = size.as_length().unwrap_or(Length::ZERO);
        Fixed { end, kind: None, near: Length::ZERO, width, size, skew: None, post: true, why }
    }
}

impl Frame {
    /// The space after fixed place `i`, for line posts of that width.
    pub fn span(&self, i: usize, line: Length) -> Span {
        Span { left: self.fixed[i].place(), right: self.fixed[i + 1].place(), line, origin: self.lead }
    }

    /// Something must be left between any two fixed posts.
    fn check_room(&self, run: &Run) -> Result<(), Lack> {
        let fits = self.fixed.windows(2).all(|pair| (pair[1].near - pair[0].far()).is_positive());
        if fits { Ok(()) } else { Err(no_fit(run)) }
    }
}

/// What does not fit: a gate beside stairs, or the run as a whole.
fn no_fit(run: &Run) -> Lack {
    let clash = !run.stairs.is_empty() && run.gate.is_some_and(|g| gate_in_run(run, g));
    if clash { Lack::GatePlace } else { Lack::Room }
}
