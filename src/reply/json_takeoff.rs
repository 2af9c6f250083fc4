//! JSON of balusters, parts and cuts.

use super::json::figure;
use super::takeoff_values::{PartFig, StickFig, TakeoffFigs};
use crate::measure::Tape;
use serde_json::{Map, Value, json};

/// Adds the lists an answer holds to its values.
pub(super) fn put(out: &mut Map<String, Value>, figs: &TakeoffFigs, tape: Tape) {
    let fig = |f| figure(f, tape);
    let lists: [(&str, Vec<Value>); 6] = [
        ("balusters_each", figs.each.iter().map(fig).collect()),
        ("marks", figs.marks.iter().map(fig).collect()),
        ("rail_lengths", figs.rails.iter().map(fig).collect()),
        ("takeoff", figs.parts.iter().map(|p| part(p, tape)).collect()),
        ("cut_plan", figs.plan.iter().map(|s| stick(s, tape)).collect()),
        (
            "buy",
            figs.buy.iter().map(|(size, l, n)| json!({ "size": size, "stock": fig(l), "count": fig(n) })).collect(),
        ),
    ];
    for (name, list) in lists.into_iter().filter(|(_, list)| !list.is_empty()) {
        out.insert(name.into(), list.into());
    }
}

fn part(p: &PartFig, tape: Tape) -> Value {
    let cut = p.cut.as_ref().map(|f| figure(f, tape));
    let mut said = json!({ "part": p.part, "stock": p.stock, "cut": cut, "count": figure(&p.count, tape), "at": p.at });
    if !p.bevels.is_empty() {
        said["bevels"] = p.bevels.iter().map(|f| figure(f, tape)).collect();
    }
    said
}

fn stick(s: &StickFig, tape: Tape) -> Value {
    let cut =
        |(l, n): &(crate::figure::Fig, crate::figure::Fig)| json!({ "cut": figure(l, tape), "count": figure(n, tape) });
    let cuts: Vec<Value> = s.cuts.iter().map(cut).collect();
    json!({
        "size": s.size, "stock": figure(&s.stock, tape), "on_hand": s.on_hand, "times": figure(&s.times, tape),
        "cuts": cuts, "left": figure(&s.left, tape),
    })
}
