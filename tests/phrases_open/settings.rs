//! What else the job holds: deck, stairs, gates, settings and notes.

use super::check::{Found, Seen};
use super::figures::{alone, inches, near, number};
use serde_json::Value;

/// Checks what is expected of the job but its runs; `None` where `key` is none of that.
pub fn look(key: &str, want: &Value, seen: &Seen) -> Option<Found> {
    let (job, set) = (seen.job, &seen.job["settings"]);
    Some(match key {
        "deck_in" => deck(want, seen),
        "stairs_in" => of_any(&job["stairs"], "width", want, seen),
        "risers" => of_any(&job["stairs"], "risers", want, seen),
        "stairs" if want == "none" => {
            let stairs = job["stairs"].as_array().map_or(0, Vec::len);
            Found::is(stairs == 0, format!("{stairs} stairs"))
        }
        "stairs_at" => stairs_at(want, job),
        "gate_in" => of_any(&job["gates"], "width", want, seen),
        "hinge" | "latch" | "swing" => of_any(&job["gates"], key, want, seen),
        "post" => post(want, &set["post"]).or(|| spoken_of(want, seen)),
        "post_width_in" => by_role(&set["post_width"], want, seen),
        "mount" | "fix" => is_set(&set[key], want, seen),
        "notch" => is_set(&set["notch"], want, seen),
        "notch_in" => is_set(&set["notch"], want, seen).or(|| figured(want, seen)),
        "height_in" => is_set(&set["height_top"], want, seen).or(|| figured(want, seen)),
        "grade_in" => is_set(&set["grade"], want, seen),
        "gap_max_in" => is_set(&set["gap_max"], want, seen).or(|| figured(want, seen)),
        "max_oc_in" => is_set(&set["oc_max"], want, seen),
        "notes_count" => {
            let notes = job["notes"].as_array().map_or(0, Vec::len);
            Found::is(want.as_u64() == Some(notes as u64), format!("{notes} notes"))
        }
        _ => return None,
    })
}

/// One value of the job: a length, a number or a word.
fn is_set(got: &Value, want: &Value, seen: &Seen) -> Found {
    if got.is_null() {
        return Found::Missing("not told".to_owned());
    }
    let same = match want.as_f64() {
        Some(want) => inches(got).or_else(|| number(got)).is_some_and(|got| near(got, want, seen.tolerance())),
        None => got == want,
    };
    Found::is(same, got)
}

/// The value among the answer's figures: a question may hold it without telling it.
fn figured(want: &Value, seen: &Seen) -> Found {
    let Some(want) = want.as_f64() else { return Found::Unchecked };
    let figures = alone(seen.values());
    let has = figures.iter().filter_map(|(_, f)| inches(f)).any(|got| near(got, want, seen.tolerance()));
    Found::has(has, "not told")
}

fn of_any(list: &Value, field: &str, want: &Value, seen: &Seen) -> Found {
    let items = list.as_array().map(Vec::as_slice).unwrap_or_default();
    let found = items.iter().map(|item| is_set(&item[field], want, seen)).reduce(|a, b| a.or(|| b));
    found.unwrap_or_else(|| Found::Missing("none told".to_owned()))
}

fn deck(want: &Value, seen: &Seen) -> Found {
    let Some(sides) = want.as_object() else { return Found::Unchecked };
    let deck = &seen.job["deck"];
    Found::worst(sides.iter().map(|(side, want)| is_set(&deck[side], want, seen)))
}

/// Where the stairs are. "between" is between two stretches of guard; another place is looked
/// for word for word, and told any other way only a person can judge it.
fn stairs_at(want: &Value, job: &Value) -> Found {
    let list = |name: &str| job[name].as_array().map(Vec::as_slice).unwrap_or_default();
    let met = |pair: &[Value]| pair[0]["to"] == "stair head" && pair[1]["from"] == "stair head";
    if want == "between" && list("runs").windows(2).any(met) {
        return Found::Met;
    }
    match list("stairs").iter().find(|stairs| !stairs["at"].is_null()) {
        None => Found::Missing("stairs not placed".to_owned()),
        Some(placed) if placed["at"] == *want => Found::Met,
        Some(_) => Found::Unchecked,
    }
}

/// The post's size: one for all, or by role; a role not told is as all the others.
fn post(want: &Value, got: &Value) -> Found {
    let of = |role: &str| if got.is_object() && !got[role].is_null() { &got[role] } else { all_of(got) };
    let one = |want: &Value, got: &Value| match got {
        Value::Null => Found::Missing("post not told".to_owned()),
        got => Found::is(got == want, format!("post {got}")),
    };
    match want.as_object() {
        Some(roles) => Found::worst(roles.iter().map(|(role, want)| one(want, of(role)))),
        None => one(want, all_of(got)),
    }
}

fn all_of(got: &Value) -> &Value {
    if got.is_object() { &got["all"] } else { got }
}

/// A size asked about stands in the read-back, or in the notch answered for.
fn spoken_of(want: &Value, seen: &Seen) -> Found {
    let Some(want) = want.as_str() else { return Found::Missing("post not told".to_owned()) };
    let spoken = seen.status() == "answered" && seen.readback().contains(want);
    Found::has(spoken || seen.values()["notch"]["post"] == want, "post not told")
}

fn by_role(got: &Value, want: &Value, seen: &Seen) -> Found {
    match got.as_object() {
        Some(roles) if !roles.contains_key("in") => {
            let found = roles.values().map(|got| is_set(got, want, seen)).reduce(|a, b| a.or(|| b));
            found.unwrap_or(Found::Unchecked)
        }
        _ => is_set(got, want, seen),
    }
}
