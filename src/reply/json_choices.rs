//! JSON of the places told for a run's posts.

use super::json::length;
use crate::job::{Choices, EndOf, KeepOff, Spot, Thing};
use crate::measure::Tape;
use serde_json::{Value, json};

/// What was told of where a run's posts go, by name; nothing where nothing was.
pub(super) fn choices(choices: &Choices, tape: Tape) -> Vec<(&'static str, Value)> {
    let posts: Vec<Value> = choices.posts.iter().map(|p| spot(*p, tape)).collect();
    let keep_off: Vec<Value> = choices.keep_off.iter().map(|k| kept(*k, tape)).collect();
    let mut said = Vec::new();
    said.extend((!posts.is_empty()).then(|| ("posts_told", posts.into())));
    said.extend(choices.mirrored.then(|| ("mirrored", true.into())));
    said.extend((!keep_off.is_empty()).then(|| ("keep_off", keep_off.into())));
    said
}

fn kept(keep: KeepOff, tape: Tape) -> Value {
    let of = match keep.of {
        Thing::End(end) => end_name(end).into(),
        Thing::Stairs => "stairs".into(),
        Thing::Gate => "gate".into(),
        Thing::Spot(at) => spot(at, tape),
    };
    json!({ "by": length(keep.by, tape), "of": of })
}

fn spot(spot: Spot, tape: Tape) -> Value {
    json!({ "at": length(spot.at, tape), "from": end_name(spot.end) })
}

fn end_name(end: EndOf) -> &'static str {
    match end {
        EndOf::From => "from-end",
        EndOf::To => "to-end",
    }
}
