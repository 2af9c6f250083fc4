//! JSON of a reply: the contract in README.md. Keys come in one order, always.

use super::typed::is_unsafe;
use super::{
    BayFig, Finding, GateFig, LevelFig, NotchFig, PostFig, RakeFig, Reply, StrengthFig, Values, job_json, json_takeoff,
    plain, print,
};
use crate::figure::{Fig, Value as Figure};
use crate::job::{Job, RunId};
use crate::measure::{Length, Q, Tape, decimal, exact_fraction};
use serde::Serialize as _;
use serde_json::ser::{CompactFormatter, Formatter};
use serde_json::{Map, Value, json};
use std::io;

/// One line's JSON object: the line as typed, the reply to it, and the job after it.
pub fn reply_json(line: &str, reply: &Reply, job: &Job) -> Value {
    let tape = tape_of(job);
    let unused: Vec<&str> = reply.unused.iter().map(|t| t.as_str()).collect();
    let findings: Vec<Value> = reply.findings.iter().map(|f| finding(f, tape)).collect();
    let reading =
        |(phrase, odds): &(String, f32)| json!({ "phrase": phrase, "odds": (odds * 1000.0).round() / 1000.0 });
    let bound: Vec<Value> = reply.readings.iter().map(reading).collect();
    json!({
        "line": line,
        "status": reply.status.name(),
        "readback": reply.readback,
        "unused": unused,
        "choices": reply.choices,
        "text": plain(reply, usize::MAX, tape),
        "values": values(&reply.values, tape),
        "job": job_json(job),
        "findings": findings,
        "bound": bound,
    })
}

/// A value as one line of JSON. Characters that could steer a terminal are written as
/// `\u` escapes, so a person may look at the line too; a reader gets them back unchanged.
pub fn json_line(value: &Value) -> String {
    let mut bytes = Vec::new();
    let mut writer = serde_json::Serializer::with_formatter(&mut bytes, Escaping);
    // Writing a `Value` to memory fails for neither reason there is: no I/O, no key that is not a string.
    let written = value.serialize(&mut writer);
    debug_assert!(written.is_ok());
    String::from_utf8_lossy(&bytes).into_owned()
}

struct Escaping;

impl Formatter for Escaping {
    fn write_string_fragment<W: ?Sized + io::Write>(&mut self, out: &mut W, fragment: &str) -> io::Result<()> {
        let mut rest = fragment;
        while let Some(at) = rest.find(is_unsafe) {
            let (before, from) = rest.split_at(at);
            CompactFormatter.write_string_fragment(out, before)?;
            let size = from.chars().next().map_or(0, char::len_utf8);
            let (unsafe_char, after) = from.split_at(size);
            for unit in unsafe_char.encode_utf16() {
                write!(out, "\\u{unit:04x}")?;
            }
            rest = after;
        }
        CompactFormatter.write_string_fragment(out, rest)
    }
}

/// The tape the job's figures are read to: sixteenths until told otherwise.
pub(crate) fn tape_of(job: &Job) -> Tape {
    crate::solve::choice::tape(job)
}

/// A length: decimal inches, the tape reading, the fraction where the decimal repeats.
pub(super) fn length(l: Length, tape: Tape) -> Value {
    let (inches, ends) = decimal(l.q());
    let mut out = Map::new();
    out.insert("in".into(), inches.into());
    out.insert("text".into(), tape.read(l).into());
    if !ends {
        out.insert("exact".into(), exact_fraction(l).into());
    }
    if !l.is_exact() {
        out.insert("carried".into(), true.into());
    }
    Value::Object(out)
}

pub(super) fn figure(fig: &Fig, tape: Tape) -> Value {
    match fig.value() {
        Figure::Length(l) => length(l, tape),
        Figure::Count(n) => n.into(),
        Figure::Number(q) => number(q),
        Figure::Money(m) => m.to_string().into(),
        Figure::Quantity(q, unit) => {
            json!({ "value": measured(q), "unit": unit.name(), "text": print::quantity(q, unit) })
        }
    }
}

