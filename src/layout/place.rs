//! From fixed posts and bay counts to figures: every post's mark, every bay's clear.

use super::chosen::{Chosen, choose};
use super::ends::intrusion;
use super::frame::{Fixed, Frame, frame};
use super::ground::{Ground, Neighbour};
use super::kind::hook;
use super::opening::built;
use super::recess::{across_any, in_flanks};
use super::split::{Place, Span, share};
use super::{Bay, BayKind, Kind, Lack, Limits, Part, Placed, Post, RunLayout, Took, post_width};
use crate::figure::{Fig, Why};
use crate::job::apply::gate_in_run;
use crate::job::{Gate, GateAt, PostRole, Run, StairOpening, Stairs};
use crate::measure::{Length, Tape};

/// Lays one run out, its flanks along recessed stairs after it.
pub(super) fn run(run: &Run, ground: &Ground, ends: [Neighbour; 2]) -> Vec<RunLayout> {
    std::iter::once(laid(run, ground, ends, Part::Whole)).chain(in_flanks(run, ground)).collect()
}

/// Lays one stretch out.
pub(super) fn laid(run: &Run, ground: &Ground, ends: [Neighbour; 2], part: Part) -> RunLayout {
    RunLayout {
        id: run.id,
        name: run.name.clone(),
        part,
        meets: ends.map(|end| end.meet(ground.settings)),
        intrudes: intrusion(run, ground, ends),
        told: run.length,
        basis: run.basis.unwrap_or_default(),
        result: placed(run, ground, ends),
    }
}

fn placed(run: &Run, ground: &Ground, ends: [Neighbour; 2]) -> Result<Placed, Vec<Lack>> {
    let Some(told) = run.length else { return Err(blocking(run)) };
    let mut frame = frame(run, told.length, ground, ends)?;
    let chosen = choose(&mut frame, run, told.length, ground).map_err(|lack| vec![lack])?;
    let line = post_width(ground.settings, &[PostRole::Line]);
    let length = Fig::told(told.length, "the run's length");
    let site = Site { run, ground, frame: &frame, chosen: &chosen, limits: ground.limits, line: &line, length };
    let counts = site.counts(ground.tape).map_err(|lack| vec![lack])?;
    Ok(site.place(&counts))
}

/// Everything that stands in the way of a run without a length.
fn blocking(run: &Run) -> Vec<Lack> {
    let gate = run.gate.is_some_and(|g| g.width.is_none() && gate_in_run(run, g));
    let all =
        [(Lack::Length, true), (Lack::From, run.from.is_none()), (Lack::To, run.to.is_none()), (Lack::GateWidth, gate)];
    all.into_iter().filter(|(_, lacks)| *lacks).map(|(lack, _)| lack).collect()
}

/// Facts untold that do not stand in the way.
fn still(run: &Run) -> Vec<Lack> {
    let beyond = run.gate.is_some_and(|g| g.width.is_none() && !gate_in_run(run, g) && !across_any(run));
    let all = [(Lack::From, run.from.is_none()), (Lack::To, run.to.is_none()), (Lack::GateBeyond, beyond)];
    all.into_iter().filter(|(_, lacks)| *lacks).map(|(lack, _)| lack).collect()
}

/// Rail bays span by span, and what was the fewest.
struct Counts {
    each: Vec<u16>,
    fewest: Option<u64>,
    rounded_up: bool,
    /// How many more than the limits ask for, to keep off what was told.
    more: u16,
}

struct Site<'a> {
    run: &'a Run,
    ground: &'a Ground<'a>,
    frame: &'a Frame,
    chosen: &'a Chosen,
    limits: &'a Limits,
    line: &'a Fig,
    length: Fig,
}

