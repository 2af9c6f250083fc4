//! Runs of the job: lengths, ends and gates.

use super::check::{Found, Seen};
use super::figures::{inches, near};
use serde_json::{Map, Value};

/// The expected things that must hold of one and the same run.
pub const OF_ONE_RUN: [&str; 7] = ["run_in", "clear_in", "overall_in", "cc_in", "from", "to", "gate"];

/// Checks what is expected of runs; `None` where `key` is none of that.
pub fn look(key: &str, want: &Value, seen: &Seen) -> Option<Found> {
    Some(match key {
        "runs_in" => in_order(want, seen),
        "runs" => one_by_one(want, seen),
        "front_in" => front(want, seen),
        "flank_in" => flanks(want, seen),
        key if OF_ONE_RUN.contains(&key) => {
            if seen.expect.contains_key("runs_in") {
                of_the_walk(key, want, seen)
            } else {
                one_run(seen.expect, &all(seen.job), seen)
            }
        }
        _ => return None,
    })
}

fn all(job: &Value) -> Vec<&Value> {
    job["runs"].as_array().map(|runs| runs.iter().collect()).unwrap_or_default()
}

/// The best of the job's runs against all that is expected of one run.
pub fn one_run(expect: &Map<String, Value>, runs: &[&Value], seen: &Seen) -> Found {
    let ways = runs.iter().flat_map(|run| [false, true].map(|swapped| one_way(expect, run, swapped, seen)));
    let best = ways.min_by_key(|found| match found {
        Found::Met => 0,
        Found::Contradicts(why) => 100 + why.matches(';').count(),
        Found::Missing(_) | Found::Unchecked => 1,
    });
    best.unwrap_or_else(|| Found::Missing("no run".to_owned()))
}

/// A run against what is expected of it, its ends as told or swapped.
fn one_way(expect: &Map<String, Value>, run: &Value, swapped: bool, seen: &Seen) -> Found {
    let checks = OF_ONE_RUN.iter().filter_map(|key| Some((*key, expect.get(*key)?)));
    let found: Vec<Found> = checks.map(|(key, want)| part(key, want, run, swapped, seen)).collect();
    let told = |f: &Found| match f {
        Found::Missing(s) | Found::Contradicts(s) => Some(s.clone()),
        _ => None,
    };
    let why = found.iter().filter_map(told).collect::<Vec<_>>().join("; ");
    match Found::worst(found) {
        Found::Missing(_) => Found::Missing(why),
        Found::Contradicts(_) => Found::Contradicts(why),
        found => found,
    }
}

fn part(key: &str, want: &Value, run: &Value, swapped: bool, seen: &Seen) -> Found {
    match key {
        "from" => end(want, &run[if swapped { "to" } else { "from" }], key),
        "to" => end(want, &run[if swapped { "from" } else { "to" }], key),
        "gate" => gate(want, run, swapped),
        _ => length(key, want, run, seen),
    }
}

fn end(want: &Value, got: &Value, key: &str) -> Found {
    match got {
        Value::Null => Found::Missing(format!("{key} not told")),
        got => Found::is(got == want, format!("{key} {got}")),
    }
}

fn length(key: &str, want: &Value, run: &Value, seen: &Seen) -> Found {
    let basis = match key {
        "clear_in" => Some("clear"),
        "overall_in" => Some("overall"),
        "cc_in" => Some("centre"),
        _ => None,
    };
    let told: Vec<f64> = ["length", "length_told"].iter().filter_map(|k| inches(&run[*k])).collect();
    let Some(want) = want.as_f64() else { return Found::Unchecked };
    if told.is_empty() {
        return Found::Missing("length not told".to_owned());
    }
    let long = told.iter().any(|l| near(*l, want, seen.tolerance()));
    let based = basis.is_none_or(|basis| run["basis"] == basis);
    Found::is(long && based, format!("length {} {}", told[0], run["basis"]))
}

