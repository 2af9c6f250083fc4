//! Fixed posts: where they have to be, before any bay is split.
//!
//! Places are taken from the run's outside start: the wall, or the outside face of
//! the end post.

use super::sizes::{post_width, roles};
use super::stretch::flanks;
use super::{BayKind, Lack};
use crate::figure::{Fig, Why};
use crate::job::apply::gate_in_run;
use crate::job::{Basis, End, Gate, GateAt, HouseEnd, Run, Settings, StairAt, StairOpening};
use crate::measure::Length;

/// A fixed place: a post, or a wall or edge without one.
#[derive(Clone, Debug)]
pub(super) struct Fixed {
    pub end: End,
    pub near: Length,
    /// Of no width where there is no post.
    pub width: Length,
    pub size: Fig,
    pub post: bool,
    /// Why it stands there: the formula and its inputs.
    pub why: Why,
}

impl Fixed {
    pub fn far(&self) -> Length {
        self.near + self.width
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
}

/// What the frame is built from.
struct Site<'a> {
    run: &'a Run,
    settings: &'a Settings,
    length: Length,
    lead: Length,
    overall: Length,
}

/// Sets the fixed posts of a run of that length, or names what is lacking.
pub(super) fn frame(run: &Run, length: Length, settings: &Settings) -> Result<Frame, Lack> {
    let (start, end) = (end_post(run, settings, Side::Start), end_post(run, settings, Side::Finish));
    let basis = run.basis.unwrap_or_default();
    let (lead, tail) = (share(basis, start.width), share(basis, end.width));
    let site = Site { run, settings, length, lead, overall: lead + length + tail };
    let frame = site.build(start, end)?;
    frame.check_room(run)?;
    Ok(frame)
}