impl Site<'_> {
    fn span(&self, i: usize) -> Span {
        self.frame.span(i, self.line.as_length().unwrap_or(Length::ZERO))
    }

    fn rail_spans(&self) -> Vec<Span> {
        let rails = self.frame.between.iter().enumerate().filter(|(_, k)| **k == BayKind::Rail);
        rails.map(|(i, _)| self.span(i)).collect()
    }

    fn counts(&self, tape: Tape) -> Result<Counts, Lack> {
        let spans = self.rail_spans();
        let fewest: Option<Vec<_>> = spans.iter().map(|s| self.chosen.fewest(s, self.limits, tape)).collect();
        let sum = fewest.as_ref().map(|all| all.iter().map(|f| u64::from(f.bays)).sum());
        let mut each = match self.run.bays {
            Some(told) => share(told, &spans)?,
            None => fewest.as_ref().ok_or(Lack::Room)?.iter().map(|f| f.bays).collect(),
        };
        if self.run.bays.is_none() {
            self.chosen.even_up(self.frame, &mut each);
        }
        if spans.iter().zip(&each).any(|(s, n)| s.each(*n).is_none()) {
            return Err(Lack::Room);
        }
        if spans.iter().zip(&each).any(|(s, n)| !self.chosen.keeps_off(s, *n)) {
            return Err(Lack::KeepOff);
        }
        let free = self.run.bays.is_none();
        let up = free && fewest.iter().flatten().any(|f| f.by_limit.taped > f.by_limit.exact);
        let more = fewest.iter().flatten().filter(|_| free).map(|f| f.bays - f.by_limit.taped).sum();
        Ok(Counts { each, fewest: sum, rounded_up: up, more })
    }

    /// What was done about the run's choices.
    fn took(&self, counts: &Counts) -> Vec<Took> {
        let why = || Why::Formula("over the fewest the limits allow, to keep posts off what was told", Vec::new());
        let more = (counts.more > 0).then(|| Took::MoreBays(Fig::count(u64::from(counts.more), why())));
        self.chosen.took.iter().cloned().chain(more).collect()
    }

    fn place(&self, counts: &Counts) -> Placed {
        let basis = self.run.basis.unwrap_or_default();
        // A frame has at least its two ends.
        let (first, last) = (&self.frame.fixed[0], &self.frame.fixed[self.frame.fixed.len() - 1]);
        let (posts, bays) = self.walk(&counts.each);
        Placed {
            length: self.length.clone(),
            on_line: self.frame.on_line.clone(),
            head: None,
            overall: self.frame.overall,
            lead: self.frame.lead,
            origin: hook(first.end, basis, first.post),
            reaches: hook(last.end, basis, last.post),
            ends: [first.end, last.end],
            posts,
            bays,
            count: self.count_fig(counts),
            fewest: counts.fewest.map(|n| Fig::count(n, self.fewest_why())),
            rounded_up: counts.rounded_up,
            flanks: self.flanks(),
            beyond: self.beyond(),
            still: still(self.run),
            took: self.took(counts),
        }
    }

    fn fewest_why(&self) -> Why {
        let mut inputs = vec![("run", self.length.clone()), ("line post", self.line.clone())];
        inputs.extend(self.limits.inputs());
        Why::Formula("the fewest equal clear bays between fixed posts that pass no limit, on the tape too", inputs)
    }

    fn count_fig(&self, counts: &Counts) -> Fig {
        let total = counts.each.iter().map(|n| u64::from(*n)).sum();
        let why = if self.run.bays.is_some() { Why::Told("the bay count") } else { self.fewest_why() };
        Fig::count(total, why)
    }

    /// Posts and bays from the start on.
    fn walk(&self, counts: &[u16]) -> (Vec<Post>, Vec<Bay>) {
        let (mut posts, mut bays) = (Vec::new(), Vec::new());
        let mut counts = counts.iter();
        for (i, fixed) in self.frame.fixed.iter().enumerate() {
            posts.extend(fixed.post.then(|| self.fixed_post(fixed)));
            let Some(kind) = self.frame.between.get(i) else { continue };
            match kind {
                BayKind::Rail => self.rail(i, counts.next().copied().unwrap_or(1), &mut posts, &mut bays),
                opening => bays.push(self.opening(i, *opening)),
            }
        }
        (posts, bays)
    }

    fn fixed_post(&self, f: &Fixed) -> Post {
        Post { skew: f.skew, ..self.post(f.kind(), f.place(), f.size.clone(), f.why.clone()) }
    }

    fn post(&self, kind: Kind, place: Place, width: Fig, why: Why) -> Post {
        let from = |l: Length| l - self.frame.lead;
        let near_face = Fig::length(from(place.near), why.clone());
        Post {
            kind,
            width,
            at: Fig::length(from(place.centre()), why),
            near_face,
            near: place.near,
            takes: place.width,
            skew: None,
        }
    }

    /// One span's line posts and bays.
    fn rail(&self, i: usize, n: u16, posts: &mut Vec<Post>, bays: &mut Vec<Bay>) {
        let span = self.span(i);
        let clear = self.rail_clear(&span, n, i);
        let places: Vec<Place> = span.places(n).collect();
        for k in 1..n {
            let why = self.line_why(&span, &clear, k, i);
            posts.push(self.post(Kind::Line, places[usize::from(k)], self.line.clone(), why));
        }
        let line = |place| Stop { place, size: self.line.clone(), name: Kind::Line.name() };
        let last = places.len() - 1;
        let stop = |k: usize| match k {
            0 => self.stop(i),
            k if k == last => self.stop(i + 1),
            k => line(places[k]),
        };
        bays.extend((0..last).map(|k| bay(BayKind::Rail, &stop(k), &stop(k + 1), clear.clone())));
    }

    fn stop(&self, i: usize) -> Stop {
        let fixed = &self.frame.fixed[i];
        Stop { place: fixed.place(), size: fixed.takes(), name: fixed.kind().name() }
    }

    /// The clear space between fixed place `i` and the next.
    fn space(&self, i: usize) -> Fig {
        let (left, right) = (&self.frame.fixed[i], &self.frame.fixed[i + 1]);
        let mut inputs = vec![("run", self.length.clone())];
        inputs.extend([left, right].iter().filter(|f| f.post).map(|f| ("post", f.takes())));
        Fig::length(right.near - left.far(), Why::Formula("the clear space between the two fixed places", inputs))
    }

    fn rail_clear(&self, span: &Span, n: u16, i: usize) -> Fig {
        let bays = Fig::count(
            u64::from(n),
            if self.run.bays.is_some() { Why::Told("the bay count") } else { self.fewest_why() },
        );
        let posts = vec![("bays", bays.clone()), ("line post", self.line.clone())];
        let posts = Why::Formula("one line post for each of the bays but one", posts);
        let posts = Fig::length(span.line * (i64::from(n) - 1), posts);
        let inputs = vec![("span", self.space(i)), ("line posts", posts), ("bays", bays)];
        let why = Why::Formula("(span less line posts) over bays", inputs);
        Fig::length(span.each(n).unwrap_or(Length::ZERO), why)
    }

    fn line_why(&self, span: &Span, clear: &Fig, k: u16, i: usize) -> Why {
        let start = Fig::length(span.left.far() - self.frame.lead, self.frame.fixed[i].why.clone());
        let number =
            Fig::count(u64::from(k), Why::Formula("its number from there, so that no rounding adds up", vec![]));
        let inputs = vec![
            ("start", start),
            ("bays before it", number),
            ("clear", clear.clone()),
            ("line post", self.line.clone()),
        ];
        Why::Formula(
            "start + bays before it x (clear + line post), less the post to its near face or half of it to its centre",
            inputs,
        )
    }

    fn opening(&self, i: usize, kind: BayKind) -> Bay {
        let (left, right) = (&self.frame.fixed[i], &self.frame.fixed[i + 1]);
        let what = "the gate's width";
        let space = right.near - left.far();
        // What an opening was worked out from stands with the post before it.
        let clear = if kind == BayKind::Gate { Fig::told(space, what) } else { self.stair_clear(space, left, right) };
        bay(kind, &self.stop(i), &self.stop(i + 1), clear)
    }

    /// The clear of the way to stairs: told, or worked out with its posts.
    fn stair_clear(&self, space: Length, left: &Fixed, right: &Fixed) -> Fig {
        let told = |s: &StairOpening| {
            let built = built(s, self.ground).ok()?;
            (s.recess.is_none() && built.width.as_length() == Some(space)).then_some(built.width)
        };
        let posts = if left.post { left } else { right };
        let worked = || Fig::length(space, posts.why.clone());
        self.run.stairs.iter().find_map(told).unwrap_or_else(worked)
    }

    /// The run left of the first opening in it and right of the last, on the run's own basis.
    fn flanks(&self) -> Option<[Fig; 2]> {
        let run = self.length.as_length()?;
        let gate = self.run.gate.and_then(|g| self.beside_gate(g, run));
        let all: Vec<StairOpening> =
            self.run.stairs.iter().filter_map(|s| Some(built(s, self.ground).ok()?.stairs)).collect();
        let openings = Stairs::from(all).along(Some(run));
        let (left, right, opening) = match (openings.first(), openings.last(), gate) {
            (Some(first), Some(last), _) => (first.flanks(Some(run)).0?, last.flanks(Some(run)).1?, first.width),
            (_, _, Some(beside)) => beside,
            _ => return None,
        };
        let inputs = vec![("run", self.length.clone()), ("opening", Fig::told(opening, "the opening"))];
        let why = Why::Formula("what the opening leaves of the run on that side", inputs);
        Some([left, right].map(|l| Fig::length(l, why.clone())))
    }

    /// What a gate away from both ends leaves of the run on its left and its right, and its width.
    fn beside_gate(&self, gate: Gate, run: Length) -> Option<(Length, Length, Length)> {
        let width = gate.width?;
        let left = match gate.at {
            GateAt::OffFrom(off) => off,
            GateAt::OffTo(off) => run - off - width,
            GateAt::Middle => (run - width) / 2,
            _ => return None,
        };
        Some((left, run - width - left, width))
    }

    fn beyond(&self) -> Option<Fig> {
        let gate = self.run.gate.filter(|g| !gate_in_run(self.run, *g) && !across_any(self.run))?;
        gate.width.map(|w| Fig::told(w, "the gate's width"))
    }
}

/// What a bay starts or ends at.
struct Stop {
    place: Place,
    /// What it takes of the line.
    size: Fig,
    name: &'static str,
}

fn bay(kind: BayKind, left: &Stop, right: &Stop, clear: Fig) -> Bay {
    let spacing = right.place.centre() - left.place.centre();
    let inputs = vec![("clear", clear.clone()), ("post before", left.size.clone()), ("post after", right.size.clone())];
    let why = Why::Formula("clear, half the post before and half the post after", inputs);
    let centre = (left.place.post && right.place.post).then(|| Fig::length(spacing, why));
    Bay { kind, start: left.place.far(), clear, centre, spacing, from: left.name, to: right.name }
}