/// A number that was worked out and rounds where it is printed: always a JSON number.
fn measured(q: Q) -> Value {
    match number(q) {
        Value::String(text) => text.parse::<f64>().map_or(Value::Null, Into::into),
        number => number,
    }
}

/// A JSON number where one holds the decimal as printed; else its digits as a string.
fn number(q: Q) -> Value {
    let (text, _) = decimal(q);
    // A decimal that does not end is cut at a place, which may be a nought: 1.162630 is 1.16263.
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if let Ok(n) = text.parse::<i64>() {
        return n.into();
    }
    match text.parse::<f64>() {
        Ok(n) if n.to_string() == text => n.into(),
        _ => text.into(),
    }
}

fn values(v: &Values, tape: Tape) -> Value {
    let mut out = Map::new();
    put(&mut out, "result", &v.result, tape);
    if let Some(Figure::Number(q)) = v.result.as_ref().map(Fig::value)
        && !decimal(q).1
    {
        out.insert("result_exact".into(), print::mixed(q).into());
    }
    put(&mut out, "left", &v.left, tape);
    put(&mut out, "clear_max", &v.clear_max, tape);
    put_list(&mut out, "posts", v.posts.iter().map(|p| post(p, tape)));
    put_list(&mut out, "bays", v.bays.iter().map(|b| bay(b, tape)));
    put_list(&mut out, "strength", v.strength.iter().map(strength));
    put_list(&mut out, "ends", v.ends.iter().map(|e| e.name().into()));
    if let Some(needed) = v.guard_needed {
        out.insert("guard_needed".into(), needed.into());
    }
    json_takeoff::put(&mut out, &v.takeoff, tape);
    if let Some(first) = v.notches.first() {
        out.insert("notch".into(), notch(first, tape));
    }
    if v.notches.len() > 1 {
        put_list(&mut out, "notches", v.notches.iter().map(|n| notch(n, tape)));
    }
    if let Some(rake) = &v.rake {
        out.insert("rake".into(), rake_json(rake, tape));
    }
    if let Some(gate) = &v.gate {
        out.insert("gate".into(), gate_json(gate, tape));
    }
    for (name, fig) in &v.more {
        // The contract's names come first: a name of our own never stands in for one.
        out.entry(key(name)).or_insert_with(|| in_both(fig, tape, v.metric));
    }
    if let Some(result) = v.result.as_ref().filter(|_| v.metric) {
        out.insert("result".into(), in_both(result, tape, true));
    }
    Value::Object(out)
}

/// A figure; where it was asked in millimetres, a length in them too.
fn in_both(fig: &Fig, tape: Tape, metric: bool) -> Value {
    let mut value = figure(fig, tape);
    if let Some(l) = fig.as_length().filter(|_| metric) {
        value["mm"] = decimal(l.mm()).0.into();
    }
    value
}

/// A name in words as a key: "the_bay_clear".
fn key(name: &str) -> String {
    name.replace(|c: char| !c.is_alphanumeric(), "_")
}

fn put(out: &mut Map<String, Value>, name: &str, fig: &Option<Fig>, tape: Tape) {
    if let Some(fig) = fig {
        out.insert(name.into(), figure(fig, tape));
    }
}

fn put_list(out: &mut Map<String, Value>, name: &str, items: impl Iterator<Item = Value>) {
    let items: Vec<Value> = items.collect();
    if !items.is_empty() {
        out.insert(name.into(), items.into());
    }
}

/// The angle is a plain number of degrees; what is not known is null.
fn rake_json(r: &RakeFig, tape: Tape) -> Value {
    let or_null = |f: &Option<Fig>| f.as_ref().map(|f| figure(f, tape));
    json!({
        "angle_deg": measured(r.angle.as_q()), "run": or_null(&r.run), "rise": or_null(&r.rise),
        "slope_length": or_null(&r.slope),
    })
}

