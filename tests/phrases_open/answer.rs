//! Figures of an answer: results, counts, layouts and what-ifs.

use super::check::{Found, Seen};
use super::figures::{alone, inches, near, number, tape};
use super::runs::one_run;
use serde_json::Value;

const MM: f64 = 25.4;

/// Checks what is expected of the figures; `None` where `key` is none of that.
pub fn look(key: &str, want: &Value, seen: &Seen) -> Option<Found> {
    let values = seen.values();
    let mm = want.as_f64().map_or(Value::Null, |mm| (mm / MM).into());
    Some(match key {
        "length_in" | "number_in" => result(want, seen),
        "length_mm" => result(&mm, seen),
        "left_mm" => left(&mm, seen),
        "left_in" => left(want, seen),
        "number" | "ratio" => count("result", want, seen).or(|| counted(want, seen)),
        "degrees" => count("result", want, seen).or(|| is(&values["rake"]["angle_deg"], want, seen)),
        "exact" => Found::has(has_field("exact", want, values) || values["result_exact"] == *want, "no such fraction"),
        "nearest_16" => on_the_tape(want, values),
        "shade_max_in" => shaded(want, seen),
        "posts" => count("posts_count", want, seen),
        "posts_min" => match number(&values["posts_count"]) {
            None => Found::Missing("no posts".to_owned()),
            Some(got) => Found::is(want.as_f64().is_some_and(|want| got >= want), format!("{got} posts")),
        },
        "bays" => count("bays_count", want, seen),
        "bay_clear_in" => bays(want, seen),
        "max_clear_in" => longest_bay(want, seen),
        "balusters" => count("balusters", want, seen),
        "gap_in" => is(&values["gap"], want, seen).or(|| is(&seen.job["settings"]["gap_under"], want, seen)),
        "opening_in" => among(want, seen),
        "picket_in" => among(want, seen).or(|| is(&seen.job["settings"]["baluster"], want, seen)),
        "what_if" => what_if(want, seen),
        "base" => base(want, seen),
        _ => return None,
    })
}

/// One figure of an answer: a length in inches, or a number.
fn is(got: &Value, want: &Value, seen: &Seen) -> Found {
    let Some(want) = want.as_f64() else { return Found::Unchecked };
    match inches(got).or_else(|| number(got)) {
        None => Found::Missing("no figure".to_owned()),
        Some(got) => Found::is(near(got, want, seen.tolerance()), got),
    }
}

/// A length answered: the result, or where there is none another figure that stands alone;
/// a bare measure may also have been told as a run.
fn result(want: &Value, seen: &Seen) -> Found {
    let got = &seen.values()["result"];
    if !got.is_null() {
        let found = is(got, want, seen);
        return if got.is_object() { found } else { Found::Contradicts(format!("a plain number, {got}")) };
    }
    let as_run = serde_json::Map::from_iter([("run_in".to_owned(), want.clone())]);
    let runs: Vec<&Value> = seen.job["runs"].as_array().into_iter().flatten().collect();
    match (among(want, seen), seen.status()) {
        (Found::Met, _) => Found::Met,
        (_, "told") => one_run(&as_run, &runs, seen),
        (found, _) => found,
    }
}

/// A length among the figures that stand alone.
fn among(want: &Value, seen: &Seen) -> Found {
    let figures = alone(seen.values());
    let met = figures.iter().filter(|(_, f)| f.is_object()).any(|(_, f)| is(f, want, seen) == Found::Met);
    Found::has(met, "no such length")
}

/// A count among the figures that stand alone.
fn counted(want: &Value, seen: &Seen) -> Found {
    let figures = alone(seen.values());
    let met = figures.iter().any(|(_, f)| !f.is_object() && is(f, want, seen) == Found::Met);
    Found::has(met, "no such number")
}

fn count(name: &str, want: &Value, seen: &Seen) -> Found {
    let got = &seen.values()[name];
    if got.is_object() { Found::Contradicts(format!("{name} is a length")) } else { is(got, want, seen) }
}

/// What is left over beside a count, or of a notched post.
fn left(want: &Value, seen: &Seen) -> Found {
    let values = seen.values();
    is(&values["left"], want, seen).or(|| is(&values["notch"]["left"], want, seen))
}

fn has_field(field: &str, want: &Value, values: &Value) -> bool {
    alone(values).iter().any(|(_, f)| f[field] == *want)
}

