//! JSON of stairs and gates, under the contract's names.

use super::json::length;
use super::json_job::{side, told};
use crate::job::{
    End, Flight, Gate, GateAt, Head, Jamb, Job, Lands, Newels, OpenSides, RiserKind, Run, StairAt, StairMeasure,
    StairOpening, Swing,
};
use crate::measure::{Length, Tape};
use serde_json::{Value, json};

/// Every stair told: those in runs, then those no run holds.
pub(super) fn stairs(job: &Job, tape: Tape) -> Vec<Value> {
    let in_runs = job.runs.iter().flat_map(|r| {
        let all = r.stairs.along(r.length.map(|t| t.length));
        all.into_iter().map(move |s| opening(job, r, &s, tape))
    });
    let alone = job.stair_width.is_some() || job.stair_measure.is_some();
    let in_runs: Vec<Value> = in_runs.collect();
    let flight = (job.flight != Flight::default() || job.stair_place.is_some()) && in_runs.is_empty();
    let at = job.stair_place.as_ref().map(|p| match p.by {
        Some(end) => format!("{} by {}", p.side, end.name()),
        None => p.side.clone(),
    });
    let loose = || stair(None, job.stair_width, job.stair_measure, (at.as_deref(), None), job.flight, tape);
    let alone = (alone || flight).then(loose);
    in_runs.into_iter().chain(alone).collect()
}

/// The stairs of a run; "recess" stands only where they are let into the deck.
pub(super) fn opening(job: &Job, run: &Run, stairs: &StairOpening, tape: Tape) -> Value {
    let place = match stairs.at {
        StairAt::Middle => (Some("middle"), None),
        StairAt::FromLeft(l) => (Some("from left"), Some(l)),
        StairAt::FromRight(l) => (Some("from right"), Some(l)),
    };
    let mut said = stair(Some(run), Some(stairs.width), stairs.measure, place, job.flight(stairs), tape);
    put_told(&mut said, [("recess", stairs.recess.map(|deep| length(deep, tape)))]);
    said
}

fn stair(
    run: Option<&Run>,
    width: Option<Length>,
    between: Option<StairMeasure>,
    (at, off): (Option<&str>, Option<Length>),
    flight: Flight,
    tape: Tape,
) -> Value {
    let mut said = json!({
        "run": run.map(|r| r.id.0), "width": told(width, tape), "risers": flight.risers, "rise": told(flight.rise, tape),
        "tread": told(flight.tread, tape), "at": at, "off": told(off, tape),
    });
    let more = [
        ("measure", between.map(|m| measure(m).into())),
        ("open", flight.open.map(|o| open(o).into())),
        ("newels", flight.newels.map(|n| newels(n).into())),
        ("lands", flight.lands.map(|on| lands(on).into())),
        ("total_rise", flight.total_rise.map(|l| length(l, tape))),
        ("total_run", flight.total_run.map(|l| length(l, tape))),
        ("nosing", flight.nosing.map(|l| length(l, tape))),
        ("rail_height", flight.height.map(|l| length(l, tape))),
        ("top_tread", flight.head.map(|h| if h == Head::Flush { "flush" } else { "one riser down" }.into())),
        ("between_treads", flight.between.map(|k| if k == RiserKind::Closed { "closed" } else { "open" }.into())),
        ("open_riser", flight.between.and_then(opening_between).map(|l| length(l, tape))),
        ("landing", flight.landing.map(|l| length(l, tape))),
        ("ground_falls", flight.fall.map(|f| json!({"by": length(f.by, tape), "over": length(f.over, tape)}))),
    ];
    put_told(&mut said, more);
    said
}

fn opening_between(kind: RiserKind) -> Option<Length> {
    match kind {
        RiserKind::Opening(l) => Some(l),
        RiserKind::Closed | RiserKind::Open => None,
    }
}

fn measure(m: StairMeasure) -> &'static str {
    match m {
        StairMeasure::Posts => "between posts",
        StairMeasure::Decking => "decking",
        StairMeasure::Framing => "framing",
        StairMeasure::Treads => "treads",
    }
}

fn open(sides: OpenSides) -> &'static str {
    match sides {
        OpenSides::Both => "both",
        OpenSides::One => "one",
        OpenSides::Left => "left",
        OpenSides::Right => "right",
        OpenSides::Neither => "neither",
    }
}

fn newels(n: Newels) -> &'static str {
    match n {
        Newels::Beside => "beside",
        Newels::OnTreads => "on treads",
    }
}

fn lands(on: Lands) -> &'static str {
    match on {
        Lands::Slab => "slab",
        Lands::Ground => "ground",
        Lands::Pavers => "pavers",
        Lands::Gravel => "gravel",
        Lands::Landing => "landing",
    }
}

fn gate(r: &Run, g: Gate, tape: Tape) -> Value {
    let end = match g.at.place() {
        GateAt::From => r.from,
        GateAt::To => r.to,
        _ => None,
    };
    let at = if end == Some(End::StairHead) { "at stair head" } else { side(g.at) };
    let (h, mut said) = (
        g.hung,
        json!({
            "run": r.id.0, "width": told(g.width, tape), "at": at, "hinge": g.hung.hinge.map(jamb),
            "latch": g.hung.latch.map(jamb), "swing": g.hung.swing.map(swing),
        }),
    );
    let more = [
        ("off", g.at.off().map(|l| length(l, tape))),
        ("hinge_gap", h.hinge_gap.map(|l| length(l, tape))),
        ("latch_gap", h.latch_gap.map(|l| length(l, tape))),
        ("leaves", h.leaves.map(Value::from)),
        ("self_closing", h.self_closing.map(Value::from)),
        ("leaf", h.leaf.map(|l| length(l, tape))),
        ("latch_height", h.latch_height.map(|l| length(l, tape))),
    ];
    put_told(&mut said, more);
    said
}

/// One gate, or one for each of the stairs it hangs across.
pub(super) fn gates_of(r: &Run, tape: Tape) -> Vec<Value> {
    let Some(g) = r.gate else { return Vec::new() };
    let count = if g.at == GateAt::Stairs { r.stairs.len().max(1) } else { 1 };
    vec![gate(r, g, tape); count]
}

/// Fields that stand only where they were told.
fn put_told(said: &mut Value, fields: impl IntoIterator<Item = (&'static str, Option<Value>)>) {
    for (name, value) in fields {
        if let Some(value) = value {
            said[name] = value;
        }
    }
}

fn jamb(j: Jamb) -> &'static str {
    match j {
        Jamb::Left => "left",
        Jamb::Right => "right",
        Jamb::House => "house side",
        Jamb::Away => "away from the house",
    }
}

fn swing(s: Swing) -> &'static str {
    match s {
        Swing::OverDeck => "toward deck",
        Swing::Out => "out",
        Swing::Both => "both ways",
    }
}