/// A gate at an end moves with the end; at a stair head it is the same told either way.
fn gate(want: &Value, run: &Value, swapped: bool) -> Found {
    let got = run["gate"].as_str().unwrap_or("none");
    let want = match want.as_str() {
        Some("at to-end") if swapped => "at from-end",
        Some("at from-end") if swapped => "at to-end",
        Some(want) => want,
        None => return Found::Unchecked,
    };
    let at_stairs = |side: &str| match side {
        "at stair head" => true,
        "at from-end" => run["from"] == "stair head",
        "at to-end" => run["to"] == "stair head",
        _ => false,
    };
    match (want, got) {
        (want, got) if want == got || (at_stairs(want) && at_stairs(got)) => Found::Met,
        (_, "none") => Found::Missing("no gate".to_owned()),
        _ => Found::Contradicts(format!("gate {got}")),
    }
}

/// Ends and gate of a walk of several runs: its two ends, and a gate anywhere on it.
fn of_the_walk(key: &str, want: &Value, seen: &Seen) -> Found {
    let runs = all(seen.job);
    let (Some(first), Some(last)) = (runs.first(), runs.last()) else {
        return Found::Missing("no run".to_owned());
    };
    match key {
        "from" => end(want, &first["from"], key),
        "to" => end(want, &last["to"], key),
        "gate" => {
            let ways = runs.iter().flat_map(|run| [false, true].map(|swapped| gate(want, run, swapped)));
            ways.reduce(|a, b| a.or(|| b)).unwrap_or(Found::Unchecked)
        }
        _ => Found::Unchecked,
    }
}

/// Lengths of the runs in walking order.
fn in_order(want: &Value, seen: &Seen) -> Found {
    let Some(want) = numbers(want) else { return Found::Unchecked };
    let got: Vec<f64> = all(seen.job).iter().filter_map(|run| inches(&run["length"])).collect();
    if same(&got, &want, seen) {
        return Found::Met;
    }
    let mut left = want.clone();
    let part = got.iter().all(|l| {
        let at = left.iter().position(|w| near(*w, *l, seen.tolerance()));
        at.map(|at| left.remove(at)).is_some()
    });
    // All of them, in another order, is another guard.
    if part && got.len() < want.len() {
        Found::Missing(format!("runs {got:?}"))
    } else {
        Found::Contradicts(format!("runs {got:?}"))
    }
}

fn one_by_one(want: &Value, seen: &Seen) -> Found {
    let Some(want) = want.as_array() else { return Found::Unchecked };
    let runs = all(seen.job);
    let pairs = want.iter().zip(&runs).map(|(want, run)| match want.as_object() {
        Some(want) => one_run(want, &[*run], seen),
        None => Found::Unchecked,
    });
    let pairs = Found::worst(pairs);
    if runs.len() > want.len() {
        return Found::Contradicts(format!("{} runs", runs.len()));
    }
    Found::worst([pairs, Found::has(runs.len() == want.len(), format!("{} runs", runs.len()))])
}

fn front(want: &Value, seen: &Seen) -> Found {
    let runs = all(seen.job);
    let front = runs.iter().copied().find(|run| run["name"] == "front");
    let only = Map::from_iter([("run_in".to_owned(), want.clone())]);
    match front {
        Some(front) => one_run(&only, &[front], seen),
        None => one_run(&only, &runs, seen),
    }
}

/// Guard left and right of an opening: the stretches of the job, or the answer's figures.
fn flanks(want: &Value, seen: &Seen) -> Found {
    let Some(want) = numbers(want) else { return Found::Unchecked };
    let told: Vec<f64> = all(seen.job).iter().filter_map(|run| inches(&run["length"])).collect();
    let values = seen.values();
    let figured: Vec<f64> = ["flank_left", "flank_right"].iter().filter_map(|k| inches(&values[*k])).collect();
    if same(&told, &want, seen) || same(&figured, &want, seen) {
        return Found::Met;
    }
    let got = format!("flanks {figured:?}, runs {told:?}");
    if figured.is_empty() && told.len() < 2 { Found::Missing(got) } else { Found::Contradicts(got) }
}

fn numbers(want: &Value) -> Option<Vec<f64>> {
    want.as_array()?.iter().map(Value::as_f64).collect()
}

fn same(got: &[f64], want: &[f64], seen: &Seen) -> bool {
    got.len() == want.len() && got.iter().zip(want).all(|(g, w)| near(*g, *w, seen.tolerance()))
}
