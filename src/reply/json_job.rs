//! JSON of the job: what has been told, under the contract's names. What was not told is null.

use super::json::{figure, length, tape_of};
use super::json_choices::choices;
use super::json_order;
use super::json_stairs::{gates_of, opening, stairs};
use crate::job::outline::filled;
use crate::job::{
    Anyway, Basis, Blocking, Duration, End, Fixing, GateAt, Grade, HouseEnd, Job, JoistsRun, Law, Local, Mount, Nosing,
    NotchTold, OrderBook, PostRole, PostSize, Run, Settings, SlotId, Species, Turned, View,
};
use crate::layout::{Stretch, stretches};
use crate::measure::{Length, Shade, Tape};
use serde_json::{Map, Value, json};

/// The job's JSON object.
pub fn job_json(job: &Job) -> Value {
    let tape = tape_of(job);
    let outline = filled(job);
    let job = &outline.job;
    let runs: Vec<Value> =
        job.runs.iter().flat_map(|r| stretches(job, r).into_iter().map(move |s| run(job, r, s, tape))).collect();
    let gates: Vec<Value> = job.runs.iter().flat_map(|r| gates_of(r, tape)).collect();
    let notes: Vec<&str> = job.notes.iter().map(|n| n.text.as_str()).collect();
    let mut said = json!({
        "runs": runs, "deck": deck(job, tape), "stairs": stairs(job, tape), "gates": gates,
        "settings": settings(&job.settings, tape), "notes": notes,
    });
    let law = &job.settings.law;
    said["settings"] =
        with(said["settings"].take(), vec![("place", law.place.map(|p| p.id).into()), ("local", local(law, tape))]);
    if job.order != OrderBook::default() {
        said["order"] = json_order::order(&job.order, tape);
    }
    if !job.figures.is_empty() {
        said["told"] = figures(job, tape);
    }
    if !job.done.is_empty() {
        said["done"] = job.done.iter().map(|s| s.name()).collect();
    }
    said
}

/// Figures no part of the job keeps, each under its row's JSON name; a row without one, or with one another told row has, under its own.
fn figures(job: &Job, tape: Tape) -> Value {
    let shared = |name: &str| job.figures.keys().filter(|r| r.row().json == name).count() > 1;
    let name = |row: SlotId| match row.row().json {
        json if json.is_empty() || shared(json) => row.row().name,
        json => json,
    };
    let told = |row: &SlotId| job.told(*row).map(|fig| (name(*row).to_owned(), figure(&fig, tape)));
    Value::Object(job.figures.keys().filter_map(told).collect())
}

pub(super) fn told(l: Option<Length>, tape: Tape) -> Value {
    l.map_or(Value::Null, |l| length(l, tape))
}

/// One stretch of guard: a run, or what stands on one side of its stair opening.
fn run(job: &Job, r: &Run, stretch: Stretch, tape: Tape) -> Value {
    let shade = r.length.and_then(|t| t.shade).map(|s| match s {
        Shade::Strong => "strong",
        Shade::Shy => "shy",
    });
    let said = json!({
        "id": format!("{}{}", r.id.0, stretch.part.suffix()), "run": r.id.0, "name": r.name,
        "length": told(stretch.length, tape), "length_told": told(r.length.map(|t| t.length), tape),
        "about": r.length.is_some_and(|t| t.about), "shade": shade,
        "basis": basis(r.basis.unwrap_or_default()),
        "from": stretch.from.map(End::name), "to": stretch.to.map(End::name),
        "gate": r.gate.map_or("none", |g| side(g.at)),
        "stairs": r.stairs.along(r.length.map(|t| t.length)).first().map(|s| opening(job, r, s, tape)),
        "bays": r.bays,
    });
    with(said, choices(&r.choices, tape))
}

fn with(mut said: Value, more: Vec<(&str, Value)>) -> Value {
    more.into_iter().for_each(|(name, value)| said[name] = value);
    said
}

fn basis(b: Basis) -> &'static str {
    match b {
        Basis::Overall => "overall",
        Basis::Clear => "clear",
        Basis::Centre => "centre",
        Basis::Edge => "edge",
    }
}

pub(super) fn side(at: GateAt) -> &'static str {
    match at {
        GateAt::From => "at from-end",
        GateAt::To => "at to-end",
        GateAt::Middle => "middle",
        GateAt::Left => "left",
        GateAt::Right => "right",
        GateAt::Stairs => "at stair head",
        GateAt::OffFrom(_) => "off from-end",
        GateAt::OffTo(_) => "off to-end",
    }
}

fn deck(job: &Job, tape: Tape) -> Value {
    if job.deck_along.is_none() && job.deck_out.is_none() && job.deck_wide.is_none() {
        return Value::Null;
    }
    let mut deck = json!({ "along_house": told(job.deck_along, tape), "out": told(job.deck_out, tape) });
    if let Some(wide) = job.deck_wide {
        deck["wide"] = length(wide, tape);
    }
    deck
}