/// The reading on a tape in sixteenths of some figure that stands alone.
fn on_the_tape(want: &Value, values: &Value) -> Found {
    let Some(want) = want.as_str().and_then(tape) else { return Found::Unchecked };
    let read = |f: &Value| f["text"].as_str().and_then(tape);
    Found::has(alone(values).iter().any(|(_, f)| read(f) == Some(want)), "no such tape reading")
}

/// A shade is kept, never added: the length stays within it.
fn shaded(most: &Value, seen: &Seen) -> Found {
    let length = seen.expect.get("length_in").and_then(Value::as_f64);
    match (inches(&seen.values()["result"]), length, most.as_f64()) {
        (Some(got), Some(want), Some(most)) => Found::is(near(got, want, most), got),
        (None, ..) => Found::Missing("no result".to_owned()),
        _ => Found::Unchecked,
    }
}

/// Clear widths of the bays that carry a rail.
fn clears(seen: &Seen) -> Vec<f64> {
    let bays = seen.values()["bays"].as_array().into_iter().flatten();
    bays.filter(|bay| bay["gate"] != true).filter_map(|bay| inches(&bay["clear"])).collect()
}

fn bays(want: &Value, seen: &Seen) -> Found {
    let (got, Some(want)) = (clears(seen), want.as_f64()) else { return Found::Unchecked };
    if got.is_empty() {
        return Found::Missing("no bays".to_owned());
    }
    Found::is(got.iter().all(|clear| near(*clear, want, seen.tolerance())), format!("bays {got:?}"))
}

/// A limit told, or else a bound on every bay of the layout.
fn longest_bay(want: &Value, seen: &Seen) -> Found {
    let told = &seen.job["settings"]["clear_max"];
    if !told.is_null() {
        return is(told, want, seen);
    }
    let (got, Some(want)) = (clears(seen), want.as_f64()) else { return Found::Unchecked };
    if got.is_empty() {
        return Found::Missing("no bays".to_owned());
    }
    Found::is(got.iter().all(|clear| *clear <= want), format!("bays {got:?}"))
}

/// A supposed job's figures stand in the answer alone. The job keeps what it was, unless the
/// line also tells what it supposes from.
fn what_if(want: &Value, seen: &Seen) -> Found {
    let Some(wants) = want.as_object() else { return Found::Unchecked };
    let changed = seen.lines.last().is_some_and(super::record::Line::changed);
    let tells = seen.lines.len() == 1 && seen.expect.contains_key("base");
    if changed && !tells {
        return Found::Contradicts("the job changed".to_owned());
    }
    Found::worst(wants.iter().map(|(key, want)| supposed(key, want, seen)))
}

fn supposed(key: &str, want: &Value, seen: &Seen) -> Found {
    let values = seen.values();
    match key {
        "clear_in" => bays(want, seen).or(|| among(want, seen)),
        "run_in" => is(&values["run_length"], want, seen),
        "max_clear_in" => is(&values["clear_max"], want, seen),
        "post" => match want.as_str() {
            Some(want) => Found::has(seen.readback().contains(want), "post not in the read-back"),
            None => Found::Unchecked,
        },
        "from" | "to" => {
            let Some(end) = want.as_str().map(|end| end.trim_end_matches(" post")) else { return Found::Unchecked };
            let posts = values["posts"].as_array().into_iter().flatten();
            let mut kinds = posts.filter_map(|post| post["kind"].as_str());
            Found::has(kinds.any(|kind| kind.contains(end)), format!("no post at the {end}"))
        }
        _ => look(key, want, seen).unwrap_or(Found::Unchecked),
    }
}

/// What the talk told before it supposed: the job's run, and figures of an earlier answer.
/// In a talk of one line the two cannot be told apart.
fn base(want: &Value, seen: &Seen) -> Found {
    let (Some(wants), Some((last, before))) = (want.as_object(), seen.lines.split_last()) else {
        return Found::Unchecked;
    };
    if before.is_empty() {
        return if last.stuck() { Found::Missing("not taken".to_owned()) } else { Found::Unchecked };
    }
    Found::worst(wants.iter().map(|(key, want)| {
        if key == "run_in" {
            let runs: Vec<&Value> = seen.job["runs"].as_array().into_iter().flatten().collect();
            return one_run(wants, &runs, seen);
        }
        let earlier = before.iter().rev().map(|line| look(key, want, &Seen { last: &line.json, ..*seen }));
        let found = earlier.map(|found| found.unwrap_or(Found::Unchecked)).reduce(|a, b| a.or(|| b));
        found.unwrap_or(Found::Unchecked)
    }))
}