/// How much of an end post lies outside the told length.
fn share(basis: Basis, width: Length) -> Length {
    match basis {
        Basis::Overall => Length::ZERO,
        Basis::Clear => width,
        Basis::Centre | Basis::Edge => width / 2,
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Start,
    Finish,
}

fn end_post(run: &Run, settings: &Settings, side: Side) -> Fixed {
    let (told, at) = match side {
        Side::Start => (run.from, GateAt::From),
        Side::Finish => (run.to, GateAt::To),
    };
    let end = told.unwrap_or(End::EndPost);
    let size = post_width(settings, &roles(end, run.gate.is_some_and(|g| g.at.place() == at)));
    let bracket = end.is_wall() && settings.house_end == Some(HouseEnd::Bracket);
    let post = !bracket && !stairs_reach(run, side);
    let width = if post { size.as_length().unwrap_or(Length::ZERO) } else { Length::ZERO };
    let why = Why::Formula("at the end of the run, on the basis it was told", vec![("post", size.clone())]);
    Fixed { end, near: Length::ZERO, width, size, post, why }
}

/// True where the stair opening begins at the run's very end: no guard, no post there.
fn stairs_reach(run: &Run, side: Side) -> bool {
    let Some(stairs) = run.stairs else { return false };
    let (left, right) = flanks(stairs, run.length.map(|t| t.length));
    let flank = if side == Side::Start { left } else { right };
    flank.is_some_and(Length::is_zero)
}

/// An opening within the run: its edges are the outside faces of the guard's posts.
struct Opening {
    start: Length,
    width: Length,
    kind: BayKind,
    why: Why,
}

impl Opening {
    fn jamb(&self) -> End {
        if self.kind == BayKind::Gate { End::GatePost } else { End::StairHead }
    }
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
    fn build(&self, start: Fixed, mut end: Fixed) -> Result<Frame, Lack> {
        end.near = self.overall - end.width;
        let mut walk = Walk { fixed: vec![start], between: Vec::new() };
        if let Some(gate) = self.end_gate(GateAt::From) {
            let mut jamb = self.end_jamb(gate)?;
            jamb.near = walk.reached() + gate.width.ok_or(Lack::GateWidth)?;
            walk.then(BayKind::Gate, jamb);
        }
        let last = self.openings_into(&mut walk, &end)?;
        if let Some(gate) = self.end_gate(GateAt::To) {
            let mut jamb = self.end_jamb(gate)?;
            jamb.near = end.near - gate.width.ok_or(Lack::GateWidth)? - jamb.width;
            walk.then(last, jamb);
            walk.then(BayKind::Gate, end);
        } else {
            walk.then(last, end);
        }
        Ok(Frame { fixed: walk.fixed, between: walk.between, overall: self.overall, lead: self.lead })
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
    fn openings_into(&self, walk: &mut Walk, end: &Fixed) -> Result<BayKind, Lack> {
        for opening in self.openings()? {
            let jamb = || self.post(opening.jamb(), opening.kind.is_gate(), opening.why.clone());
            let far = opening.start + opening.width;
            if opening.start < walk.reached() {
                return Err(no_fit(self.run));
            }
            // An opening that begins at the run's very start, or ends at its very end, has no guard there.
            if opening.start.is_positive() {
                let mut near_jamb = jamb();
                near_jamb.near = opening.start - near_jamb.width;
                walk.then(BayKind::Rail, near_jamb);
            }
            if far == self.overall && !end.post {
                return if self.end_gate(GateAt::To).is_none() { Ok(opening.kind) } else { Err(Lack::GatePlace) };
            }
            let mut far_jamb = jamb();
            far_jamb.near = far;
            walk.then(opening.kind, far_jamb);
        }
        Ok(BayKind::Rail)
    }

    /// The openings within the run, in walking order.
    fn openings(&self) -> Result<Vec<Opening>, Lack> {
        let gate = self.run.gate.filter(|g| matches!(g.at, GateAt::Middle | GateAt::Stairs));
        let over_stairs = gate.is_some_and(|g| g.at == GateAt::Stairs);
        if over_stairs && self.run.stairs.is_none() {
            return Err(Lack::GatePlace);
        }
        let both_middle = self.run.stairs.is_some_and(|s| s.at == StairAt::Middle) && gate.is_some();
        let across = over_stairs || both_middle;
        let stairs = self.run.stairs.map(|s| self.stairs(s, gate.filter(|_| across))).transpose()?;
        let gate = gate.filter(|_| !across).map(|g| self.middle_gate(g)).transpose()?;
        let mut all: Vec<Opening> = stairs.into_iter().chain(gate).collect();
        all.sort_by_key(|o| o.start);
        let apart = all.windows(2).all(|pair| pair[0].start + pair[0].width < pair[1].start);
        if apart { Ok(all) } else { Err(Lack::GatePlace) }
    }

    fn stairs(&self, stairs: StairOpening, gate: Option<Gate>) -> Result<Opening, Lack> {
        if gate.and_then(|g| g.width).is_some_and(|w| w != stairs.width) {
            return Err(Lack::GatePlace);
        }
        let (left, _) = flanks(stairs, Some(self.length));
        let start = self.lead + left.unwrap_or(Length::ZERO);
        let mut inputs = vec![("stair opening", Fig::told(stairs.width, "the stair opening"))];
        if let StairAt::FromLeft(off) | StairAt::FromRight(off) = stairs.at {
            inputs.push(("from the end", Fig::told(off, "where the stairs stand")));
        }
        inputs.push(("run", Fig::told(self.length, "the run's length")));
        let why = Why::Formula("the guard stops at the stair opening, the post's outside face at its edge", inputs);
        let kind = if gate.is_some() { BayKind::GatedStairs } else { BayKind::Stairs };
        // A side told as 0 has no guard: the opening starts at the run's outside.
        let start = if left.is_some_and(Length::is_zero) { Length::ZERO } else { start };
        Ok(Opening { start, width: stairs.width, kind, why })
    }

    fn middle_gate(&self, gate: Gate) -> Result<Opening, Lack> {
        let width = gate.width.ok_or(Lack::GateWidth)?;
        let inputs =
            vec![("run", Fig::told(self.length, "the run's length")), ("gate", Fig::told(width, "the gate's width"))];
        let why = Why::Formula("the gate stands in the middle of the run", inputs);
        Ok(Opening { start: self.lead + (self.length - width) / 2, width, kind: BayKind::Gate, why })
    }

    fn post(&self, end: End, gate: bool, why: Why) -> Fixed {
        let size = post_width(self.settings, &roles(end, gate));
        let width = size.as_length().unwrap_or(Length::ZERO);
        Fixed { end, near: Length::ZERO, width, size, post: true, why }
    }
}

impl Frame {
    /// Something must be left between any two fixed posts.
    fn check_room(&self, run: &Run) -> Result<(), Lack> {
        let fits = self.fixed.windows(2).all(|pair| (pair[1].near - pair[0].far()).is_positive());
        if fits { Ok(()) } else { Err(no_fit(run)) }
    }
}

/// What does not fit: a gate beside stairs, or the run as a whole.
fn no_fit(run: &Run) -> Lack {
    let clash = run.stairs.is_some() && run.gate.is_some_and(|g| gate_in_run(run, g));
    if clash { Lack::GatePlace } else { Lack::Room }
}