fn gate_json(g: &GateFig, tape: Tape) -> Value {
    json!({
        "opening": figure(&g.opening, tape), "leaf": figure(&g.leaf, tape),
        "hinge_gap": figure(&g.hinge_gap, tape), "latch_gap": figure(&g.latch_gap, tape), "swing": g.swing,
    })
}

/// Asked and allowed as plain numbers of one unit.
fn strength(s: &StrengthFig) -> Value {
    let unit = match s.demand.value() {
        Figure::Quantity(_, unit) => unit.name(),
        _ => "in",
    };
    let [demand, capacity, ratio] = [&s.demand, &s.capacity, &s.ratio].map(|f| measured(f.as_q()));
    json!({
        "what": s.what, "demand": demand, "capacity": capacity, "ratio": ratio, "unit": unit, "source": s.source,
    })
}

fn post(p: &PostFig, tape: Tape) -> Value {
    let mut said = json!({
        "run": p.run.0, "at": figure(&p.at, tape), "from": p.from, "kind": p.kind, "why": p.why,
        "near_face": figure(&p.near_face, tape),
    });
    if let Some(other) = p.shared {
        said["shared_with"] = other.0.into();
    }
    flank(said, p.run, &p.stretch)
}

fn notch(n: &NotchFig, tape: Tape) -> Value {
    let mut out = Map::new();
    out.insert("post".into(), n.post.clone().into());
    out.insert("posts".into(), n.posts.clone().into());
    out.insert("shape".into(), n.shape.into());
    put(&mut out, "off", &n.off, tape);
    let depths: Map<String, Value> = n.depths.iter().map(|(way, fig)| ((*way).to_owned(), figure(fig, tape))).collect();
    out.insert("depths".into(), depths.into());
    put(&mut out, "left", &n.left, tape);
    if let Some((off, left)) = &n.areas {
        out.insert("area_off".into(), figure(off, tape));
        out.insert("area_left".into(), figure(left, tape));
    }
    put(&mut out, "shoulder_from_top", &n.shoulder, tape);
    put(&mut out, "leg", &n.leg, tape);
    put(&mut out, "post_length", &n.total, tape);
    if !n.levels.is_empty() {
        out.insert("levels".into(), n.levels.iter().map(|l| level(l, tape)).collect());
    }
    Value::Object(out)
}

fn level(l: &LevelFig, tape: Tape) -> Value {
    let mut out = Map::new();
    out.insert("at".into(), l.at.into());
    out.insert("shape".into(), l.shape.into());
    put(&mut out, "off", &l.off, tape);
    let depths: Map<String, Value> = l.depths.iter().map(|(way, fig)| ((*way).to_owned(), figure(fig, tape))).collect();
    out.insert("depths".into(), depths.into());
    put(&mut out, "left", &l.left, tape);
    out.insert("area_off".into(), figure(&l.areas.0, tape));
    out.insert("area_left".into(), figure(&l.areas.1, tape));
    out.insert("weakest".into(), l.weakest.into());
    Value::Object(out)
}

fn bay(b: &BayFig, tape: Tape) -> Value {
    let said = json!({
        "run": b.run.0, "clear": figure(&b.clear, tape), "centre": b.centre.as_ref().map(|c| figure(c, tape)),
        "from": b.from, "to": b.to, "gate": b.gate,
    });
    flank(said, b.run, &b.stretch)
}

/// Names the flank of recessed stairs a figure stands in, as the job's runs name it.
fn flank(mut said: Value, run: RunId, stretch: &str) -> Value {
    if !stretch.is_empty() {
        said["stretch"] = format!("{}{stretch}", run.0).into();
    }
    said
}

fn finding(f: &Finding, tape: Tape) -> Value {
    json!({ "rule": f.rule, "level": f.level.name(), "text": print::text(&f.spans, tape), "source": f.source })
}