fn settings(s: &Settings, tape: Tape) -> Value {
    json!({
        "post": by_role(s, |size| match size {
            PostSize::Lumber(l) => Some(l.to_string().into()),
            PostSize::Width(_) => None,
        }),
        "post_width": by_role(s, |size| match size {
            PostSize::Lumber(_) => None,
            PostSize::Width(w) => Some(length(w, tape)),
        }),
        "height_top": told(s.height_top, tape),
        "gap_under": told(s.gap_under, tape),
        "baluster": told(s.baluster, tape),
        "gap_max": told(s.gap_max, tape),
        "clear_max": told(s.clear_max, tape),
        "oc_max": told(s.centre_max, tape),
        "grade": told(s.grade, tape),
        "notch": notch(s.notch, tape),
        "code": s.law.edition.map(|e| e.year().to_string()),

        "mount": s.mount.map(mount),
        "fix": s.fixing.map(fixing),
        "house_end": s.house_end.map(house_end),
        "pool": s.pool,
        "tape": s.tape,
        "overhang": told(s.overhang, tape),
        "skirt": told(s.skirt, tape),
        "rim": told(s.rim, tape),
        "line": told(s.line, tape),
        "hold_back": told(s.hold_back, tape),
        "joists": told(s.joists, tape),
        "first_joist": told(s.first_joist, tape),
        "joists_run": s.joists_run.map(joists_run),
        "blocking": s.blocking.map(|b| if b == Blocking::AtPosts { "at every post" } else { "none" }),
        "view": s.view.map(|v| if v == View::House { "house" } else { "yard" }),
        "species": s.timber.species.map(Species::name),
        "lumber_grade": s.timber.grade.map(Grade::name),
        "service": s.timber.wet.map(|wet| if wet { "wet" } else { "dry" }),
        "incised": s.timber.incised,
        "load_duration": s.timber.duration.map(Duration::name),
        "decking": told(s.foot.decking, tape),
        "rim_height": told(s.foot.rim_tall, tape),
        "nosing": s.foot.nosing.map(nosing),
        "cap": told(s.foot.cap, tape),
        "above_rail": told(s.foot.above, tape),
        "angled_posts": s.foot.turned.map(turned),
        "bolt": told(s.foot.bolt, tape),
        "blade": told(s.foot.blade, tape),
        "rail_notch": told(s.foot.rail_notch, tape),
        "notch_anyway": s.foot.anyway.map(anyway),
    })
}

/// One value where only "all posts" was told; by role where roles were.
fn by_role(s: &Settings, value: impl Fn(PostSize) -> Option<Value>) -> Value {
    let mut told: Map<String, Value> = Map::new();
    for role in PostRole::ALL {
        let size = s.posts.iter().find(|(r, _)| *r == role).and_then(|(_, size)| value(*size));
        if let Some(size) = size {
            told.insert(role_name(role).into(), size);
        }
    }
    match (s.posts.as_slice(), told.get("all")) {
        ([_], Some(_)) => told.remove("all").unwrap_or(Value::Null),
        _ if told.is_empty() => Value::Null,
        _ => Value::Object(told),
    }
}

fn role_name(role: PostRole) -> &'static str {
    match role {
        PostRole::All => "all",
        PostRole::Corner => "corner",
        PostRole::Line => "line",
        PostRole::End => "end",
        PostRole::Gate => "gate",
        PostRole::Stair => "stair",
    }
}

fn notch(n: Option<NotchTold>, tape: Tape) -> Value {
    match n {
        None => Value::Null,
        Some(NotchTold::None) => "none".into(),
        Some(NotchTold::Deep(l)) => length(l, tape),
    }
}

fn mount(m: Mount) -> &'static str {
    match m {
        Mount::OverEdge => "over edge",
        Mount::Inside => "inside",
        Mount::Outside => "outside",
        Mount::Surface => "surface",
    }
}

fn fixing(f: Fixing) -> &'static str {
    match f {
        Fixing::ThroughBolts => "through bolts",
        Fixing::Lags => "lags",
        Fixing::Screws => "structural screws",
    }
}

fn joists_run(way: JoistsRun) -> &'static str {
    match way {
        JoistsRun::Out => "out",
        JoistsRun::Along => "along",
    }
}

fn house_end(h: HouseEnd) -> &'static str {
    match h {
        HouseEnd::Post => "post",
        HouseEnd::Bracket => "bracket",
    }
}

fn nosing(n: Nosing) -> &'static str {
    match n {
        Nosing::CutBack => "cut back",
        Nosing::Whole => "whole",
    }
}

fn turned(t: Turned) -> &'static str {
    match t {
        Turned::First => "square to the first side",
        Turned::Next => "square to the next side",
        Turned::Split => "splitting the turn",
    }
}

fn anyway(a: Anyway) -> &'static str {
    match a {
        Anyway::Sleeve => "sleeve",
        Anyway::Told => "told",
    }
}

/// What the building department asks, by name; null where nothing was told.
fn local(law: &Law, tape: Tape) -> Value {
    let name = |of: Local| match of {
        Local::Height => "height",
        Local::Gap => "gap",
        Local::Drop => "drop",
    };
    let told: Map<String, Value> = law.local.iter().map(|(of, l)| (name(*of).to_owned(), length(*l, tape))).collect();
    if told.is_empty() { Value::Null } else { Value::Object(told) }
}
